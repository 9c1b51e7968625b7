/** Corners of cutting lines that are rare, each worked out by hand. */
import { describe, expect, it } from "vitest";
import { cuttingLine } from "../../../src/core/allowance/cuttingLine";
import type { Stretch } from "../../../src/core/allowance/cutStretch";
import { lineEdge } from "../../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../../src/core/geometry/point";
import type { SeamName } from "../../../src/core/pattern/piece";

type Side = readonly [x: number, y: number, seam: SeamName, allowance: number, more?: Partial<Stretch>];

const ring = (...sides: readonly Side[]): readonly Stretch[] =>
  sides.map(([x, y, seam, allowance, more], index) => {
    const [toX, toY] = sides[(index + 1) % sides.length] ?? [0, 0];
    return {
      curve: lineEdge(piecePoint(x, y), piecePoint(toX, toY)),
      seam,
      allowance,
      fold: false,
      cap: false,
      ...more,
    };
  });

/** The corners of the line, to a thousandth of a millimetre, from the upper left one on by height and then across. */
const corners = (...sides: readonly Side[]): readonly string[] =>
  cuttingLine(ring(...sides))
    .map(({ at }) => `${(at.x + 0).toFixed(3)} ${(at.y + 0).toFixed(3)}`.replaceAll("-0.000", "0.000"))
    .toSorted();
const places = (...at: readonly (readonly [number, number])[]): readonly string[] =>
  at.map(([x, y]) => `${x.toFixed(3)} ${y.toFixed(3)}`).toSorted();

describe("where two allowances meet on a straight line", () => {
  it("there is a step, square to it", () => {
    expect(
      corners(
        [0, 0, "neck", 10],
        [100, 0, "shoulder", 20],
        [200, 0, "side", 0],
        [200, 100, "hem", 0],
        [0, 100, "centre", 0],
      ),
    ).toEqual(places([0, -10], [100, -10], [100, -20], [200, -20], [200, 100], [0, 100]));
  });
});

describe("where one of two seams has no allowance", () => {
  const slanted = (side: number, hem: number) =>
    corners([0, 0, "waist", 0], [100, 0, "side", side], [140, 200, "hem", hem], [0, 200, "centre", 0]);

  it("the other's parallel ends on its own line, going on", () => {
    // The side goes out by 1 in 5: 30 further down by 6.
    expect(slanted(0, 30)).toEqual(places([0, 0], [100, 0], [146, 230], [0, 230]));
  });

  it("the other's parallel ends on its own line, on the other side of the corner too", () => {
    // The parallel 15 square outside the side: across it is 15 · √(1 + 1/25) further out.
    const across = 15 * Math.sqrt(1 + 1 / 25);
    expect(slanted(15, 0)).toEqual(places([0, 0], [100 + across, 0], [140 + across, 200], [0, 200]));
  });
});

describe("at the fold of the cloth", () => {
  it("a seam's parallel meets the fold where it is, however slowly it leaves it", () => {
    // The neck leaves the fold at atan(1/4) only: along the fold 10 · √17 before it, four allowances and more.
    const fold = { fold: true };
    const across = (10 * Math.sqrt(17)) / 4;
    expect(corners([0, 0, "neck", 10], [50, 200, "hem", 0], [0, 200, "centre", 0, fold])).toEqual(
      places([0, -4 * across], [50 + across, 200], [0, 200]),
    );
  });
});

describe("the peak of a dart's cap", () => {
  const APEX = piecePoint(100, 80);
  const cap = (width: number, rise: number) =>
    cuttingLine(
      ring(
        [0, 0, "waist", 10],
        [100 - width, 0, "waist", 10, { cap: true, tip: { beyond: [], apex: APEX } }],
        [100, -rise, "waist", 10, { cap: true }],
        [100 + width, 0, "waist", 10],
        [200, 0, "side", 0],
        [200, 100, "hem", 0],
        [0, 100, "centre", 0],
      ),
    ).map(({ at }) => at);
  const highest = (width: number, rise: number): number => Math.min(...cap(width, rise).map(({ y }) => y));

  it("lies on the dart's middle, where the seam's parallel comes to it", () => {
    // 5 up in 10: above the tip by 10 / cos(atan(1/2)) = 10 · √5/2.
    expect(highest(10, 5)).toBeCloseTo(-5 - 5 * Math.sqrt(5), 3);
    const peak = cap(10, 5).find(({ y }) => y < -16);
    expect(peak?.x).toBeCloseTo(100, 3);
  });

  it("is not run further out than two and a half allowances", () => {
    // 12 up in 4 would come out at 10 · √10 above the tip, 31.6 mm.
    expect(highest(4, 12)).toBeGreaterThan(-12 - 25.001);
    // 9 up in 4 does so at 10 · √97/4 = 24.6 mm.
    expect(highest(4, 9)).toBeCloseTo(-9 - (10 * Math.sqrt(97)) / 4, 3);
  });
});
