/**
 * Darts on one size of a piece: cut out of its outline as a V, or drawn inside as two legs from a seam to one end. The mouth is
 * made one straight edge, whatever the line did there.
 */
import { boundsOfPoints, type Bounds } from "../geometry/bounds";
import { edgeIntersections, edgeLength, edgePart, lineEdge, type EdgeCurve } from "../geometry/edgeCurve";
import { angleAt, between, distance, midpoint, type PiecePoint } from "../geometry/point";
import { invariant } from "../result";
import { LEG_MEETS_LINE, LEGS_MEET } from "../tolerance";
import { degreesFrom, type Mm } from "../units";
import {
  isSmooth,
  jointsOf,
  nearestOn,
  partOn,
  pointOn,
  tracedRing,
  turnAt,
  wayFrom,
  type Chain,
  type TracedRing,
} from "./tracedRing";

export interface TracedDart {
  /** Where its mouth begins and ends, the way of the ring; mm round it. */
  readonly first: Mm;
  readonly second: Mm;
  readonly apex: PiecePoint;
  readonly by: "her" | "outline" | "inner lines";
}

/** A dart, as drawn: narrower or wider, shorter, or with legs that differ by more, it is something else. */
const NARROWEST = 2;
const WIDEST = 75;
const SHORTEST: Mm = 20;
const LEGS_ALIKE = 0.75;
/** Cut out of an outline, an end turns back by more than this; degrees. */
const TURNS_BACK = -100;
/** How straight a leg is: its chord as a share of its length. */
const STRAIGHT_LEG = 0.97;

const isLeg = (chain: Chain, from: PiecePoint, to: PiecePoint): boolean =>
  distance(from, to) > STRAIGHT_LEG * chain.reduce((sum, edge) => sum + edgeLength(edge), 0);

const areLegs = (one: Mm, other: Mm): boolean =>
  Math.min(one, other) > SHORTEST && Math.min(one, other) > LEGS_ALIKE * Math.max(one, other);

const isDartAngle = (apex: PiecePoint, a: PiecePoint, b: PiecePoint): boolean => {
  const angle = degreesFrom(angleAt(apex, a, b));
  return angle > NARROWEST && angle < WIDEST;
};

/** Darts cut into the outline: it runs to the end of the dart and back. */
export function cutDarts(ring: TracedRing): readonly TracedDart[] {
  const joints = jointsOf(ring).filter((joint) => !joint.smooth);
  return joints.flatMap((joint, index): TracedDart[] => {
    if (joint.turn > TURNS_BACK || joints.length < 4) return [];
    const before = invariant(joints.at(index - 1), "joint");
    const after = invariant(joints[(index + 1) % joints.length], "joint");
    const [a, apex, b] = [pointOn(ring, before.s), pointOn(ring, joint.s), pointOn(ring, after.s)];
    const isDart =
      before.turn > 0 &&
      after.turn > 0 &&
      areLegs(distance(a, apex), distance(apex, b)) &&
      isDartAngle(apex, a, b) &&
      isLeg(partOn(ring, before.s, joint.s), a, apex) &&
      isLeg(partOn(ring, joint.s, after.s), apex, b);
    return isDart ? [{ first: before.s, second: after.s, apex, by: "outline" }] : [];
  });
}

const isFarOff = ({ min, max }: Bounds<"piece">, { x, y }: PiecePoint, by: Mm): boolean =>
  x < min.x - by || y < min.y - by || x > max.x + by || y > max.y + by;

interface Leg {
  readonly a: PiecePoint;
  readonly b: PiecePoint;
}

/** Straight stretches of the lines inside, cut where they turn. */
function legsIn(inner: readonly Chain[]): readonly Leg[] {
  return inner.flatMap((chain) => {
    const runs: EdgeCurve<"piece">[][] = [];
    for (const edge of chain) {
      const run = runs.at(-1);
      const last = run?.at(-1);
      if (run !== undefined && last !== undefined && isSmooth(last, edge, turnAt(last, edge))) run.push(edge);
      else runs.push([edge]);
    }
    return runs.flatMap((run): Leg[] => {
      const [a, b] = [invariant(run[0], "edge").a, invariant(run.at(-1), "edge").b];
      return distance(a, b) > SHORTEST && isLeg(run, a, b) ? [{ a, b }] : [];
    });
  });
}

/**
 * Darts drawn inside: two straight legs that meet in one point and end at the line.
 *
 * @param reach how far from the line their mouth ends may stop: an allowance, where it is the cutting line; mm
 */
export function drawnDarts(ring: TracedRing, inner: readonly Chain[], reach: Mm): readonly TracedDart[] {
  const box = boundsOfPoints(ring.edges.flatMap(({ a, curve }) => (curve === null ? [a] : [a, curve.c1, curve.c2])));
  const legs = legsIn(inner)
    .slice(0, MOST_LEGS)
    .flatMap((leg): { end: PiecePoint; mouth: PiecePoint; on: Mm }[] =>
      [leg, { a: leg.b, b: leg.a }].flatMap(({ a: end, b: mouth }) => {
        if (isFarOff(box, mouth, reach + LEG_MEETS_LINE)) return [];
        const near = nearestOn(ring, mouth);
        const isInside = nearestOn(ring, end).distance > near.distance + SHORTEST / 2;
        if (near.distance > reach + LEG_MEETS_LINE || !isInside) return [];
        return [{ end, mouth, on: reach > 0 ? (continuedTo(ring, end, mouth, near.s) ?? near.s) : near.s }];
      }),
    );
  const pairs: (TracedDart & { readonly width: Mm })[] = [];
  for (const [index, one] of legs.entries()) {
    for (const other of legs.slice(index + 1)) {
      if (distance(one.end, other.end) > LEGS_MEET) continue;
      const apex = midpoint(one.end, other.end);
      if (!areLegs(distance(apex, one.mouth), distance(apex, other.mouth))) continue;
      if (!isDartAngle(apex, one.mouth, other.mouth)) continue;
      const isAhead = wayFrom(ring, one.on, other.on) < ring.length / 2;
      const [first, second] = isAhead ? [one.on, other.on] : [other.on, one.on];
      pairs.push({ first, second, apex, by: "inner lines", width: distance(one.mouth, other.mouth) });
    }
  }
  // Of several from one end, as where the fold is drawn too, the widest is the dart.
  const kept: (TracedDart & { readonly width: Mm })[] = [];
  for (const pair of pairs.toSorted((p, q) => q.width - p.width))
    if (kept.every(({ apex }) => distance(apex, pair.apex) > LEGS_MEET)) kept.push(pair);
  return kept.map(({ first, second, apex, by }) => ({ first, second, apex, by }));
}

/** Where a leg, continued beyond its mouth end, comes to the line: of several places the one nearest to the end. */
function continuedTo(ring: TracedRing, end: PiecePoint, mouth: PiecePoint, near: Mm): Mm | null {
  const line = lineEdge(mouth, between(mouth, end, -CONTINUED / distance(mouth, end)));
  let best: { readonly s: Mm; readonly off: Mm } | null = null;
  for (const [index, edge] of ring.edges.entries()) {
    for (const { t1, point } of edgeIntersections(edge, line)) {
      const off = distance(mouth, point);
      if (best !== null && off >= best.off) continue;
      const along = t1 === 0 ? 0 : edgeLength(edgePart(edge, 0, t1));
      best = { s: (invariant(ring.starts[index], "start") + along) % ring.length, off };
    }
  }
  const isNear = best !== null && Math.min(wayFrom(ring, best.s, near), wayFrom(ring, near, best.s)) < CONTINUED;
  return isNear && best !== null ? best.s : null;
}
const CONTINUED: Mm = 80;
/** More straight lines than this inside a piece are hatching. */
const MOST_LEGS = 400;

/** The same darts, none twice: those that lie over others were found both ways. */
export function withoutDoubles(ring: TracedRing, darts: readonly TracedDart[]): readonly TracedDart[] {
  const kept: TracedDart[] = [];
  for (const dart of darts) {
    const middle = wayFrom(ring, dart.first, dart.second) / 2 + dart.first;
    const isOver = kept.some(
      (one) =>
        wayFrom(ring, one.first, middle) <= wayFrom(ring, one.first, one.second) ||
        wayFrom(ring, dart.first, one.first) < wayFrom(ring, dart.first, dart.second),
    );
    if (!isOver) kept.push(dart);
  }
  return kept.toSorted((p, q) => p.first - q.first);
}

export interface Mouth {
  readonly first: Mm;
  readonly second: Mm;
  readonly apex: PiecePoint;
  readonly by: TracedDart["by"];
}

/** The ring with a straight edge across the mouth of each dart, and where those lie on it. */
export function withMouths(
  ring: TracedRing,
  darts: readonly TracedDart[],
): { readonly ring: TracedRing; readonly mouths: readonly Mouth[] } {
  if (darts.length === 0) return { ring, mouths: [] };
  const sorted = darts.toSorted((p, q) => p.first - q.first);
  const edges: EdgeCurve<"piece">[] = [];
  const at: { index: number; dart: TracedDart }[] = [];
  for (const [index, dart] of sorted.entries()) {
    const next = invariant(sorted[(index + 1) % sorted.length], "dart");
    const [a, b] = [pointOn(ring, dart.first), pointOn(ring, dart.second)];
    at.push({ index: edges.length, dart });
    edges.push(lineEdge(a, b));
    for (const edge of partOn(ring, dart.second, next.first)) edges.push(edge);
  }
  const made = tracedRing(edges, ring.off);
  // The ring was one that goes the right way, and stays so; no edge of it is without length.
  return {
    ring: made,
    mouths: at.map(({ index, dart }): Mouth => {
      const first = invariant(made.starts[index], "mouth");
      return { first, second: made.starts[index + 1] ?? made.length, apex: dart.apex, by: dart.by };
    }),
  };
}
