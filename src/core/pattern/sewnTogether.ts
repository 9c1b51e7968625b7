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

interface PossiblePair extends SeamPair {
  /** A piece that takes part of the seam where it is there: then this is no pair. */
  readonly without?: PieceName;
}

const pair = (
  seam: SeamName,
  first: readonly PieceName[],
  second: readonly PieceName[],
  ease: Mm = 0,
): PossiblePair => ({
  seam,
  first,
  second,
  ease,
});

const SEAM_PAIRS: readonly PossiblePair[] = [
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
  pair("side", ["skirtBack"], ["skirtFront"]),
  pair("side", ["skirtSideBack"], ["skirtSideFront"]),
  pair("panel", ["skirtFront"], ["skirtSideFront"]),
  pair("panel", ["skirtBack"], ["skirtSideBack"]),
  ...waistOfSkirt("front", [["front"], ["centreFront", "sideFront"], ["frontBand"]]),
  ...waistOfSkirt("back", [["back"], ["backBand"]]),
  pair("neck", ["frontFacing"], ["front"]),
  pair("neck", ["frontFacing"], ["centreFront", "sideFront"]),
  pair("neck", ["frontFacing"], ["cup"]),
  pair("neck", ["backFacing"], ["back"]),
  pair("shoulder", ["backFacing"], ["frontFacing"]),
  pair("side", ["backFacing"], ["frontFacing"]),
  pair("shoulder", ["backArmholeFacing"], ["frontArmholeFacing"]),
  pair("side", ["backArmholeFacing"], ["frontArmholeFacing"]),
];

/** Every skirt on every bodice. */
function waistOfSkirt(of: "front" | "back", bodices: readonly (readonly PieceName[])[]): readonly PossiblePair[] {
  const [whole, sidePanel] =
    of === "front" ? (["skirtFront", "skirtSideFront"] as const) : (["skirtBack", "skirtSideBack"] as const);
  return bodices.flatMap((bodice) => [
    { ...pair("waist", bodice, [whole]), without: sidePanel },
    pair("waist", bodice, [whole, sidePanel]),
  ]);
}

const hasSeam = (piece: Piece | undefined, seam: SeamName): boolean =>
  piece !== undefined && piece.edges.some((edge) => edge.seam === seam);

/** The pairs of seams that a set of pieces has; every piece of a side must be there, and one of them have the seam. */
export function seamPairsOf(pieces: PieceSet): readonly SeamPair[] {
  // Most pairs are of other garments: whether a piece is there is asked of a set, since looking in vain in a record is slow.
  const there: ReadonlySet<string> = new Set(Object.keys(pieces));
  const isThere = (name: PieceName): boolean => there.has(name);
  return SEAM_PAIRS.filter(
    ({ seam, first, second, without }) =>
      first.every(isThere) &&
      second.every(isThere) &&
      (without === undefined || !isThere(without)) &&
      first.some((name) => hasSeam(pieces[name], seam)) &&
      second.some((name) => hasSeam(pieces[name], seam)),
  ).map(({ seam, first, second, ease }) => withOwnEase(pieces, { seam, first, second, ease }));
}

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
  ...(["sideWaist", "sideHem"] as const).flatMap((point): Join[] => [
    { point, first: "skirtFront", second: "skirtBack" },
    { point, first: "skirtSideFront", second: "skirtSideBack" },
  ]),
  ...(["panelWaist", "panelHem"] as const).flatMap((point): Join[] => [
    { point, first: "skirtFront", second: "skirtSideFront" },
    { point, first: "skirtBack", second: "skirtSideBack" },
  ]),
];

/** The joins of a set of pieces: both pieces there, the point a corner of the outline of both. */
export function joinsOf(pieces: PieceSet): readonly Join[] {
  const there: ReadonlySet<string> = new Set(Object.keys(pieces));
  return JOINS.filter(
    ({ point, first, second }) =>
      there.has(first) && there.has(second) && isCorner(pieces[first], point) && isCorner(pieces[second], point),
  );
}

const isCorner = (piece: Piece | undefined, point: PointName): boolean =>
  piece !== undefined && piece.edges.some((edge) => edge.from === point);
