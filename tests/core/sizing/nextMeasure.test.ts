/** Which measure to take next: what the place of a body on the chart makes plain, and what any further knowledge must do. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { tapesOf, type Readings, type Tapes } from "../../../src/core/measures/tape";
import type { Work } from "../../../src/core/decisions/work";
import { howSure } from "../../../src/core/sureness/howSure";
import { waysOf } from "../../../src/core/sureness/ruleRegions";
import { nextMeasure, type NextMeasure } from "../../../src/core/sureness/nextMeasure";
import { anyAmount } from "../../support/amounts";
import { testWork } from "../../support/works";

const others = { waistGirth: [752], hipGirth: [1034] } as const;
const tapes = (readings: Readings): Tapes => [{ readings: { ...others, ...readings } }];
const workOf = (readings: Readings, cups = testWork.pattern.chart.cups): Work => ({
  ...testWork,
  tapes: tapes(readings),
  pattern: { ...testWork.pattern, chart: { ...testWork.pattern.chart, cups } },
});
const noCups = { ...testWork.pattern.chart, cups: [] };
const five = (value: number): readonly number[] => Array<number>(5).fill(value);

function first(work: Work): NextMeasure {
  const next = nextMeasure(work)?.[0];
  if (next === undefined) throw new Error("nothing to measure next");
  return next;
}

describe("the measure to take next", () => {
  it("is the upper chest where it lies on the bound between two frames and the bust is well known", () => {
    // 850 is the bound between 12 and 14. No cup versions: 17.8 let in on 12 harm 15 + 22.2, 22.2 taken out on 14 as much.
    // Only the frame is in doubt.
    const next = first(workOf({ bustGirth: five(897.8), upperChestGirth: [850] }, []));
    expect(next).toMatchObject({ settles: "pick", measures: ["upperChestGirth"], taken: true });
    // On the very bound it is an even chance now, but that a near tie goes to the smaller alteration.
    expect(next.before).toBeCloseTo(0.5, 1);
    // The error of three readings is 12/√3, of one 12: the new mean is normal about the bound with the variance taken away, 12²·2/3,
    // and the better side then E Φ(|m|/s′) = 1/2 + arctan(√2)/π (a standard integral of the normal distribution).
    expect(next.after).toBeCloseTo(0.5 + Math.atan(Math.SQRT2) / Math.PI, 1);
  });

  it("is the bust where that alone decides whether it is altered", () => {
    // No cup versions; the frame is 12 beyond doubt, and 892 is 12 more than its bust: left alone, or not.
    const next = first(workOf({ bustGirth: [892], upperChestGirth: five(832) }, []));
    expect(next.measures).toEqual(["bustGirth"]);
  });

  it("is the upper chest where it was never taken", () => {
    for (const cups of [testWork.pattern.chart.cups, []]) {
      expect(
        first({ ...workOf({}, cups), tapes: tapesOf({ bustGirth: 880, waistGirth: 752, hipGirth: 1034 }) }),
      ).toMatchObject({
        settles: "pick",
        measures: ["upperChestGirth"],
        taken: false,
      });
    }
  });

  it("is both girths where frame and cup stand on both and either alone says little", () => {
    // Upper chest 857 is 7 over the bound between 12 and 14; the bust of 912 is 7 over cup C of 12 and 8 short of B of 14.
    expect(first(workOf({ bustGirth: [912], upperChestGirth: [857] })).measures).toEqual([
      "bustGirth",
      "upperChestGirth",
    ]);
    // In the middle of the frame, half-way between cups B and C, 62.5 mm, only the bust decides.
    expect(first(workOf({ bustGirth: [893], upperChestGirth: [830] })).measures).toEqual(["bustGirth"]);
  });

  it("is the waist or the hip once frame and cup are settled, the less known first, in mm at a side seam", () => {
    const settled = { bustGirth: five(905), upperChestGirth: five(830) };
    expect(nextMeasure(workOf({ ...settled, hipGirth: [1034, 1034] }))).toEqual([
      // 1.645 · 10/4 now; over √3 after two more.
      expect.objectContaining({
        settles: "line",
        measures: ["waistGirth"],
        before: expect.closeTo(4.112, 3),
        after: expect.closeTo(2.374, 3),
      }),
    ]);
    expect(nextMeasure(workOf({ ...settled, waistGirth: [752, 752, 752], hipGirth: [1034, 1034, 1034] }))).toBeNull();
  });

  it("is never one that holds as many readings as are kept", () => {
    expect(nextMeasure(workOf({ bustGirth: five(893), upperChestGirth: five(830) }))).toEqual([]);
  });

  it("is nothing without a bust", () => {
    expect(nextMeasure({ ...testWork, tapes: tapesOf({ waistGirth: 752 }) })).toBeNull();
  });
});

describe("for any body", () => {
  const bodies = fc.tuple(anyAmount(780, 1150), anyAmount(30, 120), fc.boolean());

  it("is ranked, gains what is worth a reading, and says of the likeliest way what it is now", () => {
    fc.assert(
      fc.property(bodies, ([bust, difference, hasCups]) => {
        const work = workOf(
          { bustGirth: [Math.round(bust)], upperChestGirth: [Math.round(bust - difference)] },
          hasCups ? testWork.pattern.chart.cups : [],
        );
        const next = nextMeasure(work) ?? [];
        expect(next.map(({ after }) => after)).toEqual(next.map(({ after }) => after).toSorted((a, b) => b - a));
        const sure = howSure(work);
        const now = sure.ok ? (sure.value.ways[0]?.probability ?? NaN) : NaN;
        for (const one of next.filter(({ settles }) => settles === "pick")) {
          expect(one.before).toBeCloseTo(now, 9);
          expect(one.after).toBeGreaterThanOrEqual(now + 0.05);
          expect(one.after).toBeLessThan(1);
        }
      }),
      { numRuns: 25 },
    );
  });

  it.each([842, 850, 846, 888])(
    "never expects more of an upper chest of %d mm read again than of the same known exactly",
    (girth) => {
      // Known exactly, it decides the frame but for the bust: the mean, over where it may lie, of the likeliest way there.
      const next = first(workOf({ bustGirth: five(girth + 110), upperChestGirth: [girth] }, []));
      const spread = Math.sqrt((4 * 100) / 8 / 5);
      const exact = Array.from({ length: 401 }, (_, i) => (i - 200) / 50).map((z) => ({
        weight: Math.exp((-z * z) / 2),
        best:
          waysOf(noCups, {
            bust: { value: girth + 110, spread },
            upperChest: { value: girth + 12 * z, spread: 0.05 },
          })[0]?.probability ?? 0,
      }));
      const most =
        exact.reduce((all, { weight, best }) => all + weight * best, 0) /
        exact.reduce((all, { weight }) => all + weight, 0);
      expect(next.measures).toEqual(["upperChestGirth"]);
      expect(next.after).toBeLessThan(most);
    },
  );
});
