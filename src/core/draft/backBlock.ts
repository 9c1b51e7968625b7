/** The back of the demo bodice block. A draft of the project's own; proportions are common practice, no source. */
import { piecePoint, polar } from "../geometry/point";
import type { Piece } from "../pattern/piece";
import { radians, radiansFromDegrees, type Mm } from "../units";
import { bodiceSideAndWaist } from "./bodiceWaist";
import type { DraftMeasures } from "./draftMeasures";
import { controls, curved, DOWN, named, OUTWARD, straight } from "../pattern/namedEdges";
import { lowerArmhole, upperArmhole } from "./armhole";
import { shapingOf } from "./shaping";
import { SHOULDER_EASE } from "../pattern/shoulderEase";

const SHOULDER_FALL = radiansFromDegrees(19);
const NECK_RISE: Mm = 18;
const ACROSS_BACK_EASE: Mm = 4;
/** The waist dart's middle, as a share of the back's width, and how far below the bust line it ends. */
const DART_PLACE = 0.42;
const DART_BELOW_BUST_LINE: Mm = 5;

/**
 * Drafts the half back: origin at the nape, centre back down the y axis, stitch lines, waist dart open.
 *
 * @param m measures of one size, mm
 */
export function draftBackBlock(m: DraftMeasures): Piece {
  const s = shapingOf(m);
  const nape = piecePoint(0, 0);
  const sideNeck = piecePoint(m.neckBaseGirth / 5 - 2, -NECK_RISE);
  const tip = polar(sideNeck, SHOULDER_FALL, m.shoulderLength + SHOULDER_EASE);
  const touch = piecePoint(m.acrossBack / 2 + ACROSS_BACK_EASE, s.across);
  const underarm = piecePoint(s.backShare, s.underarm);

  const squareToShoulder = radians(SHOULDER_FALL + DOWN);
  const neck = controls(nape, OUTWARD, sideNeck, radians(SHOULDER_FALL - Math.PI / 2), 0.6, 0.15);
  const upper = upperArmhole(tip, squareToShoulder, touch, DOWN);
  const lower = lowerArmhole(touch, DOWN, underarm);
  const sideAndWaist = bodiceSideAndWaist({
    share: s.backShare,
    side: s.side,
    underarm: s.underarm,
    bustLine: s.bustLine,
    waistLine: s.waistLine,
    dartX: DART_PLACE * s.backShare,
    dartEnd: s.bustLine + DART_BELOW_BUST_LINE,
    dart: s.dart,
    finished: s.backWaist,
  });
  return {
    name: "back",
    points: {
      centreNeck: { at: nape, level: "neck" },
      sideNeck: { at: sideNeck, level: "neck" },
      shoulderTip: { at: tip, level: "shoulder" },
      armholeTouch: { at: touch, level: "shoulder" },
      centreBust: named(0, s.bustLine, "bust"),
      underBustCentre: named(0, s.underBustLine, "underBust"),
      ...sideAndWaist.points,
    },
    edges: [
      curved("centreNeck", "sideNeck", "neck", neck[0], neck[1]),
      straight("sideNeck", "shoulderTip", "shoulder"),
      curved("shoulderTip", "armholeTouch", "armhole", upper[0], upper[1]),
      curved("armholeTouch", "underarm", "armhole", lower[0], lower[1]),
      ...sideAndWaist.edges,
      straight("centreWaist", "centreBust", "centre"),
      straight("centreBust", "centreNeck", "centre"),
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
      { level: "bust", along: { points: ["centreBust", "sideBust"] } },
      { level: "waist", along: { seam: "waist" } },
    ],
    centreOnFold: false,
  };
}
