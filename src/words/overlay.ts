/** The words on overlay strips, and how they are used on the tissue. */
import type { Overlay, OverlayPiece, Patch, PatchAmount, PatchOf, TooMuchWhy } from "../core/overlay/overlay";
import { isTurnedOver } from "../core/cutting/turnedOver";
import { DART_NAMES, homeOf } from "../core/pattern/dartNames";
import { isBasque } from "../core/pattern/pieceGroups";
import { isNumbered, type DartName, type PieceName, type PointName, type SeamName } from "../core/pattern/piece";
import type { LengthUnit } from "../core/decisions/work";
import { namedHalf } from "./truePaper";
import { formatAmount } from "./terms/length";
import { capital, centreWords, dartWords, levelWords, pieceWords, seamWords } from "./terms/names";
import { listWords } from "./terms/language";

/** Short names of printed points, to stand beside their crosses. */
const POINTS: Readonly<Partial<Record<PointName, string>>> = {
  sideNeck: "side neck",
  shoulderTip: "shoulder tip",
  underarm: "underarm",
  sideBust: "side, bust line",
  sideWaist: "side waist",
  sideHip: "side, hip line",
  sideHem: "side hem",
  sideUnderBust: "side, under bust",
  bustPoint: "bust point",
  princessTop: "top of princess seam",
  princessBust: "princess seam at bust",
  princessWaist: "princess seam at waist",
  strapInner: "inner strap end",
  strapOuter: "outer strap end",
  strapFrontInner: "front strap end, inner",
  strapFrontOuter: "front strap end, outer",
  strapBackInner: "back strap end, inner",
  strapBackOuter: "back strap end, outer",
};

const CENTRE_POINTS: Readonly<Partial<Record<PointName, string>>> = {
  centreNeck: "neck",
  centreBust: "bust line",
  underBustCentre: "under bust",
  centreWaist: "waist",
  centreHip: "hip line",
  centreHem: "hem",
};

/** "side waist", "centre front, bust line", "side dart, upper end", "waist dart, end". */
export function layOnWords(name: PointName, piece: PieceName): string {
  const own = POINTS[name];
  if (own !== undefined) return own;
  const centre = CENTRE_POINTS[name];
  if (centre !== undefined) return `${centreWords(piece)}, ${centre}`;
  const dart = DART_NAMES.find((one) => DART_ENDS.some((end) => name === `${one}${end}`));
  if (dart === undefined) return isNumbered(name) ? `corner ${Number(name.slice(-2)) + 1}` : "corner";
  return `${dartWords(dart)}, ${dartEndWords(dart, name)}`;
}

const DART_ENDS = ["Inner", "Outer", "Apex"] as const;

/** Of upright darts the inner end lies nearer the centre; of those that open at the side or the centre it is the upper one. */
function dartEndWords(dart: DartName, name: PointName): string {
  if (name.endsWith("Apex")) return "point";
  const home = homeOf(dart);
  const isUpright = home !== "side" && home !== "french" && home !== "centre" && home !== "armhole";
  return name.endsWith("Inner") ? (isUpright ? "inner end" : "upper end") : isUpright ? "outer end" : "lower end";
}

/** Piece, half and number: "Front", "Front, left half, strip 1 of 2". */
export function stripTitle({
  piece,
  label,
  half,
  number,
  count,
}: Pick<Patch, "piece" | "label" | "half" | "number" | "count">): string {
  const name = pieceTitle({ piece, half, ...(label === undefined ? {} : { label }) });
  return count === 1 ? name : `${name}, strip ${number} of ${count}`;
}

const pieceTitle = ({ piece, label, half }: OverlayPiece): string =>
  capital(namedHalf(label ?? pieceWords(piece), half));

/** Ends of a stretch of side seam or centre line: the level alone says where. */
const LEVEL_ENDS: Readonly<Partial<Record<PointName, string>>> = {
  underarm: "underarm",
  sideBust: "bust line",
  sideUnderBust: "under-bust seam",
  sideWaist: "waist",
  sideHip: "hip line",
  sideHem: "hem",
  ...CENTRE_POINTS,
};

/** Ends of a stretch of a seam across the piece. */
const CROSS_ENDS: Readonly<Partial<Record<PointName, string>>> = {
  sideWaist: "side seam",
  sideUnderBust: "side seam",
  sideHem: "side seam",
  princessTop: "top",
  princessBust: "bust",
  princessWaist: "waist",
};

function endWords(name: PointName, seam: SeamName, piece: PieceName): string {
  if (seam === "side" || seam === "centre") return LEVEL_ENDS[name] ?? layOnWords(name, piece);
  if (CENTRE_POINTS[name] !== undefined) return centreWords(piece);
  if (seam !== "princess" && name.startsWith("princess")) return "princess seam";
  return CROSS_ENDS[name] ?? layOnWords(name, piece);
}

/** "side seam, underarm to waist": one for each seam or dart on the strip. */
export const stripOf = ({ of, piece }: Pick<Patch, "of" | "piece">): readonly string[] =>
  of.map((one) => ofWords(one, piece));

function ofWords(of: PatchOf, piece: PieceName): string {
  if (of.kind === "dart") return dartWords(of.dart);
  const seam = seamWords(of.seam, piece);
  const [from, to] = [endWords(of.from, of.seam, piece), endWords(of.to, of.seam, piece)];
  return from === to ? `${seam} at the ${from}` : `${seam}, ${from} to ${to}`;
}

/** What is laid on what, line by line: "Lay the dashed line on the 12 line of the front,", "cup version D." */
export const layOnLines = (
  { tissue, piece, half, cup }: Pick<Patch, "tissue" | "piece" | "half" | "cup">,
  baseSize: string,
): readonly string[] => [
  `Lay the dashed line on the ${baseSize} line of the ${pieceWords(tissue)}${cup === undefined ? "." : ","}`,
  ...(cup === undefined ? [] : [`cup version ${cup}.`]),
  ...(isTurnedOver(piece, half) ? ["Turn the tracing over before you cut."] : []),
];

/** The line that strips are laid on, by the label of its size: "12"; "old", of a piece as it was before. */
export const lineCalled = (label: string | null): string => label ?? "old";

/** Beside the arrow up the piece. */
export const upWords = (piece: PieceName): string =>
  isBasque(piece)
    ? "up, to the waist"
    : piece === "frontBand" || piece === "backBand"
      ? "up, to the bust"
      : piece === "strap"
        ? "to the back end"
        : "up, to the neck";

/** Beside the arrow to the centre line; a strap has none. */
export const centreArrowWords = (piece: PieceName): string =>
  piece === "strap" ? "to the neck edge" : `${centreWords(piece)} this way`;

/** "waist: 5 mm outside the 12 line", "hip: on the 14 line". */
export function amountWords({ level, between, offset }: PatchAmount, unit: LengthUnit): string {
  const [lower] = between;
  const amount = formatAmount(Math.abs(offset), unit);
  if (amount === formatAmount(0, unit)) return `${levelWords(level)}: on the ${lower} line`;
  return `${levelWords(level)}: ${amount} ${offset > 0 ? "outside" : "inside"} the ${lower} line`;
}

/** What strips are laid on. */
interface LaidOn {
  readonly first: string;
  readonly under: string;
  readonly thick: string;
  readonly print: string;
  readonly asIs: string;
}

/** How the strips are used, step by step. */
const steps = ({ first, under, thick, print, asIs }: LaidOn): readonly string[] => [
  `All lines are stitch lines. ${first}`,
  "Print this page alone at 100 % and measure the test square. If it is not true, stop: scaling is on. If a side of the thin frame round it is missing, this is the wrong paper. Then print the others; nothing is joined.",
  "Cut the strips apart on their thin outer lines.",
  `Slide a strip under the ${under}, words up, and turn it until its arrows point as they say. Where ${thick} on thick paper, work against a window pane or a light.`,
  `Match the dashed line and every cross to the ${print}. If one will not meet, look at the strip’s name and its size again: do not force it.`,
  `Hold both with weights or tape, lay your tracing paper over them and trace the heavy line in place of the ${asIs} one. It runs a little beyond what changed, on the ${asIs} line, so that you see the join.`,
  "Add your seam and hem allowances outside the heavy line before you cut.",
  `Write the piece on your tracing, take the strip away and go on to the next. What no strip shows is traced ${asIs === "old" ? "as it was" : "as printed"}.`,
];

export const OVERLAY_STEPS: readonly string[] = steps({
  first: "If your tissue prints cutting lines, draw the stitch line of your size in first.",
  under: "printed tissue",
  thick: "the pattern is",
  print: "print",
  asIs: "printed",
});

/** The same on pieces of her own, as they were cut for a version: "trial 2". */
export const oldOverlaySteps = (called: string): readonly string[] =>
  steps({
    first: `Take the paper that ${called} was cut by; draw its stitch line in where it has allowances.`,
    under: "old piece",
    thick: "it is",
    print: "old piece",
    asIs: "old",
  });

export const OVERLAY_CAUTION =
  "Scissors or blade: cut away from your hand, close the blade each time you lay it down, and lay the tissue aside before you cut a strip.";

const WHY: Readonly<Record<TooMuchWhy, string>> = {
  mostMoved: "so much of it moved that strips would take nearly as much paper as the piece. Print the piece itself.",
  cutAndMoved:
    "its parts are cut and moved, so that strips would take nearly as much paper as the piece. Cut and move the tissue by the checklist, or print the piece itself.",
  notPrinted: "your tissue has no such piece in this size. Print the piece itself.",
  noHold: "too few printed points lie near what moved to lay a strip on by. Print the piece itself.",
};

const OLD_WHY: Readonly<Record<TooMuchWhy, string>> = {
  ...WHY,
  notPrinted: "it was not there before. Print the piece itself.",
  noHold: "too few points of the old piece lie near what moved to lay a strip on by. Print the piece itself.",
};

/** Where the halves differ each is traced by itself. */
const HALVES =
  "Left and right differ: trace such a piece twice, once for each half, and turn over the tracings whose strip says so. Halves that meet on a fold are joined there and cut once, in one layer.";

/** What has no strip and why, and what to mind, a sentence each. */
export function withoutStrips({
  same,
  tooMuch,
  patches,
  baseSize,
}: Pick<Overlay, "same" | "tooMuch" | "patches"> & Partial<Pick<Overlay, "baseSize">>): readonly string[] {
  const isOld = baseSize?.label === null;
  const unchanged =
    same.length === 0
      ? []
      : [
          `${isOld ? "As they were" : "As printed"}, nothing to lay on: ${listWords(same.map((one) => `the ${pieceTitle(one).toLowerCase()}`))}.`,
        ];
  return [
    ...(patches.some(({ half }) => half !== null) ? [HALVES] : []),
    ...unchanged,
    ...tooMuch.map((one) => `${pieceTitle(one)}: ${(isOld ? OLD_WHY : WHY)[one.why]}`),
  ];
}
