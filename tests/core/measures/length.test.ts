import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LONGEST, parseAmount, parseLength, type TypedUnit } from "../../../src/core/measures/length";

// 1 in is 25.4 mm exactly: 34 1/2 in = 876.3 mm.
const INCHES: readonly (readonly [string, number])[] = [
  ["34 1/2", 876.3],
  ["34½", 876.3],
  ["34 ½", 876.3],
  ["34.5", 876.3],
  ["34,5", 876.3],
  ["34-1/2", 876.3],
  ["34 - 1/2", 876.3],
  ["34–½", 876.3],
  ["34 1 / 2", 876.3],
  ["34 1⁄2", 876.3],
  ['34 1/2"', 876.3],
  ["34½”", 876.3],
  ["34½″", 876.3],
  ["34½''", 876.3],
  ["34½’’", 876.3],
  ["34½ in", 876.3],
  ["34½in.", 876.3],
  ["34 1/2 inches", 876.3],
  ["34.5 INCH", 876.3],
  ["  34\u00a01/2\t", 876.3],
  ["+34.5", 876.3],
  ["34", 863.6],
  ["34.", 863.6],
  [".5", 12.7],
  ["1/2", 12.7],
  ["½", 12.7],
  ["34 ⅛", 866.8],
  ["34 ¼", 870],
  ["34 ⅓", 872.1],
  ["34 ⅜", 873.1],
  ["34 ⅝", 879.5],
  ["34 ⅔", 880.5],
  ["34 ¾", 882.7],
  ["34 ⅞", 885.8],
  ["34 5/16", 871.5],
  ["34 0/8", 863.6],
  ["0", 0],
];

const CENTIMETRES: readonly (readonly [string, number])[] = [
  ["87.6", 876],
  ["87,6", 876],
  ["87.6cm", 876],
  ["87,6 cm", 876],
  ["87.6 CM.", 876],
  ["876 mm", 876],
  ["876mm", 876],
  ["0.876 m", 876],
  ["87", 870],
  ["87 1/2", 875],
  ["87.64", 876.4],
  ["87.646", 876.5],
];

describe("parseLength", () => {
  it.each(INCHES)("reads %j as inches: %d mm", (text, mm) => {
    expect(parseLength(text, "in")).toEqual({ ok: true, value: mm });
  });

  it.each(CENTIMETRES)("reads %j beside centimetres: %d mm", (text, mm) => {
    expect(parseLength(text, "cm")).toEqual({ ok: true, value: mm });
  });

  it.each([
    ["34 1/2 in", "cm", 876.3],
    ['34½"', "cm", 876.3],
    ["87.6cm", "in", 876],
    ["876 mm", "in", 876],
  ] as const)("takes the unit in %j over the one of the field, %s", (text, unit, mm) => {
    expect(parseLength(text, unit)).toEqual({ ok: true, value: mm });
  });

  it.each([
    ["", "length/empty"],
    [" \u00a0\t", "length/empty"],
    ["abc", "length/not-a-length"],
    ["cm", "length/not-a-length"],
    ['"', "length/not-a-length"],
    [",", "length/not-a-length"],
    ["1e3", "length/not-a-length"],
    ["34 in 1/2", "length/not-a-length"],
    ["NaN", "length/not-a-length"],
    ["1/2/3", "length/ambiguous"],
    ["34,5,6", "length/ambiguous"],
    ["1,234.5", "length/ambiguous"],
    ["34 5", "length/ambiguous"],
    ["34.5 1/2", "length/ambiguous"],
    ["341/2", "length/ambiguous"],
    ["34 9/8", "length/ambiguous"],
    ["34 8/8", "length/ambiguous"],
    ["34½½", "length/ambiguous"],
    ["87 yd", "length/unknown-unit"],
    ["87 km", "length/unknown-unit"],
    ["34 constructor", "length/unknown-unit"],
    ["5'", "length/feet"],
    ["5′ 4″", "length/feet"],
    ["5'4\"", "length/feet"],
    ["5 ft", "length/feet"],
    ["5 feet 4", "length/feet"],
    ["1 foot", "length/feet"],
    ["-5", "length/negative"],
    ["−34½", "length/negative"],
    ["34 1/0", "length/no-denominator"],
    ["0/0", "length/no-denominator"],
    ["501", "length/absurd"],
    ["9".repeat(400), "length/absurd"],
  ])("does not read %j: %s", (text, code) => {
    const read = parseLength(text, "cm");
    expect(read).toMatchObject({ ok: false, failure: code === "length/empty" ? { code } : { code, text } });
  });

  it("says which unit it does not know, and what the most is", () => {
    expect(parseLength("87 yd", "cm")).toMatchObject({ failure: { unit: "yd" } });
    expect(parseLength("501", "cm")).toMatchObject({ failure: { most: LONGEST } });
    expect(parseLength("500", "cm")).toEqual({ ok: true, value: LONGEST });
  });

  it("takes a minus where the length is signed", () => {
    expect(parseLength("-1/2", "in", { signed: true })).toEqual({ ok: true, value: -12.7 });
    expect(parseLength("−0", "cm", { signed: true })).toEqual({ ok: true, value: 0 });
    expect(parseLength("-501", "cm", { signed: true })).toMatchObject({ failure: { code: "length/absurd" } });
  });

  it("rounds quarters of an inch, which fall half way between two tenths, upwards every time", () => {
    for (let whole = 0; whole < 100; whole += 1) {
      // 25.4 mm is 254 tenths; a quarter of it 63.5.
      expect(parseLength(`${whole} 1/4`, "in")).toEqual({ ok: true, value: (whole * 254 + 64) / 10 });
      expect(parseLength(`${whole} 3/4`, "in")).toEqual({ ok: true, value: (whole * 254 + 191) / 10 });
    }
  });

  it("gives whole tenths of a millimetre, within half of one of what was written", () => {
    fc.assert(
      fc.property(fc.nat(140), fc.nat(15), fc.constantFrom(2, 4, 8, 16), (whole, part, denominator) => {
        const numerator = part % denominator;
        const read = parseLength(`${whole} ${numerator}/${denominator}`, "in");
        const mm = read.ok ? read.value : Number.NaN;
        expect(Math.abs(mm - (whole + numerator / denominator) * 25.4)).toBeLessThanOrEqual(0.05 + 1e-9);
        expect(Math.round(mm * 10) / 10).toBe(mm);
      }),
    );
  });

  it("never throws, and gives a length within bounds or a reason, whatever the text", () => {
    const piece = fc.oneof(fc.constantFrom(..."0123456789.,/-−½⅝ \"'′ cminft".split("")), fc.string({ maxLength: 3 }));
    const typed = fc.array(piece, { maxLength: 10 }).map((pieces) => pieces.join(""));
    fc.assert(
      fc.property(typed, fc.constantFrom<TypedUnit>("cm", "in"), fc.boolean(), (text, unit, signed) => {
        const read = parseLength(text, unit, { signed });
        const least = signed ? -LONGEST : 0;
        expect(read.ok ? read.value >= least && read.value <= LONGEST : read.failure.code.startsWith("length/")).toBe(
          true,
        );
      }),
      { numRuns: 500 },
    );
  });
});

describe("feet and inches, where they are taken", () => {
  // 1 ft is 12 in of 25.4 mm: 5 ft 4 in = 64 in = 1625.6 mm; 64 1/2 in = 1638.3 mm.
  it.each([
    ["5 ft 4", 1625.6],
    ["5ft4in", 1625.6],
    ["5 ft. 4 in.", 1625.6],
    ["5 feet 4 inches", 1625.6],
    ["5'4\"", 1625.6],
    ["5'4", 1625.6],
    ["5’ 4”", 1625.6],
    ["5'-4\"", 1625.6],
    ["5′ 4½″", 1638.3],
    ["5' 4 1/2''", 1638.3],
    ["5 ft 4.5", 1638.3],
    ["5 ft 0", 1524],
    ["5'", 1524],
    ["5 foot", 1524],
    ["5 1/2 ft", 1676.4],
    ["5.5'", 1676.4],
    ["5'11 7/8", 1825.6],
  ])("reads %j as %d mm, beside either unit", (text, mm) => {
    expect(parseLength(text, "in", { feet: true })).toEqual({ ok: true, value: mm });
    expect(parseLength(text, "cm", { feet: true })).toEqual({ ok: true, value: mm });
  });

  it.each([
    ["64", "in", 1625.6],
    ["64 1/2 in", "in", 1638.3],
    ["162.5", "cm", 1625],
    ["5''", "in", 127],
  ] as const)("still reads %j beside %s as %d mm", (text, unit, mm) => {
    expect(parseLength(text, unit, { feet: true })).toEqual({ ok: true, value: mm });
  });

  it.each([
    ["5'14", "length/ambiguous"],
    ["5 ft 12", "length/ambiguous"],
    ["5 1/2 ft 4", "length/ambiguous"],
    ["5 ft 4 5", "length/ambiguous"],
    ["-5 ft", "length/ambiguous"],
    ["5 4", "length/ambiguous"],
    ["5'4'", "length/not-a-length"],
    ["5 ft four", "length/not-a-length"],
    ["5 ft 4 cm", "length/not-a-length"],
    ["5 ft 1/0", "length/no-denominator"],
    ["17 ft", "length/absurd"],
  ])("does not read %j: %s", (text, code) => {
    expect(parseLength(text, "in", { feet: true })).toMatchObject({ ok: false, failure: { code } });
  });

  it("are refused where they are not, however they are written", () => {
    for (const text of ["5'", "5ft4in", "5 feet"])
      expect(parseLength(text, "in")).toMatchObject({ failure: { code: "length/feet", text } });
  });

  it("never throws, whatever the text", () => {
    const piece = fc.oneof(
      fc.constantFrom(..."0123456789.,/-−½ \"'′ ft in foot".split("")),
      fc.constantFrom("ft", "in", "feet"),
    );
    fc.assert(
      fc.property(
        fc.array(piece, { maxLength: 10 }).map((pieces) => pieces.join("")),
        (text) => {
          const read = parseLength(text, "in", { feet: true });
          expect(read.ok ? read.value >= 0 && read.value <= LONGEST : read.failure.code.startsWith("length/")).toBe(
            true,
          );
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe("parseAmount", () => {
  it.each([
    ["8", "cm", 8],
    ["8,5", "cm", 8.5],
    ["−8", "cm", -8],
    ["⅔", "cm", 0.7],
    ["8 mm", "cm", 8],
    ["0.8 cm", "cm", 8],
    ["1/2 in", "cm", 12.7],
    ['½"', "cm", 12.7],
    ["5/16", "in", 7.9],
    ["-⅝", "in", -15.9],
    ["8 mm", "in", 8],
    ["", "cm", 0],
    ["  ", "in", 0],
  ] as const)("reads %j beside %s as %d mm", (text, unit, mm) => {
    expect(parseAmount(text, unit)).toEqual({ ok: true, value: mm });
  });

  it("fails as a length does, with what was typed", () => {
    expect(parseAmount("8 yd", "cm")).toEqual({
      ok: false,
      failure: { code: "length/unknown-unit", text: "8 yd", unit: "yd" },
    });
    expect(parseAmount("1/2/3", "cm")).toMatchObject({ failure: { code: "length/ambiguous", text: "1/2/3" } });
  });
});
