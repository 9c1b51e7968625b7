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

  it("are no question where the headings say it, however small the girths", () =>
    expect(pasteChart("Size\tBust (cm)\tWaist (cm)\tHip (cm)\n8\t55\t48\t64", "cm")).toEqual({
      rows: [row("8", 550, 480, 640)],
      findings: [],
    }));

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

describe("a unit behind some girths alone", () => {
  const along = (...lines: readonly string[]): string => ["Size\t8\t10", ...lines].join("\n");

  it("is meant for a whole line of them where it stands behind the last", () => {
    // Numbers that are usual in centimetres, typed where inches are: only where nothing says is the unit told as taken.
    const assumed = note({ code: "paste/unit-assumed", unit: "cm" });
    const top = note({ code: "paste/sizes-along-top" });
    const found = (text: string) => {
      const { rows, findings } = pasteChart(text, "in");
      expect(rows.slice(0, 2)).toEqual([EIGHT, TEN]);
      return findings;
    };
    expect(found(along("Bust\t80\t84 cm", "Waist\t62\t66 cm", "Hip\t86\t90 cm"))).toEqual([top]);
    expect(found(along("Bust\t80 cm\t84", "Waist\t62 cm\t66", "Hip\t86 cm\t90"))).toEqual([top, assumed]);
    // Down a column the last is one like others, and so is it of three where two say it.
    expect(found("Size\tBust\tWaist\tHip\n8\t80\t62\t86\n10\t84 cm\t66 cm\t90 cm")).toEqual([assumed]);
    const two = "Size\t8\t10\t12\nBust\t80\t84 cm\t88 cm\nWaist\t62\t66 cm\t70 cm\nHip\t86\t90 cm\t94 cm";
    expect(found(two)).toEqual([top, assumed]);
  });

  it("is that of a sewn girth too, where without it there is none", () => {
    const table = (bust: string) =>
      `Size\tBust\tWaist\tHip\tFinished bust\n8\t80\t62\t86\t34 in\n10\t84\t66\t90\t${bust}`;
    expect(pasteChart(table("36"), "cm").rows.map(({ finishedBust }) => finishedBust)).toEqual([863.6, 914.4]);
    expect(pasteChart(table("90"), "cm").rows.map(({ finishedBust }) => finishedBust)).toEqual([863.6, 900]);
    // Two units in one column are each of their own.
    expect(pasteChart(table("900 mm"), "cm").rows.map(({ finishedBust }) => finishedBust)).toEqual([863.6, 900]);
  });
});

describe("commas between cells", () => {
  const comma = (...lines: readonly string[]) => pasteChart(lines.join("\n"), "cm");

  it("may have been decimal ones where a girth is under 20 cm, and nowhere else", () => {
    expect(comma("Size,Bust,Waist,Hip", "8,80,20,86").rows).toEqual([row("8", 800, 200, 860)]);
    expect(comma("Size,Bust,Waist,Hip", "8,80,19,86")).toEqual(block({ code: "paste/commas-ambiguous" }));
    expect(comma("Size,Bust,Waist,Hip,Finished bust", "8,80,62,86,19")).toEqual(
      block({ code: "paste/commas-ambiguous" }),
    );
    expect(comma("Size,Bust,Waist,Hip,Height", "8,80,62,86,16").rows).toEqual([EIGHT]);
    expect(comma("Size,Bust mm,Waist mm,Hip mm", "8,800,620,860").rows).toEqual([EIGHT]);
    expect(comma("Size,Bust mm,Waist mm,Hip mm", "8,800,62,860")).toEqual(block({ code: "paste/commas-ambiguous" }));
  });

  it("leave nothing over in a line of a size, but empty cells", () => {
    expect(comma("Size,Bust,Waist,Hip", "8,80,62,86,").rows).toEqual([EIGHT]);
    expect(comma("Size,Bust,Waist,Hip", "8,80,62,86,,5")).toEqual(block({ code: "paste/commas-ambiguous" }));
    expect(comma("Size,8,10", "Bust,80,84", "Waist,62,66", "Hip,86,90", "Shoulder,12,12,5").rows).toEqual([EIGHT, TEN]);
  });
});

describe("lines that are no sizes", () => {
  it("are told with their place, and of sizes along the top without", () => {
    expect(pasteChart("Size\t8\t10\nBust\t80\t–\nWaist\t62\t–\nHip\t86\t–", "cm")).toEqual({
      rows: [EIGHT],
      findings: [note({ code: "paste/sizes-along-top" }), note({ code: "paste/line-ignored", text: "10 – – –" })],
    });
    expect(pasteChart("Size\tBust\tWaist\tHip\nA 1\tb\tc\td", "cm")).toEqual({
      rows: [],
      findings: [
        note({ code: "paste/line-ignored", text: "A 1 b c d", line: 2 }),
        { code: "paste/no-columns", ...NOWHERE, severity: "blocks" },
      ],
    });
    expect(pasteChart("Size\tBust\tWaist\tHip", "cm")).toEqual(block({ code: "paste/no-columns" }));
    // A line whose sizes all fail is told by that alone.
    expect(pasteChart("Size\tBust\tWaist\tHip\n8\tx1\t62\t86", "cm").findings).toEqual([
      { code: "paste/cell-unreadable", text: "x1", severity: "blocks", line: 2, cell: 2, size: "8", column: "bust" },
    ]);
  });

  it("stand empty under a heading of nothing", () =>
    expect(pasteChart(`${DOWN}\n\t\t\t\t`, "cm")).toEqual({ rows: [EIGHT, TEN], findings: [] }));
});

describe("lengths that are told twice, or of a size that was left out", () => {
  const table = (...columns: readonly (readonly [string, string, string])[]): string =>
    [
      ["Size\tBust cm\tWaist cm\tHip cm", ...columns.map(([head]) => head)],
      ["8\t80\t62\t86", ...columns.map(([, first]) => first)],
      ["10\t84\t66\t90", ...columns.map(([, , second]) => second)],
    ]
      .map((line) => line.join("\t"))
      .join("\n");

  it("are not taken, and both headings are told", () => {
    const { lengths, findings } = pasteChart(table(["Shoulder", "12", "12.5"], ["Shoulder seam", "12", "12.5"]), "cm");
    expect(lengths).toBeUndefined();
    expect(findings).toEqual([
      note({ code: "paste/length-uncertain", text: "Shoulder", line: 1, cell: 5 }),
      note({ code: "paste/length-uncertain", text: "Shoulder seam", line: 1, cell: 6 }),
    ]);
  });

  it("are taken each by itself, in the order in which they are offered, in their own unit", () => {
    const { lengths, findings } = pasteChart(
      table(
        ["Height cm", "164", "166"],
        ["Colour", "a", "b"],
        ["Back waist (in)", "16", "16½"],
        ["Neck cm", "36", "370 mm"],
      ),
      "cm",
    );
    expect(lengths).toEqual({
      backWaistLength: { bySize: { "8": 406.4, "10": 419.1 } },
      neckBaseGirth: { bySize: { "8": 360, "10": 370 } },
      height: { bySize: { "8": 1640, "10": 1660 } },
    });
    expect(findings).toEqual([
      note({ code: "paste/lengths-read", lengths: ["backWaistLength", "neckBaseGirth", "height"] }),
      note({ code: "paste/heading-ignored", text: "Colour", line: 1, cell: 6 }),
    ]);
  });

  it("go by the sizes that were read alone", () => {
    const text = `${table(["Shoulder", "12", "12.5"])}\n12\t88\tx\t94\t13`;
    expect(pasteChart(text, "cm").lengths).toEqual({ shoulderLength: { bySize: { "8": 120, "10": 125 } } });
  });
});

describe("tables cut at the wrong places", () => {
  it("are cut at their single spaces where that reads, and else told as they were cut", () => {
    expect(pasteChart("Size Bust Waist Hip\t\n8 80 62 86", "cm")).toEqual({ rows: [EIGHT], findings: [] });
    expect(pasteChart("Size Bust  Waist Hip\n8 80 62 86", "cm")).toEqual({ rows: [EIGHT], findings: [] });
    expect(pasteChart("hello\tworld", "cm")).toEqual(block({ code: "paste/no-columns" }));
  });
});
