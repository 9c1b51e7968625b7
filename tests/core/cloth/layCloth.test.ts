/** Lays on cloth: by hand, and held against an independent polygon library. */
import { describe, expect, it } from "vitest";
import type { Cloth } from "../../../src/core/decisions/dress";
import { cutRingOf } from "../../../src/core/cloth/cutRing";
import type { ClothLay } from "../../../src/core/cloth/cutting";
import { cutListOf, layCloth, prepareLay, type ClothAsked } from "../../../src/core/cloth/layCloth";
import { lengthToBuy, shrunk } from "../../../src/core/cloth/usualCloth";
import type { Part, PiecePart } from "../../../src/core/parts/part";
import { radians } from "../../../src/core/units";
import { boxPiece } from "../../support/boxPiece";
import { askedOf, inventedDress, rectanglePart, sectorPart } from "../../support/clothParts";
import { faultsOf } from "./laidFaults";

function laid(asked: ClothAsked, effort = 0.05): ClothLay {
  const lay = layCloth(asked, undefined, { effort });
  if (!lay.ok) throw new Error(JSON.stringify(lay.failure));
  return lay.value;
}

const on = (cloth: Cloth, ...parts: readonly Part[]): ClothAsked => askedOf({ cloth, parts });

describe("rectangles by hand", () => {
  it("lays three across a cloth that holds just three: 1400 less two selvages of 10 is 3 × 460", () => {
    const lay = laid(on({ width: 1400 }, rectanglePart("tier", 460, 300, 3)));
    expect(lay.length).toBe(300);
    expect(lay.parts.map(({ x }) => x).toSorted((p, q) => p - q)).toEqual([
      10,
      expect.closeTo(470, 6),
      expect.closeTo(930, 6),
    ]);
    expect(lay.leastByArea).toBeCloseTo(300, 6);
    expect(lay.used).toBeCloseTo(1, 6);
  });

  it("needs another row for a fourth, and says the least by area and by the longest piece", () => {
    const lay = laid(on({ width: 1400 }, rectanglePart("tier", 460, 300, 4), rectanglePart("strap", 50, 420)));
    expect(lay.length).toBe(600);
    expect(lay.leastByArea).toBeCloseTo((4 * 460 * 300 + 50 * 420) / 1380, 6);
    expect(lay.leastByLongest).toBe(420);
  });

  it("seeks no longer once it is as long as its longest part: none can be shorter", () => {
    const sought = (...parts: readonly Part[]): number => {
      let told = 0;
      layCloth(on({ width: 1400 }, ...parts), () => (told += 1), { effort: 0.05 });
      return told;
    };
    const short = [rectanglePart("side", 380, 200, 2), rectanglePart("strap", 50, 420, 3)];
    expect(laid(on({ width: 1400 }, ...short)).length).toBe(420);
    // Once for the first cells, and that it is done.
    expect(sought(...short)).toBe(2);
    expect(sought(...short, rectanglePart("tier", 1200, 300))).toBeGreaterThan(10);
  });

  it("puts small parts beside a wide one", () => {
    const lay = laid(on({ width: 1400 }, rectanglePart("tier", 1000, 400, 2), rectanglePart("side", 380, 200, 4)));
    expect(lay.length).toBe(800);
  });

  it("lays a part wider than half the cloth on the fold, once for each, and pairs double", () => {
    const lay = laid(
      on({ width: 1400, fold: true }, rectanglePart("tier", 960, 300), rectanglePart("side", 200, 300, 2)),
    );
    // Half of it, 480, and 200 beside it: 680 of the 690 there are.
    expect(lay.length).toBe(300);
    expect(lay.parts).toHaveLength(2);
    expect(lay.parts.find(({ key }) => key === "tier")).toMatchObject({ atFold: true, x: 0, width: 480 });
    expect(lay.parts.find(({ key }) => key === "side")).toMatchObject({ atFold: false, layers: 2 });
  });

  it("cuts an odd one of a folded cloth once, from the upper layer", () => {
    const lay = laid(on({ width: 1400, fold: true }, rectanglePart("side", 200, 300, 3)));
    expect(lay.parts.map(({ copy, layers }) => [copy, layers])).toEqual([
      [1, 2],
      [3, 1],
    ]);
  });

  it("lies across the cloth where its grain does", () => {
    const lay = laid(on({ width: 900 }, rectanglePart("waistband", 90, 800, 1, { grain: "across" })));
    expect(lay.length).toBe(90);
    expect(lay.parts[0]).toMatchObject({ width: 800, length: 90 });
  });

  it("lays a strip on the bias at 45°, so wide both ways as its length and width together / √2", () => {
    const lay = laid(on({ width: 900 }, rectanglePart("binding", 40, 700, 1, { grain: "bias" })));
    expect(lay.parts[0]?.width).toBeCloseTo(740 / Math.SQRT2, 6);
    expect(lay.length).toBeCloseTo(740 / Math.SQRT2, 6);
  });

  it("cuts a bias strip too long for the cloth in as few lengths as go, 10 mm more at each end to join", () => {
    // 880 across: (L + 40) / √2 ≤ 880 gives 1204 at the most; 2000 is cut in two of 1020.
    const parts = [rectanglePart("binding", 40, 2000, 1, { grain: "bias" })];
    const lay = laid(on({ width: 900 }, ...parts));
    expect(lay.parts).toHaveLength(2);
    expect(cutListOf(parts, {}, { place: "side", belowWaist: 0 }, { main: { width: 900 } })).toMatchObject([
      { count: 2, lengths: 2, width: 40, length: 1020, grain: "bias" },
    ]);
  });

  it("refuses by name what is too wide, with the width it needs", () => {
    const lay = layCloth(on({ width: 900 }, rectanglePart("belt", 100, 100), rectanglePart("tier", 951.6, 300)));
    expect(lay).toEqual({
      ok: false,
      failure: { code: "cloth/part-too-wide", key: "tier", needed: 951.6, width: 880 },
    });
    expect(layCloth(on({ width: 900 }, rectanglePart("lining", 50, 50, 1, { cloth: "lining" })))).toMatchObject({
      ok: false,
      failure: { code: "cloth/nothing-to-lay" },
    });
  });
});

describe("the paper of a part", () => {
  const back = boxPiece("back", 200, 300);
  const piece = (key: string, count: number, more: Partial<PiecePart> = {}): PiecePart => ({
    kind: "piece",
    key,
    group: "bodice",
    cloth: "main",
    cut: { onFold: false, count },
    half: null,
    grain: "along",
    piece: back,
    ...more,
  });
  const downs = (cloth: Cloth, ...parts: readonly Part[]) =>
    laid(on(cloth, ...parts)).parts.map(({ key, copy, layers, isPaperDown }) => [key, copy, layers, isPaperDown]);

  it("lies printed side down for each second one on a single layer; that of a half is printed for that half", () => {
    expect(
      downs(
        { width: 1400 },
        piece("back", 2),
        // Printed turned over, and as it is drawn: both are laid as they are printed.
        piece("back-left", 1, { half: "left" }),
        piece("back-right", 1, { half: "right" }),
        piece("lining-back-left", 1, { half: "left", group: "bodiceLining" }),
        piece("lining-back-right", 1, { half: "right", group: "bodiceLining" }),
        // Measured out: there is none.
        rectanglePart("strap", 40, 300, 1, { half: "left" }),
      ),
    ).toEqual([
      ["back", 1, 1, false],
      ["back", 2, 1, true],
      ["back-left", 1, 1, false],
      ["back-right", 1, 1, false],
      ["lining-back-left", 1, 1, false],
      ["lining-back-right", 1, 1, false],
      ["strap", 1, 1, false],
    ]);
  });

  it("of a half lies printed side up on the upper of two layers, which alone is cut", () => {
    expect(downs({ width: 1400, fold: true }, piece("back-left", 1, { half: "left" }), piece("other", 3))).toEqual([
      ["back-left", 1, 1, false],
      ["other", 1, 2, expect.any(Boolean)],
      // The third of them is as the first.
      ["other", 3, 1, false],
    ]);
  });
});

describe("sectors", () => {
  it("lie with one side along the grain: half circles of radius 800 take 800 across and 1600 along", () => {
    const asked = on({ width: 1400 }, sectorPart("half", 114.59, 800, Math.PI, { cut: { onFold: false, count: 2 } }));
    const lay = laid(asked);
    expect(lay.parts.map(({ width, length }) => [Math.round(width), Math.round(length)])).toEqual([
      [800, 1600],
      [800, 1600],
    ]);
    expect(lay.parts.every(({ turn }) => turn % 180 === 0)).toBe(true);
    expect(faultsOf(lay, asked)).toEqual([]);
  });

  it("have a level waist that is no circle cut as it is marked, and the other half turned over", () => {
    const waistRadii = [
      { at: radians(0), radius: 100 },
      { at: radians(Math.PI / 2), radius: 130 },
    ];
    const part = sectorPart("circle-front", 100, 600, Math.PI / 2, { cut: { onFold: false, count: 2 }, waistRadii });
    const asked = on({ width: 1400 }, part);
    const lay = laid(asked);
    expect(lay.parts.map(({ isTurnedOver }) => isTurnedOver)).toEqual([false, true]);
    // Radius grows evenly with the angle: the hole is ½ ∫ r² dφ = (π/4) (100² + 100·130 + 130²) / 3 each.
    const hole = ((Math.PI / 4) * (100 ** 2 + 100 * 130 + 130 ** 2)) / 3;
    expect((lay.leastByArea * 1380) / 2).toBeCloseTo((Math.PI / 4) * 600 ** 2 - hole, -3);
    expect(faultsOf(lay, asked)).toEqual([]);
  });

  it("has the area of its ring: share of π (R² - r²), its sides' allowances beside it", () => {
    const plain = laid(on({ width: 1500 }, sectorPart("panel", 300, 900, 0.8)));
    expect(plain.leastByArea * 1480).toBeCloseTo((0.8 / 2) * (900 ** 2 - 300 ** 2), -2);
    const allowances = { inner: 15, outer: 30, sides: 15 };
    const wide = laid(on({ width: 1500 }, sectorPart("panel", 300, 900, 0.8, { allowances })));
    // A side's allowance goes from one arc to the other: about 15 × (930 - 285) each.
    const sides = 2 * 15 * (930 - 285);
    expect(wide.leastByArea * 1480).toBeCloseTo((0.8 / 2) * (930 ** 2 - 285 ** 2) + sides, -3);
  });

  it("cuts a whole circle as a disc", () => {
    const lay = laid(on({ width: 1500 }, sectorPart("whole", 115, 700, 2 * Math.PI)));
    expect(lay.leastByArea * 1480).toBeCloseTo(Math.PI * 700 ** 2, -3);
    expect(lay.length).toBeCloseTo(1400, 0);
  });
});

describe("a quarter of a level circle", () => {
  // Drawn from its centre to its side to the right: seen from in front her left half is to the right, from behind to the left.
  it.each([
    ["circle-front-left", "left", false],
    ["circle-front-right", "right", true],
    ["circle-back-left", "left", true],
    ["circle-back-right", "right", false],
  ] as const)("%s is cut as it is worn", (key, half, isTurnedOver) => {
    const marks = [
      { at: radians(0), radius: 230 },
      { at: radians(Math.PI / 4), radius: 240 },
    ];
    const part = sectorPart(key, 230, 700, Math.PI / 4, { half, waistRadii: marks });
    const lay = prepareLay(on({ width: 1400 }, part));
    if (!lay.ok) throw new Error(lay.failure.code);
    expect(new Set(lay.value.copies.flatMap(({ ways }) => ways.map((way) => way.isTurnedOver)))).toEqual(
      new Set([isTurnedOver]),
    );
  });
});

describe("a rectangle on the fold", () => {
  it("is given as its half, with a seam at the one side alone", () => {
    const part = rectanglePart("tier", 300, 200, 1, {
      cut: { onFold: true, count: 1 },
      allowances: { top: 15, bottom: 30, sides: 15 },
    });
    const width = (ring: readonly { readonly x: number }[]): number => Math.max(...ring.map(({ x }) => x));
    const { open, half } = cutRingOf(part, {});
    expect([width(open), width(half ?? [])]).toEqual([630, 315]);
    // 200, with its seam above and its hem below.
    expect(Math.max(...open.map(({ y }) => y))).toBe(245);
  });
});

describe("cloth to buy", () => {
  it("adds what washing takes and rounds up to 5 cm or an eighth of a yard", () => {
    // 1 - 0.05 of 2000 is 1900: to have 1900 she buys 2000.
    expect(lengthToBuy(1900, { shrinkage: 5 }, "cm")).toBe(2000);
    expect(lengthToBuy(1900.1, { shrinkage: 5 }, "cm")).toBe(2050);
    expect(lengthToBuy(1001, {}, "cm")).toBe(1050);
    expect(lengthToBuy(1000, {}, "cm")).toBe(1000);
    // An eighth of a yard is 4.5 in: 114.3 mm; nine of them hold a metre, eight do not.
    expect(lengthToBuy(1000, {}, "in")).toBeCloseTo(1028.7, 6);
    // None grows, and none washes away: beyond a quarter it is read as a quarter, 1500 of 2000.
    expect(lengthToBuy(1500, { shrinkage: -5 }, "cm")).toBe(1500);
    expect(lengthToBuy(1500, { shrinkage: 100 }, "cm")).toBe(2000);
    expect(shrunk(2000, { shrinkage: 5 })).toBe(1900);
  });
});

describe("the cut list", () => {
  it("goes cloth by cloth, rectangles before all the longest first, strips on the bias last", () => {
    const parts = [
      rectanglePart("binding", 40, 500, 2, { grain: "bias" }),
      rectanglePart("lining", 300, 300, 1, { cloth: "lining" }),
      rectanglePart("tier-1", 606, 345, 1),
      sectorPart("circle", 100, 500, 1),
      rectanglePart("tier-2", 951.6, 345, 2),
    ];
    const list = cutListOf(parts, {}, { place: "side", belowWaist: 0 }, { main: { oneWay: true } });
    expect(list.map(({ key }) => key)).toEqual(["tier-2", "tier-1", "circle", "binding", "lining"]);
    expect(list[0]).toMatchObject({ count: 2, width: 951.6, length: 345, oneWay: true, inPairs: false });
    expect(list[4]).toMatchObject({ cloth: "lining", oneWay: false });
  });
});

describe("any dress", () => {
  const dresses = Array.from({ length: 14 }, (_, index) => inventedDress(index + 1));
  const changes: readonly Cloth[] = [{}, { fold: true }, { oneWay: true, fold: false }];
  const asked = dresses.flatMap(({ name, parts, cloth }) =>
    changes.map((change) => ({ name, asked: askedOf({ parts, cloth: { ...cloth, ...change } }) })),
  );
  // On the fold a wide part does not always go, which is said.
  const goes = asked.filter((one) => one.asked.cloth.fold !== true || prepareLay(one.asked).ok);

  it("goes on most folded cloths, and on all single ones", () => {
    expect(goes.length).toBeGreaterThan(0.75 * asked.length);
  });

  it.each(goes)("$name is laid so that it can be cut", (one) => {
    const lay = laid(one.asked, 0.01);
    expect(faultsOf(lay, one.asked)).toEqual([]);
    expect(lay.length).toBeGreaterThanOrEqual(lay.leastByLongest - 1e-6);
    expect(lay.length).toBeGreaterThanOrEqual(lay.leastByArea - 1e-6);
  });

  it("lies the same every time, and tells how far it is", () => {
    const again = askedOf(inventedDress(4));
    const told: number[] = [];
    const first = layCloth(again, (share) => told.push(share), { effort: 0.02 });
    expect(layCloth(again, undefined, { effort: 0.02 })).toEqual(first);
    expect(told.at(-1)).toBe(1);
    expect(told.every((share, index) => share >= (told[index - 1] ?? 0) && share <= 1)).toBe(true);
  });
});
