/**
 * A pattern piece: a closed outline on the stitch line, half of the body, in the piece frame (x from the centre line
 * to the side, y down, mm). Points are named; edges join them in order, all the way round; darts interrupt an edge run
 * with an edge of their own (the mouth).
 */
import type { PiecePoint } from "../geometry/point";
import { must } from "../result";

export type PieceName = "front" | "back" | "frontBasque" | "backBasque";

/** Heights on the body at which sizes are chosen and girths are measured. */
export type LevelName = "neck" | "shoulder" | "underarm" | "bust" | "underBust" | "waist" | "hip";

export type SeamName = "centre" | "neck" | "shoulder" | "armhole" | "side" | "waist" | "hem";

export type DartName = "sideDart" | "waistDart" | "shoulderDart";

/** Which dart of which piece. */
export interface DartRef {
  readonly piece: PieceName;
  readonly dart: DartName;
}

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
  | `${DartName}Apex`
  | `${DartName}Inner`
  | `${DartName}Outer`;

/** A named point and the level whose size it follows. */
export interface NamedPoint {
  readonly at: PiecePoint;
  readonly level: LevelName;
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
}

/** A girth is measured along this chain of points on the half piece, less the darts it crosses. */
export interface LevelLine {
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
}

export const pointOf = (piece: Piece, name: PointName): PiecePoint => must(piece.points[name], `${piece.name}.${name}`).at;

export const dartOf = (piece: Piece, name: DartName): Dart =>
  must(piece.darts.find((d) => d.name === name), `${piece.name}.${name}`);

/** The names of a piece's points. The record is only ever built from `PointName` keys, which `Object.keys` cannot know. */
export const pointNames = (piece: Piece): readonly PointName[] => Object.keys(piece.points) as PointName[];

/** A piece in every printed size: the same points and edges in the same order. */
export interface Nest {
  readonly labels: readonly string[];
  readonly sizes: readonly (readonly Piece[])[];
}
