/**
 * A pattern piece: a closed outline on the stitch line, half of the body, in the piece frame (x from the centre line
 * to the side, y down, mm). Points are named; edges join them in order, all the way round; darts interrupt an edge run
 * with an edge of their own (the mouth).
 */
import type { PiecePoint } from "../geometry/point";
import { CoreBug } from "../result";

export type PieceName =
  | "front"
  | "centreFront"
  | "sideFront"
  | "cup"
  | "frontBand"
  | "back"
  | "backBand"
  | "frontBasque"
  | "backBasque"
  | "strap"
  | DressPiece
  | OtherPiece;

/** Panels of a skirt from centre front to centre back, and facings: drafted for the rest of the dress, in no pattern's nest. */
export const DRESS_PIECES = [
  "skirtFront",
  "skirtSideFront",
  "skirtSideBack",
  "skirtBack",
  "frontFacing",
  "backFacing",
  "frontArmholeFacing",
  "backArmholeFacing",
] as const;
export type DressPiece = (typeof DRESS_PIECES)[number];

/** Pieces that the planner has no name for, as a collar or a facing: blended, cut and drawn, but never altered. */
export type OtherPiece = `other${1 | 2 | 3 | 4 | 5 | 6}`;

/** Heights on the body at which sizes are chosen and girths are measured. */
export const LEVEL_NAMES = ["neck", "shoulder", "underarm", "bust", "underBust", "waist", "hip"] as const;
export type LevelName = (typeof LEVEL_NAMES)[number];

/** `princess`: from the shoulder or armhole over the bust to the waist. `strap`: where a strap is sewn on. */
export type SeamName =
  | "centre"
  | "neck"
  | "shoulder"
  | "armhole"
  | "side"
  | "waist"
  | "hem"
  | "princess"
  | "underBust"
  | "strap"
  /** Between two panels of a skirt. */
  | "panel"
  /** Any edge of a piece that the planner has no name for. */
  | "edge";

/** Where a dart opens. A French dart opens low on the side seam and runs up to the bust point. */
export type DartHome = "side" | "french" | "waist" | "underBust" | "shoulder" | "armhole" | "neck" | "centre";

/** A dart split into several keeps its name on the first of them. */
export type DartName = `${DartHome}Dart` | `${DartHome}Dart2` | `${DartHome}Dart3`;

/** Which dart of which piece. */
export interface DartRef {
  readonly piece: PieceName;
  readonly dart: DartName;
}

export const isSameDart = (a: DartRef, b: DartRef): boolean => a.piece === b.piece && a.dart === b.dart;

type Digit = 0 | 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9;

/** Three digits: more than any piece needs. */
export type BendName = `bend${0 | 1 | 2}${Digit}${Digit}`;
/** Two digits. */
export type CornerName = `corner${Digit}${Digit}`;

export type PointName =
  | "centreNeck"
  | "sideNeck"
  | "shoulderTip"
  | "armholeTouch"
  | "armholeHinge"
  | "underarm"
  | "sideBust"
  | "sideWaist"
  | "sideHip"
  | "sideHem"
  | "centreHem"
  | "centreHip"
  | "centreWaist"
  | "centreBust"
  | "bustPoint"
  | "bustLineInner"
  | "bustLineOuter"
  | "underBustCentre"
  /** Side end of the under-bust seam. */
  | "sideUnderBust"
  /** Where the two halves of a band meet that its dart lay between: on its upper seam and at the waist. */
  | "bandTopMiddle"
  | "waistMiddle"
  /** Ends of the strap's seam on a cup or a back: nearer the centre, nearer the armhole. */
  | "strapInner"
  | "strapOuter"
  /** Off the piece: where its strap goes over the shoulder. */
  | "strapAim"
  | "strapFrontInner"
  | "strapFrontOuter"
  | "strapBackInner"
  | "strapBackOuter"
  /** Ends of a princess seam, and where it passes the bust point. */
  | "princessTop"
  | "princessBust"
  | "princessWaist"
  /** Ends of a seam between two panels of a skirt, and where it crosses the hip; `inner` is the one nearer the centre. */
  | `panel${"Waist" | "Hip" | "Hem"}`
  | `panel${"Inner" | "Outer"}${"Waist" | "Hip" | "Hem"}`
  /** Corners of a vent, and of a facing's lower edge. */
  | `vent${"Top" | "Out" | "Hem"}`
  | `facing${1 | 2 | 3 | 4 | 5 | 6 | 7 | 8}`
  /** On a neckline redrawn: where it turns. */
  | "neckCorner"
  | "neckPeak"
  /** On a seam between two corners, where one cubic would not hold its shape; numbered along the ring. */
  | BendName
  /** Corners of a piece that the planner has no name for; numbered along the ring. */
  | CornerName
  /** Corners made by a cut. */
  | `cut${1 | 2 | 3 | 4 | 5 | 6 | 7 | 8}`
  | `${DartName}Apex`
  | `${DartName}Inner`
  | `${DartName}Outer`;

/** Whether a point only shapes a line, and is no corner that anything is reckoned from. */
export const isBend = (name: PointName): name is BendName => name.startsWith("bend");

/** Whether a point is a corner of a piece that the planner has no name for. */
export const isNumbered = (name: PointName): name is CornerName => name.startsWith("corner");

/** A named point and the level whose size it follows. */
export interface NamedPoint {
  readonly at: PiecePoint;
  readonly level: LevelName;
  /** Between two levels: it follows the size of the second by that share (0 to 1). */
  readonly towards?: { readonly level: LevelName; readonly share: number };
}

/** From one named point to the next; straight, or a cubic with two controls. A dart's mouth names its dart. */
export interface Edge {
  readonly from: PointName;
  readonly to: PointName;
  readonly seam: SeamName;
  readonly curve: { readonly c1: PiecePoint; readonly c2: PiecePoint } | null;
  /** Set on the mouth of a dart: cut away or folded in, not sewn as part of the seam. */
  readonly mouthOf: DartName | null;
}

/**
 * A dart from its mouth on `seam` to its apex. `inner` is the mouth end met first going round the outline from the
 * centre or from above (nearer the centre, or the upper one of a side dart), `outer` the other.
 */
export interface Dart {
  readonly name: DartName;
  readonly seam: SeamName;
  readonly inner: PointName;
  readonly outer: PointName;
  readonly apex: PointName;
  /** The bust point it serves, where it serves one. */
  readonly aimsAt: PointName | null;
  /** Drawn up as gathers over the mouth, not folded: its legs are not sewn. Absent: a dart. */
  readonly gathered?: true;
  /** How far the seam turns over the shut dart as the pattern was drawn, degrees. Absent: not at all. */
  readonly drawnTurn?: number;
  /** How much longer the outer leg was drawn than the inner one, mm. Absent: both alike. */
  readonly drawnLegs?: number;
  /** How far each leg is bowed at its middle, positive into the dart (a smoother cup), mm. Absent: straight. */
  readonly bow?: number;
}

/** A girth is measured along this chain of points on the half piece, less the darts it crosses. */
interface LevelLine {
  readonly level: LevelName;
  /** Measured straight from point to point, or along the edges of a seam. */
  readonly along: { readonly points: readonly PointName[] } | { readonly seam: SeamName };
}

export interface Piece {
  readonly name: PieceName;
  readonly points: Readonly<Partial<Record<PointName, NamedPoint>>>;
  /** Closed ring: each edge starts where the one before ends, the last ends where the first starts. */
  readonly edges: readonly Edge[];
  readonly darts: readonly Dart[];
  readonly levelLines: readonly LevelLine[];
  /** The centre edge lies on the fold (true) or is a seam. */
  readonly centreOnFold: boolean;
  /**
   * How far the outline turns at its corners, degrees, as the pattern itself was drawn: that is kept where our own drafts are
   * square, straight when sewn, or smooth. Absent: as our own drafts.
   */
  readonly drawnTurns?: Readonly<Partial<Record<PointName, number>>>;
  /**
   * By how much a seam of it is longer than what it is sewn to, where the pattern has ease there of its own; it stands on the
   * first piece of the longer side (`SeamPair.first`), mm. Absent: as our own draft has it.
   */
  readonly seamEase?: Readonly<Partial<Record<SeamName, number>>>;
}

export function pointOf(piece: Piece, name: PointName): PiecePoint {
  const point = piece.points[name];
  if (point === undefined) throw new CoreBug(`missing: ${piece.name}.${name}`);
  return point.at;
}

export function dartOf(piece: Piece, name: DartName): Dart {
  for (const dart of piece.darts) if (dart.name === name) return dart;
  throw new CoreBug(`missing: ${piece.name}.${name}`);
}

/** The names of a piece's points. The record is only ever built from `PointName` keys, which `Object.keys` cannot know. */
export const pointNames = ({ points }: Pick<Piece, "points">): readonly PointName[] =>
  Object.keys(points) as PointName[];

/**
 * Where the pieces of a pattern come from: drafted from its chart, that draft brought to what she measured on her tissue, or
 * her own outlines.
 */
export type NestSource = "standIn" | "fitted" | "own";

/** A piece in every printed size: the same points and edges in the same order. */
export interface Nest {
  readonly source: NestSource;
  readonly labels: readonly string[];
  readonly sizes: readonly (readonly Piece[])[];
  /** Which sizes are there as outlines, where the others are worked out from them. Absent: all are alike. */
  readonly traced?: readonly boolean[];
  /** Her own words for pieces that the planner has no name for. */
  readonly otherNames?: Readonly<Partial<Record<OtherPiece, string>>>;
}
