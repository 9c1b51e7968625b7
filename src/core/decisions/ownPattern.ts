/** Her own pattern: outlines read from a file, and what she said of them. */
import type { CornerName, DartName, LevelName, PieceName, PointName, SeamName } from "../pattern/piece";
import type { Mm } from "../units";
import type { FileDrawing, FilePlace } from "./fileDrawing";

/** By what the lines of the sizes differ. */
export const LINE_FEATURES = ["layer", "group", "colour", "dash", "width"] as const;
export type LineFeature = (typeof LINE_FEATURES)[number];

/**
 * What lines of one value of that feature are: of one size, by its label in the chart; of all sizes; marks inside a piece; or
 * nothing of the pattern.
 */
export type LineMeaning =
  | { readonly of: "size"; readonly size: string }
  | { readonly of: "all" }
  | { readonly of: "inner" }
  | { readonly of: "nothing" };

const NAMED = [
  "centreNeck",
  "sideNeck",
  "shoulderTip",
  "armholeTouch",
  "underarm",
  "sideBust",
  "sideWaist",
  "sideHip",
  "sideHem",
  "centreHem",
  "centreHip",
  "centreWaist",
  "centreBust",
  "underBustCentre",
  "sideUnderBust",
  "waistMiddle",
  "bandTopMiddle",
  "strapInner",
  "strapOuter",
  "strapAim",
  "strapFrontInner",
  "strapFrontOuter",
  "strapBackInner",
  "strapBackOuter",
  "princessTop",
  "princessBust",
  "princessWaist",
] as const satisfies readonly PointName[];

const TENS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9] as const;

/** Corners of a piece without a name of ours, along its ring. */
const CORNER_NAMES: readonly CornerName[] = TENS.flatMap((ten) => TENS.map((one): CornerName => `corner${ten}${one}`));

/** Corners that can be put right by hand. */
export type OwnCorner = (typeof NAMED)[number] | CornerName;
export const OWN_CORNERS: readonly OwnCorner[] = [...NAMED, ...CORNER_NAMES];

/** A corner put right by hand: in that size, the others follow it. */
export interface CornerSaid {
  readonly name: OwnCorner;
  readonly size: string;
  /** null: the piece has no such corner. */
  readonly at: FilePlace | null;
}

/** A dart pointed at: its mouth ends on the outline and its end. */
export interface DartSaid {
  readonly name: DartName;
  readonly size: string;
  readonly inner: FilePlace;
  readonly outer: FilePlace;
  readonly apex: FilePlace;
}

export interface OwnPieceSaid {
  /** Of the outlines that lie in one another, as the reading names them. */
  readonly id: string;
  /** null: not said yet. Pieces without a name of ours are `other…`. */
  readonly name: PieceName | null;
  /** Her own word for it. */
  readonly label?: string;
  /** Nothing of the pattern: a frame, a test square, a picture. */
  readonly leftOut?: true;
  /** Whether half of it is drawn, to the fold or the centre seam, or both halves. Absent: as the reading finds. */
  readonly extent?: "half" | "whole";
  /** Quarter turns by the clock until it stands upright, and whether it is turned over after that. */
  readonly turns?: 0 | 1 | 2 | 3;
  readonly turnedOver?: boolean;
  /** Which line was read, and with what allowance on each seam where it is the cutting line. */
  readonly line?: "stitch" | "cutting";
  readonly allowances?: Readonly<Partial<Record<SeamName, Mm>>>;
  readonly centreOnFold?: boolean;
  readonly corners?: readonly CornerSaid[];
  readonly darts?: readonly DartSaid[];
  /** Darts that the reading found and that are none. */
  readonly notDarts?: readonly DartName[];
  /** Where its bust point is, in one size. */
  readonly bustPoint?: { readonly size: string; readonly at: FilePlace };
  /** For pieces without a name of ours: the level that its top and its bottom are blended at. */
  readonly levels?: { readonly top: LevelName; readonly bottom: LevelName };
}

export interface OwnPattern {
  /** Name of the file. */
  readonly file: string;
  readonly drawing: FileDrawing;
  /** A length of the drawing that she knows: it proves the scale, or gives it. */
  readonly known?: { readonly from: FilePlace; readonly to: FilePlace; readonly length: Mm };
  /** How far apart ends may lie that are joined; absent: the usual. */
  readonly joinWithin?: Mm;
  readonly sortBy?: LineFeature;
  /** By value of that feature. */
  readonly lines?: Readonly<Record<string, LineMeaning>>;
  /** Label of the cup version that was drawn; absent: the one that the chart is drafted for. */
  readonly cup?: string;
  readonly pieces: readonly OwnPieceSaid[];
  /** She looked through it: the plan is made on these pieces. Absent: still at it. */
  readonly inUse?: true;
}
