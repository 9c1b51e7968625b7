import { describe, expect, it } from "vitest";
import {
  besideRankSentence,
  bustSentence,
  chanceNote,
  marginSentence,
  offsetWords,
  shareWords,
} from "../../src/words/blend";

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
    const pick = { spread: 10, margin: 4, runnerUp: "14", probability: 0.34, borderline: true };
    expect(marginSentence(pick, 0.34, "cm")).toBe(
      "A tape out by 4 mm would make it 14; the chance of 14 is about 35 of 100.",
    );
    expect(marginSentence(pick, 0.001, "in")).toBe(
      "A tape out by 3/16 in would make it 14; the chance of 14 is fewer than 5 of 100.",
    );
  });

  it("says nothing where there is nothing else to pick", () => {
    expect(
      marginSentence({ spread: 0, margin: Infinity, runnerUp: null, probability: 0, borderline: false }, 0, "cm"),
    ).toBeNull();
  });

  it("says how well the girths are known, and by how many readings", () => {
    expect(chanceNote([{ name: "upper chest", readings: 1 }], 12, "cm")).toBe(
      "The chance follows from how often you read your upper chest (read once): it is then right to within 12 mm about two times in three " +
        "(what one reading is good to is common practice, no source). More readings make it surer.",
    );
    expect(
      chanceNote(
        [
          { name: "bust", readings: 2 },
          { name: "upper chest", readings: 3 },
        ],
        10.2,
        "in",
      ),
    ).toContain(
      "your bust (read twice) and upper chest (read three times): their difference is then right to within 3/8 in about two times in three",
    );
  });
});

describe("what the bust needs", () => {
  const pick = { difference: 80, residual: 30, leftAlone: false, chosenBy: "residual" } as const;
  it.each([
    [{ ...pick, alteration: 30 }, "Full bust adjustment of 30 mm altogether, 15 mm on the half front."],
    [{ ...pick, residual: -26, alteration: -26 }, "Small bust adjustment of 26 mm altogether, 13 mm on the half front."],
    [
      { ...pick, residual: 5, leftAlone: true, alteration: 0 },
      "5 mm more than drafted for: too little to alter, so leave it.",
    ],
    [{ ...pick, residual: 0, leftAlone: true, alteration: 0 }, "Drafted for a bust like yours: no bust alteration."],
    [
      { ...pick, residual: 30, alteration: 0, chosenBy: "wearer" as const },
      "30 mm more than drafted for, left as it is because you set no alteration.",
    ],
  ])("says it of %j", (bust, words) => {
    expect(bustSentence(bust, "cm")).toBe(words);
  });
});

describe("why the planner did not take the first of the list", () => {
  const way = {
    baseSize: "12",
    cup: "C",
    residual: 5,
    baseSizeMisfit: 4,
    waistMove: 20,
    hipMove: 20,
    alterations: 2,
    largestMove: 5,
    cost: 10,
    picked: false,
  };

  it("says the rule it goes by, and what the first has for it", () => {
    const pick = { ...way, baseSize: "14", cup: "B", residual: 20, baseSizeMisfit: -18, waistMove: 60, picked: true };
    expect(besideRankSentence([way, pick], false)).toBe(
      "The planner picks the frame by the upper chest alone, then the cup by how far the bust stands out beyond it, and so took size 14, cup B. " +
        "With everything weighed together, as in this list, size 12, cup C disturbs less in all: it needs no bust alteration, its frame lies nearer " +
        "your upper chest and its side seams move less. Either can be cut: take it if you would rather.",
    );
    expect(besideRankSentence([way, { ...way, cup: null, waistMove: 10, picked: true }], true)).toBe(
      "The planner picks the frame by the bust alone, and so took size 12. With everything weighed together, as in this list, size 12, cup C " +
        "disturbs less in all. Either can be cut: take it if you would rather.",
    );
  });

  it("says nothing where it did", () => {
    expect(besideRankSentence([{ ...way, picked: true }, way], false)).toBeNull();
  });
});
