/**
 * The fitted basque from waist to hip, front and back, sewn to the bodice at the waist. Its waist seam is drafted to
 * the very length of the bodice's, and its dart is narrower than the bodice's by the same amount in every size, so that
 * the two waists still match when sizes are blended.
 */
import { cubicLength } from "../geometry/bezierLength";
import { piecePoint, type PiecePoint } from "../geometry/point";
import type { Piece } from "../pattern/piece";
import { radians, type Mm, type Radians } from "../units";
import type { DraftMeasures } from "./draftMeasures";
import { controls, curved, DOWN, mouth, named, OUTWARD, straight } from "../pattern/namedEdges";
import { shapingOf } from "./shaping";

const HEM_BELOW_HIP: Mm = 30;
/** The hip line is drafted wider in front than behind by twice this, as the bust line is. */
const FRONT_OVER_BACK: Mm = 5;
const DART_PLACE = { front: 0.42, back: 0.42 };
const DART_LENGTH = { front: 95, back: 130 };
const SIDE_START = 1.5;

export interface BasqueSide {
  readonly side: "front" | "back";
  /** Bodice dart less basque dart, the same in every size. */
  readonly dartLess: Mm;
}

/**
 * Drafts one half basque: origin at the centre of the waist.
 *
 * @param m measures of one size, mm
 * @param bodiceWaist finished waist of the bodice half it is sewn to, mm
 */
export function draftBasque(m: DraftMeasures, bodiceWaist: Mm, { side, dartLess }: BasqueSide): Piece {
  const s = shapingOf(m);
  const intake = s.dart - dartLess;
  const hip = (m.hip + m.ease.hip) / 4 + (side === "front" ? FRONT_OVER_BACK : -FRONT_OVER_BACK);
  let sideX = bodiceWaist + intake;
  let waist = waistSeam(m, hip, sideX, bodiceWaist, intake, side);
  for (let round = 0; round < 2; round += 1) {
    sideX -= lengthOf(waist) - bodiceWaist;
    waist = waistSeam(m, hip, sideX, bodiceWaist, intake, side);
  }
  return drawn(m, hip, side, waist);
}

/**
 * How far the side of the waist rises above its centre: the seam turns from falling away from the dart to rising to the
 * side, and ends where that turn is even. Front and back rise alike, by what a piece half-way between them would, since
 * their side seams are sewn together.
 */
function sideRiseOf(bodiceWaist: Mm, sideX: Mm, intake: Mm, chordSlope: number, side: "front" | "back"): Mm {
  const toMiddle = side === "front" ? -FRONT_OVER_BACK : FRONT_OVER_BACK;
  const halfAngle = Math.atan2(intake, DART_LENGTH.front + DART_LENGTH.back);
  const dartX = ((DART_PLACE.front + DART_PLACE.back) / 2) * (bodiceWaist + toMiddle);
  return (
    (dartX - intake / 2) * Math.tan(halfAngle / 2) +
    (sideX + toMiddle - dartX - intake / 2) * Math.tan((SIDE_START * chordSlope - halfAngle) / 2)
  );
}

/** The waist seam with its dart: all that is drawn in rounds. */
interface WaistSeam {
  readonly centre: PiecePoint;
  readonly inner: PiecePoint;
  readonly outer: PiecePoint;
  readonly sideWaist: PiecePoint;
  readonly toInner: readonly [PiecePoint, PiecePoint];
  readonly toSide: readonly [PiecePoint, PiecePoint];
  readonly dartEnd: PiecePoint;
  /** The direction in which the side seam leaves it. */
  readonly leaving: Radians;
}

function waistSeam(
  m: DraftMeasures,
  hip: Mm,
  sideX: Mm,
  bodiceWaist: Mm,
  intake: Mm,
  side: "front" | "back",
): WaistSeam {
  const dartX = DART_PLACE[side] * bodiceWaist;
  const length = DART_LENGTH[side];
  const halfAngle = Math.atan2(intake / 2, length);
  const rise = (dartX - intake / 2) * Math.tan(halfAngle / 2);
  const chordSlope = Math.atan2(hip - sideX, m.waistToHip);
  const leaving = radians(DOWN - SIDE_START * chordSlope);
  const centre = piecePoint(0, 0);
  const inner = piecePoint(dartX - intake / 2, -rise);
  const outer = piecePoint(dartX + intake / 2, -rise);
  const sideWaist = piecePoint(sideX, -sideRiseOf(bodiceWaist, sideX, intake, chordSlope, side));
  return {
    centre,
    inner,
    outer,
    sideWaist,
    toInner: controls(centre, OUTWARD, inner, radians(OUTWARD - halfAngle)),
    toSide: controls(outer, radians(OUTWARD + halfAngle), sideWaist, radians(leaving - Math.PI / 2)),
    dartEnd: piecePoint(dartX, length),
    leaving,
  };
}

const lengthOf = ({ centre, inner, outer, sideWaist, toInner, toSide }: WaistSeam): Mm =>
  cubicLength({ a: centre, c1: toInner[0], c2: toInner[1], b: inner }) +
  cubicLength({ a: outer, c1: toSide[0], c2: toSide[1], b: sideWaist });

function drawn(
  m: DraftMeasures,
  hip: Mm,
  side: "front" | "back",
  { centre, inner, outer, sideWaist, toInner, toSide, dartEnd, leaving }: WaistSeam,
): Piece {
  const sideHip = piecePoint(hip, m.waistToHip);
  const hem = m.waistToHip + HEM_BELOW_HIP;
  const down = controls(sideWaist, leaving, sideHip, DOWN, 0.33, 0.4);
  return {
    name: side === "front" ? "frontBasque" : "backBasque",
    points: {
      centreWaist: { at: centre, level: "waist" },
      waistDartInner: { at: inner, level: "bust" },
      waistDartOuter: { at: outer, level: "bust" },
      waistDartApex: { at: dartEnd, level: "bust" },
      sideWaist: { at: sideWaist, level: "waist" },
      sideHip: { at: sideHip, level: "hip" },
      sideHem: named(hip, hem, "hip"),
      centreHem: named(0, hem, "hip"),
      centreHip: named(0, m.waistToHip, "hip"),
    },
    edges: [
      curved("centreWaist", "waistDartInner", "waist", toInner[0], toInner[1]),
      mouth("waistDartInner", "waistDartOuter", "waist", "waistDart"),
      curved("waistDartOuter", "sideWaist", "waist", toSide[0], toSide[1]),
      curved("sideWaist", "sideHip", "side", down[0], down[1]),
      straight("sideHip", "sideHem", "side"),
      straight("sideHem", "centreHem", "hem"),
      straight("centreHem", "centreHip", "centre"),
      straight("centreHip", "centreWaist", "centre"),
    ],
    darts: [
      {
        name: "waistDart",
        seam: "waist",
        inner: "waistDartInner",
        outer: "waistDartOuter",
        apex: "waistDartApex",
        aimsAt: null,
      },
    ],
    levelLines: [
      { level: "waist", along: { seam: "waist" } },
      { level: "hip", along: { points: ["centreHip", "sideHip"] } },
    ],
    centreOnFold: side === "front",
  };
}
