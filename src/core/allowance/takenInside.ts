/**
 * The stitch line inside a cutting line: each seam's allowance taken off by the same parallels that add it. What a corner of the
 * cutting line adds to its seams, as where it is lapped, is left off: the seams themselves say where they meet.
 */
import { edgeLength, edgeTangentAt, type EdgeCurve } from "../geometry/edgeCurve";
import { directionOf, distance, polar, turnBetween, type PiecePoint } from "../geometry/point";
import { fail, invariant, ok, type Result } from "../result";
import { SAME_POINT, TAKEN_INSIDE_WITHIN } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";
import { meetSegment, parallelOf } from "./parallels";

type Chain = readonly EdgeCurve<"piece">[];

/** What lies between two seams: a corner of the piece, or the mouth of a dart between its legs. */
type BetweenRuns =
  | { readonly kind: "corner" }
  | {
      readonly kind: "mouth";
      readonly apex: PiecePoint;
      /** A point of each leg, in the order of the ring. */
      readonly legs: readonly [PiecePoint, PiecePoint];
    };

/** One seam of the cutting line, up to a corner or a dart. */
export interface CutRun {
  /** Without corners, but those that its ends bring with them. */
  readonly edges: Chain;
  readonly allowance: Mm;
  /** What follows it. */
  readonly next: BetweenRuns;
}

/** How far from its end a seam may have what belongs to its corner, in allowances. */
const REACH = 3.2;
/** A seam keeps at least this share of itself. */
const LEAST_KEPT = 0.4;

/**
 * Each seam's stitch line, in order; each begins where the one before ends, but for the mouths of darts.
 *
 * @param runs     all round a ring that goes +x towards +y
 * @param isCorner whether two edges meet in a corner
 * @returns points from one corner to the next, their straight ways within TAKEN_INSIDE_WITHIN of the line; or the seam, by index,
 *          that its allowance leaves nothing of
 */
export function takenInside(
  runs: readonly CutRun[],
  isCorner: (one: EdgeCurve<"piece">, other: EdgeCurve<"piece">) => boolean,
): Result<readonly (readonly PiecePoint[])[], { readonly run: number }> {
  const count = runs.length;
  const before = (index: number): CutRun => invariant(runs.at(index - 1), "run");
  const after = (index: number): CutRun => invariant(runs[(index + 1) % count], "run");
  const lines = runs.map((run, index) => {
    const ahead = run.next.kind === "corner" ? after(index).allowance : 0;
    const behind = before(index).next.kind === "corner" ? before(index).allowance : 0;
    const edges = withoutCorners(
      run.edges,
      REACH * Math.max(run.allowance, behind),
      REACH * Math.max(run.allowance, ahead),
      isCorner,
    );
    return parallel(edges, run.allowance);
  });
  const starts: (Cut | null)[] = runs.map(() => null);
  const ends: (Cut | null)[] = runs.map(() => null);
  for (const [index, { next: between }] of runs.entries()) {
    const next = (index + 1) % count;
    const [one, other] = [invariant(lines[index], "line"), invariant(lines[next], "line")];
    if (one.length < 2 || other.length < 2) return fail({ run: index });
    const [out, into] = [continued(one.toReversed()), continued(other)];
    if (between.kind === "corner") {
      const met = firstMeeting(out, into);
      if (met === null) return fail({ run: index });
      ends[index] = { at: met.at, passed: met.alongLine - (out.length - one.length - 1) };
      starts[next] = { at: met.at, passed: met.alongOther - (into.length - other.length - 1) };
    } else {
      const [first, second] = between.legs;
      const atFirst = firstMeeting(out, legLine(between.apex, first));
      const atSecond = firstMeeting(into, legLine(between.apex, second));
      if (atFirst === null || atSecond === null) return fail({ run: index });
      ends[index] = { at: atFirst.at, passed: atFirst.alongLine - (out.length - one.length - 1) };
      starts[next] = { at: atSecond.at, passed: atSecond.alongLine - (into.length - other.length - 1) };
    }
  }
  const made = lines.map((line, index) => {
    const [start, end] = [invariant(starts[index], "start"), invariant(ends[index], "end")];
    // Where a line was continued as it bends, what was added of it belongs to it.
    const kept = line.slice(Math.max(0, start.passed), line.length - Math.max(0, end.passed));
    const ahead = start.passed < 0 ? continued(line).slice(start.passed - line.length, -line.length) : [];
    const behind =
      end.passed < 0
        ? continued(line.toReversed())
            .slice(end.passed - line.length, -line.length)
            .toReversed()
        : [];
    return withoutTwins([start.at, ...ahead, ...kept, ...behind, end.at]);
  });
  const gone = made.findIndex((line, index) => !goesOn(line, invariant(lines[index], "line")));
  return gone < 0 ? ok(made) : fail({ run: gone });
}

/** Where a line is cut off, and how many of its points lie beyond that. */
interface Cut {
  readonly at: PiecePoint;
  readonly passed: number;
}

const FAR: Mm = 400;
/** How far a line is continued straight on beyond its end, mm. */
const CONTINUED: Mm = 60;

/** A leg from the dart's end, on beyond the line. */
const legLine = (apex: PiecePoint, through: PiecePoint): readonly PiecePoint[] => [
  apex,
  polar(apex, directionOf(apex, through), distance(apex, through) + FAR),
];

/**
 * A line with a way on before its first point: as it bends there for a little, then straight. A corner that laps takes some of a
 * seam's parallel off, and the seam bent on there.
 */
function continued(line: readonly PiecePoint[]): readonly PiecePoint[] {
  const [first, second] = [invariant(line[0], "point"), invariant(line[1], "point")];
  const way = directionOf(second, first);
  const bend = bendAt(line);
  let at = first;
  // The way at the end itself: the last stretch is a chord, and leans by half of what it bends.
  let heading = way + (bend * distance(first, second)) / 2;
  const more: PiecePoint[] = [];
  const steps = bend === 0 ? 0 : BENT_ON;
  for (let step = 0; step < steps; step += 1) {
    heading += bend / 2;
    at = polar(at, radians(heading), 1);
    heading += bend / 2;
    more.push(at);
  }
  return [polar(at, radians(heading), CONTINUED), ...more.toReversed(), ...line];
}

/** mm. */
const BENT_ON = 10;
const SEEN_FROM: Mm = 4;
/** Bends less than this are straight, 1/mm; and no seam bends more. */
const LEAST_BEND = 1 / 2000;
const MOST_BEND = 1 / 12;

/** How a line bends at its start, going back from there, 1/mm: by the circle through three of its points some millimetres apart. */
function bendAt(line: readonly PiecePoint[]): number {
  const first = invariant(line[0], "point");
  const after = (from: PiecePoint): PiecePoint | undefined =>
    line.slice(line.indexOf(from) + 1).find((p) => distance(from, p) >= SEEN_FROM);
  const second = after(first);
  const third = second === undefined ? undefined : after(second);
  if (second === undefined || third === undefined) return 0;
  // A long straight stretch at the end says that it is straight there.
  if (distance(first, invariant(line[1], "point")) > 2 * SEEN_FROM) return 0;
  const cross = (second.x - third.x) * (first.y - second.y) - (second.y - third.y) * (first.x - second.x);
  const bend = (2 * cross) / (distance(third, second) * distance(second, first) * distance(third, first));
  return Math.abs(bend) < LEAST_BEND || Math.abs(bend) > MOST_BEND ? 0 : bend;
}

interface Met {
  readonly at: PiecePoint;
  /** How many points of each line, continued, lie before it. */
  readonly alongLine: number;
  readonly alongOther: number;
}

/** Where a line of points first meets another. */
function firstMeeting(line: readonly PiecePoint[], other: readonly PiecePoint[]): Met | null {
  for (let i = 0; i + 1 < line.length; i += 1) {
    const [from, to] = [invariant(line[i], "point"), invariant(line[i + 1], "point")];
    const length = distance(from, to);
    if (length < SAME_POINT) continue;
    let best: Met | null = null;
    let least = length + SAME_POINT;
    for (let j = 0; j + 1 < other.length; j += 1) {
      const ray = { from, way: directionOf(from, to) };
      const at = meetSegment(ray, invariant(other[j], "point"), invariant(other[j + 1], "point"));
      if (at === null || distance(from, at) > least) continue;
      least = distance(from, at);
      best = { at, alongLine: i, alongOther: j };
    }
    if (best !== null) return best;
  }
  return null;
}

const withoutTwins = (line: readonly PiecePoint[]): readonly PiecePoint[] =>
  line.filter((p, index) => {
    const before = line[index - 1];
    return before === undefined || distance(before, p) > SAME_POINT;
  });

/** Whether what is left of a line goes the way that it went. */
function goesOn(line: readonly PiecePoint[], was: readonly PiecePoint[]): boolean {
  const [a, b] = [line[0], line.at(-1)];
  const [c, d] = [was[0], was.at(-1)];
  if (line.length < 2 || a === undefined || b === undefined || c === undefined || d === undefined) return false;
  return (b.x - a.x) * (d.x - c.x) + (b.y - a.y) * (d.y - c.y) > 0;
}

/** A point of a parallel, and the way in which the edge that it belongs to ends. */
interface Aimed {
  readonly at: PiecePoint;
  readonly way: Radians;
}

/** The parallel inside, without what would turn back where a curve is tighter than the allowance. */
function parallel(edges: Chain, allowance: Mm): readonly PiecePoint[] {
  const all: Aimed[] = [];
  for (const [index, edge] of edges.entries()) {
    const [way, next] = [edgeTangentAt(edge, 1), edges[index + 1]];
    const line = parallelOf(edge, -allowance, TAKEN_INSIDE_WITHIN);
    // Between two edges the parallels are joined where they would meet, not where each ends.
    const inner = next === undefined ? line : line.slice(0, -1);
    for (const at of index === 0 ? inner : inner.slice(1)) all.push({ at, way });
    if (next === undefined) continue;
    const turn = turnBetween(way, edgeTangentAt(next, 0));
    const square = radians(way + turn / 2 + Math.PI / 2);
    all.push({ at: polar(edge.b, square, allowance / Math.cos(turn / 2)), way });
  }
  const points: PiecePoint[] = [];
  for (const { at, way } of withoutLoops(all, LOOP_REACH * allowance)) {
    const last = points.at(-1);
    if (last === undefined) points.push(at);
    else if (distance(last, at) > SAME_POINT && Math.cos(directionOf(last, at) - way) > -TURNED_BACK) points.push(at);
  }
  return points;
}
const TURNED_BACK = 0.5;
/** Allowances. A loop is no longer where a seam turns by no more than two thirds of the way back (our own choice). */
const LOOP_REACH = 8;

/** Without the loop that a parallel makes round a curve tighter than itself: from where it crosses itself on. */
function withoutLoops(line: readonly Aimed[], most: Mm): readonly Aimed[] {
  const kept: Aimed[] = [];
  let from = 0;
  for (const [index, start] of line.entries()) {
    if (index < from) continue;
    kept.push(start);
    const end = line[index + 1];
    if (end === undefined) continue;
    const met = firstMeeting([start.at, end.at], within(line, index + 2, most));
    if (met === null) continue;
    from = index + 3 + met.alongOther;
    kept.push({ at: met.at, way: invariant(line[from], "point").way });
  }
  return kept;
}

/** The points from one on as far as that, and one more. */
function within(line: readonly Aimed[], from: number, most: Mm): readonly PiecePoint[] {
  const points: PiecePoint[] = [];
  let along: Mm = 0;
  for (let index = from; index < line.length && along <= most; index += 1) {
    const { at } = invariant(line[index], "point");
    along += distance(points.at(-1) ?? at, at);
    points.push(at);
  }
  return points;
}

/** A seam without what its corners added at either end: it ends where it last turned within their reach. */
function withoutCorners(
  edges: Chain,
  reachBehind: Mm,
  reachAhead: Mm,
  isCorner: (one: EdgeCurve<"piece">, other: EdgeCurve<"piece">) => boolean,
): Chain {
  const lengths = edges.map((edge) => edgeLength(edge));
  const whole = lengths.reduce((sum, length) => sum + length, 0);
  let [from, to] = [0, edges.length];
  let along: Mm = 0;
  for (let index = 0; index + 1 < edges.length; index += 1) {
    along += invariant(lengths[index], "length");
    const [one, other] = [invariant(edges[index], "edge"), invariant(edges[index + 1], "edge")];
    if (!isCorner(one, other)) continue;
    if (along <= reachBehind && along < whole * (1 - LEAST_KEPT)) from = index + 1;
    else if (whole - along <= reachAhead && whole - along < whole * (1 - LEAST_KEPT) && to === edges.length)
      to = index + 1;
  }
  return edges.slice(from, Math.max(to, from + 1));
}
