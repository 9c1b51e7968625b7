import { describe, expect, it } from "vitest";
import { tapesOf } from "../../src/core/measures/tape";
import { surePassage } from "../../src/words/surePassage";
import { sampleWork } from "../support/sampleWork";

describe("surePassage", () => {
  it("says size, cup and lines in whole sentences, and what to measure before cutting", () => {
    const passage = surePassage(sampleWork);
    expect(passage?.said[0]).toMatch(/^Size 14, likely/);
    expect(passage?.said.every((sentence) => sentence.endsWith("."))).toBe(true);
    expect(passage?.next).toMatch(
      /^Measure the bust and the upper chest twice more before you cut: that settles most\./,
    );
  });

  it("says that the wearer's own picks are laid aside, and only then", () => {
    const own = surePassage({ ...sampleWork, picks: { baseSize: "16" } });
    expect(own?.said.join(" ")).toContain("the picks you set yourself are laid aside");
    expect(surePassage(sampleWork)?.said.join(" ")).not.toContain("laid aside");
  });

  it("speaks the wearer's unit", () => {
    expect(surePassage({ ...sampleWork, unit: "in" })?.said.join(" ")).not.toMatch(/\d (?:mm|cm)\b/);
  });

  it("says nothing without a bust", () => {
    expect(surePassage({ ...sampleWork, tapes: tapesOf({}) })).toBeNull();
  });

  it("asks for nothing more where repeated readings settle all", () => {
    const five = (value: number) => [value, value, value, value, value];
    const settled = surePassage({
      ...sampleWork,
      tapes: [
        { readings: { bustGirth: five(905), upperChestGirth: five(850), waistGirth: five(738), hipGirth: five(985) } },
      ],
    });
    expect(settled?.next).toMatch(/would settle little more\. Cut the likeliest way/);
  });
});
