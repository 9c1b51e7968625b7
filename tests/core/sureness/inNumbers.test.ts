/**
 * How sure picks are, on a chart of three sizes 40 mm apart: 84.1 of 100 normal values lie below one standard deviation, 99.865
 * below three (table of the normal distribution); and what a doubted reading takes of what is told.
 */
import { describe, expect, it } from "vitest";
import type { SizeChart } from "../../../src/core/chart/sizeChart";
import type { MeasureName } from "../../../src/core/measures/measure";
import { tapesOf, type Readings } from "../../../src/core/measures/tape";
import type { TakenGirths } from "../../../src/core/sizing/pickWay";
import { doubtedPicks, withDoubts } from "../../../src/core/sureness/doubtedPicks";
import { howSure, type HowSure, type SureInputs } from "../../../src/core/sureness/howSure";
import { nextMeasure } from "../../../src/core/sureness/nextMeasure";
import { chancesOf, waysOf, wayOf } from "../../../src/core/sureness/ruleRegions";
import { testWork } from "../../support/works";

const size = (label: string, bust: number) => ({ label, bust, waist: bust - 180, hip: bust + 60 });
/** Upper chests 790, 830, 870. */
const chart: SizeChart = {
  sizes: [size("10", 840), size("12", 880), size("14", 920)],
  draftedDifference: 50,
  cups: [],
};
const cupped: SizeChart = {
  ...chart,
  cups: [
    { label: "B", difference: 50 },
    { label: "C", difference: 75 },
  ],
};

const girths = (bust: number, spread: number, upperChest: number | null, chestSpread = 0.1): TakenGirths => ({
  bust: { value: bust, spread },
  upperChest: upperChest === null ? null : { value: upperChest, spread: chestSpread },
});
const noCups: SizeChart = { ...testWork.pattern.chart, cups: [] };
const ONE = 0.841345;
const THREE = 0.99865;

const sureOf = (work: SureInputs): HowSure => {
  const sure = howSure(work);
  if (!sure.ok) throw new Error(sure.failure.code);
  return sure.value;
};

describe("the ways of a known upper chest", () => {
  const way = (bust: "nothing" | "full" | "small", probability: number, label: string | null = "12") => ({
    size: label,
    cup: null,
    bust,
    probability: expect.closeTo(probability, 5) as number,
  });

  it("are parted by the normal distribution where the bust begins to be altered: 12 to either side of 880", () => {
    // 892 is one spread above, 868 three below.
    expect(waysOf(chart, girths(886, 6, 830))).toEqual([
      way("nothing", ONE - (1 - THREE)),
      way("full", 1 - ONE),
      way("small", 1 - THREE),
    ]);
    expect(waysOf(chart, girths(874, 6, 830))).toEqual([
      way("nothing", ONE - (1 - THREE)),
      way("small", 1 - ONE),
      way("full", 1 - THREE),
    ]);
  });

  it("with an alteration of her own are one", () => {
    expect(waysOf(chart, girths(886, 6, 830), { bustAlteration: 20 })).toEqual([way("full", 1)]);
    expect(waysOf(chart, girths(886, 6, 830), { bustAlteration: -20 })).toEqual([way("small", 1)]);
    expect(waysOf(chart, girths(886, 6, 830), { bustAlteration: 0 })).toEqual([way("nothing", 1)]);
  });

  it("lie half off the chart at its end, two steps past the last size, unless she set the size", () => {
    expect(waysOf(chart, girths(1000, 6, 951, 1))).toEqual([way("nothing", ONE, null), way("full", 1 - ONE, "14")]);
    expect(waysOf(chart, girths(1000, 6, 949, 1))).toEqual([way("full", ONE, "14"), way("nothing", 1 - ONE, null)]);
    expect(waysOf(chart, girths(700, 6, 709, 1))).toEqual([way("nothing", ONE, null), way("small", 1 - ONE, "10")]);
    expect(waysOf(chart, girths(1000, 6, 951, 1), { baseSize: 2 })).toEqual([way("full", 1, "14")]);
    // Far off: nothing else is told.
    expect(waysOf(chart, girths(1300, 6, 1200))).toEqual([way("nothing", 1, null)]);
  });

  it("name the cup", () => {
    // 905 is the very bust of cup C; let be within 12: two spreads, 97.725 of 100 to each side.
    const [first] = waysOf(cupped, girths(905, 6, 830));
    expect(first).toMatchObject({ size: "12", cup: "C", bust: "nothing" });
    expect(
      wayOf(
        cupped,
        { index: 2, cup: cupped.cups[0] ?? null, drafted: 50, bust: 920, upperChest: 870, from: 850, to: 890 },
        -1,
      ),
    ).toEqual({
      size: "14",
      cup: "B",
      bust: "small",
    });
  });
});

describe("the ways of a bust alone", () => {
  it("of 880 known to 4: three spreads to either side it is let be", () => {
    const ways = waysOf(chart, girths(880, 4, null));
    expect(ways[0]).toEqual({ size: "12", cup: null, bust: "nothing", probability: expect.closeTo(2 * THREE - 1, 4) });
    expect(ways.reduce((all, { probability }) => all + probability, 0)).toBeCloseTo(1, 8);
  });

  it("end where the chart does, two steps of 40 past 920 and before 840", () => {
    const off = (bust: number, own = {}): number =>
      waysOf(chart, girths(bust, 10, null), own).find(({ size: label }) => label === null)?.probability ?? 0;
    expect(off(990)).toBeCloseTo(1 - ONE, 5);
    expect(off(1010)).toBeCloseTo(ONE, 5);
    expect(off(770)).toBeCloseTo(1 - ONE, 5);
    expect(off(750)).toBeCloseTo(ONE, 5);
    expect(off(750, { baseSize: 0 })).toBe(0);
    // What is not off is all of the last size's.
    expect(waysOf(chart, girths(990, 10, null)).find(({ size: label }) => label === "14")?.probability).toBeCloseTo(
      ONE,
      5,
    );
  });
});

it("quickly reckoned, chances are out by a hundredth at the most", () => {
  for (const of of [chart, cupped])
    for (const [bust, chest] of [
      [886, 830],
      [905, 848],
      [893, 838],
      [870, 812],
    ] as const) {
      const told = (isRough: boolean): ReadonlyMap<string, number> => {
        const { ways, chances } = chancesOf(of, girths(bust, 10, chest, 12), {}, isRough);
        return new Map(ways.map((way, at) => [JSON.stringify(way), chances[at] ?? 0]));
      };
      const [rough, fine] = [told(true), told(false)];
      for (const [way, chance] of fine) expect(Math.abs(chance - (rough.get(way) ?? 0))).toBeLessThan(0.01);
      expect([...rough.values()].reduce((all, chance) => all + chance, 0)).toBeCloseTo(1, 9);
    }
});

describe("a reading that is doubted", () => {
  const doubt = (...measures: readonly MeasureName[]) => measures.map((measure) => ({ measure }));

  it("takes with it what rests on it: both upper girths all of size, cup and bust, the others their own line", () => {
    expect(doubtedPicks([])).toEqual([]);
    expect(doubtedPicks(doubt("bustGirth"))).toEqual(["baseSize", "cup", "bust"]);
    expect(doubtedPicks(doubt("upperChestGirth"))).toEqual(["baseSize", "cup", "bust"]);
    expect(doubtedPicks(doubt("waistGirth"))).toEqual(["waist"]);
    expect(doubtedPicks(doubt("hipGirth"))).toEqual(["hip"]);
    expect(doubtedPicks(doubt("shoulderLength"))).toEqual([]);
    expect(doubtedPicks(doubt("hipGirth", "bustGirth", "upperChestGirth", "hipGirth"))).toEqual([
      "hip",
      "baseSize",
      "cup",
      "bust",
    ]);
  });

  it("is said to be doubted, its line is not told, and all else stays", () => {
    const sure = sureOf(testWork);
    expect(Object.values(sure.surety)).not.toContain("doubted");
    expect(sure.lines.map(({ level }) => level)).toEqual(["waist", "hip"]);
    expect(withDoubts(sure, [])).toEqual(sure);
    expect(withDoubts(sure, doubt("waistGirth"))).toEqual({
      ...sure,
      doubted: ["waist"],
      lines: sure.lines.slice(1),
      surety: { ...sure.surety, waist: "doubted" },
    });
    expect(withDoubts(sure, doubt("hipGirth"))).toEqual({
      ...sure,
      doubted: ["hip"],
      lines: sure.lines.slice(0, 1),
      surety: { ...sure.surety, hip: "doubted" },
    });
    expect(withDoubts(sure, doubt("bustGirth"))).toEqual({
      ...sure,
      doubted: ["baseSize", "cup", "bust"],
      surety: { ...sure.surety, baseSize: "doubted", cup: "doubted", bust: "doubted" },
    });
  });

  it("says nothing of what she set herself", () => {
    const sure = sureOf({ ...testWork, picks: { baseSize: "16", hip: 3 } });
    expect(sure.surety).toMatchObject({ baseSize: null, hip: null });
    expect(withDoubts(sure, doubt("bustGirth", "hipGirth")).surety).toMatchObject({
      baseSize: null,
      cup: "doubted",
      bust: "doubted",
      hip: null,
    });
  });
});

describe("what to measure next", () => {
  const five = (value: number): readonly number[] => [value, value, value, value, value];
  const next = (readings: Readings, work: Partial<typeof testWork> = {}) =>
    nextMeasure({ ...testWork, tapes: [{ readings }], ...work });
  const settled: Readings = { bustGirth: five(905), upperChestGirth: five(830) };
  /** Nine in ten lie within 1.64485 spreads, a quarter of it at each side-seam edge; the mean of `n` is pooled with a usual 10. */
  const band = (squares: number, n: number): number => (1.64485 * Math.sqrt((400 + squares) / (3 + n) / n)) / 4;
  const line = (measure: "waistGirth" | "hipGirth", squares: number, n: number) => ({
    settles: "line",
    measures: [measure],
    taken: true,
    before: expect.closeTo(band(squares, n), 6) as number,
    after: expect.closeTo(band(squares, n) * Math.sqrt(n / (n + 2)), 6) as number,
  });

  it("once base size and cup are settled: a line that two more readings bring nearest, the others after it", () => {
    // Two readings 20 apart have squares of 200 about their mean, three over 60 have 1800.
    expect(next({ ...settled, waistGirth: [752], hipGirth: [1024, 1044] })).toEqual([
      line("waistGirth", 0, 1),
      line("hipGirth", 200, 2),
    ]);
    expect(next({ ...settled, waistGirth: [742, 762], hipGirth: [1034] })).toEqual([
      line("hipGirth", 0, 1),
      line("waistGirth", 200, 2),
    ]);
    // The widest is not the one that gains most: 4.5 comes to 3.5, 4.1 to 2.4.
    expect(next({ ...settled, waistGirth: [722, 752, 782], hipGirth: [1034] })).toEqual([
      line("hipGirth", 0, 1),
      line("waistGirth", 1800, 3),
    ]);
  });

  it("a line within 3 mm is settled, and one with no room for two more readings, or none taken, is not asked for", () => {
    expect(band(0, 2)).toBeLessThan(3);
    expect(next({ ...settled, waistGirth: [752, 752], hipGirth: [1034] })).toEqual([line("hipGirth", 0, 1)]);
    // Four readings 60 apart: nearly 5 mm, and five are kept.
    expect(band(3600, 4)).toBeGreaterThan(4.9);
    expect(next({ ...settled, waistGirth: [722, 782, 722, 782], hipGirth: [1034] })).toEqual([line("hipGirth", 0, 1)]);
    expect(next({ ...settled, waistGirth: [722, 752, 782], hipGirth: five(1034) })).toEqual([
      line("waistGirth", 1800, 3),
    ]);
    expect(next(settled)).toBeNull();
  });

  it("where the bust is as likely to be altered as not, two more readings of it make four of five sure", () => {
    // No cups: 892 is 12 more than size 12, on the very bound. Read again the mean is normal about it with what the variance loses,
    // and the better side then E Φ(|m|/s′) = 1/2 + arctan(√2)/π (a standard integral of the normal distribution).
    const work = { pattern: { ...testWork.pattern, chart: noCups } };
    const found = next({ bustGirth: [892], upperChestGirth: five(830), waistGirth: [752], hipGirth: [1034] }, work);
    expect(found).toEqual([
      {
        settles: "pick",
        measures: ["bustGirth"],
        taken: true,
        before: expect.closeTo(0.5, 3),
        after: expect.any(Number),
      },
    ]);
    // Reckoned roughly, to a hundredth.
    expect(Math.abs((found?.[0]?.after ?? NaN) - (0.5 + Math.atan(Math.SQRT2) / Math.PI))).toBeLessThan(0.01);
    // Three read already leave two fifths of the variance to lose: the ratio of what is lost to what is left is 2/3.
    const [again] = next({ bustGirth: [892, 892, 892], upperChestGirth: five(830) }, work) ?? [];
    expect(again?.before).toBeCloseTo(0.5, 3);
    expect(Math.abs((again?.after ?? NaN) - (0.5 + Math.atan(Math.sqrt(2 / 3)) / Math.PI))).toBeLessThan(0.01);
    // With four there is no room for two more.
    expect(next({ bustGirth: [892, 892, 892, 892], upperChestGirth: five(830) }, work)).toEqual([]);
  });

  const noCupWork = { pattern: { ...testWork.pattern, chart: noCups } };
  /** Where new means of two more readings may lie, in standard deviations, and how likely: an even row, the ends left out. */
  const row = (steps: number) =>
    Array.from({ length: steps }, (_, at) => ((at + 0.5) / steps) * 7 - 3.5).map((z) => ({
      z,
      weight: Math.exp((-z * z) / 2),
    }));
  const best = (of: SizeChart, bust: number, spread: number, chest: number, chestSpread: number): number =>
    waysOf(of, girths(bust, spread, chest, chestSpread))[0]?.probability ?? NaN;

  it("an upper chest never taken is then known to 12 over √2, and is to be expected about where the others put it", () => {
    const readings: Readings = { bustGirth: five(880), waistGirth: [752], hipGirth: [1034] };
    const work = { ...testWork, ...noCupWork, tapes: [{ readings }] };
    const { value, spread } = sureOf(work).girths.estimate ?? { value: NaN, spread: NaN };
    // Five that agree: (4 · 10² + 0)/8, over five.
    const bust = Math.sqrt(400 / 8 / 5);
    const then = 12 / Math.SQRT2;
    const by = Math.sqrt(spread ** 2 - then ** 2);
    const places = row(60);
    const all = places.reduce((sum, { weight }) => sum + weight, 0);
    const expected =
      places.reduce((sum, { z, weight }) => sum + weight * best(noCups, 880, bust, value + by * z, then), 0) / all;
    const found = nextMeasure(work);
    expect(found?.map(({ settles, measures }) => [settles, measures])).toEqual([["pick", ["upperChestGirth"]]]);
    expect(found?.[0]?.before).toBeCloseTo(best(noCups, 880, bust, value, spread), 9);
    expect(Math.abs((found?.[0]?.after ?? NaN) - expected)).toBeLessThan(0.01);
  });

  it("both girths together only where that gains twice what the better one does, both means unsure", () => {
    // One reading each: the error of the mean comes to a third of its variance.
    const [bust, chest] = [912, 857];
    const [first, ...rest] =
      next({ bustGirth: [bust], upperChestGirth: [chest], waistGirth: [752], hipGirth: [1034] }) ?? [];
    const { chart: of } = testWork.pattern;
    const [spread, chestSpread] = [10 / Math.sqrt(3), 12 / Math.sqrt(3)];
    let [sum, all] = [0, 0];
    for (const one of row(14))
      for (const other of row(14)) {
        const at = best(
          of,
          bust + 10 * Math.sqrt(2 / 3) * one.z,
          spread,
          chest + 12 * Math.sqrt(2 / 3) * other.z,
          chestSpread,
        );
        sum += one.weight * other.weight * at;
        all += one.weight * other.weight;
      }
    expect(first).toMatchObject({ settles: "pick", measures: ["bustGirth", "upperChestGirth"], taken: true });
    expect(Math.abs((first?.after ?? NaN) - sum / all)).toBeLessThan(0.015);
    const gain = (first?.after ?? NaN) - (first?.before ?? NaN);
    for (const { measures, after, before } of rest) {
      expect(measures).toHaveLength(1);
      expect(gain).toBeGreaterThanOrEqual(2 * (after - before));
    }
  });

  it("of what was never taken it is said that it was not", () => {
    const work = { pattern: { ...testWork.pattern, chart: noCups } };
    const [first] = next({ bustGirth: five(880), waistGirth: [752], hipGirth: [1034] }, work) ?? [];
    expect(first).toMatchObject({ settles: "pick", measures: ["upperChestGirth"], taken: false });
    expect(next({ waistGirth: [752] })).toBeNull();
  });
});

describe("a work's picks, whole", () => {
  it("are the ways of its girths and their sums", () => {
    const readings: Readings = { bustGirth: [905], upperChestGirth: [832], waistGirth: [752], hipGirth: [1034] };
    const work = { ...testWork, tapes: [{ readings }] };
    const sure = sureOf(work);
    const taken = { bust: { value: 905, spread: 10 }, upperChest: { value: 832, spread: 12 } };
    expect(sure.girths).toEqual({ ...taken, estimate: null });
    expect(sure.ways).toEqual(waysOf(testWork.pattern.chart, taken));
    const sums = (of: (at: number) => string | null | undefined): ReadonlyMap<string, number> => {
      const all = new Map<string, number>();
      sure.ways.forEach(({ probability }, at) => {
        const label = of(at) ?? "none";
        all.set(label, (all.get(label) ?? 0) + probability);
      });
      return all;
    };
    for (const [chances, of] of [
      [sure.sizes, sums((at) => sure.ways[at]?.size)],
      [sure.cups, sums((at) => sure.ways[at]?.cup)],
    ] as const) {
      expect(chances.map(({ probability }) => probability)).toEqual(
        [...of.values()].toSorted((a, b) => b - a).map((one) => expect.closeTo(one, 12) as number),
      );
      for (const { label, probability } of chances) expect(probability).toBeCloseTo(of.get(label ?? "none") ?? NaN, 12);
    }
    const done = sums((at) => sure.ways[at]?.bust);
    expect(sure.bust).toEqual({
      nothing: expect.closeTo(done.get("nothing") ?? 0, 12),
      full: expect.closeTo(done.get("full") ?? 0, 12),
      small: expect.closeTo(done.get("small") ?? 0, 12),
    });
    expect(sure).toMatchObject({
      sizesGuessed: [],
      cupsGuessed: false,
      own: { baseSize: false, cup: false, bust: false },
      picked: { size: "12", cup: "C", bust: "nothing" },
      doubted: [],
    });
    // 16.4 mm of girth either way.
    const side = (1.64485 * 10) / 4;
    expect(sure.lines.map(({ level, spread, side: at }) => [level, spread, at])).toEqual([
      ["waist", 10, expect.closeTo(side, 9)],
      ["hip", 10, expect.closeTo(side, 9)],
    ]);
    // Three millimetres at each of four edges are 1.2 spreads: 77 of 100.
    expect([sure.surety.waist, sure.surety.hip]).toEqual(["fair", "fair"]);
  });

  it("are not in doubt where she set them", () => {
    const own = (picks: SureInputs["picks"]) => {
      const { own: said, surety } = sureOf({ ...testWork, picks });
      return [said, Object.entries(surety).flatMap(([pick, how]) => (how === null ? [pick] : []))];
    };
    const none = { baseSize: false, cup: false, bust: false };
    expect(own({})).toEqual([none, []]);
    expect(own({ baseSize: "14" })).toEqual([{ ...none, baseSize: true }, ["baseSize"]]);
    expect(own({ cup: "C" })).toEqual([{ ...none, cup: true }, ["cup"]]);
    expect(own({ bustAlteration: 20 })).toEqual([{ ...none, bust: true }, ["bust"]]);
    expect(own({ waist: 3 })).toEqual([none, ["waist"]]);
    expect(own({ hip: 3 })).toEqual([none, ["hip"]]);
  });

  it("of a bust alone have a cup guessed all the same, and no line", () => {
    const sure = sureOf({ ...testWork, tapes: tapesOf({ bustGirth: 905 }) });
    expect(sure.girths).toMatchObject({ bust: { value: 905, spread: 10 }, upperChest: null });
    expect(sure.girths.estimate).not.toBeNull();
    expect(sure).toMatchObject({ cupsGuessed: true, lines: [] });
    expect(sure.cups.length).toBeGreaterThan(1);
    expect(sure.surety).toMatchObject({ waist: null, hip: null });
    // A pattern without cups has none that could be sure, and a size that may be.
    const plain = sureOf({ ...testWork, pattern: { ...testWork.pattern, chart: noCups } });
    expect(plain.surety.cup).toBeNull();
    expect(plain.surety.baseSize).not.toBeNull();
    expect(plain.picked).toMatchObject({ size: "12", cup: null });
  });

  it("without an upper chest are told by what it probably is, and the ways by the bust", () => {
    const work = { ...testWork, tapes: tapesOf({ bustGirth: 905, waistGirth: 752, hipGirth: 1034 }) };
    const sure = sureOf(work);
    expect(sure.girths.upperChest).toBeNull();
    const estimate = sure.girths.estimate ?? { value: NaN, spread: NaN };
    const bust = { value: 905, spread: 10 };
    expect(sure.ways).toEqual(waysOf(testWork.pattern.chart, { bust, upperChest: null }));
    const told = waysOf(testWork.pattern.chart, { bust, upperChest: estimate });
    const share = (cup: string | null): number =>
      told.reduce((sum, way) => sum + (way.cup === cup ? way.probability : 0), 0);
    const sized = (label: string | null): number =>
      told.reduce((sum, way) => sum + (way.size === label ? way.probability : 0), 0);
    expect(sure.cups.length).toBeGreaterThan(1);
    for (const { label, probability } of sure.cups) expect(probability).toBeCloseTo(share(label), 12);
    for (const { label, probability } of sure.sizesGuessed) expect(probability).toBeCloseTo(sized(label), 12);
    expect(sure.sizesGuessed.length).toBeGreaterThan(1);
    expect(sure.cupsGuessed).toBe(true);
    // A pattern without cups has none to tell.
    const chartOf = { ...testWork.pattern.chart, cups: [] };
    expect(sureOf({ ...work, pattern: { ...testWork.pattern, chart: chartOf } }).cups).toEqual([]);
  });
});

describe("lines and others", () => {
  it("have no hip where the pattern ends at the waist, none of a girth not taken, and none off the chart", () => {
    const levels = (work: SureInputs) => sureOf(work).lines.map(({ level }) => level);
    expect(levels({ ...testWork, pattern: { ...testWork.pattern, length: "waist" } })).toEqual(["waist"]);
    expect(levels({ ...testWork, tapes: tapesOf({ bustGirth: 905, upperChestGirth: 832, hipGirth: 1034 }) })).toEqual([
      "hip",
    ]);
    const off = { ...testWork, tapes: tapesOf({ bustGirth: 1600, upperChestGirth: 1540, waistGirth: 1400 }) };
    expect(levels(off)).toEqual([]);
    expect(sureOf(off)).toMatchObject({
      picked: { size: null, cup: null, bust: "nothing" },
      surety: { baseSize: null, cup: null, bust: null, waist: null },
      runnerUp: null,
    });
    // On a size of her own there is something to draw it on; the chart does not reach so far.
    expect(sureOf({ ...off, picks: { baseSize: "16" } }).picked).toMatchObject({ size: "16", bust: "full" });
    expect(sureOf({ ...off, picks: { baseSize: "16" } }).lines).toEqual([
      expect.objectContaining({ level: "waist", from: null, to: null }),
    ]);
  });

  it("sizes and cups stand likeliest first, however their ways do", () => {
    const bodies = [
      [893, 848],
      [912, 857],
      [937, 851],
      [905, 850],
      [898, 846],
    ] as const;
    for (const [bustGirth, upperChestGirth] of bodies) {
      const { sizes, cups } = sureOf({ ...testWork, tapes: tapesOf({ bustGirth, upperChestGirth }) });
      for (const chances of [sizes, cups]) {
        const told = chances.map(({ probability }) => probability);
        expect(told).toEqual(told.toSorted((a, b) => b - a));
      }
    }
  });

  it("the runner-up is the likeliest other size and cup, whatever is done at its bust", () => {
    const { ways, runnerUp, picked } = sureOf({
      ...testWork,
      tapes: tapesOf({ bustGirth: 893, upperChestGirth: 848, waistGirth: 752, hipGirth: 1034 }),
    });
    const sums = new Map<string, number>();
    for (const { size: label, cup, probability } of ways) {
      const key = `${label ?? ""} ${cup ?? ""}`;
      if (label !== null && key !== `${picked.size ?? ""} ${picked.cup ?? ""}`)
        sums.set(key, (sums.get(key) ?? 0) + probability);
    }
    const best = [...sums].toSorted(([, a], [, b]) => b - a)[0];
    expect(`${runnerUp?.size ?? ""} ${runnerUp?.cup ?? ""}`).toBe(best?.[0]);
    expect(runnerUp?.probability).toBeCloseTo(best?.[1] ?? NaN, 12);
  });
});
