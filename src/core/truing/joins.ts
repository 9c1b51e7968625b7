/** Where two pieces meet at a corner: which edge is sewn to the other piece, and which runs on across the seam. */
import { pointOf, type Edge, type Piece, type PointName, type SeamName } from "../pattern/piece";
import { invariant } from "../result";
import { edgeFrom, edgeTo } from "../pattern/ring";

/** Seams that pieces are joined by; at a corner of two of them the earlier one is sewn and the later one runs on. */
const SEWN: readonly SeamName[] = ["princess", "side", "shoulder"];

/** An end of an edge: its index in the ring, and which end. */
export interface EdgeEnd {
  readonly index: number;
  readonly end: "start" | "end";
}

/** The end at a joined corner of the edge that runs on across the seam into the other piece. */
export function runningOn(piece: Piece, corner: PointName): EdgeEnd {
  const into = edgeTo(piece, corner);
  const out = edgeFrom(piece, corner);
  const rank = (index: number): number => {
    const found = SEWN.indexOf(invariant(piece.edges[index], "edge").seam);
    return found < 0 ? SEWN.length : found;
  };
  return rank(into) > rank(out) ? { index: into, end: "end" } : { index: out, end: "start" };
}

/** The end at a centre corner of the edge that is not the centre. */
export function offCentre(piece: Piece, corner: PointName): EdgeEnd {
  const into = edgeTo(piece, corner);
  return invariant(piece.edges[into], "edge").seam === "centre"
    ? { index: edgeFrom(piece, corner), end: "start" }
    : { index: into, end: "end" };
}

/** The seam that meets another one at a corner; null where the corner lies within the seam. */
export function otherSeamAt(piece: Piece, corner: PointName, seam: SeamName): SeamName | null {
  const both = piece.edges.filter((edge: Edge) => edge.from === corner || edge.to === corner).map((edge) => edge.seam);
  return both.find((found) => found !== seam) ?? null;
}

/** Whether a point is a corner of the outline. */
export const hasCorner = (piece: Piece | undefined, corner: PointName): piece is Piece =>
  piece !== undefined && piece.edges.some(({ from }) => from === corner) && pointOf(piece, corner) !== undefined;
