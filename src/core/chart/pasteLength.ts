/** A girth as a chart prints it: a length, or the range that a size is meant for. */
import { parseLength } from "../measures/length";
import type { Mm } from "../units";
import type { PastedUnit } from "./pasteWords";

export interface PastedLength {
  readonly value: Mm;
  /** Set where a range was printed; the value is then its middle. */
  readonly range: { readonly from: Mm; readonly to: Mm } | null;
}

/** No girth is written longer. */
const LONGEST_CELL = 40;

/** Of the sizes of a chart none reaches further than this beyond its start: "86-90", but not "34-1/2". */
const WIDEST_RANGE = 1.5;

/** Reads a cell; a number without a unit is in `unit`. null: it does not read as a girth. */
export function readCell(text: string, unit: PastedUnit): PastedLength | null {
  if (text.length > LONGEST_CELL || !/\d/.test(text)) return null;
  // "86/90" would read as a fraction, which no girth is.
  const slashed = /^(\d{2,}(?:[.,]\d+)?) ?\/ ?(\d{2,}(?:[.,]\d+)?)(\D*)$/.exec(text);
  if (slashed !== null)
    return rangeOf(`${slashed[1] ?? ""}${slashed[3] ?? ""}`, `${slashed[2] ?? ""}${slashed[3] ?? ""}`, unit);
  const whole = lengthOf(text, unit);
  if (whole !== null) return { value: whole, range: null };
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
  const parsed = parseLength(/[a-z"″”′']/i.test(text) ? text : `${text} ${unit}`, "cm");
  return parsed.ok ? parsed.value : null;
}
