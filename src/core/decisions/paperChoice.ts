/** The paper the wearer prints on. */

/** Paper for the checklist and the other sheets that the browser prints. */
export type PaperSize = "A4" | "Letter";

/** Paper for true-scale pieces, sheets before rolls; their sizes are in src/core/sheets/formats.ts. */
export const SHEET_FORMATS = ["A4", "A3", "Letter", "Tabloid", "A0 roll", "36 in roll"] as const;
export type SheetFormat = (typeof SHEET_FORMATS)[number];
