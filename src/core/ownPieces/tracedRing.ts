/** A closed outline as a ring that is walked by its length: places on it are told by how far round they lie, mm. */
import {
  edgeFlatten,
  edgeLength,
  edgeNearest,
  edgeParameterAtLength,
  edgePart,
  edgePointAt,
  edgeReverse,
  edgeTangentAt,
  type EdgeCurve,
} from "../geometry/edgeCurve";
import { signedArea } from "../geometry/outline";
import { distance, turnBetween, type PiecePoint } from "../geometry/point";
import { segmentNearest } from "../geometry/segment";
import { invariant } from "../result";
import {
  FOLLOWED_CORNER_DEGREES,
  FOLLOWED_SAGITTA,
  FOLLOWED_TURN_DEGREES,
  LONG_TURN_DEGREES,
  SAME_POINT,
  STRETCHES_STAND_FOR,
} from "../tolerance";
import { degreesFrom, type Mm } from "../units";

export type Chain = readonly EdgeCurve<"piece">[];

export interface TracedRing {
  readonly edges: Chain;
  /** How far round each edge begins; mm. */
  readonly starts: readonly Mm[];
  readonly length: Mm;
  /** Furthest that it leaves what is drawn, where that was straight stretches in the place of curves; mm. */
  readonly off: Mm;
}

/** Where two edges meet. */
export interface Joint {
  /** How far round, mm. */
  readonly s: Mm;
  /** Index of the edge that begins there. */
  readonly edge: number;
  /** Turn of the way, degrees: positive to the right of it. */
  readonly turn: number;
  /** No corner of the piece: where a curve was drawn in straight stretches, or in several curves. */
  readonly smooth: boolean;
}

/** The ring of a closed chain that goes +x towards +y; one that goes the other way is read backwards. Edges without length go. */
export function tracedRing(edges: Chain, off: Mm = 0): TracedRing {
  const kept = edges.filter((edge) => distance(edge.a, edge.b) > SAME_POINT || edgeLength(edge) > SAME_POINT);
  const along = signedArea(kept) >= 0 ? kept : kept.map((edge) => edgeReverse(edge)).toReversed();
  const joined = along.map((edge, index) => ({ ...edge, b: invariant(along[(index + 1) % along.length], "edge").a }));
  const starts: Mm[] = [];
  let length: Mm = 0;
  for (const edge of joined) {
    starts.push(length);
    length += edgeLength(edge);
  }
  return { edges: joined, starts, length, off };
}

/** A place within one turn of the ring. */
export const wrapped = (ring: TracedRing, s: Mm): Mm => ((s % ring.length) + ring.length) % ring.length;

/** How far it is from one place on to another, the way of the ring; mm. */
export const wayFrom = (ring: TracedRing, from: Mm, to: Mm): Mm => wrapped(ring, to - from);

/** More edges than can be halved so often no line has. */
const MOST_HALVINGS = 40;

/** Of values in their order the place of the last one that is no greater; 0 where all are. */
export function lastUpTo(values: readonly Mm[], most: Mm): number {
  let [low, high] = [0, values.length - 1];
  for (let halving = 0; halving < MOST_HALVINGS && low < high; halving += 1) {
    const middle = Math.ceil((low + high) / 2);
    if (invariant(values[middle], "value") <= most) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The edge that holds a place, by index, and how far along it lies. */
function edgeAt(ring: TracedRing, s: Mm): { readonly index: number; readonly along: Mm } {
  const at = wrapped(ring, s);
  const low = lastUpTo(ring.starts, at);
  const along = at - invariant(ring.starts[low], "start");
  const whole = (ring.starts[low + 1] ?? ring.length) - invariant(ring.starts[low], "start");
  // The end of an edge is the start of the next.
  return whole - along < SAME_POINT ? { index: (low + 1) % ring.edges.length, along: 0 } : { index: low, along };
}

export function pointOn(ring: TracedRing, s: Mm): PiecePoint {
  const { index, along } = edgeAt(ring, s);
  const edge = invariant(ring.edges[index], "edge");
  return along < SAME_POINT ? edge.a : edgePointAt(edge, edgeParameterAtLength(edge, along));
}

/** The edges from one place on to another; whole edges as they are. */
export function partOn(ring: TracedRing, from: Mm, to: Mm): EdgeCurve<"piece">[] {
  const [first, last] = [edgeAt(ring, from), edgeAt(ring, to)];
  const found: EdgeCurve<"piece">[] = [];
  const count = ring.edges.length;
  const span = wayFrom(ring, from, to);
  let index = first.index;
  let start = first.along;
  for (let step = 0; step <= count; step += 1) {
    const edge = invariant(ring.edges[index], "edge");
    const isLast = index === last.index && last.along >= start && (step > 0 || span < ring.length / 2 || count === 1);
    if (isLast) {
      if (last.along > start + SAME_POINT) found.push(cutOut(edge, start, last.along));
      break;
    }
    found.push(start < SAME_POINT ? edge : cutOut(edge, start, null));
    index = (index + 1) % count;
    start = 0;
  }
  return found;
}

function cutOut(edge: EdgeCurve<"piece">, from: Mm, to: Mm | null): EdgeCurve<"piece"> {
  const t0 = from < SAME_POINT ? 0 : edgeParameterAtLength(edge, from);
  const t1 = to === null ? 1 : edgeParameterAtLength(edge, to);
  return t0 === 0 && t1 === 1 ? edge : edgePart(edge, t0, t1);
}

/** The place of the ring nearest to a point. */
export function nearestOn(ring: TracedRing, p: PiecePoint): { readonly s: Mm; readonly distance: Mm } {
  let best = { index: 0, t: 0, distance: Infinity };
  for (const [index, edge] of ring.edges.entries()) {
    // Of curves the straight way between ends and controls is no nearer than what is worth looking at.
    if (edge.curve !== null && hullAway(edge, p) > best.distance) continue;
    const near = edge.curve === null ? segmentNearest(edge.a, edge.b, p) : edgeNearest(edge, p);
    if (near.distance < best.distance) best = { index, t: near.t, distance: near.distance };
  }
  const { index, t } = best;
  const edge = invariant(ring.edges[index], "edge");
  const along = t === 0 ? 0 : edgeLength(t === 1 ? edge : edgePart(edge, 0, t));
  return { s: wrapped(ring, invariant(ring.starts[index], "start") + along), distance: best.distance };
}

function hullAway({ a, b, curve }: EdgeCurve<"piece">, p: PiecePoint): Mm {
  const { c1, c2 } = curve ?? { c1: a, c2: b };
  const dx = Math.max(Math.min(a.x, b.x, c1.x, c2.x) - p.x, p.x - Math.max(a.x, b.x, c1.x, c2.x), 0);
  const dy = Math.max(Math.min(a.y, b.y, c1.y, c2.y) - p.y, p.y - Math.max(a.y, b.y, c1.y, c2.y), 0);
  return Math.hypot(dx, dy);
}

/**
 * Whether two edges that follow one another go on as one line would: curves, where the way hardly turns; straight stretches,
 * where they stand for a curve, which they leave by no more than FOLLOWED_SAGITTA.
 */
export function isSmooth(one: EdgeCurve<"piece">, other: EdgeCurve<"piece">, turn: number): boolean {
  const by = Math.abs(turn);
  if (one.curve !== null || other.curve !== null) return by <= FOLLOWED_TURN_DEGREES;
  const chord = Math.min(distance(one.a, one.b), distance(other.a, other.b));
  const sagitta = sagittaOf(chord, by);
  if (sagitta <= STRAIGHT_ON) return true;
  if (by <= LONG_TURN_DEGREES && sagitta <= STRETCHES_STAND_FOR) return true;
  return by <= FOLLOWED_CORNER_DEGREES && chord <= LONGEST_STEP && sagitta <= FOLLOWED_SAGITTA;
}
/** Longer stretches stand for no curve; and what turns so little that it leaves its straight way by no more goes on; mm. */
const LONGEST_STEP: Mm = 30;
const STRAIGHT_ON: Mm = FOLLOWED_SAGITTA / 50;

/** How far the middle of an arc that turns by some degrees from one stretch to the next lies off such a stretch; mm. */
const sagittaOf = (chord: Mm, turn: number): Mm => (chord * Math.abs(turn) * Math.PI) / 180 / 8;

export const turnAt = (one: EdgeCurve<"piece">, other: EdgeCurve<"piece">): number =>
  degreesFrom(turnBetween(edgeTangentAt(one, 1), edgeTangentAt(other, 0)));

/** All places where edges meet, in order round the ring. */
export function jointsOf(ring: TracedRing): readonly Joint[] {
  return ring.edges.map((edge, index): Joint => {
    const before = invariant(ring.edges.at(index - 1), "edge");
    const turn = turnAt(before, edge);
    return { s: invariant(ring.starts[index], "start"), edge: index, turn, smooth: isSmooth(before, edge, turn) };
  });
}

/** The ring as straight stretches, each point with how far round it lies. */
export function flattened(ring: TracedRing, tolerance: Mm): { readonly points: PiecePoint[]; readonly s: Mm[] } {
  const points: PiecePoint[] = [];
  const s: Mm[] = [];
  for (const [index, edge] of ring.edges.entries()) {
    const start = invariant(ring.starts[index], "start");
    const flat = edgeFlatten(edge, tolerance);
    const whole = (ring.starts[index + 1] ?? ring.length) - start;
    let along = 0;
    let chords = 0;
    for (let i = 1; i < flat.length; i += 1)
      chords += distance(invariant(flat[i - 1], "point"), invariant(flat[i], "point"));
    for (let i = 0; i + 1 < flat.length; i += 1) {
      points.push(invariant(flat[i], "point"));
      s.push(start + (chords === 0 ? 0 : (along / chords) * whole));
      along += distance(invariant(flat[i], "point"), invariant(flat[i + 1], "point"));
    }
  }
  return { points, s };
}
