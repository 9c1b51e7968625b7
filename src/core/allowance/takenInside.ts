/**
 * The stitch line inside a cutting line: each seam's allowance taken off by the same parallels that add it. What a corner of the
 * cutting line adds to its seams, as where it is lapped, is left off: the seams themselves say where they meet.
 */
import { edgeLength, edgeTangentAt, type EdgeCurve } from "../geometry/edgeCurve";
import { directionOf, distance, polar, type PiecePoint } from "../geometry/point";
import { fail, invariant, ok, type Result } from "../result";
import { SAME_POINT, TAKEN_INSIDE_WITHIN } from "../tolerance";
import type { Mm, Radians } from "../units";
import { meetSegment, parallelOf } from "./parallels";

type Chain = readonly EdgeCurve<"piece">[];

/** What lies between two seams: a corner of the piece, or the mouth of a dart between its legs. */
export type BetweenRuns =
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
  readonly then: BetweenRuns;
}

/** How far from its end a seam may have what belongs to its corner, in allowances. */
const REACH = 2.6;
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
    const ahead = run.then.kind === "corner" ? after(index).allowance : 0;
    const behind = before(index).then.kind === "corner" ? before(index).allowance : 0;
    const edges = withoutCorners(
      run.edges,
      REACH * Math.max(run.allowance, behind),
      REACH * Math.max(run.allowance, ahead),
      isCorner,
    );
    return parallel(edges, run.allowance);
  });
  const starts: (PiecePoint | null)[] = runs.map(() => null);
  const ends: (PiecePoint | null)[] = runs.map(() => null);
  const trimmed = lines.map((line) => [...line]);
  for (const [index, { then }] of runs.entries()) {
    const next = (index + 1) % count;
    const [one, other] = [invariant(trimmed[index], "line"), invariant(trimmed[next], "line")];
    if (then.kind === "corner") {
      const met = firstMeeting(continued(one.toReversed()), continued(other));
      if (met === null) return fail({ run: index });
      trimmed[index] = cutBack(one, met.alongLine);
      trimmed[next] = cutFront(invariant(trimmed[next], "line"), met.alongOther);
      ends[index] = met.at;
      starts[next] = met.at;
    } else {
      const [first, second] = then.legs;
      const atFirst = firstMeeting(continued(one.toReversed()), legLine(then.apex, first));
      const atSecond = firstMeeting(continued(other), legLine(then.apex, second));
      if (atFirst === null || atSecond === null) return fail({ run: index });
      trimmed[index] = cutBack(one, atFirst.alongLine);
      trimmed[next] = cutFront(invariant(trimmed[next], "line"), atSecond.alongLine);
      ends[index] = atFirst.at;
      starts[next] = atSecond.at;
    }
  }
  const made = trimmed.map((line, index) => withoutTwins([invariant(starts[index], "start"), ...line, invariant(ends[index], "end")]));
  const gone = made.findIndex((line, index) => !goesOn(line, invariant(lines[index], "line")));
  return gone < 0 ? ok(made) : fail({ run: gone });
}

const FAR: Mm = 400;
/** How far a line is continued straight on beyond its end, mm. */
const CONTINUED: Mm = 60;

/** A leg from the dart's end, on beyond the line. */
const legLine = (apex: PiecePoint, through: PiecePoint): readonly PiecePoint[] => [
  apex,
  polar(apex, directionOf(apex, through), distance(apex, through) + FAR),
];

/** A line with a straight way on before its first point. */
function continued(line: readonly PiecePoint[]): readonly PiecePoint[] {
  const [first, second] = [invariant(line[0], "point"), invariant(line[1], "point")];
  return [polar(first, directionOf(second, first), CONTINUED), ...line];
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

/** Without the points that lie beyond where it is met; `passed` counts them on the line continued, from its end. */
const cutBack = (line: readonly PiecePoint[], passed: number): PiecePoint[] => line.slice(0, line.length - passed);
const cutFront = (line: readonly PiecePoint[], passed: number): PiecePoint[] => line.slice(passed);

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

/** The parallel inside, without what would turn back where a curve is tighter than the allowance. */
function parallel(edges: Chain, allowance: Mm): readonly PiecePoint[] {
  const points: PiecePoint[] = [];
  for (const edge of edges) {
    const ways = parallelOf(edge, -allowance, TAKEN_INSIDE_WITHIN);
    const way: Radians = edgeTangentAt(edge, 0.5);
    for (const p of ways) {
      const last = points.at(-1);
      if (last === undefined) points.push(p);
      else if (distance(last, p) > SAME_POINT) {
        const isOn = Math.cos(directionOf(last, p) - way) > -TURNED_BACK;
        if (isOn) points.push(p);
      }
    }
  }
  return points;
}
const TURNED_BACK = 0.5;

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
    else if (whole - along <= reachAhead && whole - along < whole * (1 - LEAST_KEPT) && to === edges.length) to = index + 1;
  }
  return edges.slice(from, Math.max(to, from + 1));
}
