/** The pattern's own size chart, as printed on its envelope. */
import type { Mm } from "../units";

/** One size: body girths, and finished garment girths where the envelope prints them. */
export interface SizeRow {
  readonly label: string;
  readonly bust: Mm;
  readonly waist: Mm;
  readonly hip: Mm;
  readonly finishedBust?: Mm;
  readonly finishedWaist?: Mm;
  readonly finishedHip?: Mm;
}

/** One cup version: bust girth minus upper-chest girth it is drafted for. */
export interface CupVersion {
  readonly label: string;
  readonly difference: Mm;
}

export interface SizeChart {
  /** From the smallest to the largest; 2 to 20 of them. */
  readonly sizes: readonly SizeRow[];
  /** Bust minus upper chest that the chart's own bust column is drafted for (50 mm is common practice). */
  readonly draftedDifference: Mm;
  /** May be empty: then only the drafted difference counts. */
  readonly cups: readonly CupVersion[];
}

export const FEWEST_SIZES = 2;
export const MOST_SIZES = 20;
/** Common practice, no source: a "B" draft. */
export const USUAL_DRAFTED_DIFFERENCE: Mm = 50;
