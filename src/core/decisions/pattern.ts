/** What the wearer says of the pattern she bought. */
import { CHART_LENGTHS, type ChartLength, type SizeChart } from "../chart/sizeChart";
import type { Mm } from "../units";
import type { OwnPattern } from "./ownPattern";
import type { Tissue } from "./tissue";

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

/** What the pattern may say of the body that its sizes are drafted for. */
export const PRINTED_LENGTHS = CHART_LENGTHS;
export type PrintedLength = ChartLength;

/** What a style's pieces have nothing of to be held against: a cup ends below shoulder and neck, only a band goes by the under-bust. */
const NOT_ON: Readonly<Record<StyleName, readonly PrintedLength[]>> = {
  sideDart: ["underBustGirth"],
  midriff: ["shoulderLength", "acrossBack", "acrossFront", "neckBaseGirth"],
  princessArmhole: ["underBustGirth"],
  princessShoulder: ["underBustGirth"],
};

/** The lengths that count for a pattern of a style: no other is asked for. */
export const lengthsAskedOn = (style: StyleName): readonly PrintedLength[] =>
  PRINTED_LENGTHS.filter((measure) => !NOT_ON[style].includes(measure));

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
  /** What she measured on the tissue; absent: nothing. */
  readonly tissue?: Tissue;
  /** Outlines from a file. */
  readonly own?: OwnPattern;
}
