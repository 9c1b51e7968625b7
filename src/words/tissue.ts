/** What is asked of the printed tissue: names of its lengths and where to lay the tape. */
import type { StyleName } from "../core/decisions/pattern";
import { DART_NAMES } from "../core/pattern/dartNames";
import type { PieceName, PointName } from "../core/pattern/piece";
import { NINE_OF_TEN } from "../core/statistics/normal";
import type { Misfit, NextTissue, TissueChange, TissueDoubt, TissueRef } from "../core/tissue/fitToTissue";
import { tissueWords } from "./terms/points";
import type { LengthUnit } from "../core/decisions/work";
import { TISSUE_UNUSUAL } from "../core/tolerance";
import type { Mm } from "../core/units";
import { formatAlong, formatAmount, formatAsked, formatSigned } from "./terms/length";
import { capital, centreWords, dartWords, levelWords, pieceWords } from "./terms/names";
import { listWords, plural } from "./terms/language";

interface LengthWords {
  readonly name: string;
  /** Where the tape lies, from which point to which. */
  readonly how: string;
}

/** Cups and backs on a midriff end at the under-bust, and so does the dart that opens below. */
const endsAtUnderBust = (piece: PieceName, style: StyleName): boolean =>
  style === "midriff" && (piece === "cup" || piece === "back");

export function tissueLengthWords({ piece, length }: TissueRef, style: StyleName): LengthWords {
  const seam = endsAtUnderBust(piece, style) ? "under-bust" : "waist";
  const lower = `${seam} dart`;
  const centre = centreWords(piece);
  switch (length) {
    case "waistDartMouth":
      return { name: `${capital(lower)}’s mouth`, how: `From leg to leg where it opens, on the ${seam} line.` };
    case "waistDartLength":
      return { name: `${capital(lower)}’s length`, how: "From the middle of its mouth to its end." };
    case "waistDartFromCentre":
      return {
        name: `${capital(lower)} from the centre`,
        how: `Straight, from the ${centre} to the nearer leg, on the ${seam} line.`,
      };
    case "waistDartMouthNext":
      return {
        name: `${capital(lower)}’s mouth, next size`,
        how: `The same dart in the next size up, from leg to leg on its own ${seam} line.`,
      };
    case "bustDartMouth":
      return { name: "Bust dart’s mouth", how: "From leg to leg where it opens on the side seam." };
    case "bustDartLength":
      return { name: "Bust dart’s length", how: "From the middle of its mouth in to its end." };
    case "bustDartFromUnderarm":
      return { name: "Bust dart from the underarm", how: "Down the side seam, from the underarm to the upper leg." };
    case "bustPointFromCentre":
      return {
        name: "Bust point from the centre",
        how: `Straight across, from the ${centre} to the bust point mark.`,
      };
    case "bustPointFromSideNeck":
      return {
        name: "Bust point from the side neck",
        how: "Straight, from where shoulder and neck meet to the mark.",
      };
    case "centreLength":
      return { name: "Length at the centre", how: `Down the ${centre}, from edge to edge.` };
    case "sideNeckToWaist":
      return {
        name: "Side neck to waist",
        how: `Straight down, beside the ${centre}, from where shoulder and neck meet to the waist line.`,
      };
    case "sideLength":
      return { name: "Side seam", how: "From end to end. A dart is folded: take the tape up over its mouth." };
    case "shoulderLength":
      return { name: "Shoulder seam", how: "From the neck to the armhole." };
    case "neckWidth":
      return {
        name: "Neck width",
        how: `Straight across, from the ${centre} carried up to where shoulder and neck meet.`,
      };
    case "neckDepth":
      return { name: "Neck depth", how: `Down the ${centre}, from level with the side neck to the neck edge.` };
    case "acrossWidth":
      return {
        name: "Across the narrowest",
        how: `Straight across, from the ${centre} to where the armhole comes nearest.`,
      };
    case "bustWidth":
      return { name: "Width at the bust", how: bustWidthWords(piece) };
    case "waistWidth":
      return { name: "Width at the waist", how: `Straight from corner to corner of the waist, darts open.` };
    case "hipWidth":
      return { name: "Width at the hip", how: `Straight across at the hip line, from the ${centre} to the side seam.` };
    case "underBustWidth":
      return {
        name: "Width at the under-bust",
        how: "Straight from corner to corner of the under-bust line, darts open.",
      };
    case "bustStep":
      return {
        name: "Bust, to the next size’s line",
        how: "At the side seam: from your line to the next size’s, straight across.",
      };
    case "waistStep":
      return {
        name: "Waist, to the next size’s line",
        how: "At the side seam: from your line to the next size’s, straight across.",
      };
    case "hipStep":
      return {
        name: "Hip, to the next size’s line",
        how: "At the side seam: from your line to the next size’s, straight across.",
      };
  }
}

/** Straight across, darts open. */
function bustWidthWords(piece: PieceName): string {
  if (piece === "sideFront") return "Straight across, from the bust mark of the princess seam to the side.";
  const at = piece === "back" ? "on its bust line" : "at the bust point";
  return `Straight across ${at}, from the ${centreWords(piece)} to the ${piece === "centreFront" ? "princess seam" : "side"}, darts open.`;
}

/** Said once for all of them. */
export const HOW_TO_MEASURE =
  "On the stitch line, the tissue flat; where only the cutting line is printed, take its allowance off. As many as you like: in grey stands what our stand-in has.";

/** The stand-in's figure as it stands in an empty field. */
export const standInEntry = (value: Mm, unit: LengthUnit): string =>
  formatAlong(value, unit).replace(/ (?:cm|in)$/, "");

export const lowerStart = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** "front waist dart’s mouth". */
export const tissueRefWords = (ref: TissueRef, style: StyleName): string =>
  `${pieceWords(ref.piece)} ${lowerStart(tissueLengthWords(ref, style).name)}`;

/** "+6 mm on the stand-in: side at the waist moves 5 mm." */
export function tissueChangeWords({ piece, by, moved }: TissueChange, unit: LengthUnit): string {
  const nothing = formatAmount(0, unit);
  if (formatAmount(Math.abs(by), unit) === nothing) return "As the stand-in has it.";
  const [most] = moved;
  const what =
    most === undefined || formatAmount(most.by, unit) === nothing
      ? ""
      : `: ${pointWords(most.point, piece)} moves ${formatAmount(most.by, unit)}`;
  return `${formatSigned(by, unit)} on the stand-in${what}.`;
}

/** Ends and mouths of darts in short. */
function pointWords(point: PointName, piece: PieceName): string {
  const dart = DART_NAMES.find((name) => point.startsWith(name));
  if (dart === undefined) return tissueWords(point, piece);
  return `${point.endsWith("Apex") ? "end" : "mouth"} of the ${dartWords(dart)}`;
}

export interface TissueContext {
  readonly unit: LengthUnit;
  readonly style: StyleName;
}

/** Beside the field: "2 mm less than the back side seam allows. Measure both again; it is left out until then." */
export function misfitWords(
  { by, against, againstPrinted, withinTape }: Misfit,
  { unit, style }: TissueContext,
): string {
  const off = `${formatAsked(Math.abs(by), unit)} ${by < 0 ? "less" : "more"} than`;
  const named = [
    ...against.map((ref) => tissueRefWords(ref, style)),
    ...againstPrinted.map((level) => `${levelWords(level)} that your chart prints as finished`),
  ];
  const allow =
    named.length === 0
      ? `${off} the pieces allow`
      : `${off} the ${listWords(named)} ${plural(named.length, { one: "allows", other: "allow" })}`;
  if (withinTape) return `${capital(allow)}: no more than a tape is good to, so it is left out.`;
  const again = ["it", "both"][against.length] ?? "these";
  return `${capital(allow)}. Measure ${again} again; it is left out until then.`;
}

/** At the top, of one that must be measured again: "Front side seam: 2 mm less than …". */
export const misfitHead = (misfit: Misfit, context: TissueContext): string =>
  `${capital(tissueRefWords(misfit, context.style))}: ${lowerStart(misfitWords(misfit, context))}`;

const LEVELS = ["waist", "bust", "hip"] as const;
type Level = (typeof LEVELS)[number];

/** What is told of a doubt: nine of ten lie within. */
const told = (spread: Mm, unit: LengthUnit): string => `±${formatAmount(spread * NINE_OF_TEN, unit)}`;

/** "The finished waist is known to ±9 mm, the bust to ±12 mm." null where nothing tells. */
export function knownWords({ finished }: TissueDoubt, unit: LengthUnit): string | null {
  const known = LEVELS.flatMap((level) => {
    const spread = finished[level];
    return spread === null ? [] : [`${level} to ${told(spread, unit)}`];
  });
  return known.length === 0 ? null : `Finished girths are known so far: ${listWords(known)}.`;
}

/** The girth that a length helps most, and what it is known to without and with it; null where none gains what a tape shows. */
function gainOf({ saves }: NextTissue, { finished }: TissueDoubt, unit: LengthUnit): string | null {
  const gains = LEVELS.flatMap((level): { level: Level; spread: Mm; saved: Mm }[] => {
    const spread = finished[level];
    return spread === null ? [] : [{ level, spread, saved: saves[level] }];
  });
  const best = gains.toSorted((a, b) => b.saved - a.saved)[0];
  if (best === undefined) return null;
  const [now, then] = [told(best.spread, unit), told(best.spread - best.saved, unit)];
  return now === then ? null : `the finished ${best.level} is known to ${now}, with it to ${then}`;
}

/** What follows the name of the length that is worth most: " – the finished waist is known to ±9 mm, with it to ±4 mm." */
export function nextGainWords(next: NextTissue, doubt: TissueDoubt, unit: LengthUnit): string {
  const gain = gainOf(next, doubt, unit);
  return gain === null ? "." : `: ${gain}.`;
}

/** Beside a figure so far from our draft's that it may be another length, or another unit. */
export const unusualWords = ({ by }: TissueChange, unit: LengthUnit): string | null =>
  Math.abs(by) < TISSUE_UNUSUAL
    ? null
    : `${formatAmount(Math.abs(by), unit)} ${by < 0 ? "less" : "more"} than our draft: is that right?`;

/** Answers that are kept, and that nothing is drawn from. */
export const otherCutWords = (refs: readonly TissueRef[], style: StyleName): string =>
  `By these your bust dart opens low on the side, a French dart; our stand-in’s opens under the arm. They are kept, and nothing is drawn from them: ${listWords(refs.map((ref) => tissueRefWords(ref, style)))}. A file of your pieces has your dart.`;

export const OWN_IN_USE = "The plan is made on your own pieces: what you measure here counts once they are put away.";
export const SIZE_GONE = "This size is not in the chart any more: say which line you measured.";
export const NOT_ON_PIECES = "Measured, but not on the pieces of this style:";
