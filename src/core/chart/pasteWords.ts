/** What the words at the head of a pasted table mean: which column, in which unit. */
import { FINISHED_COLUMNS, type BodyColumn, type ChartColumn } from "./readChart";

export type PastedUnit = "mm" | "cm" | "in";

/** A heading as understood; `column` null: not one of ours. */
export interface Heading {
  readonly column: ChartColumn | null;
  readonly unit: PastedUnit | null;
}

const COLUMN_OF: Readonly<Record<string, BodyColumn | "label">> = {
  size: "label",
  sizes: "label",
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
  "at",
  "of",
  "the",
  "your",
  "full",
  "fullest",
  "to",
  "fit",
  "line",
  "level",
  "part",
  "name",
  "number",
  "no",
  "nr",
  "uk",
  "us",
  "eu",
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
  in: "in",
  ins: "in",
  inch: "in",
  inches: "in",
};

const own = <T>(record: Readonly<Record<string, T>>, key: string): T | null =>
  Object.hasOwn(record, key) ? (record[key] ?? null) : null;

/** Reads one heading, such as "Bust (cm)", "Full hip, inches" or "Finished waist". */
export function readHeading(text: string): Heading {
  const words = wordsOf(text);
  const unit = words.map((word) => own(UNIT_OF, word)).find((found) => found !== null) ?? null;
  const told = words.filter((word) => own(UNIT_OF, word) === null && !FILLERS.has(word));
  const finished = told.some((word) => FINISHED_WORDS.has(word));
  const [named, ...more] = told.filter((word) => !FINISHED_WORDS.has(word));
  if (named === undefined) return { column: !finished && NUMBERED.test(text.trim()) ? "label" : null, unit };
  // "High bust" or "waist to hip" are other measures, not these.
  const column = more.length > 0 ? null : own(COLUMN_OF, named);
  if (!finished || column === null) return { column, unit };
  return { column: FINISHED_COLUMNS.find(({ body }) => body === column)?.column ?? null, unit };
}

const wordsOf = (text: string): string[] =>
  text
    .toLowerCase()
    .replace(/["″”]|''|′′/g, " inches ")
    .split(/[^a-z]+/)
    .filter((word) => word !== "");

/** "No.", "Name", "UK": the size, where nothing else is said. */
const NUMBERED = /^(?:no|nr|number|name|uk|us|eu)\.?$/i;

/** The unit of a cell that says nothing else, as in a line of units under the headings; null for any other cell. */
export function readUnit(text: string): PastedUnit | null {
  if (/\d/.test(text)) return null;
  const [word, ...more] = wordsOf(text);
  return word === undefined || more.length > 0 ? null : own(UNIT_OF, word);
}
