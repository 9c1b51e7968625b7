/** What is sewn to what: seams by pairs, and corners that meet. Only what a set of pieces has is asked of it. */
import type { PieceSet } from "./pieceSet";
import { SHOULDER_EASE } from "./shoulderEase";
import type { Piece, PieceName, PointName, SeamName } from "./piece";
import type { Mm } from "../units";

/** Seams that are sewn together; the pieces of one side one after the other. `first` is the longer where there is ease. */
export interface SeamPair {
  readonly seam: SeamName;
  readonly first: readonly PieceName[];
  readonly second: readonly PieceName[];
  /** First less second, mm. */
  readonly ease: Mm;
}

const pair = (seam: SeamName, first: readonly PieceName[], second: readonly PieceName[], ease: Mm = 0): SeamPair => ({
  seam,
  first,
  second,
  ease,
});

const SEAM_PAIRS: readonly SeamPair[] = [
  pair("shoulder", ["back"], ["front"], SHOULDER_EASE),
  pair("shoulder", ["back"], ["centreFront", "sideFront"], SHOULDER_EASE),
  pair("princess", ["sideFront"], ["centreFront"]),
  pair("side", ["back"], ["front"]),
  pair("side", ["back"], ["sideFront"]),
  pair("side", ["back"], ["cup"]),
  pair("underBust", ["cup"], ["frontBand"]),
  pair("underBust", ["back"], ["backBand"]),
  pair("side", ["backBand"], ["frontBand"]),
  pair("waist", ["front"], ["frontBasque"]),
  pair("waist", ["centreFront", "sideFront"], ["frontBasque"]),
  pair("waist", ["frontBand"], ["frontBasque"]),
  pair("waist", ["back"], ["backBasque"]),
  pair("waist", ["backBand"], ["backBasque"]),
  pair("side", ["backBasque"], ["frontBasque"]),
];

const hasSeam = (piece: Piece | undefined, seam: SeamName): boolean =>
  piece !== undefined && piece.edges.some((edge) => edge.seam === seam);

/** The pairs of seams that a set of pieces has; every piece of a side must be there, and one of them have the seam. */
export const seamPairsOf = (pieces: PieceSet): readonly SeamPair[] =>
  SEAM_PAIRS.filter(({ seam, first, second }) =>
    [first, second].every(
      (side) => side.every((name) => pieces[name] !== undefined) && side.some((name) => hasSeam(pieces[name], seam)),
    ),
  ).map((sewn) => withOwnEase(pieces, sewn));

/** The ease that the pattern itself has in a seam, where its pieces say so. */
function withOwnEase(pieces: PieceSet, sewn: SeamPair): SeamPair {
  const ease = sewn.first.map((name) => pieces[name]?.seamEase?.[sewn.seam]).find((own) => own !== undefined);
  return ease === undefined ? sewn : { ...sewn, ease };
}

/** Corners that make a straight line together when two pieces are sewn. */
export interface Join {
  readonly point: PointName;
  readonly first: PieceName;
  readonly second: PieceName;
}

const JOINS: readonly Join[] = [
  { point: "sideNeck", first: "front", second: "back" },
  { point: "sideNeck", first: "sideFront", second: "back" },
  { point: "shoulderTip", first: "front", second: "back" },
  { point: "underarm", first: "front", second: "back" },
  { point: "sideWaist", first: "front", second: "back" },
  { point: "sideNeck", first: "centreFront", second: "back" },
  { point: "shoulderTip", first: "centreFront", second: "back" },
  { point: "shoulderTip", first: "sideFront", second: "back" },
  { point: "princessTop", first: "centreFront", second: "sideFront" },
  { point: "princessWaist", first: "centreFront", second: "sideFront" },
  { point: "underarm", first: "sideFront", second: "back" },
  { point: "sideWaist", first: "sideFront", second: "back" },
  { point: "underarm", first: "cup", second: "back" },
  { point: "sideUnderBust", first: "cup", second: "back" },
  { point: "sideUnderBust", first: "frontBand", second: "backBand" },
  { point: "sideWaist", first: "frontBand", second: "backBand" },
  { point: "sideWaist", first: "frontBasque", second: "backBasque" },
  { point: "sideHem", first: "frontBasque", second: "backBasque" },
];

/** The joins of a set of pieces: both pieces there, the point a corner of the outline of both. */
export const joinsOf = (pieces: PieceSet): readonly Join[] =>
  JOINS.filter(({ point, first, second }) => isCorner(pieces[first], point) && isCorner(pieces[second], point));

const isCorner = (piece: Piece | undefined, point: PointName): boolean =>
  piece !== undefined && piece.edges.some((edge) => edge.from === point);
