/** Darts in words: handles, figures, verdicts. */
import type { GiveBackPlace, Hold } from "../../core/decisions/alteration";
import { homeOf } from "../../core/pattern/dartNames";
import type { DartName, PieceName } from "../../core/pattern/piece";
import type { PlannedDart } from "../../core/plan/plan";
import type { LengthUnit } from "../../core/decisions/work";
import { READS_AS_NOTHING } from "../../core/tolerance";
import { degreesFrom, type Mm, type Radians } from "../../core/units";
import { formatAmount, formatRound, formatLength } from "./length";
import { centreWords, dartRefWords } from "./names";

export const formatAngle = (angle: Radians): string => `${degreesFrom(angle).toFixed(1)}°`;

/** "end", "upper mouth end", "mouth end towards the side seam". */
export function endWords(dart: DartName, piece: PieceName, end: "apex" | "inner" | "outer"): string {
  if (end === "apex") return "end";
  switch (homeOf(dart)) {
    case "side":
    case "french":
    case "armhole":
    case "centre":
      return end === "inner" ? "upper mouth end" : "lower mouth end";
    case "shoulder":
      return end === "inner" ? "mouth end nearer the neck" : "mouth end nearer the armhole";
    case "neck":
      return end === "inner" ? `mouth end nearer the ${centreWords(piece)}` : "mouth end nearer the shoulder";
    case "waist":
    case "underBust":
      return end === "inner" ? `mouth end nearer the ${centreWords(piece)}` : "mouth end nearer the side seam";
  }
}

/** What a handle on the table is, with the figures it changes. */
export function dartHandleLabel(
  { ref, drawn }: PlannedDart,
  end: "apex" | "inner" | "outer",
  unit: LengthUnit,
): string {
  return (
    `${dartRefWords(ref)}, ${endWords(ref.dart, ref.piece, end)}. Mouth ${formatAmount(drawn.intake, unit)}, ` +
    `angle ${formatAngle(drawn.angle)}, fullness ${formatAmount(drawn.fullness, unit)}`
  );
}

/** "18.1° between legs of 16.0 cm stands 25 mm high". */
export const discSentence = (
  { angle, leg, height }: { readonly angle: Radians; readonly leg: Mm; readonly height: Mm },
  unit: LengthUnit,
): string =>
  `${formatAngle(angle)} between legs of ${formatLength(leg, unit)} stands ${formatAmount(height, unit)} high`;

/** How the dart as drawn compares with the one the wearer's cup asks for. */
export function verdictSentence({ verdict, drawn, wanted }: PlannedDart, unit: LengthUnit): string {
  if (wanted === null) return "It serves no bust; it is held against what is printed.";
  const by = drawn.fullness - wanted.fullness;
  switch (verdict) {
    case "asWanted":
      return formatAmount(by, unit) === formatAmount(0, unit)
        ? "As full as your cup asks."
        : `As full as your cup asks: ${formatAmount(Math.abs(by), unit)} ${by > 0 ? "fuller" : "less full"}, too little to notice.`;
    case "tooSharp":
      return `Too sharp: ${formatAmount(by, unit)} fuller at the point than your cup asks. It may stand off as a point.`;
    case "tooFlat":
      return `Too flat: ${formatAmount(-by, unit)} less full than your cup asks. It may pull across the bust.`;
  }
}

/** Where a dart ends against the bust point. */
export function stopSentence({ drawn, usualStop, beyondBustPoint }: PlannedDart, unit: LengthUnit): string | null {
  const { apexToBustPoint: short } = drawn;
  if (short === null || usualStop === null) return null;
  const usual = `${formatRound(usualStop.least, unit)} to ${formatRound(usualStop.most, unit)} short is usual (common practice)`;
  return beyondBustPoint
    ? `It ends ${formatAmount(-short, unit)} past the bust point: shorten it. ${usual}.`
    : `It ends ${formatAmount(short, unit)} short of the bust point; ${usual}.`;
}

/** Past this a single dart stands off as a point and its cap cannot be pressed flat (common practice, no source). */
const DEEP_DART_DEGREES = 45;

/** A dart too deep to be sewn as one. */
export const deepNote = ({ ref, drawn }: PlannedDart): string | null =>
  degreesFrom(drawn.angle) <= DEEP_DART_DEGREES
    ? null
    : `The ${dartRefWords(ref)} is ${formatAngle(drawn.angle)} wide, deep for a single dart (common practice, no source): sew a trial first, and think of sharing it between two.`;

/** For paper: said only of a dart that stops out of the usual; one past the bust point is a check that fails. */
export function stopNote({ ref, drawn, usualStop, beyondBustPoint }: PlannedDart, unit: LengthUnit): string | null {
  const { apexToBustPoint: short } = drawn;
  if (short === null || usualStop === null || beyondBustPoint) return null;
  if (short > usualStop.least - READS_AS_NOTHING && short < usualStop.most + READS_AS_NOTHING) return null;
  return (
    `The ${dartRefWords(ref)} ends ${formatAmount(short, unit)} short of the bust point; ${formatRound(usualStop.least, unit)} to ` +
    `${formatRound(usualStop.most, unit)} is usual (common practice). Try the end at that point on a trial, or move it on Darts.`
  );
}

const upperWords = (piece: PieceName): string => (piece === "cup" ? "strap" : "shoulder");

export const placeWords = (place: GiveBackPlace, piece: PieceName): string => {
  switch (place) {
    case "centreSeam":
      return `${centreWords(piece)} seam`;
    case "sideSeam":
      return "side seam, at the waist";
    case "otherDart":
      return piece === "front" ? "back waist dart" : "front waist dart";
    case "underarm":
      return "side seam, at the underarm";
    case "waistEnd":
      return "side seam, at its waist end";
    case "armholeEnd":
      return `corner where the ${upperWords(piece)} meets the armhole`;
    case "neckEnd":
      return `corner where the ${upperWords(piece)} meets the neckline`;
    case "centreEnd":
      return `lower end of the ${centreWords(piece)} seam`;
  }
};

export const holdWords = (hold: Hold): { readonly name: string; readonly what: string } =>
  hold === "mouth"
    ? {
        name: "Hold the mouth",
        what: "The width on the seam stays; a shorter dart gets wider in angle, so fuller and sharper.",
      }
    : {
        name: "Hold the fullness",
        what: "The angle stays; a shorter dart gets a narrower mouth, and what that sets free is given back elsewhere.",
      };

/** What truing did to the legs, where it did enough to see. */
export function truingSentence({ ref, truing }: PlannedDart, unit: LengthUnit): string | null {
  const amount = formatAmount(Math.abs(truing.inner), unit);
  if (amount === formatAmount(0, unit)) return null;
  const [longer, shorter] = truing.inner > 0 ? (["inner", "outer"] as const) : (["outer", "inner"] as const);
  return (
    `Trued so that the legs sew together: the ${endWords(ref.dart, ref.piece, longer)} is carried ${amount} out along its leg, ` +
    `the ${endWords(ref.dart, ref.piece, shorter)} ${amount} in.`
  );
}

/** "39.6 cm before, 39.6 cm after": the sewn seam. */
export const seamProof = (before: Mm, after: Mm, unit: LengthUnit): string =>
  `${formatLength(before, unit)} before, ${formatLength(after, unit)} after`;
