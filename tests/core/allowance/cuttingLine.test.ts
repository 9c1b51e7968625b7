/** Corners of cutting lines that are rare, each worked out by hand. */
import { describe, expect, it } from "vitest";
import { cuttingLine } from "../../../src/core/allowance/cuttingLine";
import type { Stretch } from "../../../src/core/allowance/cutStretch";
import { lineEdge, type EdgeCurve } from "../../../src/core/geometry/edgeCurve";
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
  const cap = (width: number, rise: number, ...beyond: readonly EdgeCurve<"piece">[]) =>
    cuttingLine(
      ring(
        [0, 0, "waist", 10],
        [100 - width, 0, "waist", 10, { cap: true, tip: { beyond, apex: APEX } }],
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

  it("follows the seam as it goes on beyond the tip, and comes down on the other side as its mirror image", () => {
    const on = lineEdge(piecePoint(100, -5), piecePoint(104, -7));
    expect(Math.min(...cap(10, 5, on).map(({ y }) => y))).toBeCloseTo(-5 - 5 * Math.sqrt(5), 3);
    // 4 mm on it goes level: the parallel bends 2 √5 before that and 4 √5 above, on its way to (104, -17).
    const [x, y] = [104 - 2 * Math.sqrt(5), -7 - 4 * Math.sqrt(5)];
    const top = y + ((100 - x) / (104 - x)) * (-17 - y);
    const bent = cap(10, 5, on, lineEdge(piecePoint(104, -7), piecePoint(130, -7))).filter((one) => one.y < -15);
    expect(bent.toSorted((a, b) => a.x - b.x)).toEqual([
      { x: expect.closeTo(x, 3), y: expect.closeTo(y, 3) },
      { x: expect.closeTo(100, 3), y: expect.closeTo(top, 3) },
      { x: expect.closeTo(200 - x, 3), y: expect.closeTo(y, 3) },
    ]);
  });

  it("is not run further out than two and a half allowances", () => {
    // 12 up in 4 would come out at 10 · √10 above the tip, 31.6 mm.
    expect(highest(4, 12)).toBeGreaterThan(-12 - 25.001);
    // 9 up in 4 does so at 10 · √97/4 = 24.6 mm.
    expect(highest(4, 9)).toBeCloseTo(-9 - (10 * Math.sqrt(97)) / 4, 3);
  });
});

describe("a corner of the line", () => {
  // Twelve degrees (our own choice): less is one of the points that stand for a curve.
  it.each([
    [11, false],
    [13, true],
    [-11, false],
    [-13, true],
  ])("is one where it turns by %s degrees: %s", (degrees, corner) => {
    const down = 100 * Math.tan((degrees * Math.PI) / 180);
    const line = cuttingLine(
      ring([0, 0, "neck", 0], [100, 0, "neck", 0], [200, down, "side", 0], [200, 200, "hem", 0], [0, 200, "centre", 0]),
    );
    expect(line).toHaveLength(5);
    for (const one of line) expect(one.corner).toBe(one.at.x === 100 ? corner : true);
  });
});

/** Square outside a seam that leans by so much across for each millimetre down, measured across. */
const acrossAt = (allowance: number, lean: number): number => allowance * Math.sqrt(1 + lean * lean);

describe("a hem that is turned up, where the side leans", () => {
  const across = acrossAt(10, 1 / 5);
  // From (100, 0) down to (140, 200): the hem is turned up at y = 200, and the line below it leans the other way.
  const leaning = (side: Partial<Stretch> = {}, hem: Partial<Stretch> = {}) =>
    corners([0, 0, "waist", 0], [100, 0, "side", 10, side], [140, 200, "hem", 30, hem], [0, 200, "centre", 0]);
  const lapped = places([0, 0], [100 + across, 0], [140 + across, 200], [134 + across, 230], [0, 230]);

  it("lies on the side's cutting line when it is folded", () => {
    expect(leaning()).toEqual(lapped);
  });

  it("does so at its other end too", () => {
    expect(corners([0, 0, "waist", 0], [100, 0, "centre", 0], [100, 200, "hem", 30], [-40, 200, "side", 10])).toEqual(
      places([-across, 0], [100, 0], [100, 230], [-34 - across, 230], [-40 - across, 200]),
    );
  });

  it("goes by how the side runs on, where the last stretch of it is shorter than the hem is deep", () => {
    expect(
      corners(
        [0, 0, "waist", 0],
        [100, 0, "side", 10],
        [138, 190, "side", 10],
        [140, 200, "hem", 30],
        [0, 200, "centre", 0],
      ),
    ).toEqual(lapped);
    expect(
      corners(
        [0, 0, "waist", 0],
        [100, 0, "centre", 0],
        [100, 200, "hem", 30],
        [-40, 200, "side", 10],
        [-38, 190, "side", 10],
      ),
    ).toEqual(places([-across, 0], [100, 0], [100, 230], [-34 - across, 230], [-40 - across, 200]));
  });

  it("is plainly continued at a fold, and at the cap of a dart", () => {
    const plain = places([0, 0], [100 + across, 0], [146 + across, 230], [0, 230]);
    for (const more of [{ cap: true }, { fold: true }]) {
      expect(leaning(more)).toEqual(plain);
      expect(leaning({}, more)).toEqual(plain);
    }
  });

  it("is the mirror image of a side that bends", () => {
    // A circle of radius 200 about (-100, 100) to 30 degrees below; its parallel has 210, its mirror image lies about (-100, 300).
    const at = (degrees: number, radius: number) => {
      const way = (degrees * Math.PI) / 180;
      return piecePoint(-100 + radius * Math.cos(way), 100 + radius * Math.sin(way));
    };
    const handle = (200 * 4 * Math.tan(Math.PI / 12)) / 3;
    const [from, to] = [at(-30, 200), at(30, 200)];
    const bent = {
      a: from,
      b: to,
      curve: {
        c1: piecePoint(from.x + handle / 2, from.y + handle * Math.cos(Math.PI / 6)),
        c2: piecePoint(to.x + handle / 2, to.y - handle * Math.cos(Math.PI / 6)),
      },
    };
    const low = (points: readonly { readonly x: number; readonly y: number }[]) =>
      points.filter(({ x, y }) => Math.abs(x) > 80 && y > 199.9).toSorted((a, b) => a.y - b.y);
    const right = ring([0, 0, "waist", 0], [from.x, 0, "side", 10], [to.x, 200, "hem", 30], [0, 200, "centre", 0]);
    const onRight = low(
      cuttingLine(right.map((one) => (one.seam === "side" ? { ...one, curve: bent } : one))).map((one) => one.at),
    );
    const left = ring([0, 0, "waist", 0], [0, 0, "centre", 0], [0, 200, "hem", 30], [-to.x, 200, "side", 10]);
    const flip = ({ x, y }: { readonly x: number; readonly y: number }) => piecePoint(-x, y);
    const back = { a: flip(bent.b), b: flip(bent.a), curve: { c1: flip(bent.curve.c2), c2: flip(bent.curve.c1) } };
    const onLeft = low(
      cuttingLine(left.map((one) => (one.seam === "side" ? { ...one, curve: back } : one))).map((one) => one.at),
    ).map(flip);
    for (const points of [onRight, onLeft]) {
      expect(points.length).toBeGreaterThan(4);
      for (const { x, y } of points) expect(Math.abs(Math.hypot(x + 100, y - 300) - 210)).toBeLessThan(0.06);
      expect(points[0]?.y).toBeCloseTo(200, 3);
      expect(points.at(-1)?.y).toBeCloseTo(230, 3);
      expect(points.at(-1)?.x).toBeCloseTo(-100 + Math.sqrt(210 ** 2 - 70 ** 2), 1);
    }
  });
});

describe("a corner that would reach out too far: beyond two and a half of the wider allowance", () => {
  const acute = (lean: number) =>
    corners([0, 0, "waist", 0], [100, 0, "side", 10], [100 + 100 * lean, 100, "hem", 10], [0, 100, "centre", 0]);

  it("is cut off square, each line continued by its allowance", () => {
    // 5, 12 and 13: the hem would meet the side's line 26 from the corner. At the waist, where it would too, there is a step.
    const [low, high] = [
      [340 + 170 / 13, 100 - 70 / 13],
      [100 + 50 / 13, -120 / 13],
    ] as const;
    expect(acute(2.4)).toEqual(places([0, 0], [100, 0], high, low, [350, 110], [0, 110]));
  });

  it("is lapped up to there", () => {
    const across = acrossAt(10, 2.28);
    expect(across).toBeLessThan(25);
    expect(acute(2.28)).toEqual(
      places([0, 0], [100 + across, 0], [328 + across, 100], [328 + across - 22.8, 110], [0, 110]),
    );
  });

  it("is mitred where the end turned up would lie too far out", () => {
    const blunt = (lean: number) =>
      corners([0, 0, "waist", 0], [400, 0, "side", 10], [400 - 100 * lean, 100, "hem", 30], [0, 100, "centre", 0]);
    // 30 down it lies 1.6 times 30 further out: 73.3 from the corner, of 75. With 1.7 it is 76.8.
    const [near, far] = [acrossAt(10, 1.6), acrossAt(10, 1.7)];
    expect(blunt(1.6)).toEqual(places([0, 0], [400 + near, 0], [240 + near, 100], [288 + near, 130], [0, 130]));
    expect(blunt(1.7)).toEqual(places([0, 0], [400 + far, 0], [230 + far - 51, 130], [0, 130]));
  });
});

describe("a narrow allowance before or after a wide one of the same seam", () => {
  it("comes out on the wide one's line, beyond its start", () => {
    // 3, 4 and 5: the wide line begins at (124, -18), and is 10 above the first seam 10 further on.
    expect(corners([0, 0, "neck", 10], [100, 0, "neck", 30], [160, 80, "hem", 0], [0, 80, "centre", 0])).toEqual(
      places([0, -10], [130, -10], [197.5, 80], [0, 80]),
    );
    expect(corners([0, 0, "centre", 0], [0, 80, "hem", 0], [-160, 80, "neck", 30], [-100, 0, "neck", 10])).toEqual(
      places([0, -10], [-130, -10], [-197.5, 80], [0, 80]),
    );
  });

  it("does so up to two and a half of the wide one", () => {
    // 7, 24 and 25: (30 - 10 · 24/25) · 25/7 = 72.857 on, 73.5 from the corner, of 75.
    const on = ((30 - 9.6) * 25) / 7;
    // At the hem it would run 107 on: there it is cut off square.
    const [endX, endY] = [220 + (7 * 30 + 24 * 30) / 25, 35 + (7 * 30 - 24 * 30) / 25];
    expect(corners([0, 0, "neck", 10], [100, 0, "neck", 30], [220, 35, "hem", 0], [0, 35, "centre", 0])).toEqual(
      places([0, -10], [100 + on, -10], [endX, endY], [220, 35], [0, 35]),
    );
  });

  it("steps out to it, square, where a slight turn would have it come out further off", () => {
    // 9, 40 and 41: it would be 92.2 on. Square off the corner, 10 above the first seam is 10 · 9/40 on.
    const [wideX, wideY] = [(30 * 9) / 41, (30 * 40) / 41];
    // At the other end the wide line goes on down to the edge 200 below, as far as that is from it.
    expect(
      corners(
        [0, 0, "neck", 10],
        [100, 0, "neck", 30],
        [300, 45, "side", 0],
        [300, 245, "hem", 0],
        [0, 245, "centre", 0],
      ),
    ).toEqual(places([0, -10], [102.25, -10], [100 + wideX, -wideY], [300, 45 - (30 * 41) / 40], [300, 245], [0, 245]));
    expect(
      corners(
        [0, 0, "centre", 0],
        [0, 245, "hem", 0],
        [-300, 245, "side", 0],
        [-300, 45, "neck", 30],
        [-100, 0, "neck", 10],
      ),
    ).toEqual(
      places([0, -10], [-102.25, -10], [-100 - wideX, -wideY], [-300, 45 - (30 * 41) / 40], [-300, 245], [0, 245]),
    );
  });
});
