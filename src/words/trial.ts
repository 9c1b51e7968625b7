/** The words on the trial record: what is looked for on the body, in the order it is fitted. Common practice, no source. */
import type { Alteration, Half } from "../core/decisions/alteration";
import type { ToileLength, TrialCheck, TrialWay } from "../core/decisions/trial";
import type { LengthUnit, Work } from "../core/decisions/work";
import type { Plan, PlannedAlteration } from "../core/plan/plan";
import type { Mm } from "../core/units";
import { cautions, type Caution } from "./cautions";
import { halfWords } from "./fits";
import { plannedTitle } from "./ledger";
import { alterationTitle } from "./planned";
import { formatAmount, formatLength } from "./terms/length";
import { capital, pieceWords } from "./terms/names";

/** The fields of the record's heading, in the order in which both the printed one and the screen ask for them. */
export const RECORD_HEADING = {
  day: "Day",
  cloth: "Cloth",
  pinnedBy: "Pinned by",
  bra: "Bra",
  shoes: "Shoes",
} as const;

/** The fields of one line, in that order. */
export const RECORD_LINE = {
  place: "Place",
  sign: "What is seen",
  way: "How told",
  amount: "How much",
  half: "Half",
  changed: "What I changed",
} as const;

/** How an amount is told: what is measured on the cloth. */
const WAYS: Readonly<Record<TrialWay, string>> = { pinched: "pinched", letOut: "let out", off: "off by" };
export const wayWords = (way: TrialWay): string => WAYS[way];

/** Where no amount could be told. */
export const CANNOT_SAY = "cannot say";
export const FIRST_TRY = "A usual first try is taken.";

/** What a number stands for, beside the way of the line. */
export const HOW_MUCH_NOTE =
  "How much: a fold’s depth from pin to edge (the planner doubles it), a slit’s width at the widest, how far off; of a mark how far out and down.";

/** "2 × 6 mm = 12 mm of cloth": what a fold of this depth takes. */
export const doubledWords = (depth: Mm, unit: LengthUnit): string =>
  `2 × ${formatAmount(depth, unit)} = ${formatAmount(2 * depth, unit)} of cloth`;

export const MARK_FIELDS = { out: "Out", down: "Down" } as const;
export const BUST_POINTS = "Bust points, from those drawn";
export const BUST_POINTS_NOTE = "Mark both through the cloth. Out is away from the centre; − is in, or up.";

const LENGTHS: Readonly<Record<ToileLength, string>> = {
  bustGirth: "Bust",
  waistGirth: "Waist",
  hipGirth: "Hip",
  centreFront: "Centre front",
  centreBack: "Centre back",
  shoulder: "Shoulder seam",
};
export const toileLengthWords = (length: ToileLength): string => LENGTHS[length];
export const AS_SEWN = "The toile as sewn, girths all round";
export const plannedWords = (planned: Mm, unit: LengthUnit): string => `plan ${formatLength(planned, unit)}`;

/** What is off in the sewing. */
export function offWords(sewn: Mm, planned: Mm, unit: LengthUnit): string {
  const off = sewn - planned;
  return `${formatAmount(Math.abs(off), unit)} ${off > 0 ? "longer" : "shorter"} than planned`;
}

/** Where nothing is hung on it: how the toile hangs, pinned, and how it moves, which is tried with no pin in it. */
export interface CheckGroup {
  readonly title: string;
  readonly checks: readonly TrialCheck[];
}

export const CHECK_GROUPS: readonly CheckGroup[] = [
  {
    title: "Standing at ease, pinned shut",
    checks: ["centresUpright", "sideSeamsUpright", "hemLevel", "waistOnWaist", "shouldersStay"],
  },
  { title: "Basted, every pin out", checks: ["canSit", "canReach", "canBreathe"] },
];

/** What is ticked, in the words of this garment. */
export function checkWords(check: TrialCheck, { pattern }: Pick<Work, "pattern">): string {
  switch (check) {
    case "centresUpright":
      return "Centre front and back upright";
    case "sideSeamsUpright":
      return "Side seams upright";
    case "hemLevel":
      return `${pattern.length === "hip" ? "Hem" : "Lower edge"} level all round`;
    case "waistOnWaist":
      return "Waist on the waist";
    case "shouldersStay":
      return pattern.style === "midriff" ? "Straps stay on the shoulders" : "Shoulder seams on the shoulders";
    case "canSit":
      return "Can sit";
    case "canReach":
      return "Can reach forwards and raise both arms";
    case "canBreathe":
      return "Can breathe in deeply";
  }
}

/** A place that a garment has several of. */
export const WHICH_DART = "Of a dart’s end write which dart.";

/** How the drawings are marked. */
export const MARKS =
  "Pins: short strokes; a fold: a wavy line; a slit: two lines; drag lines: an arrow to where they point.";

/** What small amounts are written in. */
export const shortUnit = (unit: LengthUnit): string => (unit === "in" ? "in" : "mm");

/** Of the work's own cautions those that a fitting needs, and that it wants a second pair of hands. */
export function fittingCautions(work: Work, plan: Plan): readonly Pick<Caution, "code" | "title" | "text">[] {
  return [
    ...cautions(work, plan).filter(({ code }) => code === "pins"),
    {
      code: "blades",
      title: "Slits",
      text: "Lift the cloth well off the body and cut with blunt points, away from the skin; nobody cuts under the arm or at the neck.",
    },
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
