/** A pasted table cut into cells, each with its place in the text. */

export interface PastedCell {
  readonly text: string;
  /** Line of the text and cell of the line, counted from 1. */
  readonly line: number;
  readonly cell: number;
}

/** What stands between cells. `space`: one or more; `gap`: two or more, so that "34 1/2" stays one cell. */
export type Separator = "tab" | "semicolon" | "comma" | "gap" | "space";

export interface PastedGrid {
  readonly separator: Separator;
  /** Lines with anything in them; cells trimmed, white space made single. */
  readonly lines: readonly (readonly PastedCell[])[];
}

/** Whether an empty cell leaves no trace, so that a line short of a cell does not say of which. */
export const losesEmptyCells = (separator: Separator): boolean => separator === "gap" || separator === "space";

/** Cuts a text into cells, by the strongest separator that it holds. Cells between single spaces are cut elsewhere. */
export function cutCells(text: string): PastedGrid {
  const plain = plainLines(text);
  const separator = separatorOf(plain);
  const cutter = CUTTERS[separator];
  return { separator, lines: cutter === undefined ? [] : cutter(plain).filter((line) => line.some(isFilled)) };
}

const isFilled = (cell: PastedCell): boolean => cell.text !== "";

/** Line ends of one kind; a table drawn with upright strokes has tabs in their place. */
export function plainLines(text: string): string {
  const plain = text.replace(/^\ufeff/, "").replace(/\r\n?|[\u2028\u2029]/g, "\n");
  const lines = plain.split("\n");
  const drawn = lines.filter((line) => /\|.*\|/.test(line)).length;
  if (drawn < FEWEST_CELLS) return plain;
  return lines
    .filter((line) => !/^[\s|:+-]*$/.test(line) || line.trim() === "")
    .map((line) =>
      line.includes("|")
        ? line
            .replace(/^\s*\|/, "")
            .replace(/\|\s*$/, "")
            .replaceAll("|", "\t")
        : line,
    )
    .join("\n");
}

/** A quoted cell, with its quotes doubled inside; a mark for inches stands behind a number and starts no cell. */
const QUOTED = /(?<=^|[\t;,])"(?:[^"]|"")*"(?=[\t;,]|$)/gm;

function separatorOf(text: string): Separator {
  const bare = text.replace(QUOTED, "");
  if (bare.includes("\t")) return "tab";
  if (bare.includes(";")) return "semicolon";
  const lines = bare.split("\n").map((line) => line.replaceAll("\u00a0", " ").trim());
  if (lines.some((line) => line.includes(",") && !hasDecimalCommas(line)) || text !== bare) return "comma";
  return lines.some((line) => / {2,}/.test(line)) ? "gap" : "space";
}

/** "88,5 70,2 94": the commas of this line can only be decimal ones, since spaces already keep its cells apart. */
function hasDecimalCommas(line: string): boolean {
  const cells = line.split(/ +/);
  return cells.length >= FEWEST_CELLS && cells.every((cell) => /^[^,]*(?:\d,\d[^,]*)?$/.test(cell));
}

/** Bust, waist and hip: with fewer cells a line is no size. */
const FEWEST_CELLS = 3;

type Cutter = (text: string) => PastedCell[][];

const CUTTERS: Readonly<Partial<Record<Separator, Cutter>>> = {
  gap: (text) => gapped(text),
  tab: (text) => quoted(text, "\t"),
  semicolon: (text) => quoted(text, ";"),
  comma: (text) => quoted(text, ","),
};

/** Cells kept apart by one mark, quoted where they hold the mark or a line end themselves. */
function quoted(text: string, mark: string): PastedCell[][] {
  const lines: PastedCell[][] = [];
  let cells: PastedCell[] = [];
  let line = 1;
  let at = 0;
  const put = (content: string): void => {
    cells.push({ text: tidy(content), line, cell: cells.length + 1 });
  };
  while (at <= text.length) {
    let end = at;
    let content: string | null = null;
    if (text[at] === '"') {
      const close = closingQuote(text, at, mark);
      if (close !== null) {
        content = text.slice(at + 1, close).replaceAll('""', '"');
        end = close + 1;
      }
    }
    if (content === null) {
      while (end < text.length && text[end] !== mark && text[end] !== "\n") end += 1;
      content = text.slice(at, end);
    }
    put(content);
    if (end >= text.length || text[end] === "\n") {
      lines.push(cells);
      cells = [];
    }
    line += countLineEnds(text, at, end + 1);
    at = end + 1;
  }
  return lines;
}

/** Where the quote opened at `open` closes: before a separator or a line end. null: it is no quoted cell. */
function closingQuote(text: string, open: number, mark: string): number | null {
  for (let at = open + 1; at < text.length; at += 1) {
    if (text[at] !== '"') continue;
    if (text[at + 1] === '"') {
      at += 1;
      continue;
    }
    const after = text[at + 1];
    return after === undefined || after === mark || after === "\n" ? at : null;
  }
  return null;
}

function countLineEnds(text: string, from: number, to: number): number {
  let count = 0;
  for (let at = from; at < to; at += 1) if (text[at] === "\n") count += 1;
  return count;
}

const gapped: Cutter = (text) =>
  text.split("\n").map((content, index) =>
    content
      .replaceAll("\u00a0", " ")
      .trim()
      .split(/ {2,}/)
      .map((cell, at) => ({ text: tidy(cell), line: index + 1, cell: at + 1 })),
  );

const tidy = (text: string): string => text.replace(/\s+/g, " ").trim();
