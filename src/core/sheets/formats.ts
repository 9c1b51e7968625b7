/** Sizes of paper. Widths and heights in mm, upright. */
import type { SheetFormat } from "../decisions/paperChoice";
import type { Mm } from "../units";

/** `height` null: a roll, as long as the pieces need. */
export interface PaperFormat {
  readonly width: Mm;
  readonly height: Mm | null;
}

/**
 * @source ISO 216:2007 for A4 (210 × 297), A3 (297 × 420) and the width of A0 (841); ANSI/ASME Y14.1 for A (8.5 × 11 in) and
 *         B (11 × 17 in); a 36 in plotter roll is common practice, no source
 */
export const FORMATS: Readonly<Record<SheetFormat, PaperFormat>> = {
  A4: { width: 210, height: 297 },
  A3: { width: 297, height: 420 },
  Letter: { width: 215.9, height: 279.4 },
  Tabloid: { width: 279.4, height: 431.8 },
  "A0 roll": { width: 841, height: null },
  "36 in roll": { width: 914.4, height: null },
};
