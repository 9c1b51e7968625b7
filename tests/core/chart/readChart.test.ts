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

/** The whole finding, numbers and all, worked out by hand from the three sizes beside it. */
describe("what is told of a size", () => {
  const three = (more: Partial<SizeRow>): readonly SizeRow[] => [
    size("8", 800),
    { ...size("10", 840), ...more },
    size("12", 880),
  ];
  const at = (row: number, column: string | null) => ({ list: "sizes", row, column });

  it("counts, whole", () => {
    expect(readSizes(many(1))).toEqual([
      { code: "chart/too-few-sizes", severity: "blocks", count: 1, least: 2, list: "sizes", row: null, column: null },
    ]);
    expect(readSizes(many(21))).toEqual([
      { code: "chart/too-many-sizes", severity: "blocks", count: 21, most: 20, list: "sizes", row: null, column: null },
    ]);
  });

  it("girths that are none, of each column, and no step from or to them", () => {
    expect(readSizes(three({ waist: 0, hip: -5 }))).toEqual([
      { code: "chart/not-a-girth", severity: "blocks", value: 0, ...at(1, "waist") },
      { code: "chart/not-a-girth", severity: "blocks", value: -5, ...at(1, "hip") },
    ]);
  });

  it("girths beyond what can be, and beyond what is usual", () => {
    // A waist can be 450 to 2000, and is 540 to 1500 as a rule.
    expect(readSizes([size("4", 800, { waist: 449 }), size("6", 840)])).toEqual([
      {
        code: "chart/implausible",
        severity: "blocks",
        value: 449,
        least: 450,
        most: 2000,
        misreadings: [
          { kind: "inchesAsCentimetres", meant: 1140.5 },
          { kind: "half", meant: 898 },
        ],
        ...at(0, "waist"),
      },
    ]);
    expect(readSizes([size("4", 800, { waist: 450 }), size("6", 840)])).toMatchObject([
      { code: "chart/unusual", severity: "warns", value: 450, least: 540, most: 1500, row: 0, column: "waist" },
    ]);
    // A hip 760 to 1650.
    expect(readSizes([size("4", 800, { hip: 759 }), size("6", 840)])).toMatchObject([
      { code: "chart/unusual", value: 759, least: 760, most: 1650, row: 0, column: "hip" },
    ]);
  });

  it("a smaller bust is out of order, whatever the other girths do", () =>
    expect(readSizes([size("8", 800), { ...size("10", 840), bust: 799, waist: 600 }])).toEqual([
      { code: "chart/out-of-order", severity: "blocks", value: 799, before: 800, beforeLabel: "8", ...at(1, "bust") },
    ]));

  it("the same girths again, and each girth that does not grow or falls", () => {
    expect(readSizes([size("8", 800), size("9", 800)])).toEqual([
      { code: "chart/repeated", severity: "blocks", beforeLabel: "8", ...at(1, null) },
    ]);
    const grows = { value: 800, before: 800, beforeLabel: "8", severity: "blocks", code: "chart/not-growing" };
    expect(readSizes([size("8", 800), size("9", 800, { waist: 630 })])).toEqual([
      { ...grows, ...at(1, "bust") },
      { ...grows, severity: "warns", value: 860, before: 860, ...at(1, "hip") },
    ]);
    expect(readSizes([size("8", 800), size("10", 840, { waist: 619, hip: 859 })])).toEqual([
      { code: "chart/falling", severity: "blocks", value: 619, before: 620, beforeLabel: "8", ...at(1, "waist") },
      { code: "chart/falling", severity: "blocks", value: 859, before: 860, beforeLabel: "8", ...at(1, "hip") },
    ]);
  });

  it("a leap of the bust from 150 mm on", () => {
    expect(readSizes([size("8", 800), size("10", 950)])).toEqual([]);
    expect(readSizes([size("8", 800), size("10", 951)])).toEqual([
      { code: "chart/large-step", severity: "warns", step: 151, most: 150, beforeLabel: "8", ...at(1, "bust") },
    ]);
  });

  // Our own choice: a garment has 0.7 to 2 of the body; doubled it is whole from 0.95 on.
  it.each([
    [560, "chart/finished-below-body", undefined],
    [559.9, "chart/finished-impossible", true],
    [380, "chart/finished-impossible", true],
    [379.9, "chart/finished-impossible", false],
    [1600.1, "chart/finished-impossible", false],
  ])("a finished bust of %d at 800 of body: %s", (finishedBust, code, half) => {
    expect(readSizes([size("8", 800, { finishedBust }), size("10", 840)])).toEqual([
      {
        code,
        severity: half === undefined ? "warns" : "blocks",
        value: finishedBust,
        body: 800,
        ...(half === undefined ? {} : { half }),
        ...at(0, "finishedBust"),
      },
    ]);
  });

  it("finished girths up to twice the body's are left alone, and each is held against its own body girth", () => {
    expect(readSizes([size("8", 800, { finishedBust: 1600 }), size("10", 840)])).toEqual([]);
    expect(readSizes([size("8", 800, { finishedWaist: 619, finishedHip: 859 }), size("10", 840)])).toEqual([
      { code: "chart/finished-below-body", severity: "warns", value: 619, body: 620, ...at(0, "finishedWaist") },
      { code: "chart/finished-below-body", severity: "warns", value: 859, body: 860, ...at(0, "finishedHip") },
    ]);
  });

  it("finished girths grow from size to size, where both print them", () => {
    const sewn = (...busts: readonly (number | undefined)[]) =>
      readSizes(
        busts.map((finishedBust, row) =>
          size(`${row}`, 800 + 40 * row, finishedBust === undefined ? {} : { finishedBust }),
        ),
      );
    expect(sewn(900, 901, 902)).toEqual([]);
    expect(sewn(900, undefined, 890)).toEqual([]);
    expect(sewn(900, 899)).toEqual([
      {
        code: "chart/finished-not-growing",
        severity: "warns",
        value: 899,
        before: 900,
        beforeLabel: "0",
        ...at(1, "finishedBust"),
      },
    ]);
    expect(readSizes(three({ bust: Number.NaN, finishedBust: 10 }))).toEqual([
      { code: "chart/not-a-girth", severity: "blocks", value: Number.NaN, ...at(1, "bust") },
    ]);
  });
});

describe("what is told of a difference", () => {
  const chartOf = (difference: number) => readChart(chart(GOOD, [{ label: "B", difference }], difference));

  // Our own choice: −100 to 400 can be, 0 to 250 is usual.
  it.each([
    [-100.1, "chart/difference-impossible", "blocks", -100, 400],
    [-100, "chart/difference-unusual", "warns", 0, 250],
    [-0.1, "chart/difference-unusual", "warns", 0, 250],
    [250.1, "chart/difference-unusual", "warns", 0, 250],
    [400, "chart/difference-unusual", "warns", 0, 250],
    [400.1, "chart/difference-impossible", "blocks", -100, 400],
  ])("%d: %s", (value, code, severity, least, most) => {
    const fault = { code, severity, value, least, most };
    expect(chartOf(value)).toEqual([
      { ...fault, list: "cups", row: 0, column: null },
      { ...fault, list: "draftedDifference", row: null, column: null },
    ]);
  });

  it.each([0, 250])("%d is usual", (value) => expect(chartOf(value)).toEqual([]));

  it.each([Number.NaN, Number.POSITIVE_INFINITY])("%d is no length", (value) =>
    expect(chartOf(value)).toEqual([
      { code: "chart/difference-not-a-length", severity: "blocks", value, list: "cups", row: 0, column: null },
      {
        code: "chart/difference-not-a-length",
        severity: "blocks",
        value,
        list: "draftedDifference",
        row: null,
        column: null,
      },
    ]),
  );

  it("of cups: each larger than the one before, under a name of its own", () => {
    expect(
      readCups([
        { label: "B ", difference: 50 },
        { label: "B", difference: 50 },
        { label: "D", difference: 49 },
      ]),
    ).toEqual([
      { code: "chart/label-twice", severity: "blocks", label: "B", firstRow: 0, list: "cups", row: 1, column: "label" },
      {
        code: "chart/difference-not-growing",
        severity: "blocks",
        value: 50,
        before: 50,
        beforeLabel: "B ",
        list: "cups",
        row: 1,
        column: null,
      },
      {
        code: "chart/difference-not-growing",
        severity: "blocks",
        value: 49,
        before: 50,
        beforeLabel: "B",
        list: "cups",
        row: 2,
        column: null,
      },
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
  it("goes by the bust, then the waist, then the hip", () => {
    const rows = [
      { label: "d", bust: 840, waist: 600, hip: 900 },
      { label: "c", bust: 800, waist: 640, hip: 880 },
      { label: "b", bust: 800, waist: 620, hip: 920 },
      { label: "a", bust: 800, waist: 620, hip: 860 },
      { label: "e", bust: Number.POSITIVE_INFINITY, waist: 1, hip: 1 },
    ];
    expect(sortRows(rows).map(({ label }) => label)).toEqual(["a", "b", "c", "d", "e"]);
    expect(sortRows(rows.toReversed()).map(({ label }) => label)).toEqual(["a", "b", "c", "d", "e"]);
  });

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
