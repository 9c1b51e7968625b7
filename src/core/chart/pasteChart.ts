/**
 * A size chart pasted from a spreadsheet or a page: read as far as it can be, and every cell that cannot is named. What
 * the sizes themselves say is judged afterwards, by reading the chart.
 */
import type { TypedUnit } from "../measures/length";
import { checkMeasure } from "../measures/registry";
import type { Mm } from "../units";
import { cutCells, type PastedCell } from "./pasteCells";
import { findLayout, type PastedLayout } from "./pasteLayout";
import { readCell, type PastedLength } from "./pasteLength";
import type { PastedUnit } from "./pasteWords";
import { BODY_COLUMNS, FINISHED_COLUMNS, type BodyColumn, type ChartColumn } from "./readChart";
import type { SizeRow } from "./sizeChart";

type PasteFault =
  | { readonly code: "paste/empty" }
  | { readonly code: "paste/too-long" }
  /** No line holds three girths. */
  | { readonly code: "paste/no-columns" }
  | { readonly code: "paste/column-missing"; readonly missing: readonly BodyColumn[] }
  /** Commas may be decimal or stand between cells: both readings are possible. */
  | { readonly code: "paste/commas-ambiguous" }
  | { readonly code: "paste/too-many-lines"; readonly most: number }
  | { readonly code: "paste/cell-missing" }
  | { readonly code: "paste/cell-unreadable"; readonly text: string }
  | { readonly code: "paste/range-middle"; readonly text: string; readonly taken: Mm }
  | { readonly code: "paste/cells-left-over"; readonly count: number }
  | { readonly code: "paste/line-ignored"; readonly text: string }
  | { readonly code: "paste/heading-ignored"; readonly text: string }
  | { readonly code: "paste/heading-twice"; readonly text: string }
  | { readonly code: "paste/columns-assumed"; readonly columns: readonly ChartColumn[] }
  | { readonly code: "paste/sizes-along-top" }
  | { readonly code: "paste/names-made" }
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
  const { separator, lines } = cutCells(text);
  if (lines.length === 0) return nothing({ code: "paste/empty" });
  if (lines.length > MOST_CELLS || lines.some((line) => line.length > MOST_CELLS)) {
    return nothing({ code: "paste/too-long" });
  }
  const layout = findLayout(lines, unit);
  if (layout === null) return nothing({ code: "paste/no-columns" });
  const missing = BODY_COLUMNS.filter((column) => !layout.columns.includes(column));
  if (missing.length > 0) return nothing({ code: "paste/column-missing", missing });
  const assumed = assumedUnit(layout, unit);
  if (separator === "comma" && commasAmbiguous(layout, assumed)) return nothing({ code: "paste/commas-ambiguous" });
  return readSizeLines(layout, assumed, unit);
}

/** What numbers mean that say nothing themselves: the unit given, unless only another one makes bodies of them. */
function assumedUnit(layout: PastedLayout, unit: TypedUnit): PastedUnit {
  const plausible = (as: PastedUnit): number =>
    layout.sizes.reduce(
      (count, line) =>
        count +
        layout.columns.filter((column, at) => {
          const cell = line[at];
          if (cell === undefined || layout.units[at] !== null) return false;
          const read = readCell(cell.text, as);
          return (
            read !== null && isBodyColumn(column) && checkMeasure(MEASURE_OF[column], read.value).state !== "impossible"
          );
        }).length,
      0,
    );
  const given = plausible(unit);
  const others = (["cm", "in", "mm"] as const).filter((other) => other !== unit);
  // Only where hardly any number makes sense in the unit given, and nearly all do in another.
  return others.find((other) => plausible(other) > 4 * given) ?? unit;
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

function readSizeLines(layout: PastedLayout, assumed: PastedUnit, given: TypedUnit): PastedChart {
  const findings: PasteFinding[] = layoutNotes(layout, assumed, given);
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
    const row = readSizeLine(line, layout, assumed, String(rows.length + 1), findings);
    if (row !== null) rows.push(row);
  }
  if (rows.length === 0 && !findings.some((finding) => finding.severity === "blocks")) {
    findings.push({ code: "paste/no-columns", ...NOWHERE, severity: "blocks" });
  }
  return { rows, findings };
}

function layoutNotes(layout: PastedLayout, assumed: PastedUnit, given: TypedUnit): PasteFinding[] {
  const notes: PasteFinding[] = [];
  const note = (fault: PasteFault): number => notes.push({ ...fault, ...NOWHERE, severity: "notes" });
  if (layout.kind === "transposed") note({ code: "paste/sizes-along-top" });
  if (layout.kind === "counted") {
    note({ code: "paste/columns-assumed", columns: layout.columns.filter((column) => column !== null) });
  }
  if (!layout.columns.includes("label")) note({ code: "paste/names-made" });
  if (assumed !== given) note({ code: "paste/unit-assumed", unit: assumed });
  for (const { cell, column } of layout.ignored) {
    notes.push({
      ...(column === null
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
  { columns, units, kind }: PastedLayout,
  assumed: PastedUnit,
  number: string,
  findings: PasteFinding[],
): SizeRow | null {
  const labelAt = columns.indexOf("label");
  const label = labelAt < 0 ? number : (line[labelAt]?.text ?? "").slice(0, LONGEST_LABEL);
  const size = label === "" ? number : label;
  const girth = (column: Exclude<ChartColumn, "label">): Mm | null => {
    const index = columns.indexOf(column);
    const cell = index < 0 ? undefined : line[index];
    const required = isBodyColumn(column);
    const place = { line: cell?.line ?? line[0]?.line ?? null, cell: cell?.cell ?? null, size, column };
    if (cell === undefined || isBlank(cell.text)) {
      if (required) findings.push({ code: "paste/cell-missing", ...place, severity: "blocks" });
      return null;
    }
    const read: PastedLength | null = readCell(cell.text, units[index] ?? assumed);
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
  const leftOver = line.slice(columns.length).filter((cell) => cell.text !== "").length;
  if (leftOver > 0 && kind !== "transposed") {
    findings.push({
      code: "paste/cells-left-over",
      count: leftOver,
      ...NOWHERE,
      line: line[0]?.line ?? null,
      size,
      severity: "warns",
    });
  }
  if (bust === null || waist === null || hip === null) return null;
  return { label, bust, waist, hip, ...Object.fromEntries(finished) };
}

/** A dash is how tables print that there is nothing. */
const isBlank = (text: string): boolean => /^[-–—.]*$/.test(text);
