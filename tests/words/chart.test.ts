import { describe, expect, it } from "vitest";
import { pasteChart } from "../../src/core/chart/pasteChart";
import { readChart } from "../../src/core/chart/readChart";
import type { SizeChart } from "../../src/core/chart/sizeChart";
import { chartFindingSentence, pasteFindingSentence } from "../../src/words/chart";

const said = (chart: Partial<SizeChart>): readonly string[] =>
  readChart({
    sizes: [
      { label: "8", bust: 800, waist: 620, hip: 860 },
      { label: "10", bust: 840, waist: 660, hip: 900 },
    ],
    cups: [],
    draftedDifference: 50,
    ...chart,
  }).map((finding) => chartFindingSentence(finding, "cm"));

describe("chartFindingSentence", () => {
  it("names the sizes and the figures", () => {
    const sizes = [
      { label: "10", bust: 840, waist: 660, hip: 900 },
      { label: "8", bust: 800, waist: 620, hip: 860 },
      { label: "8", bust: 840, waist: 600, hip: 860, finishedBust: 440, finishedHip: 850 },
    ];
    expect(said({ sizes })).toEqual([
      "The bust (80.0 cm) is smaller than that of size 10 above (84.0 cm). Put the sizes in order, the smallest first.",
      "Size 8 is in the list twice. Each needs a name of its own.",
      "The finished bust (44.0 cm) is about half of the body’s 84.0 cm. Was it measured flat? Then double it.",
      "The finished hip (85.0 cm) is smaller than the body’s 86.0 cm. That is right only for cloth that stretches, or a bodice held up by its fit.",
      "The waist (60.0 cm) is smaller than that of size 8 above (62.0 cm). Look at both again.",
      "The hip is the same as that of size 8 above. Some charts are so; look once more.",
    ]);
  });

  it("asks about inches among centimetres", () => {
    const sizes = [
      { label: "8", bust: 800, waist: 620, hip: 860 },
      { label: "10", bust: 840, waist: 260, hip: 900 },
    ];
    expect(said({ sizes })[0]).toBe(
      "The waist of 26.0 cm cannot be right: it should be from 45.0 cm to 200.0 cm. Are these inches (26 in is 66.0 cm)?",
    );
  });

  it("speaks of cup versions as such", () => {
    const cups = [
      { label: "C", difference: 75 },
      { label: "", difference: 75 },
    ];
    expect(said({ cups })).toEqual([
      "This cup version has no name. Write what is printed on the pattern.",
      "The difference (7.5 cm) is no larger than that of cup version C above (7.5 cm). List them from the flattest to the fullest.",
    ]);
  });

  it("says what is missing from a chart not yet begun", () => {
    expect(said({ sizes: [] })).toEqual(["A blend runs between sizes: enter at least 2."]);
  });
});

describe("pasteFindingSentence", () => {
  it("says where, what and what was done about it", () => {
    const { findings } = pasteChart("Size\tBust\tWaist\tHip\n8\t86-90\t\t94\nfor all heights", "cm");
    expect(findings.map((finding) => pasteFindingSentence(finding, "cm"))).toEqual([
      "The bust of size 8 is the range 86-90: its middle, 88.0 cm, was taken (line 2).",
      "The waist of size 8 is missing, so that size was left out (line 2).",
      "“for all heights” holds no measures and was passed over (line 3).",
    ]);
  });

  it("names the columns it misses", () => {
    const [finding] = pasteChart("Size\tBust\tWaist\n8\t80\t62", "cm").findings;
    if (finding === undefined) throw new Error("nothing found");
    expect(pasteFindingSentence(finding, "cm")).toBe("No column is headed “hip”. Add its heading and paste again.");
  });
});
