import { describe, expect, it } from "vitest";
import { bustSentence, marginSentence, offsetWords, shareWords } from "../../src/words/blend";

describe("where a line runs", () => {
  it.each([
    [0.4, "40 % of the way from the 12 line to the 14 line"],
    [0, "on the 12 line"],
    [1, "on the 14 line"],
    [0.004, "on the 12 line"],
    [1.3, "30 % of a step beyond the 14 line"],
    [-0.25, "25 % of a step inside the 12 line"],
  ])("says a share of %d", (share, words) => {
    expect(shareWords(["12", "14"], share)).toBe(words);
  });

  it.each([
    [3, "cm", "3 mm outside the 12 line"],
    [-3, "cm", "3 mm inside the 12 line"],
    [6.35, "in", "¼ in outside the 12 line"],
  ] as const)("says an offset of %d mm in %s", (offset, unit, words) => {
    expect(offsetWords({ between: ["12", "14"], offset }, unit)).toBe(words);
  });
});

describe("how sure a pick is", () => {
  it("says what would change it and how likely that is", () => {
    const pick = { margin: 4, runnerUp: "14", probability: 0.34, borderline: true };
    expect(marginSentence(pick, "cm")).toBe("A tape out by 4 mm would make it 14; the chance of that is 34 %.");
  });

  it("says nothing where there is nothing else to pick", () => {
    expect(marginSentence({ margin: Infinity, runnerUp: null, probability: 0, borderline: false }, "cm")).toBeNull();
  });
});

describe("what the bust needs", () => {
  const pick = { difference: 80, residual: 30, leftAlone: false, chosenBy: "residual" } as const;
  it.each([
    [{ ...pick, alteration: 30 }, "Full bust adjustment of 30 mm in all, 15 mm on the half front."],
    [{ ...pick, residual: -26, alteration: -26 }, "Small bust adjustment of 26 mm in all, 13 mm on the half front."],
    [{ ...pick, residual: 5, leftAlone: true, alteration: 0 }, "5 mm more than drafted for: too little to alter, so leave it."],
    [{ ...pick, residual: 0, leftAlone: true, alteration: 0 }, "Drafted for a bust like yours: no bust alteration."],
    [{ ...pick, residual: 30, alteration: 0, chosenBy: "wearer" as const }, "30 mm more than drafted for, left as it is because you set no alteration."],
  ])("says it of %j", (bust, words) => {
    expect(bustSentence(bust, "cm")).toBe(words);
  });
});
