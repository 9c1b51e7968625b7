/** Girths of a plan, each by hand from chart, body and ease: between which lines, wanted, claimed, given, and how surely. */
import { describe, expect, it } from "vitest";
import type { Alteration, Half } from "../../../src/core/decisions/alteration";
import type { FitName } from "../../../src/core/decisions/fitNames";
import type { Work } from "../../../src/core/decisions/work";
import { measuresOf, tapesOf } from "../../../src/core/measures/tape";
import { planOf, testWork, withAlterations } from "../../support/works";

const fit = (name: FitName, amount: number, half?: Half): Alteration => ({
  kind: "fit",
  id: name,
  fit: name,
  amount,
  ...(half === undefined ? {} : { half }),
});
const level = (work: Work, name: "bust" | "waist" | "hip") => planOf(work).levels.find((one) => one.level === name);
const picked = (picks: Work["picks"], more: Partial<Work> = {}): Work => ({ ...testWork, ...more, picks });
/** The normal distribution below, by Simpson's rule on its density from eight deviations down. */
function normalBelow(z: number): number {
  const [from, steps] = [-8, 2000];
  const step = (z - from) / steps;
  const density = (x: number): number => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  let sum = density(from) + density(z);
  for (let i = 1; i < steps; i += 1) sum += (i % 2 === 0 ? 2 : 4) * density(from + i * step);
  return (sum * step) / 3;
}

describe("the hip", () => {
  it("lies by its share between the two printed lines whose finished girths are on either side of what is wanted", () => {
    // Hips of the chart are bust + 60, with 50 of ease: 16 is finished to 1070, 18 to 1110. Wanted are 1034 + 50.
    expect(level(testWork, "hip")).toEqual({
      level: "hip",
      between: ["16", "18"],
      share: expect.closeTo(14 / 40, 9),
      size: expect.closeTo(5 + 14 / 40, 9),
      extrapolated: false,
      body: 1034,
      ease: 50,
      target: 1084,
      claim: 1084,
      finished: expect.closeTo(1084, 6),
      spread: 10,
      margin: expect.closeTo(14, 6),
      probability: expect.closeTo(normalBelow(-1.4), 6),
      borderline: false,
    });
  });

  it("is borderline where a tape would as likely as not have put it on a line's other side", () => {
    // 4 mm from the line of 16: a chance of 34 in 100, above a quarter. 8 mm: 21.
    const at = (hipGirth: number): Work => ({
      ...testWork,
      tapes: tapesOf({ ...measuresOf(testWork.tapes), hipGirth }),
    });
    expect(level(at(1024), "hip")).toMatchObject({ borderline: true, margin: expect.closeTo(4, 6) });
    expect(level(at(1024), "hip")?.probability).toBeCloseTo(normalBelow(-0.4), 6);
    expect(level(at(1028), "hip")).toMatchObject({ borderline: false, margin: expect.closeTo(8, 6) });
    expect(level(at(1016), "hip")).toMatchObject({ margin: expect.closeTo(4, 6), between: ["14", "16"] });
  });

  it("goes beyond the chart's last lines by its share of their step, and says so", () => {
    const { sizes } = testWork.pattern.chart;
    const few: Work = {
      ...testWork,
      pattern: { ...testWork.pattern, chart: { ...testWork.pattern.chart, sizes: sizes.slice(0, 6) } },
    };
    // The largest is 16 now, finished to 1070: 14 more are 35 hundredths of a step beyond it.
    expect(level(few, "hip")).toMatchObject({
      between: ["14", "16"],
      share: expect.closeTo(1.35, 9),
      size: expect.closeTo(5.35, 9),
      extrapolated: true,
    });
    expect(level(few, "waist")).toMatchObject({ extrapolated: false });
  });

  it("is what was picked, claiming what that line gives, whatever is wanted", () => {
    expect(level(picked({ hip: 4.5 }), "hip")).toMatchObject({
      between: ["14", "16"],
      share: 0.5,
      size: 4.5,
      target: 1084,
      // Half way between 1030 and 1070.
      claim: expect.closeTo(1050, 6),
      finished: expect.closeTo(1050, 6),
      margin: expect.closeTo(14, 6),
    });
  });
});

describe("the waist and the bust", () => {
  it("are cut to the body and the ease that is wanted", () => {
    expect(level(testWork, "waist")).toMatchObject({ body: 752, ease: 40, target: 792, claim: 792, spread: 10 });
    expect(level(testWork, "waist")?.finished).toBeCloseTo(792, 3);
    expect(level({ ...testWork, easeWanted: { waist: 55 } }, "waist")).toMatchObject({
      ease: 55,
      target: 807,
      claim: 807,
    });
    // Size 12 is drafted for 880 and 50 of cup; C has 25 more, and 80 of ease are drafted in.
    expect(level(testWork, "bust")).toMatchObject({
      between: ["12", "14"],
      share: 0,
      size: 3,
      extrapolated: false,
      body: 905,
      ease: 80,
      target: 985,
      claim: 880 - 50 + 75 + 80,
    });
    expect(level(testWork, "bust")?.finished).toBeCloseTo(985, 6);
  });

  it("claim what the bust is altered by, and cups of two halves by half each", () => {
    const altered = picked({ baseSize: "12", cup: "B", bustAlteration: 20 });
    expect(level(altered, "bust")?.claim).toBeCloseTo(880 + 20 + 80, 9);
    const uneven = picked({ baseSize: "12", cup: "B", bustAlteration: 0, halfCups: { right: "D" } });
    // B is drafted for 50, D for 100: half of 50 more.
    expect(level(uneven, "bust")?.claim).toBeCloseTo(880 + 25 + 80, 9);
  });

  it("claim and give what side seams are let out by, all of it on both halves, and its own on one", () => {
    const bust = (...alterations: readonly Alteration[]) => {
      const found = level(withAlterations(...alterations), "bust");
      return [found?.claim, found?.finished];
    };
    expect(bust(fit("sideSeamBust", 24))).toEqual([expect.closeTo(1009, 6), expect.closeTo(1009, 3)]);
    expect(bust(fit("sideSeamBust", 12, "left"))).toEqual([expect.closeTo(997, 6), expect.closeTo(997, 3)]);
    expect(bust(fit("chestWidth", 12))).toEqual([expect.closeTo(985, 6), expect.closeTo(985, 3)]);
    const waist = level(withAlterations(fit("sideSeamWaist", 24)), "waist");
    expect([waist?.target, waist?.claim]).toEqual([792, expect.closeTo(816, 6)]);
    expect(waist?.finished).toBeCloseTo(816, 3);
    const both = level(withAlterations(fit("sideSeamWaist", 24), fit("sideSeamHip", -8)), "hip");
    expect(both?.claim).toBeCloseTo(1076, 6);
  });
});
