import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseAmount, parseLength, type LengthFailure, type TypedUnit } from "../../src/core/measures/length";
import {
  formatAlong,
  formatAmount,
  formatLength,
  formatLengthEntry,
  formatRound,
  formatSigned,
  inchParts,
  lengthFailureSentence,
} from "../../src/words/terms/length";

const unit = fc.constantFrom<TypedUnit>("cm", "in");
/** mm to 0.1, as entries are kept. */
const kept = fc.integer({ min: 0, max: 49_000 }).map((tenths) => tenths / 10);
const keptSigned = fc.integer({ min: -5000, max: 5000 }).map((tenths) => tenths / 10 + 0);

const valueOf = (read: ReturnType<typeof parseLength>): number => {
  if (!read.ok) throw new Error(read.failure.code);
  return read.value;
};

/** Rounded reading of 1/8 in, 1/16 in and 1 mm: half a step, and half of the 0.1 mm that reading rounds to. */
const half = (step: number): number => step / 2 + 0.05 + 1e-9;

describe("formatLength", () => {
  it.each([
    [876, "cm", "87.6 cm"],
    [876.4, "cm", "87.6 cm"],
    [870, "cm", "87.0 cm"],
    [0, "cm", "0.0 cm"],
    [-8, "cm", "−0.8 cm"],
    [-0.4, "cm", "0.0 cm"],
    [876.3, "in", "34 ½ in"],
    [869.9, "in", "34 ¼ in"],
    [882.7, "in", "34 ¾ in"],
    [879.5, "in", "34 5/8 in"],
    [863.6, "in", "34 in"],
    [863, "in", "34 in"],
    [12.7, "in", "½ in"],
    [0, "in", "0 in"],
    [-12.7, "in", "−½ in"],
    [-0.4, "in", "0 in"],
  ] as const)("writes %d mm in %s as %j", (mm, as, text) => {
    expect(formatLength(mm, as)).toBe(text);
  });

  it("reads back within half a step", () => {
    fc.assert(
      fc.property(kept, unit, (mm, as) => {
        const read = valueOf(parseLength(formatLength(mm, as), as));
        expect(Math.abs(read - mm)).toBeLessThanOrEqual(half(as === "cm" ? 1 : 25.4 / 8));
      }),
    );
  });
});

// 129 mm are 5.079 in, nearest to 5 1/16 where 5 1/8 would be nearest of the eighths; 411.2 mm are 16.189, nearest to 16 3/16.
describe("formatAlong", () => {
  it.each([
    [129, "in", "5 1/16 in"],
    [411.2, "in", "16 3/16 in"],
    [129, "cm", "12.9 cm"],
    [411.2, "cm", "41.1 cm"],
  ] as const)("writes %d mm in %s as %j", (mm, as, text) => {
    expect(formatAlong(mm, as)).toBe(text);
  });
});

// What the trade says: 15 mm is 5/8 in, 20 mm is 3/4, 25 mm an inch; 2 mm is nearest to 1/16, 10 mm to 3/8.
describe("formatRound", () => {
  it.each([
    [20, "cm", "20 mm"],
    [2, "cm", "2 mm"],
    [15, "in", "5/8 in"],
    [20, "in", "¾ in"],
    [25, "in", "1 in"],
    [40, "in", "1 5/8 in"],
    [10, "in", "3/8 in"],
    [2, "in", "1/16 in"],
    [0, "in", "0 in"],
  ] as const)("writes %d mm in %s as %j", (mm, as, text) => {
    expect(formatRound(mm, as)).toBe(text);
  });
});

describe("formatAmount", () => {
  it.each([
    [8, "cm", "8 mm"],
    [-8, "cm", "−8 mm"],
    [-0.3, "cm", "0 mm"],
    [7.9, "in", "5/16 in"],
    [-28.6, "in", "−1 1/8 in"],
    [25.3, "in", "1 in"],
  ] as const)("writes %d mm in %s as %j", (mm, as, text) => {
    expect(formatAmount(mm, as)).toBe(text);
  });

  it("reads back within half a step, its sign kept", () => {
    fc.assert(
      fc.property(keptSigned, unit, (mm, as) => {
        const read = valueOf(parseAmount(formatAmount(mm, as), as));
        expect(Math.abs(read - mm)).toBeLessThanOrEqual(half(as === "cm" ? 1 : 25.4 / 16));
      }),
    );
  });
});

describe("formatSigned", () => {
  it.each([
    [8, "cm", "+8 mm"],
    [-8, "cm", "−8 mm"],
    [0.2, "cm", "0 mm"],
    [7.9, "in", "+5/16 in"],
    [-7.9, "in", "−5/16 in"],
    [0, "in", "0 in"],
  ] as const)("writes %d mm in %s as %j", (mm, as, text) => {
    expect(formatSigned(mm, as)).toBe(text);
  });
});

describe("formatLengthEntry", () => {
  it.each([
    [876, "cm", "87.6"],
    [876.4, "cm", "87.64"],
    [870, "cm", "87"],
    [876.3, "in", "34 ½"],
    [871.5, "in", "34 5/16"],
    [872, "in", "34.331"],
  ] as const)("shows %d mm in %s as %j", (mm, as, text) => {
    expect(formatLengthEntry(mm, as)).toBe(text);
  });

  it("loses nothing: it reads back as the very same length", () => {
    fc.assert(
      fc.property(keptSigned, unit, (mm, as) => {
        expect(valueOf(parseLength(formatLengthEntry(mm, as), as, { signed: true }))).toBe(mm);
      }),
      { numRuns: 1000 },
    );
  });
});

describe("inchParts", () => {
  it("takes a length apart for fractions set by hand", () => {
    expect(inchParts(879.5)).toEqual({ sign: "", whole: 34, fraction: { numerator: 5, denominator: 8 }, unit: "in" });
    expect(inchParts(876.3)).toEqual({ sign: "", whole: 34, fraction: { numerator: 1, denominator: 2 }, unit: "in" });
    expect(inchParts(-7.9, 16)).toEqual({
      sign: "−",
      whole: 0,
      fraction: { numerator: 5, denominator: 16 },
      unit: "in",
    });
    expect(inchParts(25.3)).toEqual({ sign: "", whole: 1, fraction: null, unit: "in" });
    expect(inchParts(-0.2)).toEqual({ sign: "", whole: 0, fraction: null, unit: "in" });
  });

  it("gives a proper fraction in its lowest terms, within half a step", () => {
    fc.assert(
      fc.property(kept, fc.constantFrom<8 | 16>(8, 16), (mm, denominator) => {
        const { whole, fraction } = inchParts(mm, denominator);
        // No fraction stands for a proper one in its lowest terms here, and adds nothing.
        const { numerator: top, denominator: bottom } = fraction ?? { numerator: 1, denominator: 2 };
        expect([top % 2, top < bottom, denominator % bottom]).toEqual([1, true, 0]);
        const inches = whole + (fraction === null ? 0 : top / bottom);
        expect(Math.abs(inches * 25.4 - mm)).toBeLessThanOrEqual(25.4 / denominator / 2 + 1e-9);
      }),
    );
  });
});

describe("lengthFailureSentence", () => {
  const failures: readonly LengthFailure[] = ["", "abc", "1/2/3", "8 yd", "5'", "-5", "1/0", "900"].map((text) => {
    const read = parseLength(text, "cm");
    if (read.ok) throw new Error(`${text} reads as a length`);
    return read.failure;
  });

  it("has a sentence of its own for every failure, with what was typed", () => {
    const sentences = failures.map((failure) => lengthFailureSentence(failure, "cm"));
    expect(new Set(sentences).size).toBe(failures.length);
    for (const sentence of sentences) expect(sentence).toMatch(/^[A-Z“].*\.$/);
    expect(sentences[1]).toBe("“abc” does not read as a length. Write it like 87.6.");
    expect(sentences[4]).toContain("“5'” is in feet");
  });

  it("gives an example in the unit of the field that would be read", () => {
    for (const as of ["cm", "in"] as const) {
      const example = /such as (.*)\.$/.exec(lengthFailureSentence({ code: "length/empty" }, as))?.[1] ?? "";
      expect(parseLength(example, as).ok).toBe(true);
    }
  });

  it("does not repeat a page that was pasted by mistake", () => {
    expect(lengthFailureSentence({ code: "length/not-a-length", text: "word ".repeat(500) }, "cm").length).toBeLessThan(
      100,
    );
  });
});
