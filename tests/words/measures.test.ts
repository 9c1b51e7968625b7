import { describe, expect, it } from "vitest";
import { CROSS_CHECKS, measureNotes } from "../../src/core/measures/crossChecks";
import { MEASURE_NAMES } from "../../src/core/measures/measure";
import { MEASURE_RANGES } from "../../src/core/measures/registry";
import { measureNoteSentence, measureRefusal, measureWords } from "../../src/words/measures";

/** Never said of a body. */
const UNKIND = /\b(?:fat|thin|big|small person|abnormal|wrong body|flaw|problem|should lose|ideal|normal)\b/i;

describe("measureWords", () => {
  it("gives every measure its own name and says where the tape goes", () => {
    const words = MEASURE_NAMES.map(measureWords);
    expect(new Set(words.map(({ name }) => name)).size).toBe(MEASURE_NAMES.length);
    expect(new Set(words.map(({ where }) => where)).size).toBe(MEASURE_NAMES.length);
    for (const { where } of words) expect(where).toMatch(/^[A-Z].{25,}\.$/);
  });
});

describe("measureRefusal", () => {
  it("is silent about what can be", () => {
    for (const name of MEASURE_NAMES) expect(measureRefusal(name, MEASURE_RANGES[name].usualLeast, "cm")).toBeNull();
  });

  it("asks about inches typed as centimetres", () => {
    expect(measureRefusal("bustGirth", 340, "cm")).toBe(
      "Bust girth is taken from 55.0 cm to 200.0 cm, and this says 34.0 cm. Are these inches (34 in is 86.4 cm)?",
    );
  });

  it("asks about centimetres typed as inches, in inches", () => {
    // 88 in = 2235.2 mm; 88 cm = 34.65 in, to 1/8 in: 34 5/8.
    expect(measureRefusal("bustGirth", 2235.2, "in")).toBe(
      "Bust girth is taken from 21 5/8 in to 78 ¾ in, and this says 88 in. Are these centimetres (88 cm is 34 5/8 in)?",
    );
  });

  it("asks about half a girth", () => {
    expect(measureRefusal("hipGirth", 490, "in")).toContain("Is it half of the measure (the whole would be 38 5/8 in)?");
  });

  it("is without advice where nothing explains the value", () => {
    expect(measureRefusal("bustGirth", 4900, "cm")).toBe("Bust girth is taken from 55.0 cm to 200.0 cm, and this says 490.0 cm.");
  });
});

describe("measureNoteSentence", () => {
  it("has a kind sentence with both figures for every check on either bound", () => {
    for (const { code, involves, least, most } of CROSS_CHECKS) {
      const [held, other] = involves;
      const { usualLeast, usualMost } = MEASURE_RANGES[other];
      const against = (usualLeast + usualMost) / 2;
      for (const [bound, past] of [
        [least, -1],
        [most, 1],
      ] as const) {
        if (bound === null) continue;
        const value = bound.share * against + bound.plus + past;
        const note = measureNotes({ [held]: value, [other]: against }).find((one) => one.code === code);
        if (note === undefined) throw new Error(`${code} did not fail`);
        const sentence = measureNoteSentence(note, "cm");
        expect(sentence).toContain(measureWords(held).short);
        expect(sentence).toContain(measureWords(other).short);
        expect(sentence).toMatch(/^The .*[.?]$/);
        expect(sentence).not.toMatch(UNKIND);
      }
    }
  });

  it("lets an unusual value stand", () => {
    const [note] = measureNotes({ shoulderLength: 200 });
    if (note === undefined) throw new Error("no note");
    expect(measureNoteSentence(note, "cm")).toBe("20.0 cm is longer than most. If you have measured it twice, keep it.");
  });
});
