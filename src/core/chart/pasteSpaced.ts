/**
 * A table whose cells stand with single spaces between them, as a printed page is copied: headings of several words run
 * into each other. Cells are cut only where the numbers leave but one way to do it.
 */
import type { PastedCell } from "./pasteCells";
import { plainLines } from "./pasteCells";
import { readCell } from "./pasteLength";
import { isBeforeNoun, readHeading, readUnit, withoutPlaces } from "./pasteWords";
import { BODY_COLUMNS, FINISHED_COLUMNS, type ChartColumn } from "./readChart";

type Line = readonly PastedCell[];

type SpacedFault = { readonly code: "paste/headings-uncertain" } | { readonly code: "paste/labels-uncertain" };

type Spaced = { readonly lines: readonly Line[] } | { readonly fault: SpacedFault };

interface Words {
  readonly words: readonly string[];
  readonly line: number;
}

/** A heading of more words is a sentence. */
const MOST_WORDS = 40;

const EMPTY = "";

/** Cuts a text at its single spaces. */
export function cutSpaced(text: string): Spaced {
  const lines = plainLines(text)
    .split("\n")
    .map((content, index): Words => ({ words: wordsOf(content), line: index + 1 }))
    .filter(({ words }) => words.length > 0);
  const down = lines.some(isHeadingLine);
  if (down) return cutDown(lines);
  const across = lines.flatMap((line) => {
    const cut = girthLine(line);
    return cut === null ? [] : [cut];
  });
  return across.length > 0 ? cutAcross(lines, across) : { lines: lines.map(cellsOf) };
}

/** The words of a line: lengths that hold spaces themselves made one. */
function wordsOf(content: string): readonly string[] {
  return joinLengths(withoutPlaces(content.replace(/[\s\u00a0\u2009\u202f]+/g, " ")))
    .split(" ")
    .filter((word) => word !== EMPTY);
}

const joinLengths = (text: string): string =>
  text
    .replace(/(\d) (?=[½¼¾⅓⅔⅛⅜⅝⅞])/g, "$1")
    .replace(/(\d) (\d{1,2}\/(?:2|3|4|8|16|32)\b)/g, "$1-$2")
    .replace(/([\d½¼¾⅛⅜⅝⅞]) ((?:cms?|mm|inches|inch|ins?\.?)(?![a-z])|["″”])/gi, "$1$2")
    .replace(/([\d½¼¾⅛⅜⅝⅞]) ([*†‡§]+)(?= |$)/g, "$1$2")
    .replace(/([\d½¼¾⅛⅜⅝⅞]) (?:to|[-–—]) (?=\d)/g, "$1-")
    .replace(/([\d½¼¾⅛⅜⅝⅞]|cms?|ins?\.?|["″”]) ?\( ?(?=\d)/gi, "$1(")
    .replace(/([\d½¼¾⅛⅜⅝⅞]|cms?|ins?\.?|["″”]) \/ (?=\d)/gi, "$1/");

const isValue = (word: string): boolean => /^[*†‡§]*[\d½¼¾⅓⅔⅛⅜⅝⅞]/.test(word) || /^[-–—.]+$/.test(word);
const isNumber = (word: string): boolean => /\d/.test(word);

const cellsOf = ({ words, line }: Words): Line => words.map((text, at) => ({ text, line, cell: at + 1 }));

/** The place of every word that names a girth by itself. */
const girthsIn = (words: readonly string[]): number =>
  new Set(words.map((word) => readHeading(word).column).filter((column) => column !== null && column !== "label")).size;

const isHeadingLine = ({ words }: Words): boolean => !words.some(isNumber) && girthsIn(words) >= 2 && words.length >= 3;

/** Values at the end of a line, and the words before them. */
function partLine(words: readonly string[]): { readonly head: readonly string[]; readonly values: readonly string[] } {
  const from = words.findLastIndex((word) => !isValue(word)) + 1;
  return { head: words.slice(0, from), values: words.slice(from) };
}

interface GirthLine extends Words {
  readonly head: readonly string[];
  readonly values: readonly string[];
}

/** A line that begins with a heading of ours and goes on with numbers. */
function girthLine({ words, line }: Words): GirthLine | null {
  const { head, values } = partLine(words);
  if (head.length === 0 || values.length === 0) return null;
  const { column } = readHeading(head.join(" "));
  return column === null || column === "label" ? null : { words, line, head, values };
}

// Sizes along the top.

const headed = (line: number, head: readonly string[], values: readonly string[]): Line =>
  [head.join(" "), ...values].map((text, at) => ({ text, line, cell: at + 1 }));

function cutAcross(lines: readonly Words[], girths: readonly GirthLine[]): Spaced {
  const [first] = girths;
  const count = first?.values.length ?? 0;
  if (girths.some(({ values }) => values.length !== count)) return { fault: { code: "paste/labels-uncertain" } };
  const cut: Line[] = [];
  let named = false;
  let uncertain = false;
  for (const { words, line } of lines) {
    const labels = labelsOf(words, count);
    const { head, values } = partLine(words);
    if (labels === "uncertain") uncertain = true;
    else if (labels !== null) {
      named = true;
      cut.push(headed(line, labels.head, labels.values));
    } else if (values.length === count && head.length > 0) cut.push(headed(line, head, values));
    else cut.push([{ text: words.join(" "), line, cell: 1 }]);
  }
  return uncertain && !named ? { fault: { code: "paste/labels-uncertain" } } : { lines: cut };
}

const SIZE_LETTERS = /^(?:\d?x{0,4}[sml]|\d{1,2}x|os)$/i;
/** What a size is called: a number, perhaps with letters, or the letters of sizes. */
export const isSizeName = (word: string): boolean => /^[a-z]{0,3}\d[\w()/.-]*$/i.test(word) || SIZE_LETTERS.test(word);

/** The names of the sizes, if a line holds them: as many as there are girths, behind words that only speak of sizes. */
function labelsOf(words: readonly string[], count: number): Omit<GirthLine, "words" | "line"> | "uncertain" | null {
  const from = words.findIndex(isSizeName);
  if (from < 0) return null;
  const head = words.slice(0, from);
  const values = words.slice(from);
  const { column, bare } = readHeading(head.join(" "));
  const ofSizes = column === "label" || head.length === 0;
  if (!ofSizes && !bare) return null;
  if (values.length === count) return values.every(isSizeName) || column === "label" ? { head, values } : null;
  return ofSizes && values.every(isSizeName) ? "uncertain" : null;
}

// Sizes down the side.

function cutDown(lines: readonly Words[]): Spaced {
  const cut: Line[] = [];
  for (const [index, line] of lines.entries()) {
    if (!isHeadingLine(line)) {
      const single = !line.words.some(isNumber) && !line.words.every((word) => readUnit(word) !== null);
      cut.push(single ? [{ text: line.words.join(" "), line: line.line, cell: 1 }] : cellsOf(line));
      continue;
    }
    const after = lines.slice(index + 1);
    const next = after.findIndex(isHeadingLine);
    const below = next < 0 ? after : after.slice(0, next);
    const rows = below.map(({ words }) => words).filter((words) => words.filter(isValue).length >= BODY_COLUMNS.length);
    const count = rows[0]?.length ?? 0;
    if (count === 0 || rows.some((words) => words.length !== count) || line.words.length > MOST_WORDS) {
      return { fault: { code: "paste/headings-uncertain" } };
    }
    const headings = headingsOf(line.words, rows);
    if (headings === null) return { fault: { code: "paste/headings-uncertain" } };
    cut.push(headings.map((text, at) => ({ text, line: line.line, cell: at + 1 })));
  }
  return { lines: cut.map((line) => withCorner(line, cut)) };
}

/** A line of units that leaves out the sizes is moved over its girths. */
function withCorner(line: Line, all: readonly Line[]): Line {
  const [first] = line;
  const isUnits = line.length > 1 && line.every((cell) => readUnit(cell.text) !== null);
  const width = Math.max(...all.map((other) => other.length));
  return isUnits && first !== undefined && line.length === width - 1 ? [{ ...first, text: EMPTY }, ...line] : line;
}

const isUnnamed = (heads: readonly string[]): boolean => heads.every((head) => readHeading(head).column !== "label");

/** The one way to part words into as many headings as there are columns; null: there is none, or more than one. */
function headingsOf(words: readonly string[], rows: readonly (readonly string[])[]): readonly string[] | null {
  const count = rows[0]?.length ?? 0;
  // Sizes seldom need a heading: then the first column is theirs.
  const unnamed = partings(words, count - 1).flatMap((heads) => (isUnnamed(heads) ? [["size", ...heads]] : []));
  return oneOf([...partings(words, count), ...unnamed], rows);
}

/** The one reading among these, if they are but one; among several, the one whose finished girths are the larger ones. */
function oneOf(all: readonly (readonly string[])[], rows: readonly (readonly string[])[]): readonly string[] | null {
  const goes = all.filter((heads) => isBodyLike(heads, rows));
  const readings = new Map(goes.map((heads) => [heads.map(readingOf).join(), heads]));
  const [only] = readings.values();
  return readings.size === 1 && only !== undefined ? only : null;
}

const readingOf = (head: string): string => {
  const { column, unit, cup } = readHeading(head);
  return `${column ?? EMPTY} ${unit ?? EMPTY} ${cup ?? EMPTY}`;
};

/** Of a bust or a hip: no waist is a smaller share of them. */
const LEAST_WAIST = 0.45;

/** Waists smaller than busts and hips, and finished girths no smaller than bodies. */
function isBodyLike(heads: readonly string[], rows: readonly (readonly string[])[]): boolean {
  const columns = heads.map((head) => readHeading(head).column);
  return rows.every((words) => {
    const value = (column: ChartColumn): number | null => {
      const at = columns.indexOf(column);
      return at < 0 ? null : (readCell(words[at] ?? EMPTY, "cm")?.value ?? null);
    };
    const [bust, waist, hip] = BODY_COLUMNS.map(value);
    if (waist !== null && waist !== undefined) {
      const isAmiss = (other: unknown): boolean =>
        typeof other === "number" && (other <= waist || waist < LEAST_WAIST * other);
      if ([bust, hip].some(isAmiss)) return false;
    }
    return FINISHED_COLUMNS.every(({ column, body }) => {
      const [sewn, worn] = [value(column), value(body)];
      return sewn === null || worn === null || sewn >= worn;
    });
  });
}

/** Partings looked at before words are taken for uncertain. */
const MOST_PARTINGS = 2000;

/** Every way to part words into so many headings that name bust, waist and hip once a unit. */
function partings(words: readonly string[], count: number): readonly (readonly string[])[] {
  if (words.length < count) return [];
  let open: readonly (readonly string[])[] = [[]];
  // Round by round another heading; the words used so far are counted in the heads: none at first.
  let used: readonly number[] = [];
  for (let round = 1; round <= count; round += 1) {
    const next: (readonly string[])[] = [];
    const reached: number[] = [];
    for (const [index, heads] of open.entries()) {
      const from = used[index] ?? 0;
      const last = words.length - (count - round);
      for (let to = round === count ? last : from + 1; to <= last; to += 1) {
        const group = words.slice(from, to);
        if (!isHeading(group) || repeats(heads, group.join(" "))) continue;
        next.push([...heads, group.join(" ")]);
        reached.push(to);
        if (next.length > MOST_PARTINGS) return [];
      }
    }
    open = next;
    used = reached;
  }
  // Every girth that is named at all has a column.
  const named = girthsIn(words);
  return open.filter((heads) => {
    const columns = heads.map((head) => readHeading(head).column);
    return BODY_COLUMNS.filter((column) => columns.includes(column)).length === named;
  });
}

/** A heading says what it heads, and does not end before its noun. */
function isHeading(group: readonly string[]): boolean {
  const last = group.at(-1);
  if (last === undefined || isBeforeNoun(last) || readUnit(group[0] ?? EMPTY) !== null) return false;
  const { column, bare } = readHeading(group.join(" "));
  // A size and a girth are two columns.
  const mixed = girthsIn(group) > 0 && group.some((word) => readHeading(word).column === "label");
  return column !== null || (!bare && !mixed);
}

/** Whether a heading of ours stands among these already, in the same unit. */
function repeats(heads: readonly string[], head: string): boolean {
  const { column } = readHeading(head);
  return column !== null && column !== "label" && heads.some((other) => readingOf(other) === readingOf(head));
}
