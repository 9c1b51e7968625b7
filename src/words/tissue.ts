/** What is asked of the printed tissue: names of its lengths and where to lay the tape. */
import type { TissueLength } from "../core/decisions/tissue";
import type { PieceName } from "../core/pattern/piece";
import type { LengthUnit } from "../core/decisions/work";
import type { Mm } from "../core/units";
import { formatAmount, formatLength } from "./terms/length";
import { capital, centreWords, pieceWords } from "./terms/names";

interface LengthWords {
  readonly name: string;
  /** Where the tape lies, from which point to which. */
  readonly how: string;
}

/** The dart that opens below the bust, by the seam it opens on. */
const lowerDartWords = (piece: PieceName, style: "waist" | "underBust"): string =>
  style === "underBust" || piece === "cup" ? "under-bust dart" : "waist dart";

export interface TissueWordsOf {
  readonly piece: PieceName;
  readonly length: TissueLength;
  /** The seam that the lower dart of this piece opens on. */
  readonly lowerDart?: "waist" | "underBust";
}

export function tissueLengthWords({ piece, length, lowerDart = "waist" }: TissueWordsOf): LengthWords {
  const lower = lowerDartWords(piece, lowerDart);
  const seam = lower === "waist dart" ? "waist" : "under-bust";
  const centre = centreWords(piece);
  switch (length) {
    case "waistDartMouth":
      return { name: `${capital(lower)}’s mouth`, how: `From leg to leg where it opens, on the ${seam} line.` };
    case "waistDartLength":
      return { name: `${capital(lower)}’s length`, how: "From the middle of its mouth up to its end." };
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
      return { name: capital(centre), how: `Down the ${centre}, from edge to edge.` };
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
      return { name: "Width at the under-bust", how: "Straight from corner to corner of the under-bust line, darts open." };
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
  if (piece === "centreFront" || piece === "sideFront") return "Straight across at the bust point, from edge to edge.";
  const from = piece === "cup" ? "level with the bust point, from the side" : "from the underarm corner";
  return `Straight across ${from} to the ${centreWords(piece)}, darts open.`;
}

/** Said once for all of them. */
export const HOW_TO_MEASURE =
  "On the stitch line, the tissue flat; where only the cutting line is printed, take its allowance off. As many as you like: in grey stands what our stand-in has.";

/** The stand-in's figure as it stands in an empty field. */
export const standInEntry = (value: Mm, unit: LengthUnit): string =>
  (unit === "in" ? formatAmount(value, unit) : formatLength(value, unit)).replace(/ (?:cm|in)$/, "");
