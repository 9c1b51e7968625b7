/** Pieces at true scale on a square of 100 mm, by hand: walks, notches, room for grain and title, tacking, allowances. */
import { describe, expect, it } from "vitest";
import { buttonholeAt, buttonRow } from "../../../src/core/cutting/buttons";
import { cutNotch, notchDepth, notchPlaces, ownNotches } from "../../../src/core/cutting/notches";
import { ringAround } from "../../../src/core/cutting/ringAround";
import { grainLine, isFreeWithin, isInRing, titleBox } from "../../../src/core/cutting/room";
import { stretchesOf } from "../../../src/core/cutting/stretches";
import { tackingRows } from "../../../src/core/cutting/tacking";
import { foldOf, titledClearOf, truePiece, turnedOver } from "../../../src/core/cutting/truePieces";
import { isPartTurnedOver, isTurnedOver } from "../../../src/core/cutting/turnedOver";
import {
  allowanceOn,
  INCH_ALLOWANCES,
  isOwnAllowance,
  toileAllowances,
  USUAL_ALLOWANCES,
} from "../../../src/core/cutting/usualAllowances";
import { alongTo, placeAlong, walkAlong } from "../../../src/core/cutting/walk";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Closure } from "../../../src/core/decisions/pattern";
import type { Piece } from "../../../src/core/pattern/piece";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { radians } from "../../../src/core/units";
import { darted, square } from "../sewn/flatPieces";

const p = piecePoint;
const near = (x: number, y: number) => ({ x: expect.closeTo(x, 6), y: expect.closeTo(y, 6) });
const quarter = Math.PI / 2;

describe("a walk along a seam", () => {
  const front = darted(40, 60, 40);

  it("goes from the centre over closed darts, and is broken there: 40 and 40 mm of a waist", () => {
    const walk = walkAlong([front], "waist");
    expect([walk.length, walk.breaks]).toEqual([80, [0, 40, 80]]);
    expect(placeAlong(walk, 30)).toEqual({ piece: "front", at: near(30, 100), outward: expect.closeTo(quarter, 9) });
    expect(placeAlong(walk, 50).at).toEqual(near(70, 100));
    expect(placeAlong(walk, -9).at).toEqual(near(0, 100));
    expect(placeAlong(walk, 99).at).toEqual(near(100, 100));
    expect([alongTo(walk, "centreWaist"), alongTo(walk, "waistDartOuter"), alongTo(walk, "underarm")]).toEqual([
      0,
      40,
      null,
    ]);
  });

  it("goes down the sides and the centre from above, square out of the piece", () => {
    const side = walkAlong([square], "side");
    expect([side.length, side.breaks]).toEqual([100, [0, 100]]);
    expect(placeAlong(side, 30)).toEqual({ piece: "front", at: near(100, 30), outward: expect.closeTo(0, 9) });
    const centre = walkAlong([square], "centre");
    const { at, outward } = placeAlong(centre, 20);
    expect([at, Math.abs(outward)]).toEqual([near(0, 20), expect.closeTo(Math.PI, 9)]);
    // From above, as an armhole is that falls; this one is level, and is walked as it is drawn.
    expect(placeAlong(walkAlong([square], "armhole"), 20).at).toEqual(near(20, 0));
  });

  it("goes over several pieces in their order, a piece without the seam passed over", () => {
    const back: Piece = { ...square, name: "back" };
    const bare: Piece = { ...square, edges: square.edges.map((edge) => ({ ...edge, seam: "neck" as const })) };
    const walk = walkAlong([front, bare, back], "waist");
    expect([walk.length, walk.breaks]).toEqual([180, [0, 40, 80, 180]]);
    expect(placeAlong(walk, 90)).toMatchObject({ piece: "back", at: near(10, 100) });
    expect(walkAlong([bare], "waist")).toEqual({ steps: [], length: 0, breaks: [0, 0] });
  });

  it("goes along an edge as it is drawn where that leaves the centre, against it where it comes there", () => {
    const piece = longPiece("front", 80);
    expect(placeAlong(walkAlong([piece], "neck"), 30)).toEqual({
      piece: "front",
      at: near(30, 0),
      outward: expect.closeTo(-quarter, 9),
    });
    expect(placeAlong(walkAlong([piece], "waist"), 30)).toEqual({
      piece: "front",
      at: near(30, 80),
      outward: expect.closeTo(quarter, 9),
    });
  });

  it("is the same where the ring begins in the middle of the seam", () => {
    const turned: Piece = { ...front, edges: [...front.edges.slice(4), ...front.edges.slice(0, 4)] };
    expect(walkAlong([turned], "waist")).toEqual(walkAlong([front], "waist"));
    const alone: Piece = { ...square, edges: square.edges.map((edge) => ({ ...edge, seam: "edge" as const })) };
    expect(walkAlong([alone], "edge").length).toBe(400);
  });
});

const closure: Closure = { place: "centreBack", belowWaist: 0 };

/** A square with its side 300 mm long in one edge, its centre at the fold or not. */
const longPiece = (name: Piece["name"], height: number, centreOnFold = false): Piece => ({
  ...square,
  name,
  centreOnFold,
  levelLines: [],
  points: {
    centreNeck: { at: p(0, 0), level: "bust" },
    underarm: { at: p(100, 0), level: "bust" },
    sideWaist: { at: p(100, height), level: "bust" },
    centreWaist: { at: p(0, height), level: "bust" },
  },
  edges: (
    [
      ["centreNeck", "underarm", "neck"],
      ["underarm", "sideWaist", "side"],
      ["sideWaist", "centreWaist", "waist"],
      ["centreWaist", "centreNeck", "centre"],
    ] as const
  ).map(([from, to, seam]) => ({ from, to, seam, curve: null, mouthOf: null })),
});

describe("notches", () => {
  const sideNotches = (height: number) =>
    notchPlaces(setOf([longPiece("front", height, true), longPiece("back", height)]), closure).filter(
      ({ seam }) => seam === "side",
    );

  it.each([
    [60, []],
    [61, [0.42]],
    [260, [0.42]],
    [261, [0.3, 0.64]],
    [400, [0.3, 0.64]],
  ] as const)("of a side of %d mm stand at %j of it (our own choice)", (height, shares) => {
    const found = sideNotches(height);
    expect(found.map(({ at }) => at.y)).toEqual(
      shares.flatMap((share) => [share * height, share * height].map((y) => expect.closeTo(y, 6))),
    );
    expect(found.map(({ piece }) => piece)).toEqual(shares.flatMap(() => ["back", "front"]));
    expect(found.map(({ number }) => number)).toEqual(shares.flatMap((_, index) => [index + 1, index + 1]));
    for (const one of found) expect([one.kind, one.twins, one.at.x]).toEqual(["seam", undefined, 100]);
  });

  it("mark the end of an opening at the centre back of a basque alone", () => {
    const set = setOf([longPiece("back", 300), longPiece("frontBasque", 200), longPiece("backBasque", 200)]);
    const openings = (of: Closure) => notchPlaces(set, of).filter(({ kind }) => kind === "opening");
    expect(openings({ place: "centreBack", belowWaist: 70 })).toMatchObject([
      { piece: "backBasque", at: near(0, 70), number: 0, seam: "centre" },
    ]);
    expect(openings({ place: "side", belowWaist: 70 })).toMatchObject([
      { piece: "frontBasque", at: near(100, 70), seam: "side" },
      { piece: "backBasque", at: near(100, 70), seam: "side" },
    ]);
    for (const belowWaist of [0, -5, 200, 250]) expect(openings({ place: "side", belowWaist })).toEqual([]);
    const onFold = setOf([longPiece("backBasque", 200, true)]);
    expect(notchPlaces(onFold, { place: "centreBack", belowWaist: 70 })).toEqual([]);
  });

  it("of a dart are at both ends of its legs, along them; of the fold at its ends, along it", () => {
    const own = ownNotches(darted(40, 60, 40), true);
    const slant = Math.atan2(60, 10);
    expect(own).toEqual([
      {
        piece: "front",
        kind: "dart",
        number: 0,
        seam: "waist",
        at: near(40, 100),
        outward: expect.closeTo(Math.PI - slant, 9),
      },
      { piece: "front", kind: "dart", number: 0, seam: "waist", at: near(60, 100), outward: expect.closeTo(slant, 9) },
      {
        piece: "front",
        kind: "centre",
        number: 0,
        seam: "centre",
        at: near(0, 0),
        outward: expect.closeTo(-quarter, 9),
      },
      {
        piece: "front",
        kind: "centre",
        number: 0,
        seam: "centre",
        at: near(0, 100),
        outward: expect.closeTo(quarter, 9),
      },
    ]);
    expect(ownNotches(darted(40, 60, 40), false)).toEqual(own.slice(0, 2));
    expect(ownNotches(square, false)).toEqual([]);
  });

  it("are cut where the way out first meets the cutting line, double ones at both places", () => {
    const cutting = [p(-10, -10), p(115, -10), p(115, 120), p(-10, 120)].map((at) => ({ at, corner: true }));
    const place = { piece: "front" as const, at: p(100, 40), outward: radians(0) };
    const notch = { ...place, kind: "seam" as const, number: 3, seam: "side" as const };
    expect(cutNotch(notch, cutting)).toEqual({
      kind: "seam",
      number: 3,
      seam: "side",
      outward: 0,
      stitch: { x: 100, y: 40 },
      cut: near(115, 40),
    });
    const twins = [
      { ...place, at: p(100, 37) },
      { ...place, at: p(100, 43) },
    ] as const;
    expect(cutNotch({ ...notch, twins }, cutting).twins).toEqual([
      { stitch: { x: 100, y: 37 }, cut: near(115, 37) },
      { stitch: { x: 100, y: 43 }, cut: near(115, 43) },
    ]);
    // Nothing is met: it stays on the stitch line.
    expect(cutNotch({ ...notch, at: p(500, 40) }, cutting).cut).toEqual({ x: 500, y: 40 });
  });

  it("go 5 mm deep, or six tenths of a narrow allowance", () => {
    const depth = (allowance: number) => notchDepth({ stitch: p(0, 0), cut: p(allowance, 0) });
    expect([depth(15), depth(10), depth(5), depth(0)]).toEqual([5, 5, 3, 0]);
  });
});

describe("buttons", () => {
  const backs = (height: number) => setOf([longPiece("back", height)]);
  const row = (height: number, buttons: number) => buttonRow(backs(height), { ...closure, buttons });

  it("stand from 12 mm below the neck to 12 mm above the end; none where that leaves no room", () => {
    expect(row(324, 4)).toEqual({ along: [12, 112, 212, 312], spacing: 100, ends: [12, 12] });
    expect(row(24, 2)).toBeNull();
    expect(row(25, 2)).toEqual({ along: [12, 13], spacing: 1, ends: [12, 12] });
    expect(buttonRow(backs(324), closure)).toBeNull();
    expect(buttonRow(setOf([longPiece("back", 324, true)]), { ...closure, buttons: 4 })).toBeNull();
    expect(buttonRow(backs(324), { place: "side", belowWaist: 0, buttons: 4 })).toBeNull();
  });

  it("have holes from 3 mm outside the centre, 15 mm long", () => {
    expect(buttonholeAt({ piece: "back", at: p(0, 50), outward: radians(Math.PI) })).toEqual([
      near(-3, 50),
      near(12, 50),
    ]);
  });
});

const SQUARE = [p(0, 0), p(200, 0), p(200, 200), p(0, 200)];

describe("room on a piece", () => {
  it("is told by the ring: what lies within it", () => {
    const angle = [p(0, 0), p(60, 0), p(60, 20), p(20, 20), p(20, 50), p(0, 50)];
    for (const [x, y, isIn] of [
      [10, 10, true],
      [10, 40, true],
      [59, 10, true],
      [40, 30, false],
      [-1, 20, false],
      [10, 51, false],
      [70, 20, false],
      [10, 20, true],
      // On its left and its upper edge it is within, on the others without: so what touches two rings is in one.
      [0, 10, true],
      [10, 0, true],
      [60, 10, false],
      [10, 50, false],
    ] as const)
      expect(isInRing(angle, p(x, y))).toBe(isIn);
  });

  const box = (x0: number, y0: number, x1: number, y1: number) => [p(x0, y0), p(x1, y0), p(x1, y1), p(x0, y1)];

  it.each([
    ["none", [], true],
    ["one along its left side", [[p(50, 0), p(50, 200)]], false],
    ["one along its right side", [[p(100, 0), p(100, 200)]], false],
    ["one along its upper side", [[p(0, 50), p(200, 50)]], false],
    ["one along its lower side", [[p(0, 80), p(200, 80)]], false],
    ["one that passes at its left", [[p(40, 0), p(40, 200)]], true],
    ["one that passes at its right", [[p(110, 0), p(110, 200)]], true],
    ["one above it", [[p(0, 45), p(200, 45)]], true],
    ["one below it", [[p(0, 85), p(200, 85)]], true],
    ["one that goes by its corner", [[p(40, 55), p(65, 30)]], true],
    ["one across it", [[p(0, 60), p(200, 60)]], false],
    ["one that ends in it", [[p(75, 65), p(300, 65)]], false],
    ["one wholly in it", [[p(70, 60), p(80, 65)]], false],
    [
      "the second of two",
      [
        [p(0, 1), p(9, 1)],
        [p(0, 60), p(200, 60)],
      ],
      false,
    ],
    ["the second stretch of one", [[p(0, 10), p(10, 60), p(200, 60)]], false],
  ])("is free for a box with lines: %s", (_what, lines, isFree) => {
    expect(isFreeWithin(box(50, 50, 100, 80), SQUARE, lines)).toBe(isFree);
  });

  it("is not free off the piece, nor where its edge comes in", () => {
    expect(isFreeWithin(box(-5, 50, 100, 80), SQUARE, [])).toBe(false);
    const notched = [p(0, 0), p(70, 0), p(75, 70), p(80, 0), p(200, 0), p(200, 200), p(0, 200)];
    expect(isFreeWithin(box(50, 50, 100, 80), notched, [])).toBe(false);
    expect(isFreeWithin(box(50, 72, 100, 80), notched, [])).toBe(true);
    // The stretch from the last point back to the first counts.
    const last = [p(0, 200), p(0, 0), p(75, 70), p(150, 0), p(200, 0), p(200, 200)].toReversed();
    expect(isFreeWithin(box(70, 60, 80, 65), last, [])).toBe(false);
  });

  it("is for a grain line 0.13 of the way from the centre, 12 mm from either end, in steps of 4 mm", () => {
    expect(grainLine(SQUARE, [])).toEqual([near(26, 16), near(26, 184)]);
    const shifted = SQUARE.map(({ x, y }) => p(x - 300, y + 50));
    expect(grainLine(shifted, [])).toEqual([near(-274, 66), near(-274, 234)]);
  });

  it("is more than 48 mm long with its ends, else a stretch of the middle", () => {
    const strip = (height: number) => [p(0, 0), p(200, 0), p(200, height), p(0, height)];
    // 4 mm at either end are never free: of 60 there are 52, of 56 there are 48.
    expect(grainLine(strip(60), [])).toEqual([near(26, 16), near(26, 44)]);
    expect(grainLine(strip(56), [])).toEqual([near(100, 16.8), near(100, 39.2)]);
  });

  it("is elsewhere where a line crosses it there, and near the centre if it is long enough: 0.85 of the longest", () => {
    // To 40 mm across, a line in the middle leaves no more than half; at 0.27, 54 mm, it is free.
    expect(grainLine(SQUARE, [[p(0, 100), p(42, 100)]])).toEqual([near(54, 16), near(54, 184)]);
    // At 20 of 200 mm it costs little: from 24 to 196, less 12 at either end.
    expect(grainLine(SQUARE, [[p(0, 20), p(42, 20)]])).toEqual([near(26, 36), near(26, 184)]);
  });

  it("is narrower where there is no other, and the middle where there is none at all", () => {
    // Lines every 10 mm leave 7 mm free on neither side of any, but a third of that.
    const close = Array.from({ length: 21 }, (_, i) => [p(10 * i, 0), p(10 * i, 200)]);
    expect(grainLine(SQUARE, close)).toEqual([near(26, 16), near(26, 184)]);
    const closer = Array.from({ length: 51 }, (_, i) => [p(4 * i, 0), p(4 * i, 200)]);
    expect(grainLine(SQUARE, closer)).toEqual([near(100, 60), near(100, 140)]);
  });

  it("is for a title of 46 by 110 mm in the middle, or for a smaller one as near it as can be", () => {
    expect(titleBox(SQUARE, [])).toEqual({ centre: near(100, 100), width: 46, height: 110 });
    // A line down the middle: 8 mm steps from 100, 23 of half a width are first clear at 76 or 124.
    expect(titleBox(SQUARE, [[p(100, 0), p(100, 200)]])).toEqual({ centre: near(76, 100), width: 46, height: 110 });
    const at = (side: number) => titleBox([p(0, 0), p(side, 0), p(side, side), p(0, side)], []);
    expect(at(100)).toEqual({ centre: near(50, 50), width: 46, height: 96 });
    expect(at(80)).toEqual({ centre: near(40, 40), width: 38, height: 72 });
    expect(at(55)).toEqual({ centre: near(27.5, 27.5), width: 30, height: 50 });
    expect(at(26)).toEqual({ centre: near(13, 13), width: 14, height: 24 });
    // None of them: a box of 12 by 20 for as much as goes in.
    expect(at(20)).toEqual({ centre: near(10, 10), width: 12, height: 20 });
  });
});

describe("tacking", () => {
  it("is one row of 50 mm on the left and two 6 mm apart on the right, nearest the grain line", () => {
    // From 6 mm within the edge in steps of 6; the middle of the row nearest (100, 102): 102 across, 78 to 128 down.
    expect(tackingRows("left", SQUARE, [], p(100, 102))).toEqual([[near(102, 78), near(102, 128)]]);
    // Of two as near, 97 and 103, the upper one.
    expect(tackingRows("left", SQUARE, [], p(100, 100))).toEqual([[near(102, 72), near(102, 122)]]);
    expect(tackingRows("right", SQUARE, [], p(99, 103))).toEqual([
      [near(96, 78), near(96, 128)],
      [near(102, 78), near(102, 128)],
    ]);
  });

  it("is shorter, or closer to lines, where there is less room; none where there is none", () => {
    const strip = (width: number, height: number) => [p(0, 0), p(width, 0), p(width, height), p(0, height)];
    const row = (width: number, height: number) => tackingRows("left", strip(width, height), [], p(0, 0));
    // The first place that does not touch the edge is 12 mm in, with 6 mm about; 9 mm with 3, 7 mm with 1.
    expect(row(30, 69)).toEqual([[near(12, 12), near(12, 62)]]);
    expect(row(30, 67)).toEqual([[near(12, 12), near(12, 48)]]);
    expect(row(30, 27)).toEqual([[near(9, 9), near(9, 23)]]);
    expect(row(30, 25)).toEqual([[near(7, 7), near(7, 21)]]);
    expect(row(30, 21)).toEqual([]);
    expect(row(11, 69)[0]?.[0].x).toBe(7);
  });
});

describe("allowances", () => {
  it("in inches are five eighths and an inch and a quarter, to 0.1 mm", () => {
    expect(INCH_ALLOWANCES.hem).toBe(Math.round(1.25 * 254) / 10);
    const { hem, ...others } = INCH_ALLOWANCES;
    expect(hem).toBeGreaterThan(30);
    expect(new Set(Object.values(others))).toEqual(new Set([Math.round((5 / 8) * 254) / 10]));
    expect(Object.keys(INCH_ALLOWANCES).toSorted()).toEqual(Object.keys(USUAL_ALLOWANCES).toSorted());
  });

  it("are her own where they are neither of the usual", () => {
    expect(isOwnAllowance("side", undefined)).toBe(false);
    expect(isOwnAllowance("side", USUAL_ALLOWANCES.side)).toBe(false);
    expect(isOwnAllowance("side", INCH_ALLOWANCES.side)).toBe(false);
    expect(isOwnAllowance("side", 12)).toBe(true);
    expect(isOwnAllowance("hem", USUAL_ALLOWANCES.side)).toBe(true);
  });

  it("of a toile are wide at shoulder, side, waist and centre", () => {
    expect(toileAllowances({ side: 40, neck: 5 }, "cm")).toEqual({
      side: 40,
      neck: 5,
      shoulder: 30,
      waist: 30,
      centre: 30,
    });
    expect(toileAllowances({}, "in")).toEqual({ side: 31.8, shoulder: 31.8, waist: 31.8, centre: 31.8 });
  });

  it("are none at the free edge of a facing, and half a strap's width along it", () => {
    const facing: Piece = { ...square, name: "frontFacing" };
    expect([allowanceOn(facing, { edge: 15 }, "edge"), allowanceOn(square, { edge: 15 }, "edge")]).toEqual([0, 15]);
    expect(allowanceOn(facing, {}, "neck")).toBe(USUAL_ALLOWANCES.neck);
    const strap: Piece = {
      ...square,
      name: "strap",
      points: { strapBackInner: { at: p(0, 0), level: "bust" }, strapBackOuter: { at: p(20, 0), level: "bust" } },
    };
    expect(
      ["side" as const, "strap" as const].map((seam) => allowanceOn(strap, { side: 15, strap: 15 }, seam)),
    ).toEqual([10, 15]);
    expect(allowanceOn(strap, { side: 8 }, "side")).toBe(8);
  });
});

describe("pieces turned over", () => {
  it("are backs for the left half and fronts for the right; what faces the body the other way round", () => {
    expect(isTurnedOver("front", "left")).toBe(false);
    expect(isTurnedOver("front", "right")).toBe(true);
    expect(isTurnedOver("strap", "right")).toBe(true);
    expect(isTurnedOver("back", "left")).toBe(true);
    expect(isTurnedOver("back", "right")).toBe(false);
    expect(isTurnedOver("back", null)).toBe(false);
    expect(isPartTurnedOver("skirt", "back", "left")).toBe(true);
    for (const group of ["bodiceLining", "skirtLining", "facing"] as const) {
      expect(isPartTurnedOver(group, "back", "left")).toBe(false);
      expect(isPartTurnedOver(group, "back", "right")).toBe(true);
      expect(isPartTurnedOver(group, "back", null)).toBe(false);
    }
  });
});

const DRAWN = {
  key: "front",
  size: null,
  allowances: { armhole: 10, side: 20, waist: 15 },
  closure,
  half: null,
  label: undefined,
  number: [1, 1],
  notches: [],
  buttons: [],
  lengthen: [],
  bustPoint: null,
  cut: { onFold: true, count: 1 },
} as const;

describe("a square front at true scale", () => {
  const made = truePiece(square, DRAWN);
  const edges = (of: readonly { readonly a: { x: number; y: number }; readonly b: { x: number; y: number } }[]) =>
    of.map(({ a, b }) => [a.x, a.y, b.x, b.y]);

  it("is cut by its allowances all round but on the fold, from which its lines run straight", () => {
    expect(new Set(made.cutting.map(({ at }) => `${Math.round(at.x)} ${Math.round(at.y)}`))).toEqual(
      new Set(["0 -10", "120 -10", "120 115", "0 115"]),
    );
    expect(made.cutting).toHaveLength(4);
    expect(edges(made.stitch)).toEqual([
      [0, 0, 100, 0],
      [100, 0, 100, 30],
      [100, 30, 100, 100],
      [100, 100, 0, 100],
      [0, 100, 0, 30],
      [0, 30, 0, 0],
    ]);
    expect(edges(made.fold)).toEqual([
      [0, 100, 0, 30],
      [0, 30, 0, 0],
    ]);
    expect(made.centreSeam).toEqual([]);
    expect(foldOf(made)).toEqual([near(0, -10), near(0, 115)]);
  });

  it("has its seams from corner to corner, the fold left out", () => {
    expect(made.seams.map(({ seam, edges: own, opens }) => [seam, own.length, opens])).toEqual([
      ["armhole", 1, null],
      ["side", 2, null],
      ["waist", 1, null],
    ]);
    const open = truePiece(
      { ...square, name: "back", centreOnFold: false },
      { ...DRAWN, cut: { onFold: false, count: 2 } },
    );
    expect(open.seams.map(({ seam, edges: own, opens }) => [seam, own.length, opens])).toEqual([
      ["armhole", 1, null],
      ["side", 2, null],
      ["waist", 1, null],
      ["centre", 2, "zip"],
    ]);
    expect([open.fold, open.centreSeam.length, foldOf(open)]).toEqual([[], 2, null]);
  });

  it.each([
    ["back", "centreBack", 0, undefined, null, ["centre zip"]],
    ["back", "centreBack", 0, 5, null, ["centre buttons"]],
    ["front", "centreBack", 0, undefined, null, []],
    ["backBasque", "centreBack", 0, undefined, null, []],
    ["backBasque", "centreBack", 90, undefined, null, ["centre zip"]],
    ["back", "side", 0, undefined, null, ["side zip"]],
    ["front", "side", 0, 5, "left", ["side zip"]],
    ["front", "side", 0, undefined, "right", []],
    ["frontBasque", "side", 0, undefined, null, []],
    ["frontBasque", "side", 1, undefined, null, ["side zip"]],
  ] as const)(
    "%s opens at %s, %d mm below the waist, %s buttons, half %s: %j",
    (name, place, belowWaist, buttons, half, expected) => {
      const { seams } = truePiece(
        { ...square, name, centreOnFold: false },
        { ...DRAWN, half, closure: { place, belowWaist, ...(buttons === undefined ? {} : { buttons }) } },
      );
      expect(seams.filter(({ opens }) => opens !== null).map(({ seam, opens }) => `${seam} ${opens}`)).toEqual(
        expected,
      );
    },
  );

  it("has its level lines, the fold's notches, and no more than was given", () => {
    expect(made.levels).toEqual([
      {
        level: "bust",
        points: [
          { x: 0, y: 30 },
          { x: 100, y: 30 },
        ],
      },
    ]);
    expect(made.notches.map(({ kind, stitch, cut }) => [kind, stitch, cut])).toEqual([
      ["centre", { x: 0, y: 0 }, near(0, -10)],
      ["centre", { x: 0, y: 100 }, near(0, 115)],
    ]);
    expect(made).toMatchObject({
      key: "front",
      name: "front",
      half: null,
      size: null,
      number: [1, 1],
      bustPoint: null,
    });
    expect([made.darts, made.drills, made.lengthen, made.tacking]).toEqual([[], [], [], []]);
    expect("label" in made).toBe(false);
    expect(truePiece(square, { ...DRAWN, label: "yoke" }).label).toBe("yoke");
  });

  it("has a dart with its fold out to the cutting line, its end to be drilled; gathers have neither", () => {
    const { darts, drills, seams } = truePiece(darted(40, 60, 40), DRAWN);
    expect(darts).toMatchObject([{ name: "waistDart", end: { x: 50, y: 40 }, gathered: false }]);
    expect(darts[0]?.mouth).toEqual([near(40, 100), near(60, 100)]);
    expect(darts[0]?.legs.map(({ a, b }) => [a, b])).toEqual([
      [near(40, 100), near(50, 40)],
      [near(60, 100), near(50, 40)],
    ]);
    expect(darts[0]?.fold?.[0]).toEqual({ x: 50, y: 40 });
    expect(darts[0]?.fold?.[1].x).toBeCloseTo(50, 0);
    expect(darts[0]?.fold?.[1].y).toBeGreaterThan(115);
    expect(drills).toEqual([{ what: "dartEnd", at: { x: 50, y: 40 } }]);
    expect(seams.map(({ seam, edges: own }) => [seam, own.length])).toEqual([
      ["armhole", 1],
      ["side", 2],
      ["waist", 1],
      ["waist", 1],
    ]);
    const gathered = truePiece(darted(40, 60, 40, { gathered: true }), DRAWN);
    expect(gathered.darts).toMatchObject([{ legs: [], fold: null, gathered: true, end: { x: 50, y: 40 } }]);
    expect(gathered.drills).toEqual([]);
  });

  it("is itself again when it is turned over twice, and mirrored in the centre when once", () => {
    const piece = truePiece(darted(40, 60, 40), {
      ...DRAWN,
      half: "left",
      bustPoint: p(52, 30),
      lengthen: [{ piece: "front", from: p(0, 60), to: p(100, 60) }],
      buttons: [{ piece: "front", at: p(0, 50), outward: radians(Math.PI) }],
      notches: [
        {
          piece: "front",
          at: p(100, 50),
          outward: radians(0),
          kind: "seam",
          number: 1,
          seam: "side",
          twins: [
            { piece: "front", at: p(100, 47), outward: radians(0) },
            { piece: "front", at: p(100, 53), outward: radians(0) },
          ],
        },
      ],
    });
    const over = turnedOver(piece);
    expect(turnedOver(over)).toEqual(piece);
    expect(over.bustPoint).toEqual({ x: -52, y: 30 });
    expect(over.lengthen).toEqual([[near(0, 60), { x: -100, y: 60 }]]);
    expect(over.title.centre.x).toBe(-piece.title.centre.x);
    const seam = over.notches.find(({ kind }) => kind === "seam");
    expect([seam?.stitch, seam?.cut, seam?.outward]).toEqual([{ x: -100, y: 50 }, near(-120, 50), Math.PI]);
    expect(seam?.twins?.map(({ stitch, cut }) => [stitch, cut])).toEqual([
      [{ x: -100, y: 47 }, near(-120, 47)],
      [{ x: -100, y: 53 }, near(-120, 53)],
    ]);
    expect(over.drills.map(({ at }) => at)).toEqual(piece.drills.map(({ at: { x, y } }) => near(-x, y)));
    expect(over.tacking.map(([from]) => from.x)).toEqual(piece.tacking.map(([from]) => -from.x));
    expect(piece.tacking).toHaveLength(1);
    expect(over.seams.map(({ seam: of }) => of)).toEqual(piece.seams.map(({ seam: of }) => of));
    expect(over.seams[1]?.edges.map(({ a, b }) => [a.x, a.y, b.x, b.y])).toEqual([
      [-100, 100, -100, 30],
      [-100, 30, -100, 0],
    ]);
  });

  it("has its seams told as one each where the ring begins in the middle of one", () => {
    const turned = truePiece({ ...square, edges: [...square.edges.slice(2), ...square.edges.slice(0, 2)] }, DRAWN);
    expect(turned.seams.map(({ seam, edges: own }) => [seam, own.length])).toEqual([
      ["waist", 1],
      ["armhole", 1],
      ["side", 2],
    ]);
    const alone = { ...square, edges: square.edges.map((edge) => ({ ...edge, seam: "edge" as const })) };
    expect(truePiece(alone, DRAWN).seams.map(({ seam, edges: own }) => [seam, own.length])).toEqual([["edge", 6]]);
  });

  it("has grain and title clear of the cross of its bust point, 8 mm to each side", () => {
    const apart = (box: { x: number; y: number; width: number; height: number }, [a, b]: readonly Spot[]): boolean =>
      a === undefined ||
      b === undefined ||
      Math.min(a.x, b.x) >= box.x + box.width / 2 ||
      Math.max(a.x, b.x) <= box.x - box.width / 2 ||
      Math.min(a.y, b.y) >= box.y + box.height / 2 ||
      Math.max(a.y, b.y) <= box.y - box.height / 2;
    interface Spot {
      readonly x: number;
      readonly y: number;
    }
    for (const [x, y] of [
      [50, 150],
      [30, 60],
      [72, 220],
      [14, 150],
    ] as const) {
      const { title, grain } = truePiece(longPiece("front", 300, true), { ...DRAWN, bustPoint: p(x, y) });
      const arms = [
        [p(x - 8, y), p(x + 8, y)],
        [p(x, y - 8), p(x, y + 8)],
      ];
      const box = { ...title.centre, width: title.width, height: title.height };
      const line = { x: grain[0].x, y: (grain[0].y + grain[1].y) / 2, width: 4, height: grain[1].y - grain[0].y };
      expect(arms.map((arm) => [apart(box, arm), apart(line, arm)])).toEqual([
        [true, true],
        [true, true],
      ]);
    }
  });

  it("has its title clear of the buttonholes of a narrow piece", () => {
    const drawn = longPiece("back", 300);
    const points = {
      ...drawn.points,
      underarm: { at: p(32, 0), level: "bust" as const },
      sideWaist: { at: p(32, 300), level: "bust" as const },
    };
    const titleWith = (...heights: readonly number[]) =>
      truePiece(
        { ...drawn, points },
        {
          ...DRAWN,
          buttons: heights.map((y) => ({ piece: "back", at: p(0, y), outward: radians(Math.PI) })),
        },
      ).title;
    const plain = titleWith();
    // It lies across where a hole comes, from 3 mm outside the centre to 12 inside.
    expect(plain.centre.x - plain.width / 2).toBeLessThan(12);
    expect(Math.abs(plain.centre.y - 150)).toBeLessThan(plain.height / 2);
    const moved = titleWith(150);
    const isBeside = moved.centre.x - moved.width / 2 >= 12;
    expect(isBeside || Math.abs(moved.centre.y - 150) >= moved.height / 2).toBe(true);
  });

  it("has its tacking clear of its title, whatever room there is", () => {
    for (const half of ["left", "right"] as const)
      for (const width of [40, 60, 80, 100, 150])
        for (const height of [60, 100, 180, 300]) {
          const drawn = longPiece("front", height, true);
          const points = {
            ...drawn.points,
            underarm: { at: p(width, 0), level: "bust" as const },
            sideWaist: { at: p(width, height), level: "bust" as const },
          };
          const { title, tacking, grain } = truePiece({ ...drawn, points }, { ...DRAWN, half });
          const inTitle = tacking.filter(
            ([from, to]) =>
              Math.abs(from.x - title.centre.x) < title.width / 2 &&
              from.y < title.centre.y + title.height / 2 &&
              to.y > title.centre.y - title.height / 2,
          );
          expect(inTitle).toEqual([]);
          expect(tacking.filter(([{ x }]) => Math.abs(x - grain[0].x) < 1)).toEqual([]);
        }
  });

  it("has its title moved clear of borders where that leaves it three tenths of its room", () => {
    const large = truePiece(longPiece("front", 300, true), DRAWN);
    const [x, y] = [large.title.centre.x, large.title.centre.y];
    const moved = titledClearOf(large, [[p(0, y), p(100, y)]]);
    expect(moved).toEqual({ ...large, title: moved.title });
    expect(Math.abs(moved.title.centre.y - y)).toBeGreaterThanOrEqual(moved.title.height / 2);
    const crowded = Array.from({ length: 20 }, (_, i) => [p(0, 15 * i + 1), p(100, 15 * i + 1)]);
    expect(titledClearOf(large, crowded)).toBe(large);
    expect(titledClearOf(large, [[p(x, -50), p(x, -20)]]).title).toEqual(large.title);
  });
});

describe("a stretch of the stitch line", () => {
  it("has its allowance, none on the fold or where none are wanted", () => {
    const told = (of: ReturnType<typeof stretchesOf>) =>
      of.map(({ seam, allowance, fold, cap }) => [seam, allowance, fold, cap]);
    expect(told(stretchesOf(square, { side: 22 })).slice(0, 2)).toEqual([
      ["armhole", 15, false, false],
      ["side", 22, false, false],
    ]);
    expect(told(stretchesOf(square, { centre: 22 })).slice(-1)).toEqual([["centre", 0, true, false]]);
    expect(told(stretchesOf(square, { centre: 22 }, false)).slice(-1)).toEqual([["centre", 22, false, false]]);
    expect(new Set(stretchesOf(square, null).map(({ allowance }) => allowance))).toEqual(new Set([0]));
  });

  it("of a dart goes over its cap, told as one, its tip once, whichever way the ring comes", () => {
    const caps = (piece: Piece) => stretchesOf(piece, {}).filter(({ cap }) => cap);
    const there = caps(darted(40, 60, 40));
    const back = caps(darted(40, 60, 40, { inner: "waistDartOuter", outer: "waistDartInner" }));
    for (const one of [there, back]) {
      expect(one[0]?.curve.a).toEqual(near(60, 100));
      expect(one.at(-1)?.curve.b).toEqual(near(40, 100));
      expect(one.filter(({ tip }) => tip !== undefined)).toHaveLength(1);
      for (const [index, { curve }] of one.slice(1).entries())
        expect(curve.a).toEqual(near(one[index]?.curve.b.x ?? 0, one[index]?.curve.b.y ?? 0));
    }
  });
});

describe("one ring about several", () => {
  const box = (x0: number, y0: number, x1: number, y1: number) => [p(x0, y0), p(x1, y0), p(x1, y1), p(x0, y1)];
  const sorted = (ring: readonly { x: number; y: number }[]) =>
    ring.map(({ x, y }) => `${Math.round(x)} ${Math.round(y)}`).toSorted();

  it("is what they take together, so much further out, whichever way they go", () => {
    const expected = sorted([p(-5, -5), p(65, -5), p(65, 25), p(25, 25), p(25, 65), p(-5, 65)]);
    expect(sorted(ringAround([box(0, 0, 60, 20), box(0, 0, 20, 60)], 5))).toEqual(expected);
    expect(sorted(ringAround([box(0, 0, 60, 20).toReversed(), box(0, 0, 20, 60)], 5))).toEqual(expected);
  });

  it("goes round what they leave free between them", () => {
    // A frame of 60 by 60 with a bar of 20 to its right.
    const frame = [box(0, 0, 60, 10), box(0, 50, 60, 60), box(0, 0, 10, 60), box(50, 0, 60, 60), box(50, 0, 80, 10)];
    expect(sorted(ringAround(frame, 5))).toEqual(
      sorted([p(-5, -5), p(85, -5), p(85, 15), p(65, 15), p(65, 65), p(-5, 65)]),
    );
  });

  it("is their box where they lie apart", () => {
    expect(ringAround([box(0, 0, 20, 20), box(50, 10, 60, 70)], 5)).toEqual([
      { x: -5, y: -5 },
      { x: 65, y: -5 },
      { x: 65, y: 75 },
      { x: -5, y: 75 },
    ]);
  });
});
