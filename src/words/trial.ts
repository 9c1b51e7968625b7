/** The words on the trial record: what is looked for on the body, in the order it is fitted. Common practice, no source. */
import type { Half } from "../core/decisions/alteration";
import type { Plan } from "../core/plan/plan";
import type { LengthUnit, Work } from "../core/decisions/work";
import { cautions, type Caution } from "./cautions";
import { halfWords } from "./fits";
import { alterationTitle } from "./planned";

/** To be ringed: what a toile shows. */
export const SEEN: readonly string[] = [
  "gapes",
  "pulls",
  "fold",
  "stands away",
  "drag lines",
  "too long",
  "too short",
  "dart ends past, short of, beside the bust point",
];

/** How the drawings are marked. */
export const MARKS =
  "Draw each pin as a short stroke, a fold pinched out as a wavy line, a cut let open as two lines, a drag line as an arrow to where it points.";

/** `write`: there is an amount to write down as well, in that unit. */
interface BalanceCheck {
  readonly text: string;
  readonly write?: string;
}

export interface BalanceGroup {
  readonly title: string;
  readonly checks: readonly BalanceCheck[];
}

/** How the toile hangs, pinned; and how it moves, which is tried with no pin in it. */
export function balanceGroups({ pattern, unit }: Work, plan: Plan): readonly BalanceGroup[] {
  const [hasStraps, hasPrincess] = (["strap", "sideFront"] as const).map((piece) =>
    plan.left.pieces.some(({ name }) => name === piece),
  );
  return [
    {
      title: "Standing at ease, pinned shut",
      checks: [
        { text: "Centre front and back upright" },
        { text: "Side seams upright" },
        { text: `${pattern.length === "hip" ? "Hem" : "Lower edge"} level all round` },
        { text: "Waist on the waist" },
        { text: hasStraps ? "Straps stay on the shoulders" : "Shoulder seams on the shoulders" },
        { text: hasPrincess ? "Princess seam to bust point" : "Dart’s end to bust point", write: shortUnit(unit) },
      ],
    },
    {
      title: "Basted, every pin out",
      checks: [{ text: "Can sit" }, { text: "Can reach forwards and up" }, { text: "Can breathe in deeply" }],
    },
  ];
}

/** What small amounts are written in. */
export const shortUnit = (unit: LengthUnit): string => (unit === "in" ? "in" : "mm");

/** The usual order, since each moves what comes after it. */
export const FITTING_ORDER: readonly string[] = [
  "length above and below the bust",
  "bust and its darts",
  "widths at waist, hip and back",
  "shoulders, neck and armholes",
];
export const ORDER_NOTE =
  "Change one thing, pin again, look again. Each moves what comes after it (common practice, no source).";

/** Of the work's own cautions those that a fitting needs, and that it wants a second pair of hands. */
export function fittingCautions(work: Work, plan: Plan): readonly Pick<Caution, "code" | "title" | "text">[] {
  return [
    ...cautions(work, plan).filter(({ code }) => code === "pins"),
    {
      code: "helper",
      title: "A helper",
      text: "Have somebody pin the back, the shoulders and under the arms: never twist or reach behind you in a pinned toile. Step out of it with help, and stop if you feel faint or are pricked.",
    },
  ];
}

/** What differs between the halves, one sentence each; null where they are cut alike. */
export function halvesDiffer(plan: Plan, unit: LengthUnit): readonly string[] | null {
  if (plan.left === plan.right) return null;
  return plan.ledger.flatMap(({ what, outcome }) =>
    what.kind === "alteration" && what.alteration.kind === "fit" && what.alteration.half !== undefined && outcome.ok
      ? [`${alterationTitle(what.alteration, unit)}.`]
      : [],
  );
}

/** Whose left it is stands beside it. */
export const viewCaption = (side: "front" | "back"): string =>
  side === "front"
    ? "Front, seen by one who stands before the wearer"
    : "Back, seen by one who stands behind the wearer";

export const MIRROR_NOTE =
  "Left and right are the wearer’s own. In a mirror she sees the front turned round: her left half at the left.";

export const wearersHalf = (half: Half): string => `wearer’s ${halfWords(half)}`;
