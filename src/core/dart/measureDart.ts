/** Reads the figures of a dart off a piece. */
import { angleAt, distance, type PiecePoint } from "../geometry/point";
import { dartOf, pointOf, type DartName, type Piece } from "../pattern/piece";
import type { Mm } from "../units";
import { readDartEnd } from "./dartEndReading";
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
    end: bustPoint === null ? null : readDartEnd({ apex, inner, outer }, bustPoint),
  };
}
