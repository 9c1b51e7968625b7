import { describe, expect, it } from "vitest";
import { expectPointClose, expectSamePoints } from "./matchers";

const origin = { x: 0, y: 0 };

describe("expectPointClose", () => {
  it("passes equal points and points within the tolerance", () => {
    expectPointClose({ x: 1, y: 2 }, { x: 1, y: 2 }, 0);
    expectPointClose({ x: 3, y: 4 }, origin, 5);
  });

  it.each([
    ["a difference in x", { x: 0.2, y: 0 }, origin],
    ["a difference in y", { x: 0, y: -0.2 }, origin],
    ["a difference along the diagonal", { x: 0.09, y: 0.09 }, origin],
    ["NaN", { x: Number.NaN, y: 0 }, origin],
    ["NaN on both sides", { x: Number.NaN, y: 0 }, { x: Number.NaN, y: 0 }],
    ["infinity on both sides", { x: Infinity, y: 0 }, { x: Infinity, y: 0 }],
    ["a missing y", { x: 0 }, origin],
    ["a missing x in the expectation", origin, { y: 0 }],
    ["a missing coordinate on both sides", { x: 0 }, { x: 0 }],
    ["a missing point", undefined, origin],
    ["no points at all", undefined, undefined],
  ])("fails on %s", (_name, p, q) => {
    expect(() => expectPointClose(p, q, 0.1)).toThrow(/should be within/);
  });

  it("fails on a tolerance that is not a number", () => {
    expect(() => expectPointClose(origin, origin, Number.NaN)).toThrow(/should be within/);
  });
});

describe("expectSamePoints", () => {
  const far = { x: 10, y: 0 };

  it("passes in any order", () => {
    expectSamePoints([origin, far], [far, origin], 0);
    expectSamePoints([], [], 0);
  });

  it.each([
    ["a surplus point", [origin, far], [origin]],
    ["a missing point", [origin], [origin, far]],
    ["one point standing for two", [origin, far], [origin, origin]],
    ["a wrong point", [{ x: 0.2, y: 0 }], [origin]],
    ["NaN", [{ x: Number.NaN, y: 0 }], [{ x: Number.NaN, y: 0 }]],
  ])("fails on %s", (_name, found, expected) => {
    expect(() => expectSamePoints(found, expected, 0.1)).toThrow(/should be/);
  });
});
