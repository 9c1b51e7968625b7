/** Cloth by hand: how each part may lie, its ring as it is cut, strips in lengths, what is bought. mm; usual numbers are common practice, no source. */
import { describe, expect, it } from "vitest";
import { biasLengths, copiesOf, type Ground } from "../../../src/core/cloth/copies";
import { cutRingOf } from "../../../src/core/cloth/cutRing";
import { cutListOf, layCloth } from "../../../src/core/cloth/layCloth";
import { answered, clothTable, type LaySearch } from "../../../src/core/cloth/laySearch";
import { packCloth } from "../../../src/core/cloth/packCloth";
import { ringArea } from "../../../src/core/geometry/ringArea";
import { boxOf, boxRing, type Copy } from "../../../src/core/cloth/rings";
import {
  beforeWashing,
  clothWidthOf,
  lengthToBuy,
  shrunk,
  SOLD_WIDTHS,
  usableWidth,
  widthOf,
} from "../../../src/core/cloth/usualCloth";
import type { Allowances } from "../../../src/core/decisions/allowances";
import type { Part, PiecePart } from "../../../src/core/parts/part";
import { named, straight } from "../../../src/core/pattern/namedEdges";
import type { Piece, PieceName } from "../../../src/core/pattern/piece";
import { radians } from "../../../src/core/units";
import { askedOf, rectanglePart, sectorPart } from "../../support/clothParts";

const close = (value: number): unknown => expect.closeTo(value, 6);
/** Round lines are cut as short straight ones. */
const nearly = (value: number): unknown => expect.closeTo(value, 0);
const single: Ground = { oneWay: false, onFold: false, usable: 880 };
const double: Ground = { oneWay: false, onFold: true, usable: 440 };

function copies(part: Part, ground: Ground): readonly Copy[] {
  const made = copiesOf([part], {}, ground);
  if (!made.ok) throw new Error(JSON.stringify(made.failure));
  return made.value;
}

/** How each copy may lie: its number, layers, and of each way degrees, turned over, at the fold. */
const waysOf = (part: Part, ground: Ground): unknown =>
  copies(part, ground).map(({ copy, layers, ways }) => [
    copy,
    layers,
    ways.map(({ turn, isTurnedOver, atFold }) => `${turn}${isTurnedOver ? " over" : ""}${atFold ? " fold" : ""}`),
  ]);

/** 100 wide and 200 deep, with a slanting side, its centre at x = 0. */
function plain(name: PieceName, centreOnFold = false): Piece {
  return {
    name,
    points: {
      centreNeck: named(0, 0, "neck"),
      underarm: named(60, 0, "bust"),
      sideWaist: named(100, 200, "waist"),
      centreWaist: named(0, 200, "waist"),
    },
    edges: [
      straight("centreNeck", "underarm", "neck"),
      straight("underarm", "sideWaist", "side"),
      straight("sideWaist", "centreWaist", "waist"),
      straight("centreWaist", "centreNeck", "centre"),
    ],
    darts: [],
    levelLines: [],
    centreOnFold,
  };
}

const piecePart = (name: PieceName, more: Partial<PiecePart> = {}): PiecePart => {
  const onFold = more.cut?.onFold === true;
  return {
    kind: "piece",
    key: name,
    group: "bodice",
    cloth: "main",
    cut: { onFold: false, count: 2 },
    half: null,
    grain: "along",
    piece: plain(name, onFold),
    ...more,
  };
};

/** No allowance anywhere. */
const BARE: Allowances = { neck: 0, side: 0, waist: 0, centre: 0 };
const folded = { onFold: true, count: 1 };

describe("the ways in which a part may lie", () => {
  it("follow its grain, and half a turn only where the cloth has no nap", () => {
    const ways = (grain: Part["grain"], oneWay: boolean) =>
      waysOf(rectanglePart("belt", 40, 300, 1, { grain }), { ...single, oneWay });
    expect(ways("along", false)).toEqual([[1, 1, ["0", "180"]]]);
    expect(ways("along", true)).toEqual([[1, 1, ["0"]]]);
    expect(ways("across", false)).toEqual([[1, 1, ["90", "270"]]]);
    expect(ways("across", true)).toEqual([[1, 1, ["90"]]]);
    expect(ways("bias", false)).toEqual([[1, 1, ["45", "315", "225", "135"]]]);
    expect(ways("bias", true)).toEqual([[1, 1, ["45", "315"]]]);
  });

  it("are in boxes that begin at nothing", () => {
    const triangle = piecePart("front", { piece: plain("front"), cut: { onFold: false, count: 1 } });
    const made = copiesOf([triangle], BARE, single);
    const [copy] = made.ok ? made.value : [];
    expect(copy?.ways.map(({ width, length }) => [width, length])).toEqual([
      [close(100), close(200)],
      [close(100), close(200)],
    ]);
    for (const { ring } of copy?.ways ?? [])
      expect([Math.min(...ring.map(({ x }) => x)), Math.min(...ring.map(({ y }) => y))]).toEqual([close(0), close(0)]);
  });

  it("turn every second copy of a piece over; a front is drawn as her left half, a back as her right", () => {
    const both = ["0", "180"];
    const over = ["0 over", "180 over"];
    expect(waysOf(piecePart("front"), single)).toEqual([
      [1, 1, both],
      [2, 1, over],
    ]);
    const one = { onFold: false, count: 1 };
    const first = (name: PieceName, half: "left" | "right", group: PiecePart["group"] = "bodice") =>
      waysOf(piecePart(name, { half, cut: one, group }), single);
    expect([first("front", "left"), first("front", "right")]).toEqual([[[1, 1, both]], [[1, 1, over]]]);
    expect([first("back", "left"), first("back", "right")]).toEqual([[[1, 1, over]], [[1, 1, both]]]);
    // What faces the body is drawn the other way round.
    expect(first("front", "left", "bodiceLining")).toEqual([[1, 1, over]]);
  });

  it("lay pairs double on folded cloth, and what lies on its fold against it", () => {
    const either = ["0", "180", "0 over", "180 over"];
    expect(waysOf(piecePart("front"), double)).toEqual([[1, 2, either]]);
    expect(waysOf(piecePart("front", { cut: { onFold: false, count: 3 } }), double)).toEqual([
      [1, 2, either],
      [3, 1, ["0", "180"]],
    ]);
    expect(waysOf(piecePart("front", { cut: { onFold: false, count: 1 } }), double)).toEqual([[1, 1, ["0", "180"]]]);
    const onFold = piecePart("front", { cut: folded });
    expect(waysOf(onFold, double)).toEqual([[1, 2, ["0 fold", "180 over fold"]]]);
    expect(waysOf(onFold, { ...double, oneWay: true })).toEqual([[1, 2, ["0 fold"]]]);
    // On single cloth it is opened, and alike on both sides.
    expect(waysOf(onFold, single)).toEqual([[1, 1, ["0", "180"]]]);
  });

  it("of a rectangle on folded cloth are single or double as it has room, and at the fold where it is too wide", () => {
    expect(waysOf(rectanglePart("tier", 440, 300, 2), double)).toEqual([[1, 2, ["0", "180"]]]);
    expect(waysOf(rectanglePart("tier", 441, 300, 2), double)).toEqual([
      [1, 2, ["0 fold", "180 over fold"]],
      [2, 2, ["0 fold", "180 over fold"]],
    ]);
    // Across the cloth there is no fold to lie on.
    expect(waysOf(rectanglePart("band", 100, 400, 2, { grain: "across" }), double)).toEqual([[1, 2, ["90", "270"]]]);
  });

  it("of a share of a circle that is too wide are a quarter turned, if it is short enough", () => {
    const half = sectorPart("circle", 100, 500, Math.PI);
    // 500 across and 1000 along.
    expect(waysOf(half, { ...single, usable: 500 })).toEqual([[1, 1, ["0", "180", "0 over", "180 over"]]]);
    const wide = sectorPart("circle", 100, 500, Math.PI / 6);
    // 250 across, 500 − 100 cos 30° = 413.4 along: turned it is wider, and has no room either.
    expect(copiesOf([wide], {}, { ...single, usable: 240 })).toMatchObject({
      ok: false,
      failure: { code: "cloth/part-too-wide", key: "circle", needed: close(250), width: 240 },
    });
    // Of 65° out of a flat ring: turned by a quarter it has room.
    const flat = sectorPart("circle", 300, 500, (65 * Math.PI) / 180);
    const across = 500 * Math.sin((65 * Math.PI) / 180);
    const along = 500 - 300 * Math.cos((65 * Math.PI) / 180);
    expect(waysOf(flat, { ...single, usable: (across + along) / 2 })).toEqual([
      [1, 1, ["90", "270", "90 over", "270 over"]],
    ]);
  });

  it("of quarters of a circle are turned over by turns; what goes over several is drawn from her left", () => {
    const up = ["0", "180"];
    const over = ["0 over", "180 over"];
    const first = (key: string, more: object = {}) =>
      waysOf(sectorPart(key, 100, 300, 1, { waistRadii: LEVEL, ...more }), single);
    // A waist that is no circle has no half like the other.
    expect(first("circle-front", { cut: { onFold: false, count: 2 } })).toEqual([
      [1, 1, up],
      [2, 1, over],
    ]);
    expect([first("circle-front"), first("circle-back")]).toEqual([[[1, 1, over]], [[1, 1, up]]]);
    expect([first("circle-front-left", { half: "left" }), first("circle-back-left", { half: "left" })]).toEqual([
      [[1, 1, up]],
      [[1, 1, over]],
    ]);
    expect(first("circle-front-right", { half: "right" })).toEqual([[1, 1, over]]);
  });
});

/** A waist that is no circle. */
const LEVEL = [
  { at: radians(0), radius: 100 },
  { at: radians(1), radius: 120 },
];

describe("a strip on the bias", () => {
  // 880 across takes √2 × 880 = 1244.5 of its length and width together.
  const strip = (width: number, length: number) => biasLengths(rectanglePart("binding", width, length), 880);

  it.each([
    [40, 1204, { lengths: 1, width: 40, length: 1204 }],
    [40, 1205, { lengths: 2, width: 40, length: 622.5 }],
    // Twice 1184.5, less its two joins.
    [40, 2368, { lengths: 2, width: 40, length: 1204 }],
    [40, 2370, { lengths: 3, width: 40, length: 810 }],
    [1205, 40, { lengths: 2, width: 622.5, length: 40 }],
  ])("%i by %i is cut as %j", (width, length, cut) => {
    expect(strip(width, length)).toEqual(cut);
  });

  it("is cut in twelve at the most, and laid so often", () => {
    expect(strip(40, 12_000)).toEqual({ lengths: 11, width: 40, length: 12_000 / 11 + 20 });
    expect(strip(40, 14_208)).toMatchObject({ lengths: 12 });
    expect(strip(40, 30_000)).toEqual({ lengths: 12, width: 40, length: 2520 });
    const laid = copies(rectanglePart("binding", 40, 1205, 2, { grain: "bias" }), single);
    expect(laid.map(({ copy, ways }) => [copy, ways[0]?.width])).toEqual(
      [1, 2, 3, 4].map((copy) => [copy, close((622.5 + 40) * Math.SQRT1_2)]),
    );
  });
});

describe("a part as it is cut", () => {
  it("of a rectangle is its box, half of it on the fold", () => {
    const allowances = { top: 10, bottom: 30, sides: 15 };
    expect(cutRingOf(rectanglePart("tier", 200, 300, 1, { allowances }), {})).toEqual({
      open: boxRing(230, 340),
      half: boxRing(115, 340),
    });
    expect(cutRingOf(rectanglePart("tier", 200, 300, 1, { allowances, cut: folded }), {})).toEqual({
      open: boxRing(430, 340),
      half: boxRing(215, 340),
    });
  });

  it("of a piece is its cutting line; on the fold the half is opened", () => {
    // A trapezium of 60 and 100 by 200.
    const open = cutRingOf(piecePart("front"), BARE);
    expect(open.half).toBeNull();
    expect(ringArea(open.open)).toBeCloseTo(16_000, 3);
    const onFold = cutRingOf(piecePart("front", { cut: folded }), BARE);
    expect(ringArea(onFold.half ?? [])).toBeCloseTo(16_000, 3);
    expect(ringArea(onFold.open)).toBeCloseTo(32_000, 3);
    expect(boxOf(onFold.open)).toEqual({ x: close(-100), y: close(0), width: close(200), length: close(200) });
    // A hem of its own.
    const own = cutRingOf(piecePart("front", { allowances: { waist: 40 } }), BARE);
    expect(boxOf(own.open).length).toBeCloseTo(240, 4);
  });

  it("of two halves that hang together is both, side by side", () => {
    const right = plain("front", true);
    const longer = { ...right, points: { ...right.points, sideWaist: named(140, 200, "waist") } };
    const part = piecePart("front", {
      piece: plain("front", true),
      otherHalf: longer,
      cut: { onFold: false, count: 1 },
    });
    const { open, half } = cutRingOf(part, BARE);
    expect(half).toBeNull();
    // 16 000 and 20 000; the left one, of 100, to the right of the centre.
    expect(ringArea(open)).toBeCloseTo(36_000, 3);
    expect(boxOf(open)).toEqual({ x: close(-140), y: close(0), width: close(240), length: close(200) });
  });

  it("of a share of a ring has its allowances about it", () => {
    const quarter = sectorPart("circle", 200, 500, Math.PI / 2);
    const bare = cutRingOf(quarter, {});
    expect(ringArea(bare.open)).toBeCloseTo((Math.PI / 4) * (500 ** 2 - 200 ** 2), -2);
    expect(boxOf(bare.open)).toEqual({ x: close(0), y: close(0), width: close(500), length: close(500) });
    // Its half, on the fold: an eighth.
    expect(boxOf(bare.half ?? [])).toEqual({
      x: close(0),
      y: close(200 * Math.SQRT1_2),
      width: close(500 * Math.SQRT1_2),
      length: close(500 - 200 * Math.SQRT1_2),
    });
    const sewn = cutRingOf({ ...quarter, allowances: { inner: 15, outer: 30, sides: 15 } }, {});
    // 530 out, and 15 beside both sides.
    expect(boxOf(sewn.open)).toEqual({ x: close(-15), y: close(-15), width: nearly(545), length: nearly(545) });
    const nearest = Math.min(...sewn.open.map(({ x, y }) => Math.hypot(x, y)));
    expect(nearest).toBeGreaterThan(184.4);
    expect(nearest).toBeLessThanOrEqual(185 + 1e-6);
  });

  it("of a waist that is no circle is straight in radius from mark to mark", () => {
    const marks = [
      { at: radians(0), radius: 100 },
      { at: radians(0.5), radius: 120 },
      { at: radians(1), radius: 110 },
    ];
    const wanted = (at: number): number => (at <= 0 ? 100 : at <= 0.5 ? 100 + 40 * at : at <= 1 ? 130 - 20 * at : 110);
    for (const sides of [0, 15]) {
      const part = sectorPart("circle", 100, 500, 1, {
        waistRadii: marks,
        allowances: { inner: 0, outer: 0, sides },
      });
      const { open, half } = cutRingOf(part, {});
      expect(half).toBeNull();
      const hole = open.filter(({ x, y }) => Math.hypot(x, y) < 300);
      expect(hole.length).toBeGreaterThan(5);
      const off = hole.map(({ x, y }) => Math.abs(Math.hypot(x, y) - wanted(Math.atan2(x, y))));
      expect(Math.max(...off)).toBeLessThan(1e-6);
      // Beside its sides it goes on, 15 square to them.
      expect(Math.min(...open.map(({ x }) => x))).toBeCloseTo(-sides, 6);
    }
  });

  it("opened has each of its corners once", () => {
    const apart = (ring: readonly { readonly x: number; readonly y: number }[]) =>
      Math.min(
        ...ring.map((p, at) => {
          const q = ring[(at + 1) % ring.length] ?? p;
          return Math.hypot(q.x - p.x, q.y - p.y);
        }),
      );
    const { open, half } = cutRingOf(piecePart("front", { cut: folded }), BARE);
    expect(apart(open)).toBeGreaterThan(0.1);
    // All but the two on the fold are mirrored.
    expect(open).toHaveLength(2 * (half?.length ?? 0) - 2);
    const lowered = piecePart("front", {
      piece: plain("front", true),
      // The right one drawn 50 further down.
      otherHalf: {
        ...plain("front", true),
        points: {
          centreNeck: named(0, 50, "neck"),
          underarm: named(60, 50, "bust"),
          sideWaist: named(100, 250, "waist"),
          centreWaist: named(0, 250, "waist"),
        },
      },
      cut: { onFold: false, count: 1 },
    });
    const both = cutRingOf(lowered, BARE).open;
    expect(apart(both)).toBeGreaterThan(0.1);
    expect(ringArea(both)).toBeCloseTo(32_000, 3);
    expect(boxOf(both)).toEqual({ x: close(-100), y: close(0), width: close(200), length: close(200) });
  });

  it("of one on the fold has an allowance at its other side alone, and opens to twice it", () => {
    const part = sectorPart("circle", 200, 500, Math.PI / 2, {
      foldSides: 1,
      cut: folded,
      allowances: { inner: 0, outer: 0, sides: 15 },
    });
    const { open, half } = cutRingOf(part, {});
    expect(boxOf(half ?? [])).toEqual({ x: close(0), y: close(-15), width: nearly(500), length: close(515) });
    expect(boxOf(open)).toEqual({ x: nearly(-500), y: close(-15), width: nearly(1000), length: close(515) });
    expect(ringArea(open)).toBeCloseTo(2 * ringArea(half ?? []), 3);
  });

  it("of what is nearly a ring is a disc, the hole left in", () => {
    const ring = sectorPart("circle", 100, 500, 2 * Math.PI - 0.02, { allowances: { inner: 0, outer: 0, sides: 15 } });
    const { open } = cutRingOf(ring, {});
    expect(boxOf(open).width).toBeCloseTo(1000, 0);
    expect(ringArea(open) / (Math.PI * 500 ** 2)).toBeCloseTo(1, 2);
    // Half of a ring on the fold closes with it.
    const onFold = cutRingOf({ ...ring, angle: radians(Math.PI - 0.01), foldSides: 1, cut: folded }, {});
    expect(ringArea(onFold.half ?? []) / ((Math.PI * 500 ** 2) / 2)).toBeCloseTo(1, 2);
  });
});

describe("rings", () => {
  it("have a box and an area", () => {
    const slanted = [
      { x: 10, y: 5 },
      { x: 40, y: 25 },
      { x: 10, y: 45 },
    ];
    expect(boxOf(slanted)).toEqual({ x: 10, y: 5, width: 30, length: 40 });
    expect([ringArea(slanted), ringArea(slanted.toReversed())]).toEqual([600, 600]);
  });
});

describe("cloth as it is sold", () => {
  it("is usually 140 cm or 54 in wide, or as she says", () => {
    expect([widthOf({}, "cm"), widthOf({}, "in"), widthOf({ width: 1100 }, "in")]).toEqual([1400, 54 * 25.4, 1100]);
    expect(clothWidthOf({ cloths: { main: { width: 900 } } }, "main", "cm")).toBe(900);
    expect([
      clothWidthOf({ cloths: { main: { width: 900 } } }, "lining", "cm"),
      clothWidthOf({}, "main", "in"),
    ]).toEqual([1400, 54 * 25.4]);
    expect(SOLD_WIDTHS).toEqual({
      cm: [900, 1100, 1140, 1400, 1500],
      in: [45, 54, 60].map((inch) => close(inch * 25.4)),
    });
  });

  it("has its selvages taken off; on the fold one of them, of the half", () => {
    expect([usableWidth(1400, false), usableWidth(1400, true)]).toEqual([1380, 690]);
  });

  it("shrinks by none to a quarter", () => {
    expect(shrunk(1000, { shrinkage: 5 })).toBeCloseTo(950, 9);
    expect([shrunk(1000, {}), shrunk(1000, { shrinkage: -5 }), shrunk(1000, { shrinkage: 60 })]).toEqual([
      1000, 1000, 750,
    ]);
    expect(beforeWashing(950, { shrinkage: 5 })).toBeCloseTo(1000, 9);
  });

  it("is cut by 5 cm, or an eighth of a yard", () => {
    expect([1000, 1000.00005, 1000.1, 1001].map((length) => lengthToBuy(length, {}, "cm"))).toEqual([
      1000, 1000, 1050, 1050,
    ]);
    expect(lengthToBuy(960, { shrinkage: 4 }, "cm")).toBe(1000);
    expect([lengthToBuy(914.4, {}, "in"), lengthToBuy(915, {}, "in")]).toEqual([close(914.4), close(9 * 114.3)]);
  });
});

describe("the cut list", () => {
  it("says how each is cut, in the order of cutting", () => {
    const parts: readonly Part[] = [
      piecePart("back", { piece: plain("back"), key: "small" }),
      piecePart("front", { key: "fold", cut: folded }),
      rectanglePart("binding", 40, 1500, 1, { grain: "bias" }),
      rectanglePart("belt", 80, 700, 1, { grain: "across" }),
      rectanglePart("short", 300, 100),
      rectanglePart("long", 300, 200),
      sectorPart("large", 100, 600, 1),
      rectanglePart("lined", 500, 500, 1, { cloth: "lining" }),
    ];
    const list = cutListOf(parts, BARE, { place: "side", belowWaist: 0 }, { main: { width: 900, oneWay: true } });
    expect(list.map(({ key }) => key)).toEqual(["belt", "long", "short", "fold", "large", "small", "binding", "lined"]);
    const line = { cloth: "main", onFold: false, isRectangle: true, grain: "along", inPairs: false, oneWay: true };
    expect(list[0]).toEqual({ ...line, key: "belt", count: 1, width: 700, length: 80, grain: "across", lengths: 1 });
    expect(list[3]).toEqual({
      ...line,
      key: "fold",
      count: 1,
      onFold: true,
      isRectangle: false,
      width: close(100),
      length: close(200),
      lengths: 1,
    });
    expect(list[5]).toMatchObject({ key: "small", count: 2, isRectangle: false, inPairs: true, onFold: false });
    expect(list[6]).toEqual({ ...line, key: "binding", count: 2, width: 40, length: 770, grain: "bias", lengths: 2 });
    expect(list[7]).toMatchObject({ cloth: "lining", oneWay: false });
  });
});

it("the cut list has strips on the bias in as many lengths as folded cloth needs", () => {
  // 40 and 1000 take 735.4 at 45°: 1380 of an open cloth hold it, 690 of one on the fold two of 520.
  const strip = [rectanglePart("binding", 40, 1000, 1, { grain: "bias" })];
  const cut = (cloth: object) =>
    cutListOf(strip, {}, { place: "side", belowWaist: 0 }, { main: { width: 1400, ...cloth } }).map(
      ({ count, lengths, length }) => [count, lengths, length],
    );
  expect([cut({}), cut({ fold: false }), cut({ fold: true })]).toEqual([[[1, 1, 1000]], [[1, 1, 1000]], [[2, 2, 520]]]);
});

describe("a lay", () => {
  it("says all of where it lies, and what is bought", () => {
    const lay = layCloth(
      askedOf({ cloth: { width: 500, shrinkage: 20, oneWay: true }, parts: [rectanglePart("tier", 480, 300)] }),
      undefined,
      { effort: 0.001 },
    );
    expect(lay).toEqual({
      ok: true,
      value: {
        cloth: "main",
        width: 500,
        onFold: false,
        oneWay: true,
        parts: [
          {
            key: "tier",
            copy: 1,
            layers: 1,
            ring: boxRing(480, 300).map(({ x, y }) => ({ x: x + 10, y })),
            x: 10,
            y: 0,
            width: 480,
            length: 300,
            turn: 0,
            isTurnedOver: false,
            isPaperDown: false,
            atFold: false,
          },
        ],
        length: 300,
        // 300 / 0.8 = 375.
        toBuy: 400,
        leastByArea: close(300),
        leastByLongest: 300,
        used: close(1),
      },
    });
  });

  it("is told how far it is from nothing to all, never back", () => {
    const told: number[] = [];
    const parts = [rectanglePart("a", 300, 210, 3), rectanglePart("b", 170, 330, 4), rectanglePart("c", 230, 130, 3)];
    layCloth(askedOf({ cloth: { width: 900 }, parts }), (share) => told.push(share), { effort: 0.01 });
    expect(told.length).toBeGreaterThan(3);
    expect(told).toEqual(told.toSorted((a, b) => a - b));
    expect(told.at(-1)).toBe(1);
    expect(Math.min(...told)).toBeGreaterThanOrEqual(0);
  });

  it("is sought no further than to its goal", () => {
    const parts = [rectanglePart("a", 300, 210, 3), rectanglePart("b", 170, 330, 4), rectanglePart("c", 230, 130, 3)];
    const counted = (goal: number): number => {
      let told = 0;
      layCloth(askedOf({ cloth: { width: 900 }, parts }), () => (told += 1), { effort: 0.01, goal });
      return told;
    };
    expect(counted(10_000)).toBe(2);
    expect(counted(0)).toBeGreaterThan(10);
  });

  it("of one thing that may lie one way is found at once", () => {
    const square = { ring: boxRing(40, 40), width: 40, length: 40, turn: 0, isTurnedOver: false, atFold: false };
    const told: number[] = [];
    const places = packCloth([{ key: "a", copy: 1, layers: 1, ways: [square] }], {
      usable: 120,
      looks: 1e6,
      goal: 0,
      progress: (share) => told.push(share),
      seed: 0,
    });
    expect(places).toEqual([{ way: square, x: 0, y: 0 }]);
    expect(told).toEqual([0.45, 0.8, 1, 1].map(close));
  });

  it("lies against the fold where it has to, what is beside it anywhere", () => {
    const way = (width: number, length: number, atFold: boolean) => ({
      ring: boxRing(width, length),
      width,
      length,
      turn: 0,
      isTurnedOver: false,
      atFold,
    });
    const at = (key: string, ...ways: Copy["ways"]): Copy => ({ key, copy: 1, layers: 2, ways });
    const places = packCloth([at("a", way(50, 100, true)), at("b", way(50, 100, true)), at("c", way(70, 200, false))], {
      usable: 120,
      looks: 1e5,
      goal: 0,
      progress: () => undefined,
      seed: 0,
    });
    // Both at the fold one below the other, 70 beside them.
    expect(places.slice(0, 2).map(({ x }) => x)).toEqual([0, 0]);
    expect(
      places
        .slice(0, 2)
        .map(({ y }) => y)
        .toSorted((p, q) => p - q),
    ).toEqual([0, 100]);
    expect(places[2]).toMatchObject({ x: 50, y: 0 });
  });
});

describe("the table of widths", () => {
  it("has every width sold and hers, the narrowest first, and what is too wide by name", () => {
    const asked = askedOf({ cloth: { width: 1200 }, parts: [rectanglePart("tier", 1050, 400)] });
    const wanted: unknown[] = [];
    function* watched<T>(search: LaySearch<T>): LaySearch<T> {
      let step = search.next();
      while (step.done !== true) {
        wanted.push([step.value.effort, step.value.goal, step.value.prepared.width]);
        step = search.next(yield step.value);
      }
      return step.value;
    }
    const table = answered(watched(clothTable(asked, () => ({ ok: true, value: asked }))), 0.001);
    const short = (width: number) => ({
      width,
      isHers: false,
      needed: { failure: { code: "cloth/part-too-wide", key: "tier", needed: 1050, width: width - 20 } },
    });
    // 400 long: m² by the width.
    const goes = (width: number) => ({
      width,
      isHers: width === 1200,
      needed: { length: 400, toBuy: 400, area: close(width * 0.0004) },
    });
    expect(table).toEqual([short(900), goes(1100), goes(1140), goes(1200), goes(1400), goes(1500)]);
    expect(wanted).toEqual([1100, 1140, 1200, 1400, 1500].map((width) => [1, 0, width]));
    expect(
      answered(
        clothTable({ cloth: { width: 1400 }, unit: "cm" }, () => ({
          ok: false,
          failure: { code: "cloth/nothing-to-lay" },
        })),
      ),
    ).toEqual(
      [900, 1100, 1140, 1400, 1500].map((width) => ({
        width,
        isHers: width === 1400,
        needed: { failure: { code: "cloth/nothing-to-lay" } },
      })),
    );
  });
});

describe("a ring as it lies", () => {
  const angleOf = (from: { x: number; y: number }, to: { x: number; y: number }): number =>
    (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  const turnedBy = (from: number, to: number): number => (Math.round(to - from) + 720) % 360;

  it.each(["along", "across", "bias"] as const)(
    "%s the grain is turned by what its way says, mirrored first where it is turned over",
    (grain) => {
      const made = copiesOf([piecePart("front", { grain })], BARE, { ...single, usable: 1000 });
      if (!made.ok) throw new Error(made.failure.code);
      const drawn = cutRingOf(piecePart("front", { grain }), BARE).open;
      const [a, b] = [drawn[0] ?? { x: 0, y: 0 }, drawn[1] ?? { x: 0, y: 0 }];
      const ways = made.value.flatMap((copy) => copy.ways);
      expect(ways).toHaveLength(grain === "bias" ? 8 : 4);
      for (const { ring, turn, isTurnedOver, width, length } of ways) {
        const [p, q] = [ring[0] ?? a, ring[1] ?? b];
        expect(Math.hypot(q.x - p.x, q.y - p.y)).toBeCloseTo(Math.hypot(b.x - a.x, b.y - a.y), 9);
        const before = isTurnedOver ? 180 - angleOf(a, b) : angleOf(a, b);
        expect(turnedBy(before, angleOf(p, q))).toBe(turn);
        expect(ringArea(ring)).toBeCloseTo(ringArea(drawn), 6);
        expect(boxOf(ring)).toEqual({ x: close(0), y: close(0), width: close(width), length: close(length) });
      }
    },
  );

  it("of a piece on the bias lies but one slant where the other is too wide", () => {
    // 0 0, 60 0, 100 200, 0 200: x − y from −200 to 60, x + y from 0 to 300, both over √2.
    const slanted = piecePart("front", { grain: "bias", cut: { onFold: false, count: 1 } });
    const waysAt = (usable: number) => {
      const made = copiesOf([slanted], BARE, { ...single, usable });
      return made.ok ? made.value.flatMap(({ ways }) => ways.map(({ turn }) => turn)) : made.failure;
    };
    expect(waysAt(212.2)).toEqual([45, 315, 225, 135]);
    expect(waysAt(212.1)).toEqual([45, 225]);
    expect(waysAt(183.8)).toEqual({
      code: "cloth/part-too-wide",
      key: "front",
      needed: close(260 * Math.SQRT1_2),
      width: 183.8,
    });
  });

  it("of a share of a circle turned a quarter lies on folded cloth in pairs, never at the fold", () => {
    const angle = (65 * Math.PI) / 180;
    const across = 500 * Math.sin(angle);
    const along = 500 - 300 * Math.cos(angle);
    const flat = sectorPart("circle", 300, 500, angle, { cut: { onFold: false, count: 3 } });
    const way = ["90", "270", "90 over", "270 over"];
    expect(waysOf(flat, { ...double, usable: (across + along) / 2 })).toEqual([
      [1, 2, way],
      [3, 1, way],
    ]);
  });
});

describe("a share of a ring as it is cut", () => {
  const bounded = (angle: number, more: Parameters<typeof sectorPart>[4] = {}, inner = 100) =>
    cutRingOf(sectorPart("circle", inner, 500, angle, more), {});
  const sides = (by: number, waist = 0) => ({ allowances: { inner: waist, outer: 0, sides: by } });
  /** ½ r² φ. */
  const slice = (radius: number, angle: number): number => (radius ** 2 * angle) / 2;

  it("has as many corners on its arcs as keep it within 0.05 mm of the curve, and no more", () => {
    const { open } = bounded(1);
    for (const [radius, length] of [
      [500, 1],
      [100, 1],
    ] as const) {
      const on = open.filter(({ x, y }) => Math.abs(Math.hypot(x, y) - radius) < 1e-6);
      // A stretch over an angle a leaves the curve by r (1 − cos ½a).
      const off = (stretches: number): number => radius * (1 - Math.cos(length / stretches / 2));
      expect(off(on.length - 1)).toBeLessThanOrEqual(0.05);
      expect(off(on.length - 2)).toBeGreaterThan(0.05);
    }
  });

  it("is a disc as soon as it closes, and not before", () => {
    expect(ringArea(bounded(2 * Math.PI).open) / slice(500, 2 * Math.PI)).toBeCloseTo(1, 3);
    const short = 2 * Math.PI - 0.01;
    expect(ringArea(bounded(short).open) / (slice(500, short) - slice(100, short))).toBeCloseTo(1, 3);
    // 2.5 mm at each side close what 5 mm are missing of at 500.
    expect(ringArea(bounded(short, sides(2.51)).open) / slice(500, 2 * Math.PI)).toBeCloseTo(1, 3);
    expect(ringArea(bounded(short, sides(2.4)).open) / (slice(500, short) - slice(100, short))).toBeCloseTo(1, 1);
    const onFold = { foldSides: 1, cut: folded } as const;
    expect(ringArea(bounded(Math.PI, onFold).open) / slice(500, 2 * Math.PI)).toBeCloseTo(1, 3);
    const half = Math.PI - 0.01;
    expect(ringArea(bounded(half, onFold).open) / (2 * (slice(500, half) - slice(100, half)))).toBeCloseTo(1, 3);
    expect(ringArea(bounded(half, { ...onFold, ...sides(5.1) }).open) / slice(500, 2 * Math.PI)).toBeCloseTo(1, 3);
    // All of the hole is cut out of it, though the hole's two ends meet on the line of the fold.
    const slit = bounded(half, { ...onFold, ...sides(4.9) });
    expect(ringArea(slit.open) / (slice(500, 2 * Math.PI) - slice(100, 2 * Math.PI))).toBeCloseTo(1, 3);
    expect(ringArea(slit.half ?? [])).toBeCloseTo(ringArea(slit.open) / 2, 6);
  });

  it("comes to a point where its waist allowance reaches its middle", () => {
    const { open } = bounded(1, sides(15, 12), 10);
    // Its sides run from the middle to 15 mm beside them at 500.
    expect(ringArea(open) / slice(500, 1 + 2 * Math.asin(15 / 500))).toBeCloseTo(1, 3);
    expect(Math.min(...open.map(({ x, y }) => Math.hypot(x, y)))).toBe(0);
  });

  it("has its sides' allowances at the waist no wider than there is room between them", () => {
    // At 100 they would reach asin 0.15 = 0.1506 beyond each side; half of what is missing is 0.1.
    const { open } = bounded(2 * Math.PI - 0.2, sides(15));
    const hole = open.filter(({ x, y }) => Math.abs(Math.hypot(x, y) - 100) < 1e-6);
    const meeting = { x: close(100 * Math.sin(-0.1)), y: close(100 * Math.cos(-0.1)) };
    expect([hole[0], hole.at(-1)]).toEqual([meeting, meeting]);
    const outer = open.filter(({ x, y }) => Math.abs(Math.hypot(x, y) - 500) < 1e-6);
    const beside = Math.asin(15 / 500);
    expect([outer[0], outer.at(-1)]).toEqual([
      { x: close(-15), y: close(500 * Math.cos(beside)) },
      { x: close(500 * Math.sin(beside - 0.2)), y: close(500 * Math.cos(beside - 0.2)) },
    ]);
    // On the fold all of it is at the other side: 0.1 of π − 0.1.
    const half = bounded(Math.PI - 0.1, { foldSides: 1, cut: folded, ...sides(15) }).half ?? [];
    const inside = half.filter(({ x, y }) => Math.abs(Math.hypot(x, y) - 100) < 1e-6);
    expect([inside[0], inside.at(-1)]).toEqual([
      { x: 0, y: close(-100) },
      { x: 0, y: close(100) },
    ]);
  });
});

describe("a piece that is not drawn from its fold", () => {
  it("is moved there, and opened about it", () => {
    const drawn = plain("front", true);
    const away = {
      ...drawn,
      points: {
        centreNeck: named(30, 0, "neck"),
        underarm: named(90, 0, "bust"),
        sideWaist: named(130, 200, "waist"),
        centreWaist: named(30, 200, "waist"),
      },
    };
    const here = cutRingOf(piecePart("front", { cut: folded }), BARE);
    expect(cutRingOf(piecePart("front", { cut: folded, piece: away }), BARE)).toEqual({
      open: here.open.map(({ x, y }) => ({ x: close(x), y: close(y) })),
      half: here.half?.map(({ x, y }) => ({ x: close(x), y: close(y) })),
    });
    expect(here.half?.filter(({ x }) => x === 0)).toHaveLength(2);
  });
});
