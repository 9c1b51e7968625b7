/** Getting in, and what goes under a cloth that shows through, in words. */
import type { Opacity, Under } from "../core/decisions/dress";
import type { Closure } from "../core/decisions/pattern";
import type { LengthUnit } from "../core/decisions/work";
import type { UnderAdvice } from "../core/dress/dressPlan";
import type { SeenFinish } from "../core/sewing/sewingStep";
import {
  isButtoned,
  type ClosureReading,
  type OpeningLoop,
  type WayIn,
  type WayThrough,
} from "../core/opening/gettingIn";
import { ON_A_MARK } from "../core/tolerance";
import { MM_PER_INCH, type Mm } from "../core/units";
import { formatLeast, formatLength, mostLength } from "./terms/length";
import { zipToBuy, zipWords } from "./terms/zip";
import { listWords } from "./terms/language";

export const CLOSURE_PLACES: readonly { readonly value: Closure["place"]; readonly label: string }[] = [
  { value: "centreBack", label: "Centre back" },
  { value: "side", label: "Left side" },
];

export const ZIP_KINDS = [
  { value: "invisible", label: "invisible" },
  { value: "lapped", label: "lapped" },
] as const;

const WAYS: Readonly<Record<WayIn, string>> = {
  steppingIn: "Stepping in, over the hips",
  overhead: "Overhead, over bust and shoulders",
};

const placeWords = ({ place }: Closure): string => (place === "side" ? "left side" : "centre back");

/** "centre back, 46 cm zip; lets you in". */
export function closureOutcome(closure: Closure, reading: ClosureReading | null, unit: LengthUnit): string {
  if (reading === null) return placeWords(closure);
  const zip = reading.endsAt[unit] === null ? zipToBuy(reading.zip, unit) : null;
  return `${placeWords(closure)}${zip === null ? "" : `, ${zipWords(zip)} zip`}; ${reading.passes ? "lets you in" : "opening too short"}`;
}

const SEAMS_ROUND: Readonly<Record<NonNullable<OpeningLoop["at"]>, string>> = {
  neck: "along the neck edge",
  waist: "along the waist seam",
  underBust: "along the under-bust seam",
};

function loopPlace({ at, below }: OpeningLoop, unit: LengthUnit): string {
  if (at !== null) return SEAMS_ROUND[at];
  if (below === null) return "along an edge that stays closed";
  const side = below > 0 ? "below" : "above";
  return below === 0 ? "at the waist seam" : `${formatLength(Math.abs(below), unit)} ${side} the waist seam`;
}

/** Where its tightest loop is, what that lets through and what has to pass. */
export function wayWords({ way, tightest, needed, passes, longer }: WayThrough, unit: LengthUnit): string {
  const of = tightest.of === "lining" ? " in the lining" : "";
  const cure = passes
    ? ""
    : longer === null
      ? " No opening of this seam would do."
      : ` Open it ${formatLeast(longer, unit)} further down.`;
  return `${WAYS[way]}: ${passes ? "passes" : "does not pass"}. Tightest${of} ${loopPlace(tightest, unit)}: lets ${formatLength(tightest.lets, unit)} through, ${formatLength(needed, unit)} is needed.${cure}`;
}

/** Rounded up, so that what is told will do. */
function leastLength(mm: Mm, unit: LengthUnit): string {
  const step = unit === "in" ? MM_PER_INCH / 8 : 1;
  return formatLength(Math.ceil(mm / step - ON_A_MARK) * step, unit);
}

export function openingWords(reading: ClosureReading, unit: LengthUnit): string {
  const { opening, leastOpening, passes, comesApart } = reading;
  if (comesApart) return "It opens all the way, so nothing has to pass. Its zip is an open-ended one.";
  const is = `The opening is ${formatLength(opening, unit)} long`;
  if (leastOpening === null)
    return `${is}, and no opening in this seam lets you in: what lies above it stays closed. Open the centre back, or widen the neck. ${STUCK}`;
  const least = `${leastLength(leastOpening, unit)} is the least that lets you in.`;
  return passes
    ? `${is}; ${least}`
    : `${is}: too short by ${formatLeast(leastOpening - opening, unit)}. ${least} ${STUCK}`;
}

/** What comes of one that is too short. */
const STUCK = "Do not force it: you could be caught inside with your arms up, or fall stepping in.";

/** The next longer sold, in her unit first; what to do where none is. null: buttons close it, or it comes apart. */
export function zipSoldWords(
  { zip, endsAt, passes, comesApart, leastOpening }: ClosureReading,
  closure: Closure,
  unit: LengthUnit,
): string | null {
  if (comesApart || isButtoned(closure) || (!passes && leastOpening === null)) return null;
  const both = [unit, unit === "cm" ? ("in" as const) : ("cm" as const)];
  const sold = both.flatMap((one) => (endsAt[one] === null ? (zip[one] ?? []) : []));
  const [ended] = both.flatMap((one) => {
    const [longest, end] = [zip[one], endsAt[one]];
    return longest === null || end === null
      ? []
      : [`end the opening ${mostLength(end, unit)} from the top, for a zip of ${zipWords(longest)}`];
  });
  if (sold.length === 0)
    return ended === undefined
      ? "No zip sold by length is long enough: buy one off the roll."
      : `No zip sold by length is long enough for the opening as it is: ${ended}. You still get in.`;
  const which = passes ? "" : "For the least opening: ";
  return `${which}${which === "" ? "Buy" : "buy"} a zip of ${sold.map(zipWords).join(" or ")}, the next longer sold, and shorten it from below.${zip[unit] === null || ended === undefined ? "" : ` Or ${ended}.`}`;
}

const MARKS: Readonly<Record<ClosureReading["levelMarks"][number]["at"], string>> = {
  topEdge: "the top edge",
  underBust: "the under-bust seam",
  waist: "the waist seam",
  end: "the end of the opening",
};

/** Where both tapes, or both edges that are buttoned, are marked; null: nowhere. */
export function levelMarkWords({ levelMarks }: ClosureReading, closure: Closure, unit: LengthUnit): string | null {
  if (levelMarks.length === 0) return null;
  const marks = levelMarks.map(({ at, from }) => `${MARKS[at]} at ${formatLength(from, unit)}`);
  if (isButtoned(closure)) return `Mark both edges alike, from the top: ${listWords(marks)}.`;
  return `Mark both tapes alike, from the zip’s upper end: ${listWords(marks)}. Tack it in or hold it with wash-away tape, not pins; close it and see that the marks meet before you sew it for good.`;
}

export const OPACITY_WORDS: Readonly<Record<Opacity, string>> = {
  opaque: "nothing shows",
  sheer: "shapes show",
  clear: "all shows",
};

export const LINE_IT = "Line the dress";

export function underWords(under: Under): string {
  switch (under) {
    case "nothing":
      return "nothing";
    case "lining":
      return "lining";
    case "underlining":
      return "underlining";
    case "slip":
      return "a slip of its own";
  }
}

const SHOWING: Readonly<Record<UnderAdvice["showing"][number], string>> = {
  side: "side seams",
  princess: "princess seams",
  waist: "waist seam",
  darts: "darts",
  hem: "hem",
  edges: "edges",
};

const SEEN: Readonly<Record<SeenFinish, string>> = {
  frenchSeam: "as French seams",
  narrow: "sewn twice and trimmed close",
  bound: "bound",
  narrowHem: "turned twice, narrowly",
  binding: "bound",
};

/** What of the sewing shows, and how it is finished then; null: nothing does (common practice, no source). */
export function showingWords({ finishes }: UnderAdvice): string | null {
  if (finishes.length === 0) return null;
  const by = [...new Set(finishes.map((one) => SEEN[one.by]))].map((words) => {
    const of = finishes.filter((one) => SEEN[one.by] === words).map((one) => SHOWING[one.of]);
    return `${listWords(of)} ${words}`;
  });
  return `What shows through: ${by.join("; ")}.`;
}

/** A lining that is to go under it and is none of the parts yet; null: it is there. */
export const missingWords = ({ isThere }: UnderAdvice): string | null =>
  isThere ? null : "There is no lining yet: choose one under Lining.";

export const underOutcome = (opacity: Opacity, { chosen }: UnderAdvice): string =>
  `${OPACITY_WORDS[opacity]}; ${underWords(chosen)} under it`;
