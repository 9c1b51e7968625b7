/** No seam has a corner where its edges meet. */
import { piecesOf } from "../pattern/pieceSet";
import type { Piece, PointName } from "../pattern/piece";
import { remember } from "../remember";
import { SMOOTH_CORNER_DEGREES } from "../tolerance";
import type { CheckResult } from "./check";
import type { Check } from "./context";
import { turnAtDegrees, turnWithin } from "../girth/cornerAngle";

export const seamsSmooth: Check = ({ pieces }) => piecesOf(pieces).flatMap((piece) => cornersOf({ piece }));

/** Most pieces are no others than in the plan before, or on the other half. */
const cornersOf = remember(["piece"], ({ piece }: { readonly piece: Piece }) => worstCorners(piece));

/** The sharpest corner within each seam of a piece. */
function worstCorners(piece: Piece): readonly CheckResult[] {
  const worst = new Map<string, CheckResult>();
  piece.edges.forEach((edge, index) => {
    const before = piece.edges[(index + piece.edges.length - 1) % piece.edges.length];
    if (
      before === undefined ||
      edge.seam === "edge" ||
      edge.seam !== before.seam ||
      edge.mouthOf !== null ||
      before.mouthOf !== null
    )
      return;
    const point: PointName = edge.from;
    const measured = Math.abs(turnAtDegrees(piece, point) - turnWithin(piece, point));
    const known = worst.get(edge.seam);
    if (known !== undefined && known.measured >= measured) return;
    worst.set(edge.seam, {
      name: "seamsSmooth",
      ok: measured <= SMOOTH_CORNER_DEGREES,
      measured,
      expected: 0,
      tolerance: SMOOTH_CORNER_DEGREES,
      unit: "degrees",
      pieces: [piece.name],
      seam: edge.seam,
      point,
    });
  });
  return [...worst.values()];
}
