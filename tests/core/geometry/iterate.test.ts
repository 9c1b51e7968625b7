/** Coming nearer by rounds, on equations whose zeros are known. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { comeNear, halve } from "../../../src/core/geometry/iterate";
import { NEARER_MOST_HALVINGS, NEARER_MOST_SHARINGS } from "../../../src/core/tolerance";

/** Seeks x with gain·(x − at) = 0, each round taking off all that is over: it comes near by itself for gains from 0 to 2 alone. */
function linear(gain: number, at: number, rounds: number) {
  let looks = 0;
  const found = comeNear(0, {
    missOf: (x) => {
      looks += 1;
      return gain * (x - at);
    },
    correct: (x, by) => x - by,
    rounds,
    accuracy: 1e-6,
  });
  return { ...found, looks };
}

describe("comeNear", () => {
  it("is the plain correction where that comes near: after one round of gain 1/2 half is left", () => {
    expect(linear(0.5, 8, 1)).toMatchObject({ value: 4, miss: -2, isSettled: false });
    expect(linear(1, 8, 3)).toMatchObject({ value: 8, miss: 0, isSettled: true, looks: 2 });
  });

  it.each([2, 3, 5, 40, 200])("comes near though each correction overshoots, by a gain of %d", (gain) => {
    const { value, isSettled } = linear(gain, 8, 40);
    expect(isSettled).toBe(true);
    expect(value).toBeCloseTo(8, 5);
  });

  it("never looks more often than its rounds and sharings, nor ends worse than it began", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: -1e4, max: 1e4, noNaN: true }),
        fc.nat(20),
        (gain, at, rounds) => {
          const { miss, looks } = linear(gain, at, rounds);
          expect(looks).toBeLessThanOrEqual(1 + rounds + NEARER_MOST_SHARINGS);
          expect(Math.abs(miss)).toBeLessThanOrEqual(Math.abs(gain * at));
        },
      ),
    );
  });

  it("gives back what it began with where it can only get worse, and says so", () => {
    expect(linear(-1, 8, 20)).toMatchObject({ value: 0, miss: 8, isSettled: false });
  });

  it("takes no step onto what is no number, nor past where nothing can be made", () => {
    const isNoNumber = comeNear(1, { missOf: (x) => (x === 1 ? 5 : NaN), correct: () => 2, rounds: 9, accuracy: 1e-6 });
    expect(isNoNumber).toEqual({ value: 1, miss: 5, isSettled: false });
    expect(comeNear(1, { missOf: () => NaN, correct: () => 2, rounds: 9, accuracy: 1e-6 }).isSettled).toBe(false);
    expect(comeNear(1, { missOf: (x) => x, correct: () => null, rounds: 9, accuracy: 1e-6 })).toEqual({
      value: 1,
      miss: 1,
      isSettled: false,
    });
  });
});

describe("halve", () => {
  it("finds the root of 2 from either side", () => {
    const up = halve(0, 2, 1e-9, (x) => x * x <= 2);
    expect(up.holding).toBeLessThanOrEqual(Math.SQRT2);
    expect(up.failing).toBeGreaterThan(Math.SQRT2);
    expect(up.failing - up.holding).toBeLessThanOrEqual(1e-9);
    expect(halve(2, 0, 1e-9, (x) => x * x >= 2).holding).toBeCloseTo(Math.SQRT2, 8);
  });

  it("ends however far apart the two are, and on what is no number", () => {
    let looks = 0;
    const count = (): boolean => {
      looks += 1;
      return looks % 2 === 0;
    };
    halve(0, Number.MAX_VALUE, 1e-9, count);
    expect(looks).toBeLessThanOrEqual(NEARER_MOST_HALVINGS);
    looks = 0;
    halve(0, NaN, 1e-9, count);
    expect(looks).toBe(0);
  });
});
