/** What a chart fits, in words: of the chart and not of a body, and always of whom. */
import { describe, expect, it } from "vitest";
import type { BesideChart, ChartShares } from "../../src/core/bodies/chartFit";
import { bodyOf, tapesOf } from "../../src/core/measures/tape";
import { axisWords, besideSentences, plotWords, sharesSentences, whoseWords } from "../../src/words/chartFit";

const shares: ChartShares = {
  placed: 0.882,
  bustLeftAlone: 0.31,
  bustLeftAloneWithin: { least: 0.204, most: 0.398 },
  waist: { half: 0.41, one: 0.7 },
  hip: { half: 0.35, one: 0.61 },
  unblended: 0.16,
  apart: [0.15, 0.45, 0.2, 0.08],
};

const body = bodyOf(tapesOf({ bustGirth: 930, waistGirth: 782, hipGirth: 985 }));

const hers: BesideChart = {
  baseSize: { label: "12", waist: 32, hip: -15 },
  noBaseSize: null,
  waistAtBust: { off: 32, further: 0.243 },
  hipAtWaist: { off: -51, further: 0.1 },
};
const nothing: BesideChart = { baseSize: null, noBaseSize: null, waistAtBust: null, hipAtWaist: null };

describe("what the chart fits", () => {
  it("is told of 100 women, with how far it can be known", () => {
    expect(sharesSentences(shares)).toEqual([
      "Of 100 surveyed women about 88 find a frame in this chart; about 31 of them need no bust alteration (the survey’s upper chest was taken lower than yours, so it may be anything from 20 to 40).",
      "The waist falls within half a size of the frame for 41 of 100, within one size for 70; the hip for 35 and 61. Both fall within half a size for 16.",
      "Bust, waist and hip ask for one and the same size for 15 of 100, for sizes next to each other for 45, two apart for 20, further apart for 8.",
    ]);
  });

  it("is no finer than it is known: nearly all, hardly any", () => {
    expect(sharesSentences({ ...shares, placed: 0.998 })[0]).toMatch(
      /^Nearly all of the surveyed women find a frame in this chart; about 31 of 100 need no bust alteration/,
    );
    expect(
      sharesSentences({ ...shares, bustLeftAlone: 0.001, bustLeftAloneWithin: { least: 0, most: 0.004 } })[0],
    ).toMatch(/; hardly any of them without a bust alteration\.$/);
    expect(sharesSentences({ ...shares, bustLeftAloneWithin: { least: 0.308, most: 0.312 } })[0]).toMatch(
      /about 31 of them need no bust alteration\.$/,
    );
    expect(sharesSentences({ ...shares, placed: 0.003 })).toEqual([
      "Hardly any of the surveyed women find a frame in this chart: its sizes lie elsewhere.",
    ]);
  });
});

describe("the chart beside the wearer", () => {
  it("is what is less, more or further; not she", () => {
    expect(besideSentences(hers, body, "cm")).toEqual([
      "Your frame, size 12, was drawn for a body 3.2 cm less than yours at the waist and 1.5 cm more than yours at the hip.",
      "At your bust girth the chart’s waist is 3.2 cm less than yours; it is further from 24 of 100 surveyed women.",
      "At your waist girth the chart’s hip is 5.1 cm more than yours; it is further from 10 of 100 surveyed women.",
    ]);
  });

  it("is told in inches", () => {
    // 32 mm are 1.26 in; 51 are 2.01.
    const [baseSize, waist, hip] = besideSentences(hers, body, "in");
    expect(baseSize).toContain("1 ¼ in less than yours at the waist and 5/8 in more than yours at the hip");
    expect(waist).toContain("1 ¼ in less than yours");
    expect(hip).toContain("2 in more than yours");
  });

  it("is the same where no tape tells the two apart", () => {
    const near: BesideChart = {
      ...hers,
      baseSize: { label: "12", waist: 4, hip: -4 },
      waistAtBust: { off: -3, further: 0.999 },
      hipAtWaist: { off: 90, further: 0.001 },
    };
    expect(besideSentences(near, body, "cm")).toEqual([
      "Your frame, size 12, was drawn for a body like yours at the waist and hip.",
      "At your bust girth the chart’s waist is yours; it is further from nearly all of the surveyed women.",
      "At your waist girth the chart’s hip is 9.0 cm less than yours; it is further from hardly any of the surveyed women.",
    ]);
  });

  it("says what is missing", () => {
    expect(besideSentences({ ...nothing, noBaseSize: "noBust" }, {}, "cm")).toEqual([
      "Not taken yet: bust, waist and hip. With them you are drawn in as well.",
    ]);
    expect(
      besideSentences(
        { ...nothing, baseSize: { label: "12", waist: 12, hip: null } },
        bodyOf(tapesOf({ bustGirth: 930, waistGirth: 712 })),
        "cm",
      ),
    ).toEqual([
      "Your frame, size 12, was drawn for a body 1.2 cm less than yours at the waist.",
      "Not taken yet: hip. With it you are drawn in as well.",
    ]);
  });

  it("says that the chart ends, not that she does", () => {
    expect(besideSentences({ ...nothing, noBaseSize: "larger" }, body, "cm")).toEqual([
      "The chart ends before it reaches a frame for you.",
    ]);
    expect(besideSentences({ ...nothing, noBaseSize: "smaller" }, body, "cm")).toEqual([
      "The chart begins past the frame you need.",
    ]);
  });
});

describe("whose bodies they are", () => {
  // Shifts: upper chest 30 mm less, waist 20 more, hip 14 more.
  it("is said right there, with what was moved", () => {
    const words = whoseWords("cm");
    expect(words).toContain("soldiers, younger and leaner than most who sew");
    expect(words).toContain("1656 of the 2208 women of the US Army, 18 to 50, surveyed in 1987 and 1988");
    expect(words).toContain(
      "upper chest 3.0 cm less, waist 2.0 cm more and hip 1.4 cm more: our own choice, and the waist’s may be 3.0 cm out",
    );
    expect(whoseWords("in")).toContain("upper chest 1 1/8 in less");
  });
});

describe("a picture in words", () => {
  it("has the axes, the ring, both charts and the wearer", () => {
    const sizes = [
      { label: "8", bust: 800, waist: 620, hip: 860 },
      { label: "10", bust: 840, waist: 660, hip: 900 },
    ];
    const seen = {
      sizes,
      standard: [{ label: "88", bust: 880, waist: 720, hip: 960 }],
      body,
      half: { across: [840, 971], up: [669, 813] },
    } as const;
    expect(plotWords("bust", "waist", seen, "cm")).toBe(
      "Waist by bust. Half of the surveyed women lie in a ring about bust 84.0 cm to 97.1 cm, waist 66.9 cm to 81.3 cm. " +
        "This pattern runs from size 8 (bust 80.0 cm, waist 62.0 cm) to size 10 (bust 84.0 cm, waist 66.0 cm). " +
        "The standard chart runs from size 88 (bust 88.0 cm, waist 72.0 cm) to size 88 (bust 88.0 cm, waist 72.0 cm). " +
        "You: bust 93.0 cm, waist 78.2 cm.",
    );
    expect(plotWords("waist", "hip", { ...seen, sizes: [], standard: [], body: {} }, "in")).toMatch(
      /^Hip by waist\. Half of the surveyed women lie in a ring about waist \d+ .* in\.$/,
    );
    expect(axisWords("hip", "in")).toBe("Hip, in");
  });
});
