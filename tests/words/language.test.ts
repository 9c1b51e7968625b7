/**
 * What English as it is written in Britain has, by the rules of CLDR for en-GB: no comma before the last "and" or "or", one
 * form for 1 and another for all else, the day before the month. Written down by hand, not asked of the platform.
 */
import { describe, expect, it } from "vitest";
import { dayWords } from "../../src/words/terms/days";
import {
  counted,
  dateWords,
  fixedDecimals,
  listWords,
  manyWords,
  orWords,
  percentWords,
  plural,
  upToDecimals,
} from "../../src/words/terms/language";
import { formatFine, formatLength, formatLengthEntry, formatPart } from "../../src/words/terms/length";

describe("a list", () => {
  it.each([
    [[], "", ""],
    [["front"], "front", "front"],
    [["front", "back"], "front and back", "front or back"],
    [["front", "back", "cup"], "front, back and cup", "front, back or cup"],
    [["front", "back", "cup", "band"], "front, back, cup and band", "front, back, cup or band"],
    [["salt and pepper", "back"], "salt and pepper and back", "salt and pepper or back"],
  ])("of %j", (items, and, or) => {
    expect(listWords(items)).toBe(and);
    expect(orWords(items)).toBe(or);
  });
});

describe("a plural", () => {
  it.each([
    [0, "pieces"],
    [1, "piece"],
    [2, "pieces"],
    [11, "pieces"],
    [21, "pieces"],
    [101, "pieces"],
    [1.5, "pieces"],
  ])("of %d", (count, form) => {
    expect(plural(count, { one: "piece", other: "pieces" })).toBe(form);
    expect(counted(count, { one: "piece", other: "pieces" })).toBe(`${count} ${form}`);
  });

  it("falls back on the form that every language has", () => {
    expect(plural(1, { other: "sheep" })).toBe("sheep");
  });
});

describe("a number", () => {
  it.each([
    [16, 1, "16.0", "16"],
    [2.5, 1, "2.5", "2.5"],
    [2.25, 2, "2.25", "2.25"],
    [0, 2, "0.00", "0"],
    [1234.56, 1, "1234.6", "1234.6"],
    // Its binary fraction lies just below the half, whatever it is written as.
    [1.005, 2, "1.00", "1"],
  ])("%d to %d decimals", (value, digits, fixed, shortest) => {
    expect(fixedDecimals(value, digits)).toBe(fixed);
    expect(upToDecimals(value, digits)).toBe(shortest);
  });

  it("that is large is read in groups, but a length is not: it is typed as it is printed", () => {
    expect([999, 1000, 1_234_567].map(manyWords)).toEqual(["999", "1,000", "1,234,567"]);
    expect(formatLength(12_345, "cm")).toBe("1234.5 cm");
    expect(formatLengthEntry(12_345.6, "cm")).toBe("1234.56");
  });

  it("of a hundred stands before its sign as a length before its unit", () => {
    expect([0, 0.334, 1].map((share) => percentWords(share))).toEqual(["0 %", "33 %", "100 %"]);
    expect(percentWords(0.999, Math.floor)).toBe("99 %");
  });

  it("below nothing has a true minus, but in a field the one of the keyboard", () => {
    expect([formatFine(-0.06, "cm"), formatFine(-0.001, "cm"), formatPart(-2.5, "cm")]).toEqual([
      "−0.06 mm",
      "0 mm",
      "−2.5 mm",
    ]);
    expect(formatLengthEntry(-12, "cm")).toBe("-1.2");
  });
});

describe("a day", () => {
  it.each([
    ["2026-11-25", "25 November 2026", "25 November"],
    ["2026-01-01", "1 January 2026", "1 January"],
    ["2024-02-29", "29 February 2024", "29 February"],
    // No such day: told as it stands.
    ["2026-02-31", "2026-02-31", "2026-02-31"],
    ["2026-13-01", "2026-13-01", "2026-13-01"],
    ["some day", "some day", "some day"],
    ["2026", "2026", "2026"],
  ])("%s", (day, withYear, alone) => {
    expect(dayWords(day)).toBe(withYear);
    expect(dayWords(day, "without year")).toBe(alone);
  });

  it("of a document is the same whatever the clock of the place", () => {
    expect(dateWords(new Date("2026-11-25T00:00:00Z"))).toBe("25 November 2026");
    expect(dateWords(new Date("2026-11-25T23:59:59Z"))).toBe("25 November 2026");
  });
});
