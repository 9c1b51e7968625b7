/** Moving a dart's end: shorten, lengthen, sideways; the mouth held or the fullness held. */
import type { DartEndAlteration } from "../../decisions/alteration";
import type { AlterationFailure } from "../outcome/alterationFailure";
import { isInOutline } from "../../geometry/outline";
import { angleAt, between, distance, midpoint, type PiecePoint } from "../../geometry/point";
import { apexAfter, apexOffset, axisLength } from "../../dart/dartFrame";
import { fail, invariant, ok, type Result } from "../../result";
import { dartOf, type DartName, type Piece } from "../../pattern/piece";
import { outlineOf } from "../../pattern/ring";
import { SHORTEST_DART, SOLVER_ACCURACY } from "../../tolerance";
import type { Mm, Radians } from "../../units";
import { dartCorners, moveMouth } from "../../dart/moveMouth";

/**
 * Mouth width that keeps a dart's angle when its end is elsewhere.
 *
 * @param angle  the angle to keep, radians, between 0 and π
 * @param length from the new end to the mouth line, square to it, mm
 * @param aside  how far the new end lies to the side of the middle of the mouth, mm
 * @returns w with tan θ = w·length / (length² + aside² − w²/4); for aside 0 this is w′ = w ℓ′/ℓ
 * @source the tangent of the difference of the two legs' directions
 */
export function mouthForAngle(angle: Radians, length: Mm, aside: Mm): Mm {
  const cos = Math.cos(angle) * length;
  const sin = Math.sin(angle);
  return (2 * (Math.sqrt(cos * cos + sin * sin * (length * length + aside * aside)) - cos)) / sin;
}

/** Looks along the way, and halvings where it leaves the piece: to well under a tenth of a millimetre on any piece. */
const LOOKS = 32;
const HALVINGS = 12;

/** null where the end lies on the piece; else how far along it the piece is left, mm, on the near side. */
function lengthOnPiece(piece: Piece, from: PiecePoint, to: PiecePoint): Mm | null {
  const outline = outlineOf(piece);
  const isOn = (share: number): boolean => isInOutline(outline, between(from, to, share));
  if (isOn(1)) return null;
  let off = 1;
  for (let look = 1; look <= LOOKS && off === 1; look += 1) if (!isOn(look / LOOKS)) off = look / LOOKS;
  let on = off - 1 / LOOKS;
  for (let round = 0; round < HALVINGS; round += 1) {
    const middle = (on + off) / 2;
    if (isOn(middle)) on = middle;
    else off = middle;
  }
  return on * distance(from, to);
}

/** The piece with its dart's end moved, before legs and seam are trued and anything is given back. */
export function applyDartEnd(piece: Piece, alteration: DartEndAlteration): Result<Piece, AlterationFailure> {
  const name: DartName = alteration.dart.dart;
  const dart = dartOf(piece, name);
  const corners = dartCorners(piece, name);
  const apex = apexAfter(corners, alteration);
  const middle = midpoint(corners.inner, corners.outer);
  const { shorten } = apexOffset(corners, apex);
  const left = axisLength(corners) - shorten;
  if (left < SHORTEST_DART) return fail({ code: "alteration/too-short", most: axisLength(corners) - SHORTEST_DART });
  const onPiece = lengthOnPiece(piece, corners.apex, apex);
  if (onPiece !== null) return fail({ code: "alteration/end-outside-piece", most: onPiece });
  const moved: Piece = {
    ...piece,
    points: { ...piece.points, [dart.apex]: { ...invariant(piece.points[dart.apex], dart.apex), at: apex } },
  };
  if (alteration.hold === "mouth") return ok(moved);
  const angle = angleAt(corners.apex, corners.inner, corners.outer);
  const width = distance(corners.inner, corners.outer);
  const aside = Math.sqrt(Math.max(0, distance(apex, middle) ** 2 - left ** 2));
  return openTo(moved, name, angle, (mouthForAngle(angle, left, aside) - width) / 2);
}

/** Rounds of correction at the most; each leaves a small part of the error. */
const ROUNDS = 8;

/** The mouth moved until the dart has an angle: where its ends slide along a curved seam, the straight mouth's sum is not enough. */
function openTo(piece: Piece, name: DartName, angle: Radians, change: Mm): Result<Piece, AlterationFailure> {
  let amount = change;
  let opened = moveMouth(piece, name, amount, amount);
  for (let round = 0; round < ROUNDS && opened.ok; round += 1) {
    const { apex, inner, outer } = dartCorners(opened.value, name);
    // An angle's worth at the end of a leg, half of it at each end of the mouth.
    const missed = ((angle - angleAt(apex, inner, outer)) * distance(apex, inner)) / 2;
    if (Math.abs(missed) < SOLVER_ACCURACY) break;
    amount += missed;
    opened = moveMouth(piece, name, amount, amount);
  }
  return opened;
}
