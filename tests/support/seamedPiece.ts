/** A piece that is nothing but its seams, so long each: all in one line. For what looks at lengths alone. */
import type { PieceName, Piece, PointName, SeamName } from "../../src/core/pattern/piece";
import { cornerPiece, type CornerOf } from "./cornerPiece";

const ENDS: readonly PointName[] = ["corner00", "corner01", "corner02", "corner03", "corner04", "corner05", "corner06"];

export function seamedPiece(name: PieceName, seams: Readonly<Partial<Record<SeamName, number>>>): Piece {
  let along = 0;
  const corners: CornerOf[] = [];
  // The record is only ever built from names of seams, which `Object.entries` cannot know.
  for (const [at, [seam, length]] of (Object.entries(seams) as [SeamName, number][]).entries()) {
    corners.push([ENDS[at] ?? "centreNeck", along, 0, seam]);
    along += length;
  }
  return cornerPiece({ name, corners: [...corners, ["centreWaist", along, 0, "edge"]] });
}
