/** What proves how long a unit of a file is: squares and what is written at them, all lengths done in the head. */
import { describe, expect, it } from "vitest";
import type { FileDrawing } from "../../../src/core/decisions/fileDrawing";
import type { OwnPattern } from "../../../src/core/decisions/ownPattern";
import { sheetPoint } from "../../../src/core/geometry/point";
import { fourCorners, readScale } from "../../../src/core/outlines/scale";
import { box, drawn } from "./handStrokes";

const p = sheetPoint;
/** A piece, so large that what meets within its five-thousandth part is a tenth of a millimetre. */
const PIECE = box(0, 0, 300, 500);

const scaleOf = (
  paths: readonly string[],
  {
    texts = [],
    unit = null,
    known,
  }: {
    readonly texts?: readonly (readonly [text: string, x: number, y: number])[];
    readonly unit?: FileDrawing["unit"];
    readonly known?: OwnPattern["known"];
  } = {},
) =>
  readScale({
    drawing: drawn([[{}, PIECE, ...paths]], {
      unit,
      writings: texts.map(([text, x, y]) => ({ text, x, y, layer: "", group: "" })),
    }),
    ...(known === undefined ? {} : { known }),
  });
const MM = { mm: 1, saidBy: "size" } as const;

describe("four corners", () => {
  const square = [p(0, 0), p(10, 0), p(10, 10), p(0, 10)];

  it("are those of a rectangle, however it lies, corners on its sides passed over", () => {
    expect(fourCorners(square)).toEqual(square);
    expect(fourCorners([p(5, 0), p(10, 0), p(10, 10), p(0, 10), p(0, 0)])).toEqual([
      p(10, 0),
      p(10, 10),
      p(0, 10),
      p(0, 0),
    ]);
    const turned = [p(0, 0), p(8, 6), p(2, 14), p(-6, 8)];
    expect(fourCorners(turned)).toEqual(turned);
    expect(fourCorners(square.toReversed())).toEqual(square.toReversed());
  });

  it("are none of three, five, or four that lean", () => {
    expect(fourCorners(square.slice(1))).toBeNull();
    expect(fourCorners([p(0, 0), p(10, 0), p(12, 5), p(10, 10), p(0, 10)])).toBeNull();
    expect(fourCorners([p(0, 0), p(10, 0), p(12, 10), p(2, 10)])).toBeNull();
    expect(fourCorners([])).toBeNull();
  });

  it("may lean by a hundredth and no more", () => {
    const leaning = (by: number) => [p(0, 0), p(100, 0), p(100 + by, 100), p(by, 100)];
    expect(fourCorners(leaning(0.9))).not.toBeNull();
    expect(fourCorners(leaning(1.1))).toBeNull();
  });

  it("pass over a place on a side that stands off by less than a hundredth", () => {
    const bent = (by: number) => [p(0, 0), p(50, by), p(100, 0), p(100, 100), p(0, 100)];
    expect(fourCorners(bent(0.2))).toHaveLength(4);
    expect(fourCorners(bent(0.4))).toBeNull();
  });
});

describe("a square", () => {
  const at = { x: 550, y: 50 };

  it("is told with all that it is", () => {
    expect(scaleOf([box(500, 0, 100, 100)], { unit: MM })).toMatchObject({
      scale: { mm: 1, by: "square", said: MM, known: null, disagree: false },
      mm: 1,
      squares: [{ keys: ["0:1"], middle: at, width: 100, height: 100, usual: { width: 100, height: 100 } }],
    });
  });

  it("is any near-square where the scale is not known, and proves nothing by itself", () => {
    expect(scaleOf([box(500, 0, 33, 33)])).toMatchObject({
      scale: { mm: null, by: null, said: null, known: null, disagree: false },
      mm: 1,
      squares: [{ keys: ["0:1"], middle: { x: 516.5, y: 16.5 }, width: 33, height: 33, usual: null }],
    });
  });

  it.each([20, 30, 40, 50, 100, 25.4, 50.8, 101.6])(
    "of %s mm is usual, to half a hundredth (common practice)",
    (side) => {
      const by = (share: number) => scaleOf([box(500, 0, side * share, side * share)], { unit: MM });
      for (const share of [1, 1.0045, 0.9955]) {
        expect(by(share).scale.by).toBe("square");
        expect(by(share).squares[0]?.usual).toEqual({ width: side, height: side });
      }
      for (const share of [1.0055, 0.9945]) {
        expect(by(share).scale.by).toBe("file");
        expect(by(share).squares).toEqual([]);
      }
    },
  );

  it("has sides alike to a hundredth", () => {
    expect(scaleOf([box(500, 0, 100, 100.9)]).squares).toHaveLength(1);
    expect(scaleOf([box(500, 0, 100.9, 100)]).squares).toHaveLength(1);
    expect(scaleOf([box(500, 0, 100, 101.2)]).squares).toEqual([]);
    expect(scaleOf([box(500, 0, 101.2, 100)]).squares).toEqual([]);
  });

  it("is no rectangle with round corners, and has eight stretches at most", () => {
    expect(scaleOf(["M500 0L600 0L600 100C600 100 600 100 500 100Z"]).squares).toEqual([]);
    expect(scaleOf(["M500 0L550 0L600 0L600 50L600 100L550 100L500 100L500 50Z"]).squares).toHaveLength(1);
    expect(scaleOf(["M500 0L520 0L550 0L600 0L600 50L600 100L550 100L500 100L500 50Z"]).squares).toEqual([]);
  });

  const sides = ["M500 0L600 0", "M600 100L600 0", "M500 100L600 100", "M500 0L500 100"];
  it("is four lines too, in any order and either way", () => {
    const found = scaleOf(sides, { unit: MM }).squares;
    expect(found).toMatchObject([
      {
        keys: ["0:1", "0:2", "0:3", "0:4"],
        middle: at,
        width: 100,
        height: 100,
        usual: { width: 100, height: 100 },
      },
    ]);
    for (const order of [
      [3, 1, 0, 2],
      [2, 3, 1, 0],
      [1, 0, 3, 2],
    ]) {
      const [found0, more] = scaleOf(order.map((i) => sides[i] ?? "")).squares;
      expect(found0).toMatchObject({ middle: at, width: 100, height: 100 });
      expect(more).toBeUndefined();
    }
    // Of two angles, and of a line of three sides and one.
    expect(scaleOf(["M500 0L600 0L600 100", "M600 100L500 100L500 0"]).squares[0]).toMatchObject({
      middle: at,
      width: 100,
    });
    expect(scaleOf(["M500 0L600 0L600 100", "M500 0L500 100L600 100"]).squares[0]).toMatchObject({
      middle: at,
      width: 100,
    });
    expect(scaleOf(["M500 0L600 0L600 100L500 100", "M500 100L500 0"]).squares[0]).toMatchObject({
      middle: at,
      width: 100,
    });
  });

  it("of lines meets within a five-thousandth of the drawing, and nothing else meets it", () => {
    // 600 across: 0.12.
    expect(scaleOf([...sides.slice(0, 3), "M500 0.1L500 99.9"]).squares).toHaveLength(1);
    expect(scaleOf([...sides.slice(0, 3), "M500 0.2L500 99.8"]).squares).toEqual([]);
    expect(scaleOf(sides.slice(0, 3)).squares).toEqual([]);
    expect(scaleOf([...sides, "M600 0L650 0"]).squares).toEqual([]);
    expect(scaleOf([...sides, "M650 0L650 100"]).squares).toHaveLength(1);
  });

  it("of lines is of one look", () => {
    const drawing = drawn([
      [{}, PIECE],
      [{ layer: "a" }, ...sides.slice(0, 2)],
      [{ layer: "b" }, ...sides.slice(2)],
    ]);
    expect(readScale({ drawing }).squares).toEqual([]);
  });
});

describe("what is written at a square", () => {
  const square = box(500, 0, 100, 100);
  const by = (text: string, x = 550, y = 50): number | null => {
    const { mm } = scaleOf([square], { texts: [[text, x, y]] }).scale;
    return mm === null ? null : Math.round(mm * 1e9) / 1e9;
  };

  it.each([
    ["10 cm", 1],
    ["100mm", 1],
    ["100 MM", 1],
    ["4 in", 1.016],
    ["4 inch", 1.016],
    ["4 inches", 1.016],
    ['4"', 1.016],
    ["4″", 1.016],
    ["4 ” square", 1.016],
    ["10.5 cm", 1.05],
    ["10,5 cm", 1.05],
    ["10 x 10 cm", 1],
    ["10 cm x 10", 1],
    ["10cm × 10cm", 1],
    ["10 * 10 cm", 1],
    ["Test: 10 cm, please", 1],
    ["10 cm x 10.1 cm", 1.005],
    ["10 cm (3.94 in)", 1],
    // In two units at once within four hundredths of the first: 103.9 mm and 104.1, 96.3 and 95.8.
    ["10 cm / 4.09 in", 1],
    ["10 cm / 4.1 in", null],
    ["10 cm / 3.79 in", 1],
    ["10 cm / 3.77 in", null],
    // Sides two hundredths apart: 10 of 10.19, and of 10.3.
    ["10 x 10.19 cm", 1.0095],
    ["10 x 10.3 cm", null],
    ["10.19 x 10 cm", 1.0095],
    ["10.3 x 10 cm", null],
    ["10 cm x 3.94 in", 1.00038],
    ["3 15/16 in or 10 cm", null],
    ["100", null],
    ["10 cmx", null],
    ["100 mm%", null],
    ["0 cm", null],
    ["10 cm x 0 cm", null],
    ["10 x 12 cm", null],
    ["10 mm and 10 cm", null],
    ["10 kg", null],
  ])("%j is %j mm of each of its hundred", (text, mm) => {
    expect(by(text)).toBe(mm);
  });

  it("stands within one and a half sides of its middle", () => {
    expect(by("10 cm", 550 + 149, 50)).toBe(1);
    expect(by("10 cm", 550 + 151, 50)).toBeNull();
    expect(by("10 cm", 550 - 149, 50)).toBe(1);
    expect(by("10 cm", 550, 50 + 149)).toBe(1);
    expect(by("10 cm", 550, 50 + 151)).toBeNull();
    expect(by("10 cm", 550, 50 - 151)).toBeNull();
  });

  it("is the nearest, where two are written and nothing else says which", () => {
    const two = scaleOf([square], {
      texts: [
        ["5 cm", 600, 50],
        ["10 cm", 560, 50],
      ],
    });
    expect(two.scale).toMatchObject({ mm: 1, by: "square" });
  });

  it("is what the file agrees with, where two are written", () => {
    const two = scaleOf([square], {
      unit: { mm: 0.5, saidBy: "header" },
      texts: [
        ["5 cm", 600, 50],
        ["10 cm", 560, 50],
      ],
    });
    expect(two.scale).toEqual({
      mm: 0.5,
      by: "square",
      said: { mm: 0.5, saidBy: "header" },
      known: null,
      disagree: false,
    });
    expect(two.squares[0]?.usual).toEqual({ width: 50, height: 50 });
  });

  it("of squares in one another is what agrees at each", () => {
    // An inch drawn in 5 cm, 40 units to the inch: both writings are near both.
    const unit = 25.4 / 40;
    const large = 50 / unit;
    const { scale, squares } = scaleOf([box(500, 0, large, large), box(510, 10, 40, 40)], {
      texts: [
        ["5 cm", 500 + large / 2 + 3, large / 2],
        ["1 in", 532, 30],
      ],
    });
    expect(scale.mm).toBeCloseTo(unit, 9);
    expect(scale).toMatchObject({ by: "square", disagree: false });
    expect(squares.map(({ usual }) => usual?.width)).toEqual([50, 25.4]);
  });

  it("of two squares that say two scales proves none", () => {
    const { scale } = scaleOf([square, box(900, 0, 100, 100)], {
      texts: [
        ["10 cm", 550, 50],
        ["5 cm", 950, 50],
      ],
    });
    expect(scale).toMatchObject({ mm: null, by: null, disagree: true });
  });

  it("of two squares is told of each, whether they agree or not", () => {
    const two = (second: string) =>
      scaleOf([square, box(900, 0, 50, 50)], {
        texts: [
          ["10 cm", 550, 50],
          [second, 925, 25],
        ],
      });
    expect(two("5 cm").scale).toMatchObject({ mm: 1, by: "square", disagree: false });
    expect(two("5 cm").squares.map(({ usual }) => usual)).toEqual([
      { width: 100, height: 100 },
      { width: 50, height: 50 },
    ]);
    expect(two("4 cm").scale).toMatchObject({ mm: null, by: null, disagree: true });
    expect(two("4 cm").squares.map(({ usual }) => usual)).toEqual([
      { width: 100, height: 100 },
      { width: 40, height: 40 },
    ]);
    // By her own length both are kept, whatever stands in them.
    const known = { from: { x: 0, y: 0 }, to: { x: 300, y: 400 }, length: 500 };
    const hers = scaleOf([square, box(900, 0, 50, 50)], { texts: [["4 cm", 925, 25]], known });
    expect(hers.scale).toMatchObject({ mm: 1, by: "known", disagree: true });
    expect(hers.squares.map(({ usual }) => usual?.width)).toEqual([100, 40]);
  });

  it("beside one that says nothing leaves that one to be a usual one, or none", () => {
    const beside = (side: number) =>
      scaleOf([square, box(900, 0, side, side)], { texts: [["10 cm", 550, 50]] }).squares.map(
        ({ usual }) => usual?.width,
      );
    expect(beside(50)).toEqual([100, 50]);
    expect(beside(60)).toEqual([100]);
  });
});

describe("which word goes before which", () => {
  const known = { from: { x: 0, y: 0 }, to: { x: 300, y: 400 }, length: 250 };

  it("is hers, then the file's, then a square's", () => {
    const texts = [["10 cm", 550, 50]] as const;
    const square = [box(500, 0, 100, 100)];
    expect(scaleOf(square, { texts, unit: { mm: 2, saidBy: "header" }, known }).scale).toEqual({
      mm: 0.5,
      by: "known",
      said: { mm: 2, saidBy: "header" },
      known: 0.5,
      disagree: true,
    });
    expect(scaleOf(square, { texts, unit: { mm: 2, saidBy: "header" } }).scale).toMatchObject({
      mm: 2,
      by: "file",
      disagree: true,
    });
    expect(scaleOf(square, { texts }).scale).toMatchObject({ mm: 1, by: "square", disagree: false });
    expect(scaleOf(square, { known }).scale).toMatchObject({ mm: 0.5, by: "known", disagree: false });
    // A hundred units are then 50 mm, which is usual.
    expect(scaleOf(square, { known }).squares[0]?.usual).toEqual({ width: 50, height: 50 });
  });

  it("is nothing of a length between one place, or of none, or of a file's unit of none", () => {
    expect(scaleOf([], { known: { ...known, to: { x: 0, y: 0 } } }).scale.known).toBeNull();
    expect(scaleOf([], { known: { ...known, length: 0 } }).scale.known).toBeNull();
    expect(scaleOf([], { unit: { mm: 0, saidBy: "size" } })).toMatchObject({
      mm: 1,
      scale: { mm: null, by: null, said: { mm: 0 } },
    });
  });

  it("agrees within half a hundredth", () => {
    const near = (length: number) => scaleOf([], { unit: MM, known: { ...known, length } }).scale.disagree;
    expect(near(502.4)).toBe(false);
    expect(near(497.6)).toBe(false);
    expect(near(502.6)).toBe(true);
    expect(near(497.3)).toBe(true);
  });

  it("is the file's where what is written at a square says less or more", () => {
    const written = (text: string) => scaleOf([box(500, 0, 100, 100)], { unit: MM, texts: [[text, 550, 50]] }).scale;
    expect(written("10 cm")).toMatchObject({ by: "square", disagree: false });
    expect(written("10.1 cm")).toMatchObject({ by: "file", disagree: true });
  });
});
