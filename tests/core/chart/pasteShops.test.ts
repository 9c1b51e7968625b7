/**
 * Charts as shops and sheets print them, in every way of ranges, units, notes and marks. All numbers are invented; what each
 * says stands beside it in mm, written down by hand (an inch is 25.4 mm), or the cell for which it is refused.
 */
import { describe, expect, it } from "vitest";
import { pasteChart } from "../../../src/core/chart/pasteChart";
import type { TypedUnit } from "../../../src/core/measures/length";

const HEAD = "Size\tBust\tWaist\tHip";

type Read = readonly [name: string, text: string, unit: TypedUnit, rows: string];

/** "S 880 700 940": a size with its bust, waist and hip in mm, then its finished bust where that is printed. */
const READ: readonly Read[] = [
  [
    "ranges with en dashes",
    `${HEAD}\nS\t86–90\t68–72\t92–96\nM\t91–95\t73–77\t97–101`,
    "cm",
    "S 880 700 940; M 930 750 990",
  ],
  ["ranges with spaces about the dash", "Size Bust Waist Hip\nS 86 – 90 68 – 72 92 – 96", "cm", "S 880 700 940"],
  ["ranges with a stroke", `${HEAD}\nS\t86/90\t68/72\t92/96`, "cm", "S 880 700 940"],
  [
    "ranges under headings of what they are to fit",
    "To fit bust (cm)\t80-84\t85-89\nTo fit waist (cm)\t62-66\t67-71\nTo fit hip (cm)\t86-90\t91-95\nSize\tS\tM",
    "in",
    "S 820 640 880; M 870 690 930",
  ],
  [
    "ranges in both units, inches first",
    `${HEAD}\nS\t34-36" (86-91 cm)\t26-28" (66-71 cm)\t36-38" (91-97 cm)`,
    "cm",
    "S 885 685 940",
  ],
  [
    "ranges in both units, inches wanted",
    `${HEAD}\nS\t34-36" (86-91 cm)\t26-28" (66-71 cm)\t36-38" (91-97 cm)`,
    "in",
    "S 889 685.8 939.8",
  ],
  ["ranges in both units without a mark", `${HEAD}\nS\t86-91/34-36\t66-71/26-28\t91-97/36-38`, "cm", "S 885 685 940"],
  [
    "ranges in both units with fractions",
    `${HEAD}\nS\t34 1/2–36 1/2 [87.5–92.5]\t26–28 [66–71]\t36–38 [91–97]`,
    "cm",
    "S 900 685 940",
  ],
  ["both units with a stroke", `${HEAD}\n10\t34/86\t26/66\t36/91`, "cm", "10 860 660 910"],
  ["both units with a stroke, inches wanted", `${HEAD}\n10\t34/86\t26/66\t36/91`, "in", "10 863.6 660.4 914.4"],
  ["both units, the second in brackets", `${HEAD}\n10\t34" (86 cm)\t26" (66 cm)\t36" (91 cm)`, "cm", "10 860 660 910"],
  [
    "both units with their names",
    "Size Bust Waist Hip\n10 86cm/34in 66cm/26in 91cm/36in\n12 91cm/36in 71cm/28in 97cm/38in",
    "cm",
    "10 860 660 910; 12 910 710 970",
  ],
  [
    "both units, told in the first column",
    "Size\tXS\tS\nBust (in/cm)\t31.5/80\t33/84\nWaist (in/cm)\t24.5/62\t26/66\nHip (in/cm)\t34/86\t35.5/90",
    "cm",
    "XS 800 620 860; S 840 660 900",
  ],
  [
    "a column for each unit",
    "Size\tBust\t\tWaist\t\tHip\t\n\tin\tcm\tin\tcm\tin\tcm\n10\t34½\t88\t27½\t70\t37\t94",
    "cm",
    "10 876.3 698.5 939.8",
  ],
  [
    "a line for each unit",
    "Size\tXS\tS\nBust in\t31½\t33\nBust cm\t80\t84\nWaist in\t24½\t26\nWaist cm\t62\t66\nHip in\t34\t35½\nHip cm\t86\t90",
    "cm",
    "XS 800 620 860; S 840 660 900",
  ],
  [
    "a star behind a number",
    `Size\tBust*\tWaist\tHip\n10\t88*\t70\t94\n12\t92\t74\t98`,
    "cm",
    "10 880 700 940; 12 920 740 980",
  ],
  ["raised numbers", `${HEAD}\n10\t88¹\t70²\t94³`, "cm", "10 880 700 940"],
  ["notes in brackets", `${HEAD}\n10\t88 [1]\t70 (2)\t94`, "cm", "10 880 700 940"],
  [
    "two names of one girth",
    '"Size","Bust/Chest (cm)*","Natural waist (cm)","Hip/Seat (cm)"\n"10","88","70","94"',
    "in",
    "10 880 700 940",
  ],
  [
    "sizes along the top under another word",
    "Measurements\t10\t12\nBust/Chest\t88\t92\nWaist\t70\t74\nHips (fullest part)\t94\t98",
    "cm",
    "10 880 700 940; 12 920 740 980",
  ],
  [
    "letters up to 3XL",
    "Size XS S M L XL 2XL 3XL\nBust 80 84 88 94 100 106 112\nWaist 62 66 70 76 82 88 94\nHip 86 90 94 100 106 112 118",
    "cm",
    "XS 800 620 860; S 840 660 900; M 880 700 940; L 940 760 1000; XL 1000 820 1060; 2XL 1060 880 1120; 3XL 1120 940 1180",
  ],
  [
    "two letters for one size",
    `${HEAD}\nXS/S\t80-88\t62-70\t86-94\nM/L\t92-100\t74-82\t98-106`,
    "cm",
    "XS/S 840 660 900; M/L 960 780 1020",
  ],
  [
    "two countries in one column",
    "EU/UK size\tBust\tWaist\tHip\n36/8\t80\t62\t86\n38/10\t84\t66\t90",
    "cm",
    "36/8 800 620 860; 38/10 840 660 900",
  ],
  [
    "three countries, each its column",
    "US\tUK\tEU\tBust\tWaist\tHip\n4\t8\t36\t80\t62\t86\n6\t10\t38\t84\t66\t90",
    "cm",
    "4 800 620 860; 6 840 660 900",
  ],
  [
    "three countries along the top",
    "EU\t36\t38\nUK\t8\t10\nUS\t4\t6\nBust\t80\t84\nWaist\t62\t66\nHip\t86\t90",
    "cm",
    "36 800 620 860; 38 840 660 900",
  ],
  [
    "a line of units",
    "Size\tBust\tWaist\tHip\n\t(inches)\t(inches)\t(inches)\n10\t34½\t27½\t37",
    "cm",
    "10 876.3 698.5 939.8",
  ],
  [
    "decimal commas between spaces",
    "Size Bust Waist Hip\n36 84,5 66,5 92\n38 88,5 70,5 96,5",
    "cm",
    "36 845 665 920; 38 885 705 965",
  ],
  ["decimal commas in quotes", '"Size","Bust","Waist","Hips"\n"10","88,5","70,5","94,5"', "cm", "10 885 705 945"],
  [
    "decimal commas between semicolons",
    "Size;Bust;Waist;Hip\n36;84,5;66,5;92\n38;88,5;70,5;96",
    "cm",
    "36 845 665 920; 38 885 705 960",
  ],
  [
    "thousands with a space",
    "Size\tBust mm\tWaist mm\tHip mm\n10\t880\t700\t940\n20\t1 080\t900\t1 140",
    "cm",
    "10 880 700 940; 20 1080 900 1140",
  ],
  [
    "thousands with a narrow space",
    "Size\tBust mm\tWaist mm\tHip mm\n20\t1\u202f080\t900\t1\u202f140",
    "cm",
    "20 1080 900 1140",
  ],
  [
    "thousands with a comma, in quotes",
    'Size,Bust mm,Waist mm,Hip mm\n10,880,700,940\n20,"1,080",900,"1,140"',
    "cm",
    "10 880 700 940; 20 1080 900 1140",
  ],
  ["thousands with a point", "Size\tBust (mm)\tWaist (mm)\tHip (mm)\n20\t1.080\t900\t1.140", "cm", "20 1080 900 1140"],
  [
    "marks for inches, doubled in quotes",
    'Size,Bust,Waist,Hip\n10,"34 1/2""","26 1/2""","36 1/2"""',
    "cm",
    "10 876.3 673.1 927.1",
  ],
  ["fractions with a hyphen", `${HEAD}\n10\t34-1/2\t26-1/4\t36-3/4`, "in", "10 876.3 666.8 933.5"],
  ["fractions as glyphs behind a space", `${HEAD}\n10\t34 ½"\t26 ¼"\t36 ¾"`, "cm", "10 876.3 666.8 933.5"],
  [
    "strokes with no-break spaces",
    "|\u00a0Size\u00a0|\u00a0Bust\u00a0|\u00a0Waist\u00a0|\u00a0Hip\u00a0|\n|:--|--:|--:|--:|\n|\u00a010\u00a0|\u00a088\u00a0|\u00a070\u00a0|\u00a094\u00a0|",
    "cm",
    "10 880 700 940",
  ],
  [
    "strokes between cells alone",
    "Size | Bust | Waist | Hip\n10 | 88 | 70 | 94\n12 | 92 | 74 | 98",
    "cm",
    "10 880 700 940; 12 920 740 980",
  ],
  [
    "high bust, bust and finished bust",
    "Size\tHigh bust\tBust\tWaist\tHip\tFinished bust (approx.)\n10\t83\t88\t70\t94\t98",
    "cm",
    "10 880 700 940 980",
  ],
  [
    "the upper bust called chest",
    "Size\tChest (high bust)\tBust (full bust)\tWaist\tHip\n10\t83\t88\t70\t94",
    "cm",
    "10 880 700 940",
  ],
  [
    "body and garment told in brackets",
    "Size\tBust (garment)\tBust (body)\tWaist (body)\tHip (body)\n10\t98\t88\t70\t94",
    "cm",
    "10 880 700 940 980",
  ],
];

const said = (text: string, unit: TypedUnit): string =>
  pasteChart(text, unit)
    .rows.map(({ label, bust, waist, hip, finishedBust }) =>
      [label, bust, waist, hip, ...(finishedBust === undefined ? [] : [finishedBust])].join(" "),
    )
    .join("; ");

/** The finding that blocks, its line and its cell; nothing is taken of that size. */
const REFUSED: readonly (readonly [name: string, text: string, why: string, place: readonly (number | null)[]])[] = [
  ["about so much", `${HEAD}\n10\t~88\t70\t94`, "paste/cell-unreadable", [2, 2]],
  ["up to so much", `${HEAD}\nS\t88\tup to 70\t94`, "paste/cell-unreadable", [2, 3]],
  ["less than so much", `${HEAD}\nS\t88\t70\t<94`, "paste/cell-unreadable", [2, 4]],
  ["and more", `${HEAD}\n10\t88+\t70\t94`, "paste/cell-unreadable", [2, 2]],
  ["half a girth, laid flat", `${HEAD}\n10\t44 (flat)\t70\t94`, "paste/cell-unreadable", [2, 2]],
  ["feet and inches", `${HEAD}\n10\t2' 10"\t26"\t36"`, "paste/cell-unreadable", [2, 2]],
  ["a letter in a number", `${HEAD}\n10\t88\t7O\t94`, "paste/cell-unreadable", [2, 3]],
  ["a note that could be of the number", `${HEAD}\n10\t88\t70(2)\t94`, "paste/cell-unreadable", [2, 3]],
  ["two points", `${HEAD}\n10\t88.0.0\t70\t94`, "paste/cell-unreadable", [2, 2]],
  ["a dash for nothing", `${HEAD}\n10\t88\t–\t94`, "paste/cell-missing", [2, 3]],
  ["an empty cell", `${HEAD}\n10\t88\t70\t`, "paste/cell-missing", [2, 4]],
  [
    "two ranges that are not one",
    `${HEAD}\nS\t34-36" (96-101 cm)\t26-28" (66-71 cm)\t36-38" (91-97 cm)`,
    "paste/cell-unreadable",
    [2, 2],
  ],
  [
    "two numbers that are not one girth",
    `${HEAD}\n10\t34" (96 cm)\t26" (66 cm)\t36" (91 cm)`,
    "paste/cell-unreadable",
    [2, 2],
  ],
  ["a range downwards", `${HEAD}\nS\t90-86\t68-72\t92-96`, "paste/cell-unreadable", [2, 2]],
  [
    "busts for groups of cups",
    "Size\tBust A–C\tBust D–F\tWaist\tHip\n10\t88\t94\t70\t94",
    "paste/bust-by-cup",
    [null, null],
  ],
  [
    "a bust twice without units",
    "Size\tBust\tBust\tWaist\tHip\n10\t34½\t88\t70\t94",
    "paste/column-several",
    [null, null],
  ],
  ["no bust but laid flat", "Size\tPit to pit\tWaist\tHip\n10\t49\t70\t94", "paste/column-missing", [null, null]],
];

describe("charts as shops and sheets print them", () => {
  it.each(READ)("%s", (_, text, unit, rows) => {
    expect(said(text, unit)).toBe(rows);
  });

  it.each(REFUSED)("not %s", (_, text, why, place) => {
    const { rows, findings } = pasteChart(text, "cm");
    expect(rows).toEqual([]);
    expect(
      findings.filter(({ severity }) => severity === "blocks").map(({ code, line, cell }) => [code, line, cell]),
    ).toContainEqual([why, ...place]);
  });
});
