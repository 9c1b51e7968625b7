import { describe, expect, it } from "vitest";
import { STANDARD_CHARTS } from "../../src/core/chart/standardCharts";
import { standardTitle, standardWords } from "../../src/words/standardCharts";

describe.each(STANDARD_CHARTS)("$name in words", ({ name }) => {
  it.each(["cm", "in"] as const)("says in %s that it is from memory, or which of it is, and what it is not", (unit) => {
    const words = standardWords(name, unit);
    expect(words).toContain(standardTitle(name));
    expect(words.toLowerCase()).toContain("from memory");
    expect(words).toContain("no measure of what a body should be");
  });
});

// 131 cm is 51.57 in; an inch is 2.54 cm.
it("a standard's own lengths are told in the wearer's unit", () => {
  expect(standardWords("en13402", "cm")).toContain("up to 131.0 cm were read");
  expect(standardWords("en13402", "in")).toContain("up to 51 5/8 in were read");
  expect(standardWords("ps42", "cm")).toContain("may be 2.5 cm less");
  expect(standardWords("ps42", "in")).toContain("may be 1 in less");
});
