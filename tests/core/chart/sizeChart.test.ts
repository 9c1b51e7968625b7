/** Cup versions as patterns print them: an inch, or 25 mm, apart, the B as drafted (common practice, no source). */
import { describe, expect, it } from "vitest";
import { nextCup, usualCups, usualDraftedDifference } from "../../../src/core/chart/sizeChart";

describe("the drafted difference", () => {
  it("is 50 mm, and 2 in on an inch tape", () => {
    expect(usualDraftedDifference("cm")).toBe(50);
    expect(usualDraftedDifference("in")).toBe(50.8);
  });
});

describe("the usual cups", () => {
  it("are A to D, 25 mm apart", () =>
    expect(usualCups(55, "cm")).toEqual([
      { label: "A", difference: 30 },
      { label: "B", difference: 55 },
      { label: "C", difference: 80 },
      { label: "D", difference: 105 },
    ]));

  it("are an inch apart on an inch tape, kept to a tenth", () =>
    expect(usualCups(50.77, "in")).toEqual([
      { label: "A", difference: 25.4 },
      { label: "B", difference: 50.8 },
      { label: "C", difference: 76.2 },
      { label: "D", difference: 101.6 },
    ]));
});

describe("the next cup", () => {
  const cup = (label: string, difference: number) => ({ label, difference });

  it("is the drafted B where there is none", () =>
    expect(nextCup([], 63.25, "cm")).toEqual({ label: "B", difference: 63.25 }));

  it("is a step fuller than the last one, under the next letter", () => {
    expect(nextCup([cup("B", 50)], 50, "cm")).toEqual(cup("C", 75));
    expect(nextCup([cup("B", 50), cup("D", 100)], 50, "in")).toEqual(cup("DD", 125.4));
    expect(nextCup([cup("DD", 110)], 50, "cm")).toEqual(cup("E", 135));
    expect(nextCup([cup("B", 50.12)], 50, "cm")).toEqual(cup("C", 75.1));
  });

  it("passes over letters that stand already", () =>
    expect(nextCup([cup("C", 25), cup("B", 50)], 50, "cm")).toEqual(cup("D", 75)));

  it("after a name of her own takes the first letter that is free", () =>
    expect(nextCup([cup("A", 25), cup("full", 50)], 50, "cm")).toEqual(cup("B", 75)));

  it("is numbered where the letters end", () =>
    expect(nextCup([cup("K", 300), cup("L", 325)], 50, "cm")).toEqual(cup("cup 3", 350)));
});
