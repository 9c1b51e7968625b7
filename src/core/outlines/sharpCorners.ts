/** Where a closed outline has corners, whatever piece it is of. */
import { edgeTangentAt, type EdgeCurve } from "../geometry/edgeCurve";
import type { SheetPoint } from "../geometry/point";
import { OUTLINE_CORNER_DEGREES } from "../tolerance";
import { degreesFrom, radians } from "../units";

/** Places on the sheet, mm, in the order of the outline. */
export const sharpCorners = (edges: readonly EdgeCurve<"sheet">[]): readonly SheetPoint[] =>
  edges.flatMap((edge, i) => {
    const before = edges.at(i - 1) ?? edge;
    const turn = edgeTangentAt(edge, 0) - edgeTangentAt(before, 1);
    const within = radians(Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))));
    return degreesFrom(within) > OUTLINE_CORNER_DEGREES ? [edge.a] : [];
  });
