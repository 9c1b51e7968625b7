import { describe, expect, it } from "vitest";
import type { SlipKind, Suspicion } from "../../src/core/bodies/suspicion";
import { MEASURE_NAMES } from "../../src/core/measures/measure";
import { dayWords, differenceWords, doubtSentence, guessSource, guessWords, readingsSentence, slipQuestion, slipRemedy, standingSentence, surveyWords } from "../../src/words/tape";

/** Never said of a body. */
const UNKIND = /\b(?:fat|thin|big|abnormal|wrong body|flaw|problem|should lose|ideal|normal)\b/i;

const doubt: Suspicion = { measure: "bustGirth", value: 340, expected: 880, least: 822, most: 941, slip: null, takenAgain: false };

describe("a guess", () => {
  const estimate = { value: 268.4, least: 243.1, most: 297.2, from: "survey" } as const;

  it("is told no finer than half a centimetre or a quarter of an inch", () => {
    expect(guessWords(estimate, "cm")).toBe("probably 27.0 cm, between 24.5 and 29.5");
    // 268.4 mm is 10.57 in, 243.1 is 9.57, 297.2 is 11.70.
    expect(guessWords(estimate, "in")).toBe("probably 10 ½ in, between 9 ½ and 11 ¾");
  });

  it("says what it stands on", () => {
    const sources = (["survey", "bridged", "proportion"] as const).map((from) => guessSource({ ...estimate, from }));
    expect(new Set(sources).size).toBe(3);
    expect(sources[2]).toContain("trade");
  });
});

describe("a doubt", () => {
  it("asks for the tape again, with what was expected", () => {
    expect(doubtSentence(doubt, "cm")).toBe(
      "Measure the bust again: 34.0 cm is less than your other measures lead one to expect (82.0 to 94.0 cm). The tape may have slipped; or one of the others is out.",
    );
    expect(doubtSentence({ ...doubt, value: 1200 }, "cm")).toContain("is more than");
  });

  it("lets what was taken again stand", () => {
    expect(doubtSentence({ ...doubt, takenAgain: true }, "cm")).toMatch(/^Taken more than once, so it stands\./);
  });

  it("asks about every kind of slip in its own words, never of the body", () => {
    const kinds: readonly SlipKind[] = ["inchesAsCentimetres", "centimetresAsInches", "half", "tenOut", "digitsSwapped", "swapped", "waistAtNavel", "waistAtHip", "upperChestOverBust"];
    const questions = kinds.map((kind) => slipQuestion(doubt, { kind, meant: 863.6, ...(kind === "swapped" ? { other: "waistGirth" as const } : {}) }, "cm"));
    expect(new Set(questions).size).toBe(kinds.length);
    for (const question of questions) {
      expect(question).toContain("?");
      expect(question).not.toMatch(UNKIND);
    }
    expect(questions[0]).toBe("Were these inches? 34 in is 86.4 cm.");
    expect(questions[5]).toBe("Are bust and waist in each other’s place?");
  });

  it("offers to set right only what can be set right without the tape", () => {
    expect(slipRemedy({ kind: "half", meant: 880 }, "cm")).toBe("It is 88.0 cm");
    expect(slipRemedy({ kind: "swapped", meant: 880, other: "waistGirth" }, "cm")).toBe("Swap them");
    expect(slipRemedy({ kind: "waistAtNavel", meant: 700 }, "cm")).toBeNull();
  });

  it("is never unkind, of whichever measure", () => {
    for (const measure of MEASURE_NAMES) expect(doubtSentence({ ...doubt, measure }, "cm")).not.toMatch(UNKIND);
  });
});

describe("several readings", () => {
  it("say their mean, and whether they are as near as a tape is", () => {
    expect(readingsSentence("bustGirth", { value: 900, readings: [900] }, "cm")).toBeNull();
    expect(readingsSentence("bustGirth", { value: 904, readings: [900, 908] }, "cm")).toBe("They are 0.8 cm apart, as a tape does. Their mean counts: 90.4 cm.");
    expect(readingsSentence("bustGirth", { value: 900, readings: [900, 900] }, "cm")).toBe("They agree. Their mean counts: 90.0 cm.");
    // 2.77 × 10 mm is 27.7.
    expect(readingsSentence("bustGirth", { value: 914, readings: [900, 928] }, "cm")).toContain("Take it a third time.");
    expect(readingsSentence("bustGirth", { value: 910, readings: [900, 902, 928] }, "cm")).toContain("Take out the one");
  });
});

it("says days and differences", () => {
  expect(dayWords("2026-10-03")).toBe("3 October 2026");
  expect(dayWords(undefined)).toBe("a day not said");
  expect(differenceWords({ measure: "waistGirth", now: 724, before: 700, changed: true }, "cm")).toEqual(["+24 mm", "changed"]);
  expect(differenceWords({ measure: "waistGirth", now: 695, before: 700, changed: false }, "cm")).toEqual(["−5 mm", "as a tape does"]);
});

describe("whose bodies", () => {
  it("says who was measured, when, how old, and what it cannot tell", () => {
    const text = surveyWords("cm").join(" ");
    for (const said of ["2208 women", "US Army", "18 to 50", "1987", "leaner", "107.4 cm", "nothing of yours leaves"]) expect(text).toContain(said);
  });

  it("says how well it speaks for a body, and what that does to the ranges", () => {
    expect(standingSentence({ furtherOut: 0.6, state: "within", why: [], widened: 1 })).toBe("The survey has many bodies with measures like yours.");
    expect(standingSentence({ furtherOut: 0.02, state: "thin", why: ["measures"], widened: 1.2 })).toBe(
      "The survey has few women with measures like yours together: it can say less here. The ranges are made 20 % wider for it.",
    );
    const far = standingSentence({ furtherOut: 0.001, state: "outside", why: ["measures", "age"], widened: 1.8 });
    expect(far).toContain("hardly any");
    expect(far).toContain("of your age");
    expect(far).toContain("trade");
    expect(far).not.toMatch(UNKIND);
  });
});
