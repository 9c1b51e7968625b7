/** Girths of a plan, each by hand from chart, body and ease: between which lines, wanted, claimed, given, and how surely. */
import { describe, expect, it } from "vitest";
import type { Alteration, Half } from "../../../src/core/decisions/alteration";
import type { FitName } from "../../../src/core/decisions/fitNames";
import type { Work } from "../../../src/core/decisions/work";
import { measuresOf, tapesOf } from "../../../src/core/measures/tape";
import { bustRadiusOf } from "../../../src/core/plan/bustRadius";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { leftOutBy } from "../../../src/core/plan/leftOutBy";
import { newlyFailing } from "../../../src/core/plan/newlyFailing";
import { printedNestOf } from "../../../src/core/plan/planOf";
import { onOffer, printedGirths } from "../../../src/core/plan/printed";
import { dartIn, planOf, ref, testWork, withAlterations } from "../../support/works";

const fit = (name: FitName, amount: number, half?: Half): Alteration => ({
  kind: "fit",
  id: name,
  fit: name,
  amount,
  ...(half === undefined ? {} : { half }),
});
const level = (work: Work, name: "bust" | "waist" | "hip") => planOf(work).levels.find((one) => one.level === name);
const picked = (picks: Work["picks"], more: Partial<Work> = {}): Work => ({ ...testWork, ...more, picks });
const refusalOf = (work: Work) => {
  const plan = derivePlan(work);
  return plan.ok ? null : plan.failure;
};

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

describe("a plan is refused", () => {
  const without = (...names: readonly string[]): Work => ({
    ...testWork,
    tapes: tapesOf(
      Object.fromEntries(Object.entries(measuresOf(testWork.tapes)).filter(([name]) => !names.includes(name))),
    ),
  });

  it("where measures are missing, naming those, the hip only where the pattern goes there", () => {
    const missing = (...measures: readonly string[]) => ({ code: "plan/measure-missing", measures });
    expect(refusalOf(without("bustGirth"))).toEqual(missing("bustGirth"));
    expect(refusalOf(without("waistGirth", "hipGirth"))).toEqual(missing("waistGirth", "hipGirth"));
    expect(refusalOf(without("hipGirth"))).toEqual(missing("hipGirth"));
    const short: Work = { ...without("hipGirth"), pattern: { ...testWork.pattern, length: "waist" } };
    expect(refusalOf(short)).toBeNull();
    expect(refusalOf({ ...short, tapes: without("hipGirth", "waistGirth").tapes })).toEqual(missing("waistGirth"));
  });

  it("where the chart cannot be read, with how many faults", () => {
    const chart = { ...testWork.pattern.chart, sizes: [] };
    expect(refusalOf({ ...testWork, pattern: { ...testWork.pattern, chart } })).toMatchObject({
      code: "plan/chart-unusable",
    });
  });

  it("where a pick lies further out than two steps beyond the chart, and not at two", () => {
    expect(refusalOf(picked({ hip: 13 }))).toBeNull();
    expect(refusalOf(picked({ hip: 13.1 }))).toMatchObject({ code: "plan/outside-chart", level: "hip" });
    expect(refusalOf(picked({ waist: -2 }))).toBeNull();
    expect(refusalOf(picked({ waist: -2.1 }))).toMatchObject({ code: "plan/outside-chart", level: "waist" });
  });

  it("where a picked size or cup is none of the chart's", () => {
    expect(refusalOf(picked({ baseSize: "13" }))).not.toBeNull();
    expect(refusalOf(picked({ cup: "Z" }))).not.toBeNull();
    expect(printedNestOf(picked({ cup: "Z" }))).toMatchObject({ ok: false });
  });
});

describe("the printed nest", () => {
  const labelOf = (work: Work): boolean => {
    const nest = printedNestOf(work);
    return nest.ok && nest.value === planOf(picked({ ...work.picks, baseSize: "12" })).nest;
  };

  it("is that of the cup picked, or planned, there even before there is a body", () => {
    expect(labelOf(testWork)).toBe(true);
    expect(labelOf(picked({ cup: "D" }))).toBe(true);
    const bodiless: Work = { ...testWork, tapes: [{ readings: {} }] };
    const [none, drafted] = [printedNestOf(bodiless), printedNestOf(picked({ cup: "B" }))];
    // The chart is drafted for a difference of 50, which is its B.
    expect(none.ok && drafted.ok && none.value.sizes).toEqual(drafted.ok ? drafted.value.sizes : null);
    const asked = printedNestOf({ ...bodiless, picks: { cup: "D" } });
    const d = printedNestOf(picked({ cup: "D" }));
    expect(asked.ok && d.ok && asked.value.sizes).toEqual(d.ok ? d.value.sizes : null);
    expect(asked).not.toEqual(none);
  });

  it("has a finished waist for every size with the base size's darts, and hips where it goes there", () => {
    const offer = onOffer(testWork);
    if (!offer.ok) throw new Error(offer.failure.code);
    const { waist, hip } = printedGirths(offer.value.pieces, "C", 3);
    // Hips of bust + 60 with 50 of ease.
    expect(hip?.[0]).toBeCloseTo(760 + 60 + 50, 6);
    expect(hip).toHaveLength(12);
    expect(waist).toHaveLength(12);
    // Its own is as the chart has it: 700 and 40.
    expect(waist[3]).toBeCloseTo(740, 3);
  });

  it("offers all picks of a pattern that has them", () => {
    const picks = { baseSize: "12", cup: "B", halfCups: { left: "C" }, waist: 2, hip: 3, bustAlteration: 5 };
    const offer = onOffer({ pattern: testWork.pattern, picks });
    expect(offer.ok && offer.value.picks).toEqual(picks);
  });
});

describe("a dart as it is read", () => {
  it("has its fullness stated at the bust radius, hers where she gave one", () => {
    expect([bustRadiusOf({}), bustRadiusOf({ bustRadius: 95 }), bustRadiusOf({ bustRadius: 0 })]).toEqual([80, 95, 80]);
    expect(bustRadiusOf({ bustRadius: -3 })).toBe(80);
    expect(dartIn(planOf({ ...testWork, bustRadius: 60 }), "front", "waistDart").coneRadius).toBe(60);
  });

  it("serves the bust on the front, with a stop and an end; a back's has neither, nor anything wanted", () => {
    const plan = planOf(testWork);
    const [front, back] = [dartIn(plan, "front", "waistDart"), dartIn(plan, "back", "waistDart")];
    expect([front.wanted === null, front.usualStop === null, front.endJudged === null]).toEqual([false, false, false]);
    expect([back.wanted, back.usualStop, back.endJudged, back.bySight]).toEqual([null, null, null, null]);
    expect(back.printed?.intake).toBeCloseTo(back.drawn.intake, 9);
    expect([front.verdict, back.verdict, front.truing]).toEqual(["asWanted", "asWanted", { inner: 0, outer: 0 }]);
    expect(front.giveBackPlaces[0]).toBe("sideSeam");
  });

  it("that the pattern has not is printed nowhere", () => {
    const pivot: Alteration = { kind: "dartPivot", id: "p", dart: ref("front", "sideDart"), to: "shoulder", share: 1 };
    const opened = dartIn(planOf(withAlterations(pivot)), "front", "shoulderDart");
    expect([opened.printed, opened.wanted, opened.verdict]).toEqual([null, null, "asWanted"]);
    expect(opened.coneRadius).toBe(80);
  });
});

describe("what a change makes fail", () => {
  const past: Alteration = {
    kind: "dartEnd",
    id: "past",
    dart: ref("front", "waistDart"),
    shorten: -40,
    across: 0,
    hold: "mouth",
    giveBack: {},
  };

  it("is what held before, named once, and nothing that failed already", () => {
    const after = withAlterations(past);
    const failing = planOf(after).checks.filter(({ ok }) => !ok);
    expect(failing.length).toBeGreaterThan(0);
    expect(newlyFailing(testWork, after)).toEqual(failing);
    expect(newlyFailing(after, after)).toEqual([]);
    expect(newlyFailing(after, testWork)).toEqual([]);
    const broken: Work = { ...testWork, tapes: [{ readings: {} }] };
    expect(newlyFailing(broken, after)).toEqual([]);
    expect(newlyFailing(testWork, broken)).toEqual([]);
  });

  it("is one fault more where one more alteration is left out, though some were before", () => {
    const one = withAlterations(fit("shoulderSlope", 400));
    const two = withAlterations(fit("shoulderSlope", 400), fit("swayBack", 900));
    const faults = (work: Work) => planOf(work).checks.filter(({ ok, unit }) => !ok && unit === "faults");
    expect(faults(one).map(({ measured }) => measured)).toEqual([1]);
    expect(
      newlyFailing(one, two)
        .filter(({ unit }) => unit === "faults")
        .map(({ measured }) => measured),
    ).toEqual([2]);
    expect(newlyFailing(two, one).filter(({ unit }) => unit === "faults")).toEqual([]);
    // Another one in its place, on another piece, is newly left out, as many as there are.
    const other = withAlterations(fit("swayBack", 900));
    expect(newlyFailing(one, other).map(({ pieces }) => pieces)).toContainEqual(["back"]);
    expect(leftOutBy(two, "shoulderSlope")).toEqual([]);
    expect(leftOutBy(testWork, "none")).toEqual([]);
  });
});
