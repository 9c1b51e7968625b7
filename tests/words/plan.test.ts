import { describe, expect, it } from "vitest";
import { planFailureWords } from "../../src/words/plan";

describe("why there is no plan", () => {
  it("names what is missing", () => {
    const words = planFailureWords({ code: "plan/measure-missing", measures: ["waistGirth", "hipGirth"] }, "cm", 10);
    expect(words.text).toBe(
      "The plan still needs your waist and hip girths. Without the hip, set the pattern to waist length on Envelope.",
    );
    expect(words.where).toBe("tape");
  });

  it("says how far the pattern reaches, in her unit", () => {
    const failure = { code: "plan/outside-chart", level: "hip", wanted: 1270, least: 863.6, most: 1219.2 } as const;
    const words = planFailureWords(failure, "in", 10);
    expect(words.title).toBe("This pattern does not reach your hip");
    expect(words.text).toContain("should measure 50 in");
    expect(words.text).toContain("from 34 in to 48 in");
    expect(words.text).toContain("larger size range");
    expect(planFailureWords({ ...failure, wanted: 800 }, "in", 10).text).toContain("smaller size range");
  });

  it("names the girth that the frame is picked by", () => {
    const words = planFailureWords(
      { code: "plan/outside-chart", level: "upperChest", wanted: 500, least: 660, most: 1260 },
      "cm",
      10,
    );
    expect(words.title).toBe("This pattern does not reach your upper chest");
    expect(words.text).toContain("Your upper chest measures 50.0 cm");
  });

  it("speaks of one fault, of several, and of a chart that is only empty", () => {
    expect(planFailureWords({ code: "plan/chart-unusable", faults: 1 }, "cm", 10).text).toContain("One thing");
    expect(planFailureWords({ code: "plan/chart-unusable", faults: 1 }, "cm", 0).title).toBe("No size chart yet");
    expect(planFailureWords({ code: "plan/chart-unusable", faults: 3 }, "cm", 10).text).toContain("3 things");
  });
});
