/**
 * One figure for each measure: a dressmaker's stand, from the sides that show it best, with the tape laid where it runs.
 * Plain drawing data in units of its own; in front and back views x is 0 on the centre line, in side views the figure
 * looks to the right, and y points down. Middle proportions, not those of anybody: never measured from.
 */
import type { MeasureName } from "../core/measures/measure";
import type { LandmarkName } from "../words/tapeGuide";

export type FigureSide = "front" | "back" | "side" | "standing";

export interface FigureShape {
  /** skin: filled; edge: outline; seam: a line of the stand; shade: a hint of form; ground: wall and floor. */
  readonly kind: "skin" | "edge" | "seam" | "shade" | "ground";
  readonly d: string;
  /** Drawn again on the other side of x = 0. */
  readonly mirrored?: true;
}

export interface FigureLandmark {
  readonly name: LandmarkName;
  readonly x: number;
  readonly y: number;
  /** Its letter, and where the middle of that stands on its base line. */
  readonly letter: { readonly text: string; readonly x: number; readonly y: number };
  /** Ringed on the other side of the centre line as well; the letter stands once. */
  readonly mirrored?: true;
}

export interface FigureView {
  readonly side: FigureSide;
  /** How far to the right of the first view it stands. */
  readonly shift: number;
  readonly body: readonly FigureShape[];
  /** How much smaller than the tape's own units the body is drawn; 1 where the two are the same. */
  readonly scale: number;
  /** What is seen of the tape. */
  readonly near: string;
  /** What runs behind the body. */
  readonly far?: string;
  readonly landmarks: readonly FigureLandmark[];
}

export interface TapeFigure {
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly views: readonly FigureView[];
}

// Half of the stand from the neck to below the hip.
const HALF =
  "M0 7 L9 7 C8.8 14 9.4 19.6 11.8 24 C19 28 29 30.5 36.6 34 C41 36 43.4 41 43.3 48.5 C43.2 56 39.6 63.6 34.6 67 C35.4 74 36 80 35.4 86 C34.4 99 28.4 112 27.5 126 C27 140 37.6 152 39.4 171 C40.3 182 39.6 194 38.4 208";
const ARM = "M36.6 34 C48 36 55 44 56 60 C57 84 56 104 55 150 L40 150 C40 110 38.6 84 35.2 67 C32.6 62 32.2 52 34 43";

const half = (kind: FigureShape["kind"], d: string): FigureShape => ({ kind, d, mirrored: true });
const STAND = [half("skin", `${HALF} L0 208 Z`), half("edge", HALF)];
const ARMHOLE = half("seam", "M34.6 67 C29.5 61.5 29.5 43 36.6 34");
const ARMS = [half("skin", `${ARM} L36.6 34 Z`), half("edge", ARM)];

const FRONT: readonly FigureShape[] = [
  ...STAND,
  half("seam", "M24 30 C22 54 17 74 14.5 89 C12.5 104 12.2 116 12.2 129.6 C14 152 17.4 180 18.4 208"),
  half("shade", "M5.5 97 C12 103.5 23.5 102.5 30 92"),
  { kind: "seam", d: "M0 31 L0 208" },
  { kind: "edge", d: "M-11.8 24 C-8 33 8 33 11.8 24" },
  { kind: "skin", d: "M-9 7 A9 2.6 0 0 1 9 7 A9 2.6 0 0 1 -9 7 Z" },
  { kind: "edge", d: "M-9 7 A9 2.6 0 0 1 9 7 A9 2.6 0 0 1 -9 7 Z" },
];

const BACK: readonly FigureShape[] = [
  ...STAND,
  half("seam", "M24 30 C22 60 14 100 13 129.6 C14 152 18.4 180 19.4 208"),
  half("shade", "M10 56 C13 68 20 73 27 72"),
  { kind: "seam", d: "M0 21 L0 208" },
  { kind: "edge", d: "M-11.8 24 C-8 20 8 20 11.8 24" },
  { kind: "skin", d: "M-9 7 A9 2.6 0 0 1 9 7 A9 2.6 0 0 1 -9 7 Z" },
  { kind: "edge", d: "M-9 7 A9 2.6 0 0 1 9 7 A9 2.6 0 0 1 -9 7 Z" },
];

const PROFILE =
  "M-6 7 C-6 13 -7.5 17 -12 21 C-19 26 -26.5 40 -27 56 C-27.2 80 -17 104 -16 126 C-16.4 140 -32 150 -32 171 C-31.6 186 -27 194 -26 208 L19 208 C21 192 23.6 180 23.6 166 C23.6 152 17.6 140 17.4 126 C17.2 116 19 108 21 102 C25 99.4 29.4 95 29 88 C27 77 13.6 60 8.4 31 C11.6 23 11.8 15 12 7 Z";
const SIDE: readonly FigureShape[] = [
  { kind: "skin", d: PROFILE },
  { kind: "seam", d: "M-4 32 L-1 22" },
  { kind: "seam", d: "M-3 67 C-2 90 0 110 0 128 C-3 150 -4 180 -4 208" },
  { kind: "edge", d: PROFILE },
  { kind: "seam", d: "M-4 32 C-13 36 -14 60 -4 67 C6 64 6 40 -4 32 Z" },
];

/** Of the whole figure, so that it is no taller than the others. */
const STANDING_SCALE = 0.55;

// The whole figure with its back to a wall, the stand's side view at half its scale.
const WHOLE =
  "M-4.5 33 C-4.4 36 -4.6 38 -6 40 C-9.5 42.5 -13.2 49.5 -13.5 57.5 C-13.6 69.5 -8.5 81.5 -8 92.5 C-8.2 99.5 -16 104.5 -16 115 C-15.8 124 -13.4 130 -12.6 138 C-11 152 -8.6 162 -8.6 171 C-9 177 -12.8 183 -12.6 192 C-12.4 204 -9.4 212 -9 220 C-9.4 224 -14.4 225 -14.4 229 L-14.4 232 L17.4 232 C18 227.6 8 226.6 3.2 219.6 C2.6 212 5.4 202 5.8 192 C6.2 184 6.6 177 7.4 171 C8.4 158 10.4 148 11 134 C11.8 126 11.8 118 11.6 112 C11.6 105 8.8 99 8.7 92.5 C8.6 87.5 9.5 83.5 10.5 80.5 C12.7 79.2 14.8 77 14.6 73.5 C14 68.5 6.5 59.5 4.2 45 C4.6 42 5.2 39 6.4 35.4 Z";
const HEAD =
  "M-7.6 20 C-7.6 11 -1.4 6 4.4 6 C10.6 6 15.2 11 15.2 18.4 C15.2 27 11.6 35 6.6 36 C2 36.6 -7.6 31 -7.6 20 Z";
const HANGING_ARM =
  "M-7.4 53 C-7.4 45 3.6 45 4 53 C4.6 66 3.4 80 3.8 90 C5.6 102 8 114 8.4 124 C8.8 132 7.6 138 4.6 138 C1.6 137 1 130 0.4 123 C-1 112 -4.2 102 -5.2 91 C-6.6 78 -7.4 66 -7.4 53 Z";
const STANDING: readonly FigureShape[] = [
  { kind: "ground", d: "M-17 -12 L-17 232 L54 232" },
  { kind: "skin", d: WHOLE },
  { kind: "edge", d: WHOLE },
  { kind: "skin", d: HEAD },
  { kind: "edge", d: HEAD },
  { kind: "skin", d: HANGING_ARM },
  { kind: "seam", d: HANGING_ARM },
  { kind: "skin", d: "M-17 6 L-17 -2 L16 -2 L16 6 Z" },
  { kind: "edge", d: "M-17 6 L-17 -2 L16 -2 L16 6 Z" },
];

type Layer = Pick<FigureView, "near" | "far">;

/** A tape held level round the body, seen a little from above. */
const round = (y: number, halfWidth: number): Layer => ({
  near: `M${-halfWidth} ${y} C${-halfWidth * 0.6} ${y + 6} ${halfWidth * 0.6} ${y + 6} ${halfWidth} ${y}`,
  far: `M${-halfWidth} ${y} C${-halfWidth * 0.6} ${y - 5.5} ${halfWidth * 0.6} ${y - 5.5} ${halfWidth} ${y}`,
});

const view = (
  side: FigureSide,
  shift: number,
  body: readonly FigureShape[],
  layer: Layer,
  ...landmarks: FigureLandmark[]
): FigureView => ({
  side,
  shift,
  body,
  scale: 1,
  ...layer,
  landmarks,
});

/** A landmark at x and y, its letter so far from it. */
const mark = (
  text: string,
  name: LandmarkName,
  x: number,
  y: number,
  dx: number,
  dy: number,
  mirrored = false,
): FigureLandmark => ({
  name,
  x,
  y,
  letter: { text, x: x + dx, y: y + dy },
  ...(mirrored ? { mirrored } : {}),
});

/** Where the side view stands beside a front or a back view. */
const BESIDE = 88;
const two = (y: number, height: number): TapeFigure["box"] => ({ x: -47, y, width: 167, height });
const one = (halfWidth: number, height: number): TapeFigure["box"] => ({
  x: -halfWidth,
  y: 0,
  width: 2 * halfWidth,
  height,
});

const front = (layer: Layer, ...landmarks: FigureLandmark[]): FigureView =>
  view("front", 0, [...FRONT, ARMHOLE], layer, ...landmarks);
const back = (layer: Layer, ...landmarks: FigureLandmark[]): FigureView =>
  view("back", 0, [...BACK, ARMHOLE], layer, ...landmarks);
const beside = (near: string, ...landmarks: FigureLandmark[]): FigureView =>
  view("side", BESIDE, SIDE, { near }, ...landmarks);

const FIGURES: Readonly<Record<MeasureName, TapeFigure>> = {
  bustGirth: {
    box: two(0, 148),
    views: [front(round(87, 35.4), mark("a", "bustPoint", 14.5, 91, 9, 13)), beside("M-22.8 88 L29 88")],
  },
  upperChestGirth: {
    box: two(0, 148),
    views: [
      front(
        { near: "M-34.6 67 C-21 72 21 72 34.6 67", far: "M-34.6 67 C-24 53 24 53 34.6 67" },
        mark("a", "underarm", 34.6, 67, 9, 6),
      ),
      beside("M-27 56 C-18 61 4 69.5 22.9 72", mark("b", "bladeLine", -27, 56, -8, 0)),
    ],
  },
  underBustGirth: {
    box: two(0, 148),
    views: [front(round(102.5, 32.2), mark("a", "bandLine", 14, 106, 0, 14)), beside("M-19.6 103 L21 103")],
  },
  waistGirth: {
    box: two(26, 160),
    views: [front(round(126, 27.5), mark("a", "waist", 27.5, 126, 10, 3)), beside("M-16 126 L17.4 126")],
  },
  hipGirth: {
    box: two(66, 142),
    views: [front(round(171, 39.4)), beside("M-32 171 L23.6 171", mark("a", "seat", -32, 171, -9, 3))],
  },
  height: {
    box: { x: -54, y: -10, width: 108, height: 146 },
    views: [
      {
        ...view(
          "standing",
          0,
          STANDING,
          { near: "M-14 3.3 L-14 127.6" },
          mark("a", "crown", -14, 3.3, -11, 6),
          mark("b", "floor", -14, 127.6, -11, 3),
        ),
        scale: STANDING_SCALE,
      },
    ],
  },
  bustPointWidth: {
    box: one(50, 140),
    views: [front({ near: "M-14.5 89 L14.5 89" }, mark("a", "bustPoint", 14.5, 89, 8, -5, true))],
  },
  sideNeckToBustPoint: {
    box: two(0, 148),
    views: [
      front(
        { near: "M11.8 24 C13 44 15.5 68 14.5 89" },
        mark("a", "sideNeck", 11.8, 24, 9, -3),
        mark("b", "bustPoint", 14.5, 89, 9, 6),
      ),
      beside("M-1 22 C6 42 25 68 29 88"),
    ],
  },
  backWaistLength: {
    box: two(0, 148),
    views: [
      back({ near: "M0 21 L0 130" }, mark("a", "nape", 0, 21, 8, -3), mark("b", "backWaist", 0, 130, 8, 10)),
      beside("M-12 21 C-19 26 -26.5 40 -27 56 C-27.2 80 -17 104 -16 127"),
    ],
  },
  frontWaistLength: {
    box: two(0, 148),
    views: [
      front(
        { near: "M11.8 24 C13 44 15.5 68 14.5 89 C13.6 104 12.6 116 12.2 130" },
        mark("a", "sideNeck", 11.8, 24, 9, -3),
        mark("b", "bustPoint", 14.5, 89, 10, 4),
        mark("c", "frontWaist", 12.2, 130, 9, 10),
      ),
      beside("M-1 22 C6 42 25 68 29 87 C30 92 21.6 112 17.6 126"),
    ],
  },
  neckBaseGirth: {
    box: { x: -45, y: 0, width: 148, height: 78 },
    views: [
      front(
        { near: "M-11.8 24 C-8 33 8 33 11.8 24", far: "M-11.8 24 C-8 19 8 19 11.8 24" },
        mark("a", "sideNeck", 11.8, 24, 9, -3),
        mark("b", "neckPit", 0, 31, 0, 13),
      ),
      view("side", 74, SIDE, { near: "M-12 21 C-5 23 3 27 8.4 31" }, mark("c", "nape", -12, 21, -8, -3)),
    ],
  },
  shoulderLength: {
    box: one(60, 96),
    views: [
      view(
        "front",
        0,
        [...FRONT, ...ARMS],
        { near: "M11.8 24 C19 28 29 30.5 36.6 34" },
        mark("a", "sideNeck", 11.8, 24, 7, -5),
        mark("b", "shoulderPoint", 36.6, 34, 7, -5),
      ),
    ],
  },
  acrossBack: {
    box: one(60, 140),
    views: [
      view(
        "back",
        0,
        [...BACK, ...ARMS],
        { near: "M-32.8 54 C-20 56.5 20 56.5 32.8 54" },
        mark("a", "armCrease", 32.8, 54, 9, 4, true),
      ),
    ],
  },
  acrossFront: {
    box: one(60, 140),
    views: [
      view(
        "front",
        0,
        [...FRONT, ...ARMS],
        { near: "M-32.8 54 C-20 56.5 20 56.5 32.8 54" },
        mark("a", "armCrease", 32.8, 54, 9, 4, true),
      ),
    ],
  },
};

export const tapeFigure = (name: MeasureName): TapeFigure => FIGURES[name];

/** The lettered points of a figure, in the order of their letters. */
export const figureLandmarks = (name: MeasureName): readonly FigureLandmark[] =>
  FIGURES[name].views.flatMap(({ landmarks }) => landmarks);
