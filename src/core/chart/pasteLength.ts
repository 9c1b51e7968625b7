/** A girth as a chart prints it: a length, the same in two units, or the range that a size is meant for. */
import { parseLength } from "../measures/length";
import { BOTH_UNITS_AGREEMENT } from "../tolerance";
import type { Mm } from "../units";
import { FOOTNOTE, type PastedUnit } from "./pasteWords";

export interface PastedLength {
  readonly value: Mm;
  /** Set where a range was printed; the value is then its middle. */
  readonly range: { readonly from: Mm; readonly to: Mm } | null;
}

/** No girth is written longer. */
const LONGEST_CELL = 40;

/** Of the sizes of a chart none reaches further than this beyond its start: "86-90", but not "34-1/2". */
const WIDEST_RANGE = 1.5;

/**
 * Reads a cell; a number without a unit is in `unit`. null: it does not read as a girth.
 *
 * @param wanted the unit whose number is taken where a cell prints both
 */
export function readCell(text: string, unit: PastedUnit, wanted: PastedUnit = unit): PastedLength | null {
  const plain = withoutFootnote(text);
  if (plain.length > LONGEST_CELL) return null;
  const thousands = unit === "mm" ? THOUSANDS.exec(plain) : null;
  if (thousands !== null) return { value: Number(`${thousands[1] ?? ""}${thousands[2] ?? ""}`), range: null };
  const both = readBoth(plain, wanted);
  if (both !== null) return both === "unlike" ? null : { value: both, range: null };
  const ranges = readBothRanges(plain, wanted);
  if (ranges !== null) return ranges === "unlike" ? null : ranges;
  // "86/90" would read as a fraction, which no girth is.
  const slashed = /^(\d{2,}(?:[.,]\d+)?) ?\/ ?(\d{2,}(?:[.,]\d+)?)(\D*)$/.exec(plain);
  if (slashed !== null)
    return rangeOf(`${slashed[1] ?? ""}${slashed[3] ?? ""}`, `${slashed[2] ?? ""}${slashed[3] ?? ""}`, unit);
  const whole = lengthOf(plain, unit);
  if (whole !== null) return { value: whole, range: null };
  return rangeIn(plain, unit);
}

/** "1 080", "1,080" or "1.080" of millimetres: no girth is told to a thousandth of one. */
const THOUSANDS = /^([1-9])[\s.,’'](\d{3})(?:\s*mm)?$/i;

/** A mark behind a number leads to a note. */
export const withoutFootnote = (text: string): string =>
  text
    .trim()
    .replace(/^[*†‡§]+\s*/, "")
    .replace(FOOTNOTE, "")
    .trim();

/** The one unit that a cell names; null: none, or more than one. */
export function unitOfCell(text: string): PastedUnit | null {
  const units = new Set(
    [...text.toLowerCase().matchAll(/(?<=[\d½¼¾⅓⅔⅛⅜⅝⅞.]\s*)(mm|cms?|ins?|inch(?:es)?|["″”]|''|′′)/g)].map(([mark]) =>
      mark.startsWith("c") ? "cm" : mark === "mm" ? "mm" : "in",
    ),
  );
  const [unit] = units;
  return units.size === 1 && unit !== undefined ? unit : null;
}

const NUMBER = String.raw`\d+(?:[.,]\d+)?(?:(?:\s+|-)?(?:\d{1,2}[/⁄]\d{1,2}|[½¼¾⅓⅔⅛⅜⅝⅞]))?`;
const MARK = String.raw`\s*(?:cms?|centimet(?:re|er)s?|ins?\.?|inch(?:es)?|["″”]|''|′′)?`;
/** `80 cm (31½ in)`, `31½/80`, `80 – 31 1/2"`. */
const BOTH = new RegExp(
  String.raw`^(${NUMBER})(${MARK})\s*(?:\(|\[|\/|\||[-–—=])\s*(${NUMBER})(${MARK})\s*[)\]]?$`,
  "i",
);

/**
 * A girth printed in centimetres and in inches, taken in the unit wanted. null: it is not printed so; "unlike": the two
 * numbers are not one girth.
 */
function readBoth(text: string, wanted: PastedUnit): Mm | "unlike" | null {
  const [, first, firstMark, second, secondMark] = BOTH.exec(text) ?? [];
  if (first === undefined || second === undefined) return null;
  const firstUnit = unitOfCell(`0${firstMark ?? ""}`);
  const secondUnit = unitOfCell(`0${secondMark ?? ""}`);
  const stated = firstUnit !== null && secondUnit !== null && firstUnit !== secondUnit;
  // Without units the larger number is of centimetres, if the two then agree; two of one unit are a range.
  const orders = (["cm", "in"] as const).flatMap((unit) => {
    const other = unit === "cm" ? "in" : "cm";
    if ((firstUnit ?? unit) !== unit || (secondUnit ?? other) !== other) return [];
    const one = lengthOf(`${first} ${unit}`, unit);
    const two = lengthOf(`${second} ${other}`, other);
    return one === null || two === null ? [] : [{ unit, one, two }];
  });
  const agreeing = orders.find(({ one, two }) => Math.abs(one - two) <= BOTH_UNITS_AGREEMENT);
  if (agreeing === undefined) return stated || /[([]/.test(text) ? "unlike" : null;
  const takeFirst = agreeing.unit === (wanted === "in" ? "in" : "cm");
  return takeFirst ? agreeing.one : agreeing.two;
}

/** `34–36" (86–91 cm)`, `86-91 / 34-36`: the range in the unit wanted, where both are one in two units. */
function readBothRanges(text: string, wanted: PastedUnit): PastedLength | "unlike" | null {
  for (const split of text.matchAll(/\s*[(/|[]\s*/g)) {
    const parts = [text.slice(0, split.index), text.slice(split.index + split[0].length).replace(/\s*[)\]]$/, "")];
    const [one = "", two = ""] = parts;
    const [oneUnit, twoUnit] = [unitOfCell(one), unitOfCell(two)];
    for (const unit of ["cm", "in"] as const) {
      const other = unit === "cm" ? "in" : "cm";
      if ((oneUnit ?? unit) !== unit || (twoUnit ?? other) !== other) continue;
      const [first, second] = [rangeIn(one, unit), rangeIn(two, other)];
      if (first?.range == null || second?.range == null) continue;
      const agree = (["from", "to"] as const).every(
        (end) => Math.abs((first.range?.[end] ?? 0) - (second.range?.[end] ?? 0)) <= BOTH_UNITS_AGREEMENT,
      );
      if (agree) return unit === (wanted === "in" ? "in" : "cm") ? first : second;
      if (oneUnit !== null && twoUnit !== null) return "unlike";
    }
  }
  return null;
}

function rangeIn(text: string, unit: PastedUnit): PastedLength | null {
  for (const between of text.matchAll(/[-‐‑‒–—−]|\bto\b/g)) {
    const range = rangeOf(text.slice(0, between.index), text.slice(between.index + between[0].length), unit);
    if (range !== null) return range;
  }
  return null;
}

function rangeOf(first: string, second: string, unit: PastedUnit): PastedLength | null {
  const to = lengthOf(second, unit);
  // "34 to 36 in": a unit at the end is said for both.
  const shared = /[a-z"″”′']+\.?\s*$/i.exec(second)?.[0] ?? "";
  const from = lengthOf(/[a-z"″”′']/i.test(first) ? first : `${first}${shared}`, unit);
  if (from === null || to === null || to <= from || to > from * WIDEST_RANGE) return null;
  return { value: Math.round((from + to) * 5) / 10, range: { from, to } };
}

function lengthOf(text: string, unit: PastedUnit): Mm | null {
  const plain = text.replace(/cms\b/i, "cm");
  const parsed = parseLength(/[a-z"″”′']/i.test(plain) ? plain : `${plain} ${unit}`, "cm");
  return parsed.ok ? parsed.value : null;
}
