/**
 * The cutting line: each seam's own allowance outside the stitch line, corners as they are sewn. Curves are taken as many
 * straight stretches, never more than `CUTTING_ACCURACY` off.
 */
import { Clipper, FillRule, type PathD } from "clipper2-ts";
import { edgeTangentAt } from "../geometry/edgeCurve";
import { directionOf, distance, piecePoint, polar, turnBetween, type PiecePoint } from "../geometry/point";
import { reflectInLine } from "../geometry/segment";
import { invariant } from "../result";
import { CUTTING_ACCURACY, CUTTING_CORNER_DEGREES } from "../tolerance";
import { degreesFrom, radians, type Mm, type Radians } from "../units";
import { foldedFirst } from "./corners";
import {
  backwards,
  beside,
  meet,
  meetLine,
  meetLines,
  meetSegment,
  offChord,
  parallelOf,
  shorten,
  type Ray,
} from "./parallels";
import type { Stretch } from "./cutStretch";

/** A point of a closed ring of straight stretches: a corner, or one of the points that stand for a curve. */
export interface RingPoint {
  readonly at: PiecePoint;
  readonly corner: boolean;
}

/** A corner nearer than this to straight has no folded end worth shaping, mm and radians. */
const HARDLY_A_CORNER: Radians = radians(Math.PI / 9);
/** The furthest that a corner may reach out, in allowances: beyond it an acute end is cut off square. */
const FURTHEST = 2.5;
/** On a fold, in allowances: a line that leaves it at three degrees still meets it. */
const FURTHEST_ON_FOLD = 20;
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
  const pairs = stretches.map((one, index) => {
    const next = (index + 1) % stretches.length;
    return { one, other: invariant(stretches[next], "stretch"), index, next };
  });
  const corners = new Map<number, readonly PiecePoint[]>();
  // Corners at the fold first: nothing may lie beyond it, and what a corner at a seam's other end takes off may be all of a line.
  const onFold = pairs.filter(({ one, other }) => one.fold !== other.fold);
  for (const { one, other, index, next } of new Set([...onFold, ...pairs]))
    corners.set(
      index,
      cornerBetween(one, other, invariant(parallels[index], "parallel"), invariant(parallels[next], "parallel")),
    );
  const raw = parallels.flatMap((points, index) => [...points, ...invariant(corners.get(index), "corner")]);
  return withCorners(outerOf(raw));
}

/** What lies between the end of one parallel and the start of the next; both are shortened where the corner takes off them. */
function cornerBetween(one: Stretch, other: Stretch, before: PiecePoint[], after: PiecePoint[]): PiecePoint[] {
  const at = one.curve.b;
  const [wayIn, wayOut] = [edgeTangentAt(one.curve, 1), edgeTangentAt(other.curve, 0)];
  const turn = turnBetween(wayIn, wayOut);
  if (one.allowance === 0 && other.allowance === 0) return [];
  // Out of the way by way of the corner itself: the union then keeps where the two parallels cross, or the step between them.
  if (turn <= 0) return [at];
  const ends: Ends = {
    one: { from: beside(at, wayIn, one.allowance), way: wayIn },
    other: { from: beside(at, wayOut, other.allowance), way: wayOut },
  };
  // Along a fold the cloth goes on: however steep a neckline leaves it, the two meet on the fold.
  const reach = (one.fold === other.fold ? FURTHEST : FURTHEST_ON_FOLD) * Math.max(one.allowance, other.allowance);
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
    (turn < Math.PI / 2 ? stepped(ends, at) : null) ??
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
  const back = backwards(ends.other.way);
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

/** A step square to the wider of two lines, where a slight turn would have the narrower one come out on it too far off. */
function stepped({ one, other }: Ends, at: PiecePoint): PiecePoint[] | null {
  const step =
    meetSegment(one, at, other.from) ?? meetSegment({ from: other.from, way: backwards(other.way) }, at, one.from);
  return step === null ? null : [step];
}

/** Each parallel continued by its allowance, and straight across. */
const squared = ({ one, other }: Ends, oneBy: Mm, otherBy: Mm): PiecePoint[] => [
  polar(one.from, one.way, oneBy),
  polar(other.from, backwards(other.way), otherBy),
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
  const seam: Ray = { from: at, way: oneFolded ? wayIn : backwards(wayOut) };
  const turnedUp = meetLine(seam, over, oneFolded ? backwards(wayOut) : wayIn);
  if (turnedUp === null || distance(at, turnedUp.at) > reach) return null;
  const ahead = oneFolded ? wayOut : backwards(wayIn);
  const beyond = polar(over.at(-1) ?? turnedUp.at, ahead, reach);
  const back = [...over.slice(turnedUp.index), beyond].map((p) => reflectInLine(p, at, polar(at, seam.way, 1)));
  const end = meetLines([turnedUp.at, ...back], under, seam.way);
  if (end === null || distance(at, end.at) > reach) return null;
  shorten(oneFolded ? after : before, turnedUp.index, oneFolded);
  shorten(oneFolded ? before : after, end.index, !oneFolded);
  const corner = [turnedUp.at, ...back.slice(0, end.along), end.at];
  return oneFolded ? corner.toReversed() : corner;
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
