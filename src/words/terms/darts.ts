/** Darts in words: handles, figures, verdicts. */
import type { GiveBackPlace, Hold } from "../../core/decisions/alteration";
import type { Stop } from "../../core/dart/dartEnd";
import { coneHeight } from "../../core/dart/fullness";
import {
  endFails,
  endsAsUsual,
  isAside,
  type DartEndReading,
  type JudgedDartEnd,
} from "../../core/dart/dartEndReading";
import { homeOf, liesAlongBust } from "../../core/pattern/dartNames";
import type { DartName, DartRef, PieceName } from "../../core/pattern/piece";
import type { PlannedDart, PlanGarment } from "../../core/plan/plan";
import type { DartSetting } from "../../core/plan/setDart";
import type { LengthUnit } from "../../core/decisions/work";
import { BUST_POINT_AGREEMENT, DART_ASIDE_USUAL, FULLNESS_NOTICED } from "../../core/tolerance";
import { degreesFrom, type Mm, type Radians } from "../../core/units";
import { differenceTold, formatAmount, formatAlong, formatRound } from "./length";
import { capital, centreWords, dartRefWords } from "./names";
import { fixedDecimals, listWords } from "./language";

export const formatAngle = (angle: Radians): string => `${fixedDecimals(degreesFrom(angle), 1)}°`;

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

/** What a handle on the table is: "front waist dart, end". */
export const dartHandleName = (ref: DartRef, end: "apex" | "inner" | "outer"): string =>
  `${dartRefWords(ref)}, ${endWords(ref.dart, ref.piece, end)}`;

/** "Mouth 38 mm, angle 20.6°, fullness 29 mm". */
export const figuresWords = ({ intake, angle, fullness }: PlannedDart["drawn"], unit: LengthUnit): string =>
  `Mouth ${formatAmount(intake, unit)}, angle ${formatAngle(angle)}, fullness ${formatAmount(fullness, unit)}`;

/** The figures that a handle changes: "12 mm short of the bust point. Mouth 38 mm, angle 20.6°, fullness 29 mm". */
export function dartHandleValue(
  { ref, drawn }: Pick<PlannedDart, "ref" | "drawn">,
  end: "apex" | "inner" | "outer",
  unit: LengthUnit,
): string {
  const where =
    end !== "apex" || drawn.end === null
      ? ""
      : `${endAtWords(ref, drawn.end, (amount) => formatAmount(amount, unit))}. `;
  return capital(`${where}${figuresWords(drawn, unit)}`);
}

/** "18.1° between legs of 16.0 cm stands 25 mm high". */
export const discSentence = (
  { angle, leg, height }: { readonly angle: Radians; readonly leg: Mm; readonly height: Mm },
  unit: LengthUnit,
): string =>
  `${formatAngle(angle)} between legs of ${formatAlong(leg, unit)} stands ${formatAmount(height, unit)} high`;

const BY_SIGHT = { pointed: "pointed", right: "right", flat: "too flat" } as const;

/** How the dart as drawn compares with the one the wearer's cup asks for. */
export function verdictSentence({ verdict, bySight, drawn, wanted }: PlannedDart, unit: LengthUnit): string {
  if (wanted === null) return "It serves no bust; it is held against what is printed.";
  const by = differenceTold(drawn.fullness, wanted.fullness, unit);
  if (bySight !== null && Math.abs(drawn.fullness - wanted.fullness) > FULLNESS_NOTICED)
    return `As you took it from the toile, where it came out ${BY_SIGHT[bySight]}: ${formatAmount(Math.abs(by), unit)} ${by > 0 ? "fuller" : "less full"} than your cup asks.`;
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

/** "Fullness over 80 mm from the end.", and what a dart with shorter legs stands over them. */
export function fullnessOverSentence({ drawn, coneRadius }: PlannedDart, unit: LengthUnit): string {
  const over = `Fullness over ${formatAmount(coneRadius, unit)} from the end.`;
  const leg = Math.min(drawn.legInner, drawn.legOuter);
  if (formatAmount(leg, unit) === formatAmount(coneRadius, unit) || leg > coneRadius) return over;
  return `${over} As drawn its legs end after ${formatAmount(leg, unit)}: over them it stands ${formatAmount(coneHeight(drawn.angle, leg), unit)} high.`;
}

/**
 * "12 mm short of the bust point, which lies 14 mm above its line": where a dart ends, and to which side of the line it points
 * along the bust point lies, where that is out of the usual.
 */
export function endAtWords(
  dart: DartRef,
  { along, across }: DartEndReading,
  format: (amount: Mm) => string,
  point = "the bust point",
): string {
  const where = `${format(Math.abs(along))} ${along < 0 ? "past" : "short of"} ${point}`;
  return isAside(across) ? `${where}, which lies ${format(Math.abs(across))} ${besideWords(dart, across)}` : where;
}

/** To which side of a dart's line a point lies, in the wearer's terms. */
export function besideWords({ piece, dart }: DartRef, across: Mm): string {
  if (liesAlongBust(dart)) return `${across > 0 ? "above" : "below"} its line`;
  return `nearer the ${across > 0 ? centreWords(piece) : "side"} than its line`;
}

/** "9 mm above": where the bust point lies beside a dart's line, in a cell of a table. */
export function besideCell({ piece, dart }: DartRef, across: Mm, unit: LengthUnit): string {
  const amount = formatAmount(Math.abs(across), unit);
  if (amount === formatAmount(0, unit)) return "on it";
  if (liesAlongBust(dart)) return `${amount} ${across > 0 ? "above" : "below"}`;
  return `${amount} to the ${across > 0 ? centreWords(piece) : "side"}`;
}

/** What is usual for a dart's end, as far as it is out of it. */
function usualEndWords(usualStop: Stop, { along, across }: JudgedDartEnd, unit: LengthUnit): string {
  const stop = `${formatRound(usualStop.least, unit)} to ${formatRound(usualStop.most, unit)} short`;
  const aside = `${formatRound(DART_ASIDE_USUAL, unit)} beside at the most`;
  const parts = [...(along !== "usual" || across === "usual" ? [stop] : []), ...(across === "usual" ? [] : [aside])];
  return `${parts.join(" and ")} is usual (common practice)`;
}

/** Where a dart ends against the bust point. */
export function stopSentence({ ref, drawn, usualStop, endJudged }: PlannedDart, unit: LengthUnit): string | null {
  if (drawn.end === null || usualStop === null || endJudged === null) return null;
  const where = endAtWords(ref, drawn.end, (amount) => formatAmount(amount, unit));
  const usual = usualEndWords(usualStop, endJudged, unit);
  return endJudged.along === "past" ? `It ends ${where}: shorten it. ${usual}.` : `It ends ${where}; ${usual}.`;
}

/** "Your bust point is 21 mm lower and 18 mm nearer the centre front than the pattern's"; null where the two agree as a tape can tell. */
export function ownBustPointSentence(
  { own, printed }: PlanGarment["bustPoint"],
  { piece }: DartRef,
  unit: LengthUnit,
): string | null {
  if (own === null || Math.hypot(own.x - printed.x, own.y - printed.y) <= BUST_POINT_AGREEMENT) return null;
  const amount = (value: Mm): string => formatAmount(Math.abs(value), unit);
  const [aside, down] = [own.x - printed.x, own.y - printed.y];
  const moves = [
    ...(amount(down) === amount(0) ? [] : [`${amount(down)} ${down > 0 ? "lower" : "higher"}`]),
    ...(amount(aside) === amount(0) ? [] : [`${amount(aside)} nearer the ${aside > 0 ? "side" : centreWords(piece)}`]),
  ];
  return `Your bust point is ${listWords(moves)} than the pattern's.`;
}

/** The one tap that sets a dart as it should be. */
export const settingWords = ({ what }: DartSetting): string =>
  what === "cup" ? "Set it as your cup asks" : "Set its end where it is usual";

/** Past this a single dart stands off as a point and its cap cannot be pressed flat (common practice, no source). */
const DEEP_DART_DEGREES = 45;

/** A dart too deep to be sewn as one. */
export const deepNote = ({ ref, drawn }: PlannedDart): string | null =>
  degreesFrom(drawn.angle) <= DEEP_DART_DEGREES
    ? null
    : `The ${dartRefWords(ref)} is ${formatAngle(drawn.angle)} wide, deep for a single dart (common practice, no source): sew a trial first, and think of sharing it between two.`;

/**
 * For paper: said only of a dart that ends out of the usual; what fails a check is said there. What she saw on the toile needs
 * no trial.
 */
export function stopNote({ ref, drawn, usualStop, endJudged, bySight }: PlannedDart, unit: LengthUnit): string | null {
  if (bySight !== null || drawn.end === null || usualStop === null || endJudged === null) return null;
  if (endsAsUsual(endJudged) || endFails(endJudged)) return null;
  const where = endAtWords(ref, drawn.end, (amount) => formatAmount(amount, unit));
  return (
    `The ${dartRefWords(ref)} ends ${where}; ${usualEndWords(usualStop, endJudged, unit)}. ` +
    "Try the end at that point on a trial, or move it on Darts."
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
  `${formatAlong(before, unit)} before, ${formatAlong(after, unit)} after`;
