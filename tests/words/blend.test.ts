import { describe, expect, it } from "vitest";
import {
  baseSizeSum,
  bustSentence,
  bustSum,
  chanceNote,
  cupVersionsSentence,
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
    expect(chanceNote([{ name: "upper chest", readings: 1, spread: 12 }], "cm")).toBe(
      "The chance follows from how often you read your upper chest (read once): it is then right to within 12 mm about two times in three " +
        "(what one reading is good to is common practice, no source). More readings make it surer.",
    );
    expect(
      chanceNote(
        [
          { name: "bust", readings: 2, spread: 10.2 },
          { name: "upper chest", readings: 3, spread: 6.4 },
        ],
        "in",
      ),
    ).toContain(
      "your bust (read twice) and upper chest (read three times): they are then right to within 3/8 in and ¼ in about two times in three",
    );
  });
});

describe("what the bust needs", () => {
  const pick = {
    difference: 80,
    drafted: 900,
    residual: 30,
    asked: 30,
    leftAlone: false,
    chosenBy: "residual",
  } as const;
  it.each([
    [{ ...pick, alteration: 30 }, "Full bust adjustment of 30 mm altogether, 15 mm on the half front."],
    [
      { ...pick, residual: -26, asked: -26, alteration: -26 },
      "Small bust adjustment of 26 mm altogether, 13 mm on the half front.",
    ],
    [
      { ...pick, residual: 5, asked: 0, leftAlone: true, alteration: 0 },
      "5 mm more than drafted for: too little to alter, so leave it.",
    ],
    [
      { ...pick, residual: 0, asked: 0, leftAlone: true, alteration: 0 },
      "Drafted for a bust like yours: no bust alteration.",
    ],
    [
      { ...pick, residual: 30, asked: 0, alteration: 0, chosenBy: "wearer" as const },
      "30 mm more than drafted for, left as it is because you set no alteration.",
    ],
    [
      { ...pick, alteration: 14 },
      "Full bust adjustment of 14 mm altogether, 7 mm on the half front. 14 mm of 30 mm let in; the garment stays 16 mm tighter at the bust than asked. Look at a larger frame or another pattern.",
    ],
    [
      { ...pick, residual: -30, asked: -30, alteration: -14 },
      "Small bust adjustment of 14 mm altogether, 7 mm on the half front. 14 mm of 30 mm taken out; the garment stays 16 mm wider at the bust than asked.",
    ],
    [
      { ...pick, residual: -30, asked: -30, alteration: 0 },
      "No bust alteration can be made here. Nothing of 30 mm taken out; the garment stays 30 mm wider at the bust than asked.",
    ],
    [
      { ...pick, asked: 90, alteration: 0, chosenBy: "wearer" as const },
      "The full bust adjustment of 90 mm that you set cannot be made. Nothing of 90 mm let in; the garment stays 90 mm tighter at the bust than asked. Look at a larger frame or another pattern.",
    ],
  ])("says it of %j", (bust, words) => {
    expect(bustSentence(bust, "cm")).toBe(words);
  });
});

describe("the sums", () => {
  const margin = { margin: 5, runnerUp: null, spread: 12, probability: 0.3, borderline: true };
  const baseSize = {
    ...margin,
    label: "12",
    index: 3,
    chosenBy: "upperChest",
    found: 3,
    byBust: false,
    lookedUp: 853,
    chartValue: 830,
    from: 810,
    to: 850,
    beyond: 0,
  } as const;

  it("of the frame says why it was taken though the upper chest lies nearer another's", () => {
    expect(baseSizeSum(baseSize, 50, "cm")).toContainEqual({
      words: "Taken though yours lies outside, for less to alter at the bust",
      figure: "3 mm",
    });
    expect(
      baseSizeSum({ ...baseSize, lookedUp: 849 }, 50, "cm")
        .map(({ words }) => words)
        .join(),
    ).not.toContain("outside");
  });

  it("of the bust holds it against what the garment is drafted for, and tells what could be made", () => {
    const cup = { ...margin, label: "D", chosenBy: "difference", difference: 130, drafted: 100 } as const;
    const bust = {
      difference: 130,
      drafted: 930,
      residual: 30,
      asked: 30,
      alteration: 14,
      leftAlone: false,
      chosenBy: "residual",
    } as const;
    expect(bustSum({ baseSize, cup, bust, alternatives: [] }, 960, "cm")).toEqual([
      { words: "Your bust", figure: "96.0 cm" },
      { words: "less the bust that size 12 with cup D is drafted for", figure: "− 93.0 cm" },
      { words: "What is over", figure: "+30 mm" },
      { words: "To be altered", figure: "+30 mm" },
      { words: "What can be made of it", figure: "+14 mm", total: true },
    ]);
  });

  it("tell what a difference is and what the cups are drawn for", () => {
    expect(
      cupVersionsSentence(
        [
          { label: "B", difference: 50 },
          { label: "C", difference: 75 },
        ],
        "cm",
      ),
    ).toBe(
      "That is how far your bust stands out. The pattern’s cups are drawn for bodies like that: B for 5.0 cm and C for 7.5 cm.",
    );
  });
});
