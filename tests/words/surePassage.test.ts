import { describe, expect, it } from "vitest";
import { tapesOf } from "../../src/core/measures/tape";
import { surePassage } from "../../src/words/surePassage";
import { sampleWork } from "../support/sampleWork";

describe("surePassage", () => {
  it("says size, cup and lines in whole sentences, and what to measure before cutting", () => {
    const passage = surePassage(sampleWork);
    expect(passage?.said[0]).toMatch(/^Size 14, likely/);
    expect(passage?.said[1]).toMatch(/^Cup B/);
    expect(passage?.said.every((sentence) => sentence.endsWith("."))).toBe(true);
    expect(passage?.next).toMatch(/^Measure the bust twice more before you cut: that settles most\./);
  });

  it("tells of the wearer's own picks that they are hers, and of the rest around them", () => {
    const own = surePassage({ ...sampleWork, picks: { baseSize: "16" } });
    // Size 16 in the smallest cup is drafted for 960, against her 930.
    expect(own?.said.slice(0, 2)).toEqual(["Size 16: your own pick.", "Cup B, nearly sure (more than 95 of 100)."]);
    expect(own?.said[2]).toMatch(/^A small bust adjustment: about 95 of 100/);
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
    expect(settled?.next).toMatch(/would settle little more\. Cut it this way/);
  });
});
