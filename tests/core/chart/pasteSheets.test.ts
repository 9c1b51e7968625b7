/** Charts as sheets and envelopes print them. All numbers are invented; what each says was written down by hand. */
import { describe, expect, it } from "vitest";
import { pasteChart } from "../../../src/core/chart/pasteChart";
import type { SizeRow } from "../../../src/core/chart/sizeChart";
import type { TypedUnit } from "../../../src/core/measures/length";

/** "8 80 62 86 88" is a size, its bust, waist and hip and, where printed, its finished bust, waist and hip; "-" is none. */
function sizes(text: string, mm = 10): readonly SizeRow[] {
  return text.split(";").map((size): SizeRow => {
    const [label = "", ...girths] = size.trim().split(" ");
    const [bust = 0, waist = 0, hip = 0, ...sewn] = girths.map((girth) =>
      girth === "-" ? Number.NaN : Math.round(Number(girth) * mm * 10) / 10,
    );
    const names = ["finishedBust", "finishedWaist", "finishedHip"] as const;
    const finished = names.flatMap((name, at) => {
      const value = sewn[at];
      return value === undefined || Number.isNaN(value) ? [] : [[name, value] as const];
    });
    return { label, bust, waist, hip, ...Object.fromEntries(finished) };
  });
}

const inches = (text: string): readonly SizeRow[] => sizes(text, 25.4);

const THREE = sizes("8 80 62 86; 10 84 66 90; 12 88 70 94");

type Case = readonly [name: string, text: string, unit: TypedUnit, rows: readonly SizeRow[]];

const READ: readonly Case[] = [
  [
    "spaces, sizes along, words before the sizes",
    "UK Size 8 10 12 14 16\nBust 80 84 88 93 98\nWaist 62 66 70 75 80\nHip 86 90 94 99 104",
    "cm",
    sizes("8 80 62 86; 10 84 66 90; 12 88 70 94; 14 93 75 99; 16 98 80 104"),
  ],
  [
    "spaces, sizes along, letters",
    "Size XS S M\nBust 80 84 88\nWaist 62 66 70\nHips 86 90 94",
    "cm",
    sizes("XS 80 62 86; S 84 66 90; M 88 70 94"),
  ],
  ["spaces, sizes along, no corner", "8 10 12\nBust 80 84 88\nWaist 62 66 70\nHip 86 90 94", "cm", THREE],
  [
    "spaces, sizes down, headings of two words",
    "UK size Bust Waist Full hip\n8 80 62 86\n10 84 66 90\n12 88 70 94",
    "cm",
    THREE,
  ],
  [
    "spaces, sizes down, no heading over the sizes",
    "Bust Waist Hip\n8 80 62 86\n10 84 66 90\n12 88 70 94",
    "cm",
    THREE,
  ],
  [
    "a title in cm",
    "Body measurements in cm\nSize\tBust\tWaist\tHip\n8\t80\t62\t86\n10\t84\t66\t90\n12\t88\t70\t94",
    "in",
    THREE,
  ],
  [
    "headings in cm, tabbed",
    "Size\tBust in cm\tWaist in cm\tHip in cm\n8\t80\t62\t86\n10\t84\t66\t90\n12\t88\t70\t94",
    "in",
    THREE,
  ],
  [
    "headings in cm, spaced",
    "Size Bust in cm Waist in cm Hip in cm\n8 80 62 86\n10 84 66 90\n12 88 70 94",
    "in",
    THREE,
  ],
  [
    "sizes along, headings in cm",
    "Size 8 10 12\nBust in cm 80 84 88\nWaist in cm 62 66 70\nHip in cm 86 90 94",
    "in",
    THREE,
  ],
  [
    "headings in inches",
    "Size\tBust (in)\tWaist (in.)\tHip, in\n8\t31 1/2\t24 1/2\t34\n10\t33\t26\t35 1/2",
    "cm",
    inches("8 31.5 24.5 34; 10 33 26 35.5"),
  ],
  [
    "in as a preposition of something else",
    "Taken in the round, all in inches\nSize\tBust\tWaist\tHip\n8\t31½\t24½\t34\n10\t33\t26\t35½",
    "cm",
    inches("8 31.5 24.5 34; 10 33 26 35.5"),
  ],
  [
    "where the hip is taken, tabbed",
    'Size\t8\t10\t12\nBust\t31½\t33\t34½\nWaist\t24½\t26\t27½\nHip - 9" below waist\t34\t35½\t37',
    "in",
    inches("8 31.5 24.5 34; 10 33 26 35.5; 12 34.5 27.5 37"),
  ],
  [
    "where the hip is taken, spaced",
    'Size 8 10 12\nBust 31½ 33 34½\nWaist 24½ 26 27½\nHip - 9" below waist 34 35½ 37',
    "in",
    inches("8 31.5 24.5 34; 10 33 26 35.5; 12 34.5 27.5 37"),
  ],
  [
    "where the hip is taken, in the headings",
    'Size\tBust\tWaist\tHip - 9" below waist\n8\t31½\t24½\t34',
    "in",
    inches("8 31.5 24.5 34"),
  ],
  [
    "where the hip is taken, in brackets and cm",
    "Size 8 10 12\nBust 80 84 88\nWaist 62 66 70\nHip (20 cm below the waist) 86 90 94",
    "cm",
    THREE,
  ],
  [
    "where the hip is taken, in two units",
    'Size 8 10 12\nBust 80 84 88\nWaist 62 66 70\nHip - 9" (23 cm) below waistline 86 90 94',
    "cm",
    THREE,
  ],
  [
    "where the hip is taken, sizes down and spaced",
    'Size Bust Waist Hip 9" below waist\n8 80 62 86\n10 84 66 90\n12 88 70 94',
    "cm",
    THREE,
  ],
  [
    "a high hip beside it",
    "Size\tBust\tWaist\tHigh hip\tHip\n8\t80\t62\t78\t86\n10\t84\t66\t82\t90\n12\t88\t70\t86\t94",
    "cm",
    THREE,
  ],
  [
    "a high hip told by its place",
    'Size 8 10 12\nBust 80 84 88\nWaist 62 66 70\nHip 3" below waist 78 82 86\nHip 9" below waist 86 90 94',
    "cm",
    THREE,
  ],
  [
    "a finished bust, spaced, sizes down",
    "Size Bust Waist Hip Finished bust\n8 80 62 86 90\n10 84 66 90 94\n12 88 70 94 98",
    "cm",
    sizes("8 80 62 86 90; 10 84 66 90 94; 12 88 70 94 98"),
  ],
  [
    "a finished bust, spaced, sizes along",
    "Size 8 10 12\nBust 80 84 88\nWaist 62 66 70\nHip 86 90 94\nFinished bust 90 94 98",
    "cm",
    sizes("8 80 62 86 90; 10 84 66 90 94; 12 88 70 94 98"),
  ],
  [
    "each finished girth beside its own, spaced",
    "Size Bust Finished bust Waist Finished waist Hip Finished hip\n8 80 90 62 68 86 96\n10 84 94 66 72 90 100",
    "cm",
    sizes("8 80 62 86 90 68 96; 10 84 66 90 94 72 100"),
  ],
  [
    "finished behind the noun, spaced",
    "Size Bust Bust finished Waist Waist finished Hip\n8 80 90 62 68 86\n10 84 94 66 72 90",
    "cm",
    sizes("8 80 62 86 90 68; 10 84 66 90 94 72"),
  ],
  [
    "two tables along, under titles",
    "Body measurements\nSize 8 10 12\nBust 80 84 88\nWaist 62 66 70\nHip 86 90 94\nFinished garment measurements\nBust 90 94 98\nWaist 68 72 76",
    "cm",
    sizes("8 80 62 86 90 68; 10 84 66 90 94 72; 12 88 70 94 98 76"),
  ],
  [
    "two tables along, tabbed, sizes told twice",
    "Body measurements\t8\t10\t12\nBust\t80\t84\t88\nWaist\t62\t66\t70\nHip\t86\t90\t94\nFinished garment\t8\t10\t12\nBust\t90\t94\t98\nHip\t96\t100\t104",
    "cm",
    sizes("8 80 62 86 90 - 96; 10 84 66 90 94 - 100; 12 88 70 94 98 - 104"),
  ],
  [
    "two tables down, under titles",
    "Body measurements (cm)\nSize\tBust\tWaist\tHip\n8\t80\t62\t86\n10\t84\t66\t90\nFinished measurements (cm)\nSize\tBust\tWaist\tHip\n8\t90\t68\t96\n10\t94\t72\t100",
    "cm",
    sizes("8 80 62 86 90 68 96; 10 84 66 90 94 72 100"),
  ],
  [
    "two tables down in two units, cm wanted",
    "Inches\nSize\tBust\tWaist\tHip\n8\t31½\t24½\t34\nCentimetres\nSize\tBust\tWaist\tHip\n8\t80\t62\t86",
    "cm",
    sizes("8 80 62 86"),
  ],
  [
    "two tables down in two units, inches wanted",
    "Inches\nSize\tBust\tWaist\tHip\n8\t31½\t24½\t34\nCentimetres\nSize\tBust\tWaist\tHip\n8\t80\t62\t86",
    "in",
    inches("8 31.5 24.5 34"),
  ],
  [
    "two tables along in two units",
    "Size 8 10\nCentimetres\nBust 80 84\nWaist 62 66\nHip 86 90\nInches\nBust 31½ 33\nWaist 24½ 26\nHip 34 35½",
    "in",
    inches("8 31.5 24.5 34; 10 33 26 35.5"),
  ],
  [
    "a line over the headings for the finished ones",
    "\tBody measurements\t\t\tFinished garment\t\nSize\tBust\tWaist\tHip\tBust\tHip\n8\t80\t62\t86\t90\t96\n10\t84\t66\t90\t94\t100",
    "cm",
    sizes("8 80 62 86 90 - 96; 10 84 66 90 94 - 100"),
  ],
  [
    "a line over the headings for the units",
    "\tcm\t\t\tinches\t\t\nSize\tBust\tWaist\tHip\tBust\tWaist\tHip\n8\t80\t62\t86\t31½\t24½\t34",
    "in",
    inches("8 31.5 24.5 34"),
  ],
  [
    "both units in a cell, cm first",
    "Size\tBust\tWaist\tHip\n8\t80 cm (31½ in)\t62 cm (24½ in)\t86 cm (34 in)",
    "cm",
    sizes("8 80 62 86"),
  ],
  [
    "both units in a cell, inches wanted",
    "Size\tBust\tWaist\tHip\n8\t80 cm (31½ in)\t62 cm (24½ in)\t86 cm (34 in)",
    "in",
    inches("8 31.5 24.5 34"),
  ],
  [
    "both units in a cell, inches first, a stroke between",
    "Size\tBust\tWaist\tHip\n8\t31½/80\t24½/62\t34/86",
    "cm",
    sizes("8 80 62 86"),
  ],
  [
    "both units in a cell, spaced",
    "Size 8 10\nBust 80 (31½) 84 (33)\nWaist 62 (24½) 66 (26)\nHip 86 (34) 90 (35½)",
    "cm",
    sizes("8 80 62 86; 10 84 66 90"),
  ],
  [
    "both units in a cell, spaced, marks",
    'Size 8 10\nBust 31 1/2" / 80 cm 33" / 84 cm\nWaist 24 1/2" / 62 cm 26" / 66 cm\nHip 34" / 86 cm 35 1/2" / 90 cm',
    "in",
    inches("8 31.5 24.5 34; 10 33 26 35.5"),
  ],
  [
    "both units in headings and cells",
    "Size\tBust cm (in)\tWaist cm (in)\tHip cm (in)\n8\t80 (31½)\t62 (24½)\t86 (34)",
    "cm",
    sizes("8 80 62 86"),
  ],
  [
    "footnotes on numbers and headings",
    "Size*\tBust¹\tWaist\tHip (2)\n8\t80*\t62†\t86\n10\t84\t66 *\t90¹",
    "cm",
    sizes("8 80 62 86; 10 84 66 90"),
  ],
  [
    "footnotes, spaced",
    "Size 8 10* 12\nBust 80 84* 88\nWaist 62 66 * 70\nHip 86 90† 94\n* Cut from 150 cm cloth",
    "cm",
    THREE,
  ],
  [
    "bust and chest as one",
    "Size\tBust/Chest\tWaist\tHips/Seat\n8\t80\t62\t86\n10\t84\t66\t90\n12\t88\t70\t94",
    "cm",
    THREE,
  ],
  ["bust and chest as one, spaced", "Size 8 10 12\nBust/Chest 80 84 88\nWaist 62 66 70\nHip 86 90 94", "cm", THREE],
  [
    "chest as another measure than bust",
    "Size\tChest\tBust\tWaist\tHip\n8\t76\t80\t62\t86\n10\t80\t84\t66\t90\n12\t84\t88\t70\t94",
    "cm",
    THREE,
  ],
  ["chest alone", "Size\tChest\tWaist\tHip\n8\t80\t62\t86\n10\t84\t66\t90\n12\t88\t70\t94", "cm", THREE],
  ["a bust of one cup", "Size\tBust (B cup)\tWaist\tHip\n8\t80\t62\t86\n10\t84\t66\t90\n12\t88\t70\t94", "cm", THREE],
  [
    "sizes of two countries, down",
    "UK\tEU\tBust\tWaist\tHip\n8\t36\t80\t62\t86\n10\t38\t84\t66\t90\n12\t40\t88\t70\t94",
    "cm",
    THREE,
  ],
  [
    "sizes of two countries, along and spaced",
    "UK 8 10 12\nEU 36 38 40\nBust 80 84 88\nWaist 62 66 70\nHip 86 90 94",
    "cm",
    THREE,
  ],
  [
    "other measures between",
    "Size Height Bust Waist Hip Back length\n8 164 80 62 86 40\n10 164 84 66 90 40.5\n12 164 88 70 94 41",
    "cm",
    THREE,
  ],
  [
    "other measures between, along",
    "Size 8 10 12\nHeight 164 164 164\nBust 80 84 88\nUnder bust 68 72 76\nWaist 62 66 70\nBack waist length 40 40.5 41\nHip 86 90 94",
    "cm",
    THREE,
  ],
  [
    "an under-bust, down and spaced",
    "Size Bust Under bust Waist Hip\n8 80 68 62 86\n10 84 72 66 90\n12 88 76 70 94",
    "cm",
    THREE,
  ],
  [
    "a unit in a cell of its own",
    "Size\t\t8\t10\t12\nBust\tcm\t80\t84\t88\nWaist\tcm\t62\t66\t70\nHip\tcm\t86\t90\t94",
    "in",
    THREE,
  ],
  ["a unit behind the last girth", "Size 8 10 12\nBust 80 84 88 cm\nWaist 62 66 70 cm\nHip 86 90 94 cm", "in", THREE],
  [
    "a unit told under the table",
    "Size\tBust\tWaist\tHip\n8\t80\t62\t86\n10\t84\t66\t90\n12\t88\t70\t94\nAll measures in cm",
    "in",
    THREE,
  ],
  [
    "gaps, some lines with single spaces",
    "Size 8 10 12\nBust   80  84  88\nWaist  62  66  70\nHip    86  90  94",
    "cm",
    THREE,
  ],
  [
    "strokes as of a text table",
    "| Size | Bust | Waist | Hip |\n|---|---|---|---|\n| 8 | 80 | 62 | 86 |\n| 10 | 84 | 66 | 90 |\n| 12 | 88 | 70 | 94 |",
    "cm",
    THREE,
  ],
  [
    "fractions with a space, spaced",
    "Size 8 10\nBust 31 1/2 33\nWaist 24 1/2 26\nHip 34 35 1/2",
    "in",
    inches("8 31.5 24.5 34; 10 33 26 35.5"),
  ],
  [
    "fractions as glyphs after a space",
    "Size Bust Waist Hip\n8 31 ½ 24 ½ 34\n10 33 26 35 ½",
    "in",
    inches("8 31.5 24.5 34; 10 33 26 35.5"),
  ],
  [
    "no-break spaces",
    "Size\u00a08\u00a010\nBust\u00a080\u00a084\nWaist\u00a062\u00a066\nHip\u00a086\u00a090",
    "cm",
    sizes("8 80 62 86; 10 84 66 90"),
  ],
  ["to fit", "To fit size 8 10 12\nTo fit bust 80 84 88\nTo fit waist 62 66 70\nTo fit hip 86 90 94", "cm", THREE],
];

/** Refused whole, or the size left out, and why. */
const REFUSED: readonly (readonly [name: string, text: string, code: string, rows: readonly SizeRow[]])[] = [
  ["a size too many", "Size 8 10 12 14\nBust 80 84 88\nWaist 62 66 70\nHip 86 90 94", "paste/labels-uncertain", []],
  ["a size too few", "Size 8 10\nBust 80 84 88\nWaist 62 66 70\nHip 86 90 94", "paste/labels-uncertain", []],
  [
    "a size too few, tabbed",
    "Size\t8\t10\nBust\t80\t84\t88\nWaist\t62\t66\t70\nHip\t86\t90\t94",
    "paste/labels-uncertain",
    [],
  ],
  [
    "sizes that stand one cell aside",
    "8\t10\t12\nBust\t80\t84\nWaist\t62\t66\nHip\t86\t90",
    "paste/labels-uncertain",
    [],
  ],
  [
    "a girth too few in one line, with gaps",
    "Size  8  10  12\nBust  80  88\nWaist  62  66  70\nHip  86  90  94",
    "paste/labels-uncertain",
    [],
  ],
  [
    "a girth too few in one line",
    "Size 8 10 12\nBust 80 84 88\nWaist 62 70\nHip 86 90 94",
    "paste/labels-uncertain",
    [],
  ],
  [
    "headings without their columns",
    "Size Bust Waist Hip Finished bust\n8 80 62 86\n10 84 66 90",
    "paste/headings-uncertain",
    [],
  ],
  [
    "headings that can be parted in two ways",
    "Size Bust Back Front Waist Hip\n8 80 40 62 86\n10 84 41 66 90",
    "paste/headings-uncertain",
    [],
  ],
  [
    "headings out of step with the tabs",
    "Size Bust Waist Hip\n8\t36\t80\t62\t86\n10\t38\t84\t66\t90",
    "paste/headings-uncertain",
    [],
  ],
  ["busts of several cups", "Size\tBust A\tBust B\tBust C\tWaist\tHip\n8\t78\t80\t83\t62\t86", "paste/bust-by-cup", []],
  [
    "busts of several cups, named otherwise",
    "Size\tA cup bust\tB cup bust\tWaist\tHip\n8\t78\t80\t62\t86",
    "paste/bust-by-cup",
    [],
  ],
  [
    "busts of several cups, spaced",
    "Size 8 10\nBust B cup 80 84\nBust D cup 86 90\nWaist 62 66\nHip 86 90",
    "paste/bust-by-cup",
    [],
  ],
  ["two busts", "Size\tBust\tBust\tWaist\tHip\n8\t78\t80\t62\t86", "paste/column-several", []],
  ["half a bust", "Size\t1/2 bust\tWaist\tHip\n8\t40\t62\t86", "paste/column-missing", []],
  [
    "a finished table alone",
    "Finished garment measurements\nSize\tBust\tWaist\tHip\n8\t90\t68\t96",
    "paste/column-missing",
    [],
  ],
  [
    "two numbers that are no girth in two units",
    "Size\tBust\tWaist\tHip\n8\t80 (36)\t62 (24½)\t86 (34)\n10\t84 (33)\t66 (26)\t90 (35½)",
    "paste/cell-unreadable",
    sizes("10 84 66 90"),
  ],
  [
    "a gap where a cell is empty",
    "Size  Bust  Waist  Hip  Finished bust\n8  80  62  86  90\n10  84  90  94",
    "paste/cells-uncertain",
    sizes("8 80 62 86 90"),
  ],
  [
    "more cells than columns",
    "Size\tBust\tWaist\tHip\n8\t36\t80\t62\t86\n10\t84\t66\t90",
    "paste/cells-uncertain",
    sizes("10 84 66 90"),
  ],
  [
    "finished measures of other sizes",
    "Size\tBust\tWaist\tHip\n8\t80\t62\t86\nFinished\nSize\tBust\tWaist\tHip\n9\t90\t68\t96",
    "paste/labels-uncertain",
    [],
  ],
];

describe("a chart as sheets print it", () => {
  it.each(READ)("is read: %s", (_, text, unit, rows) => {
    const pasted = pasteChart(text, unit);
    expect(pasted.findings.filter(({ severity }) => severity === "blocks")).toEqual([]);
    expect(pasted.rows).toEqual(rows);
    // The unit is the one given, or stated: nothing is assumed of it.
    expect(pasted.findings.map((finding) => finding.code)).not.toContain("paste/unit-assumed");
  });

  it.each(REFUSED)("is refused where it is not certain: %s", (_, text, code, rows) => {
    const pasted = pasteChart(text, "cm");
    expect(pasted.rows).toEqual(rows);
    expect(pasted.findings.filter(({ severity }) => severity === "blocks").map((finding) => finding.code)).toContain(
      code,
    );
  });
});
