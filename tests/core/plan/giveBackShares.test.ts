/** Shares that stay whole while one of them is changed. */
import type { GiveBackPlace } from "../../../src/core/decisions/alteration";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sharesWith, wholeShares } from "../../../src/core/plan/giveBackShares";

const PLACES = ["sideSeam", "centreSeam", "otherDart"] as const;
const sum = (shares: Readonly<Partial<Record<GiveBackPlace, number>>>): number =>
  Object.values(shares).reduce((total, share) => total + Math.round(share * 100), 0);

describe("wholeShares", () => {
  it("puts all at the usual place, the first, where none is set", () => {
    expect(wholeShares(PLACES, {})).toEqual({ sideSeam: 100, centreSeam: 0, otherDart: 0 });
  });

  it("reads what is set in per cent", () => {
    expect(wholeShares(PLACES, { centreSeam: 0.25, otherDart: 0.75 })).toEqual({
      sideSeam: 0,
      centreSeam: 25,
      otherDart: 75,
    });
  });
});

describe("sharesWith", () => {
  it("takes from the others in proportion", () => {
    const half = { sideSeam: 0.6, centreSeam: 0.3, otherDart: 0.1 };
    // 50 are left for 30 and 10: 37.5 and 12.5, rounded to whole per cents.
    expect(sharesWith(PLACES, half, "sideSeam", 50)).toEqual({ sideSeam: 0.5, centreSeam: 0.38, otherDart: 0.12 });
  });

  it("gives all that is left to the first of the others where they had none", () => {
    expect(sharesWith(PLACES, { otherDart: 1 }, "otherDart", 40)).toEqual({
      sideSeam: 0.6,
      centreSeam: 0,
      otherDart: 0.4,
    });
  });

  it("is whole after any run of changes, whatever is set", () => {
    const change = fc.tuple(fc.constantFrom(...PLACES), fc.integer({ min: 0, max: 100 }));
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 8 }), (changes) => {
        let shares: ReturnType<typeof sharesWith> = {};
        for (const [place, percent] of changes) {
          shares = sharesWith(PLACES, shares, place, percent);
          expect(sum(shares)).toBe(100);
          expect(shares[place]).toBe(percent / 100);
          expect(Object.values(shares).every((share) => share >= 0)).toBe(true);
        }
      }),
    );
  });
});
