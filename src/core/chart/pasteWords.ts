/** What the words at the head of a pasted table mean: which column, in which unit. */
import { FINISHED_COLUMNS, type BodyColumn, type ChartColumn } from "./readChart";

export type PastedUnit = "mm" | "cm" | "in";

/** A heading as understood. */
export interface Heading {
  /** null: not one of ours. */
  readonly column: ChartColumn | null;
  /** null: it names none, or two. */
  readonly unit: PastedUnit | null;
  /** Named with another word for the bust, which beside a bust means the upper chest. */
  readonly chest: boolean;
  /** The cup that a bust is given for. */
  readonly cup: string | null;
  /** Nothing but words that say no measure. */
  readonly bare: boolean;
}

const COLUMN_OF: Readonly<Record<string, BodyColumn | "label">> = {
  size: "label",
  sizes: "label",
  sizing: "label",
  sz: "label",
  label: "label",
  bust: "bust",
  busts: "bust",
  chest: "bust",
  waist: "waist",
  waists: "waist",
  waistline: "waist",
  hip: "hip",
  hips: "hip",
  seat: "hip",
};

const FINISHED_WORDS: ReadonlySet<string> = new Set(["finished", "fin", "final", "garment", "garments", "flat"]);

/** Words that do not change which girth is meant. */
const FILLERS: ReadonlySet<string> = new Set([
  "girth",
  "circumference",
  "body",
  "measure",
  "measures",
  "measurement",
  "measurements",
  "around",
  "round",
  "in",
  "at",
  "of",
  "the",
  "your",
  "full",
  "fullest",
  "natural",
  "approx",
  "to",
  "fit",
  "line",
  "level",
  "part",
  "point",
  "all",
  "chart",
  "table",
]);

/** Words that stand with sizes and say nothing more. */
const SIZE_FILLERS: ReadonlySet<string> = new Set([
  "name",
  "number",
  "no",
  "nr",
  "uk",
  "us",
  "usa",
  "eu",
  "eur",
  "aus",
  "au",
  "misses",
  "miss",
  "women",
  "womens",
  "woman",
  "ladies",
  "pattern",
  "s",
]);

/** Words that say more of the noun after them, so that no heading ends with one. */
const BEFORE_NOUNS: ReadonlySet<string> = new Set([
  "high",
  "under",
  "upper",
  "over",
  "lower",
  "low",
  "mid",
  "full",
  "back",
  "front",
  "across",
  "to",
  "of",
  "at",
  "the",
  "your",
]);

const UNIT_OF: Readonly<Record<string, PastedUnit>> = {
  mm: "mm",
  millimetre: "mm",
  millimetres: "mm",
  millimeter: "mm",
  millimeters: "mm",
  cm: "cm",
  cms: "cm",
  centimetre: "cm",
  centimetres: "cm",
  centimeter: "cm",
  centimeters: "cm",
  ins: "in",
  inch: "in",
  inches: "in",
};

const own = <T>(record: Readonly<Record<string, T>>, key: string): T | null =>
  Object.hasOwn(record, key) ? (record[key] ?? null) : null;

/** The least distance below the waist at which a hip is the full hip (our own choice). */
const FULL_HIP_BELOW: Readonly<Record<PastedUnit, number>> = { in: 6, cm: 15, mm: 150 };

/** `- 9" below waist`: where the hip is measured, and no name of a measure. Bounded, so that a long line of numbers is no work. */
const BELOW_WAIST =
  /[-‐‑‒–—−,:(]?\s?(?:(?:at|approx\.?|about|abt\.?)\s)?(\d{1,4})[\d\s.,/½¼¾⅛⅜⅝⅞⅓⅔"″”'’′()–-]{0,16}(?:mm|cms?|ins?\.?|inch(?:es)?)?[\s()\d/½¼¾"″”]{0,12}(?:cms?|ins?\.?|inch(?:es)?)?\)?\s?(?:down\s)?(?:below|under|from)\s(?:the\s)?(?:natural\s)?waist(?:\s?line)?\)?/gi;

/** A text without places told from the waist; a hip near the waist becomes a high hip. */
export const withoutPlaces = (text: string): string =>
  text.replace(/\s+/g, " ").replace(BELOW_WAIST, (place: string, distance: string) => {
    // Behind the first number, or both of "12-14 cm"; without a unit inches are meant, or it is far enough in any.
    const metric = /^\D*[\d\s.,–-]+(mm|cm)/i.exec(place)?.[1]?.toLowerCase();
    const unit = metric === "mm" || metric === "cm" ? metric : "in";
    return Number(distance) >= FULL_HIP_BELOW[unit] ? " " : " high ";
  });

/** Marks that lead to a note under the table: `*`, `†`, `¹`, `(1)`. */
export const FOOTNOTE = /[*†‡§¹²³⁴-⁹]+|(?<=\D)[([]\d[)\]]\s*$/g;

/** Reads one heading, such as "Bust (cm)", "Full hip, inches" or "Finished waist". */
export function readHeading(text: string): Heading {
  const plain = withoutPlaces(text).replace(FOOTNOTE, " ");
  const units = unitsNamed(plain);
  const words = wordsOf(plain);
  const cup = cupOf(words);
  const said = words.filter(
    (word, at) => own(UNIT_OF, word) === null && !FILLERS.has(word) && !(cup !== null && isOfCup(words, at)),
  );
  const finished = said.some((word) => FINISHED_WORDS.has(word));
  const [named, ...more] = said.filter((word) => !FINISHED_WORDS.has(word) && !SIZE_FILLERS.has(word));
  const sized = said.some((word) => SIZE_FILLERS.has(word));
  const heading = { unit: soleUnit(units), chest: words.includes("chest"), cup, bare: false };
  if (named === undefined) {
    const column = !finished && NUMBERED.test(plain.trim()) ? "label" : null;
    return { ...heading, column, bare: !/\d/.test(plain) };
  }
  const column = own(COLUMN_OF, named);
  // "High bust", "waist to hip" and "1/2 bust" are other measures; "bust/chest" is one girth with two names.
  const plainly = !/\d/.test(plain) && more.every((word) => own(COLUMN_OF, word) === column);
  if (!plainly || (sized && column !== "label")) return { ...heading, column: null };
  const both = words.includes("chest") && words.some((word) => word.startsWith("bust"));
  const kind = { ...heading, chest: heading.chest && !both };
  if (!finished) return { ...kind, column };
  return { ...kind, column: FINISHED_COLUMNS.find(({ body }) => body === column)?.column ?? null };
}

/** Whether no heading can end here: its noun is still to come. */
export const isBeforeNoun = (word: string): boolean => wordsOf(word).some((said) => BEFORE_NOUNS.has(said));

/** Whether a text names the bust, the waist or the hip, in whatever connection. */
export const namesGirth = (text: string): boolean =>
  wordsOf(withoutPlaces(text)).some((word) => {
    const column = own(COLUMN_OF, word);
    return column !== null && column !== "label";
  });

/** What a line above its girths says of all of them: finished garments, bodies, or neither. */
export function readTitle(text: string): { readonly finished: boolean | null; readonly unit: PastedUnit | null } {
  const words = wordsOf(text);
  const finished = words.some((word) => ["finished", "garment", "garments"].includes(word));
  const body = words.some((word) => ["body", "bodies", "wearer"].includes(word));
  return { finished: finished === body ? null : finished, unit: soleUnit(unitsNamed(text)) };
}

/** "B cup" or "cup B" beside a bust. */
function cupOf(words: readonly string[]): string | null {
  const at = words.indexOf("cup");
  if (at >= 0) {
    const named = [words[at + 1], words[at - 1]].find((word) => word !== undefined && CUP.test(word));
    return named?.toUpperCase() ?? null;
  }
  const letter = words.find((word) => CUP.test(word));
  return letter !== undefined && words.includes("bust") ? letter.toUpperCase() : null;
}

const CUP = /^(?:a+|b|c|d+|e|f|g|h)$/;
const isOfCup = (words: readonly string[], at: number): boolean => words[at] === "cup" || CUP.test(words[at] ?? "");

/** Every unit that a text names. "In" is one only where it can be no preposition: at the end, or before a mark. */
function unitsNamed(text: string): readonly PastedUnit[] {
  const marked = text
    .toLowerCase()
    .replace(/["″”]|''|′′/g, " inches ")
    .replace(/\bin\b\.?\s*(?=$|[,;:)\]/|&])/g, " inches ");
  return wordsOf(marked).flatMap((word) => own(UNIT_OF, word) ?? []);
}

/** The unit, where only one is named. */
export function soleUnit(units: readonly PastedUnit[]): PastedUnit | null {
  const [first] = units;
  return first !== undefined && units.every((unit) => unit === first) ? first : null;
}

const wordsOf = (text: string): string[] =>
  text
    .toLowerCase()
    .replace(/["″”]|''|′′/g, " inches ")
    .replace(/[’'`]/g, "")
    .split(/[^\p{L}]/u)
    .filter((word) => word !== "");

/** "No.", "Name", "UK": the size, where nothing else is said. */
const NUMBERED = /^(?:no|nr|number|name|uk|us|usa|eu|eur|aus|au|misses|miss|women’?'?s?|ladies)[.:]?$/i;

/** The unit of a cell that says nothing else, as in a line of units under the headings; null for any other cell. */
export function readUnit(text: string): PastedUnit | null {
  if (/\d/.test(text)) return null;
  const [word, ...more] = wordsOf(text);
  if (word === undefined || more.length > 0) return null;
  return word === "in" ? "in" : own(UNIT_OF, word);
}
