/** The side seam and the waist seam of a bodice block, the same on front and back but for their numbers. */
import { cubicLength } from "../geometry/bezierLength";
import { directionOf, piecePoint, type PiecePoint } from "../geometry/point";
import { radians, type Mm, type Radians } from "../units";
import type { Edge, NamedPoint } from "../pattern/piece";
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
} from "../pattern/namedEdges";

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

/** The points that come with them, in the order of a block's own. */
type SideAndWaistPoint =
  | "underarm"
  | "sideBust"
  | "sideWaist"
  | "centreWaist"
  | "waistDartApex"
  | "waistDartInner"
  | "waistDartOuter";

export interface SideAndWaist {
  readonly points: Readonly<Record<SideAndWaistPoint, NamedPoint>>;
  readonly edges: readonly Edge[];
}

/**
 * The points and the edges from the underarm down the side and along the waist to the centre.
 *
 * The waist seam meets the centre line, the legs of the dart and the side seam squarely, so that it runs smooth when
 * sewn; it is therefore a little longer than the straight draft, and the dart is widened by just that, so that the
 * finished waist is exact.
 */
export function bodiceSideAndWaist(w: BodiceWaist): SideAndWaist {
  const sideBust = piecePoint(w.share, w.bustLine);
  const sideWaist = piecePoint(w.share - w.side, w.waistLine + SIDE_WAIST_DROP);
  const slope = directionOf(sideBust, sideWaist) - DOWN;
  const arriving = radians(DOWN + SIDE_ARRIVING * slope);
  const sideControls = controls(sideBust, radians(DOWN + SIDE_LEAVING * slope), sideWaist, arriving);
  const waistAtSide = radians(arriving + Math.PI / 2);

  let intake = w.dart;
  let waist = waistSeam(w, sideWaist, waistAtSide, intake);
  // Two rounds bring the finished waist to well under a micrometre of the draft.
  for (let round = 0; round < 2; round += 1) {
    intake += lengthOf(waist) - w.finished;
    waist = waistSeam(w, sideWaist, waistAtSide, intake);
  }
  const { outer, inner, centre, toOuter, toCentre } = waist;
  return {
    points: {
      underarm: named(w.share, w.underarm, "underarm"),
      sideBust: { at: sideBust, level: "bust" },
      sideWaist: { at: sideWaist, level: "waist" },
      centreWaist: { at: centre, level: "waist" },
      waistDartApex: named(w.dartX, w.dartEnd, "bust"),
      waistDartInner: { at: inner, level: "bust" },
      waistDartOuter: { at: outer, level: "bust" },
    },
    edges: [
      straight("underarm", "sideBust", "side"),
      curved("sideBust", "sideWaist", "side", sideControls[0], sideControls[1]),
      curved("sideWaist", "waistDartOuter", "waist", toOuter[0], toOuter[1]),
      mouth("waistDartOuter", "waistDartInner", "waist", "waistDart"),
      curved("waistDartInner", "centreWaist", "waist", toCentre[0], toCentre[1]),
    ],
  };
}

/** The waist seam with its dart, from the side to the centre: all that is drawn in rounds. */
interface WaistSeam {
  readonly sideWaist: PiecePoint;
  readonly outer: PiecePoint;
  readonly inner: PiecePoint;
  readonly centre: PiecePoint;
  readonly toOuter: readonly [PiecePoint, PiecePoint];
  readonly toCentre: readonly [PiecePoint, PiecePoint];
}

function waistSeam(w: BodiceWaist, sideWaist: PiecePoint, waistAtSide: Radians, intake: Mm): WaistSeam {
  const halfAngle = Math.atan2(intake / 2, w.waistLine - w.dartEnd);
  // From level at the centre to square with the leg: the seam falls by half of that angle's slope.
  const y = w.waistLine + (w.dartX - intake / 2) * Math.tan(halfAngle / 2);
  const inner = piecePoint(w.dartX - intake / 2, y);
  const outer = piecePoint(w.dartX + intake / 2, y);
  const centre = piecePoint(0, w.waistLine);
  return {
    sideWaist,
    outer,
    inner,
    centre,
    toOuter: controls(sideWaist, waistAtSide, outer, radians(INWARD - halfAngle)),
    toCentre: controls(inner, radians(INWARD + halfAngle), centre, INWARD),
  };
}

const lengthOf = ({ sideWaist, outer, inner, centre, toOuter, toCentre }: WaistSeam): Mm =>
  cubicLength({ a: sideWaist, c1: toOuter[0], c2: toOuter[1], b: outer }) +
  cubicLength({ a: inner, c1: toCentre[0], c2: toCentre[1], b: centre });
