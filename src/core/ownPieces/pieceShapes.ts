/**
 * What a piece usually looks like: its corners round the ring, with the seams between. Only to propose which corner is which:
 * nothing is forced into it.
 */
import type { StyleName } from "../decisions/pattern";
import type { LevelName, PieceName, PointName, SeamName } from "../pattern/piece";

/** A corner and the seam on to the next: turn and way in degrees, place as shares of the piece's width and height. */
export interface ShapeCorner {
  readonly name: PointName;
  readonly level: LevelName;
  readonly turn: number;
  readonly x: number;
  readonly y: number;
  readonly seam: SeamName;
  readonly way: number;
}

export interface PieceShape {
  readonly corners: readonly ShapeCorner[];
  /** Whether its centre lies on the fold as a rule. */
  readonly onFold: boolean;
}

const corner = (
  name: PointName,
  level: LevelName,
  turn: number,
  at: readonly [number, number],
  seam: SeamName,
  way: number,
): ShapeCorner => ({ name, level, turn, x: at[0], y: at[1], seam, way });

const FRONT: PieceShape = {
  onFold: true,
  corners: [
    corner("centreNeck", "neck", 85, [0, 0.18], "neck", -50),
    corner("sideNeck", "neck", 95, [0.3, 0], "shoulder", 22),
    corner("shoulderTip", "shoulder", 85, [0.75, 0.1], "armhole", 70),
    corner("underarm", "underarm", 85, [0.97, 0.47], "side", 95),
    corner("sideWaist", "waist", 88, [0.95, 1], "waist", 180),
    corner("centreWaist", "waist", 90, [0, 1], "centre", -90),
  ],
};

const BACK: PieceShape = {
  onFold: false,
  corners: [
    corner("centreNeck", "neck", 85, [0, 0.05], "neck", -15),
    corner("sideNeck", "neck", 95, [0.3, 0], "shoulder", 20),
    corner("shoulderTip", "shoulder", 85, [0.78, 0.1], "armhole", 74),
    corner("underarm", "underarm", 85, [1, 0.54], "side", 95),
    corner("sideWaist", "waist", 85, [0.93, 1], "waist", 180),
    corner("centreWaist", "waist", 90, [0, 1], "centre", -90),
  ],
};

const CUP: PieceShape = {
  onFold: false,
  corners: [
    corner("centreNeck", "neck", 85, [0, 0.45], "neck", -46),
    corner("strapInner", "shoulder", 80, [0.3, 0], "strap", 12),
    corner("strapOuter", "shoulder", 70, [0.44, 0.04], "armhole", 20),
    corner("underarm", "underarm", 60, [0.92, 0.25], "side", 78),
    corner("sideUnderBust", "underBust", 90, [1, 0.77], "underBust", 170),
    corner("underBustCentre", "underBust", 90, [0, 1], "centre", -90),
  ],
};

const STRAPPED_BACK: PieceShape = {
  onFold: false,
  corners: [
    corner("centreNeck", "neck", 85, [0, 0.28], "neck", -20),
    corner("strapInner", "shoulder", 70, [0.37, 0], "strap", 7),
    corner("strapOuter", "shoulder", 60, [0.53, 0.04], "armhole", 13),
    corner("underarm", "underarm", 80, [1, 0.25], "side", 94),
    corner("sideUnderBust", "underBust", 85, [0.97, 1], "underBust", 180),
    corner("underBustCentre", "underBust", 90, [0, 1], "centre", -90),
  ],
};

const BAND: PieceShape = {
  onFold: true,
  corners: [
    corner("underBustCentre", "underBust", 90, [0, 0.03], "underBust", 8),
    corner("sideUnderBust", "underBust", 95, [1, 0.28], "side", 108),
    corner("sideWaist", "waist", 85, [0.88, 1], "waist", 189),
    corner("centreWaist", "waist", 90, [0, 0.75], "centre", -90),
  ],
};

const BASQUE: PieceShape = {
  onFold: true,
  corners: [
    corner("centreWaist", "waist", 90, [0, 0.06], "waist", -3),
    corner("sideWaist", "waist", 85, [0.87, 0], "side", 82),
    corner("sideHem", "hip", 90, [1, 0.97], "hem", 180),
    corner("centreHem", "hip", 90, [0, 1], "centre", -90),
  ],
};

const STRAP: PieceShape = {
  onFold: false,
  corners: [
    corner("strapBackInner", "shoulder", 90, [0, 0], "strap", 0),
    corner("strapBackOuter", "shoulder", 90, [1, 0], "armhole", 90),
    corner("strapFrontOuter", "shoulder", 90, [1, 1], "strap", 180),
    corner("strapFrontInner", "shoulder", 90, [0, 1], "neck", -90),
  ],
};

const ARMHOLE_CENTRE_FRONT: PieceShape = {
  onFold: true,
  corners: [
    corner("centreNeck", "neck", 85, [0, 0.18], "neck", -48),
    corner("sideNeck", "neck", 95, [0.38, 0], "shoulder", 23),
    corner("shoulderTip", "shoulder", 80, [1, 0.11], "armhole", 97),
    corner("princessTop", "bust", 30, [0.93, 0.3], "princess", 105),
    corner("princessWaist", "bust", 85, [0.44, 1], "waist", 183),
    corner("centreWaist", "waist", 90, [0, 0.98], "centre", -90),
  ],
};

const ARMHOLE_SIDE_FRONT: PieceShape = {
  onFold: false,
  corners: [
    corner("princessTop", "bust", 130, [0.62, 0], "armhole", 60),
    corner("underarm", "underarm", 85, [1, 0.32], "side", 95),
    corner("sideWaist", "waist", 85, [0.88, 1], "waist", 180),
    corner("princessWaist", "bust", 95, [0.12, 1], "princess", -73),
  ],
};

const SHOULDER_CENTRE_FRONT: PieceShape = {
  onFold: true,
  corners: [
    corner("centreNeck", "neck", 85, [0, 0.18], "neck", -48),
    corner("sideNeck", "neck", 95, [0.55, 0], "shoulder", 23),
    corner("princessTop", "shoulder", 75, [1, 0.05], "princess", 97),
    corner("princessWaist", "bust", 85, [0.63, 1], "waist", 183),
    corner("centreWaist", "waist", 90, [0, 0.99], "centre", -90),
  ],
};

const SHOULDER_SIDE_FRONT: PieceShape = {
  onFold: false,
  corners: [
    corner("princessTop", "shoulder", 115, [0.52, 0], "shoulder", 38),
    corner("shoulderTip", "shoulder", 70, [0.85, 0.1], "armhole", 83),
    corner("underarm", "underarm", 85, [1, 0.52], "side", 95),
    corner("sideWaist", "waist", 85, [0.88, 1], "waist", 180),
    corner("princessWaist", "bust", 95, [0.12, 1], "princess", -80),
  ],
};

/** The shape of a piece in a style; null for pieces without a name of ours, and those that the style does not have. */
export function shapeOf(name: PieceName, style: StyleName): PieceShape | null {
  switch (name) {
    case "front":
      return FRONT;
    case "back":
      return style === "midriff" ? STRAPPED_BACK : BACK;
    case "cup":
      return CUP;
    case "frontBand":
      return BAND;
    case "backBand":
      return { ...BAND, onFold: false };
    case "frontBasque":
      return BASQUE;
    case "backBasque":
      return { ...BASQUE, onFold: false };
    case "strap":
      return STRAP;
    case "centreFront":
      return style === "princessShoulder" ? SHOULDER_CENTRE_FRONT : ARMHOLE_CENTRE_FRONT;
    case "sideFront":
      return style === "princessShoulder" ? SHOULDER_SIDE_FRONT : ARMHOLE_SIDE_FRONT;
    default:
      return null;
  }
}
