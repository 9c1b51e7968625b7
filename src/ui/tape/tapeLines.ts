/**
 * Where the tape goes, on the drawn figure: its own units, the centre line at x = 0, y downward. Only `TapeFigure` draws
 * in this frame.
 */
import type { MeasureName } from "../../core/measures/measure";

export interface Landmark {
  readonly x: number;
  readonly y: number;
  readonly name: string;
}

export interface TapeLine {
  readonly view: "front" | "back";
  /** What is seen of the tape from this side. */
  readonly near: string;
  /** What goes round behind, for girths. */
  readonly far?: string;
  readonly landmarks: readonly Landmark[];
}

/** A tape held level round the body, seen a little from above. */
const round = (y: number, half: number): Pick<TapeLine, "near" | "far"> => ({
  near: `M${-half} ${y} C${-half * 0.6} ${y + 6.5} ${half * 0.6} ${y + 6.5} ${half} ${y}`,
  far: `M${-half} ${y} C${-half * 0.6} ${y - 5.5} ${half * 0.6} ${y - 5.5} ${half} ${y}`,
});

const sideNeck: Landmark = { x: 11.8, y: 24, name: "side neck point" };
const bustPoint: Landmark = { x: 14.5, y: 89, name: "bust point" };

export const TAPE_LINES: Readonly<Record<MeasureName, TapeLine>> = {
  bustGirth: {
    view: "front",
    ...round(86, 35.4),
    landmarks: [bustPoint],
  },
  upperChestGirth: {
    view: "front",
    near: "M-34.6 67 C-22 60 22 60 34.6 67",
    far: "M-34.6 67 C-22 56 22 56 34.6 67",
    landmarks: [{ x: 34.6, y: 67, name: "underarm" }],
  },
  underBustGirth: {
    view: "front",
    ...round(104, 31.6),
    landmarks: [],
  },
  waistGirth: {
    view: "front",
    ...round(126, 27.5),
    landmarks: [],
  },
  hipGirth: {
    view: "front",
    ...round(171, 39.4),
    landmarks: [],
  },
  height: {
    view: "back",
    near: "M0 2 L0 210.5",
    landmarks: [],
  },
  bustPointWidth: {
    view: "front",
    near: "M-14.5 89 L14.5 89",
    landmarks: [{ ...bustPoint, x: -14.5 }, bustPoint],
  },
  sideNeckToBustPoint: {
    view: "front",
    near: "M11.8 24 C13 44 15.5 68 14.5 89",
    landmarks: [sideNeck, bustPoint],
  },
  backWaistLength: {
    view: "back",
    near: "M0 21 C1.2 56 1.2 92 0 130",
    landmarks: [
      { x: 0, y: 21, name: "nape" },
      { x: 0, y: 130, name: "back waist" },
    ],
  },
  frontWaistLength: {
    view: "front",
    near: "M11.8 24 C13 44 15.5 68 14.5 89 C13.6 104 12.6 116 12.2 129.6",
    landmarks: [sideNeck, bustPoint, { x: 12.2, y: 129.6, name: "front waist" }],
  },
  neckBaseGirth: {
    view: "front",
    near: "M-11.8 24 C-9 32 9 32 11.8 24",
    far: "M-11.8 24 C-8 18.5 8 18.5 11.8 24",
    landmarks: [sideNeck],
  },
  shoulderLength: {
    view: "front",
    near: "M11.8 24 C19 28 29 30.5 36.6 34",
    landmarks: [sideNeck, { x: 36.6, y: 34, name: "shoulder point" }],
  },
  acrossBack: {
    view: "back",
    near: "M-36.5 55 C-20 57.5 20 57.5 36.5 55",
    landmarks: [{ x: 36.5, y: 55, name: "arm crease" }],
  },
  acrossFront: {
    view: "front",
    near: "M-34.5 53 C-20 55.5 20 55.5 34.5 53",
    landmarks: [{ x: 34.5, y: 53, name: "arm crease" }],
  },
};
