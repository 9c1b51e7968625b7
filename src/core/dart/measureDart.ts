/** Reads the figures of a dart off a piece. */
import { angleAt, distance, midpoint, type PiecePoint } from "../geometry/point";
import { dartOf, pointOf, type DartName, type Piece } from "../pattern/piece";
import type { Mm } from "../units";
import type { DartFigures } from "./dartFigures";
import { coneHeight } from "./fullness";

/**
 * The figures of one dart as drawn.
 *
 * @param bustPoint the bust point it is judged by, or null where it serves none
 * @param radius    at which fullness is stated (`coneRadius`), mm
 */
export function measureDart(piece: Piece, name: DartName, bustPoint: PiecePoint | null, radius: Mm): DartFigures {
  const dart = dartOf(piece, name);
  const apex = pointOf(piece, dart.apex);
  const inner = pointOf(piece, dart.inner);
  const outer = pointOf(piece, dart.outer);
  const angle = angleAt(apex, inner, outer);
  return {
    apex,
    inner,
    outer,
    legInner: distance(apex, inner),
    legOuter: distance(apex, outer),
    intake: distance(inner, outer),
    angle,
    fullness: coneHeight(angle, radius),
    apexToBustPoint: bustPoint === null ? null : distanceShortOf(apex, midpoint(inner, outer), bustPoint),
  };
}

/** Distance from the apex to the bust point; negative where the dart, coming from its mouth, runs past it. */
function distanceShortOf(apex: PiecePoint, mouth: PiecePoint, bustPoint: PiecePoint): Mm {
  const ahead = (apex.x - mouth.x) * (bustPoint.x - apex.x) + (apex.y - mouth.y) * (bustPoint.y - apex.y);
  return ahead < 0 ? -distance(apex, bustPoint) : distance(apex, bustPoint);
}
