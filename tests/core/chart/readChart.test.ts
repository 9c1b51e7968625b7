import { describe, expect, it } from "vitest";
import { readChart, readCups, readSizes, sortRows } from "../../../src/core/chart/readChart";
import type { CupVersion, SizeChart, SizeRow } from "../../../src/core/chart/sizeChart";
import { chartFaults } from "../../../src/core/chart/chartFaults";

const size = (label: string, bust: number, more: Partial<SizeRow> = {}): SizeRow => ({
  label,
  bust,
  waist: bust - 180,
  hip: bust + 60,
  ...more,
});

const GOOD: readonly SizeRow[] = [size("8", 800), size("10", 840), size("12", 880), size("14", 930)];

const chart = (sizes: readonly SizeRow[], cups: readonly CupVersion[] = [], draftedDifference = 50): SizeChart => ({
  sizes,
  cups,
  draftedDifference,
});

const told = (sizes: readonly SizeRow[]) =>
  readSizes(sizes).map(({ code, severity, row, column }) => [code, severity, row, column]);

const many = (count: number) => Array.from({ length: count }, (_, index) => size(String(index), 760 + 20 * index));

describe("readSizes", () => {
  it("finds nothing in a chart that grows", () => {
    expect(readSizes(GOOD)).toEqual([]);
  });

  it("wants 2 to 20 sizes", () => {
    expect(told([])).toEqual([["chart/too-few-sizes", "blocks", null, null]]);
    expect(told(many(1))).toEqual([["chart/too-few-sizes", "blocks", null, null]]);
    expect(told(many(2))).toEqual([]);
    expect(told(many(20))).toEqual([]);
    expect(readSizes(many(21))).toMatchObject([{ code: "chart/too-many-sizes", count: 21, most: 20 }]);
  });

  it("wants a name for each size, and no name twice, white space aside", () => {
    expect(told([size("8", 800), size("  ", 840), size("12", 880)])).toEqual([
      ["chart/label-empty", "blocks", 1, "label"],
    ]);
    expect(readSizes([size("8", 800), size("10", 840), size(" 8 ", 880)])).toMatchObject([
      { code: "chart/label-twice", severity: "blocks", row: 2, column: "label", label: "8", firstRow: 0 },
    ]);
  });

  it.each([0, -880, Number.NaN, Number.POSITIVE_INFINITY])("does not take %d for a girth", (bust) => {
    expect(told([size("8", 800), { ...size("10", 840), bust }])).toEqual([["chart/not-a-girth", "blocks", 1, "bust"]]);
  });

  it("blocks a girth that no body has, with what may have been meant", () => {
    expect(readSizes([{ ...size("8", 800), bust: 340 }, size("10", 840)])).toMatchObject([
      {
        code: "chart/implausible",
        severity: "blocks",
        row: 0,
        column: "bust",
        value: 340,
        misreadings: [{ kind: "inchesAsCentimetres", meant: 863.6 }],
      },
      { code: "chart/large-step", severity: "warns", row: 1, column: "bust" },
    ]);
  });

  it("only remarks on a girth that is seldom printed", () => {
    expect(told([size("8", 680, { waist: 545, hip: 800 }), size("10", 800)])).toEqual([
      ["chart/unusual", "warns", 0, "bust"],
    ]);
  });

  it("tells rows out of order from rows repeated and rows that do not grow", () => {
    expect(told([size("8", 800), size("12", 880), size("10", 840)])).toEqual([
      ["chart/out-of-order", "blocks", 2, "bust"],
    ]);
    expect(told([size("8", 800), size("10", 800)])).toEqual([["chart/repeated", "blocks", 1, null]]);
    expect(told([size("8", 800), { ...size("10", 840), bust: 800 }])).toEqual([
      ["chart/not-growing", "blocks", 1, "bust"],
    ]);
    expect(told([size("8", 800), size("10", 840, { waist: 610 })])).toEqual([["chart/falling", "blocks", 1, "waist"]]);
    expect(told([size("8", 800), size("10", 840, { hip: 860 })])).toEqual([["chart/not-growing", "warns", 1, "hip"]]);
  });

  it("asks whether a size is missing where the bust leaps", () => {
    expect(readSizes([size("8", 800), size("24", 960)])).toMatchObject([
      { code: "chart/large-step", severity: "warns", step: 160, most: 150 },
    ]);
  });

  it("warns of a garment smaller than the body, and blocks one that cannot be", () => {
    const withBust = (finishedBust: number) => told([size("8", 800, { finishedBust }), size("10", 840)]);
    expect(withBust(800)).toEqual([]);
    expect(withBust(799)).toEqual([["chart/finished-below-body", "warns", 0, "finishedBust"]]);
    expect(withBust(0)).toEqual([["chart/not-a-girth", "blocks", 0, "finishedBust"]]);
    expect(readSizes([size("8", 800, { finishedBust: 440 }), size("10", 840)])).toMatchObject([
      { code: "chart/finished-impossible", severity: "blocks", half: true },
    ]);
    expect(readSizes([size("8", 800, { finishedBust: 2200 }), size("10", 840)])).toMatchObject([
      { code: "chart/finished-impossible", severity: "blocks", half: false },
    ]);
    expect(told([size("8", 800, { finishedBust: 900 }), size("10", 840, { finishedBust: 900 })])).toEqual([
      ["chart/finished-not-growing", "warns", 1, "finishedBust"],
    ]);
  });
});

const cupsTold = (cups: readonly CupVersion[]) =>
  readCups(cups).map(({ code, severity, row }) => [code, severity, row]);

describe("readCups", () => {
  it("finds nothing in versions that grow, nor in none", () => {
    expect(readCups([])).toEqual([]);
    expect(
      readCups([
        { label: "B", difference: 50 },
        { label: "C", difference: 75 },
      ]),
    ).toEqual([]);
  });

  it("wants them named, each once, growing and possible", () => {
    expect(cupsTold([{ label: "", difference: 50 }])).toEqual([["chart/label-empty", "blocks", 0]]);
    expect(
      cupsTold([
        { label: "B", difference: 50 },
        { label: "B", difference: 75 },
      ]),
    ).toEqual([["chart/label-twice", "blocks", 1]]);
    expect(
      cupsTold([
        { label: "B", difference: 50 },
        { label: "C", difference: 50 },
      ]),
    ).toEqual([["chart/difference-not-growing", "blocks", 1]]);
    expect(cupsTold([{ label: "B", difference: 900 }])).toEqual([["chart/difference-impossible", "blocks", 0]]);
    expect(cupsTold([{ label: "B", difference: 260 }])).toEqual([["chart/difference-unusual", "warns", 0]]);
    expect(cupsTold([{ label: "B", difference: Number.NaN }])).toEqual([
      ["chart/difference-not-a-length", "blocks", 0],
    ]);
  });
});

describe("readChart", () => {
  it("gathers sizes, cups and the drafted difference", () => {
    const findings = readChart(chart([size("8", 800)], [{ label: "", difference: 50 }], Number.NaN));
    expect(findings.map(({ list, code }) => [list, code])).toEqual([
      ["sizes", "chart/too-few-sizes"],
      ["cups", "chart/label-empty"],
      ["draftedDifference", "chart/difference-not-a-length"],
    ]);
  });

  it("keeps a plan back for what blocks, and only for that", () => {
    expect(chartFaults(chart(GOOD))).toBe(0);
    expect(chartFaults(chart([...GOOD, size("16", 970, { hip: 990 })]))).toBe(0);
    expect(chartFaults(chart([...GOOD, size("16", 930, { hip: 990 })]))).toBe(1);
  });
});

describe("sortRows", () => {
  it("puts the smallest first and changes nothing else", () => {
    const rows = [size("14", 930), size("8", 800), size("10b", 840, { hip: 910 }), size("10a", 840)];
    expect(sortRows(rows).map(({ label }) => label)).toEqual(["8", "10a", "10b", "14"]);
    expect(rows.map(({ label }) => label)).toEqual(["14", "8", "10b", "10a"]);
    expect(sortRows([{ ...size("?", 1), bust: Number.NaN }, size("8", 800)]).map(({ label }) => label)).toEqual([
      "8",
      "?",
    ]);
  });
});
