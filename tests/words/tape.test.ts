import { dayWords } from "../../src/words/terms/days";
import type { MisreadingKind } from "../../src/core/bodies/misreading";
import { describe, expect, it } from "vitest";
import type { Suspicion } from "../../src/core/bodies/suspicion";
import { MEASURE_NAMES } from "../../src/core/measures/measure";
import {
  dayRefusal,
  differenceWords,
  doubtSentence,
  feetWords,
  guessSource,
  guessWords,
  onceSureWords,
  readingsSentence,
  misreadingElsewhere,
  misreadingQuestion,
  misreadingRemedy,
  tapeStateSentence,
  unusualQuestion,
} from "../../src/words/tape";
import { standingSentence, surveyWords } from "../../src/words/survey";

/** Never said of a body. */
const UNKIND = /\b(?:fat|thin|big|abnormal|wrong body|flaw|problem|should lose|ideal|normal)\b/i;

const doubt: Suspicion = {
  measure: "bustGirth",
  value: 340,
  expected: 880,
  least: 822,
  most: 941,
  misreading: null,
  takenAgain: false,
  saidRight: false,
  onceMore: false,
};

describe("a guess", () => {
  const estimate = { value: 268.4, least: 243.1, most: 297.2, from: "survey" } as const;

  it("is told no finer than half a centimetre or a quarter of an inch, and a wide one no finer than twice that", () => {
    expect(guessWords(estimate, "cm")).toBe("probably 27 cm (24 to 30)");
    expect(guessWords({ ...estimate, least: 254, most: 283.4 }, "cm")).toBe("probably 27 cm (25.5 to 28.5)");
    // 268.4 mm is 10.57 in, 243.1 is 9.57, 297.2 is 11.70; 254 is 10, 283.4 is 11.16.
    expect(guessWords(estimate, "in")).toBe("probably 10 ½ in (9 ½ to 11 ½)");
    expect(guessWords({ ...estimate, least: 254, most: 283.4 }, "in")).toBe("probably 10 ½ in (10 to 11 ¼)");
  });

  it("says what it stands on, of a measure the survey lacks too", () => {
    const sources = (["survey", "bridged", "proportion", "between"] as const).map((from) => guessSource({ from }));
    expect(new Set(sources).size).toBe(4);
    expect(sources[1]).toContain("elsewhere");
    expect(sources[2]).toBe("by a trade proportion");
    expect(sources[3]).toBe("between the body survey and a trade proportion");
  });
});

describe("a doubt", () => {
  it("tells its range finely where roughly told it would hold the value", () => {
    // 87.6 rounds to 88 by whole centimetres, and 88 is not more than 88.
    const said = doubtSentence({ ...doubt, value: 880, least: 790.4, most: 876.3 }, "cm");
    expect(said).toContain("88.0 cm is more than your other measures lead one to expect (79.0 to 87.6 cm)");
    // 34.65 in is 34 5/8, and 34 1/2 (876.3) rounds to 34 1/2: told as it always was.
    expect(doubtSentence({ ...doubt, value: 880, least: 790.4, most: 876.3 }, "in")).toContain("to 34 ½ in)");
    // Both round to 88.0: the range ends below what is more than it.
    expect(doubtSentence({ ...doubt, value: 880.3, least: 790, most: 880.1 }, "cm")).toContain("(79.0 to 87.9 cm)");
    expect(doubtSentence({ ...doubt, value: 790, least: 793.6, most: 880 }, "cm")).toContain("(79.4 to 88.0 cm)");
  });

  it("asks for the tape again, with what was expected", () => {
    expect(doubtSentence(doubt, "cm")).toBe(
      "Measure the bust again: 34.0 cm is less than your other measures lead one to expect (82 to 94 cm). The tape may have slipped at the back, or one of the others is out.",
    );
    expect(doubtSentence({ ...doubt, measure: "backWaistLength" }, "cm")).toContain("The tape may have slipped, or");
    expect(doubtSentence({ ...doubt, value: 1200 }, "cm")).toContain("is more than");
  });

  it("says nothing of the tape where something else explains it", () => {
    expect(doubtSentence({ ...doubt, misreading: { kind: "inchesAsCentimetres", meant: 863.6 } }, "cm")).not.toContain(
      "slipped",
    );
  });

  it("does not call more or less what lies within what was expected", () => {
    expect(
      doubtSentence(
        { ...doubt, value: 900, misreading: { kind: "swapped", meant: 880, other: "upperChestGirth" } },
        "cm",
      ),
    ).toBe("Measure the bust again: 90.0 cm does not go with your other measures.");
  });

  it("does not ask whether centimetres were centimetres", () => {
    expect(misreadingQuestion(doubt, { kind: "centimetresAsInches", meant: 880 }, "cm")).toBe(
      "Were these centimetres, taken for inches? That would be 88.0 cm.",
    );
    expect(misreadingQuestion(doubt, { kind: "inchesAsCentimetres", meant: 863.6 }, "in")).toBe(
      "Were these inches, taken for centimetres? That would be 34 in.",
    );
  });

  it("asks of a value that few tapes read whether it is in the other unit, and of no other", () => {
    // 56 in is 142.24 cm.
    expect(unusualQuestion("bustGirth", 560, "cm")).toBe(
      "Few tapes read 56.0 cm here. Are these inches (56 in is 142.2 cm), or is it half of the measure (the whole would be 112.0 cm)?",
    );
    expect(unusualQuestion("bustGirth", 900, "cm")).toBeNull();
    expect(unusualQuestion("bustGirth", 1600, "cm")).toBeNull();
  });

  it("sends to the measure where the question is asked", () => {
    expect(misreadingElsewhere({ kind: "swapped", meant: 880, other: "upperChestGirth" })).toBe(
      "See the question at the upper chest.",
    );
  });

  it("lets what was taken again stand", () => {
    expect(doubtSentence({ ...doubt, takenAgain: true }, "cm")).toBe(
      "You took it more than once, so it stands. Your other measures lead one to expect 82 to 94 cm.",
    );
  });

  it("lets stand what she said is right", () => {
    expect(doubtSentence({ ...doubt, saidRight: true }, "cm")).toBe(
      "You said it is right, so it stands. Your other measures lead one to expect 82 to 94 cm.",
    );
  });

  it("asks gently for one more reading of what is merely out of keeping", () => {
    expect(doubtSentence({ ...doubt, value: 1000, onceMore: true }, "cm")).toBe(
      "Take the bust once more: 100.0 cm is more than your other measures lead one to expect (82 to 94 cm). If it reads the same, it stands.",
    );
  });

  it("asks about every kind of slip in its own words, never of the body", () => {
    const kinds: readonly MisreadingKind[] = [
      "inchesAsCentimetres",
      "centimetresAsInches",
      "half",
      "tenOut",
      "digitsSwapped",
      "swapped",
      "waistAtNavel",
      "waistAtHip",
      "upperChestOverBust",
    ];
    const questions = kinds.map((kind) =>
      misreadingQuestion(
        doubt,
        { kind, meant: 863.6, ...(kind === "swapped" ? { other: "waistGirth" as const } : {}) },
        "cm",
      ),
    );
    expect(new Set(questions).size).toBe(kinds.length);
    for (const question of questions) {
      expect(question).toContain("?");
      expect(question).not.toMatch(UNKIND);
    }
    expect(questions[0]).toBe("Were these inches? 34 in is 86.4 cm.");
    expect(questions[5]).toBe("Are bust and waist in each other’s place?");
  });

  it("offers to set right only what can be set right without the tape", () => {
    expect(misreadingRemedy({ kind: "half", meant: 880 }, "cm")).toBe("Take 88.0 cm");
    expect(misreadingRemedy({ kind: "swapped", meant: 880, other: "waistGirth" }, "cm")).toBe("Swap them");
    expect(misreadingRemedy({ kind: "waistAtNavel", meant: 700 }, "cm")).toBeNull();
  });

  it("is never unkind, of whichever measure", () => {
    for (const measure of MEASURE_NAMES) expect(doubtSentence({ ...doubt, measure }, "cm")).not.toMatch(UNKIND);
  });
});

describe("several readings", () => {
  it("say their mean, and whether they are as near as a tape is", () => {
    expect(readingsSentence("bustGirth", { value: 900, readings: [900] }, "cm")).toBeNull();
    expect(readingsSentence("bustGirth", { value: 904, readings: [900, 908] }, "cm")).toBe(
      "Mean 90.4 cm; your two readings are 0.8 cm apart.",
    );
    expect(readingsSentence("bustGirth", { value: 900, readings: [900, 900] }, "cm")).toBe(
      "Mean 90.0 cm; your two readings agree.",
    );
    // 1.3 mm is less than a sixteenth of an inch.
    expect(readingsSentence("bustGirth", { value: 889, readings: [889, 890.3] }, "in")).toBe(
      "Mean 35 in; your two readings agree.",
    );
  });

  it("ask kindly for another where they do not agree", () => {
    // Two: 2.77 × 10 mm is 27.7. Three: 3.31 × 10 is 33.1. Five: 3.86 × 10 is 38.6.
    expect(readingsSentence("bustGirth", { value: 914, readings: [900, 928] }, "cm")).toBe(
      "These two do not agree: they are 2.8 cm apart, more than a tape usually is. Take it a third time. Until then their mean counts, 91.4 cm.",
    );
    expect(readingsSentence("bustGirth", { value: 910, readings: [900, 902, 928] }, "cm")).toBe(
      "Mean 91.0 cm; your three readings are 2.8 cm apart.",
    );
    expect(readingsSentence("bustGirth", { value: 912, readings: [900, 902, 934] }, "cm")).toContain(
      "Take it once more, or take out the one",
    );
    const five = readingsSentence("bustGirth", { value: 908.2, readings: [900, 900, 901, 901, 939] }, "cm");
    expect(five).toContain("These five do not agree");
    expect(five).toContain("Take out the one that went wrong.");
  });
});

it("says days and differences", () => {
  expect(dayWords("2026-10-03")).toBe("3 October 2026");
  expect(dayWords(undefined)).toBe("a day not said");
  expect(differenceWords({ measure: "waistGirth", now: 724, before: 700, changed: true }, "cm")).toEqual([
    "+2.4 cm",
    "changed",
  ]);
  expect(differenceWords({ measure: "waistGirth", now: 695, before: 700, changed: false }, "cm")).toEqual([
    "−0.5 cm",
    "within what a tape does",
  ]);
  // 1/16 in is 1.6 mm: half of it is nothing, and nothing has no sign.
  expect(differenceWords({ measure: "waistGirth", now: 700.7, before: 700, changed: false }, "in")[0]).toBe("0 in");
  expect(differenceWords({ measure: "waistGirth", now: 711.2, before: 685.8, changed: true }, "in")[0]).toBe("+1 in");
});

it("asks of a day only that it can have been", () => {
  expect(dayRefusal("2026-11-25", "2026-11-25")).toBeNull();
  expect(dayRefusal("2026-11-26", "2026-11-25")).toBe("This day is still to come.");
  expect(dayRefusal("0026-11-25", "2026-11-25")).toContain("four digits");
});

it("tells heights in feet", () => {
  // 5 ft 4 in is 64 in of 25.4 mm: 1625.6.
  expect([1625.6, 1638.3, 1524, 1536.7, 1527.2, 1676.4].map(feetWords)).toEqual([
    "5 ft 4 in",
    "5 ft 4 ½ in",
    "5 ft",
    "5 ft ½ in",
    "5 ft 1/8 in",
    "5 ft 6 in",
  ]);
});

it("says how sure one reading is", () => {
  // One standard deviation at the bust: 10 mm, which is 3/8 in to an eighth.
  expect(onceSureWords("cm")).toBe("sure to about 1 cm if taken once, surer if taken again");
  expect(onceSureWords("in")).toContain("about 3/8 in if");
});

it("says how far the tape has got", () => {
  expect(tapeStateSentence(0, 0, [])).toBe("0 of 14 measured.");
  expect(tapeStateSentence(5, 9, ["waistGirth", "upperChestGirth"])).toBe(
    "5 of 14 measured, 9 guessed. To take again: waist, upper chest.",
  );
});

describe("whose bodies", () => {
  it("says who was measured, when, how old, and what it cannot tell", () => {
    const text = surveyWords("cm").join(" ");
    for (const said of [
      "2208 women",
      "US Army",
      "18 to 50",
      "1987",
      "leaner",
      "107.4 cm",
      "Nothing of this leaves your device.",
    ])
      expect(text).toContain(said);
  });

  it("says how well it speaks for a body, and what that does to the ranges", () => {
    expect(standingSentence({ furtherOut: 0.6, state: "within", why: [], widened: 1, besideTrade: false })).toBe(
      "The survey has many bodies with measures like yours.",
    );
    expect(
      standingSentence({ furtherOut: 0.02, state: "thin", why: ["measures"], widened: 1.2, besideTrade: false }),
    ).toBe(
      "The survey has few women with measures like yours together: it can say less here. The ranges are made 20 % wider for it.",
    );
    const far = standingSentence({
      furtherOut: 0.001,
      state: "outside",
      why: ["measures", "age"],
      widened: 1.8,
      besideTrade: true,
    });
    expect(far).toContain("hardly any");
    expect(far).toContain("of your age");
    expect(far).toContain("trade");
    expect(far).not.toMatch(UNKIND);
  });

  it("does not make up for what it says it has many of", () => {
    expect(standingSentence({ furtherOut: 0.1, state: "within", why: [], widened: 1.08, besideTrade: false })).toBe(
      "The survey has many bodies with measures like yours, if not at its middle: the ranges are 8 % wider than there.",
    );
  });

  it("speaks of the trade only where the guesses lie beside it", () => {
    expect(
      standingSentence({
        furtherOut: 0.02,
        state: "outside",
        why: ["measures", "age"],
        widened: 1.5,
        besideTrade: false,
      }),
    ).not.toContain("trade");
  });
});
