/** How sure the picks are, in words: rounded, of what, and with what can be done about it. */
import { describe, expect, it } from "vitest";
import type { HowSure } from "../../src/core/sureness/howSure";
import type { Way } from "../../src/core/sureness/ruleRegions";
import { bodyOf } from "../../src/core/measures/tape";
import { SURETY_WORDS } from "../../src/words/surety";
import {
  besideLikeliestSentence,
  bustDoneSentence,
  chestBaseSizeSentence,
  cupSentence,
  linesSentence,
  nextWords,
  ofHundred,
  runnerUpWords,
  sizeSentence,
  sureBars,
  sureSum,
  timesWords,
} from "../../src/words/sure";

const chances = (of: Readonly<Record<string, number>>) =>
  Object.entries(of).map(([label, probability]) => ({ label, probability }));

const way = (size: string, cup: string, probability: number): Way => ({ size, cup, bust: "nothing", probability });

const sure: HowSure = {
  ways: [way("12", "C", 0.6), way("12", "D", 0.25), way("14", "B", 0.15)],
  sizes: chances({ "12": 0.85, "14": 0.15 }),
  sizesGuessed: [],
  cups: chances({ C: 0.6, D: 0.25, B: 0.15 }),
  bust: { nothing: 0.95, full: 0.03, small: 0.02 },
  own: { baseSize: false, cup: false, bust: false },
  picked: { size: "12", cup: "C", bust: "nothing" },
  runnerUp: { size: "12", cup: "D", probability: 0.25 },
  cupsGuessed: false,
  lines: [],
  surety: { baseSize: null, cup: null, bust: null, waist: null, hip: null },
  doubted: [],
  girths: { bust: { value: 905, spread: 10 }, upperChest: { value: 832, spread: 12 }, estimate: null },
};

describe("a chance", () => {
  it.each([
    [0.001, "fewer than 5 of 100"],
    [0.024, "fewer than 5 of 100"],
    [0.03, "about 5 of 100"],
    [0.476, "about 50 of 100"],
    [0.94, "about 95 of 100"],
    [0.98, "more than 95 of 100"],
    [1, "more than 95 of 100"],
  ])("of %d is no finer than a twentieth", (chance, words) => {
    expect(ofHundred(chance)).toBe(words);
  });

  it("counts readings in words", () => {
    expect([1, 2, 3, 6].map(timesWords)).toEqual(["once", "twice", "three times", "6 times"]);
  });
});

describe("the size", () => {
  it.each([
    [{ "12": 0.94, "14": 0.06 }, "Size 12, nearly sure (about 95 of 100)."],
    [{ "12": 0.8, "14": 0.19 }, "Size 12, likely (about 80 of 100), else 14."],
    [{ "12": 0.52, "14": 0.48 }, "Size 12 (about 50 of 100), or 14 (50)."],
    [{ "12": 0.62, "14": 0.36 }, "Size 12 (about 60 of 100), or 14 (35)."],
  ])("of %j", (sizes, words) => {
    expect(sizeSentence({ ...sure, sizes: chances(sizes) })).toBe(words);
  });

  it("says where the chart may not reach", () => {
    const sizes = [
      { label: "24", probability: 0.78 },
      { label: null, probability: 0.22 },
    ];
    expect(sizeSentence({ ...sure, sizes, picked: { ...sure.picked, size: "24" } })).toBe(
      "Size 24 (about 80 of 100). That this chart does not reach you at all: about 20 of 100.",
    );
    const off = { size: null, cup: null, bust: "nothing" } as const;
    expect(sizeSentence({ ...sure, sizes: [{ label: null, probability: 1 }], picked: off })).toBe(
      "Size: not on this chart. That this chart does not reach you at all: more than 95 of 100.",
    );
  });
});

describe("the size without an upper chest", () => {
  /** In this order: of keys that are numbers the smallest would come first. */
  const inOrder = (...of: readonly (readonly [string, number])[]) =>
    of.map(([label, probability]) => ({ label, probability }));
  const byBust = {
    ...sure,
    sizes: inOrder(["14", 0.9], ["12", 0.1]),
    picked: { ...sure.picked, size: "14" },
    girths: { ...sure.girths, upperChest: null, estimate: { value: 862, spread: 25 } },
  };

  const alone = "By the bust alone, size 14, nearly sure (about 90 of 100).";

  it("is said to stand on the bust alone, and what the frame would then be", () => {
    const guessed = { ...byBust, sizesGuessed: inOrder(["14", 0.55], ["12", 0.38], ["16", 0.07]) };
    expect(sizeSentence(guessed)).toBe(alone);
    expect(chestBaseSizeSentence(guessed)).toBe(
      "The frame goes by the upper chest once that is taken. Guessed from your other measures it would be size 14 (about 55 of 100) or size 12 (40).",
    );
    expect(
      chestBaseSizeSentence({
        ...byBust,
        sizesGuessed: [
          { label: "24", probability: 0.7 },
          { label: null, probability: 0.3 },
        ],
      }),
    ).toContain("it would be size 24 (about 70 of 100) or none on this chart (30).");
  });

  it("is left at that where the guess says nearly surely the same, or there is none", () => {
    expect(chestBaseSizeSentence({ ...byBust, sizesGuessed: inOrder(["14", 0.93], ["12", 0.07]) })).toBeNull();
    expect(chestBaseSizeSentence(byBust)).toBeNull();
    expect(chestBaseSizeSentence(sure)).toBeNull();
  });
});

describe("the cup", () => {
  it("is the one that is cut first, even where another is likelier, and nothing else is ordered", () => {
    expect(cupSentence({ ...sure, cups: chances({ D: 0.5, C: 0.42, B: 0.08 }) })).toBe(
      "Cup C (about 40 of 100), or D (50).",
    );
    expect(cupSentence(sure)).toBe("Cup C (about 60 of 100), or D (25).");
  });

  it("of her own is told as hers", () => {
    expect(cupSentence({ ...sure, own: { ...sure.own, cup: true } })).toBe("Cup C: your own pick.");
    expect(sizeSentence({ ...sure, own: { ...sure.own, baseSize: true } })).toBe("Size 12: your own pick.");
  });

  it("without an upper chest is a guess, and the plan goes by none", () => {
    expect(cupSentence({ ...sure, cups: chances({ C: 0.55, D: 0.3, B: 0.15 }), cupsGuessed: true })).toBe(
      "Without an upper chest the cup can only be guessed from your other measures: cup C (about 55 of 100), D (30) or B (15). " +
        "The plan does not go by that: measure the upper chest.",
    );
  });

  it("is not spoken of where the pattern has no versions", () => {
    expect(cupSentence({ ...sure, cups: [] })).toBeNull();
  });
});

describe("the bust alteration", () => {
  it("is spoken of where there may be one", () => {
    expect(bustDoneSentence(sure)).toBeNull();
    expect(bustDoneSentence({ ...sure, bust: { nothing: 0.7, full: 0.3, small: 0 } })).toBe(
      "No bust alteration: about 70 of 100; a full bust adjustment 30.",
    );
    expect(
      bustDoneSentence({
        ...sure,
        picked: { ...sure.picked, bust: "small" },
        bust: { nothing: 0.01, full: 0, small: 0.99 },
      }),
    ).toBe("A small bust adjustment: more than 95 of 100.");
    expect(
      bustDoneSentence({
        ...sure,
        picked: { size: null, cup: null, bust: "nothing" },
        bust: { nothing: 0.6, full: 0.4, small: 0 },
      }),
    ).toBeNull();
    expect(
      bustDoneSentence({ ...sure, own: { ...sure.own, bust: true }, bust: { nothing: 0.5, full: 0.5, small: 0 } }),
    ).toBeNull();
  });
});

describe("the way that is cut", () => {
  it("is explained where another is likelier over all that the girths may be, and only there", () => {
    expect(besideLikeliestSentence(sure)).toBeNull();
    const ways = [way("12", "D", 0.5), way("12", "C", 0.4), way("14", "B", 0.1)];
    expect(besideLikeliestSentence({ ...sure, ways })).toBe(
      "As your girths were read, size 12, cup C with no bust alteration asks least of the cloth, so it is cut; over all that they may truly be, " +
        "size 12, cup D with no bust alteration comes up more often (50 of 100).",
    );
    // As likely as it can be told.
    expect(besideLikeliestSentence({ ...sure, ways: [way("12", "D", 0.41), way("12", "C", 0.4)] })).toBeNull();
  });

  it("is explained where it is the likeliest whole, and yet another cup, size or bust is likelier by itself", () => {
    // By the size alone 14 is likelier: 30 and 25 against 45.
    const ways = [way("12", "C", 0.45), way("14", "B", 0.3), way("14", "C", 0.25)];
    const bySize = { ...sure, ways, sizes: chances({ "14": 0.55, "12": 0.45 }), cups: chances({ C: 0.7, B: 0.3 }) };
    expect(besideLikeliestSentence(bySize)).toBe(
      "Size 14 comes up more often over all that your girths may be; as they were read, " +
        "size 12, cup C with no bust alteration asks least of the cloth, so it is cut.",
    );
    expect(besideLikeliestSentence({ ...bySize, own: { ...sure.own, baseSize: true } })).toBeNull();
    const cups = { ...sure, cups: chances({ B: 0.4, C: 0.35, D: 0.25 }) };
    expect(besideLikeliestSentence(cups)).toMatch(/^Cup B comes up more often/);
    // As likely as it can be told: 38 and 42 are both 40 of 100.
    expect(besideLikeliestSentence({ ...sure, cups: chances({ B: 0.42, C: 0.38, D: 0.2 }) })).toBeNull();
    expect(besideLikeliestSentence({ ...cups, cupsGuessed: true })).toBeNull();
    expect(besideLikeliestSentence({ ...sure, bust: { nothing: 0.4, full: 0.5, small: 0.1 } })).toMatch(
      /^A full bust adjustment comes up more often/,
    );
  });

  it("has another beside it, to be taken at a tap", () => {
    expect(runnerUpWords(sure)).toBe("Size 12, cup D instead: about 25 of 100");
    expect(runnerUpWords({ ...sure, runnerUp: { size: "14", cup: null, probability: 0.4 } })).toBe(
      "Size 14 instead: about 40 of 100",
    );
    expect(runnerUpWords({ ...sure, runnerUp: { size: "14", cup: "B", probability: 0.01 } })).toBeNull();
    expect(runnerUpWords({ ...sure, runnerUp: null })).toBeNull();
  });

  it("has one word for how sure it is", () => {
    expect(SURETY_WORDS).toEqual({ sure: "sure", fair: "fairly sure", open: "open", doubted: "doubted" });
  });
});

describe("the lines", () => {
  const line = (level: "waist" | "hip", side: number) => ({ level, spread: 10, from: 1, to: 2, side });

  it("say how far either way they may lie, in the wearer's unit", () => {
    expect(linesSentence([], "cm")).toBeNull();
    expect(linesSentence([line("waist", 4.1)], "cm")).toBe(
      "On this frame the true waist line lies within 4 mm either way of where your measures put it, at each side seam, nine times in ten.",
    );
    expect(linesSentence([line("waist", 4.1), line("hip", 4.1)], "in")).toBe(
      "On this frame the true waist and hip lines lie within 3/16 in either way of where your measures put them, at each side seam, nine times in ten.",
    );
    expect(linesSentence([line("waist", 4.1), line("hip", 2.9)], "cm")).toBe(
      "On this frame the true waist line lies within 4 mm either way of where your measures put it, the hip line within 3 mm, at each side seam, nine times in ten.",
    );
  });
});

describe("what to measure next", () => {
  it("says how often, what it settles, and of what the chances are", () => {
    expect(
      nextWords(
        { settles: "pick", measures: ["bustGirth", "upperChestGirth"], taken: true, before: 0.61, after: 0.79 },
        true,
        "cm",
      ),
    ).toEqual({
      ask: "Measure the bust and the upper chest twice more",
      why: "that settles most. The likeliest way (size, cup and bust alteration together) goes from about 60 of 100 to about 80 of 100, as far as can be foretold.",
    });
    expect(
      nextWords({ settles: "pick", measures: ["upperChestGirth"], taken: false, before: 0.3, after: 0.55 }, false, "cm")
        .ask,
    ).toBe("Measure the upper chest, twice");
    expect(
      nextWords({ settles: "line", measures: ["hipGirth"], taken: true, before: 4.1, after: 2.4 }, true, "cm"),
    ).toEqual({
      ask: "Measure the hip twice more",
      why: "the hip line is then within 2 mm at each side seam, not 4 mm.",
    });
  });
});

describe("the bars", () => {
  it("are size and cup together, the planner's own marked, what is left over last", () => {
    const [chart] = sureBars({
      ...sure,
      ways: [...sure.ways.slice(0, 2), way("14", "B", 0.11), way("10", "D", 0.02), way("14", "D", 0.02)],
    });
    expect(chart?.bars.map(({ label, said, picked }) => [label, said, picked])).toEqual([
      ["Size 12, cup C", "60", true],
      ["Size 12, cup D", "25", false],
      ["Size 14, cup B", "10", false],
      ["Any other", "5", false],
    ]);
  });

  it("tell the bust alteration where there are no cup versions", () => {
    const ways: Way[] = [
      { size: "12", cup: null, bust: "full", probability: 0.7 },
      { size: "14", cup: null, bust: "nothing", probability: 0.3 },
    ];
    const [chart] = sureBars({ ...sure, ways, cups: [], picked: { size: "12", cup: null, bust: "full" } });
    expect(chart?.bars.map(({ label }) => label)).toEqual(["Size 12, bust made fuller", "Size 14, bust as printed"]);
  });

  it("keep a guessed cup apart from the size that the plan goes by", () => {
    const guessed = {
      ...sure,
      ways: [way("12", "B", 1)],
      cupsGuessed: true,
      picked: { size: "12", cup: "B", bust: "nothing" as const },
      girths: { ...sure.girths, upperChest: null, estimate: { value: 860, spread: 25 } },
    };
    const [sizes, cups] = sureBars(guessed);
    expect(sizes?.bars.map(({ label, said, picked }) => [label, said, picked])).toEqual([["Size 12", "over 95", true]]);
    expect(cups?.bars.map(({ label, picked }) => [label, picked])).toEqual([
      ["Cup C", false],
      ["Cup D", false],
      ["Cup B", false],
    ]);
    expect(cups?.caption).toContain("guessed");
  });
});

describe("the sum behind it", () => {
  it("says how often each girth was read and what that is good to", () => {
    const body = bodyOf([{ readings: { bustGirth: [905], upperChestGirth: [832], waistGirth: [750, 754] } }]);
    // Two that differ by 4: (4 · 100 + 8)/5, over two: 40.8, of which the root is 6.4.
    expect(sureSum(sure, body, "cm")).toEqual([
      { words: "Your bust, read once", figure: "± 10 mm" },
      { words: "Your upper chest, read once", figure: "± 12 mm" },
      { words: "Your waist, read twice", figure: "± 6 mm" },
      { words: "Bust less upper chest, both errors together", figure: "± 16 mm" },
    ]);
    const guessed = { ...sure, girths: { ...sure.girths, upperChest: null, estimate: { value: 862, spread: 25 } } };
    expect(sureSum(guessed, {}, "cm")).toEqual([
      { words: "Your upper chest, guessed at 86.2 cm from the others", figure: "± 25 mm" },
    ]);
  });
});
