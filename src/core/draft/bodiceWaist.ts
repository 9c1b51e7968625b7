/** The side seam and the waist seam of a bodice block, the same on front and back but for their numbers. */
import { directionOf, piecePoint, type PiecePoint } from "../geometry/point";
import { invariant } from "../result";
import { radians, type Mm, type Radians } from "../units";
import type { Edge } from "../pattern/piece";
import {
  controls,
  curved,
  DOWN,
  INWARD,
  mouth,
  named,
  SIDE_ARRIVING,
  SIDE_LEAVING,
  SIDE_WAIST_DROP,
  straight,
  type Points,
} from "../pattern/namedEdges";
import { edgeLength } from "../geometry/edgeCurve";

export interface BodiceWaist {
  readonly share: Mm;
  readonly side: Mm;
  readonly underarm: Mm;
  readonly bustLine: Mm;
  readonly waistLine: Mm;
  /** Where the dart's middle lies, the height of its drawn end, and the waist it must leave. */
  readonly dartX: Mm;
  readonly dartEnd: Mm;
  readonly dart: Mm;
  readonly finished: Mm;
}

/**
 * Adds the points and returns the edges from the underarm down the side and along the waist to the centre.
 *
 * The waist seam meets the centre line, the legs of the dart and the side seam squarely, so that it runs smooth when
 * sewn; it is therefore a little longer than the straight draft, and the dart is widened by just that, so that the
 * finished waist is exact.
 */
export function bodiceSideAndWaist(points: Points, w: BodiceWaist): Edge[] {
  const underarm = piecePoint(w.share, w.underarm);
  const sideBust = piecePoint(w.share, w.bustLine);
  const sideWaist = piecePoint(w.share - w.side, w.waistLine + SIDE_WAIST_DROP);
  points.underarm = { at: underarm, level: "underarm" };
  points.sideBust = { at: sideBust, level: "bust" };
  points.sideWaist = { at: sideWaist, level: "waist" };
  points.centreWaist = named(0, w.waistLine, "waist");
  points.waistDartApex = named(w.dartX, w.dartEnd, "bust");

  const slope = directionOf(sideBust, sideWaist) - DOWN;
  const arriving = radians(DOWN + SIDE_ARRIVING * slope);
  const sideControls = controls(sideBust, radians(DOWN + SIDE_LEAVING * slope), sideWaist, arriving);
  const waistAtSide = radians(arriving + Math.PI / 2);

  let intake = w.dart;
  let waist = waistEdges(points, w, sideWaist, waistAtSide, intake);
  // Two rounds bring the finished waist to well under a micrometre of the draft.
  for (let round = 0; round < 2; round += 1) {
    intake += waist.finished - w.finished;
    waist = waistEdges(points, w, sideWaist, waistAtSide, intake);
  }
  return [
    straight("underarm", "sideBust", "side"),
    curved("sideBust", "sideWaist", "side", sideControls[0], sideControls[1]),
    ...waist.edges,
  ];
}

function waistEdges(
  points: Points,
  w: BodiceWaist,
  sideWaist: PiecePoint,
  waistAtSide: Radians,
  intake: Mm,
): { edges: Edge[]; finished: Mm } {
  const halfAngle = Math.atan2(intake / 2, w.waistLine - w.dartEnd);
  // From level at the centre to square with the leg: the seam falls by half of that angle's slope.
  const y = w.waistLine + (w.dartX - intake / 2) * Math.tan(halfAngle / 2);
  const inner = piecePoint(w.dartX - intake / 2, y);
  const outer = piecePoint(w.dartX + intake / 2, y);
  points.waistDartInner = { at: inner, level: "bust" };
  points.waistDartOuter = { at: outer, level: "bust" };
  const centre = invariant(points.centreWaist, "centreWaist").at;
  const outerControls = controls(sideWaist, waistAtSide, outer, radians(INWARD - halfAngle));
  const innerControls = controls(inner, radians(INWARD + halfAngle), centre, INWARD);
  const edges = [
    curved("sideWaist", "waistDartOuter", "waist", outerControls[0], outerControls[1]),
    mouth("waistDartOuter", "waistDartInner", "waist", "waistDart"),
    curved("waistDartInner", "centreWaist", "waist", innerControls[0], innerControls[1]),
  ];
  const finished =
    edgeLength({ a: sideWaist, b: outer, curve: { c1: outerControls[0], c2: outerControls[1] } }) +
    edgeLength({ a: inner, b: centre, curve: { c1: innerControls[0], c2: innerControls[1] } });
  return { edges, finished };
}
