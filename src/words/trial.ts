/** The words on the trial record: what is looked for on the body, in the order it is fitted. Common practice, no source. */
import type { Alteration, Half } from "../core/decisions/alteration";
import type { Plan, PlannedAlteration } from "../core/plan/plan";
import type { LengthUnit, Work } from "../core/decisions/work";
import { cautions, type Caution } from "./cautions";
import { halfWords } from "./fits";
import { plannedTitle } from "./ledger";
import { alterationTitle } from "./planned";
import { capital, dartWords, pieceWords } from "./terms/names";

/** To be ringed: what a toile shows. */
export const SEEN: readonly string[] = [
  "pointed",
  "flat",
  "gapes",
  "pulls",
  "fold",
  "stands away",
  "drag lines",
  "too long",
  "too short",
  "dart ends past, short of, beside the bust point",
];

/** What is done to the cloth on the body, and how its amount is written: always the cloth that comes out or goes in. */
export const PINNED: readonly string[] = ["fold pinched", "slit let out"];
export const HOW_MUCH = (unit: LengthUnit): string => `Cloth, ${shortUnit(unit)}`;
export const HOW_MUCH_NOTE =
  "Cloth: of a fold pinched, twice its depth from pin to edge; of a slit let out, its width at the widest.";

/** How the drawings are marked. */
export const MARKS =
  "Draw each pin as a short stroke, a fold pinched out as a wavy line, a cut let open as two lines, a drag line as an arrow to where it points.";

/** `write`: there is an amount to write down as well, once for each of these, in that unit. */
interface BalanceCheck {
  readonly text: string;
  readonly write?: { readonly of: readonly string[]; readonly unit: string };
}

export interface BalanceGroup {
  readonly title: string;
  readonly checks: readonly BalanceCheck[];
}

/** How the toile hangs, pinned; and how it moves, which is tried with no pin in it. */
export function balanceGroups({ pattern, unit }: Work, plan: Plan): readonly BalanceGroup[] {
  const hasStraps = plan.left.pieces.some(({ name }) => name === "strap");
  return [
    {
      title: "Standing at ease, pinned shut",
      checks: [
        { text: "Centre front and back upright" },
        { text: "Side seams upright" },
        { text: `${pattern.length === "hip" ? "Hem" : "Lower edge"} level all round` },
        { text: "Waist on the waist" },
        { text: hasStraps ? "Straps stay on the shoulders" : "Shoulder seams on the shoulders" },
        ...toBustPoint(plan).map((text) => ({ text, write: { of: halvesOf(plan), unit: shortUnit(unit) } })),
      ],
    },
    {
      title: "Basted, every pin out",
      checks: [{ text: "Can sit" }, { text: "Can reach forwards and up" }, { text: "Can breathe in deeply" }],
    },
  ];
}

/** What runs to the bust point: every dart that aims at it, or the princess seam. */
function toBustPoint({ left, right }: Plan): readonly string[] {
  const darts = [...new Set([left, right].flatMap((half) => half.pieces.flatMap(({ darts: all }) => all)))].filter(
    ({ aimsAt, gathered }) => aimsAt !== null && gathered !== true,
  );
  const named = [...new Set(darts.map(({ name }) => `${capital(dartWords(name))}’s end to bust point`))];
  const hasPrincess = left.pieces.some(({ name }) => name === "sideFront");
  return [...(hasPrincess ? ["Princess seam to bust point"] : []), ...named];
}

/** A blank for each half where they are not cut alike. */
const halvesOf = (plan: Plan): readonly string[] => (plan.left === plan.right ? [""] : ["left", "right"]);

/** What small amounts are written in. */
const shortUnit = (unit: LengthUnit): string => (unit === "in" ? "in" : "mm");

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

/** A dart's alteration is told with the piece that it is on; those of the fit name their own places. */
const withPiece = ({ what, piece }: PlannedAlteration, title: string): string =>
  what.kind === "alteration" && what.alteration.kind !== "fit" && piece !== null
    ? `${capital(pieceWords(piece))}: ${title.charAt(0).toLowerCase()}${title.slice(1)}`
    : title;

const isOfOneHalf = ({ half }: Alteration): boolean => half !== undefined;

/** What differs between the halves, one sentence each; null where they are cut alike. */
export function halvesDiffer(plan: Plan, unit: LengthUnit): readonly string[] | null {
  if (plan.left === plan.right) return null;
  return plan.ledger.flatMap(({ what, outcome }) =>
    what.kind === "alteration" && isOfOneHalf(what.alteration) && outcome.ok
      ? [`${alterationTitle(what.alteration, unit)}.`]
      : [],
  );
}

/** What both halves of the toile were cut with beside its sizes, each with its amount; nothing where they are as blended. */
export const sewnWith = (plan: Plan, unit: LengthUnit): readonly string[] => [
  ...new Set(
    plan.ledger.flatMap((planned) =>
      planned.what.kind === "alteration" && planned.outcome.ok && !isOfOneHalf(planned.what.alteration)
        ? [withPiece(planned, plannedTitle(planned, unit))]
        : [],
    ),
  ),
];

/** Whose left it is stands beside it. */
export const viewCaption = (side: "front" | "back"): string =>
  side === "front" ? "Front, seen by one who stands before you" : "Back, seen by one who stands behind you";

export const MIRROR_NOTE =
  "Left and right are your own. In a mirror you see the front turned round: your left half at the left.";

export const yourHalf = (half: Half): string => `your ${halfWords(half)}`;
