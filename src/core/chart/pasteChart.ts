/**
 * A size chart pasted from a spreadsheet or a page: read as far as it can be, and every cell that cannot is named. What
 * the sizes themselves say is judged afterwards, by reading the chart.
 */
import type { TypedUnit } from "../measures/length";
import { checkMeasure } from "../measures/registry";
import type { Mm } from "../units";
import { cutCells, losesEmptyCells, type PastedCell, type Separator } from "./pasteCells";
import { findLayout, type LayoutFault, type PastedLayout } from "./pasteLayout";
import { figuresOf, isBlank, type PastedLengths } from "./pasteLengths";
import { readCell, unitOfCell, withoutFootnote, type PastedLength } from "./pasteLength";
import { cutSpaced } from "./pasteSpaced";
import type { PastedUnit } from "./pasteWords";
import { BODY_COLUMNS, FINISHED_COLUMNS, type BodyColumn, type ChartColumn } from "./readChart";
import { CHART_LENGTHS, type ChartLength, type SizeRow } from "./sizeChart";

type PasteFault =
  | { readonly code: "paste/empty" }
  | { readonly code: "paste/too-long" }
  | LayoutFault
  | { readonly code: "paste/column-missing"; readonly missing: readonly BodyColumn[] }
  /** Commas may be decimal or stand between cells: both readings are possible. */
  | { readonly code: "paste/commas-ambiguous" }
  | { readonly code: "paste/too-many-lines"; readonly most: number }
  | { readonly code: "paste/cell-missing" }
  | { readonly code: "paste/cell-unreadable"; readonly text: string }
  | { readonly code: "paste/range-middle"; readonly text: string; readonly taken: Mm }
  /** More or fewer cells than columns, so that nobody can say which belongs to which. */
  | { readonly code: "paste/cells-uncertain"; readonly count: number; readonly columns: number }
  | { readonly code: "paste/line-ignored"; readonly text: string }
  | { readonly code: "paste/heading-ignored"; readonly text: string }
  | { readonly code: "paste/heading-twice"; readonly text: string }
  /** Lengths of the body that are printed beside the girths, by size. */
  | { readonly code: "paste/lengths-read"; readonly lengths: readonly ChartLength[] }
  | { readonly code: "paste/length-uncertain"; readonly text: string }
  | { readonly code: "paste/columns-assumed"; readonly columns: readonly ChartColumn[] }
  | { readonly code: "paste/sizes-along-top" }
  | { readonly code: "paste/names-made" }
  /** The numbers make bodies in centimetres and in inches. */
  | { readonly code: "paste/unit-uncertain" }
  | { readonly code: "paste/unit-assumed"; readonly unit: PastedUnit };

export type PasteFinding = PasteFault & {
  /** `blocks`: a size, or all of them, could not be taken. `warns`: taken with something left out. `notes`: how it was read. */
  readonly severity: "blocks" | "warns" | "notes";
  /** Line of the text and cell of the line, counted from 1. */
  readonly line: number | null;
  readonly cell: number | null;
  /** The size it is about, by its name or by its number in the list. */
  readonly size: string | null;
  readonly column: ChartColumn | null;
};

export interface PastedChart {
  /** In the order pasted. */
  readonly rows: readonly SizeRow[];
  /** What it prints of lengths, by the label of the size; absent: nothing. */
  readonly lengths?: PastedLengths;
  readonly findings: readonly PasteFinding[];
}

/** Characters, lines or cells of a line, and sizes beyond which a text is no chart. */
const LONGEST_TEXT = 20_000;
const MOST_CELLS = 300;
const MOST_LINES = 60;
const LONGEST_LABEL = 40;

/** mm. No girth of a chart is smaller: what reads so is a piece of one. */
const SMALLEST_GIRTH: Mm = 200;

const NOWHERE = { line: null, cell: null, size: null, column: null } as const;

const nothing = (fault: PasteFault): PastedChart => ({
  rows: [],
  findings: [{ ...fault, ...NOWHERE, severity: "blocks" }],
});

/**
 * Reads a pasted chart. Never throws, whatever the text.
 *
 * @param unit what a number means where neither its cell nor a heading says
 */
export function pasteChart(text: string, unit: TypedUnit): PastedChart {
  if (text.length > LONGEST_TEXT) return nothing({ code: "paste/too-long" });
  if (text.trim() === "") return nothing({ code: "paste/empty" });
  const { separator, lines } = cutCells(text);
  const asCut = separator === "space" ? readSpaced(text, unit) : readLines(lines, separator, unit);
  // Tabs and gaps may stand in some lines alone; then single spaces are what is left.
  if ((separator !== "tab" && separator !== "gap") || !asCut.findings.some(({ code }) => CUT_AMISS.has(code)))
    return asCut;
  const spaced = readSpaced(text, unit);
  return spaced.findings.some(({ code, severity }) => severity === "blocks" || CUT_AMISS.has(code)) ? asCut : spaced;
}

/** What is found where cells were cut at the wrong places. */
const CUT_AMISS: ReadonlySet<PasteFault["code"]> = new Set([
  "paste/no-columns",
  "paste/headings-uncertain",
  "paste/labels-uncertain",
  "paste/names-made",
] as const);

function readSpaced(text: string, unit: TypedUnit): PastedChart {
  const cut = cutSpaced(text);
  return "fault" in cut ? nothing(cut.fault) : readLines(cut.lines, "space", unit);
}

function readLines(lines: readonly (readonly PastedCell[])[], separator: Separator, unit: TypedUnit): PastedChart {
  if (lines.length === 0) return nothing({ code: "paste/empty" });
  if (lines.length > MOST_CELLS || lines.some((line) => line.length > MOST_CELLS)) {
    return nothing({ code: "paste/too-long" });
  }
  const exact = losesEmptyCells(separator);
  const found = findLayout(lines, unit, exact);
  if ("fault" in found) return nothing(found.fault);
  const { layout } = found;
  const missing = BODY_COLUMNS.filter((column) => !layout.columns.includes(column));
  if (missing.length > 0) return nothing({ code: "paste/column-missing", missing });
  const assumed = assumedUnit(layout, unit);
  if (assumed === null) return nothing({ code: "paste/unit-uncertain" });
  if (separator === "comma" && commasAmbiguous(layout, assumed)) return nothing({ code: "paste/commas-ambiguous" });
  const stated = unitsOf(layout, assumed);
  const isAssumed = layout.columns.some((column, at) => isGirthColumn(column) && stated[at] === null);
  const units = stated.map((one) => one ?? assumed);
  return readSizeLines({ layout, units, exact }, isAssumed ? assumed : unit, unit);
}

/** A layout, the unit of each of its columns, and whether its lines must be whole. */
interface Reading {
  readonly layout: PastedLayout;
  readonly units: readonly PastedUnit[];
  readonly exact: boolean;
}

/** A unit behind the last girth of a line is meant for all of it; so is one without which the others are no girths. null: nothing says. */
const unitsOf = ({ columns, units, sizes, kind }: PastedLayout, assumed: PastedUnit): readonly (PastedUnit | null)[] =>
  columns.map((column, at) => {
    const stated = units[at];
    if (stated !== null && stated !== undefined) return stated;
    const cells = sizes.flatMap((line) => line[at]?.text || []);
    const named = cells.flatMap((text) => unitOfCell(text) ?? []);
    const [only] = named;
    if (only === undefined || new Set(named).size > 1) return null;
    const last = kind === "transposed" && named.length === 1 && unitOfCell(cells.at(-1) ?? "") !== null;
    const others = cells.filter((text) => unitOfCell(text) === null);
    return last ||
      (others.every((text) => !isOfBody(column, text, assumed)) && others.some((text) => isOfBody(column, text, only)))
      ? only
      : null;
  });

function isOfBody(column: ChartColumn | null, text: string, unit: PastedUnit): boolean {
  const body = FINISHED_COLUMNS.find((finished) => finished.column === column)?.body ?? column;
  return isBodyColumn(body) && stateOf(body, text, unit) !== "impossible";
}

function stateOf(column: BodyColumn, text: string, unit: PastedUnit): "ok" | "unusual" | "impossible" {
  const read = readCell(text, unit);
  return read === null ? "impossible" : checkMeasure(MEASURE_OF[column], read.value).state;
}

const UNITS: readonly PastedUnit[] = ["cm", "in", "mm"];

/**
 * What numbers mean that say nothing themselves: the unit given, unless only another one makes usual bodies of them. No
 * number of a bust or a hip is usual in both centimetres and inches. null: nobody can say.
 */
function assumedUnit({ sizes, columns, units }: PastedLayout, given: TypedUnit): PastedUnit | null {
  const silent = sizes.flatMap((line) => {
    const girths = columns.flatMap((column, at) => {
      const text = line[at]?.text ?? "";
      const says =
        units[at] !== null || unitOfCell(text) !== null || UNITS.every((unit) => readCell(text, unit) === null);
      return isBodyColumn(column) && !says ? [{ column, text }] : [];
    });
    return girths.length > 0 ? [girths] : [];
  });
  const rows = (unit: PastedUnit, states: readonly string[]): number =>
    silent.filter((girths) => girths.every(({ column, text }) => states.includes(stateOf(column, text, unit)))).length;
  const usual = (unit: PastedUnit): number => rows(unit, ["ok"]);
  // The one given stands first, so it is taken where others do no better.
  const [other = given] = [given, ...UNITS].toSorted((a, b) => usual(b) - usual(a));
  if (other === given) return given;
  const possible = rows(given, ["ok", "unusual"]);
  // Busts from 70 in on would be meant: the numbers are centimetres. The other way they could be a child's.
  return 2 * possible < silent.length || given === "in" ? other : null;
}

const MEASURE_OF = { bust: "bustGirth", waist: "waistGirth", hip: "hipGirth" } as const;

const isBodyColumn = (column: ChartColumn | null | undefined): column is BodyColumn =>
  BODY_COLUMNS.some((body) => body === column);

/** More cells than columns, or pieces of a girth among the girths: then a comma may have been a decimal one. */
function commasAmbiguous({ sizes, columns, units, kind }: PastedLayout, unit: PastedUnit): boolean {
  return sizes.some((line) => {
    if (kind !== "transposed" && line.slice(columns.length).some((cell) => cell.text !== "")) return true;
    return line.some((cell, at) => {
      const read = isGirthColumn(columns[at]) ? readCell(cell.text, units[at] ?? unit) : null;
      return read !== null && read.value < SMALLEST_GIRTH;
    });
  });
}

const isGirthColumn = (column: ChartColumn | null | undefined): boolean =>
  typeof column === "string" && column !== "label";

function readSizeLines(reading: Reading, assumed: PastedUnit, given: TypedUnit): PastedChart {
  const { layout } = reading;
  const taken: SizeLine[] = [];
  const findings: PasteFinding[] = [];
  const rows: SizeRow[] = [];
  for (const line of layout.sizes) {
    const text = line
      .map((cell) => cell.text)
      .join(" ")
      .trim();
    if (text === "") continue;
    const at = { ...NOWHERE, line: layout.kind === "transposed" ? null : (line[0]?.line ?? null) };
    if (!line.some((cell, index) => isGirthColumn(layout.columns[index]) && /\d/.test(cell.text))) {
      findings.push({ code: "paste/line-ignored", text, ...at, severity: "notes" });
      continue;
    }
    if (rows.length >= MOST_LINES) {
      findings.push({ code: "paste/too-many-lines", most: MOST_LINES, ...at, severity: "blocks" });
      break;
    }
    const row = readSizeLine(line, reading, given, String(rows.length + 1), findings);
    if (row !== null) {
      rows.push(row);
      taken.push({ label: row.label, line });
    }
  }
  const lengths = readLengths(reading, taken, given);
  findings.unshift(...layoutNotes(layout, assumed, given, lengths));
  if (rows.length === 0 && !findings.some((finding) => finding.severity === "blocks")) {
    findings.push({ code: "paste/no-columns", ...NOWHERE, severity: "blocks" });
  }
  return { rows, ...(Object.keys(lengths).length === 0 ? {} : { lengths }), findings };
}

interface SizeLine {
  readonly label: string;
  readonly line: readonly PastedCell[];
}

/** The lengths of which every figure is sure; two columns of one length, or two sizes of one name, are not. */
function readLengths({ layout, units }: Reading, taken: readonly SizeLine[], given: TypedUnit): PastedLengths {
  const labels = new Set(taken.map(({ label }) => label.trim()));
  if (labels.size < taken.length || labels.has("")) return {};
  return CHART_LENGTHS.reduce<PastedLengths>((done, measure) => {
    const columns = [...layout.lengths.keys()].filter((at) => layout.lengths[at] === measure);
    const [at] = columns;
    if (at === undefined || columns.length > 1) return done;
    const texts = taken.map(({ line }) => line[at]?.text ?? "");
    const figures = figuresOf(measure, texts, units[at] ?? given, given);
    if (figures === null) return done;
    const bySize = Object.fromEntries(
      taken.flatMap(({ label }, size) => {
        const figure = figures[size] ?? null;
        return figure === null ? [] : [[label, figure] as const];
      }),
    );
    return { ...done, [measure]: { bySize } };
  }, {});
}

function layoutNotes(
  layout: PastedLayout,
  assumed: PastedUnit,
  given: TypedUnit,
  lengths: PastedLengths,
): PasteFinding[] {
  const notes: PasteFinding[] = [];
  const note = (fault: PasteFault): number => notes.push({ ...fault, ...NOWHERE, severity: "notes" });
  if (layout.kind === "transposed") note({ code: "paste/sizes-along-top" });
  if (layout.kind === "counted") {
    note({ code: "paste/columns-assumed", columns: layout.columns.filter((column) => column !== null) });
  }
  if (!layout.columns.includes("label")) note({ code: "paste/names-made" });
  if (assumed !== given) note({ code: "paste/unit-assumed", unit: assumed });
  const read = CHART_LENGTHS.filter((measure) => lengths[measure] !== undefined);
  if (read.length > 0) note({ code: "paste/lengths-read", lengths: read });
  for (const { cell, column, length } of layout.ignored) {
    if (length !== null && length !== "uncertain" && lengths[length] !== undefined) continue;
    notes.push({
      ...(length !== null
        ? { code: "paste/length-uncertain", text: cell.text }
        : column === null
          ? { code: "paste/heading-ignored", text: cell.text }
          : { code: "paste/heading-twice", text: cell.text }),
      ...NOWHERE,
      line: cell.line,
      cell: cell.cell,
      column,
      severity: "notes",
    });
  }
  return notes;
}

/** One size; null where a body girth is missing or cannot be read. */
function readSizeLine(
  line: readonly PastedCell[],
  { layout: { columns, kind }, units, exact }: Reading,
  given: TypedUnit,
  number: string,
  findings: PasteFinding[],
): SizeRow | null {
  const labelAt = columns.indexOf("label");
  const label = labelAt < 0 ? number : withoutFootnote(line[labelAt]?.text ?? "").slice(0, LONGEST_LABEL);
  const size = label === "" ? number : label;
  const leftOver = kind === "transposed" ? 0 : line.slice(columns.length).filter((cell) => cell.text !== "").length;
  if (leftOver > 0 || (exact && line.length < columns.length)) {
    const count = line.filter((cell) => cell.text !== "").length;
    const at = { ...NOWHERE, line: line[0]?.line ?? null, size };
    findings.push({ code: "paste/cells-uncertain", count, columns: columns.length, ...at, severity: "blocks" });
    return null;
  }
  const girth = (column: Exclude<ChartColumn, "label">): Mm | null => {
    const index = columns.indexOf(column);
    const cell = index < 0 ? undefined : line[index];
    const required = isBodyColumn(column);
    const place = { line: cell?.line ?? line[0]?.line ?? null, cell: cell?.cell ?? null, size, column };
    if (cell === undefined || isBlank(cell.text)) {
      if (required) findings.push({ code: "paste/cell-missing", ...place, severity: "blocks" });
      return null;
    }
    const read: PastedLength | null = readCell(cell.text, units[index] ?? given, given);
    if (read === null) {
      findings.push({
        code: "paste/cell-unreadable",
        text: cell.text,
        ...place,
        severity: required ? "blocks" : "warns",
      });
      return null;
    }
    if (read.range !== null) {
      findings.push({ code: "paste/range-middle", text: cell.text, taken: read.value, ...place, severity: "notes" });
    }
    return read.value;
  };
  const bust = girth("bust");
  const waist = girth("waist");
  const hip = girth("hip");
  const finished = FINISHED_COLUMNS.flatMap(({ column }) => {
    const value = girth(column);
    return value === null ? [] : [[column, value] as const];
  });
  if (bust === null || waist === null || hip === null) return null;
  return { label, bust, waist, hip, ...Object.fromEntries(finished) };
}
