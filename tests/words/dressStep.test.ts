import { describe, expect, it } from "vitest";
import { clothLength, readNumber } from "../../src/words/dressStep";

describe("cloth as it is asked for in a shop", () => {
  // A yard is 914.4 mm, by definition.
  it.each([
    [914.4, "1 yd"],
    [457.2, "1/2 yd"],
    [114.3, "1/8 yd"],
    [2286, "2 1/2 yd"],
    [914.4 * 3.75, "3 3/4 yd"],
    [914.4 * 2.625, "2 5/8 yd"],
    [0, "0 yd"],
  ])("is told in eighths of a yard: %d mm", (mm, yards) => expect(clothLength(mm, "in")).toBe(yards));

  it.each([
    [2450, "2.45 m"],
    [600, "0.60 m"],
    [3000, "3.00 m"],
  ])("is told in metres: %d mm", (mm, metres) => expect(clothLength(mm, "cm")).toBe(metres));
});

describe("a plain number", () => {
  it.each([
    ["1.5", 1.5],
    ["1,5", 1.5],
    [".5", 0.5],
    ["3.", 3],
    ["07", 7],
  ])("is read: %s", (text, value) => expect(readNumber(text)).toBe(value));

  it.each(["", "1.5.2", "1/2", "-1", "1e3", "two", "."])("is none: %s", (text) => expect(readNumber(text)).toBeNull());
});
