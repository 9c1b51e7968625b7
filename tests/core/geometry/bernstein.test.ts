import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cubicTurns, cubicValue, cubicZeros } from "../../../src/core/geometry/bernstein";
import { RUNS } from "../../support/curves";

type Ordinates = readonly [number, number, number, number];

/** Ordinates of scale · (t - p)(t - q)(t - r), by its blossom. */
function withZeros(p: number, q: number, r: number, scale = 100): Ordinates {
  const at = (u: number, v: number, w: number): number => {
    const orders = [
      [u, v, w],
      [u, w, v],
      [v, u, w],
      [v, w, u],
      [w, u, v],
      [w, v, u],
    ] as const;
    return (scale * orders.reduce((sum, [x, y, z]) => sum + (x - p) * (y - q) * (z - r), 0)) / 6;
  };
  return [at(0, 0, 0), at(0, 0, 1), at(0, 1, 1), at(1, 1, 1)];
}

/** Ordinates of a parabola with its least value at t = 0.5. */
const turningAt = (lowest: number): Ordinates => [10 + lowest, lowest - 10 / 3, lowest - 10 / 3, 10 + lowest];
const zeros = (ordinates: Ordinates, touch = 1e-4): readonly number[] => cubicZeros(...ordinates, touch);

describe("cubicValue", () => {
  it("is the product of its planted factors", () => {
    const f = withZeros(0.1, 0.4, 2);
    for (const t of [0, 0.25, 0.4, 1])
      expect(cubicValue(...f, t)).toBeCloseTo(100 * (t - 0.1) * (t - 0.4) * (t - 2), 11);
  });
});

describe("cubicZeros", () => {
  it.each([
    ["three within", [0.2, 0.5, 0.9], [0.2, 0.5, 0.9]],
    ["one within, two beyond", [-1, 0.3, 3], [0.3]],
    ["none within", [-0.5, -0.2, 1.5], []],
    ["at the very ends", [0, 0.5, 1], [0, 0.5, 1]],
    ["a touch", [0.3, 0.3, 5], [0.3]],
    ["a touch and a crossing", [0.3, 0.3, 0.8], [0.3, 0.8]],
    ["three in one", [0.6, 0.6, 0.6], [0.6]],
  ])("finds %s", (_name, [p = 0, q = 0, r = 0], expected) => {
    const found = zeros(withZeros(p, q, r));
    expect(found.length).toBe(expected.length);
    found.forEach((t, i) => expect(t).toBeCloseTo(expected[i] ?? Number.NaN, 4));
  });

  it("finds planted zeros to ten digits, in order", () => {
    const within = fc.double({ min: 0.01, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(within, within, within, (p, q, r) => {
        const expected = [p, q, r].toSorted((x, y) => x - y);
        const [low = 0, mid = 0, high = 0] = expected;
        fc.pre(mid - low > 0.05 && high - mid > 0.05);
        const found = zeros(withZeros(p, q, r));
        expect(found.length).toBe(3);
        found.forEach((t, i) => expect(t).toBeCloseTo(expected[i] ?? Number.NaN, 10));
      }),
      RUNS,
    );
  });

  it("counts an end within reach of 0, and a turn that falls short, but nothing farther off", () => {
    expect(zeros([5e-5, 10, 20, 30])).toEqual([0]);
    expect(zeros([30, 20, 10, 5e-5])).toEqual([1]);
    expect(zeros([2e-4, 10, 20, 30])).toEqual([]);
    expect(zeros(turningAt(5e-5))).toEqual([0.5]);
    expect(zeros(turningAt(2e-4))).toEqual([]);
    expect(zeros(turningAt(-5e-5)).length).toBe(2);
  });

  it("does not count an end beside a crossing", () => {
    expect(zeros([-5e-5, 10, 20, 30]).length).toBe(1);
  });

  it("gives both ends where all is 0", () => {
    expect(zeros([0, 0, 0, 0])).toEqual([0, 1]);
    expect(zeros([5e-5, -5e-5, 5e-5, 0])).toEqual([0, 1]);
  });

  it("solves straight and quadratic ordinates", () => {
    expect(zeros([-1, 0, 1, 2])).toEqual([expect.closeTo(1 / 3, 12)]);
    expect(zeros([1, -1 / 3, -1 / 3, 1])).toEqual([expect.closeTo(0.5, 12)]); // (2t - 1)²
  });
});

describe("cubicTurns", () => {
  it("are where the derivative vanishes", () => {
    // f' = 3(t - 0.25)(t - 0.75): f = t³ - 1.5t² + 0.5625t, whose ordinates follow from its power form.
    expect(cubicTurns(0, 0.1875, -0.125, 0.0625)).toEqual([expect.closeTo(0.25, 12), expect.closeTo(0.75, 12)]);
  });

  it("are none where the ordinates only rise, or stay", () => {
    expect(cubicTurns(0, 1, 2, 3)).toEqual([]);
    expect(cubicTurns(4, 4, 4, 4)).toEqual([]);
  });
});
