import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pasteChart } from "../../../src/core/chart/pasteChart";
import { LONGEST, type TypedUnit } from "../../../src/core/measures/length";

const WANTED = [
  { label: "8", bust: 800, waist: 625, hip: 860 },
  { label: "10", bust: 845, waist: 660, hip: 900 },
];

const found = (text: string, unit: TypedUnit = "cm") =>
  pasteChart(text, unit).findings.map(({ code, severity, line, size, column }) => [code, severity, line, size, column]);

describe("pasteChart", () => {
  it.each([
    ["tabs", "Size\tBust\tWaist\tHip\n8\t80\t62.5\t86\n10\t84.5\t66\t90"],
    ["tabs and decimal commas", "Size\tBust\tWaist\tHip\n8\t80\t62,5\t86\n10\t84,5\t66\t90"],
    ["semicolons and decimal commas", "Size;Bust;Waist;Hip\r\n8;80;62,5;86\r\n10;84,5;66;90\r\n"],
    ["commas", "Size,Bust,Waist,Hip\n8,80,62.5,86\n10,84.5,66,90"],
    ["commas and quoted decimal commas", 'Size,Bust,Waist,Hip\n8,80,"62,5",86\n10,"84,5",66,90'],
    ["single spaces", "size bust waist hip\n8 80 62,5 86\n10 84,5 66 90"],
    ["gaps", "Size    Bust   Waist  Hip\n8      80     62.5   86\n10     84.5   66     90"],
    [
      "other headings in another order",
      "Full hip (cm)\tUK size\tWaist girth\tChest, cm\n86\t8\t62.5\t80\n90\t10\t66\t84.5",
    ],
    ["millimetres named in the headings", "Size\tBust mm\tWaist mm\tHip mm\n8\t800\t625\t860\n10\t845\t660\t900"],
    ["units in the cells", "Size\tBust\tWaist\tHip\n8\t80 cm\t625mm\t86cm\n10\t84.5cm\t66 cm\t90 cm"],
    ["a line of units", "Size\tBust\tWaist\tHip\n\tmm\tmm\tmm\n8\t800\t625\t860\n10\t845\t660\t900"],
    [
      "a title and empty lines",
      "\n\nBody measures (cm)\n\nSize\tBust\tWaist\tHip\n\n8\t80\t62.5\t86\n10\t84.5\t66\t90\n\n",
    ],
    ["a heading broken over two lines", 'Size\t"Bust\ngirth"\tWaist\tHip\n8\t80\t62.5\t86\n10\t84.5\t66\t90'],
  ])("reads %s", (_, text) => {
    expect(pasteChart(text, "cm")).toEqual({ rows: WANTED, findings: [] });
  });

  it("reads inches, in headings, marks and fractions", () => {
    // 1 in = 25.4 mm: 31 1/2 in = 800.1, 24 in = 609.6, 33 in = 838.2 mm.
    const rows = [{ label: "8", bust: 800.1, waist: 609.6, hip: 838.2 }];
    expect(pasteChart("Size\tBust (in)\tWaist (in)\tHip (in)\n8\t31 1/2\t24\t33", "cm").rows).toEqual(rows);
    expect(pasteChart('Size\tBust\tWaist\tHip\n8\t31½"\t24"\t33"', "cm").rows).toEqual(rows);
    expect(pasteChart('Size,Bust,Waist,Hip\n8,"31 1/2""",24 in,33.0"', "cm").rows).toEqual(rows);
    expect(pasteChart("Size\tBust\tWaist\tHip\n8\t31-1/2\t24\t33", "in").rows).toEqual(rows);
  });

  it("takes the unit given where nothing names one, and another only where nothing else makes bodies", () => {
    expect(pasteChart("Size\tBust\tWaist\tHip\n8\t31\t24\t33\n10\t32\t25\t34", "in").findings).toEqual([]);
    const other = pasteChart("Size\tBust\tWaist\tHip\n8\t31\t24\t33\n10\t32\t25\t34", "cm");
    expect(other.findings).toMatchObject([{ code: "paste/unit-assumed", unit: "in", severity: "notes" }]);
    expect(other.rows[0]).toEqual({ label: "8", bust: 787.4, waist: 609.6, hip: 838.2 });
  });

  it("takes finished measures, and leaves out those not printed", () => {
    const { rows, findings } = pasteChart(
      "Size\tBust\tWaist\tHip\tFinished bust\tGarment hip\n8\t80\t62.5\t86\t88\t–\n10\t84.5\t66\t90\t92.5\t95",
      "cm",
    );
    expect(findings).toEqual([]);
    expect(rows).toEqual([
      { ...WANTED[0], finishedBust: 880 },
      { ...WANTED[1], finishedBust: 925, finishedHip: 950 },
    ]);
  });

  it.each([
    ["a heading over the sizes", "Size\t8\t10\nBust\t80\t84.5\nWaist\t62.5\t66\nHip\t86\t90"],
    ["an empty corner", "\t8\t10\nBust\t80\t84.5\nWaist\t62.5\t66\nHip\t86\t90"],
    ["no corner", "8 10\nBust 80 84.5\nWaist 62.5 66\nHip 86 90"],
  ])("turns a chart with the sizes along the top: %s", (_, text) => {
    const { rows, findings } = pasteChart(text, "cm");
    expect(rows).toEqual(WANTED);
    expect(findings).toMatchObject([{ code: "paste/sizes-along-top", severity: "notes" }]);
  });

  it("reads a chart without headings by the number of its columns, and says so", () => {
    expect(pasteChart("8\t80\t62.5\t86\n10\t84.5\t66\t90", "cm")).toMatchObject({
      rows: WANTED,
      findings: [{ code: "paste/columns-assumed" }],
    });
    expect(pasteChart("8\t80\t62\t86\t88\t66\t91", "cm").rows).toEqual([
      { label: "8", bust: 800, waist: 620, hip: 860, finishedBust: 880, finishedWaist: 660, finishedHip: 910 },
    ]);
    expect(pasteChart("80\t62\t86", "cm").rows).toEqual([{ label: "1", bust: 800, waist: 620, hip: 860 }]);
  });

  it("takes the middle of a range and says so", () => {
    const { rows, findings } = pasteChart(
      "Size\tBust\tWaist\tHip\nS\t86-90\t66–70\t92 to 96\nM\t34-36 in\t70/74\t98",
      "cm",
    );
    expect(rows).toEqual([
      { label: "S", bust: 880, waist: 680, hip: 940 },
      { label: "M", bust: 889, waist: 720, hip: 980 },
    ]);
    expect(findings.map(({ code, severity, size, column }) => [code, severity, size, column])).toEqual([
      ["paste/range-middle", "notes", "S", "bust"],
      ["paste/range-middle", "notes", "S", "waist"],
      ["paste/range-middle", "notes", "S", "hip"],
      ["paste/range-middle", "notes", "M", "bust"],
      ["paste/range-middle", "notes", "M", "waist"],
    ]);
  });

  it("leaves out a size that cannot be read, and names the cell", () => {
    const text = "Size\tBust\tWaist\tHip\n8\t80\t\t86\n10\t84.5\t66\t90\n12\tabc\t70\t94\n14\t92\n16\t96\t78\t102\t7";
    expect(pasteChart(text, "cm").rows.map(({ label }) => label)).toEqual(["10"]);
    expect(found(text)).toEqual([
      ["paste/cell-missing", "blocks", 2, "8", "waist"],
      ["paste/cell-unreadable", "blocks", 4, "12", "bust"],
      ["paste/cell-missing", "blocks", 5, "14", "waist"],
      ["paste/cell-missing", "blocks", 5, "14", "hip"],
      ["paste/cells-uncertain", "blocks", 6, "16", null],
    ]);
  });

  it("passes over what is no size, and columns of other measures, and says so", () => {
    expect(found("Size\tHigh bust\tBust\tWaist\tHip\n8\t76\t80\t62.5\t86\nAll measures of the body")).toEqual([
      ["paste/heading-ignored", "notes", 1, null, null],
      ["paste/line-ignored", "notes", 3, null, null],
    ]);
  });

  it("reads the lengths printed beside the girths, sizes down or along", () => {
    // 1 in = 25.4 mm: 15½ in = 393.7, 15¾ in = 400.05, 4¾ in = 120.65, 5 in = 127 mm; kept to a tenth.
    const lengths = {
      backWaistLength: { bySize: { "8": 393.7, "10": 400.1 } },
      shoulderLength: { bySize: { "8": 120.7, "10": 127 } },
    };
    const along =
      "Size\t8\t10\nBust\t31½\t32½\nWaist\t24\t25\nHip\t33½\t34½\nBack waist length\t15½\t15¾\nShoulder\t4¾\t5";
    const down =
      "Size\tBust\tWaist\tHip\tNape to waist\tShoulder length (in)\n8\t31½\t24\t33½\t15½\t4¾\n10\t32½\t25\t34½\t15¾\t5";
    for (const text of [along, along.replaceAll("\t", "  "), down]) {
      const pasted = pasteChart(text, "in");
      expect(pasted.lengths).toEqual(lengths);
      expect(pasted.findings.map(({ code }) => code)).toContain("paste/lengths-read");
      expect(pasted.findings.map(({ code }) => code)).not.toContain("paste/heading-ignored");
    }
    expect(pasteChart(along.replaceAll("\t", " "), "in").lengths).toEqual(lengths);
  });

  it.each([
    ["a range", "39-40\t40"],
    ["no length", "abc\t40"],
    ["no such body", "390\t400"],
    ["more figures than sizes", "39\t40\t41"],
  ])("leaves a length alone, with a note, where it is not certain: %s", (_, figures) => {
    const text = `Size\t8\t10\nBust\t80\t84.5\nWaist\t62.5\t66\nHip\t86\t90\nBack waist length\t${figures}`;
    const { rows, lengths, findings } = pasteChart(text, "cm");
    expect([rows, lengths]).toEqual([WANTED, undefined]);
    expect(findings.map(({ code }) => code)).toContain("paste/length-uncertain");
  });

  it("takes no length of a finished garment, nor one told twice", () => {
    const head = "Size\tBust\tWaist\tHip";
    expect(
      pasteChart(`${head}\tFinished back length\tBack length\n8\t80\t62.5\t86\t60\t60`, "cm").lengths,
    ).toBeUndefined();
    expect(pasteChart(`${head}\tBack waist\tNape to waist\n8\t80\t62.5\t86\t40\t41`, "cm").lengths).toBeUndefined();
  });

  it("takes the column in the unit wanted where both are printed", () => {
    const text = "Size\tBust in\tBust cm\tWaist in\tWaist cm\tHip in\tHip cm\n8\t31\t80\t24\t62.5\t33\t86";
    expect(pasteChart(text, "cm").rows).toEqual([WANTED[0]]);
    expect(pasteChart(text, "in").rows).toEqual([{ label: "8", bust: 787.4, waist: 609.6, hip: 838.2 }]);
  });

  it.each([
    ["", "paste/empty"],
    [" \n\t\n", "paste/empty"],
    ["hello world", "paste/no-columns"],
    ["Bust\tWaist\n80\t62", "paste/column-missing"],
    ["12,88,5,70,5,94,5\n14,92,5,74,5,98,5", "paste/commas-ambiguous"],
    ["Size,Bust,Waist,Hip\n12,88,5,70,94", "paste/commas-ambiguous"],
    ["8\t80\t62\t86\n".repeat(2000), "paste/too-long"],
    [`Bust\n${"Waist\n".repeat(3000)}`, "paste/too-long"],
  ])("takes nothing from %j", (text, code) => {
    const { rows, findings } = pasteChart(text, "cm");
    expect(rows).toEqual([]);
    expect(findings).toMatchObject([{ code, severity: "blocks" }]);
  });

  it("never throws, and gives whole rows or a reason, whatever the text", () => {
    const cell = fc.oneof(
      fc.constantFrom(
        "Size",
        "Bust",
        "Waist (cm)",
        "Hip",
        "Finished bust",
        "86-90",
        "34 1/2",
        "34½",
        '"',
        '""',
        "88,5",
        "–",
        "",
        "in",
        "1/0",
        "toString",
      ),
      fc.integer({ min: -5, max: 2000 }).map(String),
      fc.string({ maxLength: 12 }),
      fc.constantFrom("\u0000", "\u2028", "\ud800", "💡", "\r", "\n", "\ufeff"),
    );
    const table = fc
      .tuple(
        fc.constantFrom("\t", ";", ",", " ", "  ", "\u00a0"),
        fc.array(fc.array(cell, { maxLength: 9 }), { maxLength: 9 }),
      )
      .map(([mark, lines]) => lines.map((cells) => cells.join(mark)).join("\n"));
    fc.assert(
      fc.property(
        fc.oneof(table, fc.string({ maxLength: 300 })),
        fc.constantFrom<TypedUnit>("cm", "in"),
        (text, unit) => {
          const { rows, findings } = pasteChart(text, unit);
          expect(rows.length > 0 || findings.some(({ severity }) => severity === "blocks")).toBe(true);
          expect(
            rows.flatMap((row) => [row.bust, row.waist, row.hip]).filter((girth) => !(girth >= 0 && girth <= LONGEST)),
          ).toEqual([]);
        },
      ),
      { numRuns: 200 },
    );
  }, 240_000);

  it("gives back a written chart exactly", () => {
    const girth = fc.integer({ min: 6000, max: 19_000 }).map((tenths) => tenths / 10);
    const rows = fc.array(fc.record({ bust: girth, waist: girth, hip: girth }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(rows, fc.constantFrom("\t", ";"), fc.boolean(), (sizes, mark, comma) => {
        const number = (mm: number) => String(Number((mm / 10).toFixed(2))).replace(".", comma ? "," : ".");
        const labelled = sizes.map((row, index) => ({ label: `S${index}`, ...row }));
        const lines = labelled.map(({ label, bust, waist, hip }) =>
          [label, number(bust), number(waist), number(hip)].join(mark),
        );
        expect(pasteChart([`Size${mark}Bust${mark}Waist${mark}Hip`, ...lines].join("\n"), "cm")).toEqual({
          rows: labelled,
          findings: [],
        });
      }),
    );
  }, 240_000);
});
