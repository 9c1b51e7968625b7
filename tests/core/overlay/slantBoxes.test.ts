/** Paper of strips as boxes at a slant, stretches of rings, and room for words, by hand. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cubicEdge, edgePointAt, lineEdge, type EdgeCurve } from "../../../src/core/geometry/edgeCurve";
import { directionOf, distance, piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { changedStretches, runOn } from "../../../src/core/overlay/changedStretches";
import { holdBy, printedPoints } from "../../../src/core/overlay/layOn";
import { linesAlong, partAtCorners, partEvenly, ringLength } from "../../../src/core/overlay/ringParts";
import { stretchOf, type SewnLine } from "../../../src/core/overlay/sewnLines";
import {
  isInStrip,
  partsInStrip,
  slantBoxOf,
  stripAbout,
  stripArea,
  stripReach,
  stripRing,
  stripWith,
  uprightBox,
  widened,
  type Strip,
} from "../../../src/core/overlay/strip";
import { along, longEnough, placeTitle } from "../../../src/core/overlay/titlePlace";
import type { DartName, PointName, SeamName } from "../../../src/core/pattern/piece";
import { SAME_POINT } from "../../../src/core/tolerance";
import { radians, radiansFromDegrees } from "../../../src/core/units";
import { anyAmount } from "../../support/amounts";
import { cornerPiece } from "../../support/cornerPiece";
import { darted } from "../sewn/flatPieces";

const p = piecePoint;
const upright: Strip = { turn: radians(0), u: [10, 110], v: [20, 60] };
const eighth = radiansFromDegrees(45);
const near = (x: number, y: number) => ({ x: expect.closeTo(x, 9), y: expect.closeTo(y, 9) });
const root = Math.SQRT1_2;

describe("a strip", () => {
  it("is the smallest box about points, upright or at a slant", () => {
    expect(stripAbout([p(3, 9), p(-2, 4), p(1, 12)], radians(0))).toEqual({ turn: 0, u: [-2, 3], v: [4, 12] });
    // Along (1, 1) the point (10, 0) is 7.07 mm on, and as much before the square way.
    const slant = stripAbout([p(0, 0), p(10, 0), p(10, 10)], eighth);
    expect(slant.u).toEqual([expect.closeTo(0, 9), expect.closeTo(20 * root, 9)]);
    expect(slant.v).toEqual([expect.closeTo(-10 * root, 9), expect.closeTo(0, 9)]);
    expect(stripArea(slant)).toBeCloseTo(100, 9);
  });

  it("grows to hold more points, and only as far as they lie", () => {
    expect(stripWith(upright, [], radians(0))).toBe(upright);
    expect(stripWith(upright, [p(50, 30)], radians(0))).toEqual(upright);
    expect(stripWith(upright, [p(0, 70), p(120, 40)], radians(0))).toEqual({ turn: 0, u: [0, 120], v: [20, 70] });
    expect(stripWith(upright, [p(50, 0)], radians(0))).toEqual({ turn: 0, u: [10, 110], v: [0, 60] });
  });

  it("is widened on one side, or on all", () => {
    expect(widened(upright, 5)).toEqual({ turn: 0, u: [5, 115], v: [15, 65] });
    expect(widened(upright, 5, "u0")).toEqual({ turn: 0, u: [5, 110], v: [20, 60] });
    expect(widened(upright, 5, "u1")).toEqual({ turn: 0, u: [10, 115], v: [20, 60] });
    expect(widened(upright, 5, "v0")).toEqual({ turn: 0, u: [10, 110], v: [15, 60] });
    expect(widened(upright, 5, "v1")).toEqual({ turn: 0, u: [10, 110], v: [20, 65] });
  });

  it("has corners in the way of an outline, a box about it, and a reach", () => {
    expect(stripRing(upright)).toEqual([near(10, 20), near(110, 20), near(110, 60), near(10, 60)]);
    expect([stripArea(upright), stripReach(upright)]).toEqual([4000, 100]);
    const slant: Strip = { turn: eighth, u: [0, 20], v: [0, 10] };
    // Along (1, 1) and (−1, 1).
    expect(stripRing(slant)).toEqual([
      near(0, 0),
      near(20 * root, 20 * root),
      near(10 * root, 30 * root),
      near(-10 * root, 10 * root),
    ]);
    expect(uprightBox(slant)).toEqual({ min: near(-10 * root, 0), max: near(20 * root, 30 * root) });
    expect(stripReach(slant)).toBeCloseTo(30 * root, 9);
    expect(slantBoxOf(slant)).toEqual({ centre: near(5 * root, 15 * root), width: 20, height: 10, turn: eighth });
  });

  it("holds what lies within it, to a hair", () => {
    for (const [x, y] of [
      [10, 20],
      [110, 60],
      [10 - SAME_POINT / 2, 40],
      [50, 60 + SAME_POINT / 2],
    ] as const)
      expect(isInStrip(upright, p(x, y))).toBe(true);
    for (const [x, y] of [
      [9.9, 40],
      [110.1, 40],
      [50, 19.9],
      [50, 60.1],
    ] as const)
      expect(isInStrip(upright, p(x, y))).toBe(false);
    expect(isInStrip({ turn: eighth, u: [0, 20], v: [0, 10] }, p(0, 14))).toBe(true);
    expect(isInStrip({ turn: eighth, u: [0, 20], v: [0, 10] }, p(14, 0))).toBe(false);
  });

  it("holds parts of a line: those between where it goes in and out", () => {
    const across = lineEdge(p(0, 40), p(200, 40));
    expect(partsInStrip(across, upright)).toEqual([{ a: near(10, 40), b: near(110, 40), curve: null }]);
    const inside = lineEdge(p(20, 30), p(100, 50));
    expect(partsInStrip(inside, upright)).toEqual([inside]);
    expect(partsInStrip(lineEdge(p(0, 10), p(200, 10)), upright)).toEqual([]);
    expect(partsInStrip(lineEdge(p(50, 30), p(50, 90)), upright)).toEqual([
      { a: near(50, 30), b: near(50, 60), curve: null },
    ]);
    // Through a corner from outside, and along a side.
    expect(partsInStrip(lineEdge(p(0, 30), p(20, 10)), upright)).toEqual([]);
    expect(partsInStrip(lineEdge(p(0, 20), p(200, 20)), upright)).toEqual([
      { a: near(10, 20), b: near(110, 20), curve: null },
    ]);
    // A bow that goes in, out below and in again: two parts.
    const bow = cubicEdge({ a: p(20, 50), c1: p(40, 90), c2: p(80, 90), b: p(100, 50) });
    const parts = partsInStrip(bow, upright);
    expect(parts).toHaveLength(2);
    expect(parts[0]?.a).toEqual(near(20, 50));
    expect(parts[0]?.b.y).toBeCloseTo(60, 3);
    expect(parts[1]?.a.y).toBeCloseTo(60, 3);
    expect(parts[1]?.b).toEqual(near(100, 50));
  });
});

const lineOf = (
  curve: EdgeCurve<"piece">,
  seam: SeamName = "side",
  also: { readonly dart?: DartName; readonly from?: PointName; readonly to?: PointName } = {},
): SewnLine => ({
  curve,
  length: distance(curve.a, curve.b),
  seam,
  dart: also.dart ?? null,
  from: also.from ?? null,
  to: also.to ?? null,
});

/** Straight lines from corner to corner, all round. */
const ringOf = (...corners: readonly (readonly [number, number])[]): readonly SewnLine[] =>
  corners.map(([x, y], index) => {
    const [toX, toY] = corners[(index + 1) % corners.length] ?? [0, 0];
    return lineOf(lineEdge(p(x, y), p(toX, toY)));
  });

describe("a stretch of a line", () => {
  const line = lineOf(lineEdge(p(0, 0), p(100, 0)), "side", { from: "underarm", to: "sideWaist" });

  it("is the line itself where it is all of it", () => {
    expect(stretchOf(line, 0, 100)).toBe(line);
    expect(stretchOf(line, -5, 130)).toBe(line);
  });

  it("keeps its named end where it reaches it", () => {
    const part = stretchOf(line, 0, 40);
    expect(part).toMatchObject({ length: 40, from: "underarm", to: null, seam: "side" });
    expect(part.curve.b).toEqual(near(40, 0));
    expect(stretchOf(line, 30, 100)).toMatchObject({ length: 70, from: null, to: "sideWaist" });
    expect(stretchOf(line, 30, 70)).toMatchObject({ length: 40, from: null, to: null });
    expect(stretchOf(line, 30, 70).curve).toEqual({ a: near(30, 0), b: near(70, 0), curve: null });
  });
});

describe("a ring of 100 by 60 mm", () => {
  const ring = ringOf([0, 0], [100, 0], [100, 60], [0, 60]);
  const placesOf = (lines: readonly SewnLine[]) =>
    lines.map(({ curve: { a, b } }) => [a.x, a.y, b.x, b.y].map(Math.round));

  it("is gone along from one length to another, on past its start", () => {
    expect(ringLength(ring)).toBe(320);
    expect(placesOf(linesAlong(ring, { from: 20, to: 130 }))).toEqual([
      [20, 0, 100, 0],
      [100, 0, 100, 30],
    ]);
    expect(placesOf(linesAlong(ring, { from: 300, to: 350 }))).toEqual([
      [0, 20, 0, 0],
      [0, 0, 30, 0],
    ]);
    expect(placesOf(linesAlong(ring, { from: -20, to: 10 }))).toEqual([
      [0, 20, 0, 0],
      [0, 0, 10, 0],
    ]);
    expect(placesOf(linesAlong(ring, { from: 100, to: 160 }))).toEqual([[100, 0, 100, 60]]);
  });

  it("is parted at corners, the parts run on past them, short ends left where they are", () => {
    expect(partAtCorners(ring, { from: 20, to: 90 }, 10)).toEqual([{ from: 20, to: 90 }]);
    // 60 mm on either side of the corner at 100 mm are no short end, 59 are.
    expect(partAtCorners(ring, { from: 20, to: 160 }, 10)).toEqual([
      { from: 20, to: 110 },
      { from: 90, to: 160 },
    ]);
    expect(partAtCorners(ring, { from: 20, to: 159 }, 10)).toEqual([{ from: 20, to: 159 }]);
    expect(partAtCorners(ring, { from: 41, to: 160 }, 10)).toEqual([{ from: 41, to: 160 }]);
    expect(partAtCorners(ring, { from: 40, to: 160 }, 10)).toEqual([
      { from: 40, to: 110 },
      { from: 90, to: 160 },
    ]);
    // Past its start, at 320.
    expect(partAtCorners(ring, { from: 260, to: 400 }, 10)).toEqual([
      { from: 260, to: 330 },
      { from: 310, to: 400 },
    ]);
    expect(partAtCorners(ring, { from: -60, to: 90 }, 10)).toEqual([
      { from: -60, to: 10 },
      { from: -10, to: 90 },
    ]);
  });

  it("is parted at corners sharper than 35°, and not at a dart's mouth", () => {
    const bent = (degrees: number) => {
      const turn = (degrees * Math.PI) / 180;
      return ringOf([0, 0], [100, 0], [100 + 100 * Math.cos(turn), 100 * Math.sin(turn)], [100, 400], [0, 400]);
    };
    expect(partAtCorners(bent(34), { from: 10, to: 190 }, 0)).toHaveLength(1);
    expect(partAtCorners(bent(36), { from: 10, to: 190 }, 0)).toHaveLength(2);
    expect(partAtCorners(bent(-36), { from: 10, to: 190 }, 0)).toHaveLength(2);
    const mouth = ring.map((line, index): SewnLine => (index === 1 ? { ...line, dart: "sideDart" } : line));
    expect(partAtCorners(mouth, { from: 20, to: 160 }, 10)).toEqual([{ from: 20, to: 160 }]);
    expect(partAtCorners(mouth, { from: 100, to: 250 }, 10)).toEqual([{ from: 100, to: 250 }]);
  });

  it("is parted evenly, neighbours lying over each other: 100 mm in four, by 20", () => {
    expect(partEvenly({ from: 50, to: 150 }, 4, 20)).toEqual([
      { from: 50, to: 85 },
      { from: 65, to: 110 },
      { from: 90, to: 135 },
      { from: 115, to: 150 },
    ]);
    expect(partEvenly({ from: 50, to: 150 }, 1, 20)).toEqual([{ from: 50, to: 150 }]);
  });
});

describe("what changed of a line", () => {
  const line = lineOf(lineEdge(p(0, 0), p(100, 0)));

  it("is all of it where nothing was printed, and nothing where the very line was", () => {
    expect(changedStretches(line, [])).toEqual([{ from: 0, to: 100 }]);
    expect(changedStretches(line, [lineEdge(p(0, 0), p(100, 0))])).toEqual([]);
    expect(changedStretches(line, [lineEdge(p(0, 0.5), p(100, 0.5))])).toEqual([]);
    expect(changedStretches(line, [lineEdge(p(0, 0.51), p(100, 0.51))])).toEqual([{ from: 0, to: 100 }]);
  });

  it("begins where it lies half a millimetre off, never late", () => {
    // The printed line leaves it by 2 mm in 100: half a millimetre off at 25 mm, square to the printed line a hair later.
    const [found, ...others] = changedStretches(line, [lineEdge(p(0, 0), p(100, 2))]);
    expect(others).toEqual([]);
    expect(found?.to).toBe(100);
    // Never late, and early by no more than where it lies 0.495 mm off.
    expect(found?.from).toBeGreaterThan(24.74);
    expect(found?.from).toBeLessThan(25.01);
  });

  it("is what lies off all of the printed lines", () => {
    const printed = [lineEdge(p(0, 0.2), p(40, 0.2)), lineEdge(p(60, -0.2), p(100, -0.2))];
    const [found, ...others] = changedStretches(line, printed);
    expect(others).toEqual([]);
    // √(0.5² − 0.2²) past the ends of both.
    expect(found?.from).toBeCloseTo(40 + Math.sqrt(0.21), 1);
    expect(found?.to).toBeCloseTo(60 - Math.sqrt(0.21), 1);
  });

  it("is nothing of a curve whose controls lie half a millimetre off", () => {
    const curve = cubicEdge({ a: p(0, 0), c1: p(30, 20), c2: p(70, 20), b: p(100, 0) });
    const moved = (c1: number, c2: number) =>
      cubicEdge({ a: p(0, 0), c1: p(30, 20 + c1), c2: p(70, 20 + c2), b: p(100, 0) });
    const own: SewnLine = { ...lineOf(curve), length: 108 };
    expect(changedStretches(own, [moved(0.5, -0.5)])).toEqual([]);
    expect(changedStretches(own, [moved(6, 6)])).toHaveLength(1);
  });

  it("is something where one control alone lies further off, or one end, or it is straight where it was not", () => {
    // A cubic lies 4/9 of what one control is off its own way, at a third of it: of 2 mm 0.9.
    const bent = (c1: number, c2: number, a = 0, b = 0) =>
      cubicEdge({ a: p(0, a), c1: p(30, 20 + c1), c2: p(70, 20 + c2), b: p(100, b) });
    const own: SewnLine = { ...lineOf(bent(0, 0)), length: 108 };
    for (const printed of [bent(2, 0), bent(0, 2), bent(0, 0, -2), bent(0, 0, 0, -2), lineEdge(p(0, 0), p(100, 0))])
      expect(changedStretches(own, [printed])).toHaveLength(1);
    const straight = lineOf(lineEdge(p(0, 0), p(100, 0)));
    expect(changedStretches(straight, [bent(0, 0)])).toHaveLength(1);
    expect(changedStretches(straight, [lineEdge(p(0, 2), p(100, 0))])).toHaveLength(1);
  });

  it("is run on at both ends, joined where it then meets", () => {
    expect(runOn([{ from: 50, to: 60 }], 20, 400)).toEqual([{ from: 30, to: 80 }]);
    expect(
      runOn(
        [
          { from: 141, to: 150 },
          { from: 50, to: 100 },
        ],
        20,
        400,
      ),
    ).toEqual([
      { from: 30, to: 120 },
      { from: 121, to: 170 },
    ]);
    expect(
      runOn(
        [
          { from: 50, to: 100 },
          { from: 140, to: 150 },
        ],
        20,
        400,
      ),
    ).toEqual([{ from: 30, to: 170 }]);
    expect(
      runOn(
        [
          { from: 50, to: 100 },
          { from: 60, to: 70 },
        ],
        20,
        400,
      ),
    ).toEqual([{ from: 30, to: 120 }]);
    expect(runOn([], 20, 400)).toEqual([]);
  });

  it("goes round the ring's own start", () => {
    // From 370 to 390 and from 5 to 50: 15 mm apart past 400.
    expect(
      runOn(
        [
          { from: 5, to: 50 },
          { from: 370, to: 390 },
        ],
        20,
        400,
      ),
    ).toEqual([{ from: 350, to: 470 }]);
    expect(
      runOn(
        [
          { from: 5, to: 50 },
          { from: 100, to: 120 },
          { from: 370, to: 390 },
        ],
        20,
        400,
      ),
    ).toEqual([
      { from: 80, to: 140 },
      { from: 350, to: 470 },
    ]);
    // 40 mm apart they meet, each run on by 20; 41 mm apart they do not.
    const roundStart = (from: number) =>
      runOn(
        [
          { from, to: 50 },
          { from: 360, to: 370 },
        ],
        20,
        400,
      );
    expect(roundStart(10)).toEqual([{ from: 340, to: 470 }]);
    expect(roundStart(11)).toEqual([
      { from: -9, to: 70 },
      { from: 340, to: 390 },
    ]);
    expect(runOn([{ from: 10, to: 370 }], 20, 400)).toEqual([{ from: -10, to: 390 }]);
    expect(runOn([{ from: 11, to: 370 }], 20, 400)).toEqual([{ from: -9, to: 390 }]);
    // All of it but 30 mm is gone round once.
    expect(runOn([{ from: 10, to: 380 }], 20, 400)).toEqual([{ from: -10, to: 390 }]);
    expect(runOn([{ from: 10, to: 340 }], 20, 400)).toEqual([{ from: -10, to: 360 }]);
  });
});

describe("printed points to lay a strip on by", () => {
  it("are corners, ends of darts and their mouths, and ends of level lines", () => {
    expect(
      printedPoints(darted(40, 60, 40))
        .map(({ name }) => name)
        .toSorted(),
    ).toEqual([
      "centreBust",
      "centreNeck",
      "centreWaist",
      "sideBust",
      "sideWaist",
      "underarm",
      "waistDartApex",
      "waistDartInner",
      "waistDartOuter",
    ]);
    const { levelLines, ...piece } = darted(40, 60, 40, { gathered: true });
    expect(levelLines).toHaveLength(1);
    // Without its bust line a seam runs on through its ends, and gathers have no end.
    expect(
      printedPoints({ ...piece, levelLines: [] })
        .map(({ name }) => name)
        .toSorted(),
    ).toEqual(["centreNeck", "centreWaist", "sideWaist", "underarm", "waistDartInner", "waistDartOuter"]);
  });

  it("are the bust point and where a princess seam passes it, too, but no corner that a cut made", () => {
    const piece = cornerPiece({
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["underarm", 100, 0, "side"],
        ["cut1", 100, 50, "waist"],
        ["sideWaist", 100, 100, "side"],
        ["corner00", 100, 120, "side"],
        ["centreWaist", 0, 100, "centre"],
      ],
      inside: { bustPoint: [40, 40], princessBust: [60, 40], strapAim: [20, 20] },
    });
    expect(printedPoints(piece).map(({ name, at }) => [name, at.x, at.y])).toEqual([
      ["centreNeck", 0, 0],
      ["underarm", 100, 0],
      ["sideWaist", 100, 100],
      ["centreWaist", 0, 100],
      ["bustPoint", 40, 40],
      ["princessBust", 60, 40],
    ]);
  });

  it("are told once where two are less than 3 mm apart", () => {
    const apart = (by: number) => printedPoints(darted(50 - by / 2, 50 + by / 2, 40)).length;
    expect([apart(3.1), apart(3), apart(2.9)]).toEqual([9, 9, 8]);
  });

  const at = (name: PointName, x: number, y: number) => ({ name, at: p(x, y) });
  const room = { longest: 300, margin: 12 };
  const flat = [p(0, 0), p(100, 0)];

  it("hold a strip where two lie on it 60 mm apart, 6 mm within its edge", () => {
    const held = holdBy(
      flat,
      [at("underarm", 0, 6), at("sideWaist", 60, -6), at("sideHip", 50, 7)],
      [radians(0)],
      room,
    );
    expect(held?.strip).toEqual({ turn: 0, u: [-12, 112], v: [-12, 12] });
    expect(held?.layOn.map(({ name }) => name)).toEqual(["underarm", "sideWaist"]);
  });

  it("make a strip larger by as little as holds them", () => {
    const one = at("underarm", 10, 0);
    const held = holdBy(
      flat,
      [one, at("sideWaist", 69, 0), at("sideHip", 90, 40), at("sideHem", 70, 30)],
      [radians(0)],
      room,
    );
    // (70, 30) is the nearest that lies 60 mm from (10, 0): √(60² + 30²).
    expect(held?.strip).toEqual({ turn: 0, u: [-12, 112], v: [-12, 42] });
    expect(held?.layOn.map(({ name }) => name)).toEqual(["underarm", "sideWaist", "sideHem"]);
    // Two far from the lines, where there is no other.
    const two = holdBy(flat, [at("sideHip", 10, 50), at("sideHem", 80, 50)], [radians(0)], room);
    expect(two?.strip).toEqual({ turn: 0, u: [-12, 112], v: [-12, 62] });
  });

  it("hold none that is then too long, or has but points too near each other", () => {
    const both = [at("underarm", 10, 0), at("sideWaist", 69.9, 0)];
    expect(holdBy(flat, both, [radians(0)], room)).toBeNull();
    const far = [at("underarm", 10, 0), at("sideWaist", 70, 0)];
    expect(holdBy(flat, far, [radians(0)], { longest: 124, margin: 12 })?.layOn).toHaveLength(2);
    expect(holdBy(flat, far, [radians(0)], { longest: 123.9, margin: 12 })).toBeNull();
  });

  it("hold a strip at a slant only where that is clearly smaller: by more than 35 of 100", () => {
    const slanting = (by: number) => {
      const lines = [p(0, 0), p(100, by)];
      const points = [at("underarm", 0, 0), at("sideWaist", 100, by)];
      const slant = directionOf(p(0, 0), p(100, by));
      return holdBy(lines, points, [radians(0), slant], room)?.strip.turn;
    };
    // 124 by 24 + by upright; √(100² + by²) + 24 by 24 at a slant: 0.65 of it is reached where by is about 16.
    expect(slanting(10)).toBe(0);
    expect(slanting(30)).toBeCloseTo(Math.atan2(30, 100), 9);
  });
});

describe("room for the words of a strip", () => {
  const long: Strip = { turn: radians(0), u: [0, 120], v: [0, 40] };
  const usual = { longest: 400, more: 0 };

  it("is 76 by 29 mm, 3 mm from the edge, first at its upper left", () => {
    expect(placeTitle(long, [], usual)).toEqual({
      strip: long,
      title: { centre: near(3 + 38, 3 + 14.5), width: 76, height: 29, turn: 0 },
    });
    // 3.75 mm for each line more.
    expect(placeTitle(long, [], { longest: 400, more: 1 })?.title).toMatchObject({ height: 32.75 });
  });

  it("is 2.5 mm clear of lines on all sides, in steps of 4 mm", () => {
    const besides = (x: number, y: number): number | undefined => placeTitle(long, [p(x, y)], usual)?.title.centre.x;
    expect(besides(3 - 2.6, 15)).toBeCloseTo(41, 9);
    // One a little further in is in the way: 4 mm on it is not.
    expect(besides(3 - 2.4, 15)).toBeCloseTo(45, 9);
    expect(besides(79 + 2.6, 15)).toBeCloseTo(41, 9);
    // A little nearer at their right it leaves no room on this strip.
    expect(placeTitle(long, [p(79 + 2.6, 15)], usual)?.strip).toEqual(long);
    expect(placeTitle(long, [p(79 + 2.4, 15)], usual)?.strip).not.toEqual(long);
    expect(placeTitle(long, [p(60, 32 + 2.6)], usual)?.title.centre).toEqual(near(41, 17.5));
    expect(placeTitle(long, [p(60, 0.4)], usual)?.title.centre).toEqual(near(41, 17.5));
    expect(placeTitle(long, [p(60, 0.6)], usual)?.title.centre.y).not.toBeCloseTo(17.5, 3);
  });

  it("goes up the strip where it is narrow, to be read from its right", () => {
    const narrow: Strip = { turn: radians(0), u: [0, 36], v: [0, 100] };
    expect(placeTitle(narrow, [], usual)?.title).toEqual({
      centre: near(3 + 14.5, 3 + 38),
      width: 76,
      height: 29,
      turn: expect.closeTo(-Math.PI / 2, 12),
    });
  });

  it("widens the strip by as little as makes room, on the side where that is least paper", () => {
    const line = along(p(12, 12), p(112, 12), 3);
    const strip: Strip = { turn: radians(0), u: [0, 124], v: [0, 24] };
    const titled = placeTitle(strip, line, usual);
    // 3 + 29 + 2.5 mm beside the line at 12 mm: 12 are there, so 22.5 and in steps of four 24 are wanted.
    expect(titled === null ? null : stripArea(titled.strip)).toBe(124 * 48);
    expect(placeTitle(strip, line, { longest: 124, more: 0 })).not.toBeNull();
    expect(placeTitle(strip, line, { longest: 123, more: 0 })).toBeNull();
  });

  it("is had on a slant as it is upright", () => {
    const slant: Strip = { ...long, turn: eighth };
    const title = placeTitle(slant, [], usual)?.title;
    // (41, 17.5) turned by an eighth of a round.
    expect(title?.centre).toEqual(near((41 - 17.5) * root, (41 + 17.5) * root));
    expect(title).toMatchObject({ width: 76, height: 29, turn: eighth });
  });

  it("is made long enough along the longer side: 76 mm and 3 at either end", () => {
    expect(longEnough({ turn: eighth, u: [0, 60], v: [0, 30] })).toEqual({ turn: eighth, u: [-11, 71], v: [0, 30] });
    expect(longEnough({ turn: eighth, u: [0, 30], v: [0, 60] })).toEqual({ turn: eighth, u: [0, 30], v: [-11, 71] });
    expect(longEnough({ turn: eighth, u: [0, 40], v: [0, 40] })).toEqual({ turn: eighth, u: [-21, 61], v: [0, 40] });
    const enough: Strip = { turn: eighth, u: [0, 20], v: [0, 82] };
    expect(longEnough(enough)).toBe(enough);
  });

  it("is kept from lines by points along them, no further apart than is asked", () => {
    expect(along(p(0, 0), p(9, 0), 3)).toEqual([near(0, 0), near(3, 0), near(6, 0), near(9, 0)]);
    expect(along(p(0, 0), p(0, 10), 3)).toHaveLength(5);
    expect(along(p(5, 5), p(5, 5), 3)).toEqual([near(5, 5), near(5, 5)]);
  });
});

describe("a curve within a strip", () => {
  it("is all that lies within, for any strip: each place of it is on a part, or outside", () => {
    fc.assert(
      fc.property(
        fc.tuple(anyAmount(-50, 150), anyAmount(-50, 150), anyAmount(-50, 150), anyAmount(-50, 150)),
        anyAmount(-3, 3),
        ([y1, y2, y3, y4], turn) => {
          const curve = cubicEdge({ a: p(0, y1), c1: p(40, y2), c2: p(80, y3), b: p(120, y4) });
          const strip: Strip = { turn: radians(turn), u: [-30, 60], v: [-40, 30] };
          const parts = partsInStrip(curve, strip);
          const on = (at: PiecePoint): boolean =>
            parts.some(
              (part) => Math.min(part.a.x, part.b.x) - 0.01 <= at.x && at.x <= Math.max(part.a.x, part.b.x) + 0.01,
            );
          for (let i = 0; i <= 40; i += 1) {
            const at = edgePointAt(curve, i / 40);
            // On a part where it is well within the strip, and on none where it is well outside.
            expect(on(at) || !isInStrip(widened(strip, -0.02), at)).toBe(true);
            expect(on(at) && !isInStrip(widened(strip, 0.02), at)).toBe(false);
          }
        },
      ),
      { numRuns: 40 },
    );
  });
});
