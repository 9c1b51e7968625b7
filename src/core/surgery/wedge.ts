/**
 * Wedges let in or taken out across a half piece: nothing at a hinge on one seam line, an amount at the centre. What lies
 * beyond the cut turns about the hinge; the centre line is drawn straight again and the seams at its ends squared to it.
 */
import {
  between,
  directionOf,
  distance,
  piecePoint,
  rotateAbout,
  turnBetween,
  type PiecePoint,
} from "../geometry/point";
import { edgePointAt } from "../geometry/edgeCurve";
import { rigidMotion, type Rigid } from "../geometry/rigid";
import { moveMouthEnd } from "../dart/mouthEnd";
import { seamLength } from "../girth/seamLength";
import { invariant } from "../result";
import { pointOf, type Piece, type PointName, type SeamName } from "../pattern/piece";
import { redrawn, withCurve } from "../pattern/redraw";
import { SAME_POINT } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";
import { trueDartAgain, type OutlinePlace } from "./beyondCut";
import { curveOf, edgeFrom, edgeTo } from "../pattern/ring";
import {
  placeAlong,
  smoothStretchAt,
  stretchFrom,
  stretchLength,
  stretchTo,
  withEndTurned,
} from "../pattern/seamStretch";
import { withSeamEnd } from "./walkAgain";

/**
 * The turn about a hinge that opens a cut by an amount at its far end.
 *
 * @param amount how far the far end moves, measured straight across the wedge, mm; less than twice its distance from the hinge
 * @param up     whether what lies on the centre's side of the hinge goes up (towards the neck) by positive amounts
 * @source the far end moves on a circle of radius R about the hinge, and its chord is 2 R sin(angle / 2)
 */
export const wedgeTurn = (hinge: PiecePoint, open: PiecePoint, amount: Mm, up: boolean): Radians =>
  radians((up ? 2 : -2) * Math.asin(amount / (2 * distance(hinge, open))));

/** The turn as a motion. */
export const turnAbout = (hinge: PiecePoint, turn: Radians): Rigid<"piece"> => rigidMotion(hinge, turn);

/** The place on a stretch at a distance along it from one of its ends; half-way along where it is too short for that. */
export function placeFrom(piece: Piece, corner: PointName, side: "before" | "after", along: Mm): OutlinePlace {
  const { stretch, length } = stretchBeside(piece, corner, side);
  const from = alongFrom(piece, corner, side, along);
  return placeAlong(piece, stretch, side === "before" ? length - from : from);
}

/** How far along its stretch that place is; mm. */
export const alongFrom = (piece: Piece, corner: PointName, side: "before" | "after", along: Mm): Mm =>
  Math.min(along, stretchBeside(piece, corner, side).length / 2);

function stretchBeside(piece: Piece, corner: PointName, side: "before" | "after") {
  const stretch = side === "before" ? stretchTo(piece, corner) : stretchFrom(piece, corner);
  return { stretch, length: stretchLength(piece, stretch) };
}

export const pointAt = (piece: Piece, { index, t }: OutlinePlace): PiecePoint =>
  edgePointAt(curveOf(piece, invariant(piece.edges[index], "edge")), t);

/** Turns the seam (not the centre line) where it meets a corner of the centre line, about that corner. */
function turnSeamAtCentre(piece: Piece, corner: PointName, turn: Radians): Piece {
  const into = edgeTo(piece, corner);
  const arrives = invariant(piece.edges[into], "edge").seam !== "centre";
  const index = arrives ? into : edgeFrom(piece, corner);
  const edge = invariant(piece.edges[index], "edge");
  const [a, b] = [pointOf(piece, edge.from), pointOf(piece, edge.to)];
  if (Math.abs(turn) * distance(a, b) < SAME_POINT) return piece;
  const stretch = smoothStretchAt(piece, index);
  if (stretch.length > 1) return withEndTurned(piece, stretch, arrives ? "end" : "start", turn);
  const { c1, c2 } = edge.curve ?? { c1: between(a, b, 1 / 3), c2: between(a, b, 2 / 3) };
  const curve = arrives ? { c1, c2: rotateAbout(c2, b, turn) } : { c1: rotateAbout(c1, a, turn), c2 };
  return redrawn(piece, piece.points, piece.edges.with(index, withCurve(edge, curve)));
}

export interface TurnedWaist {
  readonly turned: Radians;
  /** How much lower the waist is at the centre; its corner comes to lie just there. */
  readonly lower: Mm;
}

/** Rounds in which a seam and the side seam that it meets settle; each leaves under a hundredth of the error. */
const ROUNDS = 3;

/**
 * A half piece whose waist seam was turned: its centre line straight again as it was, the waist square to it, and waist
 * and side seam as long as before. What the waist gained or lost at the centre, tenths of a millimetre, is taken up by its
 * first dart; where it has none, at its other end.
 *
 * @param end    the end of the waist seam away from the centre
 */
export function squareWaistAgain(piece: Piece, before: Piece, { turned, lower }: TurnedWaist, end: PointName): Piece {
  const { x, y } = pointOf(before, "centreWaist");
  const centred = moveMouthEnd(piece, "centreWaist", piecePoint(x, y + lower));
  const centreTurned = turnBetween(centreDirection(before), centreDirection(centred));
  return withLengthsOf(turnSeamAtCentre(centred, "centreWaist", radians(centreTurned - turned)), before, end);
}

/** The direction of the centre line beside the waist, away from it. */
function centreDirection(piece: Piece): Radians {
  const [into, outOf] = [
    invariant(piece.edges[edgeTo(piece, "centreWaist")], "edge"),
    invariant(piece.edges[edgeFrom(piece, "centreWaist")], "edge"),
  ];
  const waist = pointOf(piece, "centreWaist");
  return directionOf(waist, pointOf(piece, into.seam === "centre" ? into.from : outOf.to));
}

/** Waist and side seam brought back to the lengths of before. */
export function withLengthsOf(piece: Piece, before: Piece, end: PointName): Piece {
  let drawn = piece;
  for (let round = 0; round < ROUNDS; round += 1) drawn = withSideOf(withWaistOf(drawn, before, end), before, end);
  return drawn;
}

function withWaistOf(piece: Piece, before: Piece, end: PointName): Piece {
  const length = seamLength(before, "waist");
  const dart = piece.darts.find(({ seam, gathered }) => seam === "waist" && gathered !== true);
  return dart === undefined ? withSeamEnd(piece, "waist", end, length) : trueDartAgain(piece, before, dart, length);
}

const withSideOf = (piece: Piece, before: Piece, end: PointName): Piece =>
  end === "sideWaist" ? withSeamEnd(piece, "side", end, seamLength(before, "side")) : piece;

export const isSeamOf = (piece: Piece | undefined, seam: SeamName): boolean =>
  piece?.edges.some((edge) => edge.seam === seam) === true;
