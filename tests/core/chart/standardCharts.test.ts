/** The published charts against what else is known of them (tables read or recalled; their words say which). */
import { describe, expect, it } from "vitest";
import { chartFit } from "../../../src/core/bodies/chartFit";
import { STANDARD_CHARTS, type StandardName } from "../../../src/core/chart/standardCharts";
import { readSizes } from "../../../src/core/chart/readChart";
import { intervalOf } from "../../../src/core/sizing/pickInterval";
import { invariant } from "../../../src/core/result";

const sizesOf = (name: StandardName) =>
  invariant(
    STANDARD_CHARTS.find((chart) => chart.name === name),
    name,
  ).sizes;

describe.each(STANDARD_CHARTS)("$name", ({ sizes }) => {
  it("can be used like any chart: every girth grows, and nothing is wrong but that large sizes are seldom printed", () => {
    expect(readSizes(sizes).filter(({ code }) => code !== "chart/unusual")).toEqual([]);
    expect(chartFit({ sizes, draftedDifference: 50, cups: [] }, {})?.shares.placed).toBeGreaterThan(0.8);
  });
});

describe("the European size designation", () => {
  const sizes = sizesOf("en13402");

  // EN 13402-3 as quoted by the help page bustSizesStandard of the R package Anthropometry: read there.
  it("has bust bounds half-way between its middles, as published (mm)", () => {
    const bounds = [740, 780, 820, 860, 900, 940, 980, 1020, 1070, 1130, 1190, 1250, 1310];
    const busts = sizes.map(({ bust }) => bust);
    for (const [at, from] of bounds.slice(0, -1).entries())
      expect(intervalOf(busts, at)).toEqual({ from, to: bounds[at + 1] });
  });

  // Waist and hip bounds: from memory.
  it("has waist and hip bounds half-way between theirs", () => {
    const bounds = {
      waist: [580, 620, 660, 700, 740, 780, 820, 860, 910, 970, 1030, 1090, 1150],
      hip: [820, 860, 900, 940, 980, 1020, 1060, 1100, 1145, 1195, 1245, 1295, 1345],
    };
    for (const level of ["waist", "hip"] as const) {
      const values = sizes.map((size) => size[level]);
      for (const [at, from] of bounds[level].slice(0, -1).entries())
        expect(intervalOf(values, at)).toEqual({ from, to: bounds[level][at + 1] });
    }
  });

  it("is called by its busts in centimetres, in steps of 4 and then 6", () => {
    expect(sizes.map(({ label, bust }) => Number(label) * 10 - bust)).toEqual(sizes.map(() => 0));
    expect(new Set(sizes.slice(1).map(({ bust }, at) => bust - invariant(sizes[at], "size").bust))).toEqual(
      new Set([40, 60]),
    );
    expect(sizes).toHaveLength(16);
  });
});

describe("every row", () => {
  // The rules of the tables, from memory: a waist 16 cm under the bust; a hip 8 over it up to 104, then 5 for each 6 of bust.
  it("of the European one, from 76 to 152 cm", () => {
    const wanted = [76, 80, 84, 88, 92, 96, 100, 104, 110, 116, 122, 128, 134, 140, 146, 152].map((bust) => ({
      label: String(bust),
      bust: 10 * bust,
      waist: 10 * (bust - 16),
      hip: 10 * (bust <= 104 ? bust + 8 : 112 + (5 * (bust - 104)) / 6),
    }));
    expect(sizesOf("en13402")).toEqual(wanted);
  });

  const table = (busts: readonly number[], first: number, waistLess: number, hipMore: number) =>
    busts.map((bust, at) => ({
      label: String(first + 2 * at),
      bust: expect.closeTo(25.4 * bust, 9),
      waist: expect.closeTo(25.4 * (bust - waistLess), 9),
      hip: expect.closeTo(25.4 * (bust + hipMore), 9),
    }));

  it("of those of the United States, in even sizes", () => {
    expect(sizesOf("ps42")).toEqual(table([31.5, 32.5, 33.5, 35, 36.5, 38, 40, 42, 44], 6, 9, 2));
    expect(sizesOf("d5585")).toEqual(table([32, 33, 34, 35, 36, 37.5, 39, 40.5, 42.5, 44.5], 2, 8, 2.5));
    expect(STANDARD_CHARTS.map(({ name }) => name)).toEqual(["en13402", "ps42", "d5585"]);
  });
});

describe("the United States charts", () => {
  const inches = (mm: number): number => mm / 25.4;

  it("of 1995: hip less waist is 10.5 in and bust less waist 8 in throughout", () => {
    for (const { bust, waist, hip } of sizesOf("d5585")) {
      expect(inches(hip - waist)).toBeCloseTo(10.5, 9);
      expect(inches(bust - waist)).toBeCloseTo(8, 9);
    }
  });

  it("of 1970: bust less waist is 9 in and hip less bust 2 in throughout", () => {
    for (const { bust, waist, hip } of sizesOf("ps42")) {
      expect(inches(bust - waist)).toBeCloseTo(9, 9);
      expect(inches(hip - bust)).toBeCloseTo(2, 9);
    }
  });

  it.each(["ps42", "d5585"] as const)("%s: steps of 1, then 1 ½, then 2 in, never smaller again", (name) => {
    const sizes = sizesOf(name);
    const steps = sizes
      .slice(1)
      .map(({ bust }, at) => Math.round(inches(bust - invariant(sizes[at], "size").bust) * 100) / 100);
    expect(new Set(steps)).toEqual(new Set([1, 1.5, 2]));
    expect(steps).toEqual(steps.toSorted((a, b) => a - b));
  });

  it("begin and end where they are recalled to (mm)", () => {
    // 31.5 in and 44 in; 32 in and 44.5 in.
    expect(sizesOf("ps42").map(({ label, bust }) => [label, Math.round(bust * 10) / 10])).toEqual(
      expect.arrayContaining([
        ["6", 800.1],
        ["22", 1117.6],
      ]),
    );
    expect(sizesOf("d5585").map(({ label, bust }) => [label, Math.round(bust * 10) / 10])).toEqual(
      expect.arrayContaining([
        ["2", 812.8],
        ["20", 1130.3],
      ]),
    );
  });
});
