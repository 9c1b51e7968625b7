/**
 * Published standard charts, to lay a pattern's own chart beside. Open standards only; how far the figures of each are to
 * be trusted is told with its name. A standard is another chart, no measure of what a body should be.
 */
import { MM_PER_CM, MM_PER_INCH, type Mm } from "../units";

export interface StandardSize {
  readonly label: string;
  /** Body girths. */
  readonly bust: Mm;
  readonly waist: Mm;
  readonly hip: Mm;
}

export type StandardName = "en13402" | "ps42" | "d5585";

export interface StandardChart {
  readonly name: StandardName;
  /** From the smallest to the largest. */
  readonly sizes: readonly StandardSize[];
}

type Row = readonly [label: string, bust: number, waist: number, hip: number];

const sizesIn = (unit: Mm, rows: readonly Row[]): readonly StandardSize[] =>
  rows.map(([label, bust, waist, hip]) => ({ label, bust: bust * unit, waist: waist * unit, hip: hip * unit }));

/** EN 13402-3, women: middles of the intervals, cm; a size is called by the middle of its bust. */
const EUROPEAN: readonly Row[] = [
  ["76", 76, 60, 84],
  ["80", 80, 64, 88],
  ["84", 84, 68, 92],
  ["88", 88, 72, 96],
  ["92", 92, 76, 100],
  ["96", 96, 80, 104],
  ["100", 100, 84, 108],
  ["104", 104, 88, 112],
  ["110", 110, 94, 117],
  ["116", 116, 100, 122],
  ["122", 122, 106, 127],
  ["128", 128, 112, 132],
  ["134", 134, 118, 137],
  ["140", 140, 124, 142],
  ["146", 146, 130, 147],
  ["152", 152, 136, 152],
];

/** PS 42-70, misses, inches. */
const PRODUCT_STANDARD: readonly Row[] = [
  ["6", 31.5, 22.5, 33.5],
  ["8", 32.5, 23.5, 34.5],
  ["10", 33.5, 24.5, 35.5],
  ["12", 35, 26, 37],
  ["14", 36.5, 27.5, 38.5],
  ["16", 38, 29, 40],
  ["18", 40, 31, 42],
  ["20", 42, 33, 44],
  ["22", 44, 35, 46],
];

/** ASTM D5585-95, misses, inches. */
const BODY_STANDARD: readonly Row[] = [
  ["2", 32, 24, 34.5],
  ["4", 33, 25, 35.5],
  ["6", 34, 26, 36.5],
  ["8", 35, 27, 37.5],
  ["10", 36, 28, 38.5],
  ["12", 37.5, 29.5, 40],
  ["14", 39, 31, 41.5],
  ["16", 40.5, 32.5, 43],
  ["18", 42.5, 34.5, 45],
  ["20", 44.5, 36.5, 47],
];

export const STANDARD_CHARTS: readonly StandardChart[] = [
  {
    name: "en13402",
    sizes: sizesIn(MM_PER_CM, EUROPEAN),
  },
  {
    name: "ps42",
    sizes: sizesIn(MM_PER_INCH, PRODUCT_STANDARD),
  },
  {
    name: "d5585",
    sizes: sizesIn(MM_PER_INCH, BODY_STANDARD),
  },
];
