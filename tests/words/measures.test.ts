import { describe, expect, it } from "vitest";
import { MEASURE_NAMES } from "../../src/core/measures/measure";
import { MEASURE_RANGES } from "../../src/core/measures/registry";
import { measureRefusal, measureWords } from "../../src/words/measures";

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
    expect(measureRefusal("hipGirth", 490, "in")).toContain(
      "Is it half of the measure (the whole would be 38 5/8 in)?",
    );
  });

  it("is without advice where nothing explains the value", () => {
    expect(measureRefusal("bustGirth", 4900, "cm")).toBe(
      "Bust girth is taken from 55.0 cm to 200.0 cm, and this says 490.0 cm.",
    );
  });
});
