/**
 * A piece with some of its edges drawn inside where they were, each by its own distance; the others stay where they lie and end
 * where their neighbours now do. What is set back keeps its directions: it is the parallel, a cubic for a cubic.
 */
import { edgeNearest, edgePart, edgePointAt, edgeTangentAt, lineEdge, type EdgeCurve } from "../geometry/edgeCurve";
import { distance, midpoint, polar, turnBetween, type PiecePoint } from "../geometry/point";
import { beside } from "../allowance/parallels";
import { dartOf, pointOf, type Edge, type NamedPoint, type Piece, type PointName } from "../pattern/piece";
import { curveOf } from "../pattern/ring";
import { invariant } from "../result";
import { HANDLE_STEP, LINES_PARALLEL, SET_BACK_WITHIN, SMOOTH_BEND, SOLVER_ACCURACY } from "../tolerance";
import { radians, type Mm } from "../units";

/** Rounds of Newton's method; three are usual. */
const ROUNDS = 12;
/** How far a corner may go, in distances set back: where it goes further, the two lines hardly meet (our own choice). */
const FURTHEST = 5;
/** Curve parameters at which it is looked how far off a parallel is. */
const LOOKS = [1 / 8, 1 / 4, 3 / 8, 1 / 2, 5 / 8, 3 / 4, 7 / 8];
/** Shares by which handles are made longer and shorter in search of the nearest curve: from the first on, halved to the last. */
const FIRST_STEP = 0.08;
const LAST_STEP = 0.004;
const SEARCHES = 40;

/** An edge and how far inside it is to lie. */
interface Moved {
  readonly curve: EdgeCurve<"piece">;
  readonly by: Mm;
}

/** Where two neighbours meet: the place, and the parameter on each of them. */
interface Corner {
  readonly at: PiecePoint;
  readonly before: number;
  readonly after: number;
}

/**
 * @param byOf how far inside each edge is to lie; 0: it stays. Of a dart's mouth nothing is asked: its ends move along the legs
 * @returns the piece; null where an edge would be used up, or two lines hardly meet
 */
export function setBack(piece: Piece, byOf: (edge: Edge) => Mm): Piece | null {
  const moved = piece.edges.map((edge): Moved => ({
    curve: curveOf(piece, edge),
    by: edge.mouthOf === null ? byOf(edge) : 0,
  }));
  const corners = piece.edges.map((_, index) => cornerAfter(piece, moved, index));
  const points: Partial<Record<PointName, NamedPoint>> = { ...piece.points };
  const edges: Edge[] = [];
  const by = (index: number): Mm => invariant(moved[index], "edge").by;
  for (const [index, edge] of piece.edges.entries()) {
    const [start, end] = [invariant(corners.at(index - 1), "corner"), invariant(corners[index], "corner")];
    points[edge.to] = { ...invariant(piece.points[edge.to], edge.to), at: end.at };
    const reach = FURTHEST * Math.max(by(index), by((index + 1) % moved.length));
    if (!(distance(invariant(moved[index], "edge").curve.b, end.at) <= reach)) return null;
    if (edge.mouthOf !== null) {
      edges.push(edge);
      continue;
    }
    if (!(end.before > start.after)) return null;
    edges.push({ ...edge, curve: drawn(invariant(moved[index], "edge"), start, end) });
  }
  return { ...piece, points, edges };
}

/** The corner where an edge ends and the next begins. */
function cornerAfter(piece: Piece, moved: readonly Moved[], index: number): Corner {
  const next = (index + 1) % moved.length;
  const [edge, following] = [invariant(piece.edges[index], "edge"), invariant(piece.edges[next], "edge")];
  const [one, other] = [invariant(moved[index], "edge"), invariant(moved[next], "edge")];
  const asIs = { at: one.curve.b, before: 1, after: 0 };
  if (one.by === 0 && other.by === 0) return asIs;
  // Beside a mouth the leg is what the edge meets.
  if (edge.mouthOf !== null) {
    const leg = lineEdge(pointOf(piece, dartOf(piece, edge.mouthOf).apex), one.curve.b);
    return { ...meeting({ curve: leg, by: 0 }, other), before: 1 };
  }
  if (following.mouthOf !== null) {
    const leg = lineEdge(one.curve.b, pointOf(piece, dartOf(piece, following.mouthOf).apex));
    return { ...meeting(one, { curve: leg, by: 0 }), after: 0 };
  }
  return meeting(one, other);
}

/** A place on the parallel; before its start and beyond its end it runs straight on. */
function placeOn({ curve, by }: Moved, t: number): PiecePoint {
  const within = Math.min(1, Math.max(0, t));
  const way = edgeTangentAt(curve, within);
  const at = beside(edgePointAt(curve, within), way, -by);
  return t === within ? at : polar(at, way, (t - within) * distance(curve.a, curve.b));
}

/** Where two parallels meet, near the end of the one and the start of the other. */
function meeting(one: Moved, other: Moved): Corner {
  const turn = turnBetween(edgeTangentAt(one.curve, 1), edgeTangentAt(other.curve, 0));
  let [s, u] = [1, 0];
  // Where the line runs smooth on there is nothing to be met.
  if (Math.abs(turn) < SMOOTH_BEND) return { at: midpoint(placeOn(one, s), placeOn(other, u)), before: s, after: u };
  for (let round = 0; round < ROUNDS; round += 1) {
    const [p, q] = [placeOn(one, s), placeOn(other, u)];
    if (distance(p, q) < SOLVER_ACCURACY) break;
    const [p1, q1] = [placeOn(one, s - HANDLE_STEP), placeOn(other, u + HANDLE_STEP)];
    const [px, py] = [(p.x - p1.x) / HANDLE_STEP, (p.y - p1.y) / HANDLE_STEP];
    const [qx, qy] = [(q1.x - q.x) / HANDLE_STEP, (q1.y - q.y) / HANDLE_STEP];
    const determinant = py * qx - px * qy;
    if (Math.abs(determinant) < LINES_PARALLEL) break;
    const [dx, dy] = [q.x - p.x, q.y - p.y];
    s += (dy * qx - dx * qy) / determinant;
    u += (px * dy - py * dx) / determinant;
  }
  return { at: midpoint(placeOn(one, s), placeOn(other, u)), before: s, after: u };
}

/** The curve of an edge between its new corners. */
function drawn(moved: Moved, start: Corner, end: Corner): Edge["curve"] {
  const { curve, by } = moved;
  if (curve.curve === null) return null;
  const [from, to] = [start.after, end.before];
  const part = edgePart(curve, from, to);
  if (by === 0 || part.curve === null) return part.curve;
  const scale = distance(start.at, end.at) / distance(part.a, part.b);
  const handles = [scale * distance(part.a, part.curve.c1), scale * distance(part.b, part.curve.c2)] as const;
  return fitted(moved, { start: start.at, end: end.at, from, to, handles });
}

interface Parallel {
  readonly start: PiecePoint;
  readonly end: PiecePoint;
  readonly from: number;
  readonly to: number;
  readonly handles: readonly [Mm, Mm];
}

/**
 * A cubic with the directions of the parallel at its ends, and the handles that keep it nearest: those of the edge in proportion,
 * and from there whatever comes nearer.
 *
 * @source a parallel of a cubic is none; one with the same end tangents is as near as any (Tiller and Hanson 1984)
 */
function fitted(moved: Moved, { start, end, from, to, handles }: Parallel): NonNullable<Edge["curve"]> {
  const wayAt = (t: number) => edgeTangentAt(moved.curve, Math.min(1, Math.max(0, t)));
  const [leaving, back] = [wayAt(from), radians(wayAt(to) + Math.PI)];
  const curveWith = (h1: Mm, h2: Mm) => ({ c1: polar(start, leaving, h1), c2: polar(end, back, h2) });
  const offBy = (h1: Mm, h2: Mm): Mm =>
    Math.max(
      ...LOOKS.map((u) => {
        const at = edgePointAt({ a: start, b: end, curve: curveWith(h1, h2) }, u);
        return Math.abs(edgeNearest(moved.curve, at).distance - moved.by);
      }),
    );
  let [h1, h2] = handles;
  let off = offBy(h1, h2);
  let step = FIRST_STEP;
  for (let round = 0; round < SEARCHES && off > SET_BACK_WITHIN && step > LAST_STEP; round += 1) {
    const tries = [
      [1 + step, 1],
      [1 - step, 1],
      [1, 1 + step],
      [1, 1 - step],
      [1 + step, 1 + step],
      [1 - step, 1 - step],
    ] as const;
    const better = tries.find(([one, other]) => offBy(h1 * one, h2 * other) < off);
    if (better === undefined) step /= 2;
    else {
      [h1, h2] = [h1 * better[0], h2 * better[1]];
      off = offBy(h1, h2);
    }
  }
  return curveWith(h1, h2);
}
