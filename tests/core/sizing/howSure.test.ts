/**
 * How sure the picks are: against tape errors drawn by lot and the rule written out afresh, and, where one girth decides,
 * against the printed table of the normal distribution.
 */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SizeChart } from "../../../src/core/chart/sizeChart";
import { spreadOfMean } from "../../../src/core/measures/repeatability";
import { measuresOf, tapesOf, type Tapes } from "../../../src/core/measures/tape";
import type { Work } from "../../../src/core/decisions/work";
import { invariant } from "../../../src/core/result";
import { howSure, waysOf, type HowSure, type Way } from "../../../src/core/sureness/howSure";
import { weighedPlaces } from "../../../src/core/statistics/normal";
import { anyAmount } from "../../support/amounts";
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

/** The nearest of a growing row; a tie goes up. */
function nearest(row: readonly number[], wanted: number): number {
  let best = 0;
  row.forEach((value, at) => {
    if (Math.abs(value - wanted) <= Math.abs((row[best] ?? 0) - wanted)) best = at;
  });
  return best;
}

/** The planner's rule as README and the method tell it, written out afresh. */
function ruled(of: SizeChart, bust: number, chest: number): string {
  const difference = bust - chest;
  const byBust = of.cups.length === 0 && Math.abs(difference - of.draftedDifference) <= 12;
  const row = of.sizes.map((size) => (byBust ? size.bust : size.bust - of.draftedDifference));
  const girth = byBust ? bust : chest;
  const [first = 0, second = 0] = row;
  const [last = 0, before = 0] = row.toReversed();
  if (girth < first - 2 * (second - first) || girth > last + 2 * (last - before)) return "off - nothing";
  const size = of.sizes[nearest(row, girth)]?.label ?? "";
  const cup =
    of.cups[
      nearest(
        of.cups.map((one) => one.difference),
        difference,
      )
    ];
  const over = difference - (cup?.difference ?? of.draftedDifference);
  return `${size} ${cup?.label ?? "-"} ${over > 12 ? "full" : over < -12 ? "small" : "nothing"}`;
}

describe("how sure the ways are, against 200 000 readings drawn by lot", () => {
  const bodies = [
    { name: "in the middle of a size", of: chart, bust: 905, chest: 832 },
    { name: "between two sizes and two cups", of: chart, bust: 937, chest: 851 },
    { name: "a bust larger than the largest cup", of: chart, bust: 975, chest: 848 },
    { name: "no cup versions, the drafted difference", of: noCups, bust: 899, chest: 848 },
    { name: "no cup versions, near where the bust is altered", of: noCups, bust: 915, chest: 854 },
    { name: "at the small end of the chart", of: chart, bust: 690, chest: 634 },
    { name: "no cup versions, at the large end of the chart", of: noCups, bust: 1380, chest: 1334 },
  ];
  it.each(bodies)(
    "$name",
    ({ of, bust, chest }) => {
      const [bustSpread, chestSpread] = [10, 12];
      const draws = 200_000;
      const error = normals(20261125);
      const counts = new Map<string, number>();
      for (let i = 0; i < draws; i += 1) {
        const key = ruled(of, bust + bustSpread * error(), chest + chestSpread * error());
        counts.set(key, (counts.get(key) ?? 0) + 1);
      }
      const ways = waysOf(of, { value: bust, spread: bustSpread }, { value: chest, spread: chestSpread });
      const told = new Map(ways.map((way) => [keyOf(way), way.probability]));
      expect(sum(ways)).toBeCloseTo(1, 8);
      for (const key of new Set([...counts.keys(), ...told.keys()])) {
        const probability = told.get(key) ?? 0;
        const standardError = Math.sqrt((probability * (1 - probability)) / draws) + 1 / draws;
        expect(Math.abs((counts.get(key) ?? 0) / draws - probability) / standardError).toBeLessThan(4);
      }
    },
    30_000,
  );

  it("holds for spreads far apart too: a guessed upper chest beside a bust read five times", () => {
    const error = normals(7);
    const draws = 200_000;
    let b = 0;
    for (let i = 0; i < draws; i += 1) b += ruled(chart, 905 + 4 * error(), 845 + 28 * error()).includes(" B ") ? 1 : 0;
    const told = waysOf(chart, { value: 905, spread: 4 }, { value: 845, spread: 28 })
      .filter(({ cup }) => cup === "B")
      .reduce((all, { probability }) => all + probability, 0);
    expect(Math.abs(b / draws - told)).toBeLessThan(4 * Math.sqrt(0.25 / draws));
  }, 30_000);
});

// Abramowitz and Stegun, table 26.1, from memory: the normal distribution below z.
const BELOW = { "0.5": 0.691462, "1": 0.841345, "1.5": 0.933193, "2": 0.97725, "3": 0.99865 };

describe("where one girth decides, the printed table of the normal distribution", () => {
  const byBust = (value: number, spread: number): readonly Way[] => waysOf(chart, { value, spread }, null);
  const of = (ways: readonly Way[], size: string): number =>
    ways.filter((way) => way.size === size).reduce((all, { probability }) => all + probability, 0);

  // Size 12 is printed for 880 and reaches from 860 to 900.
  it.each([
    [880, 20, 2 * BELOW["1"] - 1],
    [880, 10, 2 * BELOW["2"] - 1],
    [890, 10, BELOW["1"] - (1 - BELOW["3"])],
    [900, 20, BELOW["2"] - 0.5],
    [870, 20, BELOW["1.5"] - (1 - BELOW["0.5"])],
  ])("a bust of %d mm good to %d mm", (value, spread, expected) => {
    expect(of(byBust(value, spread), "12")).toBeCloseTo(expected, 5);
  });

  it("the frame by an upper chest in the same way: size 12 from 810 to 850", () => {
    const ways = waysOf(chart, { value: 905, spread: 10 }, { value: 850, spread: 12 });
    expect(of(ways, "12")).toBeCloseTo(0.5, 3);
    expect(of(ways, "14")).toBeCloseTo(0.5, 3);
    expect(of(waysOf(chart, { value: 905, spread: 10 }, { value: 830, spread: 20 }), "12")).toBeCloseTo(
      2 * BELOW["1"] - 1,
      5,
    );
  });

  it("the cup by both, their variances added: 6 and 8 mm make 10, and cup C reaches from 62.5 to 87.5", () => {
    const cups = (difference: number): number =>
      waysOf(chart, { value: 830 + difference, spread: 6 }, { value: 830, spread: 8 })
        .filter(({ cup }) => cup === "C")
        .reduce((all, { probability }) => all + probability, 0);
    // 72.5 is one spread above the lower bound and one and a half below the upper.
    expect(cups(72.5)).toBeCloseTo(BELOW["1"] - (1 - BELOW["1.5"]), 5);
    expect(cups(67.5)).toBeCloseTo(BELOW["0.5"] - (1 - BELOW["2"]), 5);
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
        const ways = waysOf(
          hasCups ? chart : noCups,
          { value: bust, spread: bustSpread },
          { value: bust - difference, spread: chestSpread },
        );
        expect(sum(ways)).toBeCloseTo(1, 8);
        expect(Math.min(...ways.map(({ probability }) => probability))).toBeGreaterThan(0);
        expect(new Set(ways.map(keyOf)).size).toBe(ways.length);
      }),
    );
  });

  it("girths mirrored about a bound between two sizes of equal steps have the two sizes' chances exchanged", () => {
    fc.assert(
      fc.property(anyAmount(0, 30), anyAmount(4, 15), anyAmount(4, 15), (off, bustSpread, chestSpread) => {
        const size = (chest: number, label: string): number =>
          waysOf(chart, { value: chest + 75, spread: bustSpread }, { value: chest, spread: chestSpread })
            .filter((way) => way.size === label)
            .reduce((all, { probability }) => all + probability, 0);
        // 850 lies between sizes 12 and 14 (830 and 870).
        expect(size(850 - off, "12")).toBeCloseTo(size(850 + off, "14"), 6);
      }),
    );
  });

  it("known exactly, the planner's own way is certain", () => {
    fc.assert(
      fc.property(anyAmount(770, 1150), anyAmount(30, 120), fc.boolean(), (bust, difference, hasCups) => {
        const of = hasCups ? chart : noCups;
        const [girth, chest] = [Math.round(bust) + 0.25, Math.round(bust - difference) + 0.125];
        const [first] = waysOf(of, { value: girth, spread: 0.02 }, { value: chest, spread: 0.02 });
        expect(first === undefined ? "" : keyOf(first)).toBe(ruled(of, girth, chest));
        // The nearest bound lies at least an eighth of a millimetre off, six spreads of either girth.
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

  it("have the planner's own pick as likely as its margins leave: one side's chance taken away, or at the most twice that", () => {
    expect(works.length).toBeGreaterThan(50);
    for (const work of works) {
      const { baseSize, cup } = planOf(work).sizing;
      const sure = sureOf(work);
      for (const [own, pick] of [
        [chance(sure.sizes, baseSize.label), baseSize],
        [chance(sure.cups, cup.label ?? ""), cup],
      ] as const) {
        expect(own).toBeLessThanOrEqual(1 - pick.probability + 1e-6);
        expect(own).toBeGreaterThanOrEqual(1 - 2 * pick.probability - 1e-6);
      }
      expect(sure.picked).toMatchObject({ size: baseSize.label, cup: cup.label });
    }
  });
});

describe("how sure a work's picks are", () => {
  it("lays the wearer's own picks aside", () => {
    const own = sureOf({ ...testWork, picks: { baseSize: "16", cup: "B", bustAlteration: 40 } });
    expect(own.ways).toEqual(sureOf(testWork).ways);
    expect(own.picked).toEqual({ size: "12", cup: "C", bust: "nothing" });
  });

  it("goes by the same spreads as the plan's own margins: one reading of each, 10 and 12 mm", () => {
    const { baseSize, cup } = planOf(testWork).sizing;
    expect(baseSize.spread).toBe(12);
    expect(cup.spread).toBeCloseTo(Math.hypot(10, 12), 12);
    // The upper chest of 832 is 18 mm, one and a half spreads, short of size 14; the far side of it hardly counts.
    expect(baseSize.probability).toBeCloseTo(1 - BELOW["1.5"], 5);
    expect(chance(sureOf(testWork).sizes, "14")).toBeCloseTo(1 - BELOW["1.5"], 4);
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
    expect(new Set(sure.ways.map(({ cup, bust }) => `${cup ?? ""} ${bust}`))).toEqual(
      new Set([`${planOf(work).sizing.cup.label ?? ""} nothing`]),
    );
    // 905 is 5 mm past the bound between 12 and 14: half a spread.
    expect(chance(sure.sizes, "14")).toBeCloseTo(BELOW["0.5"], 3);
    expect(sure.cups.length).toBeGreaterThan(1);
    expect(sure.cups.reduce((all, { probability }) => all + probability, 0)).toBeCloseTo(1, 6);
  });

  it("without an upper chest says what frame that would probably pick", () => {
    expect(sureOf(testWork).sizesGuessed).toEqual([]);
    const { upperChestGirth: _, ...others } = measuresOf(testWork.tapes);
    const { sizesGuessed, girths } = sureOf({ ...testWork, tapes: tapesOf(others) });
    const { value, spread } = invariant(girths.estimate, "estimate");
    const { sizes: rows, draftedDifference } = testWork.pattern.chart;
    const at = rows.findIndex(({ label }) => label === "12");
    const [below, own, above] = [at - 1, at, at + 1].map((row) => invariant(rows[row], "row").bust - draftedDifference);
    const [from, to] = [
      (invariant(below, "below") + invariant(own, "own")) / 2,
      (invariant(own, "own") + invariant(above, "above")) / 2,
    ];
    // The frame goes by the upper chest alone: the share of its normal distribution between half-ways, summed in small steps.
    const steps = 20_000;
    const rate = (girth: number): number =>
      Math.exp(-(((girth - value) / spread) ** 2) / 2) / (spread * Math.sqrt(2 * Math.PI));
    const share =
      Array.from({ length: steps }, (_step, step) => rate(from + ((step + 0.5) * (to - from)) / steps)).reduce(
        (all, one) => all + one,
        0,
      ) *
      ((to - from) / steps);
    expect(chance(sizesGuessed, "12")).toBeCloseTo(share, 4);
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
