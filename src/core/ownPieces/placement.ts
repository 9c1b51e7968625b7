/** From the sheet into the frame of a piece: turned by quarters, turned over, set upright, its centre line at 0. */
import { edgeMap, lineEdge, type EdgeCurve } from "../geometry/edgeCurve";
import { piecePoint, sheetPoint, type PiecePoint, type SheetPoint } from "../geometry/point";
import { signedArea } from "../geometry/outline";
import { invariant } from "../result";
import { MIRRORED_WITHIN, SAME_POINT } from "../tolerance";
import type { Mm } from "../units";
import {
  flattened,
  jointsOf,
  nearestOn,
  partOn,
  pointOn,
  tracedRing,
  wayFrom,
  type Chain,
  type TracedRing,
} from "./tracedRing";

export type Turns = 0 | 1 | 2 | 3;
export const TURNS: readonly Turns[] = [0, 1, 2, 3];

export interface Placement {
  /** Quarter turns by the clock, then turned over, then set upright by an angle, then moved. */
  readonly turns: Turns;
  readonly turnedOver: boolean;
  readonly tilt: number;
  readonly dx: Mm;
  readonly dy: Mm;
}

const QUARTERS = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

const turned = (x: number, y: number, cosine: number, sine: number): readonly [number, number] => [
  x * cosine - y * sine,
  x * sine + y * cosine,
];

/** A tilt of none leaves every digit as it is. */
export const tiltBy = (x: number, y: number, tilt: number): readonly [number, number] =>
  tilt === 0 ? [x, y] : turned(x, y, Math.cos(tilt), Math.sin(tilt));

export function intoPiece({ turns, turnedOver, tilt, dx, dy }: Placement, { x, y }: SheetPoint): PiecePoint {
  const [cosine, sine] = QUARTERS[turns];
  const [u, v] = turned(x, y, cosine, sine);
  const [p, q] = tiltBy(turnedOver ? -u : u, v, tilt);
  return piecePoint(p + dx, q + dy);
}

export function ontoSheet({ turns, turnedOver, tilt, dx, dy }: Placement, { x, y }: PiecePoint): SheetPoint {
  const [u, v] = tiltBy(x - dx, y - dy, -tilt);
  const [cosine, sine] = QUARTERS[turns];
  const [p, q] = turned(turnedOver ? -u : u, v, cosine, -sine);
  return sheetPoint(p, q);
}

/** Placed further: upright and moved, on top of what there is. */
export const placedBy = (place: Placement, tilt: number, dx: Mm, dy: Mm): Placement => {
  const [x, y] = tiltBy(place.dx, place.dy, tilt);
  return { ...place, tilt: place.tilt + tilt, dx: x + dx, dy: y + dy };
};

export const chainInto = (placement: Placement, chain: readonly EdgeCurve<"sheet">[]): Chain =>
  chain.map((edge) => edgeMap(edge, (p) => intoPiece(placement, p)));

const SAMPLES = 160;
const SAMPLED = Array.from({ length: SAMPLES }, (_, index) => index);

/** A line that a piece is the same on both sides of: through a point, in a direction in radians. */
export interface Axis {
  readonly x: Mm;
  readonly y: Mm;
  readonly way: number;
}

/** The line that a whole piece is mirrored in; null where it is no mirror image of itself. */
export function mirrorAxis(ring: TracedRing): Axis | null {
  const { x, y, way } = middleOf(ring);
  // Most pieces are no mirror image at the very first of them.
  const samples: PiecePoint[] = [];
  const sample = (index: number): PiecePoint => (samples[index] ??= pointOn(ring, (ring.length * index) / SAMPLES));
  for (const angle of [Math.PI / 2, 0, way, way + Math.PI / 2]) {
    const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
    const isMirrored = (index: number): boolean => {
      const p = sample(index);
      const [dx, dy] = [p.x - x, p.y - y];
      const along = dx * ux + dy * uy;
      return nearestOn(ring, piecePoint(x + 2 * along * ux - dx, y + 2 * along * uy - dy)).distance < MIRRORED_WITHIN;
    };
    if (SAMPLED.every(isMirrored)) return { x, y, way: angle };
  }
  return null;
}

/** The middle of what a ring goes round, and the way it is longest. */
function middleOf(ring: TracedRing): Axis {
  const { points } = flattened(ring, MIDDLE_WITHIN);
  const first = invariant(points[0], "point");
  let [area, sx, sy, xx, xy, yy] = [0, 0, 0, 0, 0, 0];
  for (const [index, p] of points.entries()) {
    const q = points[(index + 1) % points.length] ?? p;
    const [ax, ay, bx, by] = [p.x - first.x, p.y - first.y, q.x - first.x, q.y - first.y];
    const cross = ax * by - bx * ay;
    area += cross / 2;
    sx += ((ax + bx) * cross) / 6;
    sy += ((ay + by) * cross) / 6;
    xx += ((ax * ax + ax * bx + bx * bx) * cross) / 12;
    yy += ((ay * ay + ay * by + by * by) * cross) / 12;
    xy += ((2 * ax * ay + ax * by + bx * ay + 2 * bx * by) * cross) / 24;
  }
  const [mx, my] = [sx / area, sy / area];
  const way = Math.atan2(2 * (xy / area - mx * my), xx / area - mx * mx - (yy / area - my * my)) / 2;
  return { x: first.x + mx, y: first.y + my, way };
}

const MIDDLE_WITHIN: Mm = 0.05;
/** From a metre to a millionth of a millimetre. */
const MOST_HALVINGS = 40;

/** One half of a whole piece, closed along the line that it is mirrored in; null where that line crosses it more than twice. */
export function halfOf(ring: TracedRing, axis: Axis): TracedRing | null {
  const side = (p: PiecePoint): number => sideOf(axis, p.x, p.y);
  const { points, s } = flattened(ring, MIDDLE_WITHIN);
  const crossings: { readonly at: Mm; readonly rises: boolean }[] = [];
  for (const [index, p] of points.entries()) {
    const next = (index + 1) % points.length;
    const [a, b] = [side(p), side(invariant(points[next], "point"))];
    if (a > 0 === b > 0) continue;
    let [low, high] = [invariant(s[index], "s"), next === 0 ? ring.length : invariant(s[next], "s")];
    for (let halving = 0; halving < MOST_HALVINGS; halving += 1) {
      const middle = (low + high) / 2;
      if (side(pointOn(ring, middle)) > 0 === a > 0) low = middle;
      else high = middle;
    }
    crossings.push({ at: nearJoint(ring, (low + high) / 2), rises: b > 0 });
  }
  const [up, down] = [crossings.find(({ rises }) => rises), crossings.find(({ rises }) => !rises)];
  if (crossings.length !== 2 || up === undefined || down === undefined) return null;
  const part = partOn(ring, up.at, down.at);
  const [first, last] = [part[0], part.at(-1)];
  if (first === undefined || last === undefined) return null;
  const half = [...part, lineEdge(last.b, first.a)];
  return signedArea(half) === 0 ? null : tracedRing(half, ring.off);
}

/** The place, or where edges meet right beside it: halvings stop as far before that as places are told apart. */
const nearJoint = (ring: TracedRing, s: Mm): Mm =>
  jointsOf(ring).find((joint) => Math.min(wayFrom(ring, joint.s, s), wayFrom(ring, s, joint.s)) < 2 * SAME_POINT)?.s ??
  s;

/** A place on the half that is kept: one on the other half, as in a mirror. */
export function ontoHalf(axis: Axis | null, x: Mm, y: Mm): readonly [Mm, Mm] {
  if (axis === null) return [x, y];
  const [ux, uy] = [Math.cos(axis.way), Math.sin(axis.way)];
  const [dx, dy] = [x - axis.x, y - axis.y];
  if (sideOf(axis, x, y) >= 0) return [x, y];
  const along = dx * ux + dy * uy;
  return [axis.x + 2 * along * ux - dx, axis.y + 2 * along * uy - dy];
}

/** How far a place lies on the side of the half that is kept; negative on the other, mm. */
export const sideOf = (axis: Axis, x: Mm, y: Mm): Mm =>
  (x - axis.x) * -Math.sin(axis.way) + (y - axis.y) * Math.cos(axis.way);
