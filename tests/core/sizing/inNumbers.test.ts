/**
 * Sizing worked out by hand: the sum of harm by the weights as they are written (our own choice, no source), bounds from both
 * sides, and whole answers for small charts. Where a spread is given as next to nothing, an expectation is the value itself.
 */
import { describe, expect, it } from "vitest";
import type { SizeChart } from "../../../src/core/chart/sizeChart";
import { rankAlternatives, type AlternativeInputs } from "../../../src/core/sizing/alternatives";
import { alterationFor, bustHarm, frameHarm } from "../../../src/core/sizing/harm";
import { intervalOf, marginOf, pickInterval } from "../../../src/core/sizing/pickInterval";
import {
  bustOnHalves,
  cupOnHalf,
  outsideOf,
  ownPicksOf,
  pickSizing,
  reachOf,
} from "../../../src/core/sizing/pickSizing";
import {
  draftedCup,
  frameHarms,
  leastHarm,
  offersFor,
  weighWay,
  type TakenGirths,
} from "../../../src/core/sizing/pickWay";
import type { CupPick } from "../../../src/core/sizing/sizing";
import { girthAt, settleLevel, solveLevel } from "../../../src/core/sizing/solveLevel";

const SURE = 1e-9;
/** 1/√(2π). */
const PEAK = 1 / Math.sqrt(2 * Math.PI);

const size = (label: string, bust: number) => ({ label, bust, waist: bust - 180, hip: bust + 60 });
const cups = [
  { label: "B", difference: 50 },
  { label: "C", difference: 75 },
] as const;
/** Upper chests 790, 830, 870. */
const chart: SizeChart = {
  sizes: [size("10", 840), size("12", 880), size("14", 920)],
  draftedDifference: 50,
  cups: [],
};
const cupped: SizeChart = { ...chart, cups };

const taken = (bust: number, upperChest: number | null, spread = SURE): TakenGirths => ({
  bust: { value: bust, spread },
  upperChest: upperChest === null ? null : { value: upperChest, spread },
});

describe("the harm of a base size", () => {
  const interval = { upperChest: 830, from: 810, to: 850 };

  it.each([
    [830, 0],
    [840, 7.5],
    [820, 7.5],
    [850, 15],
    // Ten beyond the bound: 30 off at three quarters, and eight for each that it lies outside.
    [860, 22.5 + 80],
    [800, 22.5 + 80],
  ])("for an upper chest of %d that is known", (value, harm) => {
    expect(frameHarm({ value, spread: SURE }, interval)).toBeCloseTo(harm, 6);
  });

  it("in its very middle is what a normal error is to be expected off it: 2 σ/√(2π)", () => {
    expect(frameHarm({ value: 830, spread: 2 }, interval)).toBeCloseTo(0.75 * 2 * 2 * PEAK, 6);
    // On a bound half of the error lies beyond it, and the other bound is 20 spreads away.
    expect(frameHarm({ value: 850, spread: 2 }, interval)).toBeCloseTo(0.75 * 20 + 8 * 2 * PEAK, 5);
    expect(frameHarm({ value: 810, spread: 2 }, interval)).toBeCloseTo(0.75 * 20 + 8 * 2 * PEAK, 5);
  });
});

describe("the harm at the bust", () => {
  it.each([
    [12, 0],
    [-12, 0],
    [12.01, 12.01],
    [-12.01, -12.01],
    [0, 0],
  ])("of %d mm that are lacking %d are let in", (residual, alteration) => {
    expect(alterationFor(residual)).toBe(alteration);
  });

  it.each([
    // Altering at all 15; let in 1.25 a mm, taken out 1.
    [20, 20, 15 + 25],
    [-20, -20, 15 + 20],
    // Left: 1.25 a mm, and half of it to be let out on the toile, or a quarter to be taken in.
    [8, 0, 10 + 4],
    [-8, 0, 10 + 2],
    // Her own alteration of 30 where 20 are lacking leaves 10 too much.
    [20, 30, 15 + 37.5 + 12.5 + 2.5],
    [-20, -30, 15 + 30 + 12.5 + 5],
    [0, 0, 0],
  ])("%d mm lacking and %d let in", (residual, alteration, harm) => {
    expect(bustHarm(residual, alteration, SURE)).toBeCloseTo(harm, 6);
  });

  it("of a bust known to σ: σ/√(2π) is to be expected out of it, and as much in", () => {
    expect(bustHarm(0, 0, 10)).toBeCloseTo((0.5 + 0.25) * 10 * PEAK, 9);
    expect(bustHarm(20, 20, 10)).toBeCloseTo(40 + (0.5 + 0.25) * 10 * PEAK, 9);
    // Left by five spreads: next to all of it is let out, and nothing taken in.
    expect(bustHarm(10, 0, 2)).toBeCloseTo(12.5 + 5, 4);
    expect(bustHarm(-10, 0, 2)).toBeCloseTo(12.5 + 2.5, 4);
  });
});

describe("intervals", () => {
  it("reach half-way to the neighbours, at the ends as far out as in; of one value no way", () => {
    const values = [800, 840, 900];
    expect(values.map((_, index) => intervalOf(values, index))).toEqual([
      { from: 780, to: 820 },
      { from: 820, to: 870 },
      { from: 870, to: 930 },
    ]);
    expect(intervalOf([880], 0)).toEqual({ from: 880, to: 880 });
  });

  it("pick the larger on a bound, and tell how far past an end", () => {
    const at = (wanted: number) => pickInterval([800, 840, 900], wanted);
    expect(at(820)).toEqual({ index: 1, from: 820, to: 870, beyond: 0 });
    expect(at(819.9)).toEqual({ index: 0, from: 780, to: 820, beyond: 0 });
    expect(at(780).beyond).toBe(0);
    expect(at(775)).toEqual({ index: 0, from: 780, to: 820, beyond: 5 });
    expect(at(930)).toEqual({ index: 2, from: 870, to: 930, beyond: 0 });
    expect(at(937)).toEqual({ index: 2, from: 870, to: 930, beyond: 7 });
  });

  it("tell the nearer bound that has another size behind it", () => {
    const values = [800, 840, 900];
    const near = (index: number, wanted: number, spread = 10) => {
      const { margin, runnerUp } = marginOf(values, index, wanted, spread);
      return { margin, runnerUp };
    };
    expect(near(1, 830)).toEqual({ margin: 10, runnerUp: 0 });
    expect(near(1, 860)).toEqual({ margin: 10, runnerUp: 2 });
    // As far from both: the larger.
    expect(near(1, 845)).toEqual({ margin: 25, runnerUp: 2 });
    expect(near(0, 785)).toEqual({ margin: 35, runnerUp: 1 });
    expect(near(2, 925)).toEqual({ margin: 55, runnerUp: 1 });
    expect(marginOf([880], 0, 885, 10)).toEqual({
      margin: Infinity,
      runnerUp: null,
      probability: 0,
      borderline: false,
    });
  });

  it("are borderline above a chance of one in four: 0.6745 of a spread", () => {
    expect(marginOf([800, 840, 900], 1, 826.74, 10).borderline).toBe(true);
    expect(marginOf([800, 840, 900], 1, 826.75, 10).borderline).toBe(false);
  });
});

describe("a line's size", () => {
  it.each([
    [[800, 840, 880], 720, 0, -2],
    [[800, 840, 880], 960, 0, 4],
    [[800, 840, 880], 840, 0, 1],
    [[800, 840, 900], 870, 0, 1.5],
    // Rows that do not differ: any size between them would do, so the nearest.
    [[800, 800, 840], 800, 0.3, 0.3],
    [[800, 800, 840], 800, -3, 0],
    [[800, 800, 840], 800, 5, 1],
    // Rows that fall again: two sizes, the nearer.
    [[800, 840, 800], 820, 0, 0.5],
    [[800, 840, 800], 820, 2, 1.5],
    [[880, 840, 800], 850, 1, 0.75],
    // A step is carried on past the ends alone: 810 and 860 are each within one step, however near another's line is.
    [[800, 840, 900], 810, 0.6, 0.25],
    [[800, 840, 900], 860, 1.6, 4 / 3],
  ])("in %j a girth of %d nearest %d is %d", (finished, wanted, near, at) => {
    const solved = solveLevel(finished, wanted, near);
    expect(solved.ok ? solved.value : NaN).toBeCloseTo(at, 9);
  });

  it("two steps past either end at the most, and in between only where a row reaches it", () => {
    expect(solveLevel([800, 840, 900], 719, 1)).toEqual({ ok: false, failure: { least: 720, most: 1020 } });
    expect(solveLevel([800, 840, 900], 1021, 1)).toEqual({ ok: false, failure: { least: 720, most: 1020 } });
    expect(solveLevel([900, 840, 800], 1021, 1)).toEqual({ ok: false, failure: { least: 720, most: 1020 } });
    // The middle step is carried on nowhere: 700 and 950 lie out of its reach.
    expect(solveLevel([800, 800, 840, 840], 700, 1).ok).toBe(false);
    expect(solveLevel([800, 800, 840, 840], 845, 1).ok).toBe(false);
  });

  it("reads as the straight lines between the printed sizes", () => {
    expect([-1, 0, 0.5, 1, 1.5, 2, 3].map((at) => girthAt([800, 840, 900], at))).toEqual([
      760, 800, 820, 840, 870, 900, 960,
    ]);
  });

  it("settles by the grade there: each of six rounds leaves half where the pieces grow half as fast", () => {
    const half = (at: number): number => 800 + 20 * at;
    expect(settleLevel(1, [800, 840, 880], 840, half)).toBe(2 - 1 / 64);
    const calls: number[] = [];
    settleLevel(1, [800, 840, 880], 840, (at) => {
      calls.push(at);
      return half(at);
    });
    expect(calls).toEqual([1, 1.5, 1.75, 1.875, 1.9375, 1.96875, 1.984375]);
  });

  it("is done where it measures what is wanted, where rows do not differ, and where the next is no nearer", () => {
    const calls: number[] = [];
    const measured = (at: number): number => {
      calls.push(at);
      return 800 + 40 * at;
    };
    expect(settleLevel(0.5, [800, 840], 820, measured)).toBe(0.5);
    expect(settleLevel(0.5, [800, 800], 820, measured)).toBe(0.5);
    expect(calls).toEqual([0.5]);
    expect(settleLevel(0.5, [800, 840], 820.4, () => 820)).toBe(0.5);
    // Twice as fast as the rows say: one step goes as far beyond as it was short.
    expect(settleLevel(0.5, [800, 840], 820, (at) => 780 + 80 * at + 1)).toBe(0.5);
  });
});

describe("what a chart offers", () => {
  it("is every cup of every size, with the bust that it is drafted for", () => {
    expect(offersFor(cupped, {}, false).slice(2, 4)).toEqual([
      { index: 1, cup: cups[0], drafted: 50, upperChest: 830, bust: 880, from: 810, to: 850 },
      { index: 1, cup: cups[1], drafted: 75, upperChest: 830, bust: 905, from: 810, to: 850 },
    ]);
    expect(offersFor({ ...chart, draftedDifference: 60 }, { baseSize: 0 }, false)).toEqual([
      { index: 0, cup: null, drafted: 60, upperChest: 780, bust: 840, from: 760, to: 800 },
    ]);
  });

  it("is narrowed by her own picks, and by the bust to the cup that the chart is drafted for", () => {
    const said = (own: Parameters<typeof offersFor>[1], byBust: boolean) =>
      offersFor(cupped, own, byBust).map(({ index, cup }) => `${index}${cup?.label ?? ""}`);
    expect(said({}, false)).toEqual(["0B", "0C", "1B", "1C", "2B", "2C"]);
    expect(said({ baseSize: 0 }, false)).toEqual(["0B", "0C"]);
    expect(said({ cup: "C" }, false)).toEqual(["0C", "1C", "2C"]);
    expect(said({}, true)).toEqual(["0B", "1B", "2B"]);
    expect(said({ cup: "C" }, true)).toEqual(["0C", "1C", "2C"]);
    expect([draftedCup(chart), draftedCup(cupped), draftedCup({ ...cupped, draftedDifference: 63 })]).toEqual([
      null,
      cups[0],
      cups[1],
    ]);
  });

  it("harms by the upper chest where that is known, all cups of a size alike; else by the bust less the difference", () => {
    const offers = offersFor(cupped, {}, false);
    const known = frameHarms(offers, taken(905, 840));
    // 50 off 790, past its bound by 30; 10 off 830; 30 off 870, past its bound by 10.
    expect(known.map((harm) => Math.round(harm * 1e6) / 1e6)).toEqual([277.5, 277.5, 7.5, 7.5, 102.5, 102.5]);
    const byBust = frameHarms(offers, taken(885, null));
    // 835 for difference 50, 810 for 75.
    expect(byBust.map((harm) => Math.round(harm * 1e6) / 1e6)).toEqual([
      33.75 + 200,
      15,
      3.75,
      15,
      26.25 + 120,
      45 + 320,
    ]);
  });

  it("is weighed: harm of the base size and at the bust, or what she set herself", () => {
    const [offer] = offersFor(chart, { baseSize: 1 }, false);
    if (offer === undefined) throw new Error("no offer");
    expect(weighWay(offer, taken(900, 840))).toEqual({
      offer,
      residual: 20,
      alteration: 20,
      harm: expect.closeTo(7.5 + 40, 6),
    });
    expect(weighWay(offer, taken(900, 840), 0)).toEqual({
      offer,
      residual: 20,
      alteration: 0,
      harm: expect.closeTo(7.5 + 25 + 10, 6),
    });
  });

  it("of near ties takes the smaller alteration, of ways alike the larger", () => {
    const offers = offersFor(chart, {}, false);
    const flat = [0, 0, 0];
    // Half-way between 840 and 880: 20 let in harm 40, 20 taken out 35.
    expect(leastHarm(offers, flat, { value: 860, spread: SURE })).toBe(1);
    // Within 2 of the least: 21 let in on 840, 19 taken out on 880; evened out by the frames, the smaller alteration goes.
    expect(leastHarm(offers, [0, 8, 900], { value: 861, spread: SURE })).toBe(1);
    expect(leastHarm(offers, [0, 10, 900], { value: 861, spread: SURE })).toBe(0);
    // A frame that alone harms nearly as much as all of the first is still weighed: 40.5 and 1.75 beside 41.25.
    const close = offersFor({ ...chart, sizes: [size("a", 840), size("b", 860)] }, {}, false);
    expect(leastHarm(close, [0, 40.5], { value: 861, spread: SURE })).toBe(1);
    expect(leastHarm(close, [0, 41.6], { value: 861, spread: SURE })).toBe(0);
    // With an alteration of her own none is smaller: 37 beside 38, though the second would be let be. 14 and -6 lacking, 5 let in.
    expect(leastHarm(close, [0, 0.25], { value: 854, spread: SURE }, 5)).toBe(0);
    expect(leastHarm(close, [0, 0.25], { value: 854, spread: SURE })).toBe(1);
    // Left alone on either: 10 and 10, the harms alike but for taking in, 2.5 less.
    expect(
      leastHarm(offersFor({ ...chart, sizes: [size("a", 840), size("b", 860)] }, {}, false), [0, 2.5], {
        value: 850,
        spread: SURE,
      }),
    ).toBe(1);
    expect(
      leastHarm(offersFor({ ...chart, sizes: [size("a", 840), size("b", 860)] }, {}, false), [0, 2.6], {
        value: 850,
        spread: SURE,
      }),
    ).toBe(0);
  });
});

describe("whole picks", () => {
  const unsure = { spread: 0, margin: Infinity, runnerUp: null, probability: 0, borderline: false };

  it("by upper chest and bust", () => {
    const picked = pickSizing(cupped, { value: 905, spread: 10 }, { value: 832, spread: 12 }, {});
    expect(picked).toEqual({
      ok: true,
      value: {
        baseSize: {
          label: "12",
          index: 1,
          chosenBy: "upperChest",
          found: 1,
          byBust: false,
          lookedUp: 832,
          chartValue: 830,
          from: 810,
          to: 850,
          beyond: 0,
          margin: expect.any(Number) as number,
          runnerUp: "14",
          spread: 12,
          probability: expect.any(Number) as number,
          borderline: false,
        },
        cup: {
          label: "C",
          chosenBy: "difference",
          difference: 73,
          drafted: 75,
          margin: expect.any(Number) as number,
          runnerUp: "B",
          spread: 10,
          probability: expect.any(Number) as number,
          borderline: expect.any(Boolean) as boolean,
        },
        bust: {
          difference: 73,
          drafted: 905,
          residual: 0,
          asked: 0,
          alteration: 0,
          leftAlone: true,
          chosenBy: "residual",
        },
      },
    });
  });

  it("by the bust alone, where a size stands at the bust that it is drafted for", () => {
    const picked = pickSizing(chart, { value: 885, spread: 10 }, undefined, {});
    expect(picked).toMatchObject({
      ok: true,
      value: {
        baseSize: {
          label: "12",
          index: 1,
          chosenBy: "bust",
          found: 1,
          byBust: true,
          lookedUp: 885,
          chartValue: 880,
          from: 860,
          to: 900,
          beyond: 0,
          runnerUp: "14",
          spread: 10,
        },
        bust: { difference: null, drafted: 880, residual: 5, asked: 0, leftAlone: true },
      },
    });
    expect(picked.ok && picked.value.cup).toEqual({
      ...unsure,
      label: null,
      chosenBy: "none",
      difference: null,
      drafted: 50,
    });
  });

  it("as she set them, and what would have been found", () => {
    const picked = pickSizing(
      cupped,
      { value: 905, spread: 10 },
      { value: 832, spread: 12 },
      {
        baseSize: "14",
        cup: "B",
        bustAlteration: -30,
      },
    );
    expect(picked).toMatchObject({
      ok: true,
      value: {
        baseSize: { label: "14", index: 2, chosenBy: "wearer", found: 1, chartValue: 870, from: 810, to: 850 },
        cup: { label: "B", chosenBy: "wearer", drafted: 50, difference: 73 },
        bust: { drafted: 920, residual: -15, asked: -30, alteration: -30, leftAlone: false, chosenBy: "wearer" },
      },
    });
  });

  it("refuse what the chart has not: a size, a cup, either half's cup", () => {
    const refused = (picks: Parameters<typeof ownPicksOf>[1]) => ownPicksOf(cupped, picks);
    expect(refused({ baseSize: "99" })).toEqual({
      ok: false,
      failure: { code: "plan/base-size-unknown", label: "99" },
    });
    for (const picks of [
      { cup: "Z" },
      { halfCups: { left: "Z", right: "B" } },
      { halfCups: { left: "B", right: "Z" } },
    ])
      expect(refused(picks)).toEqual({ ok: false, failure: { code: "plan/cup-unknown", label: "Z" } });
    expect(refused({ baseSize: "10", cup: "C", bustAlteration: 4 })).toEqual({
      ok: true,
      value: { baseSize: 0, cup: "C", bustAlteration: 4 },
    });
    // A pattern without cups asks for none.
    expect(ownPicksOf(chart, { cup: "Z" })).toEqual({ ok: true, value: {} });
  });

  it("refuse a body two steps and more past an end, by the girth that is looked up, unless she set the size", () => {
    expect(reachOf([800, 840, 900])).toEqual({ least: 720, most: 1020 });
    const outside = { code: "plan/outside-chart", least: 710, most: 950 } as const;
    expect(outsideOf(chart, taken(900, 710))).toBeNull();
    expect(outsideOf(chart, taken(900, 950))).toBeNull();
    expect(outsideOf(chart, taken(900, 709))).toEqual({ ...outside, level: "upperChest", wanted: 709 });
    expect(outsideOf(chart, taken(900, 951))).toEqual({ ...outside, level: "upperChest", wanted: 951 });
    expect(outsideOf(chart, taken(759, null))).toEqual({
      code: "plan/outside-chart",
      level: "bust",
      wanted: 759,
      least: 760,
      most: 1000,
    });
    expect(outsideOf(chart, taken(760, null))).toBeNull();
    const off = [
      { value: 1000, spread: 10 },
      { value: 951, spread: 12 },
    ] as const;
    expect(pickSizing(chart, ...off, {})).toEqual({
      ok: false,
      failure: { ...outside, level: "upperChest", wanted: 951 },
    });
    expect(pickSizing(chart, ...off, { baseSize: "14" }).ok).toBe(true);
    expect(pickSizing(chart, ...off, { baseSize: "99" })).toMatchObject({
      failure: { code: "plan/base-size-unknown" },
    });
  });

  it("tell how far past the last interval a body lies, and no other size further out", () => {
    const picked = pickSizing(chart, { value: 965, spread: 10 }, { value: 915, spread: 12 }, {});
    expect(picked).toMatchObject({ ok: true, value: { baseSize: { label: "14", beyond: 25, from: 850, to: 890 } } });
    const alone = pickSizing(
      { ...chart, sizes: [size("a", 600), size("b", 880)] },
      { value: 885, spread: 10 },
      { value: 835, spread: 12 },
      {},
    );
    // No error within 60 mm would change it.
    expect(alone).toMatchObject({
      ok: true,
      value: { baseSize: { ...unsure, spread: 12, label: "b" } },
    });
  });

  const cup: CupPick = {
    ...unsure,
    spread: 10,
    margin: 4,
    label: "B",
    chosenBy: "difference",
    difference: 60,
    drafted: 50,
  };
  const bust = {
    difference: 60,
    drafted: 880,
    residual: 20,
    asked: 20,
    alteration: 20,
    leftAlone: false,
    chosenBy: "residual",
  } as const;

  it("of one half with a cup of its own", () => {
    expect(cupOnHalf(cup, cupped, "C")).toEqual({
      ...unsure,
      label: "C",
      chosenBy: "wearer",
      difference: 60,
      drafted: 75,
    });
    expect(cupOnHalf(cup, cupped, undefined)).toBe(cup);
    expect(cupOnHalf(cup, cupped, "Z")).toBe(cup);
  });

  it("of two halves: the bust is drafted for the middle of the two cups", () => {
    const c = { ...cup, label: "C", drafted: 75 };
    expect(bustOnHalves(bust, cup, [cup, c])).toEqual({
      ...bust,
      drafted: 892.5,
      residual: 7.5,
      leftAlone: true,
      asked: 0,
      alteration: 0,
    });
    expect(bustOnHalves(bust, cup, [c, c])).toEqual({
      ...bust,
      drafted: 905,
      residual: -5,
      leftAlone: true,
      asked: 0,
      alteration: 0,
    });
    expect(bustOnHalves({ ...bust, residual: 50 }, cup, [cup, c])).toMatchObject({
      residual: 37.5,
      asked: 37.5,
      alteration: 37.5,
      leftAlone: false,
    });
    expect(bustOnHalves({ ...bust, residual: 24.5 }, cup, [cup, c]).leftAlone).toBe(true);
    expect(bustOnHalves({ ...bust, residual: 24.6 }, cup, [cup, c]).leftAlone).toBe(false);
    // What she set stays.
    expect(bustOnHalves({ ...bust, chosenBy: "wearer", asked: 30, alteration: 28 }, cup, [cup, c])).toMatchObject({
      residual: 7.5,
      asked: 30,
      alteration: 30,
    });
  });
});

describe("alternatives", () => {
  const inputs: AlternativeInputs = {
    chart,
    girths: taken(900, 830),
    own: {},
    finished: { waist: [740, 780, 820], hip: [990, 1030, 1070] },
    waistTarget: 795,
    hipTarget: 1031,
    picked: { baseSize: 1, cup: null },
  };

  it("are told whole, the planner's own first, then by their harm", () => {
    expect(rankAlternatives(inputs)).toEqual([
      {
        baseSize: "12",
        cup: null,
        residual: 20,
        alteration: 20,
        baseSizeMisfit: 0,
        waistMove: 15,
        hipMove: 1,
        // Waist and bust; a hip within 1 mm is let be.
        alterations: 2,
        // Half of the bust on each half, a quarter of waist and hip at each side-seam edge.
        largestMove: 10,
        harm: expect.closeTo(40, 6),
        picked: true,
      },
      {
        baseSize: "14",
        cup: null,
        residual: -20,
        alteration: -20,
        baseSizeMisfit: -40,
        waistMove: -25,
        hipMove: -39,
        alterations: 3,
        largestMove: 10,
        // 40 off at three quarters, 20 past the bound, 20 taken out.
        harm: expect.closeTo(30 + 160 + 35, 6),
        picked: false,
      },
      {
        baseSize: "10",
        cup: null,
        residual: 60,
        alteration: 60,
        baseSizeMisfit: 40,
        waistMove: 55,
        hipMove: 41,
        alterations: 3,
        largestMove: 30,
        harm: expect.closeTo(30 + 160 + 90, 6),
        picked: false,
      },
    ]);
  });

  it("have their largest move at waist or hip where the bust is let be", () => {
    const moved = (waistTarget: number, hipTarget: number | null) => {
      const [first] = rankAlternatives({ ...inputs, girths: taken(885, 830), waistTarget, hipTarget });
      return [first?.alteration, first?.hipMove, first?.alterations, first?.largestMove];
    };
    expect(moved(820, 1030)).toEqual([0, 0, 1, 10]);
    expect(moved(740, 1030)).toEqual([0, 0, 1, 10]);
    expect(moved(781, 1070)).toEqual([0, 40, 1, 10]);
    expect(moved(781.1, 990)).toEqual([0, -40, 2, 10]);
    expect(moved(780, null)).toEqual([0, 0, 0, 0]);
    const [waistOnly] = rankAlternatives({ ...inputs, finished: { ...inputs.finished, hip: null } });
    expect(waistOnly?.hipMove).toBe(0);
    const [byBust] = rankAlternatives({ ...inputs, girths: taken(885, null) });
    expect(byBust?.baseSizeMisfit).toBe(0);
    // Nothing tells the cup then: it is the drafted one, or her own.
    const cutIn = (own: AlternativeInputs["own"]) =>
      rankAlternatives({
        ...inputs,
        chart: cupped,
        girths: taken(885, null),
        own,
        picked: { baseSize: 1, cup: own.cup ?? "B" },
      }).map(({ cup }) => cup);
    expect([cutIn({}), cutIn({ cup: "C" })]).toEqual([
      ["B", "B", "B"],
      ["C", "C", "C"],
    ]);
  });

  it("are five at the most, of two sizes either way, and what is cut is always among them", () => {
    const wide: SizeChart = {
      ...cupped,
      sizes: [760, 800, 840, 880, 920, 960, 1000].map((bust) => size(String(bust), bust)),
    };
    const ranked = (baseSize: number, cup: string) =>
      rankAlternatives({
        ...inputs,
        chart: wide,
        girths: taken(880, 830),
        finished: { waist: wide.sizes.map(({ waist }) => waist), hip: null },
        picked: { baseSize, cup },
      });
    const own = ranked(3, "B");
    expect(own).toHaveLength(5);
    expect(own.map(({ baseSize, picked }) => [baseSize, picked])).toEqual([
      ["880", true],
      // 25 taken out; then 190 for the frame, and 15 let in, 40 taken out, 40 let in.
      ["880", false],
      ["840", false],
      ["920", false],
      ["840", false],
    ]);
    const hers = ranked(6, "C");
    expect(hers).toHaveLength(5);
    expect(hers.slice(0, 4)).toEqual(own.slice(0, 4).map((one) => ({ ...one, picked: false })));
    expect(hers.at(-1)).toMatchObject({ baseSize: "1000", cup: "C", picked: true });
    // Among the first five it stands where its harm puts it.
    expect(ranked(3, "C").map(({ picked }) => picked)).toEqual([false, true, false, false, false]);
  });
});
