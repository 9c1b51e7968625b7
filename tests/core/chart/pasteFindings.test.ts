/** What is told of a pasted chart: every finding whole, with the place of the cell counted by hand. */
import { describe, expect, it } from "vitest";
import { pasteChart } from "../../../src/core/chart/pasteChart";
import type { TypedUnit } from "../../../src/core/measures/length";

const NOWHERE = { line: null, cell: null, size: null, column: null };
const block = (fault: Readonly<Record<string, unknown>>) => ({
  rows: [],
  findings: [{ ...fault, ...NOWHERE, severity: "blocks" }],
});
const note = (fault: Readonly<Record<string, unknown>>) => ({ ...NOWHERE, severity: "notes", ...fault });
const row = (label: string, bust: number, waist: number, hip: number, more: Readonly<Record<string, number>> = {}) => ({
  label,
  bust,
  waist,
  hip,
  ...more,
});
const EIGHT = row("8", 800, 620, 860);
const TEN = row("10", 840, 660, 900);
const DOWN = "Size\tBust\tWaist\tHip\n8\t80\t62\t86\n10\t84\t66\t90";

describe("a text that is no chart", () => {
  it.each<readonly [string, Readonly<Record<string, unknown>>]>([
    ["", { code: "paste/empty" }],
    ["\n \t\u00a0\n", { code: "paste/empty" }],
    [",,;\t|", { code: "paste/no-columns" }],
    ["x".repeat(20_001), { code: "paste/too-long" }],
    ["a\tb\n".repeat(301), { code: "paste/too-long" }],
    ["8\t".repeat(301), { code: "paste/too-long" }],
    ["8\t".repeat(299), { code: "paste/no-columns" }],
    ["a,b\n".repeat(300), { code: "paste/no-columns" }],
    ["Size\tBust\n8\t80", { code: "paste/no-columns" }],
    ["Size\tBust\tWaist\n8\t80\t62", { code: "paste/column-missing", missing: ["hip"] }],
    ["Size\t8\t10\nHip\t80\t84\nFinished bust\t90\t94", { code: "paste/column-missing", missing: ["bust", "waist"] }],
    [
      "Size\tBust\tBust\tWaist\tHip\n8\t78\t80\t62\t86",
      { code: "paste/column-several", several: "bust", texts: ["Bust", "Bust"] },
    ],
    ["Size\tBust A\tBust C\tWaist\tHip\n8\t78\t83\t62\t86", { code: "paste/bust-by-cup", cups: ["A", "C"] }],
    [
      "Size\tBust A\tBust\tWaist\tHip\n8\t78\t83\t62\t86",
      { code: "paste/column-several", several: "bust", texts: ["Bust A", "Bust"] },
    ],
    ["My bust\t80\t62\t86", { code: "paste/headings-uncertain" }],
    ["hello", { code: "paste/no-columns" }],
    ["80\t62", { code: "paste/no-columns" }],
    ["80\t62\t86\t90\t91", { code: "paste/no-columns" }],
    ["Size,Bust,Waist,Hip\n8,80,62,86,5", { code: "paste/commas-ambiguous" }],
    // A bust of 55 is unusually small in centimetres and usual in inches (1397 mm); so are the others.
    ["Size\tBust\tWaist\tHip\n8\t55\t48\t64", { code: "paste/unit-uncertain" }],
    ["Size\tBust\tWaist\tHip\n8\t55\t48\t64\n9\t10\t10\t10", { code: "paste/unit-uncertain" }],
  ])("%#", (text, fault) => expect(pasteChart(text, "cm")).toEqual(block(fault)));

  it("may be as long as 20 000 characters and 300 lines", () => {
    expect(pasteChart(`${DOWN}${" ".repeat(20_000 - DOWN.length)}`, "cm").rows).toEqual([EIGHT, TEN]);
    expect(pasteChart(`${DOWN}${"\nfoot".repeat(297)}`, "cm").rows).toEqual([EIGHT, TEN]);
    expect(pasteChart(`${DOWN}${"\nfoot".repeat(298)}`, "cm")).toEqual(block({ code: "paste/too-long" }));
  });
});

describe("sizes", () => {
  it("of 60 lines are read, and no more", () => {
    const lines = (count: number) =>
      ["Size\tBust\tWaist\tHip", ...Array.from({ length: count }, (_, at) => `s${at}\t${70 + at}\t62\t86`)].join("\n");
    expect(pasteChart(lines(60), "cm").findings).toEqual([]);
    const { rows, findings } = pasteChart(lines(62), "cm");
    expect(rows).toHaveLength(60);
    expect(findings).toEqual([{ ...NOWHERE, code: "paste/too-many-lines", most: 60, line: 62, severity: "blocks" }]);
  });

  it("are named by what is printed, to 40 letters, without marks that lead to a note", () =>
    expect(pasteChart(`Size\tBust\tWaist\tHip\n${"n".repeat(41)}\t80\t62\t86\n10*\t84\t66\t90`, "cm")).toEqual({
      rows: [row("n".repeat(40), 800, 620, 860), TEN],
      findings: [],
    }));

  it("without a name have none, and are spoken of by their number", () => {
    expect(pasteChart("Size\tBust\tWaist\tHip\n8\t80\t62\t86\n\t84\tx\t90", "cm")).toEqual({
      rows: [EIGHT],
      findings: [
        { code: "paste/cell-unreadable", text: "x", severity: "blocks", line: 3, cell: 3, size: "2", column: "waist" },
      ],
    });
    expect(pasteChart("Bust\tWaist\tHip\n80\t62\t86\n84\t66\t90", "cm")).toEqual({
      rows: [row("1", 800, 620, 860), row("2", 840, 660, 900)],
      findings: [note({ code: "paste/names-made" })],
    });
  });

  it("with a cell missing, unreadable or too much are left out, and the cell is named", () => {
    const text =
      "Size\tBust\tWaist\tHip\tFinished hip\n8\t80\t\t–\n10\t?\t66\t90\tx\n12\t88\t70\t94\t100\n14\t92\t74\t98\t104\t9";
    expect(pasteChart(text, "cm")).toEqual({
      rows: [row("12", 880, 700, 940, { finishedHip: 1000 })],
      findings: [
        { code: "paste/cell-missing", severity: "blocks", line: 2, cell: 3, size: "8", column: "waist" },
        { code: "paste/cell-missing", severity: "blocks", line: 2, cell: 4, size: "8", column: "hip" },
        { code: "paste/cell-unreadable", text: "?", severity: "blocks", line: 3, cell: 2, size: "10", column: "bust" },
        {
          code: "paste/cell-unreadable",
          text: "x",
          severity: "warns",
          line: 3,
          cell: 5,
          size: "10",
          column: "finishedHip",
        },
        { ...NOWHERE, code: "paste/cells-uncertain", count: 6, columns: 5, severity: "blocks", line: 5, size: "14" },
      ],
    });
    expect(pasteChart("Size  Bust  Waist  Hip\n8  80  62  86\n10  84  66", "cm")).toEqual({
      rows: [EIGHT],
      findings: [
        { ...NOWHERE, code: "paste/cells-uncertain", count: 3, columns: 4, severity: "blocks", line: 3, size: "10" },
      ],
    });
  });

  it("a cell that is not there at all is told with its line alone", () =>
    expect(pasteChart("Size\tBust\tWaist\tHip\n8\t80\t62", "cm").findings).toEqual([
      { code: "paste/cell-missing", severity: "blocks", line: 2, cell: null, size: "8", column: "hip" },
    ]));

  it("of a range: its middle, told with the cell", () =>
    expect(pasteChart("Size\tBust\tWaist\tHip\n8\t78-82\t62\t86", "cm")).toEqual({
      rows: [EIGHT],
      findings: [
        {
          code: "paste/range-middle",
          text: "78-82",
          taken: 800,
          severity: "notes",
          line: 2,
          cell: 2,
          size: "8",
          column: "bust",
        },
      ],
    }));
});

describe("how it was read", () => {
  it("sizes along the top, with the places of the cells", () => {
    expect(pasteChart("Size\t8\t10\nBust\t80\t84\nWaist\t62\tx\nHip\t86\t90", "cm")).toEqual({
      rows: [EIGHT],
      findings: [
        note({ code: "paste/sizes-along-top" }),
        { code: "paste/cell-unreadable", text: "x", severity: "blocks", line: 3, cell: 3, size: "10", column: "waist" },
      ],
    });
  });

  it("columns by their number", () => {
    expect(pasteChart("8\t80\t62\t86\n10\t84\t66\t90", "cm")).toEqual({
      rows: [EIGHT, TEN],
      findings: [note({ code: "paste/columns-assumed", columns: ["label", "bust", "waist", "hip"] })],
    });
    expect(pasteChart("In cm\n80\t62\t86\nnothing", "in")).toEqual({
      rows: [row("1", 800, 620, 860)],
      findings: [
        note({ code: "paste/columns-assumed", columns: ["bust", "waist", "hip"] }),
        note({ code: "paste/names-made" }),
        note({ code: "paste/line-ignored", text: "nothing", line: 3 }),
      ],
    });
    expect(pasteChart("8\t80\t62\t86\t90\t68\t96", "cm")).toEqual({
      rows: [row("8", 800, 620, 860, { finishedBust: 900, finishedWaist: 680, finishedHip: 960 })],
      findings: [
        note({
          code: "paste/columns-assumed",
          columns: ["label", "bust", "waist", "hip", "finishedBust", "finishedWaist", "finishedHip"],
        }),
      ],
    });
  });

  it("lines and headings passed over, lengths taken and lengths that are not certain", () => {
    const text =
      "Size\tColour\tBust\tWaist\tHip\tHigh hip\tBack waist\tShoulder\n8\tred\t80\t62\t86\t78\t40\t12\n10\tred\t84\t66\t90\t82\t41\t?\nnone here";
    expect(pasteChart(text, "cm")).toEqual({
      rows: [EIGHT, TEN],
      lengths: { backWaistLength: { bySize: { "8": 400, "10": 410 } } },
      findings: [
        note({ code: "paste/lengths-read", lengths: ["backWaistLength"] }),
        note({ code: "paste/heading-ignored", text: "Colour", line: 1, cell: 2 }),
        note({ code: "paste/heading-ignored", text: "High hip", line: 1, cell: 6 }),
        note({ code: "paste/length-uncertain", text: "Shoulder", line: 1, cell: 8 }),
        note({ code: "paste/line-ignored", text: "none here", line: 4 }),
      ],
    });
  });

  it("lengths are taken for no sizes without names, or with one name", () => {
    const table = (a: string, b: string) =>
      pasteChart(`Size\tBust\tWaist\tHip\tShoulder\n${a}\t80\t62\t86\t12\n${b}\t84\t66\t90\t12.5`, "cm").lengths;
    expect(table("8", "10")).toEqual({ shoulderLength: { bySize: { "8": 120, "10": 125 } } });
    expect(table("8", "8")).toBeUndefined();
    expect(table("8", "")).toBeUndefined();
    expect(table("8", "8*")).toBeUndefined();
  });

  it("a size without that length has none", () =>
    expect(
      pasteChart("Size\tBust\tWaist\tHip\tShoulder\n8\t80\t62\t86\t–\n10\t84\t66\t90\t12.5", "cm").lengths,
    ).toEqual({ shoulderLength: { bySize: { "10": 125 } } }));

  it("a girth printed twice alike is taken once, and the second heading told", () =>
    expect(pasteChart("Size\tBust\tChest girth\tWaist\tHip\tHips\n8\t80\t80\t62\t86\t86", "cm")).toEqual({
      rows: [EIGHT],
      findings: [
        note({ code: "paste/heading-ignored", text: "Chest girth", line: 1, cell: 3 }),
        note({ code: "paste/heading-twice", text: "Hips", line: 1, cell: 6, column: "hip" }),
      ],
    }));
});

describe("units that nothing says", () => {
  const table = (...lines: readonly string[]): string => ["Size\tBust\tWaist\tHip", ...lines].join("\n");

  it.each<readonly [string, TypedUnit, string, number]>([
    [table("8\t31\t24\t34"), "cm", "in", 787.4],
    [table("8\t80\t62\t86"), "in", "cm", 800],
    [table("8\t800\t620\t860"), "cm", "mm", 800],
    [table("8\t800\t620\t860"), "in", "mm", 800],
    ["8\t31\t24\t34", "cm", "in", 787.4],
    // Of three sizes one is possible in centimetres: not half of them.
    [table("8\t55\t48\t64", "9\t40\t30\t43", "10\t41\t31\t44"), "cm", "in", 1397],
  ])("%j typed in %s is meant in %s", (text, given, unit, bust) => {
    const { rows, findings } = pasteChart(text, given);
    expect(rows[0]?.bust).toBe(bust);
    expect(findings).toContainEqual(note({ code: "paste/unit-assumed", unit }));
  });

  it("are the unit given where as many sizes are usual in it", () => {
    expect(pasteChart(table("8\t80\t62\t86"), "cm").findings).toEqual([]);
    expect(pasteChart(table("8\t31\t24\t34"), "in").findings).toEqual([]);
    // One size usual in centimetres, one in inches.
    expect(pasteChart(table("8\t80\t62\t86", "10\t31\t24\t34"), "cm").findings).toEqual([]);
  });

  it("a unit in one column's cells is that column's, the others' own", () => {
    expect(pasteChart(table("8\t31 in\t62\t86", "10\t33 in\t66\t90"), "cm").rows).toEqual([
      row("8", 787.4, 620, 860),
      row("10", 838.2, 660, 900),
    ]);
    // Only the first bust says inches: the second, 33, is none in centimetres.
    expect(pasteChart(table("8\t31 in\t62\t86", "10\t33\t66\t90"), "cm").rows).toEqual([
      row("8", 787.4, 620, 860),
      row("10", 838.2, 660, 900),
    ]);
    expect(pasteChart(table("8\t31 in\t62\t86", "10\t84\t66\t90"), "cm").rows).toEqual([
      row("8", 787.4, 620, 860),
      TEN,
    ]);
  });
});

describe("tables cut at the wrong places", () => {
  it("are cut at their single spaces where that reads, and else told as they were cut", () => {
    expect(pasteChart("Size Bust Waist Hip\t\n8 80 62 86", "cm")).toEqual({ rows: [EIGHT], findings: [] });
    expect(pasteChart("Size Bust  Waist Hip\n8 80 62 86", "cm")).toEqual({ rows: [EIGHT], findings: [] });
    expect(pasteChart("hello\tworld", "cm")).toEqual(block({ code: "paste/no-columns" }));
  });
});
