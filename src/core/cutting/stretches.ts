/** The stitch line all round, stretch by stretch, each with what lies outside it. */
import type { Stretch } from "../allowance/cutStretch";
import { allowanceOn } from "./usualAllowances";
import { dartCapOf } from "../dart/dartCap";
import { edgeMap, edgeReverse, type EdgeCurve } from "../geometry/edgeCurve";
import { distance, type PiecePoint } from "../geometry/point";
import { reflectInLine } from "../geometry/segment";
import { invariant } from "../result";
import { SAME_POINT } from "../tolerance";
import { curveOf } from "../pattern/ring";
import { dartOf, type Piece } from "../pattern/piece";
import { type Allowances } from "../decisions/allowances";

/**
 * The closed ring of a piece: its seams, and across the mouth of a dart the cap that is caught in the seam when it is folded.
 *
 * @param allowances null: none anywhere
 * @param onFold whether the centre line of a piece that has it on the fold is cut so
 */
export function stretchesOf(
  piece: Piece,
  allowances: Allowances | null,
  onFold = piece.centreOnFold,
): readonly Stretch[] {
  return piece.edges.flatMap((edge): Stretch[] => {
    const fold = onFold && edge.seam === "centre";
    const allowance = allowances === null || fold ? 0 : allowanceOn(piece, allowances, edge.seam);
    const stretch = (curve: EdgeCurve<"piece">, cap: boolean): Stretch => ({
      curve,
      seam: edge.seam,
      allowance,
      fold,
      cap,
    });
    if (edge.mouthOf === null) return [stretch(curveOf(piece, edge), false)];
    // A dart's cap goes from its inner mouth end to the outer one; the ring may come the other way.
    const { inner } = dartOf(piece, edge.mouthOf);
    const { halves, beyond, apex } = dartCapOf(piece, edge.mouthOf);
    const tip = invariant(halves[1][0], "cap").a;
    const isAlong = edge.from === inner;
    const along = isAlong
      ? halves.flat()
      : halves
          .flat()
          .map((curve) => edgeReverse(curve))
          .toReversed();
    // Seen along the ring, the half that comes first goes on as the inner half does, or as its mirror image.
    const mirror = (p: PiecePoint): PiecePoint => (isAlong ? p : reflectInLine(p, apex, tip));
    const turned = { apex, beyond: beyond.map((curve) => edgeMap(curve, mirror)) };
    return along.map((curve) => ({
      ...stretch(curve, true),
      ...(distance(curve.b, tip) < SAME_POINT ? { tip: turned } : {}),
    }));
  });
}
