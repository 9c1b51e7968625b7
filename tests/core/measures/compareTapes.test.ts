/** Two times of measuring beside each other. Expected values are worked out by hand beside each. */
import { describe, expect, it } from "vitest";
import { compareTapes } from "../../../src/core/measures/compareTapes";

describe("compareTapes", () => {
  it("calls changed what two tapes seldom do, and nothing else", () => {
    // One reading each, spread 10: 1.645 √200 = 23.26.
    const at = (now: number) => compareTapes({ readings: { waistGirth: [now] } }, { readings: { waistGirth: [700] } });
    expect(at(723)).toEqual([{ measure: "waistGirth", now: 723, before: 700, changed: false }]);
    expect(at(724)).toMatchObject([{ changed: true }]);
    expect(at(676)).toMatchObject([{ changed: true }]);
  });

  it("is finer where both were taken more often", () => {
    // Two agreeing readings: variance (400/5)/2 = 40 each; 1.645 √80 = 14.71.
    const at = (now: number) =>
      compareTapes({ readings: { waistGirth: [now, now] } }, { readings: { waistGirth: [700, 700] } });
    expect(at(714)).toMatchObject([{ changed: false }]);
    expect(at(715)).toMatchObject([{ changed: true }]);
  });

  it("is coarser where one of the two was taken wildly", () => {
    // 680 and 720: squares 400 + 400, (400 + 800)/5 = 240, over 2: 120. One reading: 100. 1.645 √220 = 24.40.
    const at = (now: number) =>
      compareTapes({ readings: { waistGirth: [now] } }, { readings: { waistGirth: [680, 720] } });
    expect(at(724)).toMatchObject([{ before: 700, changed: false }]);
    expect(at(725)).toMatchObject([{ before: 700, changed: true }]);
  });

  it("goes by each measure's own tape", () => {
    // Shoulder length, spread 5: 1.645 √50 = 11.63; bust point width, spread 7: 1.645 √98 = 16.28.
    const rows = compareTapes(
      { readings: { shoulderLength: [132], bustPointWidth: [196] } },
      { readings: { shoulderLength: [120], bustPointWidth: [180] } },
    );
    expect(rows.map(({ measure, changed }) => [measure, changed])).toEqual([
      ["bustPointWidth", false],
      ["shoulderLength", true],
    ]);
  });

  it("passes over what only one of the two has", () => {
    expect(compareTapes({ readings: { waistGirth: [700] } }, { readings: { hipGirth: [960] } })).toEqual([]);
  });
});
