/** Values just on an edge: of a range, of what a tape repeats, of nothing. */
import { describe, expect, it } from "vitest";
import { parseAmount, parseLength } from "../../../src/core/measures/length";
import { checkMeasure } from "../../../src/core/measures/registry";
import { apartOf, meanOf, readingsAgree } from "../../../src/core/measures/repeatability";
import { bodyOf, tapesOf } from "../../../src/core/measures/tape";

describe("nothing, however it is signed", () => {
  it.each(["0", "-0", "+0", "-0.0 mm", "−0", "0/2"])("%s is 0 and no negative length", (text) => {
    expect(parseLength(text, "cm")).toStrictEqual({ ok: true, value: 0 });
    expect(parseLength(text, "in", { signed: true })).toStrictEqual({ ok: true, value: 0 });
    expect(parseAmount(text, "cm")).toStrictEqual({ ok: true, value: 0 });
  });

  it("what rounds to nothing is negative still where it was typed so, and refused", () => {
    // A fiftieth of a millimetre.
    expect(parseLength("-0.02 mm", "cm")).toStrictEqual({
      ok: false,
      failure: { code: "length/negative", text: "-0.02 mm" },
    });
    expect(parseLength("-0.02 mm", "cm", { signed: true })).toStrictEqual({ ok: true, value: 0 });
  });

  it("is no amount to move by where nothing is typed", () => {
    expect(parseAmount("  ", "cm")).toStrictEqual({ ok: true, value: 0 });
    expect(parseLength("  ", "cm")).toStrictEqual({ ok: false, failure: { code: "length/empty" } });
  });
});

describe("the longest length", () => {
  it("is five metres, and no tenth of a millimetre more", () => {
    expect(parseLength("500", "cm")).toStrictEqual({ ok: true, value: 5000 });
    expect(parseLength("5000.1 mm", "cm")).toStrictEqual({
      ok: false,
      failure: { code: "length/absurd", text: "5000.1 mm", most: 5000 },
    });
    // 16 ft 4.85 in is 4999.99 mm; 16 ft 4.86 in is 5000.244.
    expect(parseLength("16 ft 4.85 in", "in", { feet: true })).toStrictEqual({ ok: true, value: 5000 });
    expect(parseLength("16 ft 4.86 in", "in", { feet: true })).toMatchObject({ failure: { code: "length/absurd" } });
  });
});

describe("what a misreading may have meant", () => {
  it("reaches to both ends of the usual range, which they are part of", () => {
    // The bust's usual range is 700 to 1500: half of 700 is 350, and 1778 mm are 700 read as so many inches.
    const meant = (value: number): readonly unknown[] => {
      const verdict = checkMeasure("bustGirth", value);
      return verdict.state === "ok" ? [] : verdict.misreadings.map((one) => [one.kind, one.meant]);
    };
    expect(meant(350)).toEqual([
      ["inchesAsCentimetres", 889],
      ["half", 700],
    ]);
    expect(meant(349.9)).toEqual([["inchesAsCentimetres", 888.7]]);
    expect(meant(1778)).toEqual([["centimetresAsInches", 700]]);
    expect(meant(1777.7)).toEqual([]);
    expect(meant(3810)).toEqual([["centimetresAsInches", 1500]]);
    expect(meant(3810.3)).toEqual([]);
  });
});

describe("readings", () => {
  it("agree while no further apart than the tape brings them, the bound too", () => {
    // The usual spread of the waist is 10 mm; ranges of two to five values of one spread, from the table of the range.
    for (const [count, most] of [
      [2, 27.72],
      [3, 33.14],
      [4, 36.33],
      [5, 38.58],
      [6, 38.58],
    ] as const) {
      const readings = (apart: number): readonly number[] => [0, apart, ...Array.from({ length: count - 2 }, () => 1)];
      expect(readingsAgree("waistGirth", readings(most - 0.001))).toBe(true);
      expect(readingsAgree("waistGirth", readings(most + 0.001))).toBe(false);
    }
  });

  it("agree at the very bound: 2.772 spreads of 10 mm for two", () => {
    expect(readingsAgree("waistGirth", [0, 2.772 * 10])).toBe(true);
  });

  it("have a mean, and how far they are apart", () => {
    expect(meanOf([3, 4, 8])).toBe(5);
    expect(apartOf([-3, 4, 1])).toBe(7);
  });

  it("count from the newest set that has any; an empty list is none", () => {
    const body = bodyOf([
      { readings: { hipGirth: [] } },
      { readings: { hipGirth: [960, 964] } },
      { readings: { hipGirth: [900] } },
    ]);
    // (4 · 10² + 2² + 2²)∕5 over 2.
    expect(body).toEqual({ hipGirth: { value: 962, spread: Math.sqrt(40.8), readings: [960, 964], set: 1 } });
    expect(tapesOf({ height: 1700 })).toEqual([{ readings: { height: [1700] } }]);
  });
});
