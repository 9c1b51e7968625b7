/** The two small plots as drawing data: where things lie, what is named, and that nothing is written over anything else. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { StandardSize } from "../../src/core/chart/standardCharts";
import { STANDARD_CHARTS } from "../../src/core/chart/standardCharts";
import { bodyOf, tapesOf } from "../../src/core/measures/tape";
import { invariant } from "../../src/core/result";
import { chartPlot, type ChartPlot, type PlotInput } from "../../src/drawing/chartPlot";
import { sampleWork } from "../support/sampleWork";

const { sizes } = sampleWork.pattern.chart;
const plotOf = (change: Partial<PlotInput> = {}): ChartPlot =>
  chartPlot({
    across: "bust",
    up: "waist",
    sizes,
    standard: [],
    body: bodyOf(sampleWork.tapes),
    unit: "cm",
    ...change,
  });

/** The scale of an axis from two of its ticks, whose labels say what they are. */
const scaleBy = (ticks: ChartPlot["acrossTicks"], mm: number) => {
  const [first, last] = [invariant(ticks[0], "tick"), invariant(ticks.at(-1), "tick")];
  const perMm = (last.at - first.at) / ((Number(last.label) - Number(first.label)) * mm);
  return { perMm, placeOf: (value: number): number => first.at + (value - Number(first.label) * mm) * perMm };
};

const pointsOf = (path: string): readonly (readonly [number, number])[] =>
  [...path.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);

describe("the plot", () => {
  it.each([
    ["cm", 10],
    ["in", 25.4],
  ] as const)("has every size where its axes in %s say", (unit, mm) => {
    const plot = plotOf({ unit });
    const [x, y] = [scaleBy(plot.acrossTicks, mm), scaleBy(plot.upTicks, mm)];
    const drawn = invariant(plot.sizes, "sizes").sizes;
    for (const [at, size] of sizes.entries()) {
      expect(invariant(drawn[at], "size").x).toBeCloseTo(x.placeOf(size.bust), 6);
      expect(invariant(drawn[at], "size").y).toBeCloseTo(y.placeOf(size.waist), 6);
    }
  });

  it("has the wearer where she is, with arms of 1.645 times the spread of one reading (10 mm)", () => {
    const plot = plotOf();
    const [x, y] = [scaleBy(plot.acrossTicks, 10), scaleBy(plot.upTicks, 10)];
    const wearer = invariant(plot.wearer, "wearer");
    expect(wearer.x).toBeCloseTo(x.placeOf(930), 6);
    expect(wearer.y).toBeCloseTo(y.placeOf(738), 6);
    expect(wearer.reachX).toBeCloseTo(16.45 * x.perMm, 6);
    expect(wearer.reachY).toBeCloseTo(-16.45 * y.perMm, 6);
  });

  it("has few ticks of round numbers, in either unit", () => {
    for (const unit of ["cm", "in"] as const) {
      for (const { acrossTicks, upTicks } of [plotOf({ unit }), plotOf({ unit, across: "waist", up: "hip" })]) {
        for (const ticks of [acrossTicks, upTicks]) {
          expect(ticks.length).toBeGreaterThanOrEqual(3);
          expect(ticks.length).toBeLessThanOrEqual(7);
          expect(ticks.every(({ label }) => Number(label) % (unit === "cm" ? 5 : 2) === 0)).toBe(true);
        }
      }
    }
  });

  // The closed form: the ring's ends in one girth are its middle times e^(±√(d s)), d = 25 (0.5^(−2/25) − 1), s from the survey's fit.
  it("says where the ring of half of the bodies ends", () => {
    const { half } = plotOf();
    const reach = Math.sqrt(25 * (0.5 ** (-2 / 25) - 1) * 0.00463035);
    expect(half.across[0]).toBeCloseTo(Math.exp(6.80551893 - reach), 0);
    expect(half.across[1]).toBeCloseTo(Math.exp(6.80551893 + reach), 0);
    expect(half.up[0]).toBeGreaterThan(650);
    expect(half.up[1]).toBeLessThan(850);
  });

  it("keeps dots, rings, sizes and the wearer inside the axes", () => {
    fc.assert(
      fc.property(fc.integer({ min: 600, max: 1900 }), fc.integer({ min: 500, max: 1900 }), (bust, waist) => {
        const plot = plotOf({ body: bodyOf(tapesOf({ bustGirth: bust, waistGirth: waist })) });
        const points = [
          ...plot.dots,
          ...invariant(plot.sizes, "sizes").sizes,
          invariant(plot.wearer, "wearer"),
          ...[plot.rings.most, plot.rings.half].flatMap(pointsOf).map(([x, y]) => ({ x, y })),
        ];
        for (const { x, y } of points) {
          expect(x).toBeGreaterThanOrEqual(plot.left);
          expect(x).toBeLessThanOrEqual(plot.right);
          expect(y).toBeGreaterThanOrEqual(plot.top);
          expect(y).toBeLessThanOrEqual(plot.bottom);
        }
      }),
      { numRuns: 30 },
    );
  });

  it("leaves out a wearer who was not measured, or whose measures are nonsense, and what that would do to the rest", () => {
    const nobody = plotOf({ body: {} });
    expect(nobody.wearer).toBeNull();
    expect(plotOf({ body: bodyOf(tapesOf({ bustGirth: 93, waistGirth: 738 })) })).toEqual(nobody);
    expect(plotOf({ body: bodyOf(tapesOf({ bustGirth: 930 })) })).toEqual(nobody);
  });

  it("draws the bodies without a chart", () => {
    const plot = plotOf({ sizes: [], body: {} });
    expect([plot.sizes, plot.standard]).toEqual([null, null]);
    expect(plot.dots).toHaveLength(150);
  });

  it("does not let a standard chart change the picture's scale", () => {
    const [with_, without] = [plotOf({ standard: invariant(STANDARD_CHARTS[0], "standard").sizes }), plotOf()];
    expect({ ...with_, standard: null }).toEqual(without);
  });
});

describe("the names of sizes", () => {
  const LETTER = 5.5;
  const HEIGHT = 9;

  /** Narrower than what the drawing reckons with: a rough width of digits at 12 pixels. */
  const areas = (plot: ChartPlot) =>
    [plot.sizes, plot.standard].flatMap((line) =>
      (line?.sizes ?? []).flatMap(({ label, name }) => {
        if (name === null) return [];
        const width = label.length * LETTER;
        const left = name.anchor === "start" ? name.x : name.x - width;
        return [{ left, right: left + width, top: name.y - HEIGHT, bottom: name.y }];
      }),
    );

  const charts: readonly (readonly StandardSize[])[] = [
    sizes,
    ...STANDARD_CHARTS.map((chart) => chart.sizes),
    sizes.map((size) => ({ ...size, label: `long ${size.label}` })),
  ];

  it("are never written over each other, over the wearer or out of the picture", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...charts),
        fc.constantFrom([], ...STANDARD_CHARTS.map((chart) => chart.sizes)),
        fc.constantFrom(["bust", "waist"] as const, ["waist", "hip"] as const),
        fc.integer({ min: 760, max: 1500 }),
        (own, standard, [across, up], bust) => {
          const plot = plotOf({
            sizes: own,
            standard,
            across,
            up,
            body: bodyOf(tapesOf({ bustGirth: bust, waistGirth: bust - 170, hipGirth: bust + 70 })),
          });
          const { x, y, reachX, reachY } = invariant(plot.wearer, "wearer");
          const all = [...areas(plot), { left: x - reachX, right: x + reachX, top: y - reachY, bottom: y + reachY }];
          const over = all.flatMap((a, at) =>
            all
              .slice(at + 1)
              .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom),
          );
          expect(over).toEqual([]);
          expect(
            areas(plot).every(
              ({ left, right, top, bottom }) => left >= 0 && right <= plot.width && top >= 0 && bottom <= plot.height,
            ),
          ).toBe(true);
          expect(areas(plot).length).toBeGreaterThanOrEqual(3);
        },
      ),
    );
  });

  it("all stand where there is room", () => {
    expect(invariant(plotOf({ body: {} }).sizes, "sizes").sizes.map(({ name }) => name !== null)).toEqual(
      sizes.map(() => true),
    );
  });
});
