/**
 * Reading a length as people write it: centimetres or inches, decimals with a point or a comma, fractions of an inch in
 * every usual notation, with or without a unit. Exact to 0.1 mm inside.
 */
import { fail, ok, type Result } from "../result";
import { MM_PER_CM, MM_PER_INCH, type Mm } from "../units";

export type TypedUnit = "cm" | "in";

export type LengthFailure =
  | { readonly code: "length/empty" }
  | { readonly code: "length/not-a-length"; readonly text: string }
  | { readonly code: "length/ambiguous"; readonly text: string }
  | { readonly code: "length/unknown-unit"; readonly text: string; readonly unit: string }
  | { readonly code: "length/feet"; readonly text: string }
  | { readonly code: "length/negative"; readonly text: string }
  | { readonly code: "length/no-denominator"; readonly text: string }
  | { readonly code: "length/absurd"; readonly text: string; readonly most: Mm };

/** Longer than any tape: nothing on a body or a bodice comes near. */
export const LONGEST: Mm = 5000;

const GLYPHS: Readonly<Record<string, string>> = {
  "½": "1/2",
  "⅓": "1/3",
  "⅔": "2/3",
  "¼": "1/4",
  "¾": "3/4",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** Tenths of a millimetre in a millimetre: what entries are kept to. */
const KEPT = 10;

/** In tenths of a millimetre, all whole numbers: quarters of an inch then round the same way every time. */
const TENTHS_PER_INCH = Math.round(MM_PER_INCH * KEPT);
const TENTHS_PER_UNIT: Readonly<Record<string, number>> = {
  mm: KEPT,
  cm: MM_PER_CM * KEPT,
  m: 1000 * KEPT,
  in: TENTHS_PER_INCH,
  ins: TENTHS_PER_INCH,
  inch: TENTHS_PER_INCH,
  inches: TENTHS_PER_INCH,
  '"': TENTHS_PER_INCH,
};

/** Feet, as a word or a mark behind a number: no tape for sewing counts in them, but heights are told in them. */
const FEET = /\d ?(?:'|(?:ft|feet|foot)(?![a-z]))/;

/** Feet, and inches if any: `5'`, `5' 4 1/2"`, `5'-4"`, `5 ft 4 in`. */
const FEET_AND_INCHES =
  /^\+?([\d.,/ -]+?) ?(?:'|ft\.?|feet|foot)(?: ?- ?| )?([\d.,/ -]*?) ?(?:"|in|ins|inch|inches)?\.?$/;
const INCHES_PER_FOOT = 12;

/**
 * The length a text says, in mm to 0.1.
 *
 * @param text what was typed: `34 1/2`, `34½`, `34-1/2`, `34.5`, `87,6`, `87.6cm`, `876 mm`, `34 1/2"`
 * @param unit what a bare number means
 * @param options `signed` takes negative lengths, as for a move; `feet` takes feet and inches, as for a height: `5 ft 4`,
 * `5' 4½"`. Without them such lengths are refused
 */
export const parseLength = (
  text: string,
  unit: TypedUnit,
  { signed = false, feet = false }: { readonly signed?: boolean; readonly feet?: boolean } = {},
): Result<Mm, LengthFailure> => parse(text, unit, signed, feet);

/**
 * A small amount to move something by: like a length, but signed, and a bare number means millimetres beside
 * centimetres. Empty means none.
 */
export const parseAmount = (text: string, unit: TypedUnit): Result<Mm, LengthFailure> =>
  text.trim() === "" ? ok(0) : parse(text, unit === "cm" ? "mm" : unit, true, false);

function parse(text: string, bare: TypedUnit | "mm", signed: boolean, feet: boolean): Result<Mm, LengthFailure> {
  const plain = plainText(text);
  if (plain === "") return fail({ code: "length/empty" });
  if (FEET.test(plain)) return feet ? parseFeet(plain, text) : fail({ code: "length/feet", text });
  const parts = /^([+-]?)\s*([^a-z"]*?)\s*([a-z"]*)\.?$/.exec(plain);
  if (parts === null) return fail({ code: "length/not-a-length", text });
  const [, sign = "", number = "", typed = ""] = parts;
  if (number === "" && typed !== "") return fail({ code: "length/not-a-length", text });
  const unit = typed === "" ? bare : typed;
  const tenths = Object.hasOwn(TENTHS_PER_UNIT, unit) ? TENTHS_PER_UNIT[unit] : undefined;
  if (tenths === undefined) return fail({ code: "length/unknown-unit", text, unit: typed });
  const value = parseNumber(number, text);
  if (!value.ok) return value;
  if (sign === "-" && !signed && value.value !== 0) return fail({ code: "length/negative", text });
  const mm = Math.round(value.value * tenths) / KEPT;
  if (mm > LONGEST) return fail({ code: "length/absurd", text, most: LONGEST });
  return ok(sign === "-" && mm !== 0 ? -mm : mm);
}

function parseFeet(plain: string, text: string): Result<Mm, LengthFailure> {
  const [, number, rest] = FEET_AND_INCHES.exec(plain) ?? [];
  if (number === undefined || rest === undefined) return fail({ code: "length/not-a-length", text });
  const feet = parseNumber(number, text);
  const inches = rest === "" ? ok(0) : parseNumber(rest, text);
  if (!feet.ok) return feet;
  if (!inches.ok) return inches;
  // "5 1/2 ft 4" and "5 ft 14" are misreadings of some kind, and nobody can tell which.
  if (rest !== "" && (!Number.isInteger(feet.value) || inches.value >= INCHES_PER_FOOT))
    return fail({ code: "length/ambiguous", text });
  const mm = Math.round((feet.value * INCHES_PER_FOOT + inches.value) * TENTHS_PER_INCH) / KEPT;
  return mm > LONGEST ? fail({ code: "length/absurd", text, most: LONGEST }) : ok(mm);
}

/** Lower case, fraction glyphs and look-alike marks written out, white space made single. */
function plainText(text: string): string {
  return text
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/g, (glyph) => ` ${GLYPHS[glyph] ?? ""}`)
    .replace(/[⁄∕]/g, "/")
    .replace(/[−‐‑‒–—]/g, "-")
    .replace(/[″“”]|''|′′|’’/g, '"')
    .replace(/[′‘’]/g, "'")
    .replace(/[\s\u00a0\u2009\u202f]+/g, " ")
    .trim()
    .toLowerCase();
}

function parseNumber(number: string, text: string): Result<number, LengthFailure> {
  if (/^(\d+([.,]\d*)?|[.,]\d+)$/.test(number)) return ok(Number(number.replace(",", ".")));
  const mixed = /^(?:(\d+)(?: ?- ?| ))?(\d+) ?\/ ?(\d+)$/.exec(number);
  if (mixed !== null) {
    const [, whole = "0", numerator = "", denominator = ""] = mixed;
    if (Number(denominator) === 0) return fail({ code: "length/no-denominator", text });
    // "341/2" is "34 1/2" without its space, far more likely than so many halves.
    if (Number(numerator) >= Number(denominator)) return fail({ code: "length/ambiguous", text });
    return ok(Number(whole) + Number(numerator) / Number(denominator));
  }
  // Digits and marks only, but two readings or none: `1/2/3`, `34,5,6`, `1,234.5`, `34 5`.
  return /^[\d.,/ -]+$/.test(number) && /\d/.test(number)
    ? fail({ code: "length/ambiguous", text })
    : fail({ code: "length/not-a-length", text });
}
