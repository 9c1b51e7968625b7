/** Finding the columns of a pasted table: under headings, beside them (sizes along the top), or by their number. */
import { BODY_COLUMNS, FINISHED_COLUMNS, type ChartColumn } from "./readChart";
import { lengthNamed } from "./pasteLengths";
import type { ChartLength } from "./sizeChart";
import type { PastedCell } from "./pasteCells";
import { isSizeName } from "./pasteSpaced";
import { namesGirth, readHeading, readTitle, readUnit, soleUnit, type Heading, type PastedUnit } from "./pasteWords";

type Line = readonly PastedCell[];

export interface PastedLayout {
  readonly kind: "headings" | "transposed" | "counted";
  /** What each cell of a line holds; null: nothing of ours. */
  readonly columns: readonly (ChartColumn | null)[];
  /** The unit that each of them names, or that stands for the whole table. */
  readonly units: readonly (PastedUnit | null)[];
  /** Headings that are nothing of ours, or say again what another one says. */
  readonly ignored: readonly {
    readonly cell: PastedCell;
    readonly column: ChartColumn | null;
    readonly length: ChartLength | "uncertain" | null;
  }[];
  /** Which length of the body each of them prints, where it is none of ours; "uncertain": which figure is whose cannot be told. */
  readonly lengths: readonly (ChartLength | "uncertain" | null)[];
  /** One line for each size; a size told of in two tables has one line. */
  readonly sizes: readonly Line[];
}

export type LayoutFault =
  /** Too few cells in a line to hold three girths. */
  | { readonly code: "paste/no-columns" }
  /** As many names of sizes as girths are not there. */
  | { readonly code: "paste/labels-uncertain" }
  | { readonly code: "paste/headings-uncertain" }
  /** Several columns give one girth, and nothing says which is the body's. */
  | { readonly code: "paste/column-several"; readonly several: ChartColumn; readonly texts: readonly string[] }
  | { readonly code: "paste/bust-by-cup"; readonly cups: readonly string[] };

type Found = { readonly layout: PastedLayout } | { readonly fault: LayoutFault };

/** A line is a line of headings when it names so many girths. */
const HEADINGS_NEEDED = 2;

/** A title of more words is a sentence, and says nothing of the table. */
const LONGEST_TITLE = 10;

const EMPTY = "";

/** A column of the table, whatever way it ran. */
interface Column extends Pick<Heading, "column" | "unit" | "chest" | "cup"> {
  readonly length: ChartLength | "uncertain" | null;
  readonly cell: PastedCell;
  /** One for each size. */
  readonly cells: readonly PastedCell[];
}

/**
 * Finds the columns.
 *
 * @param exact an empty cell leaves no trace: what is not as long as it should be could be short of any cell
 */
export function findLayout(lines: readonly Line[], unit: PastedUnit, exact: boolean): Found {
  const heading = lines.findIndex((line) => girthsNamed(line) >= HEADINGS_NEEDED);
  if (heading >= 0) return withColumns("headings", tablesDown(lines), unit);
  if (girthsNamed(lines.flatMap((line) => line.slice(0, 1))) >= HEADINGS_NEEDED) {
    return withColumns("transposed", tableAcross(lines, exact), unit);
  }
  return counted(lines);
}

const headingOf = (cell: PastedCell | undefined): Heading => readHeading(cell?.text ?? EMPTY);
const isGirth = (column: ChartColumn | null): boolean => column !== null && column !== "label";
const isFilled = (cell: PastedCell | undefined): cell is PastedCell => cell !== undefined && cell.text !== EMPTY;
const filled = (line: Line): Line => line.filter(isFilled);
const textOf = (line: Line): string =>
  filled(line)
    .map((cell) => cell.text)
    .join(" ");

const girthsNamed = (cells: Line): number =>
  new Set(cells.map((cell) => readHeading(cell.text).column).filter(isGirth)).size;

const isTitle = (line: Line): boolean => {
  const text = textOf(line);
  return filled(line).length === 1 && text.split(" ").length <= LONGEST_TITLE;
};

/** Made a finished girth by what stands above it. */
function sewn(column: ChartColumn | null, finished: boolean | null): ChartColumn | null {
  if (finished !== true) return column;
  return FINISHED_COLUMNS.find(({ body }) => body === column)?.column ?? column;
}

type Columns =
  | { readonly columns: readonly Column[]; /** Where it is one table: its lines. */ readonly rows?: readonly Line[] }
  | { readonly fault: LayoutFault };

interface Table {
  readonly columns: readonly Column[];
  readonly rows: readonly Line[];
}

// Sizes down the side.

/** One table under each line of headings; what the later ones say is put beside the sizes of the first. */
function tablesDown(lines: readonly Line[]): Columns {
  const starts = [...lines.keys()].filter((at) => girthsNamed(lines[at] ?? []) >= HEADINGS_NEEDED);
  const several = starts.length > 1;
  const tables = starts.map((start, index) => {
    const before = index === 0 ? 0 : (starts[index - 1] ?? 0) + 1;
    const below = lines.slice(start, starts[index + 1] ?? lines.length);
    return tableDown(lines.slice(before, start), several ? below.filter((line) => filled(line).length > 1) : below);
  });
  const [first = { columns: [], rows: [] }, ...more] = tables;
  if (!several) return first;
  const labels = labelsOf(first.columns);
  const joined: Column[] = [...first.columns];
  for (const { columns, rows } of tables) {
    if (rows.some((row) => row.length !== columns.length)) return { fault: { code: "paste/headings-uncertain" } };
  }
  for (const { columns } of more) {
    const own = labelsOf(columns);
    if (labels === null || own === null || own.some((label) => !labels.includes(label)))
      return { fault: { code: "paste/labels-uncertain" } };
    for (const column of columns) {
      if (column.column === "label") continue;
      const nothing: PastedCell = { ...column.cell, text: EMPTY };
      joined.push({ ...column, cells: labels.map((label) => column.cells[own.indexOf(label)] ?? nothing) });
    }
  }
  return { columns: joined };
}

/** The names of the sizes of a table, each once; null: there are none, or two are alike. */
function labelsOf(columns: readonly Column[]): readonly string[] | null {
  const labels = columns.find(({ column }) => column === "label")?.cells.map((cell) => cell.text);
  return labels === undefined || new Set(labels).size < labels.length ? null : labels;
}

function tableDown(above: readonly Line[], [headings = [], ...rest]: readonly Line[]): Table {
  const titles = above.filter(isTitle).map((line) => readTitle(textOf(line)));
  const spans = spanners(above.at(-1), headings.length);
  const [below = []] = rest;
  const unitLine = below.every((cell) => !isFilled(cell) || readUnit(cell.text) !== null);
  const finished = titles.findLast((title) => title.finished !== null)?.finished ?? null;
  const rows = unitLine ? rest.slice(1) : rest;
  const notes = rows.filter(isTitle).map((line) => readTitle(textOf(line)));
  const unit = unitOf(titles) ?? unitOf(notes);
  const columns = headings.map((cell, at): Column => {
    const heading = readHeading(cell.text);
    const isSewn = spans[at]?.finished ?? finished;
    return {
      ...heading,
      length: isSewn === true ? null : lengthNamed(cell.text),
      column: sewn(heading.column, isSewn),
      unit: heading.unit ?? (unitLine ? readUnit(below[at]?.text ?? EMPTY) : null) ?? spans[at]?.unit ?? unit,
      cell,
      cells: rows.map((row) => row[at] ?? { text: EMPTY, line: row[0]?.line ?? cell.line, cell: at + 1 }),
    };
  });
  // A first column without a heading names the sizes.
  const [corner, ...others] = columns;
  const named =
    corner !== undefined &&
    corner.column === null &&
    corner.cell.text === EMPTY &&
    !others.some(({ column }) => column === "label")
      ? [{ ...corner, column: "label" as const }, ...others]
      : columns;
  return { columns: named, rows };
}

const unitOf = (titles: readonly ReturnType<typeof readTitle>[]): PastedUnit | null =>
  soleUnit(titles.flatMap((title) => title.unit ?? []));

const NO_HEADING = { column: null, length: null, unit: null, chest: false, cup: null } as const;

/** What a line above the headings says of the columns under each of its cells. */
function spanners(above: Line | undefined, width: number): readonly (ReturnType<typeof readTitle> | null)[] {
  if (above === undefined || !above.slice(1).some(isFilled) || above.some((cell) => /\d/.test(cell.text))) return [];
  return Array.from({ length: width }, (_, at) => {
    const over = above.slice(0, at + 1).findLast(isFilled);
    return over === undefined ? null : readTitle(over.text);
  });
}

// Sizes along the top.

function tableAcross(lines: readonly Line[], exact: boolean): Columns {
  const girths = lines.filter((line) => isGirth(headingOf(line[0]).column) && line.length > 1);
  // A unit in a cell of its own, between the heading and its girths.
  const unitCells = girths.length > 0 && girths.every((line) => readUnit(line[1]?.text ?? EMPTY) !== null);
  const from = unitCells ? 2 : 1;
  const count = Math.max(...girths.map((line) => line.findLastIndex(isFilled) + 1)) - from;
  if (exact && girths.some((line) => line.length - from !== count))
    return { fault: { code: "paste/labels-uncertain" } };
  const columns: Column[] = [];
  let labels: Column | null = null;
  let finished: boolean | null = null;
  let unit: PastedUnit | null = null;
  let begun = false;
  for (const line of lines) {
    const [cell] = line;
    if (cell === undefined) continue;
    const heading = headingOf(cell);
    const size = labelLine(line, count, from, begun);
    if (isTitle(line) && size === null && !(isGirth(heading.column) && line.length > 1)) {
      const title = readTitle(textOf(line));
      finished = title.finished ?? finished;
      unit = title.unit ?? unit;
      continue;
    }
    if (size === "uncertain") return { fault: { code: "paste/labels-uncertain" } };
    if (size !== null) {
      const title = readTitle(cell.text);
      // A line of sizes may name its girths in its corner.
      finished = title.finished ?? finished;
      unit = title.unit ?? unit;
      if (labels === null) labels = size;
      else if (begun && !sameTexts(labels.cells, size.cells)) return { fault: { code: "paste/labels-uncertain" } };
      else if (!begun && preferred(size) && !preferred(labels)) labels = size;
      continue;
    }
    begun ||= isGirth(heading.column);
    const values = line.slice(from);
    const named = finished === true ? null : lengthNamed(cell.text);
    const isWhole = exact ? values.length === count : line.findLastIndex(isFilled) < from + count;
    columns.push({
      ...heading,
      length: named === null || isWhole ? named : "uncertain",
      column: sewn(isGirth(heading.column) ? heading.column : null, finished),
      unit: heading.unit ?? (unitCells ? readUnit(line[1]?.text ?? EMPTY) : null) ?? unit,
      cell,
      cells: Array.from(
        { length: count },
        (_, at) => values[at] ?? { text: EMPTY, line: cell.line, cell: at + from + 1 },
      ),
    });
  }
  return { columns: labels === null ? columns : [labels, ...columns] };
}

const sameTexts = (a: Line, b: Line): boolean =>
  a.length === b.length && a.every((cell, at) => cell.text === b[at]?.text);

/** A line that speaks of sizes in words is taken before one that names a country. */
const preferred = ({ cell }: Column): boolean => /size/i.test(cell.text);

/** The names of the sizes, each over its girths. null: the line is none of sizes. */
function labelLine(line: Line, count: number, from: number, begun: boolean): Column | "uncertain" | null {
  const [first] = line;
  if (first === undefined) return null;
  const { column, bare } = headingOf(first);
  const named = line.slice(0, line.findLastIndex(isFilled) + 1);
  const make = (cell: PastedCell, cells: Line): Column => ({ ...NO_HEADING, column: "label", cell, cells });
  if (column === "label" || ((first.text === EMPTY || bare) && !isSizeName(first.text))) {
    const cells = named.slice(from);
    const clear = from === 1 || !isFilled(named[1]) || readUnit(named[1].text) !== null;
    if (!cells.some(isFilled)) return null;
    if (cells.length === count && clear && cells.every(isFilled)) return make(first, cells);
    return column === "label" || cells.every((cell) => isSizeName(cell.text)) ? "uncertain" : null;
  }
  if (begun || column !== null || !named.every((cell) => isSizeName(cell.text)) || named.length < 2) return null;
  return named.length === count ? make({ ...first, text: EMPTY }, named) : "uncertain";
}

// What the columns say together.

function withColumns(kind: PastedLayout["kind"], found: Columns, wanted: PastedUnit): Found {
  if ("fault" in found) return found;
  const { columns } = found;
  // Beside a bust, the chest is measured above it.
  const hasBust = columns.some(({ column, chest }) => column === "bust" && !chest);
  const read = columns.map((one): Column =>
    hasBust && one.chest && one.column === "bust" ? { ...one, column: null } : one,
  );
  const whole = soleUnit(read.flatMap(({ unit }) => unit ?? []));
  const kept = new Set<Column>();
  for (const column of new Set(read.map((one) => one.column))) {
    if (column === null) continue;
    const same = read.filter((one) => one.column === column);
    const best = column === "label" ? same.slice(0, 1) : bestOf(same, wanted);
    const [only, second] = best;
    if (only === undefined) continue;
    if (second !== undefined && !best.every((one) => sameTexts(one.cells, only.cells))) {
      const cups = best.flatMap(({ cup }) => cup ?? []);
      if (cups.length === best.length) return { fault: { code: "paste/bust-by-cup", cups } };
      return { fault: { code: "paste/column-several", several: column, texts: best.map(({ cell }) => cell.text) } };
    }
    kept.add(only);
  }
  const sizes = Math.max(0, ...read.map(({ cells }) => cells.length));
  const layout: PastedLayout = {
    kind,
    columns: read.map((one) => (kept.has(one) ? one.column : null)),
    units: read.map(({ unit }) => unit ?? whole),
    lengths: read.map((one) => (kept.has(one) ? null : one.length)),
    ignored: read.flatMap((one) => (kept.has(one) || one.cell.text === EMPTY ? [] : [one])),
    sizes: found.rows ?? Array.from({ length: sizes }, (_, size) => read.flatMap(({ cells }) => cells[size] ?? [])),
  };
  return { layout };
}

/** Of the same girth in two units the wanted one is taken. */
function bestOf(same: readonly Column[], wanted: PastedUnit): readonly Column[] {
  const units = new Set(same.map(({ unit }) => unit));
  if (units.size < 2 || units.has(null)) return same;
  const [first] = same;
  const unit = units.has(wanted) ? wanted : first?.unit;
  return same.filter((one) => one.unit === unit);
}

const BODY_ONLY: readonly ChartColumn[] = BODY_COLUMNS;
const LABELLED: readonly ChartColumn[] = ["label", ...BODY_COLUMNS];
const WITH_FINISHED: readonly ChartColumn[] = [...LABELLED, ...FINISHED_COLUMNS.map(({ column }) => column)];

/** No headings: three girths, a size and three girths, or a size with body and finished girths. */
function counted(lines: readonly Line[]): Found {
  const noColumns = { fault: { code: "paste/no-columns" } } as const;
  const sizes = lines.filter((line) => line.length >= BODY_ONLY.length && line.some((cell) => /\d/.test(cell.text)));
  const [first] = sizes;
  if (first === undefined) return noColumns;
  // Where words name a girth, they name columns that were not understood.
  if (lines.some((line) => namesGirth(textOf(line)))) return { fault: { code: "paste/headings-uncertain" } };
  const columns = [BODY_ONLY, LABELLED, WITH_FINISHED].find(({ length }) => length === first.length);
  if (columns === undefined) return noColumns;
  const above = lines.slice(0, lines.indexOf(first));
  const stated = soleUnit(above.filter(isTitle).flatMap((line) => readTitle(textOf(line)).unit ?? []));
  return {
    layout: {
      kind: "counted",
      columns,
      units: columns.map(() => stated),
      lengths: columns.map(() => null),
      ignored: [],
      sizes: lines.slice(above.length),
    },
  };
}
