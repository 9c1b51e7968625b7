/** The upper edge of a piece: from its centre to where the shoulder, or a strap, begins. What bounds it can be cut back, or drawn on. */
import { edgeLength, edgeParameterAtLength, edgeSplit, edgeTangentAt, type EdgeCurve } from "../geometry/edgeCurve";
import { polar, shift, type PiecePoint } from "../geometry/point";
import { curveOf } from "../pattern/ring";
import { isBend, pointOf, type Edge, type NamedPoint, type Piece, type PointName } from "../pattern/piece";
import { withoutPoints } from "../pattern/seamStretch";
import { invariant } from "../result";
import { SHORTEST_EDGE } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";

/** An upper edge from the corner at the centre to the neck end of the shoulder, to the inner end of a strap's seam, or to a princess seam. */
export interface NeckRun {
  readonly piece: Piece;
  readonly end: "sideNeck" | "strapInner" | "princessTop";
  /** Its edges, in order; none is the mouth of a dart. */
  readonly edges: readonly Edge[];
}

/** The upper edge of a piece; null where it has none, or one that a dart or a seam parts. */
export function neckRunOf(piece: Piece | undefined): NeckRun | null {
  if (piece === undefined) return null;
  const start = piece.edges.findIndex(({ from, seam }) => from === "centreNeck" && seam === "neck");
  if (start < 0) return null;
  const edges: Edge[] = [];
  for (let step = 0; step < piece.edges.length; step += 1) {
    const edge = invariant(piece.edges[(start + step) % piece.edges.length], "edge");
    if (edge.seam !== "neck" || edge.mouthOf !== null) return null;
    edges.push(edge);
    if (edge.to === "sideNeck" || edge.to === "strapInner" || edge.to === "princessTop")
      return { piece, end: edge.to, edges };
    if (!isBend(edge.to) && edge.to !== "neckCorner") return null;
  }
  return null;
}

export const curvesOf = ({ piece, edges }: NeckRun): readonly EdgeCurve<"piece">[] =>
  edges.map((edge) => curveOf(piece, edge));

/** The edges that come to the run's start, nearest first, or leave its end, as far as the next corner; none where a dart opens there. */
function besideRun({ piece, edges: run, end }: NeckRun, side: "centre" | "shoulder"): readonly Edge[] {
  const count = piece.edges.length;
  const isBack = side === "centre";
  const own = invariant(isBack ? run[0] : run.at(-1), "neck");
  const first = piece.edges.indexOf(own);
  const found: Edge[] = [];
  for (let step = 1; step < count; step += 1) {
    const edge = invariant(piece.edges[(first + (isBack ? count - step : step)) % count], "edge");
    if (edge.seam !== side || edge.mouthOf !== null) return found;
    found.push(edge);
    if (!isPassed(isBack ? edge.from : edge.to, end)) return found;
  }
  return found;
}

/** A cup's edge may dip below its bust line; that stays where it is, with its corner off the cloth. */
const isPassed = (corner: PointName, end: NeckRun["end"]): boolean =>
  isBend(corner) || (end === "strapInner" && corner === "centreBust");

/** How long the edge beside the run is, as far as the next corner; and which corner that is. */
export function roomBeside(
  run: NeckRun,
  side: "centre" | "shoulder",
): { readonly length: Mm; readonly to: PointName | null } {
  const edges = besideRun(run, side);
  const last = edges.at(-1);
  return {
    length: edges.reduce((sum, edge) => sum + edgeLength(curveOf(run.piece, edge)), 0),
    to: last === undefined ? null : side === "centre" ? last.from : last.to,
  };
}

/** An end of the run moved along what it meets: where it then lies, which way that goes there, and the edges that are left of it. */
export interface EndMoved {
  readonly at: PiecePoint;
  /** Of the centre line upwards, of the shoulder away from the neck. */
  readonly direction: Radians;
  readonly kept: readonly Edge[];
  readonly gone: readonly PointName[];
  readonly replaced: readonly Edge[];
}

/**
 * The end of the run that lies on the centre line, or on the shoulder, moved along it: into it by so much, or beyond it where
 * that is negative, straight on.
 *
 * @returns null where no room is left, or there is nothing to move along
 */
export function endMoved(run: NeckRun, side: "centre" | "shoulder", by: Mm): EndMoved | null {
  const { piece } = run;
  const edges = besideRun(run, side);
  const isBack = side === "centre";
  const nearest = edges[0];
  if (nearest === undefined) return null;
  const end = pointOf(piece, isBack ? "centreNeck" : run.end);
  const own = curveOf(piece, nearest);
  if (by === 0)
    return { at: end, direction: edgeTangentAt(own, isBack ? 1 : 0), kept: edges, gone: [], replaced: edges };
  if (by < 0) {
    const direction = edgeTangentAt(own, isBack ? 1 : 0);
    const at = polar(end, isBack ? direction : radians(direction + Math.PI), -by);
    const { curve } = nearest;
    const moved = (handle: PiecePoint): PiecePoint => shift(handle, at.x - end.x, at.y - end.y);
    const drawnOn =
      curve === null ? null : isBack ? { c1: curve.c1, c2: moved(curve.c2) } : { c1: moved(curve.c1), c2: curve.c2 };
    return { at, direction, kept: [{ ...nearest, curve: drawnOn }, ...edges.slice(1)], gone: [], replaced: edges };
  }
  let left = by;
  const gone: PointName[] = [];
  for (const [index, edge] of edges.entries()) {
    const curve = curveOf(piece, edge);
    const length = edgeLength(curve);
    const next = edges[index + 1];
    if (left >= length && next !== undefined) {
      left -= length;
      gone.push(isBack ? edge.from : edge.to);
      continue;
    }
    const t = edgeParameterAtLength(curve, isBack ? length - left : left);
    const [before, after] = edgeSplit(curve, t);
    const part = isBack ? before : after;
    const at = isBack ? part.b : part.a;
    const ends = isBack ? { to: "centreNeck" as const } : { from: run.end };
    if (left <= length - SHORTEST_EDGE)
      return {
        at,
        direction: edgeTangentAt(part, isBack ? 1 : 0),
        kept: [{ ...edge, ...ends, curve: part.curve }, ...edges.slice(index + 1)],
        gone,
        replaced: edges,
      };
    if (next === undefined) return null;
    // What is left of it is too short to cut: the edge beyond the bend is drawn on to there.
    gone.push(isBack ? edge.from : edge.to);
    return {
      at,
      direction: edgeTangentAt(part, isBack ? 1 : 0),
      kept: [{ ...next, ...ends }, ...edges.slice(index + 2)],
      gone,
      replaced: edges,
    };
  }
  return null;
}

/** A corner within the new edge. */
export interface NewCorner {
  readonly name: PointName;
  readonly at: PiecePoint;
}

/** A new upper edge: its curves, one after the other, and the corners between them. */
export interface NewEdge {
  readonly curves: readonly EdgeCurve<"piece">[];
  readonly corners: readonly NewCorner[];
}

/** The piece with another upper edge, from a moved end at the centre to a moved end at the shoulder, or to where the run ended. */
export function withEdge(run: NeckRun, centre: EndMoved, end: EndMoved | null, { curves, corners }: NewEdge): Piece {
  const { piece } = run;
  const passed = run.edges.slice(0, -1).map(({ to }) => to);
  const kept = withoutPoints(piece, [...passed, ...centre.gone, ...(end?.gone ?? [])].filter(isBend));
  const points: Partial<Record<PointName, NamedPoint>> = { ...kept.points };
  const put = (name: PointName, at: PiecePoint): void => {
    points[name] = { ...(piece.points[name] ?? { level: "neck" as const }), at };
  };
  put("centreNeck", centre.at);
  if (end !== null) put(run.end, end.at);
  for (const { name, at } of corners) put(name, at);
  const names: readonly PointName[] = ["centreNeck", ...corners.map(({ name }) => name), run.end];
  const neck = curves.map(({ curve }, index): Edge => ({
    from: invariant(names[index], "corner"),
    to: invariant(names[index + 1], "corner"),
    seam: "neck",
    curve,
    mouthOf: null,
  }));
  const taken = new Set<Edge>([...run.edges, ...centre.replaced, ...(end?.replaced ?? [])]);
  const start = piece.edges.indexOf(invariant(run.edges[0], "neck"));
  // Round from the new edge on: what is left of the shoulder, all that lies between, what is left of the centre.
  const round = [...piece.edges.slice(start), ...piece.edges.slice(0, start)].filter((edge) => !taken.has(edge));
  const ring = [...neck, ...(end?.kept ?? []), ...round, ...centre.kept.toReversed()];
  return { ...kept, points, edges: startingAs(piece, ring) };
}

/** The ring begins where the piece's own did, as far as that corner is still there. */
function startingAs(piece: Piece, ring: readonly Edge[]): readonly Edge[] {
  const start = ring.findIndex(({ from }) => from === piece.edges[0]?.from);
  return start <= 0 ? ring : [...ring.slice(start), ...ring.slice(0, start)];
}
