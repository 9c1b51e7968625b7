/** What pieces usually look like: in itself each has to be a figure that closes, with the corners of the trade in their order. */
import { describe, expect, it } from "vitest";
import type { StyleName } from "../../../src/core/decisions/pattern";
import { shapeOf, type PieceShape } from "../../../src/core/ownPieces/pieceShapes";
import type { PieceName } from "../../../src/core/pattern/piece";

const NECK = ["centreNeck", "sideNeck"];
const WAIST = ["sideWaist", "centreWaist"];
const SHAPES: readonly (readonly [name: PieceName, style: StyleName, onFold: boolean, corners: readonly string[]])[] = [
  ["front", "sideDart", true, [...NECK, "shoulderTip", "underarm", ...WAIST]],
  ["back", "sideDart", false, [...NECK, "shoulderTip", "underarm", ...WAIST]],
  [
    "back",
    "midriff",
    false,
    ["centreNeck", "strapInner", "strapOuter", "underarm", "sideUnderBust", "underBustCentre"],
  ],
  ["cup", "midriff", false, ["centreNeck", "strapInner", "strapOuter", "underarm", "sideUnderBust", "underBustCentre"]],
  ["frontBand", "midriff", true, ["underBustCentre", "sideUnderBust", ...WAIST]],
  ["backBand", "midriff", false, ["underBustCentre", "sideUnderBust", ...WAIST]],
  ["frontBasque", "sideDart", true, ["centreWaist", "sideWaist", "sideHem", "centreHem"]],
  ["backBasque", "sideDart", false, ["centreWaist", "sideWaist", "sideHem", "centreHem"]],
  ["strap", "midriff", false, ["strapBackInner", "strapBackOuter", "strapFrontOuter", "strapFrontInner"]],
  ["centreFront", "princessArmhole", true, [...NECK, "shoulderTip", "princessTop", "princessWaist", "centreWaist"]],
  ["sideFront", "princessArmhole", false, ["princessTop", "underarm", "sideWaist", "princessWaist"]],
  ["centreFront", "princessShoulder", true, [...NECK, "princessTop", "princessWaist", "centreWaist"]],
  ["sideFront", "princessShoulder", false, ["princessTop", "shoulderTip", "underarm", "sideWaist", "princessWaist"]],
];

/** By how many degrees the way on from a corner is another than the one its places give, at the worst, in a box of a width to its height. */
const worst = ({ corners }: PieceShape, wide: number): number =>
  Math.max(
    ...corners.map(({ x, y, way }, i) => {
      const next = corners[(i + 1) % corners.length] ?? { x, y };
      const goes = Math.atan2(next.y - y, (next.x - x) * wide);
      const off = goes - (way * Math.PI) / 180;
      return (Math.abs(Math.atan2(Math.sin(off), Math.cos(off))) * 180) / Math.PI;
    }),
  );

describe("the usual shape", () => {
  it.each(SHAPES)("of a %s, %s, on the fold %s, has these corners round it", (name, style, onFold, names) => {
    const shape = shapeOf(name, style);
    expect(shape?.onFold).toBe(onFold);
    expect(shape?.corners.map((corner): string => corner.name)).toEqual(names);
  });

  it.each(SHAPES)("of a %s, %s, fills its box and closes", (name, style) => {
    const shape = shapeOf(name, style);
    if (shape === null) throw new Error("no shape");
    const [xs, ys] = [shape.corners.map(({ x }) => x), shape.corners.map(({ y }) => y)];
    expect(Math.min(...xs)).toBeLessThan(0.15);
    expect(Math.min(...ys)).toBeLessThan(0.05);
    expect(Math.max(...xs)).toBeGreaterThan(0.95);
    expect(Math.max(...ys)).toBeGreaterThan(0.95);
    // In some box, from a fifth as wide as high to three times, every way is that of the places, within twenty degrees.
    const widths = Array.from({ length: 57 }, (_, i) => 0.2 + i * 0.05);
    expect(Math.min(...widths.map((wide) => worst(shape, wide)))).toBeLessThan(20);
    // By the clock, and all corners turn to the right.
    for (const { turn } of shape.corners) expect(turn).toBeGreaterThan(0);
  });

  it("is none of a piece without a name of ours", () => {
    expect(shapeOf("other1", "sideDart")).toBeNull();
    expect(shapeOf("skirtFront", "sideDart")).toBeNull();
  });
});
