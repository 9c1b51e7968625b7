import { describe, expect, it } from "vitest";
import { readTypeface } from "../../src/paper/typeface";
import { TYPEFACES } from "../support/inkPages";

const regular = readTypeface(TYPEFACES.regular);
const bold = readTypeface(TYPEFACES.bold);
const codeOf = (sign: string): number => sign.codePointAt(0) ?? 0;

describe("the typeface", () => {
  // Seen set by two viewers of PDF files.
  it.each(Array.from("AzŁźЖΩ½⅛⅜⅝⅞¼¾′″−×–“”→·°?"))("has %s", (sign) => {
    expect([regular.has(codeOf(sign)), bold.has(codeOf(sign))]).toEqual([true, true]);
  });

  it.each(Array.from("①✂岡👗\n"))("lacks %j", (sign) => {
    expect([regular.has(codeOf(sign)), bold.has(codeOf(sign))]).toEqual([false, false]);
  });

  it("has figures of equal width, so that they stand in columns", () => {
    expect(new Set(Array.from("0123456789").map((figure) => regular.widthOf(figure, 10))).size).toBe(1);
  });

  it("is as wide as its letters together, in proportion to its size; bold is wider", () => {
    expect(regular.widthOf("Wide", 10)).toBeCloseTo(
      Array.from("Wide").reduce((sum, sign) => sum + regular.widthOf(sign, 10), 0),
      10,
    );
    expect(regular.widthOf("Wide", 20)).toBeCloseTo(2 * regular.widthOf("Wide", 10), 10);
    expect(bold.widthOf("Wide", 10)).toBeGreaterThan(regular.widthOf("Wide", 10));
    expect(regular.widthOf("", 10)).toBe(0);
  });

  it("is refused where it is no typeface", () => {
    expect(() => readTypeface(new Uint8Array(64))).toThrow("missing");
  });
});
