/**
 * How sure the picks are: against tape errors drawn by lot and put through the planner's rule (which `pickWay.test.ts` holds
 * against the rule written out afresh), and, where one girth decides, against the normal distribution summed in small steps.
 */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SizeChart } from "../../../src/core/chart/sizeChart";
import { spreadOfMean } from "../../../src/core/measures/repeatability";
import { measuresOf, tapesOf, type Tapes } from "../../../src/core/measures/tape";
import type { Work } from "../../../src/core/decisions/work";
import { invariant } from "../../../src/core/result";
import { howSure, type HowSure } from "../../../src/core/sureness/howSure";
import { waysOf, type Way } from "../../../src/core/sureness/ruleRegions";
import { suretyOf } from "../../../src/core/sureness/surety";
import { outsideOf } from "../../../src/core/sizing/pickSizing";
import { pickWay, type OwnPicks, type TakenGirths } from "../../../src/core/sizing/pickWay";
import { weighedPlaces } from "../../../src/core/statistics/normal";
import { anyAmount } from "../../support/amounts";
import { unevenChart } from "../../support/charts";
import { women1988 } from "../../support/surveys";
import { planOf, testWork } from "../../support/works";

const { chart } = testWork.pattern;
const noCups: SizeChart = { ...chart, cups: [] };

function sureOf(work: Work): HowSure {
  const sure = howSure(work);
  if (!sure.ok) throw new Error(JSON.stringify(sure.failure));
  return sure.value;
}

const chance = (chances: HowSure["sizes"], label: string): number =>
  chances.find((one) => one.label === label)?.probability ?? 0;
const sum = (ways: readonly Way[]): number => ways.reduce((all, { probability }) => all + probability, 0);
const keyOf = ({ size, cup, bust }: Omit<Way, "probability">): string => `${size ?? "off"} ${cup ?? "-"} ${bust}`;

/** A linear congruential generator (Numerical Recipes' constants, from memory) and the Box–Muller transform. */
function normals(seed: number): () => number {
  let state = seed >>> 0;
  const even = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even());
}

const read = (
  bust: number,
  chest: number | null,
  [bustSpread, chestSpread]: readonly number[] = [10, 12],
): TakenGirths => ({
  bust: { value: bust, spread: bustSpread ?? NaN },
  upperChest: chest === null ? null : { value: chest, spread: chestSpread ?? NaN },
});

/** What the planner cuts for these readings. */
function ruled(of: SizeChart, girths: TakenGirths, own: OwnPicks = {}): string {
  if (own.baseSize === undefined && outsideOf(of, girths) !== null) return "off - nothing";
  const { offer, alteration } = pickWay(of, girths, own);
  const done = alteration > 0 ? "full" : alteration < 0 ? "small" : "nothing";
  return `${of.sizes[offer.index]?.label ?? ""} ${offer.cup?.label ?? "-"} ${done}`;
}

describe("how sure the ways are, against 40 000 readings drawn by lot", () => {
  const bodies: readonly { name: string; of: SizeChart; bust: number; chest: number; own?: OwnPicks }[] = [
    { name: "in the middle of a size", of: chart, bust: 905, chest: 832 },
    { name: "between two sizes and two cups", of: chart, bust: 937, chest: 851 },
    { name: "a bust larger than the largest cup", of: chart, bust: 975, chest: 848 },
    { name: "no cup versions, the drafted difference", of: noCups, bust: 899, chest: 848 },
    { name: "no cup versions, near where the bust is altered", of: noCups, bust: 915, chest: 854 },
    { name: "at the small end of the chart", of: chart, bust: 690, chest: 634 },
    { name: "no cup versions, at the large end of the chart", of: noCups, bust: 1380, chest: 1334 },
    { name: "on a frame of her own", of: chart, bust: 905, chest: 832, own: { baseSize: 2 } },
    { name: "with a bust alteration of her own", of: chart, bust: 905, chest: 832, own: { bustAlteration: 20 } },
    { name: "on a chart with uneven steps", of: unevenChart, bust: 950, chest: 884 },
  ];
  it.each(bodies)(
    "$name",
    ({ of, bust, chest, own = {} }) => {
      const [bustSpread, chestSpread] = [10, 12];
      const draws = 40_000;
      const error = normals(20261125);
      const counts = new Map<string, number>();
      for (let i = 0; i < draws; i += 1) {
        const key = ruled(of, read(bust + bustSpread * error(), chest + chestSpread * error()), own);
        counts.set(key, (counts.get(key) ?? 0) + 1);
      }
      const ways = waysOf(of, read(bust, chest), own);
      const told = new Map(ways.map((way) => [keyOf(way), way.probability]));
      expect(sum(ways)).toBeCloseTo(1, 8);
      for (const key of new Set([...counts.keys(), ...told.keys()])) {
        const probability = told.get(key) ?? 0;
        const standardError = Math.sqrt((probability * (1 - probability)) / draws) + 1 / draws;
        // Cells of the upper chest are as the rule is in their middle, which is good to a thousandth.
        expect(Math.abs((counts.get(key) ?? 0) / draws - probability)).toBeLessThan(4 * standardError + 0.001);
      }
    },
    120_000,
  );

  it("holds for spreads far apart too: a guessed upper chest beside a bust read five times", () => {
    const error = normals(7);
    const draws = 40_000;
    let b = 0;
    for (let i = 0; i < draws; i += 1)
      b += ruled(chart, read(905 + 4 * error(), 845 + 28 * error(), [4, 28])).includes(" B ") ? 1 : 0;
    const told = waysOf(chart, read(905, 845, [4, 28]))
      .filter(({ cup }) => cup === "B")
      .reduce((all, { probability }) => all + probability, 0);
    expect(Math.abs(b / draws - told)).toBeLessThan(4 * Math.sqrt(0.25 / draws) + 0.001);
  }, 120_000);
});

// Abramowitz and Stegun, table 26.1, from memory: the normal distribution below z.
const BELOW = { "1": 0.841345, "1.2": 0.88493, "3": 0.99865 };

describe("where one girth decides, the normal distribution", () => {
  const byBust = (value: number, spread: number): readonly Way[] => waysOf(chart, read(value, null, [spread]));
  const of = (ways: readonly Way[], size: string): number =>
    ways.filter((way) => way.size === size).reduce((all, { probability }) => all + probability, 0);

  it.each([
    [880, 20],
    [890, 10],
    [900, 20],
    [870, 5],
  ])("summed in small steps over the rule for a bust of %d mm good to %d mm", (value, spread) => {
    let [within, all] = [0, 0];
    for (let z = -5; z <= 5; z += 0.002) {
      const weight = Math.exp((-z * z) / 2);
      all += weight;
      if (ruled(chart, read(value + z * spread, null, [spread])).startsWith("12 ")) within += weight;
    }
    expect(of(byBust(value, spread), "12")).toBeCloseTo(within / all, 2);
  });

  it("the bust alteration where frame and cup are beyond doubt: left alone from 868 to 892 on size 12 without cups", () => {
    // 892 is 12 more than the 880 of size 12, and neighbours lie 40 off: half on, half off.
    const ways = waysOf(noCups, read(892, 830, [6, 1]));
    expect(ways.map(keyOf)).toEqual(expect.arrayContaining(["12 - nothing", "12 - full"]));
    expect(ways[0]?.probability).toBeCloseTo(0.5, 3);
    expect(ways.find(({ bust }) => bust === "full")?.probability).toBeCloseTo(0.5, 3);
    // 886 is one spread below, and three above the other bound.
    expect(waysOf(noCups, read(886, 830, [6, 1]))[0]?.probability).toBeCloseTo(BELOW["1"] - (1 - BELOW["3"]), 3);
  });

  it("at the end of the chart: two steps of 40 below 760 is half on, half off", () => {
    expect(of(byBust(680, 10), "6")).toBeCloseTo(0.5, 6);
    expect(byBust(680, 10).find(({ size }) => size === null)?.probability).toBeCloseTo(0.5, 6);
    expect(of(byBust(690, 10), "6")).toBeCloseTo(BELOW["1"], 5);
  });

  it("the rule of integration gives the whole, the mean and the variance of the normal distribution", () => {
    const places = weighedPlaces(50, 4, 50 - 6.7 * 4, 50 + 6.7 * 4, 6);
    const moment = (f: (at: number) => number): number =>
      places.reduce((all, { at, weight }) => all + weight * f(at), 0);
    expect(moment(() => 1)).toBeCloseTo(1, 9);
    expect(moment((at) => at)).toBeCloseTo(50, 7);
    expect(moment((at) => (at - 50) ** 2)).toBeCloseTo(16, 6);
  });
});

describe("what follows for any body", () => {
  const girths = fc.tuple(anyAmount(700, 1300), anyAmount(20, 140), anyAmount(3, 14), anyAmount(3, 30), fc.boolean());

  it("chances are none below 0 and add up to 1", () => {
    fc.assert(
      fc.property(girths, ([bust, difference, bustSpread, chestSpread, hasCups]) => {
        const ways = waysOf(hasCups ? chart : noCups, read(bust, bust - difference, [bustSpread, chestSpread]));
        expect(sum(ways)).toBeCloseTo(1, 8);
        expect(Math.min(...ways.map(({ probability }) => probability))).toBeGreaterThan(0);
        expect(new Set(ways.map(keyOf)).size).toBe(ways.length);
      }),
    );
  });

  it("known exactly, the planner's own way is certain", () => {
    fc.assert(
      fc.property(anyAmount(770, 1150), anyAmount(30, 120), fc.boolean(), (bust, difference, hasCups) => {
        const of = hasCups ? chart : noCups;
        const [girth, chest] = [Math.round(bust) + 0.25, Math.round(bust - difference) + 0.125];
        const [first] = waysOf(of, read(girth, chest, [1e-9, 1e-9]));
        expect(first === undefined ? "" : keyOf(first)).toBe(ruled(of, read(girth, chest, [1e-9, 1e-9])));
        expect(first?.probability).toBeGreaterThan(0.999);
      }),
    );
  });

  it("readings that agree never make a measure less sure, nor the likeliest size of a body at its centre", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 4 }), (count) => {
        const reads = (times: number): Tapes => [
          {
            readings: {
              bustGirth: Array<number>(times).fill(905),
              upperChestGirth: Array<number>(times).fill(830),
              waistGirth: [752],
              hipGirth: [1034],
            },
          },
        ];
        expect(spreadOfMean("bustGirth", Array<number>(count + 1).fill(905))).toBeLessThan(
          spreadOfMean("bustGirth", Array<number>(count).fill(905)),
        );
        const [fewer, more] = [count, count + 1].map((times) => sureOf({ ...testWork, tapes: reads(times) }));
        expect(chance(more?.sizes ?? [], "12")).toBeGreaterThan(chance(fewer?.sizes ?? [], "12"));
        expect(chance(more?.cups ?? [], "C")).toBeGreaterThan(chance(fewer?.cups ?? [], "C"));
      }),
    );
  });
});

describe("surveyed women", () => {
  // 60 of them, one reading of each girth; her upper chest at mid-armhole stands in for the tape's.
  const works = women1988
    .filter((_, at) => at % 37 === 0)
    .map(({ measures }) => ({ ...testWork, tapes: tapesOf(measures) }));

  it("are told of the very way that the plan cuts, and the way beside it is another", () => {
    expect(works.length).toBeGreaterThan(50);
    for (const work of works) {
      const { baseSize, cup, bust } = planOf(work).sizing;
      const sure = sureOf(work);
      const done = bust.asked > 0 ? "full" : bust.asked < 0 ? "small" : "nothing";
      expect(sure.picked).toEqual({ size: baseSize.label, cup: cup.label, bust: done });
      expect([sure.runnerUp?.size, sure.runnerUp?.cup]).not.toEqual([baseSize.label, cup.label]);
      expect(sure.runnerUp?.probability ?? 0).toBeLessThanOrEqual(1 - (sure.ways[0]?.probability ?? 0) + 0.5);
      expect(sure.surety.baseSize).toBe(suretyOf(chance(sure.sizes, baseSize.label)));
      expect(sure.surety.cup).toBe(suretyOf(chance(sure.cups, cup.label ?? "")));
      expect(sure.surety.bust).toBe(suretyOf(sure.bust[done]));
    }
  });
});

describe("how sure a work's picks are", () => {
  it("tells the rest around the wearer's own picks, and of those nothing", () => {
    const own = sureOf({ ...testWork, picks: { baseSize: "16" } });
    expect(own.sizes).toEqual([{ label: "16", probability: expect.closeTo(1, 9) }]);
    // Upper chest 910 of size 16, with the smallest cup: 960 against her 905.
    expect(own.picked).toEqual({ size: "16", cup: "B", bust: "small" });
    expect(own.surety).toMatchObject({ baseSize: null, cup: "sure", bust: "sure" });
    expect(own.own).toEqual({ baseSize: true, cup: false, bust: false });
    expect(sureOf({ ...testWork, picks: { bustAlteration: 20, waist: 3 } }).surety).toMatchObject({
      bust: null,
      waist: null,
      hip: "fair",
    });
  });

  it("says in one word how sure each pick is: from 90 and from 70 of 100", () => {
    expect([0.95, 0.9, 0.89, 0.7, 0.69, 0.1].map(suretyOf)).toEqual(["sure", "sure", "fair", "fair", "open", "open"]);
    const lines = (hip: readonly number[]): HowSure["surety"] =>
      sureOf({ ...testWork, tapes: [{ readings: { bustGirth: [905], waistGirth: [752], hipGirth: hip } }] }).surety;
    // A line within 3 mm at each of four side-seam edges is one girth within 12: 1.2 spreads of one reading, 77 of 100.
    expect(2 * BELOW["1.2"] - 1).toBeCloseTo(0.77, 3);
    expect(lines([1034])).toMatchObject({ waist: "fair", hip: "fair" });
    // Three that agree: 400/6/3 = 4.71², 2.5 spreads, 99 of 100.
    expect(lines([1034, 1034, 1034]).hip).toBe("sure");
  });

  it("goes by the same spreads as the plan's own margins: one reading of each, 10 and 12 mm", () => {
    const { baseSize, cup } = planOf(testWork).sizing;
    expect(baseSize.spread).toBe(12);
    expect(cup.spread).toBe(10);
    for (const [pick, girth] of [
      [baseSize, "upperChest"],
      [cup, "bust"],
    ] as const) {
      const at = (off: number): string => {
        const girths = girth === "bust" ? read(905 + off, 832) : read(905, 832 + off);
        const [size = "", cupLabel = ""] = ruled(chart, girths).split(" ");
        return girth === "bust" ? cupLabel : size;
      };
      const changed = [-1, 1].filter((way) => at(way * (pick.margin + 0.1)) !== pick.label);
      expect(changed).not.toEqual([]);
      for (const off of [-1, 1]) expect(at(off * (pick.margin - 0.1))).toBe(pick.label);
      expect(changed.map((way) => at(way * (pick.margin + 0.1)))).toContain(pick.runnerUp);
    }
  });

  it("gives the plan's lines their own spreads", () => {
    const tapes: Tapes = [
      { readings: { bustGirth: [905], upperChestGirth: [832], waistGirth: [752, 752, 752, 752], hipGirth: [1034] } },
    ];
    const { levels } = planOf({ ...testWork, tapes });
    // Four that agree: (4 · 10² + 0)/7, over four: the pooled variance by hand.
    expect(levels.find(({ level }) => level === "waist")?.spread).toBeCloseTo(Math.sqrt(400 / 7 / 4), 9);
    expect(levels.find(({ level }) => level === "hip")?.spread).toBe(10);
  });

  it("holds a line nine times in ten: 16.4 mm of girth either way, a quarter of it at each side seam edge", () => {
    const [waist, hip] = sureOf(testWork).lines;
    expect(waist).toMatchObject({ level: "waist", spread: 10 });
    expect(waist?.side).toBeCloseTo(4.11, 2);
    // Hips step by 40: 1034 + 50 lies at 5.35 sizes, and 16.4485 mm are 0.4112 of a step.
    expect(hip?.from).toBeCloseTo(5.35 - 0.4112, 3);
    expect(hip?.to).toBeCloseTo(5.35 + 0.4112, 3);
  });

  it("without an upper chest says what the cup would probably be, and goes by the bust as the plan does", () => {
    const { upperChestGirth: _, ...others } = measuresOf(testWork.tapes);
    const work = { ...testWork, tapes: tapesOf(others) };
    const sure = sureOf(work);
    expect(sure.cupsGuessed).toBe(true);
    expect(sure.girths.upperChest).toBeNull();
    const plan = planOf(work).sizing;
    expect(new Set(sure.ways.map(({ cup }) => cup))).toEqual(new Set([plan.cup.label]));
    expect(sure.picked.size).toBe(plan.baseSize.label);
    expect(sure.cups.length).toBeGreaterThan(1);
    expect(sure.cups.reduce((all, { probability }) => all + probability, 0)).toBeCloseTo(1, 6);
  });

  it("without an upper chest says what frame that would probably pick", () => {
    expect(sureOf(testWork).sizesGuessed).toEqual([]);
    const { upperChestGirth: _, ...others } = measuresOf(testWork.tapes);
    const { sizesGuessed, girths } = sureOf({ ...testWork, tapes: tapesOf(others) });
    const { value, spread } = invariant(girths.estimate, "estimate");
    const error = normals(11);
    const draws = 20_000;
    let twelve = 0;
    for (let i = 0; i < draws; i += 1) {
      const drawn = read(905 + 10 * error(), value + spread * error(), [10, spread]);
      if (ruled(chart, drawn).startsWith("12 ")) twelve += 1;
    }
    expect(Math.abs(chance(sizesGuessed, "12") - twelve / draws)).toBeLessThan(4 * Math.sqrt(0.25 / draws) + 0.001);
  });

  it("asks for a bust", () => {
    expect(howSure({ ...testWork, tapes: tapesOf({ waistGirth: 752 }) })).toEqual({
      ok: false,
      failure: { code: "plan/measure-missing", measures: ["bustGirth"] },
    });
  });

  it("says of a body off the chart that it is", () => {
    const { sizes } = sureOf({
      ...testWork,
      tapes: tapesOf({ ...measuresOf(testWork.tapes), bustGirth: 1600, upperChestGirth: 1540 }),
    });
    expect(sizes).toEqual([{ label: null, probability: 1 }]);
  });
});
