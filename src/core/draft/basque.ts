/**
 * The fitted basque from waist to hip, front and back, sewn to the bodice at the waist. Its waist seam is drafted to
 * the very length of the bodice's, and its dart is narrower than the bodice's by the same amount in every size, so that
 * the two waists still match when sizes are blended.
 */
import { edgeLength } from "../geometry/edgeCurve";
import { piecePoint } from "../geometry/point";
import type { Edge, Piece } from "../pattern/piece";
import { radians, type Mm } from "../units";
import type { DraftMeasures } from "./draftMeasures";
import { controls, curved, DOWN, mouth, named, OUTWARD, straight, type Points } from "../pattern/namedEdges";
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
  let drafted = drawn(m, hip, sideX, bodiceWaist, intake, side);
  for (let round = 0; round < 2; round += 1) {
    sideX -= drafted.waist - bodiceWaist;
    drafted = drawn(m, hip, sideX, bodiceWaist, intake, side);
  }
  return drafted.piece;
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

function drawn(
  m: DraftMeasures,
  hip: Mm,
  sideX: Mm,
  bodiceWaist: Mm,
  intake: Mm,
  side: "front" | "back",
): { piece: Piece; waist: Mm } {
  const points: Points = {};
  const dartX = DART_PLACE[side] * bodiceWaist;
  const length = DART_LENGTH[side];
  const halfAngle = Math.atan2(intake / 2, length);
  const rise = (dartX - intake / 2) * Math.tan(halfAngle / 2);
  const sideHip = piecePoint(hip, m.waistToHip);
  const chordSlope = Math.atan2(hip - sideX, m.waistToHip);
  const leaving = radians(DOWN - SIDE_START * chordSlope);
  const outer = piecePoint(dartX + intake / 2, -rise);
  const waistArriving = radians(leaving - Math.PI / 2);
  const sideRise = sideRiseOf(bodiceWaist, sideX, intake, chordSlope, side);
  const sideWaist = piecePoint(sideX, -sideRise);
  const inner = piecePoint(dartX - intake / 2, -rise);
  const centre = piecePoint(0, 0);
  const hem = m.waistToHip + HEM_BELOW_HIP;
  points.centreWaist = { at: centre, level: "waist" };
  points.waistDartInner = { at: inner, level: "bust" };
  points.waistDartOuter = { at: outer, level: "bust" };
  points.waistDartApex = named(dartX, length, "bust");
  points.sideWaist = { at: sideWaist, level: "waist" };
  points.sideHip = { at: sideHip, level: "hip" };
  points.sideHem = named(hip, hem, "hip");
  points.centreHem = named(0, hem, "hip");
  points.centreHip = named(0, m.waistToHip, "hip");
  const toInner = controls(centre, OUTWARD, inner, radians(OUTWARD - halfAngle));
  const toSide = controls(outer, radians(OUTWARD + halfAngle), sideWaist, waistArriving);
  const down = controls(sideWaist, leaving, sideHip, DOWN, 0.33, 0.4);
  const edges: Edge[] = [
    curved("centreWaist", "waistDartInner", "waist", toInner[0], toInner[1]),
    mouth("waistDartInner", "waistDartOuter", "waist", "waistDart"),
    curved("waistDartOuter", "sideWaist", "waist", toSide[0], toSide[1]),
    curved("sideWaist", "sideHip", "side", down[0], down[1]),
    straight("sideHip", "sideHem", "side"),
    straight("sideHem", "centreHem", "hem"),
    straight("centreHem", "centreHip", "centre"),
    straight("centreHip", "centreWaist", "centre"),
  ];
  const piece: Piece = {
    name: side === "front" ? "frontBasque" : "backBasque",
    points,
    edges,
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
  const waist =
    edgeLength({ a: centre, b: inner, curve: { c1: toInner[0], c2: toInner[1] } }) +
    edgeLength({ a: outer, b: sideWaist, curve: { c1: toSide[0], c2: toSide[1] } });
  return { piece, waist };
}
