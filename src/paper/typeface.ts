/** What a typeface file says about its letters: which it has, and how wide they are. */
import { invariant } from "../core/result";
import type { Mm } from "../core/units";

export interface Typeface {
  /** Whether it has a shape for the code point; false beyond the basic plane, which is not read. */
  readonly has: (codePoint: number) => boolean;
  /** Width of the text set at `size` (em), without kerning, mm. Signs that it lacks have no width. */
  readonly widthOf: (text: string, size: Mm) => Mm;
}

/**
 * Reads a TrueType or OpenType file.
 *
 * @throws CoreBug if the file has no table of letters in format 4, which every such file has for the basic plane
 * @source OpenType specification: tables cmap (format 4), head, hhea and hmtx
 */
export function readTypeface(bytes: Uint8Array): Typeface {
  const data = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const tables = tablesOf(data);
  const table = (name: string): number => invariant(tables.get(name), `table ${name} of the typeface`);

  const glyphs = glyphsOf(data, table("cmap"));
  const em = data.getUint16(table("head") + 18);
  const wide = data.getUint16(table("hhea") + 34);
  const hmtx = table("hmtx");
  // Glyphs after the last that has a width of its own are all as wide as that one.
  const advance = (glyph: number): number => data.getUint16(hmtx + 4 * Math.min(glyph, wide - 1));

  return {
    has: (codePoint) => glyphs.has(codePoint),
    widthOf: (text, size) => {
      let sum = 0;
      for (const sign of text) {
        const glyph = glyphs.get(sign.codePointAt(0) ?? 0);
        if (glyph !== undefined) sum += advance(glyph);
      }
      return (sum / em) * size;
    },
  };
}

/** Where each table starts, by its four letters. */
function tablesOf(data: DataView): Map<string, number> {
  const tables = new Map<string, number>();
  for (let i = 0; i < data.getUint16(4); i += 1) {
    const at = 12 + 16 * i;
    const name = [0, 1, 2, 3].map((j) => String.fromCharCode(data.getUint8(at + j))).join("");
    tables.set(name, data.getUint32(at + 8));
  }
  return tables;
}

/** The glyph of each code point that has one. */
function glyphsOf(data: DataView, cmap: number): Map<number, number> {
  const at = invariant(formatFour(data, cmap), "letters in format 4");
  const segments = data.getUint16(at + 6) / 2;
  const ends = at + 14;
  const starts = ends + 2 * segments + 2;
  const deltas = starts + 2 * segments;
  const offsets = deltas + 2 * segments;

  const glyphs = new Map<number, number>();
  for (let i = 0; i < segments; i += 1) {
    const start = data.getUint16(starts + 2 * i);
    const delta = data.getUint16(deltas + 2 * i);
    const offset = data.getUint16(offsets + 2 * i);
    for (let code = start; code <= data.getUint16(ends + 2 * i) && code < 0xffff; code += 1) {
      const listed = offset === 0 ? code : data.getUint16(offsets + 2 * i + offset + 2 * (code - start));
      const glyph = listed === 0 ? 0 : (listed + delta) & 0xffff;
      if (glyph !== 0) glyphs.set(code, glyph);
    }
  }
  return glyphs;
}

function formatFour(data: DataView, cmap: number): number | undefined {
  for (let i = 0; i < data.getUint16(cmap + 2); i += 1) {
    const at = cmap + data.getUint32(cmap + 4 + 8 * i + 4);
    if (data.getUint16(at) === 4) return at;
  }
  return undefined;
}
