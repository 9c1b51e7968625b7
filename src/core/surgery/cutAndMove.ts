/**
 * The one mechanism of pattern surgery: a piece is cut along lines, its parts are moved rigidly (turned about a hinge on
 * the seam line, or slid), and it is joined again. Nothing else stretches: every edge of a part keeps its shape, and
 * only the straight edges that bridge a cut (the mouth of a dart, paper let in) change their length.
 */
import { signedArea } from "../geometry/outline";
import { lineEdge, type EdgeCurve } from "../geometry/edgeCurve";
import { distance, type PiecePoint } from "../geometry/point";
import { moveEdgeRigidly, moveRigidly, type Rigid } from "../geometry/rigid";
import { CoreBug, invariant } from "../result";
import {
  pointOf,
  type DartName,
  type Edge,
  type NamedPoint,
  type Piece,
  type PieceName,
  type PointName,
} from "../pattern/piece";
import { placedAt, redrawn, withCurve, withEnds, withoutPoint, withPoint } from "../pattern/redraw";
import { SAME_POINT } from "../tolerance";
import { curveOf, edgeFrom, outlineOf } from "../pattern/ring";

/** A part of a piece that moves as one. */
export interface Part {
  /** Its stretch of the outline, from corner to corner the way the edges go. */
  readonly from: PointName;
  readonly to: PointName;
  /** The corners of the cut lines that bound it inside, on the way from `to` back to `from`; before the move. */
  readonly inside: readonly PiecePoint[];
  /** Named points within it that are not on the outline. */
  readonly carries: readonly PointName[];
  readonly motion: Rigid<"piece">;
}

/** One part as it lay and as it lies: closed outlines in the piece frame. */
interface TracedPart {
  readonly before: readonly EdgeCurve<"piece">[];
  readonly after: readonly EdgeCurve<"piece">[];
  readonly motion: Rigid<"piece">;
}

/** What one operation did, to be drawn. */
export interface SurgeryTrace {
  readonly piece: PieceName;
  /** Lines cut, each as its corners; before anything moved. */
  readonly cuts: readonly (readonly PiecePoint[])[];
  /** Points that parts turned about. */
  readonly hinges: readonly PiecePoint[];
  readonly parts: readonly TracedPart[];
  /** What stayed: closed outline. Where the parts, moved, leave paper bare it was let in; where they overlap it is lapped. */
  readonly rest: readonly EdgeCurve<"piece">[];
  /** mm². Paper let in (positive) or taken out, before anything was smoothed. */
  readonly area: number;
}

export interface Operated {
  readonly piece: Piece;
  /** Made when it is read: of most sizes of a nest nobody asks for it. */
  readonly trace: SurgeryTrace;
}

/** An operation whose piece was drawn on afterwards. Its trace is still not made: spread, it would be. */
export const drawnFurther = (operated: Operated, piece: Piece): Operated => ({
  piece,
  get trace() {
    return operated.trace;
  },
});

/**
 * Moves parts of a piece.
 *
 * Two parts, or a part and the rest, may share an outline point only where the motions of both leave it where it is (a
 * hinge); elsewhere the outline must have been parted there first (see `partAt`), so that an edge bridges the cut.
 *
 * @returns the piece with every edge of a part moved rigidly, and the trace of it; a CoreBug where a shared point is torn
 */
export function cutAndMove(
  piece: Piece,
  parts: readonly Part[],
  drawn: { readonly cuts: readonly (readonly PiecePoint[])[]; readonly hinges: readonly PiecePoint[] },
): Operated {
  const motions: (Rigid<"piece"> | undefined)[] = piece.edges.map(() => undefined);
  const points: Partial<Record<PointName, NamedPoint>> = { ...piece.points };
  const place = (name: PointName, motion: Rigid<"piece">): void => {
    const point = invariant(piece.points[name], name);
    const at = moveRigidly(motion, point.at);
    const known = points[name];
    // Placed by another part already: it is no longer the point it was.
    if (known !== undefined && known !== point && distance(known.at, at) > SAME_POINT)
      throw new CoreBug(`${piece.name}: torn at ${name}`);
    points[name] = placedAt(point, at);
  };
  for (const part of parts) {
    for (const index of edgesOf(piece, part)) {
      motions[index] = part.motion;
      place(invariant(piece.edges[index], "edge").from, part.motion);
    }
    place(part.to, part.motion);
    for (const name of part.carries) if (piece.points[name] !== undefined) place(name, part.motion);
  }
  const edges = piece.edges.map((edge, index): Edge => {
    const motion = motions[index];
    if (motion === undefined) {
      if (edge.curve !== null && (isTorn(piece, edge.from, points) || isTorn(piece, edge.to, points))) {
        throw new CoreBug(`${piece.name}: the curve from ${edge.from} would be stretched`);
      }
      return edge;
    }
    if (edge.curve === null) return edge;
    return withCurve(edge, { c1: moveRigidly(motion, edge.curve.c1), c2: moveRigidly(motion, edge.curve.c2) });
  });
  const moved = redrawn(piece, points, edges);
  return {
    piece: moved,
    get trace() {
      return {
        piece: piece.name,
        cuts: drawn.cuts,
        hinges: drawn.hinges,
        parts: parts.map((part) => tracePart(piece, part)),
        rest: restOf(piece, parts),
        area: Math.abs(signedArea(outlineOf(moved))) - Math.abs(signedArea(outlineOf(piece))),
      };
    },
  };
}

function isTorn(piece: Piece, name: PointName, moved: Piece["points"]): boolean {
  const at = moved[name]?.at;
  return at !== undefined && distance(at, pointOf(piece, name)) > SAME_POINT;
}

/** Indexes of the edges of a part, the way they go. */
function edgesOf(piece: Piece, { from, to }: Pick<Part, "from" | "to">): number[] {
  const found: number[] = [];
  let index = edgeFrom(piece, from);
  for (let steps = 0; steps < piece.edges.length; steps += 1) {
    found.push(index);
    if (invariant(piece.edges[index], "edge").to === to) return found;
    index = (index + 1) % piece.edges.length;
  }
  throw new CoreBug(`${piece.name}: ${to} is not reached from ${from}`);
}

function chainOf(corners: readonly PiecePoint[]): EdgeCurve<"piece">[] {
  const chain: EdgeCurve<"piece">[] = [];
  for (let i = 1; i < corners.length; i += 1) {
    const a = invariant(corners[i - 1], "corner");
    const b = invariant(corners[i], "corner");
    if (distance(a, b) > SAME_POINT) chain.push(lineEdge(a, b));
  }
  return chain;
}

function tracePart(piece: Piece, part: Part): TracedPart {
  const before = [
    ...edgesOf(piece, part).map((index) => curveOf(piece, invariant(piece.edges[index], "edge"))),
    ...chainOf([pointOf(piece, part.to), ...part.inside, pointOf(piece, part.from)]),
  ];
  return { before, after: before.map((edge) => moveEdgeRigidly(part.motion, edge)), motion: part.motion };
}

function restOf(piece: Piece, parts: readonly Part[]): EdgeCurve<"piece">[] {
  const owner = new Map<number, Part>();
  for (const part of parts) for (const index of edgesOf(piece, part)) owner.set(index, part);
  return piece.edges.flatMap((edge, index): EdgeCurve<"piece">[] => {
    const part = owner.get(index);
    if (part === undefined) return [curveOf(piece, edge)];
    if (edge.from !== part.from) return [];
    return chainOf([pointOf(piece, part.from), ...part.inside.toReversed(), pointOf(piece, part.to)]);
  });
}

/**
 * Parts the outline at a corner, so that what lies on its two sides can be moved asunder: the corner becomes an edge of
 * no length, from the corner to a new one in the same place.
 *
 * @param dart where the cut becomes the mouth of a dart, its name; null where paper is let in that is sewn as seam
 */
export function partAt(piece: Piece, corner: PointName, second: PointName, dart: DartName | null): Piece {
  const after = edgeFrom(piece, corner);
  const next = invariant(piece.edges[after], "edge");
  const bridge: Edge = { from: corner, to: second, seam: next.seam, curve: null, mouthOf: dart };
  const edges = [...piece.edges];
  edges.splice(after, 1, bridge, withEnds(next, second, next.to, next.curve));
  return redrawn(piece, withPoint(piece.points, second, invariant(piece.points[corner], corner)), edges);
}

/** Joins the outline again where two corners have come together: the edge between them goes. */
export function rejoin(piece: Piece, corner: PointName, second: PointName): Piece {
  const index = edgeFrom(piece, corner);
  const bridge = invariant(piece.edges[index], "edge");
  if (bridge.to !== second || distance(pointOf(piece, corner), pointOf(piece, second)) > SAME_POINT) {
    throw new CoreBug(`${piece.name}: ${corner} and ${second} have not come together`);
  }
  const edges = piece.edges.flatMap((edge, i): Edge[] => {
    if (i === index) return [];
    return edge.from === second ? [withEnds(edge, corner, edge.to, edge.curve)] : [edge];
  });
  return redrawn(piece, withoutPoint(piece.points, [second]), edges);
}

/** The trace of a piece that was left as it is. */
export const noSurgery = (piece: Piece): SurgeryTrace => ({
  piece: piece.name,
  cuts: [],
  hinges: [],
  parts: [],
  rest: outlineOf(piece),
  area: 0,
});
