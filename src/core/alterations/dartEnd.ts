/** Moving a dart's end: shorten, lengthen, sideways; the mouth held or the fullness held. */
import { angleAt, distance, midpoint } from "../geometry/point";
import { apexAfter, apexOffset, axisLength } from "../dart/dartFrame";
import { fail, must, ok, type Result } from "../result";
import { dartOf, type DartName, type Piece } from "../pattern/piece";
import { SHORTEST_DART } from "../tolerance";
import type { Mm, Radians } from "../units";
import type { SlipFailure } from "../plan/plan";
import type { DartEndAlteration } from "../plan/work";
import { dartCorners, moveMouth } from "../dart/moveMouth";

/**
 * Mouth width that keeps a dart's angle when its end is elsewhere.
 *
 * @param angle  the angle to keep, radians, below π/2
 * @param length from the new end to the mouth line, square to it, mm
 * @param aside  how far the new end lies to the side of the middle of the mouth, mm
 * @returns w with tan θ = w·length / (length² + aside² − w²/4); for aside 0 this is w′ = w ℓ′/ℓ
 * @source the tangent of the difference of the two legs' directions
 */
export function mouthForAngle(angle: Radians, length: Mm, aside: Mm): Mm {
  const tan = Math.tan(angle);
  return (2 * (Math.sqrt(length * length + tan * tan * (length * length + aside * aside)) - length)) / tan;
}

/** The piece with its dart's end moved, before legs and seam are trued and anything is given back. */
export function applyDartEnd(piece: Piece, alteration: DartEndAlteration): Result<Piece, SlipFailure> {
  const name: DartName = alteration.dart.dart;
  const dart = dartOf(piece, name);
  const corners = dartCorners(piece, name);
  const apex = apexAfter(corners, alteration);
  const middle = midpoint(corners.inner, corners.outer);
  const { shorten } = apexOffset(corners, apex);
  const left = axisLength(corners) - shorten;
  if (left < SHORTEST_DART) return fail({ code: "slip/too-short", most: axisLength(corners) - SHORTEST_DART });
  const moved: Piece = {
    ...piece,
    points: { ...piece.points, [dart.apex]: { ...must(piece.points[dart.apex], dart.apex), at: apex } },
  };
  if (alteration.hold === "mouth") return ok(moved);
  const angle = angleAt(corners.apex, corners.inner, corners.outer);
  const width = distance(corners.inner, corners.outer);
  const aside = Math.sqrt(Math.max(0, distance(apex, middle) ** 2 - left ** 2));
  const change = (mouthForAngle(angle, left, aside) - width) / 2;
  return moveMouth(moved, name, change, change);
}
