/** The ends of a lining left free of a zip below the waist: from a little beside its teeth at the waist in to the seam below its end. */
import { seamLength } from "../girth/seamLength";
import { directionOf, polar } from "../geometry/point";
import { isBend, pointOf, type Edge, type Piece, type PointName, type SeamName } from "../pattern/piece";
import { insertPoint } from "../pattern/ring";
import { bendStretch, endsOf, placeAlong, stretchLength, withoutPoints, type Stretch } from "../pattern/seamStretch";
import { straight } from "../pattern/namedEdges";
import { invariant } from "../result";
import { withSeamEnd } from "../surgery/walkAgain";
import { SHORTEST_EDGE } from "../tolerance";
import { radians, type Mm } from "../units";

export interface FreeEnd {
  /** From the waist seam along the seam that opens, down to where it is sewn from. */
  readonly below: Mm;
  /** From the teeth, along the waist. */
  readonly beside: Mm;
}

/** Where the seam is sewn from, below the end of the zip. */
export const FREE_END = "cut1" satisfies PointName;

/**
 * The piece with its opening seam drawn from beside the zip at the waist to the seam itself further down; the waist is
 * shorter by just what it keeps from the zip. Where the seam ends sooner, all but its last stretch is left free.
 */
export function leaveFree(piece: Piece, seam: SeamName, { below, beside }: FreeEnd): Piece {
  const row = rowOf(piece, seam);
  const [first, last] = [row[0], row.at(-1)];
  if (first === undefined || last === undefined) return piece;
  const [start, end] = [edgeAt(piece, first).from, edgeAt(piece, last).to];
  const isWaist = (corner: PointName): boolean =>
    piece.edges.some((edge) => edge.seam === "waist" && (edge.from === corner || edge.to === corner));
  const corner = [start, end].find(isWaist);
  if (corner === undefined) return piece;
  const isFirst = corner === start;
  const whole = stretchLength(piece, row);
  const length = Math.min(below, whole - 2 * SHORTEST_EDGE);
  const place = placeAlong(piece, row, isFirst ? length : whole - length);
  const level = invariant(piece.points[corner], corner).level;
  // Where a corner lies there already, as the hip's may, that is the end: an edge between them could not be cut.
  const there = cornerNear(piece, row, isFirst ? length : whole - length);
  const freeEnd = there ?? FREE_END;
  const cut = there === null ? insertPoint(piece, place.index, place.t, FREE_END, level) : piece;
  const [from, to] = isFirst ? ([corner, freeEnd] as const) : ([freeEnd, corner] as const);
  const own = rowOf(cut, seam);
  const at = own.findIndex((index) => edgeAt(cut, index).from === freeEnd);
  const free = isFirst ? own.slice(0, at) : own.slice(at);
  const isStraight = free.every((index) => edgeAt(cut, index).curve === null);
  const open = isStraight
    ? drawnStraight(cut, from, to, seam)
    : drawnBeside(cut, free, isFirst ? "start" : "end", beside);
  return withSeamEnd(open, "waist", corner, seamLength(piece, "waist") - beside);
}

/** One line in place of those along a straight seam; the places that lay on it stay where they were. */
function drawnStraight(cut: Piece, from: PointName, to: PointName, seam: SeamName): Piece {
  const edges = replaced(cut.edges, from, to, straight(from, to, seam));
  const gone = cut.edges
    .map((edge) => edge.from)
    .filter((name) => isBend(name) && !edges.some((edge) => edge.from === name));
  return withoutPoints({ ...cut, edges }, gone);
}

/** Beside a curved seam, as over a hip, the V follows the curve: it stands off by less and less of what it does at the waist. */
function drawnBeside(cut: Piece, free: Stretch, waistAt: "start" | "end", beside: Mm): Piece {
  const { from, to } = endsOf(cut, free);
  const inwards = radians(directionOf(pointOf(cut, from), pointOf(cut, to)) + Math.PI / 2);
  return bendStretch(cut, free, (point, share) =>
    polar(point, inwards, beside * (waistAt === "start" ? 1 - share : share)),
  );
}

/** A corner within a seam, not one of its ends, so near to a place along it that no edge goes between; null: none is. */
function cornerNear(piece: Piece, row: Stretch, length: Mm): PointName | null {
  const near = row
    .slice(1)
    .find((_, at) => Math.abs(stretchLength(piece, row.slice(0, at + 1)) - length) < SHORTEST_EDGE);
  return near === undefined ? null : edgeAt(piece, near).from;
}

const edgeAt = (piece: Piece, index: number): Edge => invariant(piece.edges[index], "edge");

/** The edges of a seam in a row, though the ring may begin in the middle of it. */
function rowOf({ edges }: Piece, seam: SeamName): readonly number[] {
  const start = edges.findIndex((edge, at) => edge.seam === seam && edges.at(at - 1)?.seam !== seam);
  const row: number[] = [];
  if (start < 0) return row;
  for (let step = 0; step < edges.length; step += 1) {
    const index = (start + step) % edges.length;
    if (edges[index]?.seam !== seam) break;
    row.push(index);
  }
  return row;
}

/** The ring with all between two of its corners replaced by one edge. */
function replaced(edges: readonly Edge[], from: PointName, to: PointName, by: Edge): readonly Edge[] {
  const start = edges.findIndex((edge) => edge.from === from);
  const turned = [...edges.slice(start), ...edges.slice(0, start)];
  const count = turned.findIndex((edge) => edge.to === to) + 1;
  return [by, ...turned.slice(count)];
}
