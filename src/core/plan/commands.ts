/** Everything the wearer can do to a work, each a small record; applying one gives a new work. */
import {
  isMadeOn,
  isRedraw,
  onHalves,
  type Alteration,
  type DartRedraw,
  type GiveBack,
  type Half,
} from "../decisions/alteration";
import {
  PRINTED_LENGTHS,
  type StrapStyle,
  type StyleName,
  type Closure,
  type Ease,
  type Pattern,
  type PatternLength,
  type PrintedFigure,
  type PrintedLength,
  type PrintedLengths,
} from "../decisions/pattern";
import type { Dress, DressPart } from "../decisions/dress";
import type { OwnPattern } from "../decisions/ownPattern";
import type { Tissue, TissueLength } from "../decisions/tissue";
import type { SheetFormat, PaperSize } from "../decisions/paperChoice";
import type { CupVersion, SizeRow } from "../chart/sizeChart";
import type { MeasureName } from "../measures/measure";
import type { MeasureSet } from "../measures/tape";
import { isSameDart, type DartRef, type PieceName, type SeamName } from "../pattern/piece";
import { isSame } from "../same";
import type { Mm } from "../units";
import {
  compareSeen,
  isSeenOf,
  redrawsOf,
  redrawsOn,
  sewnWith,
  type DartAnswerKey,
  type SeenAtDart,
  type SeenOfDart,
} from "../decisions/seenAtDart";
import { LIMITS } from "../decisions/limits";
import type { Picks } from "../decisions/decided";
import type { LengthUnit, Work } from "../decisions/work";
import { put, split, takeOut } from "./putAlteration";
import { trialCommand, type TrialCommand } from "./trialCommands";
import { without, withPart } from "./workParts";

export type Command =
  | { readonly kind: "setName"; readonly name: string }
  /** Whom it is made for; blank or null: not said. */
  | { readonly kind: "setWearer"; readonly name: string | null }
  | { readonly kind: "setUnit"; readonly unit: LengthUnit }
  | { readonly kind: "setPaper"; readonly paper: PaperSize }
  /** A reading in the newest set: puts right the one at that place, or adds one after the last. */
  | { readonly kind: "setReading"; readonly measure: MeasureName; readonly at: number; readonly value: Mm }
  | { readonly kind: "removeReading"; readonly measure: MeasureName; readonly at: number }
  /** One reading in place of all that the newest set has; and none. */
  | { readonly kind: "setMeasure"; readonly measure: MeasureName; readonly value: Mm }
  | { readonly kind: "clearMeasure"; readonly measure: MeasureName }
  /** The day of a set (0: the newest), yyyy-mm-dd; null: not said. */
  | { readonly kind: "setTaken"; readonly set: number; readonly taken: string | null }
  /** Begins a set of a new day; what it does not have yet still counts from the earlier ones. */
  | { readonly kind: "newTape"; readonly taken: string }
  | { readonly kind: "removeTape"; readonly set: number }
  /** A doubted reading is right as it stands, at this value; null: nothing is said of it any more. */
  | { readonly kind: "setTrusted"; readonly measure: MeasureName; readonly value: Mm | null }
  | { readonly kind: "setAge"; readonly age: number | null }
  | { readonly kind: "setPatternName"; readonly name: string }
  | { readonly kind: "setSizes"; readonly sizes: readonly SizeRow[] }
  | { readonly kind: "setCups"; readonly cups: readonly CupVersion[] }
  | { readonly kind: "setDraftedDifference"; readonly value: Mm }
  | { readonly kind: "setPatternEase"; readonly ease: Ease }
  | { readonly kind: "setLength"; readonly length: PatternLength }
  | { readonly kind: "setClosure"; readonly closure: Closure }
  /** What the pattern says of a length, of one size by its label or of all (null); no value: nothing. */
  | {
      readonly kind: "setPrintedLength";
      readonly measure: PrintedLength;
      readonly size: string | null;
      readonly value: Mm | null;
    }
  /** What she measured on the tissue; the first begins it, along the line of that size. null: not measured. */
  | {
      readonly kind: "setTissueLength";
      readonly piece: PieceName;
      readonly length: TissueLength;
      readonly size: string;
      readonly value: Mm | null;
    }
  /** The line that was measured. */
  | { readonly kind: "setTissueSize"; readonly size: string }
  /** Outlines of a file; null: none. */
  | { readonly kind: "setOwnPattern"; readonly own: OwnPattern | null }
  /** Another pattern: picks of sizes go, since they name lines of the old chart. */
  | { readonly kind: "setPattern"; readonly pattern: Pattern }
  /** Merged into what is wanted already. */
  | { readonly kind: "setEaseWanted"; readonly ease: Partial<Ease> }
  | { readonly kind: "clearEaseWanted"; readonly level: keyof Ease }
  | { readonly kind: "setBustRadius"; readonly value: Mm | null }
  /** Merged into the picks already made, cups of one half each by itself. */
  | { readonly kind: "setPick"; readonly picks: Partial<Picks> }
  /** `half`: of the cups of one half that of this half alone. */
  | { readonly kind: "clearPick"; readonly pick: keyof Picks; readonly half?: Half }
  | { readonly kind: "putAlteration"; readonly alteration: Alteration }
  /** Of one half alone where that is said: what is for both then stays on the other half. */
  | { readonly kind: "removeAlteration"; readonly id: string; readonly half?: Half }
  /** What is for both halves made one for each, alike until one is put; the one on `half` gets another id. */
  | { readonly kind: "splitAlteration"; readonly id: string; readonly half: Half }
  /** One half kept for both, as `keepHalf` finds: all alterations and picks as they then stand. */
  | { readonly kind: "keepHalf"; readonly alterations: readonly Alteration[]; readonly picks: Picks }
  /** Several at once: what a whole answer is made of, in place of this dart's own redraws; on one half alone where that is said. */
  | {
      readonly kind: "replaceRedraws";
      readonly dart: DartRef;
      readonly half?: Half;
      readonly alterations: readonly DartRedraw[];
    }
  /** Makes an alteration before another one; null: last of all. */
  | { readonly kind: "moveAlteration"; readonly id: string; readonly before: string | null }
  | { readonly kind: "setStyle"; readonly style: StyleName }
  | { readonly kind: "setStrap"; readonly strap: StrapStyle }
  /** The same shares for every alteration of one dart; on one half alone where that is said. */
  | { readonly kind: "setGiveBack"; readonly dart: DartRef; readonly half?: Half; readonly giveBack: GiveBack }
  /** What she sees of a sewn dart, of the toile as it is sewn when first it is said; null: nothing is said of it any more. */
  | { readonly kind: "setSeen"; readonly dart: DartRef; readonly half: Half; readonly seen: SeenAtDart | null }
  /**
   * An answer to what she sees on a half: its redraws in place of this dart's own, and it is kept which was taken. `alone`: on
   * that half; else on both.
   */
  | {
      readonly kind: "takeAnswer";
      readonly dart: DartRef;
      readonly half: Half;
      readonly alone?: true;
      readonly seen: SeenAtDart;
      readonly answer: DartAnswerKey;
      readonly alterations: readonly DartRedraw[];
    }
  | { readonly kind: "setAllowance"; readonly seam: SeamName; readonly value: Mm }
  /** Back to the usual allowance. */
  | { readonly kind: "clearAllowance"; readonly seam: SeamName }
  /** Paper for true-scale pieces. */
  | { readonly kind: "setSheetFormat"; readonly format: SheetFormat }
  /** null: the usual. */
  | { readonly kind: "setPrinterMargin"; readonly value: Mm | null }
  /** One part of the rest of the dress; null: nothing is decided of it. */
  | DressCommand
  | TrialCommand
  /** Whether what her body asked for in other garments, by its key, is left out of this one. */
  | { readonly kind: "leaveStanding"; readonly key: string; readonly isLeft: boolean }
  | { readonly kind: "setUnread"; readonly field: string; readonly text: string }
  | { readonly kind: "clearUnread"; readonly field: string };

type DressCommand = {
  readonly [P in DressPart]: { readonly kind: "setDress"; readonly part: P; readonly value: Required<Dress>[P] | null };
}[DressPart];

/**
 * The work after a command; the very same work where the command changes nothing, or holds what no work can: a number
 * that is none, or one beyond all bounds. Texts and lists too long for any work are cut.
 */
export function applyCommand(work: Work, command: Command): Work {
  if (!areNumbersKept(command) || !areAlterationsKept(command) || !isDayKept(command) || !areButtonsKept(command))
    return work;
  return changed(work, command);
}

function changed(work: Work, command: Command): Work {
  const { pattern } = work;
  switch (command.kind) {
    case "setName":
      return withPart(work, "name", cut(command.name));
    case "setWearer": {
      const name = cut(command.name ?? "");
      return name.trim() === "" ? without(work, "wearer") : withPart(work, "wearer", name);
    }
    case "setUnit":
      return withPart(work, "unit", command.unit);
    case "setPaper":
      return withPart(work, "paper", command.paper);
    case "setReading": {
      const { measure, at, value } = command;
      if (!Number.isInteger(at) || at < 0) return work;
      return withReadings(work, measure, (readings) =>
        at < readings.length ? readings.with(at, value) : [...readings, value],
      );
    }
    case "removeReading":
      return withReadings(work, command.measure, (readings) => readings.filter((_, at) => at !== command.at));
    case "setMeasure":
      return withReadings(work, command.measure, () => [command.value]);
    case "clearMeasure":
      return withReadings(work, command.measure, () => []);
    case "setTaken": {
      const dateOne = (set: MeasureSet, at: number) => (at === command.set ? dated(set, command.taken) : set);
      return withPart(work, "tapes", work.tapes.map(dateOne));
    }
    case "newTape":
      if (work.tapes.length >= LIMITS.tapes) return work;
      return withPart(work, "tapes", [{ taken: command.taken, readings: {} }, ...work.tapes]);
    case "removeTape": {
      const left = work.tapes.filter((_, at) => at !== command.set);
      return withPart(work, "tapes", left.length === 0 ? [{ readings: {} }] : left);
    }
    case "setTrusted": {
      const { measure, value } = command;
      if (value !== null) return withPart(work, "trusted", { ...work.trusted, [measure]: value });
      const left = without(work.trusted ?? {}, measure);
      return Object.keys(left).length === 0 ? without(work, "trusted") : withPart(work, "trusted", left);
    }
    case "setAge":
      if (command.age === null) return without(work, "age");
      return command.age < 0 || command.age > LIMITS.age ? work : withPart(work, "age", command.age);
    case "setPatternName":
      return withPart(work, "pattern", withPart(pattern, "name", cut(command.name)));
    case "setSizes":
      return withSizes(work, cutRows(command.sizes));
    case "setCups":
      return withChart(work, withPart(pattern.chart, "cups", cutRows(command.cups)));
    case "setDraftedDifference":
      return withChart(work, withPart(pattern.chart, "draftedDifference", command.value));
    case "setPatternEase":
      return withPart(work, "pattern", withPart(pattern, "ease", command.ease));
    case "setLength":
      return withPart(work, "pattern", withPart(pattern, "length", command.length));
    case "setClosure":
      return withPart(work, "pattern", withPart(pattern, "closure", command.closure));
    case "setPrintedLength": {
      const before = pattern.lengths ?? {};
      return withLengths(work, withPrinted(before, command.measure, command.size, command.value));
    }
    case "setTissueLength":
      return withTissue(work, measuredOn(pattern.tissue ?? { size: command.size, pieces: {} }, command));
    case "setTissueSize":
      return pattern.tissue === undefined ? work : withTissue(work, withPart(pattern.tissue, "size", command.size));
    case "setOwnPattern":
      return withPart(
        work,
        "pattern",
        command.own === null ? without(pattern, "own") : withPart(pattern, "own", command.own),
      );
    case "setPattern":
      return withPart(withPart(work, "pattern", cutPattern(command.pattern)), "picks", {});
    case "setEaseWanted":
      return withPart(work, "easeWanted", { ...work.easeWanted, ...command.ease });
    case "clearEaseWanted":
      return withPart(work, "easeWanted", without(work.easeWanted, command.level));
    case "setBustRadius":
      return command.value === null ? without(work, "bustRadius") : withPart(work, "bustRadius", command.value);
    case "setPick":
      return withPart(work, "picks", withHalfCups({ ...work.picks, ...command.picks }, work.picks));
    case "clearPick": {
      const { pick, half } = command;
      const { halfCups } = work.picks;
      if (pick !== "halfCups" || half === undefined || halfCups === undefined)
        return withPart(work, "picks", without(work.picks, pick));
      return withPart(work, "picks", withHalfCups({ ...work.picks, halfCups: without(halfCups, half) }, {}));
    }
    case "putAlteration":
      return withPart(work, "alterations", put(work.alterations, command.alteration));
    case "splitAlteration":
      return withPart(work, "alterations", split(work.alterations, command.id, command.half));
    case "keepHalf":
      return withPart(withPart(work, "alterations", command.alterations), "picks", command.picks);
    case "replaceRedraws":
      return withRedraws(work, command.dart, command.half, command.alterations);
    case "moveAlteration":
      return withPart(work, "alterations", reordered(work.alterations, command.id, command.before));
    case "setStyle":
      return withPart(work, "pattern", withPart(pattern, "style", command.style));
    case "setStrap":
      return withPart(work, "pattern", withPart(pattern, "strap", command.strap));
    case "removeAlteration":
      return withPart(work, "alterations", takeOut(work.alterations, command.id, command.half));
    case "setGiveBack": {
      const { dart, half, giveBack } = command;
      const given = work.alterations
        .filter(isRedraw)
        .filter((a) => isSameDart(a.dart, dart) && (half === undefined || isMadeOn(a, half)))
        .map((a) => ({ ...(half === undefined ? a : onHalves(a, half)), giveBack }));
      return withPart(work, "alterations", given.reduce(put, work.alterations));
    }
    case "setSeen":
      return seenSet(work, command.dart, command.half, command.seen);
    case "takeAnswer":
      return answerTaken(work, command);
    case "setAllowance":
      if (command.value < 0 || command.value > LIMITS.allowance) return work;
      return withPart(work, "allowances", { ...work.allowances, [command.seam]: command.value });
    case "clearAllowance": {
      const left = without(work.allowances ?? {}, command.seam);
      return Object.keys(left).length === 0 ? without(work, "allowances") : withPart(work, "allowances", left);
    }
    case "setSheetFormat":
      return withPart(work, "sheetFormat", command.format);
    case "setPrinterMargin": {
      const { value } = command;
      if (value === null) return without(work, "printerMargin");
      const { least, most } = LIMITS.printerMargin;
      return value < least || value > most ? work : withPart(work, "printerMargin", value);
    }
    case "beginTrial":
    case "removeTrial":
    case "setTrialDay":
    case "setTrialText":
    case "setToileLength":
    case "putObservation":
    case "removeObservation":
    case "setTrialCheck":
    case "takeTrialAnswer":
    case "setVerdict":
    case "setBase":
    case "returnToTrial":
      return trialCommand(work, command);
    case "setDress": {
      const before = work.dress ?? {};
      const after =
        command.value === null ? without(before, command.part) : { ...before, [command.part]: command.value };
      return Object.keys(after).length === 0 ? without(work, "dress") : withPart(work, "dress", after);
    }
    case "leaveStanding":
      return leaveStanding(work, command.key, command.isLeft);
    case "setUnread":
      return withPart(work, "unread", putUnread(work.unread, command.field, command.text));
    case "clearUnread":
      return withPart(work, "unread", without(work.unread, command.field));
  }
}

/** A cup of one half leaves the other's; without any there are none. */
function withHalfCups({ halfCups, ...others }: Picks, before: Picks): Picks {
  const cups = { ...before.halfCups, ...halfCups };
  return Object.keys(cups).length === 0 ? others : { ...others, halfCups: cups };
}

const withTissue = (work: Work, tissue: Tissue): Work =>
  withPart(
    work,
    "pattern",
    Object.keys(tissue.pieces).length === 0
      ? without(work.pattern, "tissue")
      : withPart(work.pattern, "tissue", tissue),
  );

/** A piece with nothing measured is not kept. */
function measuredOn(
  tissue: Tissue,
  { piece, length, value }: Pick<Extract<Command, { kind: "setTissueLength" }>, "piece" | "length" | "value">,
): Tissue {
  const before = tissue.pieces[piece] ?? {};
  const lengths = value === null ? without(before, length) : withPart(before, length, value);
  const pieces =
    Object.keys(lengths).length === 0 ? without(tissue.pieces, piece) : withPart(tissue.pieces, piece, lengths);
  return withPart(tissue, "pieces", pieces);
}

const withChart = (work: Work, chart: Pattern["chart"]): Work =>
  withPart(work, "pattern", withPart(work.pattern, "chart", chart));

/** The newest set with other readings of one measure; none, and the measure is gone from it. */
function withReadings(work: Work, measure: MeasureName, change: (readings: readonly Mm[]) => readonly Mm[]): Work {
  const [newest, ...earlier] = work.tapes;
  if (newest === undefined) return work;
  const readings = change(newest.readings[measure] ?? []).slice(0, LIMITS.readings);
  const next = readings.length === 0 ? without(newest.readings, measure) : { ...newest.readings, [measure]: readings };
  return withPart(work, "tapes", [withPart(newest, "readings", next), ...earlier]);
}

const dated = ({ readings }: MeasureSet, taken: string | null): MeasureSet =>
  taken === null ? { readings } : { taken, readings };

/** A long name is still a name when it is cut; a number out of bounds would be another number. */
const cut = (text: string): string => text.slice(0, LIMITS.text);

const cutRows = <T extends { readonly label: string }>(rows: readonly T[]): readonly T[] =>
  rows.slice(0, LIMITS.rows).map((row) => ({ ...row, label: cut(row.label) }));

/** Picks of lines go by where a size stands in the chart, so they go along when sizes are put in, taken out or sorted. */
function withSizes(work: Work, sizes: readonly SizeRow[]): Work {
  const before = work.pattern.chart.sizes;
  const { waist, hip, ...others } = work.picks;
  const picks: Picks = { ...others, ...pickOn("waist", waist, before, sizes), ...pickOn("hip", hip, before, sizes) };
  const next = withPart(withChart(work, withPart(work.pattern.chart, "sizes", sizes)), "picks", picks);
  return withLengths(next, lengthsOn(work.pattern.lengths ?? {}, before, sizes));
}

/** Without any, the pattern says nothing of lengths. */
function withLengths(work: Work, lengths: PrintedLengths): Work {
  const { pattern } = work;
  const next = Object.keys(lengths).length === 0 ? without(pattern, "lengths") : withPart(pattern, "lengths", lengths);
  return next === pattern ? work : { ...work, pattern: next };
}

/** One figure of the pattern put, or taken out; a length of which nothing is said any more goes. */
function withPrinted(
  lengths: PrintedLengths,
  measure: PrintedLength,
  size: string | null,
  value: Mm | null,
): PrintedLengths {
  if (size !== null && size.length > LIMITS.text) return lengths;
  const before: PrintedFigure = lengths[measure] ?? {};
  const { bySize = {} } = before;
  if (size === null) {
    const next = value === null ? without(before, "all") : { ...before, all: value };
    return withFigure(lengths, measure, next);
  }
  if (value !== null && !Object.hasOwn(bySize, size) && Object.keys(bySize).length >= LIMITS.rows) return lengths;
  const sizes = value === null ? without(bySize, size) : { ...bySize, [size]: value };
  return withFigure(
    lengths,
    measure,
    Object.keys(sizes).length === 0 ? without(before, "bySize") : { ...before, bySize: sizes },
  );
}

const withFigure = (lengths: PrintedLengths, measure: PrintedLength, figure: PrintedFigure): PrintedLengths =>
  Object.keys(figure).length === 0 ? without(lengths, measure) : { ...lengths, [measure]: figure };

/** Figures of a size go by its label: along with a line that is renamed, and away with one that is taken out. */
function lengthsOn(lengths: PrintedLengths, before: readonly SizeRow[], after: readonly SizeRow[]): PrintedLengths {
  const known = new Set(before.map(({ label }) => label));
  const kept = new Set(after.map(({ label }) => label));
  return withLabels(relabelled(lengths, before, after), (label) =>
    kept.has(label) || !known.has(label) ? label : null,
  );
}

/** Figures of a size along with the one line that is renamed. */
export function relabelled(
  lengths: PrintedLengths,
  before: readonly SizeRow[],
  after: readonly SizeRow[],
): PrintedLengths {
  const renamed = before.length === after.length ? before.filter((row, at) => row.label !== after[at]?.label) : [];
  const [row] = renamed.length === 1 ? renamed : [];
  const to = row === undefined ? undefined : after[before.indexOf(row)]?.label;
  return to === undefined ? lengths : withLabels(lengths, (label) => (label === row?.label ? to : label));
}

/** Under other labels; null: gone. */
const withLabels = (lengths: PrintedLengths, labelOf: (label: string) => string | null): PrintedLengths =>
  PRINTED_LENGTHS.reduce<PrintedLengths>((done, measure) => {
    const figure = lengths[measure];
    if (figure?.bySize === undefined) return done;
    const bySize = Object.fromEntries(
      Object.entries(figure.bySize).flatMap(([label, value]) => {
        const now = labelOf(label);
        return now === null ? [] : [[now, value] as const];
      }),
    );
    if (isSame(bySize, figure.bySize)) return done;
    const others = without(figure, "bySize");
    return withFigure(done, measure, Object.keys(bySize).length === 0 ? others : { ...others, bySize });
  }, lengths);

/** The same place between the same two lines; none where they no longer lie side by side. */
export function pickOn(
  level: "waist" | "hip",
  size: number | undefined,
  before: readonly SizeRow[],
  after: readonly SizeRow[],
): Picks {
  if (size === undefined) return {};
  // Where nothing but what stands in the rows has changed, a new label is a line renamed.
  const renamed =
    before.length === after.length && before.filter((row, at) => row.label !== after[at]?.label).length <= 1;
  if (renamed) return { [level]: size };
  const lower = Math.min(Math.max(Math.floor(size), 0), Math.max(before.length - 2, 0));
  const [low, high] = [lower, lower + 1].map((at) => after.findIndex(({ label }) => label === before[at]?.label));
  if (low === undefined || low < 0 || high !== low + 1) return {};
  const moved = size - lower + low;
  // A place that far out is none between these lines, and could not be kept.
  return areNumbersKept(moved) ? { [level]: moved } : {};
}

function cutPattern(pattern: Pattern): Pattern {
  const { sizes, cups } = pattern.chart;
  return {
    ...pattern,
    name: cut(pattern.name),
    chart: { ...pattern.chart, sizes: cutRows(sizes), cups: cutRows(cups) },
  };
}

/** Redraws in place of all that a dart has, on a half or on both. */
function withRedraws(work: Work, dart: DartRef, half: Half | undefined, alterations: readonly DartRedraw[]): Work {
  const own = redrawsOf(work.alterations, dart);
  const others = work.alterations.filter((a) => !own.some((one) => one === a));
  if (half === undefined) return withPart(work, "alterations", alterations.reduce(put, others));
  const left = own.reduce((list, { id }) => takeOut(list, id, half), work.alterations);
  return withPart(work, "alterations", alterations.map((a) => onHalves(a, half)).reduce(put, left));
}

function seenSet(work: Work, dart: DartRef, half: Half, said: SeenAtDart | null): Work {
  const before = work.seen ?? [];
  const seen = withSeen(before, dart, half, said, sewnWith(work, dart, half));
  if (seen === before) return work;
  return seen.length === 0 ? without(work, "seen") : withPart(work, "seen", seen);
}

function answerTaken(
  work: Work,
  { dart, half, alone, seen, answer, alterations }: Extract<Command, { kind: "takeAnswer" }>,
): Work {
  const said = seenSet(work, dart, half, seen);
  const redrawn = withRedraws(said, dart, alone === true ? half : undefined, alterations);
  const taken = { answer, redraws: redrawsOn(redrawn.alterations, dart, half) };
  // What an older file kept without it was said of the toile that was sewn with what the ledger had.
  const sewn = redrawsOn(work.alterations, dart, half);
  const list = (said.seen ?? []).map((one) => (isSeenOf(one, dart, half) ? { sewn, ...one, taken } : one));
  return list.length === 0 ? redrawn : withPart(redrawn, "seen", list);
}

/** What is seen of one dart in place of what was said before; the very same list where it is full, or there is none to take out. */
function withSeen(
  list: readonly SeenOfDart[],
  { piece, dart }: DartRef,
  half: Half,
  seen: SeenAtDart | null,
  redraws: readonly DartRedraw[],
): readonly SeenOfDart[] {
  const at = list.findIndex((one) => isSeenOf(one, { piece, dart }, half));
  if (seen === null) return at < 0 ? list : list.toSpliced(at, 1);
  const { pastBustPoint, tooFarToSide, pointed } = seen;
  const before = list[at];
  const isAlike =
    before?.pastBustPoint === pastBustPoint && before.tooFarToSide === tooFarToSide && before.pointed === pointed;
  if (isAlike) return list;
  // Another thing seen is not what an answer was taken to.
  const said: SeenOfDart = {
    piece,
    dart,
    half,
    pastBustPoint,
    tooFarToSide,
    pointed,
    sewn: before?.sewn ?? redraws,
  };
  if (at >= 0) return list.with(at, said);
  if (list.length >= LIMITS.seen) return list;
  const place = list.findIndex((one) => compareSeen(said, one) < 0);
  return place < 0 ? [...list, said] : list.toSpliced(place, 0, said);
}

function leaveStanding(work: Work, key: string, isLeft: boolean): Work {
  const { standingLeft: before = [] } = work;
  if (key.length > LIMITS.text || before.includes(key) === isLeft) return work;
  const left = isLeft ? [...before, key].toSorted() : before.filter((one) => one !== key);
  if (left.length > LIMITS.alterations) return work;
  return left.length === 0 ? without(work, "standingLeft") : withPart(work, "standingLeft", left);
}

function putUnread(unread: Work["unread"], field: string, text: string): Work["unread"] {
  if (field.length > LIMITS.text) return unread;
  if (!Object.hasOwn(unread, field) && Object.keys(unread).length >= LIMITS.unread) return unread;
  return withPart(unread, field, text.slice(0, LIMITS.unreadText));
}

/** Places of a file are in its own units, which may be small ones. */
function areNumbersKept(value: unknown, most: number = LIMITS.length): boolean {
  if (typeof value === "number") return Math.abs(value) <= most;
  if (typeof value !== "object" || value === null) return true;
  return Object.entries(value).every(([key, part]) =>
    areNumbersKept(part, key === "own" ? LIMITS.fileCoordinate : most),
  );
}

/** A set's day is one of the calendar, as the document keeps it: yyyy-mm-dd. */
function isDayKept(command: Command): boolean {
  const said =
    command.kind === "setTaken" || command.kind === "newTape"
      ? command.taken
      : command.kind === "beginTrial" || command.kind === "setTrialDay"
        ? command.day
        : null;
  if (said === null) return true;
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(said)?.map(Number) ?? [];
  if (year === undefined || month === undefined || day === undefined) return false;
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  return day >= 1 && day <= (days[month - 1] ?? 0);
}

/** Buttons are counted: a whole number of them, or none named. */
function areButtonsKept(command: Command): boolean {
  const closure =
    command.kind === "setClosure" ? command.closure : command.kind === "setPattern" ? command.pattern.closure : null;
  const buttons = closure?.buttons;
  return (
    buttons === undefined ||
    (Number.isInteger(buttons) && buttons >= LIMITS.buttons.least && buttons <= LIMITS.buttons.most)
  );
}

const isShare = (share: number): boolean => share >= 0 && share <= 1;

/** Whether the alterations a command brings are within what a work can hold: shares from 0 to 1, ids of usual length. */
function areAlterationsKept(command: Command): boolean {
  if (command.kind === "setGiveBack") return Object.values(command.giveBack).every(isShare);
  const brought =
    command.kind === "putAlteration"
      ? [command.alteration]
      : command.kind === "replaceRedraws" ||
          command.kind === "takeAnswer" ||
          command.kind === "takeTrialAnswer" ||
          command.kind === "keepHalf"
        ? command.alterations
        : [];
  return brought.every(
    (a) =>
      a.id.length <= LIMITS.text &&
      (!isRedraw(a) || Object.values(a.giveBack).every(isShare)) &&
      (a.kind !== "dartPivot" || isShare(a.share)),
  );
}

function reordered(alterations: readonly Alteration[], id: string, before: string | null): readonly Alteration[] {
  const from = alterations.findIndex((a) => a.id === id);
  const moved = alterations[from];
  if (moved === undefined || id === before) return alterations;
  const others = alterations.toSpliced(from, 1);
  const at = before === null ? -1 : others.findIndex((a) => a.id === before);
  return at < 0 ? [...others, moved] : others.toSpliced(at, 0, moved);
}
