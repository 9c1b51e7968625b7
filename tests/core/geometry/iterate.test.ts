/** Coming nearer by rounds, on equations whose zeros are known. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { comeNear, halve, zeroBetween } from "../../../src/core/geometry/iterate";
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

describe("zeroBetween", () => {
  /** How often it looks, and what it finds. */
  function sought(from: number, to: number, offAt: (x: number) => number, accuracy = 1e-6, apart = 1e-12) {
    let looks = 0;
    const ends = [
      { at: from, off: offAt(from) },
      { at: to, off: offAt(to) },
    ] as const;
    const at = zeroBetween(
      ends,
      (x) => {
        looks += 1;
        return offAt(x);
      },
      { accuracy, apart },
    );
    return { at, looks };
  }

  // Zeros known in closed form: √2, ln 3, the real root of Wallis' x³ − 2x − 5 (2.0945514815…), π.
  it.each([
    ["x² − 2", 0, 2, (x: number) => x * x - 2, Math.SQRT2],
    ["eˣ − 3", 0, 4, (x: number) => Math.exp(x) - 3, Math.log(3)],
    ["x³ − 2x − 5", 2, 3, (x: number) => x ** 3 - 2 * x - 5, 2.0945514815423265],
    ["sin x", 3, 4, Math.sin, Math.PI],
    ["1 − x, from the greater end", 9, -3, (x: number) => 1 - x, 1],
  ])("finds the zero of %s in few looks", (_, from, to, offAt, zero) => {
    const { at, looks } = sought(from, to, offAt);
    expect(at).toBeCloseTo(zero, 5);
    expect(Math.abs(offAt(at))).toBeLessThan(1e-6);
    expect(looks).toBeLessThanOrEqual(12);
  });

  it("halves where false position stands still: x⁹ from -0.1 to 10, a step, a curve flat on one side", () => {
    expect(Math.abs(sought(-0.1, 10, (x) => x ** 9 - 1e-3).at - 1e-3 ** (1 / 9))).toBeLessThan(1e-4);
    const step = sought(0, 1, (x) => (x < 0.3 ? -1 : 1000), 1e-6, 1e-6);
    expect(step.at).toBeCloseTo(0.3, 5);
    expect(step.looks).toBeLessThanOrEqual(60);
    expect(sought(0, 1, (x) => (x < 0.999 ? -1e-3 : 1e6 * (x - 0.999) - 1e-3)).at).toBeCloseTo(0.999, 6);
  });

  it("looks no further where an end is near enough, nor takes what is no number", () => {
    expect(sought(0, 1, (x) => x - 1 + 1e-9)).toEqual({ at: 1, looks: 0 });
    expect(sought(-1, 2, (x) => (x === -1 ? -1 : x === 2 ? 2 : NaN)).at).toBe(-1);
  });

  it("finds a zero of any rising cubic, never outside the ends, in hardly more looks than halving has", () => {
    const any = fc.double({ min: 0.01, max: 5, noNaN: true });
    fc.assert(
      fc.property(any, any, fc.double({ min: -3, max: 3, noNaN: true }), (a, b, zero) => {
        const offAt = (x: number): number => a * (x - zero) ** 3 + b * (x - zero);
        const { at, looks } = sought(-4, 5, offAt);
        expect(at).toBeGreaterThanOrEqual(-4);
        expect(at).toBeLessThanOrEqual(5);
        expect(Math.abs(offAt(at))).toBeLessThan(1e-6);
        expect(looks).toBeLessThanOrEqual(30);
      }),
    );
  });
});
