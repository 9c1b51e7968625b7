/** One closed ring about several that overlap: the room that they take together. */
import { Clipper, FillRule } from "clipper2-ts";
import { boundsOfPoints } from "../geometry/bounds";
import { piecePoint, type PiecePoint } from "../geometry/point";
import { must } from "../result";

/** The outer boundary of all rings together; where they do not hang together, the box that holds them. */
export function ringAround(rings: readonly (readonly PiecePoint[])[]): readonly PiecePoint[] {
  const [first] = rings;
  if (first !== undefined && rings.length === 1) return first;
  // Whichever way a ring goes, what it goes round counts.
  const found = Clipper.unionD(rings.map((ring) => ring.map(({ x, y }) => ({ x, y }))), [], FillRule.NonZero, 4).filter((path) => Clipper.areaD(path) > 0);
  if (found.length === 1) return must(found[0], "ring").map(({ x, y }) => piecePoint(x, y));
  const { min, max } = boundsOfPoints(rings.flat());
  return [min, piecePoint(max.x, min.y), max, piecePoint(min.x, max.y)];
}
