/** Readings and what they come to. Expected values are worked out by hand beside each. */
import { describe, expect, it } from "vitest";
import { meanOf, spreadOfMean, TAPE_SPREAD } from "../../../src/core/measures/repeatability";
import { bodyOf, measuresOf, tapesOf, type Tapes } from "../../../src/core/measures/tape";

describe("spreadOfMean", () => {
  it("of one reading is the tape's usual spread", () => {
    for (const name of ["bustGirth", "shoulderLength"] as const)
      expect(spreadOfMean(name, [500])).toBe(TAPE_SPREAD[name]);
  });

  it("pools the usual spread, worth four readings, with the wearer's own", () => {
    // Waist, usual spread 10: readings 700 and 712, mean 706, squares 36 + 36 = 72; (4·100 + 72)/(4 + 1) = 94.4; over 2: 47.2.
    expect(spreadOfMean("waistGirth", [700, 712])).toBeCloseTo(Math.sqrt(47.2), 12);
    // Three that agree: (400 + 0)/6 = 66.67, over 3: 22.22.
    expect(spreadOfMean("waistGirth", [700, 700, 700])).toBeCloseTo(Math.sqrt(22.2222222222), 6);
  });

  it("grows where the readings are wild, and shrinks with more that agree", () => {
    expect(spreadOfMean("waistGirth", [640, 760])).toBeGreaterThan(TAPE_SPREAD.waistGirth);
    const more = [1, 2, 3, 4, 5].map((count) =>
      spreadOfMean(
        "hipGirth",
        Array.from({ length: count }, () => 960),
      ),
    );
    expect(more).toEqual(more.toSorted((a, b) => b - a));
  });

  it("is about a mean", () => {
    expect(meanOf([700, 712, 706])).toBe(706);
  });
});

describe("a measure as it counts", () => {
  const tapes: Tapes = [
    { taken: "2026-11-25", readings: { bustGirth: [920, 926], waistGirth: [740] } },
    { taken: "2026-03-01", readings: { bustGirth: [900], hipGirth: [980, 984] } },
  ];

  it("is the mean of the newest set that has it", () => {
    expect(measuresOf(tapes)).toEqual({ bustGirth: 923, waistGirth: 740, hipGirth: 982 });
    expect(bodyOf(tapes).hipGirth).toMatchObject({ set: 1, readings: [980, 984] });
    expect(bodyOf(tapes).bustGirth?.set).toBe(0);
  });

  it("is nothing where nothing was taken", () => {
    expect(measuresOf([{ readings: {} }])).toEqual({});
    expect(measuresOf(tapesOf({ bustGirth: 900 }))).toEqual({ bustGirth: 900 });
  });
});
