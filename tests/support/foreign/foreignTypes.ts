/** What a foreign nest is: the truth that readings, blends and alterations are held against. */
import type { Segment, XY } from "./plane";

export type ForeignName =
  | "front"
  | "centreFront"
  | "sideFront"
  | "back"
  | "frontBasque"
  | "backBasque"
  | "cup"
  | "frontBand"
  | "backBand"
  | "strap"
  | "other1";

/** From one named corner to the next. */
export interface Stretch {
  readonly from: string;
  readonly to: string;
  readonly seam: string;
  /** The mouth of a dart: one straight line. */
  readonly mouthOf: string | null;
  readonly segments: readonly Segment[];
}

export interface ForeignDart {
  readonly name: string;
  readonly seam: string;
  readonly inner: string;
  readonly outer: string;
  readonly apex: XY;
  readonly aimsAtBust: boolean;
}

/** One size of a piece, on its stitch line, clockwise on a screen. */
export interface ForeignOutline {
  readonly label: string;
  readonly ring: readonly Stretch[];
  readonly darts: readonly ForeignDart[];
  /** Points that lie on no corner of the ring. */
  readonly inside: Readonly<Record<string, XY>>;
  readonly grain: readonly [XY, XY];
  readonly notches: readonly XY[];
  /** True lengths where a tape is laid, by the names of `TissueLength`. */
  readonly tape: Readonly<Record<string, number>>;
}

export interface ForeignPiece {
  readonly name: ForeignName;
  readonly centreOnFold: boolean;
  readonly sizes: readonly ForeignOutline[];
}

export interface ForeignChartRow {
  readonly label: string;
  readonly bust: number;
  readonly waist: number;
  readonly hip: number;
}

/** Round the body, darts sewn shut. */
interface TrueGirths {
  readonly bust: number;
  readonly waist: number;
  /** null without a basque. */
  readonly hip: number | null;
}

export type ForeignFront = "side" | "french" | "waist" | "none" | "princessArmhole" | "princessShoulder";
type ForeignNeck = "scoop" | "round" | "v" | "square" | "sweetheart" | "scalloped" | "zigzag";

export interface ForeignOptions {
  readonly seed: number;
  /** 2 to 8. */
  readonly sizes?: number;
  /** Darts of the front; "none": neither side dart nor waist dart. */
  readonly front?: ForeignFront;
  readonly neck?: ForeignNeck;
  /** Of all waist darts. */
  readonly darts?: "one intake" | "graded";
  readonly grading?: "even" | "uneven";
  readonly basque?: boolean;
  /** Hem of the basque. */
  readonly hem?: "plain" | "scalloped" | "zigzag";
  /** Side seams: lines, one cubic, or several. */
  readonly side?: "straight" | "curved" | "shaped";
  /** One size has corners on its neckline that the others lack, another a bend in its armhole. */
  readonly unlike?: boolean;
  /** A collar, as a piece without a name of the planner's. */
  readonly other?: boolean;
  /** The chart's smallest body; drawn by lot where it is absent. */
  readonly body?: { readonly bust: number; readonly waist: number; readonly hip: number };
}

export type DrawnOptions = Required<Omit<ForeignOptions, "body">>;

export interface ForeignNest {
  readonly options: DrawnOptions;
  readonly style: "sideDart" | "princessArmhole" | "princessShoulder" | "midriff";
  readonly chart: readonly ForeignChartRow[];
  /** Ease at bust, waist and hip: finished less the chart's body, the same in each size. */
  readonly ease: { readonly bust: number; readonly waist: number; readonly hip: number };
  readonly pieces: readonly ForeignPiece[];
  readonly finished: readonly TrueGirths[];
  /** Back shoulder less front shoulder. */
  readonly shoulderEase: number;
}
