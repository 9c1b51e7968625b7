/** Finding the columns of a pasted table: under headings, beside them (sizes along the top), or by their number. */
import { BODY_COLUMNS, FINISHED_COLUMNS, type ChartColumn } from "./readChart";
import type { PastedCell } from "./pasteCells";
import { readHeading, readUnit, type Heading, type PastedUnit } from "./pasteWords";

type Line = readonly PastedCell[];

export interface PastedLayout {
  readonly kind: "headings" | "transposed" | "counted";
  /** What each cell of a line holds; null: nothing of ours. */
  readonly columns: readonly (ChartColumn | null)[];
  /** The unit that each of them names, or that stands for the whole table. */
  readonly units: readonly (PastedUnit | null)[];
  /** Headings that are nothing of ours, or say again what another one says. */
  readonly ignored: readonly { readonly cell: PastedCell; readonly column: ChartColumn | null }[];
  /** One line for each size. */
  readonly sizes: readonly Line[];
}

/** A line is a line of headings when it names so many girths. */
const HEADINGS_NEEDED = 2;

const EMPTY = "";

/** Finds the columns. null: too few cells in a line to hold three girths. */
export function findLayout(lines: readonly Line[], unit: PastedUnit): PastedLayout | null {
  const heading = lines.findIndex((line) => girthsNamed(line) >= HEADINGS_NEEDED);
  if (heading >= 0) return underHeadings("headings", lines.slice(heading), statedUnit(lines.slice(0, heading)), unit);
  const beside = lines.findIndex((line) => isGirth(headingOf(line[0]).column));
  if (beside >= 0 && girthsNamed(lines.flatMap((line) => line.slice(0, 1))) >= HEADINGS_NEEDED) {
    const from = labelLine(lines, beside) ?? beside;
    return underHeadings("transposed", transposed(lines, from, beside), statedUnit(lines.slice(0, from)), unit);
  }
  return counted(lines);
}

const NO_HEADING: Heading = { column: null, unit: null };
const headingOf = (cell: PastedCell | undefined): Heading => (cell === undefined ? NO_HEADING : readHeading(cell.text));
const isGirth = (column: ChartColumn | null): boolean => column !== null && column !== "label";

const girthsNamed = (cells: Line): number =>
  new Set(cells.map((cell) => readHeading(cell.text).column).filter(isGirth)).size;

/** A unit named in a title above the table. */
function statedUnit(above: readonly Line[]): PastedUnit | null {
  return soleUnit(above.flatMap((line) => line.flatMap((cell) => readHeading(cell.text).unit ?? [])));
}

/** The unit, where only one is named. */
function soleUnit(units: readonly PastedUnit[]): PastedUnit | null {
  const [first] = units;
  return first !== undefined && units.every((unit) => unit === first) ? first : null;
}

/** The line of sizes along the top: the last before the girths that holds more than a title. */
function labelLine(lines: readonly Line[], firstGirth: number): number | null {
  const before = lines
    .slice(0, firstGirth)
    .findLastIndex((line) => line.filter((cell) => cell.text !== EMPTY).length > 1);
  return before < 0 ? null : before;
}

/** Lines made columns. A line of sizes without a heading of its own is moved along to stand over its girths. */
function transposed(lines: readonly Line[], from: number, firstGirth: number): readonly Line[] {
  const girths = lines[firstGirth] ?? [];
  const rows = lines.slice(from).map((line, index): Line => {
    const first = line[0];
    if (from + index >= firstGirth || first === undefined) return line;
    const corner = { ...first, text: "size" };
    if (first.text === EMPTY || headingOf(first).column === "label") return [corner, ...line.slice(1)];
    return line.length < girths.length ? [corner, ...line] : [corner, ...line.slice(1)];
  });
  const width = Math.max(...rows.map((row) => row.length));
  return Array.from({ length: width }, (_, at) =>
    rows.map((row): PastedCell => row[at] ?? { text: EMPTY, line: row[0]?.line ?? 0, cell: at + 1 }),
  );
}

function underHeadings(
  kind: PastedLayout["kind"],
  [headings = [], ...rest]: readonly Line[],
  stated: PastedUnit | null,
  wanted: PastedUnit,
): PastedLayout {
  const below = rest[0] ?? [];
  const unitLine =
    below.some((cell) => readUnit(cell.text) !== null) &&
    below.every((cell) => cell.text === EMPTY || readUnit(cell.text) !== null);
  const read = headings.map((cell, at) => {
    const { column, unit } = readHeading(cell.text);
    return { cell, column, unit: unit ?? (unitLine ? readUnit(below[at]?.text ?? EMPTY) : null) };
  });
  // A first column without a heading names the sizes.
  const corner = read[0];
  if (
    corner !== undefined &&
    corner.column === null &&
    corner.cell.text === EMPTY &&
    !read.some(({ column }) => column === "label")
  ) {
    read[0] = { ...corner, column: "label" };
  }
  const whole = stated ?? soleUnit(read.flatMap(({ unit }) => unit ?? []));
  const kept = read.map(({ column, unit }, at) => {
    if (column === null) return false;
    const same = read.flatMap((other, index) => (other.column === column ? [{ index, unit: other.unit }] : []));
    // Of the same girth in two units the wanted one is taken.
    const best = same.find((other) => other.unit === wanted) ?? same[0];
    return best?.index === at || (best === undefined && unit === null);
  });
  return {
    kind,
    columns: read.map(({ column }, at) => (kept[at] === true ? column : null)),
    units: read.map(({ unit }) => unit ?? whole),
    ignored: read.flatMap(({ cell, column }, at) =>
      kept[at] === true || cell.text === EMPTY ? [] : [{ cell, column }],
    ),
    sizes: unitLine ? rest.slice(1) : rest,
  };
}

const BODY_ONLY: readonly ChartColumn[] = BODY_COLUMNS;
const LABELLED: readonly ChartColumn[] = ["label", ...BODY_COLUMNS];
const WITH_FINISHED: readonly ChartColumn[] = [...LABELLED, ...FINISHED_COLUMNS.map(({ column }) => column)];

/** No headings: three girths, a size and three girths, or a size with body and finished girths. */
function counted(lines: readonly Line[]): PastedLayout | null {
  const sizes = lines.filter((line) => line.length >= BODY_ONLY.length && line.some((cell) => /\d/.test(cell.text)));
  const fewest = Math.min(...sizes.map((line) => line.length));
  if (sizes.length === 0) return null;
  const columns = fewest >= WITH_FINISHED.length ? WITH_FINISHED : fewest > BODY_ONLY.length ? LABELLED : BODY_ONLY;
  const above = lines.slice(0, sizes[0] === undefined ? 0 : lines.indexOf(sizes[0]));
  const stated = statedUnit(above);
  return { kind: "counted", columns, units: columns.map(() => stated), ignored: [], sizes: lines.slice(above.length) };
}
