/** Where a dart ends against the bust point, in its own axes: worked out by hand, and turned round again for any dart. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  bustPointOfReading,
  endFails,
  endsAsUsual,
  judgeDartEnd,
  readDartEnd,
  straightToBustPoint,
} from "../../../src/core/dart/dartEndReading";
import type { DartCorners } from "../../../src/core/dart/dartFrame";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { anyAmount } from "../../support/amounts";

/** Upright, from a mouth on y = 400 about x = 90 to an end at (90, 260): inner is nearer the centre line. */
const upright: DartCorners = { apex: piecePoint(90, 260), inner: piecePoint(70, 400), outer: piecePoint(110, 400) };
/** Level, from a mouth on x = 220 about y = 250 to an end at (130, 250): inner is the upper end. */
const level: DartCorners = { apex: piecePoint(130, 250), inner: piecePoint(220, 235), outer: piecePoint(220, 265) };
/** On a slope of 3 to 4: the axis from the mouth's middle (0, 0) runs along (−3, −4)/5 to the end at (−60, −80). */
const slanting: DartCorners = { apex: piecePoint(-60, -80), inner: piecePoint(-8, 6), outer: piecePoint(8, -6) };

describe("a reading", () => {
  it.each([
    ["upright, 20 short on its axis", upright, piecePoint(90, 240), 20, 0],
    ["upright, 15 past", upright, piecePoint(90, 275), -15, 0],
    ["upright, the bust point nearer the centre", upright, piecePoint(68, 260), 0, 22],
    ["upright, the bust point nearer the side", upright, piecePoint(99, 230), 30, -9],
    ["level, 30 short and the bust point 12 above", level, piecePoint(100, 238), 30, 12],
    ["level, 30 short and the bust point 8 below", level, piecePoint(100, 258), 30, -8],
    // Five along (−3, −4)/5 is (−3, −4); ten towards the inner end, along (−4, 3)/5, is (−8, 6).
    ["slanting, 5 along and 10 to the inner side", slanting, piecePoint(-60 - 3 - 8, -80 - 4 + 6), 5, 10],
  ] as const)("%s", (_what, dart, bustPoint, along, across) => {
    const reading = readDartEnd(dart, bustPoint);
    expect(reading.along).toBeCloseTo(along, 9);
    expect(reading.across).toBeCloseTo(across, 9);
  });

  it("is of the straight distance, 3-4-5, negative past the bust point", () => {
    expect(straightToBustPoint({ along: 30, across: -40 })).toBe(50);
    expect(straightToBustPoint({ along: -30, across: 40 })).toBe(-50);
  });

  it("of any dart and any bust point gives that bust point again", () => {
    const point: fc.Arbitrary<PiecePoint> = fc
      .tuple(anyAmount(-300, 300), anyAmount(-300, 600))
      .map(([x, y]) => piecePoint(x, y));
    fc.assert(
      fc.property(fc.record({ apex: point, inner: point, outer: point }), point, (dart, bustPoint) => {
        const again = bustPointOfReading(dart, readDartEnd(dart, bustPoint));
        expect(Math.hypot(again.x - bustPoint.x, again.y - bustPoint.y)).toBeLessThan(1e-9);
      }),
    );
  });
});

describe("what is said of it", () => {
  const usual = { least: 15, most: 25 };

  it.each([
    [-0.1, "past"],
    [9.9, "tooNear"],
    [10, "near"],
    [14.4, "near"],
    [14.6, "usual"],
    [25.4, "usual"],
    [25.6, "far"],
    [60, "far"],
    [60.1, "tooFar"],
  ] as const)("%d mm along: %s", (along, said) => {
    expect(judgeDartEnd({ along, across: 0 }, usual).along).toBe(said);
  });

  it.each([
    [10.4, "usual"],
    [-10.6, "aside"],
    [22, "aside"],
    [-25, "aside"],
    [25.1, "tooFarAside"],
  ] as const)("%d mm across: %s", (across, said) => {
    expect(judgeDartEnd({ along: 20, across }, usual).across).toBe(said);
  });

  it("is as usual only both ways, and fails either way", () => {
    const judged = (along: number, across: number) => judgeDartEnd({ along, across }, usual);
    expect([judged(20, 0), judged(20, 12), judged(30, 0)].map(endsAsUsual)).toEqual([true, false, false]);
    expect([judged(20, 12), judged(40, 0), judged(20, 26), judged(5, 0), judged(70, 0)].map(endFails)).toEqual([
      false,
      false,
      true,
      true,
      true,
    ]);
  });
});
