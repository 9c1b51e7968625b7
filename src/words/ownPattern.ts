/** Her own pattern, opened from a file: what is found in it, what is still to be said, and what came of it. */
import type { LineFeature, LineMeaning, OwnCorner, OwnPattern } from "../core/decisions/ownPattern";
import type { LengthUnit } from "../core/decisions/work";
import type { OutlineReading, Scale, SortedLines, TestSquare } from "../core/outlines/outlineReading";
import type { EaseFound } from "../core/nest/easeFound";
import type { SayStep, ToSay } from "../core/ownPieces/stillToSay";
import type { OwnReading, PieceProblem, PieceReading, ReadCorner, TracedNest } from "../core/ownPieces/ownReading";
import { isBasque } from "../core/pattern/pieceGroups";
import type { DartName, OtherPiece, PieceName, PointName, SeamName } from "../core/pattern/piece";
import { MM_PER_INCH, type Mm } from "../core/units";
import { tissueWords } from "./terms/points";
import { formatAmount, formatLength } from "./terms/length";
import { capital, dartWords, pieceWords, seamWords } from "./terms/names";
import { listWords, plural, counted, upToDecimals } from "./terms/language";

export const OWN_WORDS = {
  title: "Your pattern as a file",
  intro: "An SVG or DXF file with the lines of your pattern. The plan is then made on your own pieces.",
  private: "The file stays on this device.",
  open: "Open a file",
  another: "Open another file",
  drop: "Or drop it anywhere on this page.",
  dropHere: "Let go to open it",
  fileLabel: "File with the lines of a pattern",
  giveUp: "Stop reading",
  putAway: "Put the file away",
  sheet: "The sheet",
  whole: "Whole sheet",
  nearer: "Nearer",
  further: "Further",
  scale: "How large it is",
  sizes: "Lines and sizes",
  pieces: "Pieces",
  missing: "Still to say",
  use: "Make the plan on these pieces",
  standIn: "Back to our draft of the chart",
  again: "Make the plan on these pieces again",
  nothingMissing: "Nothing is missing.",
  chart: "Its sizes are named by your chart.",
  toHip: "To the hip",
  done: "Done:",
  toChart: "To the chart on Envelope",
  show: "Show",
  hide: "Show no more",
  tapSheet: "Tap the sheet",
  known: "A length that you know",
  knownHint: "Point at its two ends on the sheet; the ends of lines catch the finger.",
  firstEnd: "First end",
  secondEnd: "Second end",
  pointAt: "point at it",
  pointAgain: "point again",
  knownLength: "It measures",
  knownFirst: "Point at both ends first.",
  forget: "Forget this length",
  sortBy: "Sizes differ by",
  join: "Gaps in a line are closed up to",
  howRead: "How the lines are told apart",
  cup: "The cup that is drawn",
  name: "Name",
  label: "Your word for it",
  extent: "Drawn",
  half: "half, to the centre",
  bothHalves: "whole, both halves",
  line: "The line is",
  stitch: "the stitch line",
  cutting: "the cutting line",
  allowance: "Allowance beyond the stitch line",
  eachSeam: "Seam by seam",
  seamsDiffer: "The seams differ; this is the widest.",
  turn: "Turn by a quarter",
  over: "Turned over",
  fold: "The centre lies on the fold",
  top: "Its top is blended at the",
  bottom: "Its bottom at the",
  closer: "Corners and darts",
  closerDone: "Done with this piece",
  inSize: "In size",
  corners: "Corners",
  darts: "Darts",
  bustPoint: "Bust point",
  noCorner: "There is none",
  asFound: "As it was found",
  noDart: "It is no dart",
  addDart: "Point at a dart",
  otherDarts: "others …",
  moveDart: "Point at it anew",
  isDart: "It is a dart after all",
  follow: "The other sizes follow.",
  onSheet: "With the keys: arrows move the cross, Enter puts it there.",
  alongHint: "A corner on the sheet moves along the outline with the arrow keys, with Shift ten times as far.",
  none: "it is none",
  found: "found",
  notFound: "not found yet",
  noSuch: "the piece has none",
  nameFirst: "Name the piece first: what its corners are called follows from it.",
  pointIt: "Point at it",
  noPieces: "No outline closes yet, so there are no pieces.",
  isWhat: "what these lines are",
  notScaled: "Lengths are told once it is known how large it is.",
  squareUnsaid: "measures …",
  other: "another piece",
  nothing: "nothing of the pattern",
  notSaid: "not said yet",
} as const;

const FEATURES: Readonly<Record<LineFeature, string>> = {
  layer: "name",
  group: "name of their group",
  colour: "colour",
  dash: "dashes",
  width: "thickness",
};

export const featureWords = (feature: LineFeature, values: number): string =>
  `${FEATURES[feature]}, ${counted(values, { one: "kind", other: "kinds" })}`;

/** What a kind of lines is called in the list: its layer's name, or its look. */
export function kindWords({ value }: SortedLines, feature: LineFeature): string {
  if (value !== "") return feature === "width" ? `thickness ${value}` : value;
  return feature === "dash"
    ? "whole line"
    : feature === "layer" || feature === "group"
      ? "without a name"
      : `without a ${FEATURES[feature]}`;
}

export const kindAside = ({ count, length }: SortedLines, isScaled: boolean, unit: LengthUnit): string =>
  `${counted(count, { one: "line", other: "lines" })}${isScaled ? `, ${formatLength(length, unit)}` : ""}`;

const SAID_BY: Readonly<Record<SortedLines["saidBy"], string>> = {
  her: "you said so",
  name: "by its name",
  order: "by its place among the others",
  form: "by its shape",
};
export const saidByWords = (by: SortedLines["saidBy"]): string => SAID_BY[by];

/** "size 12", also of a label that says so itself. */
const sizeWords = (label: string): string => (/^size\b/i.test(label) ? label.replace(/^s/i, "s") : `size ${label}`);

/** What lines of several kinds together are: "size 12". */
export const meaningWords = (meaning: LineMeaning): string =>
  meaning.of === "size"
    ? sizeWords(meaning.size)
    : (meaningOptions([]).find(({ value }) => value === meaning.of)?.label ?? meaning.of);

export const kindsTogether = (count: number): string => `${count} kinds of line`;

/** Without a chart, no size is missing from it. */
export const notInChartWords = (label: string, hasChart: boolean): string =>
  `${sizeWords(label)}${hasChart ? ", which is not in the chart" : ""}`;

/** Values of a select: the meaning as one text. */
export const meaningKey = (meaning: LineMeaning): string =>
  meaning.of === "size" ? `size ${meaning.size}` : meaning.of;

export function meaningOptions(labels: readonly string[]) {
  const meanings: readonly { readonly meaning: LineMeaning; readonly label: string }[] = [
    ...labels.map((size) => ({ meaning: { of: "size", size } as const, label: sizeWords(size) })),
    { meaning: { of: "all" }, label: "all sizes" },
    { meaning: { of: "inner" }, label: "marks inside a piece" },
    { meaning: { of: "nothing" }, label: "not part of it" },
  ];
  return meanings.map(({ meaning, label }) => ({ value: meaningKey(meaning), label, meaning }));
}

/** What proves how large it is, in one sentence. */
export function scaleSentence({ mm, by, said, squares }: Scale, unit: LengthUnit): string {
  if (mm === null || by === null)
    return squares.length === 0
      ? "The file does not say, and no test square was found."
      : "The file does not say. It has a square: say what it measures.";
  if (by === "known") return "Proven by the length that you gave.";
  if (by === "square") {
    const square = squares.find(({ usual }) => usual !== null);
    return square === undefined
      ? "Proven by the test square."
      : `Proven by the test square, ${squareLabel(square, unit)}.`;
  }
  const square = squares.find(({ usual }) => usual !== null);
  const proof = square === undefined ? "No test square was found to prove it." : "The test square agrees.";
  return `${SAID[said?.saidBy ?? "header"]} ${proof}`;
}

const SAID = {
  size: "The file gives the size of its sheet.",
  header: "The file says its unit.",
  text: "A text in the file says its unit.",
} as const;

const tenths = (mm: Mm): number => Math.round(10 * mm);

/** What it is printed as: a metric square stays metric, whatever she measures in. */
const squareLabel = ({ width, height, usual }: TestSquare, unit: LengthUnit): string => {
  const printed = usual ?? { width, height };
  const known = USUAL_SQUARES.find(
    ({ mm }) => tenths(mm) === tenths(printed.width) && tenths(mm) === tenths(printed.height),
  );
  return known?.label ?? sizeOf(printed, unit);
};

const sizeOf = ({ width, height }: Pick<TestSquare, "width" | "height">, unit: LengthUnit): string =>
  `${fine(width, unit)} × ${fine(height, unit)}`;

/** To 0.1 mm, or in inches. */
const fine = (mm: Mm, unit: LengthUnit): string =>
  unit === "in" ? `${upToDecimals(mm / MM_PER_INCH, 2)} in` : `${upToDecimals(mm, 1)} mm`;

export const disagreeSentence = (by: Scale["by"]): string =>
  `What is known of its size does not agree. ${by === "known" ? "Your length counts." : "Lay a ruler on the tissue and give a length that you know."}`;

/** A square of the drawing. */
export const squareWords = (square: TestSquare, isScaled: boolean, unit: LengthUnit): string =>
  isScaled ? `A square, ${sizeOf(square, unit)}` : "A square";

export const squareMeasures = (square: TestSquare, isScaled: boolean, unit: LengthUnit): string =>
  `${squareWords(square, isScaled, unit)}, measures across`;

/** What test squares are printed at, for a choice. */
export const USUAL_SQUARES: readonly { readonly mm: Mm; readonly label: string }[] = [
  ...[100, 50, 40].map((mm) => ({ mm, label: `${mm / 10} cm` })),
  ...[4, 2, 1].map((inches) => ({ mm: inches * MM_PER_INCH, label: formatLength(inches * MM_PER_INCH, "in") })),
];

export const apartSentence = (mm: Mm, unit: LengthUnit): string =>
  `By the scale so far they lie ${fine(mm, unit)} apart.`;

export const unclosedHeading = (count: number): string =>
  plural(count, { one: "One line closes nothing", other: `${count} lines close nothing` });
export const unclosedWords = (
  { line, gap }: OutlineReading["unclosed"][number],
  at: number,
  unit: LengthUnit,
): string =>
  `${capital(line.size === null ? "line" : `${sizeWords(line.size)}, line`)} ${at + 1}: ${fine(gap, unit)} left open`;

export const hiddenSentence = (layers: readonly string[]): string =>
  `Switched off in the file, and read all the same: ${listWords(layers)}.`;

export const pieceTitle = (name: PieceName | null, label: string | undefined, nameInFile: string): string => {
  if (name === null) return nameInFile === "" ? "A piece without a name" : `“${nameInFile}”`;
  if (name.startsWith("other") && label !== undefined && label !== "") return capital(label);
  return capital(pieceWords(name));
};

export const allowanceOf = (seam: SeamName, piece: PieceName | null): string =>
  capital(seamWords(seam, piece ?? "front"));

export const pieceSummary = (
  extent: "half" | "whole",
  line: "stitch" | "cutting",
  allowance: Mm | null,
  unit: LengthUnit,
): string =>
  `${extent === "half" ? "Half" : "Whole"}, ${line === "stitch" ? "on the stitch line" : `cutting line${allowance === null ? "" : `, ${formatAmount(allowance, unit)} allowance`}`}`;

const CORNERS_TOO: Readonly<Partial<Record<OwnCorner, string>>> = {
  waistMiddle: "where the band’s halves meet at the waist",
  bandTopMiddle: "where the band’s halves meet at the top",
  strapAim: "where the strap goes over the shoulder",
};

export function cornerWords(corner: PointName, piece: PieceName): string {
  const number = /^corner(\d\d)$/.exec(corner)?.[1];
  if (number !== undefined) return `corner ${Number(number) + 1}`;
  const own = Object.entries(CORNERS_TOO).find(([name]) => name === corner)?.[1];
  return own ?? tissueWords(corner, piece);
}

const FOUND_BY: Readonly<Record<ReadCorner["by"], string>> = {
  her: "by you",
  form: "by its form",
  "other size": "as in another size",
  level: "by its height",
};
export const foundByWords = (by: ReadCorner["by"]): string => FOUND_BY[by];

export const handleWords = (corner: PointName, piece: PieceName): string =>
  `${capital(cornerWords(corner, piece))}. Arrow keys move it along the outline.`;

const DART_BY = { her: "by you", outline: "cut into the outline", "inner lines": "drawn inside" } as const;
export const dartByWords = (by: keyof typeof DART_BY): string => DART_BY[by];

export interface MissingWords {
  readonly text: string;
  /** Where it is said. */
  readonly where: "chart" | "scale" | "sizes" | "cup" | "pieces" | "piece";
  readonly piece: PieceName | null;
}

/** In the order of what is to be done. */
export function missingWords(missing: ToSay, unit: LengthUnit): MissingWords {
  switch (missing.code) {
    case "missing/chart":
      return { text: "The pattern’s size chart: type it on Envelope.", where: "chart", piece: null };
    case "missing/cup":
      return { text: cupAskedWords(missing), where: "cup", piece: null };
    case "missing/scale":
      return { text: "How large it is: give one length that you know.", where: "scale", piece: null };
    case "missing/too-much":
      return {
        text: "More is drawn here than any pattern has: leave out of the file what is not of it, and open it again.",
        where: "sizes",
        piece: null,
      };
    case "missing/sizes":
      return { text: "Which lines are which size.", where: "sizes", piece: null };
    case "missing/outlines":
      return {
        text:
          missing.widest === null
            ? "No outline closes."
            : `No outline closes: the widest gap is ${fine(missing.widest, unit)}.`,
        where: "sizes",
        piece: null,
      };
    case "missing/piece":
      return {
        text: `Which piece is the ${pieceWords(missing.piece)}${isBasque(missing.piece) ? "; if there is none, choose “To the waist” on Envelope" : ""}.`,
        where: "pieces",
        piece: null,
      };
    case "missing/piece-twice":
      return {
        text: `Two pieces are called ${pieceWords(missing.piece)}: which is it?`,
        where: "pieces",
        piece: null,
      };
    case "missing/corner":
      return {
        text: `${capital(pieceWords(missing.piece))}: ${cornerWords(missing.corner, missing.piece)}.`,
        where: "piece",
        piece: missing.piece,
      };
    case "missing/bust-point":
      return { text: `${capital(pieceWords(missing.piece))}: its bust point.`, where: "piece", piece: missing.piece };
    case "missing/second-size":
      return { text: "A second size: one alone says nothing of how it grows.", where: "sizes", piece: null };
    case "own/seams-unlike":
      return {
        text: `${capital(pieceWords(missing.piece))}: its ${seamWords(missing.seam, missing.piece)} is ${fine(Math.abs(missing.by), unit)} ${missing.by > 0 ? "longer" : "shorter"} than the one of the ${pieceWords(missing.other)} that it is sewn to, in size ${missing.size}. Look at its corners and darts.`,
        where: "piece",
        piece: missing.piece,
      };
    case "own/girth-unlike":
      return {
        text: `Size ${missing.size} comes out ${fine(Math.abs(missing.by), unit)} ${missing.by > 0 ? "larger" : "smaller"} at the ${missing.level} than the body in your chart. Look at the corners and darts, how large it is, and the chart.`,
        where: "pieces",
        piece: null,
      };
    case "missing/problem":
      return {
        text: `${capital(pieceWords(missing.piece))}: ${problemWords(missing.problem, missing.piece)}`,
        where: "piece",
        piece: missing.piece,
      };
  }
}

const cupAskedWords = ({ proposed, gone }: Extract<ToSay, { readonly code: "missing/cup" }>): string => {
  const why =
    gone !== null
      ? ` Your chart has no cup ${gone} any more.`
      : proposed !== null
        ? ` The file says cup ${proposed}.`
        : "";
  return `Which cup is drawn?${why}`;
};

export const cupChoiceWords = (cup: string): string => `Cup ${cup}`;

/** A step that is done, by what is known of it; one that is later, by its name. */
export function stepWords(
  step: SayStep,
  isDone: boolean,
  {
    own,
    reading,
    unit,
  }: { readonly own: Pick<OwnPattern, "cup">; readonly reading: OwnReading; readonly unit: LengthUnit },
): string {
  const known = (section: "scale" | "sizes" | "pieces", title: string): string => {
    const summary = sectionSummary(section, reading, unit);
    return isDone ? `${title}: ${summary.charAt(0).toLowerCase()}${summary.slice(1)}` : title;
  };
  switch (step) {
    case "chart":
      return "The size chart";
    case "scale":
      return known("scale", "How large it is");
    case "sizes":
      return known("sizes", "Sizes");
    case "cup":
      return isDone && own.cup !== undefined ? `The cup: ${own.cup}` : "Which cup is drawn";
    case "pieces":
      return known("pieces", "Pieces");
    case "marks":
      return "Corners, darts and bust point";
  }
}

/** "The file has a front basque and a back basque; the plan goes to the waist." */
export const basquesLeftSentence = (basques: readonly PieceName[]): string =>
  `The file has ${listWords(basques.map((name) => `a ${pieceWords(name)}`))}; the plan goes to the waist.`;

/** As it stands after the piece's name. */
function problemWords(
  problem: PieceProblem,
  piece: PieceName,
  size: string = inSizes(problem.size === "" ? [] : [problem.size], 0),
): string {
  switch (problem.code) {
    case "own/corner-missing":
      return `the ${cornerWords(problem.corner, piece)} is not found${size}.`;
    case "own/seam-too-long":
      return `the ${seamWords(problem.seam, piece)} has too many bends${size}.`;
    case "own/allowance-too-wide":
      return `the allowance at the ${seamWords(problem.seam, piece)} is wider than the piece allows${size}.`;
    case "own/dart-no-end":
      return `the ${dartWords(problem.dart)} has no end${size}: point at it.`;
    case "own/no-bust-point":
      return `no bust point is found${size}.`;
    case "own/sizes-unlike":
      return `the corners are others than in the rest${size}.`;
    case "own/crosses-itself":
      return `its outline crosses itself${size}.`;
  }
}

/** "Your own pieces: front, back and collar, in sizes 10 to 16." */
export function answerSentence({ sizes, labels }: TracedNest): string {
  const [first, last] = [sizes.at(0), sizes.at(-1)];
  const names = (first?.pieces ?? []).map(({ name }) => labelOf(name, labels));
  const of =
    sizes.length < 2 || first === undefined || last === undefined
      ? `size ${first?.label ?? ""}`
      : `sizes ${first.label} to ${last.label}`;
  return `Your own pieces: ${listWords(names)}, in ${of}.`;
}

const labelOf = (name: PieceName, labels: Readonly<Partial<Record<OtherPiece, string>>>): string =>
  Object.entries(labels).find(([other]) => other === name)?.[1] ?? pieceWords(name);

/** "Ease found: bust 60 mm, waist 20 to 24 mm." null: nothing to tell. */
export function easeSentence(found: readonly EaseFound[], unit: LengthUnit): string | null {
  const parts = (["bust", "waist", "hip"] as const).flatMap((level) => {
    const all = found.flatMap(({ ease }) => ease[level] ?? []);
    if (all.length === 0) return [];
    const [least, most] = [Math.min(...all), Math.max(...all)].map((mm) => formatAmount(mm, unit));
    return [`${level} ${least === most ? least : `${least?.replace(/ \w+$/, "")} to ${most}`}`];
  });
  return parts.length === 0 ? null : `Ease found: ${listWords(parts)}.`;
}

/** What is not there, and what it prevents. */
export function onlySentences(nest: TracedNest, cups: number, chartSizes: number): readonly string[] {
  return [
    ...(cups > 1 ? ["Only one cup was traced, so other cups cannot be compared."] : []),
    ...(nest.sizes.length < chartSizes
      ? [`${nest.sizes.length} of your chart’s ${chartSizes} sizes were traced; the others are carried on from them.`]
      : []),
  ];
}

/** What is going on, and how to tell a slow file from a page that does nothing. */
export const readingWords = (file: string): string => `Reading ${file}…`;

/** Why a file could not be opened. Takes the codes alone, since words know nothing of the reading. */
export type OpeningFailureLike =
  | { readonly code: "opening/too-large"; readonly most: number }
  | { readonly code: "opening/too-slow" | "opening/out-of-reach" | "opening/broke" };

/** Said after every refusal. */
export const unchanged = (sentence: string): string => `${sentence} Nothing was changed.`;

export function openingFailureSentence(failure: OpeningFailureLike): string {
  switch (failure.code) {
    case "opening/too-large":
      return `This file is larger than any pattern: ${Math.round(failure.most / MEGABYTE)} megabytes are the most that is read.`;
    case "opening/too-slow":
      return "Reading this file took too long and was given up. Leave out what is not of the pattern, and save it again.";
    case "opening/out-of-reach":
      return "The browser could not read this file: it may have been moved, or be kept elsewhere.";
    case "opening/broke":
      return "This browser could not read the file apart from the page.";
  }
}

const MEGABYTE = 1_000_000;

/** Of an amount in a field by an arrow key. */
export const joinStep = (unit: LengthUnit): Mm => (unit === "in" ? MM_PER_INCH / 64 : 0.1);
export const allowanceStep = (unit: LengthUnit): Mm => (unit === "in" ? MM_PER_INCH / 16 : 1);

export const nameOf = (title: string, at: number): string => `${at + 1}. ${title}`;

/** One sentence for a problem, however many sizes have it. */
export const problemSentences = ({ problems, said, sizes }: PieceReading): readonly string[] => {
  const { name } = said;
  if (name === null) return [];
  const alike = new Map<string, PieceProblem[]>();
  for (const problem of problems) {
    const key = problemWords({ ...problem, size: "" }, name);
    alike.set(key, [...(alike.get(key) ?? []), problem]);
  }
  return [...alike.values()].flatMap((same) => {
    const [first] = same;
    if (first === undefined) return [];
    return capital(
      problemWords(
        first,
        name,
        inSizes(
          same.map(({ size }) => size).filter((size) => size !== ""),
          sizes.length,
        ),
      ),
    );
  });
};

/** Where something is so: "" in one that has no name. */
function inSizes(labels: readonly string[], all: number): string {
  const [only] = labels;
  if (only === undefined) return "";
  if (labels.length === 1) return ` in ${sizeWords(only)}`;
  return labels.length === all ? " in all sizes" : ` in sizes ${listWords(labels)}`;
}

export const sheetLabel = (piece: string | null): string =>
  `${piece === null ? "The sheet as drawn" : `${piece} as drawn`}. Arrow keys move it, plus and minus zoom, zero shows all of it.`;

/** What is to be pointed at next. Takes what the page points at, since words know nothing of the page. */
export type PointingLike =
  | { readonly for: "from" | "to" | "bustPoint" }
  | { readonly for: "corner"; readonly corner: OwnCorner }
  | { readonly for: "dart"; readonly dart: DartName; readonly given: readonly unknown[] };

export function pointingWords(pointing: PointingLike, piece: PieceName | null): string {
  switch (pointing.for) {
    case "from":
      return "Tap one end of the length that you know.";
    case "to":
      return "Tap its other end.";
    case "bustPoint":
      return "Tap the bust point.";
    case "corner":
      return `Tap the outline: ${cornerWords(pointing.corner, piece ?? "front")}.`;
    case "dart":
      return `${capital(dartWords(pointing.dart))}: tap ${["one end of its mouth, on the outline", "the other end of its mouth", "where it ends"][pointing.given.length] ?? ""}.`;
  }
}

/** What a part of the page comes to, beside its heading. */
export function sectionSummary(section: "scale" | "sizes" | "pieces", reading: OwnReading, unit: LengthUnit): string {
  const { scale, lines, groups } = reading.outlines;
  if (section === "scale") {
    if (scale.mm === null) return "not known yet";
    if (scale.disagree) return "doubted: two proofs differ";
    if (scale.by === "known") return "true size, proven by your length";
    const square = scale.squares.find(({ usual }) => usual !== null);
    return square === undefined
      ? "true size, as the file says"
      : `true size, proven by the ${squareLabel(square, unit)} square`;
  }
  if (section === "sizes") {
    const sizes = new Set(lines.flatMap(({ meaning }) => (meaning.of === "size" ? [meaning.size] : [])));
    return sizes.size === 0 ? "not sorted yet" : listWords([...sizes]);
  }
  const names = reading.pieces.flatMap(({ said: { name, label, leftOut } }) =>
    name === null || leftOut === true ? [] : [label === undefined || label === "" ? pieceWords(name) : label],
  );
  const unnamed = groups.filter(({ isSquare }) => !isSquare).length - names.length;
  return [...names, ...(unnamed > 0 && names.length === 0 ? ["not named yet"] : [])].join(", ");
}

export const fileTitle = (file: string, lines: number): string =>
  `${file}, ${counted(lines, { one: "line", other: "lines" })}`;
