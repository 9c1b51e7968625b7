/** Other ways to cut a body: what each costs, worked out by hand; and how likely a pick was, from either side. */
import { measuresOf, tapesOf } from "../../../src/core/measures/tape";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { marginOf } from "../../../src/core/sizing/pickInterval";
import { normalBelow } from "../../../src/core/statistics/normal";
import { anyAmount } from "../../support/amounts";
import { planOf, testWork } from "../../support/works";

describe("the alternatives to a pick", () => {
  // Bust 905, upper chest 832 (so a difference of 73), on a chart that steps by 40 about bust 880 with cups 50, 75, 100.
  const { alternatives } = planOf(testWork).sizing;
  const way = (baseSize: string, cup: string) =>
    alternatives.find((one) => one.baseSize === baseSize && one.cup === cup);

  it("are the pick and more, best first, no two alike, the pick marked once", () => {
    expect(alternatives.length).toBeGreaterThan(2);
    expect(alternatives.filter(({ picked }) => picked)).toHaveLength(1);
    expect(new Set(alternatives.map(({ baseSize, cup }) => `${baseSize} ${cup}`)).size).toBe(alternatives.length);
  });

  it("tell what the bust would lack: 905 − (880 − 50 + 75) on the pick, 905 − (880 − 50 + 100) on the next cup", () => {
    expect(way("12", "C")).toMatchObject({ picked: true, residual: 0, alteration: 0, baseSizeMisfit: 2 });
    expect(way("12", "D")).toMatchObject({ picked: false, residual: -25, alteration: -25, baseSizeMisfit: 2 });
    // One frame up, its B cup: bust 920, and 905 − 920 = −15; upper chest 870 where she has 832.
    expect(way("14", "B")).toMatchObject({ residual: -15, baseSizeMisfit: -38 });
  });

  it("never list a frame that does not hold her upper chest before one that does, cup for cup", () => {
    for (const work of [
      testWork,
      { ...testWork, tapes: tapesOf({ ...measuresOf(testWork.tapes), upperChestGirth: 800, bustGirth: 930 }) },
    ]) {
      const { alternatives: ways } = planOf(work).sizing;
      expect(Math.abs(ways[0]?.baseSizeMisfit ?? NaN)).toBeLessThanOrEqual(20);
    }
  });

  it("count a move of waist and hip a quarter to each side seam edge", () => {
    const pick = alternatives.find(({ picked }) => picked);
    // Waist 752 + 40 against 700 + 40 of size 12; hip 1034 + 50 against 940 + 50.
    expect(pick?.waistMove).toBeCloseTo(52, 0);
    expect(pick?.hipMove).toBeCloseTo(94, 3);
    expect(pick?.largestMove).toBeCloseTo(94 / 4, 3);
    expect(pick?.alterations).toBe(2);
  });
});

describe("the probability of another pick", () => {
  it("is the same at the same distance above a bound and below it", () => {
    fc.assert(
      fc.property(anyAmount(0, 19.9), anyAmount(2, 30), (off, spread) => {
        const [below, above] = [860 - off, 860 + off].map((girth, side) =>
          marginOf([840, 880, 920], side, girth, spread),
        );
        expect(below?.margin).toBeCloseTo(above?.margin ?? NaN, 9);
        expect(below?.probability).toBeCloseTo(above?.probability ?? NaN, 9);
        expect([below?.runnerUp, above?.runnerUp]).toEqual([1, 0]);
      }),
    );
  });

  it("falls with the distance to the bound and never exceeds one half; Φ(−z) = 1 − Φ(z)", () => {
    fc.assert(
      fc.property(anyAmount(0, 19), anyAmount(0.01, 0.9), (off, more) => {
        const [near, far] = [off, off + more].map((d) => marginOf([840, 880, 920], 1, 860 + d, 10).probability);
        expect(far).toBeLessThan(near ?? NaN);
        expect(near).toBeLessThanOrEqual(0.5 + 1e-7);
        expect(normalBelow(-off / 5) + normalBelow(off / 5)).toBeCloseTo(1, 6);
      }),
    );
  });

  it("is nothing where there is no other size on that side", () => {
    expect(marginOf([840], 0, 900, 10)).toMatchObject({ runnerUp: null, probability: 0, borderline: false });
    expect(marginOf([840, 880], 1, 2000, 10).runnerUp).toBe(0);
  });
});
