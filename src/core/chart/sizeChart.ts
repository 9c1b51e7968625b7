/** The pattern's own size chart, as printed on its envelope. */
import type { MeasureName } from "../measures/measure";
import type { TypedUnit } from "../measures/length";
import { MM_PER_INCH, type Mm } from "../units";

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

/** What charts print beside the girths: the body that a size is drafted for, in the order they are offered. */
export const CHART_LENGTHS = [
  "backWaistLength",
  "frontWaistLength",
  "shoulderLength",
  "acrossBack",
  "acrossFront",
  "neckBaseGirth",
  "bustPointWidth",
  "sideNeckToBustPoint",
  "underBustGirth",
  "height",
] as const satisfies readonly MeasureName[];

export type ChartLength = (typeof CHART_LENGTHS)[number];

export const FEWEST_SIZES = 2;
export const MOST_SIZES = 20;
/** Common practice, no source: a "B" draft. */
const USUAL_DRAFTED_DIFFERENCE: Mm = 50;
/** The same as an inch tape has it: 2 in. */
export const usualDraftedDifference = (unit: TypedUnit): Mm =>
  unit === "in" ? 2 * MM_PER_INCH : USUAL_DRAFTED_DIFFERENCE;

/** From one cup to the next (common practice, no source: an inch). */
const cupStep = (unit: TypedUnit): Mm => (unit === "in" ? MM_PER_INCH : USUAL_DRAFTED_DIFFERENCE / 2);

const CUP_LETTERS = ["A", "B", "C", "D", "DD", "E", "F", "G", "H", "J", "K", "L"];

/** The next version after these: one step fuller, under the first letter still free. The first is a B, as drafted. */
export function nextCup(cups: readonly CupVersion[], drafted: Mm, unit: TypedUnit): CupVersion {
  const last = cups.at(-1);
  const taken = new Set(cups.map((cup) => cup.label));
  const after = last === undefined ? CUP_LETTERS.indexOf("B") : CUP_LETTERS.indexOf(last.label) + 1;
  const label = CUP_LETTERS.slice(after).find((letter) => !taken.has(letter)) ?? `cup ${cups.length + 1}`;
  return { label, difference: last === undefined ? drafted : toTenth(last.difference + cupStep(unit)) };
}

/** The four versions that most multi-cup patterns print, the chart's own bust being the B's. */
export const usualCups = (drafted: Mm, unit: TypedUnit): readonly CupVersion[] =>
  CUP_LETTERS.slice(0, 4).map((label, at) => ({ label, difference: toTenth(drafted + (at - 1) * cupStep(unit)) }));

const toTenth = (mm: Mm): Mm => Math.round(mm * 10) / 10;
