/** Checks in words: what each claims, and what to say of one that does not hold. */
import type { CheckName, CheckResult } from "../core/checks/check";
import type { PointName } from "../core/pattern/piece";
import type { LengthUnit } from "../core/decisions/work";
import { DART_STOP_LEAST, DART_STOP_MOST } from "../core/tolerance";
import { halfWords } from "./fits";
import { formatAlong, formatAmount, formatFine, formatLeast, formatLength } from "./terms/length";
import { besideCell, besideWords } from "./terms/darts";
import { capital, dartWords, levelWords, pieceWords, seamWords } from "./terms/names";
import { listWords, plural } from "./terms/language";

const CLAIMS: Readonly<Record<CheckName, string>> = {
  girthAsClaimed: "The pieces measure what the plan says",
  seamsWalk: "Seams that are sewn together are as long as each other",
  halvesWalk: "Left and right half can be sewn to each other",
  strapsReach: "Straps reach over the shoulder and fit their seams",
  dartLegsEqual: "The two legs of a dart are equally long",
  cornersSquare: "Corners at the centre line are square",
  joinedCornersStraight: "Edges run straight on where two pieces join",
  dartEndShortOfBustPoint: "A dart ends short of the bust point",
  dartPointsAtBustPoint: "A dart points at the bust point",
  seamsSmooth: "Seams run smoothly, without corners",
  openingPasses: "The opening lets the body through",
  outlineClosed: "Every outline is closed and does not cross itself",
  dartsClear: "Darts lie within their pieces and cross no other dart",
  alterationsMade: "Every alteration could be made",
};

export const checkClaim = (name: CheckName): string => CLAIMS[name];

const POINTS: Readonly<Partial<Record<PointName, string>>> = {
  centreNeck: "centre of the neck edge",
  sideNeck: "side neck point",
  shoulderTip: "shoulder tip",
  armholeTouch: "inner armhole",
  armholeHinge: "lower armhole",
  underarm: "underarm",
  sideBust: "side at the bust line",
  sideWaist: "side at the waist",
  sideHip: "side at the hip",
  sideHem: "side at the hem",
  centreHem: "centre at the hem",
  centreHip: "centre at the hip",
  centreWaist: "centre at the waist",
  centreBust: "centre at the bust line",
  bustPoint: "bust point",
};

export const pointWords = (point: PointName): string => POINTS[point] ?? "dart";

const degreesWords = (degrees: number): string => `${Math.round(degrees * 10) / 10}°`;

const piecesWords = (check: CheckResult): string =>
  check.pieces.length === 0 ? "the pieces" : listWords(check.pieces.map((piece) => `the ${pieceWords(piece)}`));

const dartOfCheck = (check: CheckResult): string => {
  const [piece] = check.pieces;
  const dart = check.dart === undefined ? "dart" : dartWords(check.dart);
  return piece === undefined ? dart : `${pieceWords(piece)} ${dart}`;
};

const faultsWords = (count: number, one: string, many: string): string =>
  plural(count, { one: `one ${one}`, other: `${count} ${many}` });

/** Whether an amount would be marked as nothing. */
const isUnmarked = (mm: number, unit: LengthUnit): boolean =>
  formatAmount(Math.abs(mm), unit) === formatAmount(0, unit);

const amountOrFine = (mm: number, unit: LengthUnit): string =>
  isUnmarked(mm, unit) ? formatFine(mm, unit) : formatAmount(mm, unit);

/** What is the matter and by how much, for a check that does not hold. */
export function checkFailureSentence(check: CheckResult, unit: LengthUnit): string {
  const sentence = failureSentence(check, unit);
  return check.half === undefined ? sentence : `${capital(halfWords(check.half))}: ${sentence}`;
}

function failureSentence(check: CheckResult, unit: LengthUnit): string {
  const [piece] = check.pieces;
  const length = (value: number): string => formatLength(value, unit);
  const amount = (value: number): string => amountOrFine(Math.abs(value), unit);
  switch (check.name) {
    case "girthAsClaimed": {
      const level = check.level === undefined ? "here" : `round the ${levelWords(check.level)}`;
      const [is, due] = [length(check.measured), length(check.expected)];
      const off = check.measured - check.expected;
      return is === due
        ? `The pieces measure ${amount(off)} ${off > 0 ? "more" : "less"} ${level} than the plan says.`
        : `The pieces measure ${is} ${level}; the plan says ${due}.`;
    }
    case "seamsWalk": {
      const seam = check.seam === undefined || piece === undefined ? "seam" : seamWords(check.seam, piece);
      const off = amount(check.measured - check.expected);
      return `${capital(seam)}: ${piecesWords(check)} do not sew together, they are ${off} out.`;
    }
    case "halvesWalk": {
      const off = amount(check.measured);
      if (check.seam === undefined) return `The fold line of ${piecesWords(check)} is not straight: it is ${off} out.`;
      return `${capital(piece === undefined ? "centre" : seamWords("centre", piece))}: left and right half do not sew together, they are ${off} out.`;
    }
    case "strapsReach":
      return check.pieces.length < 2
        ? `The strap is ${length(check.measured)} long; ${length(check.expected)} is the least that reaches over the shoulder.`
        : `The strap is ${amount(check.measured - check.expected)} ${check.measured > check.expected ? "wider" : "narrower"} than the seam on the ${pieceWords(check.pieces[1] ?? "cup")} that it is sewn to.`;
    case "dartLegsEqual":
      return `The legs of the ${dartOfCheck(check)} differ by ${amount(check.measured - check.expected)}; true them before you sew.`;
    case "cornersSquare": {
      const at = check.point === undefined ? "at the centre line" : `at the ${pointWords(check.point)}`;
      return `The corner ${at} of ${piecesWords(check)} is ${degreesWords(check.measured)}, not square: a point or a dip will show there.`;
    }
    case "joinedCornersStraight": {
      const sum = `${degreesWords(check.measured)}, not ${degreesWords(check.expected)}`;
      if (check.dart !== undefined)
        return `With the ${dartOfCheck(check)} closed the seam bends across it: the corners add up to ${sum}.`;
      const at = check.point === undefined ? "" : ` at the ${pointWords(check.point)}`;
      return `Sewn together, ${piecesWords(check)} bend${at}: the corners add up to ${sum}.`;
    }
    case "dartEndShortOfBustPoint": {
      if (check.measured < 0) {
        return `The ${dartOfCheck(check)} runs ${amount(check.measured)} past the bust point; end it ${amount(check.expected)} short of it.`;
      }
      const far = check.measured > check.expected;
      const [is, limit] = [amount(check.measured), amount(check.expected)];
      const by = is === limit ? `just ${far ? "over" : "under"} ${is}` : is;
      return `The ${dartOfCheck(check)} ends ${by} short of the bust point, which is too ${
        far ? "far: its room falls outside the bust" : "near: its point will show"
      }. ${limit} is the ${far ? "most" : "least"} that works.`;
    }
    case "dartPointsAtBustPoint": {
      const of = { piece: piece ?? "front", dart: check.dart ?? "waistDart" } as const;
      return `The ${dartOfCheck(check)} does not point at the bust point, which lies ${amount(check.measured)} ${besideWords(of, check.measured)}; ${amount(check.tolerance)} is the most that works.`;
    }
    case "seamsSmooth": {
      const seam = check.seam === undefined || piece === undefined ? "seam" : seamWords(check.seam, piece);
      const at = check.point === undefined ? "" : ` at the ${pointWords(check.point)}`;
      return `The ${seam} of ${piecesWords(check)} has a corner of ${degreesWords(check.measured)}${at}; smooth it with a curve.`;
    }
    case "openingPasses":
      return check.level === "neck"
        ? `The neck is too tight to pull over the head: it measures ${length(check.measured)}, ${length(check.expected)} must pass. Open it at the centre back or a shoulder.`
        : `The opening is too short to get into: it lets ${length(check.measured)} through, ${length(check.expected)} must pass${tightestWords(check, unit)}`;
    case "outlineClosed":
      return `The outline of ${piecesWords(check)} has ${faultsWords(check.measured, "fault", "faults")}: it is open, crosses itself, or has an edge too short to cut.`;
    case "dartsClear":
      return `The ${dartOfCheck(check)} runs over the edge of the ${piece === undefined ? "piece" : pieceWords(piece)} or over another dart, so it cannot be folded: end it elsewhere, or take less.`;
    case "alterationsMade":
      return `${capital(faultsWords(check.measured, "alteration", "alterations"))} could not be made as asked and ${plural(check.measured, { one: "is", other: "are" })} left out.`;
  }
}

/** Where an opening is tightest, and how much longer it would have to be. */
function tightestWords({ level, tightest }: CheckResult, unit: LengthUnit): string {
  if (tightest === undefined) return ". Lengthen it or move it.";
  const { belowWaist, longer } = tightest;
  const away = formatLength(Math.abs(belowWaist), unit);
  const at =
    level === "hip" || level === "bust"
      ? `${away} ${belowWaist > 0 ? "below" : "above"} the waist`
      : `at the ${levelWords(level ?? "waist")}`;
  return `. It is tightest ${at}. End it ${formatLeast(longer, unit)} further down, or move it.`;
}

/** One measured thing of a check, for a table: where, what it is, what it should be. */
export function checkPlace(
  check: CheckResult,
  unit: LengthUnit,
): { readonly where: string; readonly measured: string; readonly expected: string } {
  const parts = [
    check.pieces.map((piece) => pieceWords(piece)).join(" and "),
    check.level === undefined ? "" : levelWords(check.level),
    check.dart === undefined ? "" : dartWords(check.dart),
    check.seam === undefined || check.pieces[0] === undefined || check.dart !== undefined
      ? ""
      : seamWords(check.seam, check.pieces[0]),
    check.point === undefined || check.seam !== undefined ? "" : pointWords(check.point),
  ];
  // What fails by less than can be marked is shown as fine as it was measured.
  const isFine = !check.ok && check.tolerance > 0 && isUnmarked(check.measured - check.expected, unit);
  const figure = (value: number): string => {
    if (check.unit === "degrees") return degreesWords(value);
    if (check.unit === "faults") return String(value);
    if (Math.abs(value) > LONG) return (ALONG.has(check.name) ? formatAlong : formatLength)(value, unit);
    return isFine ? formatFine(value, unit) : formatAmount(value, unit);
  };
  return {
    where: parts.filter((part) => part !== "").join(", "),
    measured:
      check.name === "dartPointsAtBustPoint" && check.dart !== undefined && check.pieces[0] !== undefined
        ? besideCell({ piece: check.pieces[0], dart: check.dart }, check.measured, unit)
        : figure(check.measured),
    expected: expectedWords(check, figure, unit),
  };
}

/** A range where the check asks for one; else the figure, and how far off it may be. */
function expectedWords(check: CheckResult, figure: (value: number) => string, lengthUnit: LengthUnit): string {
  const { name, expected, tolerance, unit } = check;
  if (name === "dartEndShortOfBustPoint") return `${figure(DART_STOP_LEAST)} to ${figure(DART_STOP_MOST)}`;
  if (name === "dartPointsAtBustPoint") return `${figure(tolerance)} at the most`;
  if (name === "openingPasses") return `at least ${figure(expected)}`;
  if (tolerance === 0) return figure(expected);
  return `${figure(expected)} ± ${unit === "mm" ? amountOrFine(tolerance, lengthUnit) : figure(tolerance)}`;
}

/** Checks of lines that lie on the tissue. */
const ALONG: ReadonlySet<CheckResult["name"]> = new Set(["seamsWalk", "dartLegsEqual"]);

/** mm. Above this a figure reads as a length, below it as a small amount. */
const LONG = 150;
