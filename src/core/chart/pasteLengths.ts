/** Lengths and widths that a pasted chart prints beside the girths: taken only where their name and every figure are sure. */
import { checkMeasure } from "../measures/registry";
import type { Mm } from "../units";
import { readCell, withoutFootnote } from "./pasteLength";
import { FOOTNOTE, type PastedUnit } from "./pasteWords";
import { CHART_LENGTHS, type ChartLength } from "./sizeChart";

/** By the label of the size. */
export type PastedLengths = Readonly<Partial<Record<ChartLength, { readonly bySize: Readonly<Record<string, Mm>> }>>>;

/** Names that mean one length and nothing else, without units and small words. "Back length" may be the garment's. */
const NAMES: Readonly<Record<ChartLength, RegExp>> = {
  backWaistLength: /^(?:back waist|nape to waist|back neck to waist|neck to waist at back|back waist nape to waist)$/,
  frontWaistLength: /^(?:front waist|side neck to front waist|side neck to waist over bust)$/,
  shoulderLength: /^(?:shoulder|shoulder seam)$/,
  acrossBack: /^(?:across back|cross back|back width|across back width)$/,
  acrossFront: /^(?:across front|cross front|across chest|across front width|chest width)$/,
  neckBaseGirth: /^(?:neck|neck base|base of neck|neck girth|neck base girth|neck circumference)$/,
  bustPointWidth: /^(?:bust point width|bust point to bust point|bust points apart|apex to apex|bust separation)$/,
  sideNeckToBustPoint: /^(?:bust depth|side neck to bust point|side neck point to bust point)$/,
  underBustGirth: /^under ?bust(?: girth)?$/,
  height: /^(?:height|body height)$/,
};

const UNIT_WORDS = /\b(?:mm|cms?|ins?|inch(?:es)?|millimet(?:re|er)s?|centimet(?:re|er)s?)\b/g;

/** Which length a heading names; null: none for certain. */
export function lengthNamed(heading: string): ChartLength | null {
  const plain = withoutFootnote(heading).replace(FOOTNOTE, " ").toLowerCase();
  if (/\d|½/.test(plain)) return null;
  const said = plain
    .replace(/["″”]/g, " ")
    .replace(/[^\p{L}]+/gu, " ")
    .replace(UNIT_WORDS, " ")
    .replace(/\b(?:length|measurement|the)\b/g, " ")
    .replace(/\s+/g, " ")
    .trim();
  return CHART_LENGTHS.find((measure) => NAMES[measure].test(said)) ?? null;
}

/** A dash is how tables print that there is nothing. */
export const isBlank = (text: string): boolean => /^[-–—.]*$/.test(text);

/** The figures of one length, null where a size has none; null as a whole: one of them is not sure. */
export function figuresOf(
  measure: ChartLength,
  texts: readonly string[],
  unit: PastedUnit,
  wanted: PastedUnit,
): readonly (Mm | null)[] | null {
  const read = texts.map((text) => (isBlank(text) ? null : (readCell(text, unit, wanted) ?? "unread")));
  const isSure = read.every(
    (one) =>
      one === null ||
      (one !== "unread" && one.range === null && checkMeasure(measure, one.value).state !== "impossible"),
  );
  if (!isSure || read.every((one) => one === null)) return null;
  return read.map((one) => (one === null || one === "unread" ? null : one.value));
}
