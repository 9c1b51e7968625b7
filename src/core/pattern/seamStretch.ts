/**
 * Stretches of the outline: from one corner that something is reckoned from to the next, over any number of bends. A stretch of
 * one edge is that edge; one of several is moved as a whole, every point and handle by its share of the way, so that a smooth
 * line stays smooth and a corner a corner.
 *
 * The shares are those of a cubic whose ends and handles are moved: what moves one end (with its handle) moves the curve at t by
 * 3 t² - 2 t³ of it.
 */
import { edgeLength, edgeParameterAtLength } from "../geometry/edgeCurve";
import {
  between,
  directionOf,
  distance,
  piecePoint,
  rotateAbout,
  shift,
  turnBetween,
  type PiecePoint,
} from "../geometry/point";
import { moveRigidly, type Rigid } from "../geometry/rigid";
import { invariant } from "../result";
import { HANDLE_STEP, SMOOTH_BEND, SMOOTH_CORNER_DEGREES, STRAIGHT_SEAM } from "../tolerance";
import { radiansFromDegrees, type Mm, type Radians } from "../units";
import { isBend, pointOf, type Edge, type NamedPoint, type Piece, type PointName } from "./piece";
import { placedAt, redrawn, withCurve, withoutPoint } from "./redraw";
import { curveOf, edgeFrom, edgeTo } from "./ring";

/** Indexes of the edges of a stretch, the way they go. */
export type Stretch = readonly number[];

/** A place within an edge: its index in the ring, and its curve parameter. */
export interface RingPlace {
  readonly index: number;
  readonly t: number;
}

const edgeAt = (piece: Piece, index: number): Edge =>
  invariant(piece.edges[(index + piece.edges.length) % piece.edges.length], "edge");

/** The stretch that an edge is part of; a dart's mouth is one of its own. */
export function stretchAt(piece: Piece, index: number): Stretch {
  const count = piece.edges.length;
  const edge = edgeAt(piece, index);
  if (edge.mouthOf !== null || !(isBend(edge.from) || isBend(edge.to))) return [index];
  const runsOn = (corner: PointName, next: Edge): boolean =>
    isBend(corner) && next.mouthOf === null && next.seam === edge.seam;
  let [first, last] = [index, index];
  for (let step = 1; step < count; step += 1) {
    if (!runsOn(edgeAt(piece, first).from, edgeAt(piece, first - 1 + count))) break;
    first -= 1;
  }
  for (let step = index - first + 1; step < count; step += 1) {
    if (!runsOn(edgeAt(piece, last).to, edgeAt(piece, last + 1))) break;
    last += 1;
  }
  return Array.from({ length: last - first + 1 }, (_, step) => (first + step + count) % count);
}

/** The part of a stretch round an edge that runs smooth: from one corner of it, a bend too, to the next. */
export function smoothStretchAt(piece: Piece, index: number): Stretch {
  const stretch = stretchAt(piece, index);
  if (stretch.length === 1) return stretch;
  const at = stretch.indexOf(index);
  const isCorner = (step: number): boolean => {
    const name = edgeAt(piece, invariant(stretch[step], "stretch")).from;
    return Math.abs(turnAtBend(piece, name)) > radiansFromDegrees(SMOOTH_CORNER_DEGREES);
  };
  const corners = stretch.flatMap((_, step) => (step > 0 && isCorner(step) ? [step] : []));
  const first = corners.findLast((step) => step <= at) ?? 0;
  const next = corners.find((step) => step > at) ?? stretch.length;
  return stretch.slice(first, next);
}

/** The stretch that begins or ends at a corner. */
export const stretchFrom = (piece: Piece, corner: PointName): Stretch => stretchAt(piece, edgeFrom(piece, corner));
export const stretchTo = (piece: Piece, corner: PointName): Stretch => stretchAt(piece, edgeTo(piece, corner));

const lengthAt = (piece: Piece, index: number): Mm => edgeLength(curveOf(piece, edgeAt(piece, index)));

/** mm. */
export const stretchLength = (piece: Piece, stretch: Stretch): Mm =>
  stretch.reduce((sum, index) => sum + lengthAt(piece, index), 0);

/** Where a stretch begins and ends. */
export const endsOf = (piece: Piece, stretch: Stretch): { readonly from: PointName; readonly to: PointName } => ({
  from: edgeAt(piece, invariant(stretch[0], "stretch")).from,
  to: edgeAt(piece, invariant(stretch.at(-1), "stretch")).to,
});

/** The place so far along a stretch; its ends where that is before or beyond it. */
export function placeAlong(piece: Piece, stretch: Stretch, length: Mm): RingPlace {
  let left = length;
  for (const [i, index] of stretch.entries()) {
    const curve = curveOf(piece, edgeAt(piece, index));
    const own = edgeLength(curve);
    if (left <= own || i === stretch.length - 1) return { index, t: edgeParameterAtLength(curve, left) };
    left -= own;
  }
  return { index: invariant(stretch[0], "stretch"), t: 0 };
}

/** The place at a parameter of a stretch of one edge; at that share of the length of one of several. */
export const placeAt = (piece: Piece, stretch: Stretch, t: number): RingPlace =>
  stretch.length === 1
    ? { index: invariant(stretch[0], "stretch"), t }
    : placeAlong(piece, stretch, t * stretchLength(piece, stretch));

/** A cubic's share of what moves its end. */
const smooth = (share: number): number => share * share * (3 - 2 * share);

/** Where a point of a stretch goes; `share` of the stretch's length lies behind it. */
type Field = (point: PiecePoint, share: number) => PiecePoint;

/**
 * The stretch with every point and handle moved by a field. Straight edges between corners stay straight.
 *
 * @param bent index of an edge that follows the field even so
 */
export function bendStretch(piece: Piece, stretch: Stretch, field: Field, bent?: number): Piece {
  const whole = stretchLength(piece, stretch);
  const points: Partial<Record<PointName, NamedPoint>> = { ...piece.points };
  let { edges } = piece;
  let gone = 0;
  for (const index of stretch) {
    const edge = edgeAt(piece, index);
    const [a, b] = [pointOf(piece, edge.from), pointOf(piece, edge.to)];
    const share = gone / whole;
    gone += lengthAt(piece, index);
    const shareAtEnd = gone / whole;
    const [from, to] = [field(a, share), field(b, shareAtEnd)];
    points[edge.from] = placedAt(invariant(piece.points[edge.from], edge.from), from);
    points[edge.to] = placedAt(invariant(piece.points[edge.to], edge.to), to);
    const isHandled =
      edge.curve !== null || index === bent || isSmoothAt(piece, edge.from) || isSmoothAt(piece, edge.to);
    if (!isHandled) continue;
    const { c1, c2 } = edge.curve ?? { c1: between(a, b, 1 / 3), c2: between(a, b, 2 / 3) };
    const carried = (end: PiecePoint, endNow: PiecePoint, at: number, handle: PiecePoint, way: 1 | -1): PiecePoint => {
      const near = between(end, handle, HANDLE_STEP);
      const next = field(near, at + (way * HANDLE_STEP * distance(end, handle)) / whole);
      return piecePoint(endNow.x + (next.x - endNow.x) / HANDLE_STEP, endNow.y + (next.y - endNow.y) / HANDLE_STEP);
    };
    const curve = { c1: carried(a, from, share, c1, 1), c2: carried(b, to, shareAtEnd, c2, -1) };
    const isStraight =
      edge.curve === null &&
      [between(from, to, 1 / 3), between(from, to, 2 / 3)].every(
        (third, i) => distance(third, i === 0 ? curve.c1 : curve.c2) < STRAIGHT_SEAM,
      );
    if (!isStraight) edges = edges.with(index, withCurve(edge, curve));
  }
  return redrawn(piece, points, edges);
}

/** Whether the line runs straight on over a bend. */
const isSmoothAt = (piece: Piece, bend: PointName): boolean =>
  isBend(bend) && Math.abs(turnAtBend(piece, bend)) < SMOOTH_BEND;

/** How far the line turns at a bend. */
function turnAtBend(piece: Piece, bend: PointName): Radians {
  const at = pointOf(piece, bend);
  const [into, outOf] = [edgeAt(piece, edgeTo(piece, bend)), edgeAt(piece, edgeFrom(piece, bend))];
  const arriving = directionOf(into.curve?.c2 ?? pointOf(piece, into.from), at);
  const leaving = directionOf(at, outOf.curve?.c1 ?? pointOf(piece, outOf.to));
  return turnBetween(arriving, leaving);
}

/** One end of a stretch moved; the other stays, and the directions at both. */
export function withEndMoved(piece: Piece, stretch: Stretch, end: "start" | "end", to: PiecePoint): Piece {
  const { from, to: last } = endsOf(piece, stretch);
  const at = pointOf(piece, end === "start" ? from : last);
  return bendStretch(piece, stretch, (point, share) => {
    const by = smooth(end === "start" ? 1 - share : share);
    return shift(point, (to.x - at.x) * by, (to.y - at.y) * by);
  });
}

/** The direction at one end of a stretch turned; both its ends stay, and the direction at the other. */
export function withEndTurned(piece: Piece, stretch: Stretch, end: "start" | "end", turn: Radians): Piece {
  if (turn === 0) return piece;
  const whole = stretchLength(piece, stretch);
  const { from, to } = endsOf(piece, stretch);
  const corner = pointOf(piece, end === "start" ? from : to);
  const last = invariant(end === "start" ? stretch[0] : stretch.at(-1), "edge");
  const edge = edgeAt(piece, last);
  const handle =
    end === "start" ? (edge.curve?.c1 ?? pointOf(piece, edge.to)) : (edge.curve?.c2 ?? pointOf(piece, edge.from));
  const turned = rotateAbout(handle, corner, turn);
  const long = distance(corner, handle);
  const field: Field = (point, share) => {
    const u = end === "start" ? share : 1 - share;
    const by = long === 0 ? 0 : (whole * u * (1 - u) * (1 - u)) / long;
    return shift(point, (turned.x - handle.x) * by, (turned.y - handle.y) * by);
  };
  return bendStretch(piece, stretch, field, last);
}

/** What lies beyond one end moved rigidly, and the stretch drawn on to it: nothing of it at the other end. */
export const withEndCarried = (piece: Piece, stretch: Stretch, end: "start" | "end", motion: Rigid<"piece">): Piece =>
  bendStretch(piece, stretch, (point, share) =>
    between(point, moveRigidly(motion, point), smooth(end === "start" ? 1 - share : share)),
  );

/** Drawn fuller (above 1) or flatter against the straight between its ends; ends and the directions there stay. */
export function withFullness(piece: Piece, stretch: Stretch, scale: number): Piece {
  if (scale === 1) return piece;
  const { from, to } = endsOf(piece, stretch);
  const [a, b] = [pointOf(piece, from), pointOf(piece, to)];
  const long = distance(a, b);
  if (long === 0) return piece;
  const [ux, uy] = [(b.x - a.x) / long, (b.y - a.y) / long];
  return bendStretch(piece, stretch, (point, share) => {
    const off = (point.x - a.x) * -uy + (point.y - a.y) * ux;
    const by = (scale - 1) * 4 * share * (1 - share) * off;
    return shift(point, -uy * by, ux * by);
  });
}

/** The piece without the bends within a part of a stretch that has gone. */
export function withoutPoints(piece: Piece, names: readonly PointName[]): Piece {
  return redrawn(piece, withoutPoint(piece.points, names), piece.edges);
}
