/** What the wearer says of the pattern she bought. */
import type { SizeChart } from "../chart/sizeChart";
import type { MeasureName } from "../measures/measure";
import type { Mm } from "../units";

/** The styles of bodice, in the order they are offered. */
export const STYLE_NAMES = ["sideDart", "midriff", "princessArmhole", "princessShoulder"] as const;
export type StyleName = (typeof STYLE_NAMES)[number];

/** Finished strap widths: a thin one, and one that hides what is worn under it. */
export type StrapStyle = "thin" | "wide";

/** Waist length alone, or with a fitted basque to the hip sewn to the waist seam. */
export type PatternLength = "waist" | "hip";

/** Where the garment opens, and how far the opening runs below the waist seam (0: it ends at the waist). */
export interface Closure {
  readonly place: "centreBack" | "side";
  readonly belowWaist: Mm;
  /** How many buttons close a centre back opening; absent: a zip, or another closure without marks. */
  readonly buttons?: number;
}

/** Garment girth minus body girth. */
export interface Ease {
  readonly bust: Mm;
  readonly waist: Mm;
  readonly hip: Mm;
}

/** Of what charts print beside the girths: the body that a size is drafted for, in the order they are offered. */
export const PRINTED_LENGTHS = [
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

export type PrintedLength = (typeof PRINTED_LENGTHS)[number];

/** What the pattern says of one length: never empty. */
export interface PrintedFigure {
  /** One figure for every size that has none of its own. */
  readonly all?: Mm;
  /** By the label of the size. */
  readonly bySize?: Readonly<Record<string, Mm>>;
}

export type PrintedLengths = Readonly<Partial<Record<PrintedLength, PrintedFigure>>>;

export interface Pattern {
  readonly name: string;
  readonly chart: SizeChart;
  /** The ease drafted in, used where the chart prints no finished measures. */
  readonly ease: Ease;
  readonly length: PatternLength;
  readonly closure: Closure;
  readonly style: StyleName;
  /** For styles with straps. */
  readonly strap: StrapStyle;
  /** What it says of lengths and widths; absent: nothing. */
  readonly lengths?: PrintedLengths;
}
