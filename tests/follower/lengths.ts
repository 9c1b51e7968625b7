/** Lengths as they stand printed, read back by hand: "13 mm", "8.2 cm", "1 3/16 in", "¼ in". Shares no code with what writes them. */

/** mm. A place on paper, or how far two are apart. */
export type Length = number;

const GLYPHS: Readonly<Record<string, number>> = { "½": 1 / 2, "¼": 1 / 4, "¾": 3 / 4 };

/** How a length is written, for patterns: a number with its unit behind it. */
export const LENGTH = String.raw`(?:\d+(?:\.\d+)?(?: (?:\d+\/\d+|[½¼¾]))?|\d+\/\d+|[½¼¾]) (?:mm|cm|in)`;

function numberOf(text: string): number {
  return text.split(" ").reduce((sum, part) => {
    const glyph = GLYPHS[part];
    if (glyph !== undefined) return sum + glyph;
    const [top, bottom] = part.split("/").map(Number);
    return sum + (bottom === undefined ? (top ?? Number.NaN) : (top ?? Number.NaN) / bottom);
  }, 0);
}

export function lengthOf(text: string): Length {
  const found = /^(.*) (mm|cm|in)$/.exec(text.trim());
  if (found === null) throw new Error(`no length: ${text}`);
  const unit = { mm: 1, cm: 10, in: 25.4 }[found[2] ?? ""];
  const value = numberOf(found[1] ?? "") * (unit ?? Number.NaN);
  if (!Number.isFinite(value)) throw new Error(`no length: ${text}`);
  return value;
}

/** mm. Half of what amounts are rounded to on a sheet in that unit. */
export const halfPrinted = (unit: "cm" | "in"): Length => (unit === "in" ? 25.4 / 16 / 2 : 0.5);
