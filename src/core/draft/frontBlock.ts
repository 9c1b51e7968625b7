/**
 * The front of the demo bodice block: waist dart, and the bust dart open in the middle of the shoulder. A draft of the
 * project's own; proportions are common practice, no source.
 */
import { between, piecePoint, polar, rotateAbout } from "../geometry/point";
import type { Piece } from "../pattern/piece";
import { radians, radiansFromDegrees, type Mm } from "../units";
import { bodiceSideAndWaist } from "./bodiceWaist";
import type { DraftMeasures } from "./draftMeasures";
import { controls, curved, DOWN, mouth, named, OUTWARD, straight } from "../pattern/namedEdges";
import { lowerArmhole, upperArmhole } from "./armhole";
import { shapingOf } from "./shaping";

const SHOULDER_FALL = radiansFromDegrees(23);
const NECK_DEPTH_EASE: Mm = 4;
const ACROSS_FRONT_EASE: Mm = 2;
/** The waist dart ends this far below the bust point (common practice: 15 to 25 mm). */
const WAIST_DART_STOP: Mm = 20;

/**
 * Drafts the half front: y from the height of the nape, centre front down the y axis, stitch lines, darts open.
 * Everything outside the shoulder dart is turned about the bust point by the dart's angle.
 *
 * @param m measures of one size, mm
 */
export function draftFrontBlock(m: DraftMeasures): Piece {
  const s = shapingOf(m);
  const bustPoint = piecePoint(s.bustPointX, s.bustLine);
  const centreNeck = piecePoint(0, s.frontSideNeck.y + m.neckBaseGirth / 5 + NECK_DEPTH_EASE);
  const sideNeck = piecePoint(s.frontSideNeck.x, s.frontSideNeck.y);
  const closedTip = polar(sideNeck, SHOULDER_FALL, m.shoulderLength);
  const dartInner = between(sideNeck, closedTip, 0.5);
  const dartOuter = rotateAbout(dartInner, bustPoint, m.bustDart);
  const tip = rotateAbout(closedTip, bustPoint, m.bustDart);
  const closedTouch = piecePoint(m.acrossFront / 2 + ACROSS_FRONT_EASE, s.across);
  const touch = rotateAbout(closedTouch, bustPoint, m.bustDart);
  const underarm = piecePoint(s.frontShare, s.underarm);
  const neck = controls(centreNeck, OUTWARD, sideNeck, radians(SHOULDER_FALL - Math.PI / 2), 0.4, 0.38);
  // The dart turns what lies above the touch against what lies below it; the armhole passes midway between the two.
  const half = m.bustDart / 2;
  const closedUpper = upperArmhole(closedTip, radians(SHOULDER_FALL + DOWN), closedTouch, radians(DOWN - half));
  const [upperAtTip, upperAtTouch] = [
    rotateAbout(closedUpper[0], bustPoint, m.bustDart),
    rotateAbout(closedUpper[1], bustPoint, m.bustDart),
  ];
  const lower = lowerArmhole(touch, radians(DOWN + half), underarm);
  const sideAndWaist = bodiceSideAndWaist({
    share: s.frontShare,
    side: s.side,
    underarm: s.underarm,
    bustLine: s.bustLine,
    waistLine: s.waistLine,
    dartX: s.bustPointX,
    dartEnd: s.bustLine + WAIST_DART_STOP,
    dart: s.dart,
    finished: s.frontWaist,
  });
  return {
    name: "front",
    points: {
      centreNeck: { at: centreNeck, level: "neck" },
      sideNeck: { at: sideNeck, level: "neck" },
      shoulderDartInner: { at: dartInner, level: "shoulder" },
      shoulderDartOuter: { at: dartOuter, level: "shoulder" },
      shoulderDartApex: { at: bustPoint, level: "bust" },
      shoulderTip: { at: tip, level: "shoulder" },
      armholeTouch: { at: touch, level: "shoulder" },
      bustPoint: { at: bustPoint, level: "bust" },
      bustLineInner: { at: bustPoint, level: "bust" },
      bustLineOuter: { at: bustPoint, level: "bust" },
      centreBust: named(0, s.bustLine, "bust"),
      underBustCentre: named(0, s.underBustLine, "underBust"),
      ...sideAndWaist.points,
    },
    edges: [
      curved("centreNeck", "sideNeck", "neck", neck[0], neck[1]),
      straight("sideNeck", "shoulderDartInner", "shoulder"),
      mouth("shoulderDartInner", "shoulderDartOuter", "shoulder", "shoulderDart"),
      straight("shoulderDartOuter", "shoulderTip", "shoulder"),
      curved("shoulderTip", "armholeTouch", "armhole", upperAtTip, upperAtTouch),
      curved("armholeTouch", "underarm", "armhole", lower[0], lower[1]),
      ...sideAndWaist.edges,
      straight("centreWaist", "centreBust", "centre"),
      straight("centreBust", "centreNeck", "centre"),
    ],
    darts: [
      {
        name: "shoulderDart",
        seam: "shoulder",
        inner: "shoulderDartInner",
        outer: "shoulderDartOuter",
        apex: "shoulderDartApex",
        aimsAt: "bustPoint",
      },
      {
        name: "waistDart",
        seam: "waist",
        inner: "waistDartInner",
        outer: "waistDartOuter",
        apex: "waistDartApex",
        aimsAt: "bustPoint",
      },
    ],
    levelLines: [
      { level: "bust", along: { points: ["centreBust", "bustLineInner", "bustLineOuter", "sideBust"] } },
      { level: "waist", along: { seam: "waist" } },
    ],
    centreOnFold: true,
  };
}
