/**
 * Lengths in the wearer's unit: girths and lengths to 1 mm or 1/8 in, small amounts to 1 mm or 1/16 in, and so are seams and dart
 * legs, which are measured where they were marked. A figure is told by one of these wherever it stands.
 */
import { parseLength, type LengthFailure, type TypedUnit } from "../../core/measures/length";
import { ON_A_MARK, READ_BACK } from "../../core/tolerance";
import { MM_PER_CM, MM_PER_INCH, type Mm } from "../../core/units";
import { fixedDecimals, upToDecimals } from "./language";

export interface LengthParts {
  readonly sign: "" | "−";
  readonly whole: number;
  /** null: no fraction. */
  readonly fraction: { readonly numerator: number; readonly denominator: number } | null;
  readonly unit: "cm" | "mm" | "in";
}

const LENGTH_DENOMINATOR = 8;
const AMOUNT_DENOMINATOR = 16;

/** Glyphs that every text font has; other fractions are written with a slash. */
const GLYPHS: Readonly<Record<string, string>> = { "1/2": "½", "1/4": "¼", "3/4": "¾" };

/** A girth or a length to be read: "87.6 cm", "34 ½ in", "34 5/8 in". */
export function formatLength(mm: Mm, unit: TypedUnit): string {
  if (unit === "in") return inches(mm, LENGTH_DENOMINATOR, "in");
  return `${minus(mm, 1)}${fixedDecimals(Math.abs(Math.round(mm)) / MM_PER_CM, 1)} cm`;
}

/** What an amount is marked to on paper. */
export const markingStep = (unit: TypedUnit): Mm => (unit === "in" ? MM_PER_INCH / AMOUNT_DENOMINATOR : 1);

/** A small amount to be marked on paper: "8 mm", "5/16 in". Signed where negative. */
export function formatAmount(mm: Mm, unit: TypedUnit): string {
  if (unit === "in") return inches(mm, AMOUNT_DENOMINATOR, "in");
  return `${minus(mm, 1)}${Math.abs(Math.round(mm))} mm`;
}

/** A length along lines of the tissue, as a seam or a dart's leg: read as finely as it is marked: "41.2 cm", "16 3/16 in". */
export const formatAlong = (mm: Mm, unit: TypedUnit): string =>
  unit === "in" ? formatAmount(mm, unit) : formatLength(mm, unit);

/** What two amounts differ by, as they are told: what is read off them agrees with what is said. */
export const differenceTold = (a: Mm, b: Mm, unit: TypedUnit): Mm =>
  (Math.round(a / markingStep(unit)) - Math.round(b / markingStep(unit))) * markingStep(unit);

const PART_DENOMINATOR = 32;

/** What parts of an amount are told to, so that they add up: half of what is marked. */
export const partStep = (unit: TypedUnit): Mm => (unit === "in" ? MM_PER_INCH / PART_DENOMINATOR : 1 / 2);

/** A part of an amount, to half a millimetre or 1/32 in: "3/32 in", "2.5 mm". */
export const formatPart = (mm: Mm, unit: TypedUnit): string =>
  unit === "in"
    ? inches(mm, PART_DENOMINATOR, "in")
    : `${minus(mm, partStep(unit))}${upToDecimals(Math.abs(Math.round(mm / partStep(unit)) * partStep(unit)), 1)} mm`;

/** An amount that is asked for: never said as nothing. */
export function formatAsked(mm: Mm, unit: TypedUnit): string {
  const amount = formatAmount(mm, unit);
  return amount === formatAmount(0, unit) ? formatFine(mm, unit) : amount;
}

/** A difference too small to be marked, where it still counts: "0.06 mm", "0.002 in". */
export function formatFine(mm: Mm, unit: TypedUnit): string {
  const fine = unit === "in" ? upToDecimals(Math.abs(mm) / MM_PER_INCH, 3) : upToDecimals(Math.abs(mm), 2);
  return `${mm < 0 && fine !== upToDecimals(0, 0) ? "−" : ""}${fine} ${unit === "in" ? "in" : "mm"}`;
}

/** From here on a round figure in inches is one of eighths. */
const EIGHTHS_FROM: Mm = MM_PER_INCH / 2;

/** A length of the trade's own choosing, where a round figure does: "20 mm", "3/4 in". */
export const formatRound = (mm: Mm, unit: TypedUnit): string =>
  unit === "in" && Math.abs(mm) >= EIGHTHS_FROM ? inches(mm, LENGTH_DENOMINATOR, "in") : formatAmount(mm, unit);

/** The most that can be had, rounded down, so that it can be had just as it is told. */
export function formatMost(mm: Mm, unit: TypedUnit): string {
  const step = markingStep(unit);
  // Whole millimetres read back as they are; sixteenths of an inch may come out a little longer.
  const room = unit === "in" ? READ_BACK : 0;
  return formatAmount(Math.max(0, Math.floor((Math.abs(mm) - room) / step)) * step, unit);
}

/** The least that will do, rounded up, so that it does just as it is told. */
export function formatLeast(mm: Mm, unit: TypedUnit): string {
  const step = markingStep(unit);
  // Sixteenths of an inch may read back a little shorter.
  const room = unit === "in" ? READ_BACK : 0;
  return formatAmount(Math.ceil((Math.max(0, mm) + room) / step) * step, unit);
}

/** The most that will do, rounded down: a length to the millimetre or the eighth of an inch. */
export function mostLength(mm: Mm, unit: TypedUnit): string {
  const step = unit === "in" ? MM_PER_INCH / LENGTH_DENOMINATOR : 1;
  return formatLength(Math.floor(mm / step + ON_A_MARK) * step, unit);
}

/** A small amount with its sign always shown: "+8 mm", "−5/16 in". */
export function formatSigned(mm: Mm, unit: TypedUnit): string {
  const text = formatAmount(mm, unit);
  return text.startsWith("−") || formatAmount(Math.abs(mm), unit) === formatAmount(0, unit) ? text : `+${text}`;
}

/** As it is typed: an entry's minus is the keyboard's. */
const entryNumber = (value: number, digits: number): string =>
  `${value < 0 ? "-" : ""}${upToDecimals(Math.abs(value), digits)}`;

/** A length as it stands in an entry field, without its unit: as exact as what was entered (0.1 mm). */
export function formatLengthEntry(mm: Mm, unit: TypedUnit): string {
  const tenths = Math.round(mm * 10) / 10;
  if (unit === "cm") return entryNumber(tenths / MM_PER_CM, 2);
  // What was typed as a fraction shows as one; what was not keeps its decimals, so that nothing is lost.
  const fraction = inches(tenths, AMOUNT_DENOMINATOR, "").trim();
  const read = parseLength(fraction, unit, { signed: true });
  return read.ok && read.value === tenths ? fraction : entryNumber(tenths / MM_PER_INCH, 3);
}

/** The parts of a length in inches, for fractions set by hand; centimetres come whole and decimal in `text`. */
export function inchParts(mm: Mm, denominator: 8 | 16 | 32 = LENGTH_DENOMINATOR): LengthParts {
  const steps = Math.round((Math.abs(mm) / MM_PER_INCH) * denominator);
  const whole = Math.floor(steps / denominator);
  const [numerator, reduced] = reduce(steps - whole * denominator, denominator);
  return {
    sign: mm < 0 && steps > 0 ? "−" : "",
    whole,
    fraction: numerator === 0 ? null : { numerator, denominator: reduced },
    unit: "in",
  };
}

function inches(mm: Mm, denominator: 8 | 16 | 32, unit: string): string {
  const { sign, whole, fraction } = inchParts(mm, denominator);
  const part = fraction === null ? "" : fractionText(fraction.numerator, fraction.denominator);
  const number = part === "" ? String(whole) : whole === 0 ? part : `${whole} ${part}`;
  return `${sign}${number} ${unit}`;
}

function fractionText(numerator: number, denominator: number): string {
  const plain = `${numerator}/${denominator}`;
  return GLYPHS[plain] ?? plain;
}

function reduce(numerator: number, denominator: number): [number, number] {
  let n = numerator;
  let d = denominator;
  while (n !== 0 && n % 2 === 0 && d % 2 === 0) {
    n /= 2;
    d /= 2;
  }
  return [n, d];
}

const minus = (mm: Mm, step: number): string => (Math.round(mm / step) < 0 ? "−" : "");

/** What is wrong with a length that could not be read, and how to write it. */
export function lengthFailureSentence(failure: LengthFailure, unit: TypedUnit): string {
  const example = unit === "cm" ? "87.6" : "34 1/2";
  const typed = "text" in failure ? `“${short(failure.text.trim())}”` : "";
  switch (failure.code) {
    case "length/empty":
      return `Write a length, such as ${example}.`;
    case "length/not-a-length":
      return `${typed} does not read as a length. Write it like ${example}.`;
    case "length/ambiguous":
      return `${typed} could be read in more than one way. Write it like ${example}.`;
    case "length/unknown-unit":
      return `The unit “${short(failure.unit)}” is not known here. Use cm, mm or in, or leave it out.`;
    case "length/feet":
      return `${typed} is in feet. Write it in inches alone, such as 64 1/2, or in centimetres.`;
    case "length/negative":
      return "A length cannot be less than nothing. Leave out the minus.";
    case "length/no-denominator":
      return `${typed} divides by nothing. Write it like 34 1/2.`;
    case "length/absurd":
      return `${typed} is longer than ${formatLength(failure.most, unit)}. Check the number and its unit.`;
  }
}

/** Enough of an entry to know it again. */
const MOST_SHOWN = 24;
const short = (text: string): string => (text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN)}…` : text);
