/**
 * The cutting line: each seam's own allowance outside the stitch line, corners as they are sewn. Curves are taken as many
 * straight stretches, never more than `CUTTING_ACCURACY` off.
 */
import { Clipper, FillRule, type PathD } from "clipper2-ts";
import { edgePointAt, edgeTangentAt, type EdgeCurve } from "../geometry/edgeCurve";
import { between, directionOf, distance, piecePoint, polar, turnBetween, type PiecePoint } from "../geometry/point";
import { reflectInLine } from "../geometry/segment";
import { invariant } from "../result";
import { CUTTING_ACCURACY, CUTTING_CORNER_DEGREES, LINES_PARALLEL, SAME_POINT } from "../tolerance";
import { degreesFrom, radians, type Mm, type Radians } from "../units";
import { foldedFirst } from "./corners";
import type { Stretch } from "./stretches";
import type { RingPoint } from "./truePiece";

/** A line that starts at a point and goes one way. */
interface Ray {
  readonly from: PiecePoint;
  readonly way: Radians;
}

/** A corner nearer than this to straight has no folded end worth shaping, mm and radians. */
const HARDLY_A_CORNER: Radians = radians(Math.PI / 9);
/** The furthest that a corner may reach out, in allowances: beyond it an acute end is cut off square. */
const FURTHEST = 2.5;
/** Longer than any piece: how far a stretch is continued to look for where it meets another, mm. */
const FAR: Mm = 2000;
/** mm. A point this near the straight way past it says nothing: a hundredth of what a curve may be off. */
const STRAIGHT: Mm = CUTTING_ACCURACY / 100;
/** Digits behind the point to which outlines are joined: a ten-thousandth of a millimetre. */
const DIGITS = 4;

/**
 * The closed cutting line outside a ring of stretches that goes +x towards +y (clockwise on screen).
 *
 * @source a parallel is the curve moved along its own normal; where parallels of two seams would cross, the outer boundary of
 *         what lies within is kept (winding above 0)
 */
export function cuttingLine(stretches: readonly Stretch[]): readonly RingPoint[] {
  const parallels = stretches.map(({ curve, allowance }) => [...parallelOf(curve, allowance)]);
  const corners: PiecePoint[][] = [];
  stretches.forEach((one, index) => {
    const next = (index + 1) % stretches.length;
    const other = invariant(stretches[next], "stretch");
    corners.push(
      cornerBetween(one, other, invariant(parallels[index], "parallel"), invariant(parallels[next], "parallel")),
    );
  });
  const raw = parallels.flatMap((points, index) => [...points, ...invariant(corners[index], "corner")]);
  return withCorners(outerOf(raw));
}

/** Points on the parallel of a curve, dense enough that the straight way from one to the next is near it. */
function parallelOf(curve: EdgeCurve<"piece">, off: Mm): readonly PiecePoint[] {
  const at = (t: number): PiecePoint => beside(edgePointAt(curve, t), edgeTangentAt(curve, t), off);
  if (curve.curve === null) return [at(0), at(1)];
  const points: PiecePoint[] = [at(0)];
  // Halved until the middle of a stretch lies on it, and its quarters too, since an S has its middle on the chord.
  const add = (t0: number, p0: PiecePoint, t1: number, p1: PiecePoint, depth: number): void => {
    const middle = at((t0 + t1) / 2);
    const near = [0.25, 0.5, 0.75].every((s) => offChord(at(t0 + (t1 - t0) * s), p0, p1) < CUTTING_ACCURACY / 2);
    if (depth >= 2 && (near || depth >= 10)) {
      points.push(p1);
      return;
    }
    add(t0, p0, (t0 + t1) / 2, middle, depth + 1);
    add((t0 + t1) / 2, middle, t1, p1, depth + 1);
  };
  add(0, at(0), 1, at(1), 0);
  return points;
}

/** Square outside a line that goes a way, on a ring that goes clockwise on screen. */
const beside = (at: PiecePoint, way: Radians, off: Mm): PiecePoint =>
  off === 0 ? at : polar(at, radians(way - Math.PI / 2), off);

function offChord(p: PiecePoint, a: PiecePoint, b: PiecePoint): Mm {
  const base = distance(a, b);
  return base === 0 ? distance(a, p) : Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / base;
}

/** What lies between the end of one parallel and the start of the next; both are shortened where the corner takes off them. */
function cornerBetween(one: Stretch, other: Stretch, before: PiecePoint[], after: PiecePoint[]): PiecePoint[] {
  const at = one.curve.b;
  const [wayIn, wayOut] = [edgeTangentAt(one.curve, 1), edgeTangentAt(other.curve, 0)];
  const turn = turnBetween(wayIn, wayOut);
  if (one.allowance === 0 && other.allowance === 0) return [];
  // Out of the way by way of the corner itself: the union then keeps where the two parallels cross, or the step between them.
  if (turn <= 0 || (turn < HARDLY_A_CORNER && one.allowance !== other.allowance && one.seam === other.seam))
    return [at];
  const ends: Ends = {
    one: { from: beside(at, wayIn, one.allowance), way: wayIn },
    other: { from: beside(at, wayOut, other.allowance), way: wayOut },
  };
  const reach = FURTHEST * Math.max(one.allowance, other.allowance);
  if (one.tip !== undefined) return peakOf(one, ends.one.from) ?? mitred(ends, at, reach) ?? [];
  const plain =
    one.fold ||
    other.fold ||
    one.cap ||
    other.cap ||
    turn < HARDLY_A_CORNER ||
    one.allowance === 0 ||
    other.allowance === 0;
  const folded = plain ? null : foldedFirst(one.seam, other.seam);
  const lapped =
    folded === null ? null : foldedEnd({ at, oneFolded: one.seam === folded, wayIn, wayOut, before, after, reach });
  return (
    lapped ??
    mitred(ends, at, reach) ??
    overrun({ at, ends, before, after, reach }) ??
    squared(ends, one.allowance, other.allowance)
  );
}

/**
 * The folded end of a dart's cap: the parallel goes on as the seam does until it meets the dart's middle, which it is folded
 * on; what comes from the other side is its mirror image. Null where it does not get so far.
 */
function peakOf({ curve, allowance, tip }: Stretch, from: PiecePoint): PiecePoint[] | null {
  if (tip === undefined) return null;
  const fold: Ray = { from: curve.b, way: directionOf(tip.apex, curve.b) };
  const along = [from, ...tip.beyond.flatMap((edge) => parallelOf(edge, allowance))];
  const last = tip.beyond.at(-1) ?? curve;
  along.push(polar(along.at(-1) ?? from, edgeTangentAt(last, 1), FURTHEST * allowance));
  for (let index = 1; index < along.length; index += 1) {
    const found = meetSegment(fold, invariant(along[index - 1], "point"), invariant(along[index], "point"));
    if (found === null) continue;
    if (distance(curve.b, found) > FURTHEST * allowance) return null;
    const half = along.slice(1, index);
    return [...half, found, ...half.map((p) => reflectInLine(p, tip.apex, curve.b)).toReversed()];
  }
  return null;
}

interface Ends {
  readonly one: Ray;
  readonly other: Ray;
}

/** Both parallels continued to where they meet; null where that is too far out. */
function mitred({ one, other }: Ends, at: PiecePoint, reach: Mm): PiecePoint[] | null {
  const meeting = meet(one, other);
  return meeting === null || distance(at, meeting) > reach ? null : [meeting];
}

/** Of unequal allowances the narrower, continued, can come out on the other's parallel beyond its start: that is shortened. */
function overrun({
  at,
  ends,
  before,
  after,
  reach,
}: {
  readonly at: PiecePoint;
  readonly ends: Ends;
  readonly before: PiecePoint[];
  readonly after: PiecePoint[];
  readonly reach: Mm;
}): PiecePoint[] | null {
  const back = radians(ends.other.way + Math.PI);
  const onOther = meetLine(ends.one, after, back);
  if (onOther !== null && distance(at, onOther.at) <= reach) {
    shorten(after, onOther.index, true);
    return [onOther.at];
  }
  const onOne = meetLine({ from: ends.other.from, way: back }, before.toReversed(), ends.one.way);
  if (onOne === null || distance(at, onOne.at) > reach) return null;
  shorten(before, onOne.index, false);
  return [onOne.at];
}

/** Each parallel continued by its allowance, and straight across. */
const squared = ({ one, other }: Ends, oneBy: Mm, otherBy: Mm): PiecePoint[] => [
  polar(one.from, one.way, oneBy),
  polar(other.from, radians(other.way + Math.PI), otherBy),
];

interface CornerCase {
  readonly at: PiecePoint;
  /** Whether the end of the stretch before the corner is the folded one, or the start of the one after it. */
  readonly oneFolded: boolean;
  readonly wayIn: Radians;
  readonly wayOut: Radians;
  readonly before: PiecePoint[];
  readonly after: PiecePoint[];
  readonly reach: Mm;
}

/**
 * The folded end: the seam first sewn, continued, meets the other's parallel; from there the mirror image of that parallel in
 * the seam goes back to the folded one's own parallel. Null where that cannot be drawn, or reaches too far.
 */
function foldedEnd({ at, oneFolded, wayIn, wayOut, before, after, reach }: CornerCase): PiecePoint[] | null {
  // Seen from the corner: both parallels as lines of points that run away from it.
  const under = oneFolded ? before.toReversed() : after;
  const over = oneFolded ? after : before.toReversed();
  const seam: Ray = { from: at, way: oneFolded ? wayIn : radians(wayOut + Math.PI) };
  const turnedUp = meetLine(seam, over, oneFolded ? radians(wayOut + Math.PI) : wayIn);
  if (turnedUp === null || distance(at, turnedUp.at) > reach) return null;
  const ahead = oneFolded ? wayOut : radians(wayIn + Math.PI);
  const beyond = polar(over.at(-1) ?? turnedUp.at, ahead, reach);
  const back = [...over.slice(turnedUp.index), beyond].map((p) => reflectInLine(p, at, polar(at, seam.way, 1)));
  const end = meetLines([turnedUp.at, ...back], under, seam.way);
  if (end === null || distance(at, end.at) > reach) return null;
  shorten(oneFolded ? after : before, turnedUp.index, oneFolded);
  shorten(oneFolded ? before : after, end.index, !oneFolded);
  const corner = [turnedUp.at, ...back.slice(0, end.along), end.at];
  return oneFolded ? corner.toReversed() : corner;
}

/** Where a line of points first meets another that is continued straight before its first; how many points each has passed. */
function meetLines(
  line: readonly PiecePoint[],
  other: readonly PiecePoint[],
  continued: Radians,
): { readonly at: PiecePoint; readonly index: number; readonly along: number } | null {
  for (let along = 0; along + 1 < line.length; along += 1) {
    const [from, to] = [invariant(line[along], "point"), invariant(line[along + 1], "point")];
    const length = distance(from, to);
    if (length < SAME_POINT) continue;
    const found = meetLine({ from, way: directionOf(from, to) }, other, continued);
    if (found !== null && distance(from, found.at) <= length + SAME_POINT) return { ...found, along };
  }
  return null;
}

/** Takes points off the start (or the end) of a parallel: all that lie before where it is met. */
function shorten(points: PiecePoint[], count: number, atStart: boolean): void {
  if (atStart) points.splice(0, count);
  else if (count > 0) points.splice(points.length - count, count);
}

/** Where a ray meets a line of points that is continued straight before its first; `index` counts the points passed over. */
function meetLine(
  ray: Ray,
  points: readonly PiecePoint[],
  continued: Radians,
): { readonly at: PiecePoint; readonly index: number } | null {
  const first = invariant(points[0], "point");
  let from = polar(first, continued, FAR);
  for (let index = 0; index < points.length; index += 1) {
    const to = invariant(points[index], "point");
    const found = meetSegment(ray, from, to);
    if (found !== null) return { at: found, index };
    from = to;
  }
  return null;
}

function meetSegment(ray: Ray, a: PiecePoint, b: PiecePoint): PiecePoint | null {
  const length = distance(a, b);
  if (length < SAME_POINT) return null;
  const [ux, uy] = [Math.cos(ray.way), Math.sin(ray.way)];
  const [vx, vy] = [b.x - a.x, b.y - a.y];
  const cross = ux * vy - uy * vx;
  if (Math.abs(cross) < LINES_PARALLEL * length) return null;
  const [wx, wy] = [a.x - ray.from.x, a.y - ray.from.y];
  const along = (wx * vy - wy * vx) / cross;
  const share = (wx * uy - wy * ux) / cross;
  const slack = SAME_POINT / length;
  return along > -SAME_POINT && share >= -slack && share <= 1 + slack ? between(a, b, share) : null;
}

/** Where two rays, the second taken backwards, meet; null where they do not. */
function meet(one: Ray, other: Ray): PiecePoint | null {
  const back = radians(other.way + Math.PI);
  return meetSegment(one, other.from, polar(other.from, back, FAR));
}

/** The outer boundary of what a ring of points goes round, loops turned inside out taken away. */
function outerOf(ring: readonly PiecePoint[]): readonly PiecePoint[] {
  const path: PathD = ring.map(({ x, y }) => ({ x, y }));
  const found = Clipper.unionD([path], [], FillRule.Positive, DIGITS);
  let best: PathD = [];
  for (const one of found) if (Clipper.areaD(one) > Clipper.areaD(best)) best = one;
  return withoutIdle(best.map(({ x, y }) => piecePoint(x, y)));
}

const isIdle = (before: PiecePoint | undefined, p: PiecePoint, after: PiecePoint | undefined): boolean =>
  before !== undefined &&
  after !== undefined &&
  (distance(before, p) < STRAIGHT ||
    (offChord(p, before, after) < STRAIGHT && distance(before, after) > distance(before, p)));

/** Without what says nothing: points that are one, and those on the straight way between their neighbours. */
function withoutIdle(points: readonly PiecePoint[]): readonly PiecePoint[] {
  const kept: PiecePoint[] = [];
  points.forEach((p, index) => {
    if (!isIdle(kept.at(-1) ?? points.at(-1), p, points[(index + 1) % points.length])) kept.push(p);
  });
  return kept;
}

function withCorners(points: readonly PiecePoint[]): readonly RingPoint[] {
  return points.map((at, index): RingPoint => {
    const before = invariant(points[(index + points.length - 1) % points.length], "point");
    const after = invariant(points[(index + 1) % points.length], "point");
    const turn = turnBetween(
      radians(Math.atan2(at.y - before.y, at.x - before.x)),
      radians(Math.atan2(after.y - at.y, after.x - at.x)),
    );
    return { at, corner: Math.abs(degreesFrom(turn)) > CUTTING_CORNER_DEGREES };
  });
}
