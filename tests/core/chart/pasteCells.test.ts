/** Where a text is cut into cells, and the place that each of them is told to have in it. */
import { describe, expect, it } from "vitest";
import { cutCells, losesEmptyCells, plainLines, type PastedGrid } from "../../../src/core/chart/pasteCells";

/** "line.cell text" of every cell, a list for each line. */
const places = ({ lines }: PastedGrid): readonly (readonly string[])[] =>
  lines.map((line) => line.map(({ text, line: at, cell }) => `${at}.${cell} ${text}`));

const cut = (text: string) => {
  const grid = cutCells(text);
  return [grid.separator, ...places(grid)];
};

describe("cutCells", () => {
  it("goes by tabs before all else, and counts empty lines and cells", () => {
    expect(cut("Size\tBust; full\t Waist,  all \n\n\t\t\n8\t\t62")).toEqual([
      "tab",
      ["1.1 Size", "1.2 Bust; full", "1.3 Waist, all"],
      ["4.1 8", "4.2 ", "4.3 62"],
    ]);
  });

  it("goes by semicolons before commas", () =>
    expect(cut("Size;Bust\n8;80,5")).toEqual(["semicolon", ["1.1 Size", "1.2 Bust"], ["2.1 8", "2.2 80,5"]]));

  it("goes by commas before gaps", () =>
    expect(cut("Size,Bust  girth,Hip\n8,80,86,")).toEqual([
      "comma",
      ["1.1 Size", "1.2 Bust girth", "1.3 Hip"],
      ["2.1 8", "2.2 80", "2.3 86", "2.4 "],
    ]));

  it("takes commas for decimal ones where spaces keep three cells and more apart", () => {
    expect(cut("8 88,5 70,2 94")[0]).toBe("space");
    expect(cut("8  88,5  70,2\n10  90,5  72,2")[0]).toBe("gap");
    expect(cut("88,5 70,2")[0]).toBe("comma");
    expect(cut("8 88,5,3 70 94")[0]).toBe("comma");
    expect(cut("8, 88 70 94")[0]).toBe("comma");
    expect(cut(" 8\u00a088,5 70,2 94 ")[0]).toBe("space");
    expect(cut("8 88,5 70,2 94\nSize,Bust")[0]).toBe("comma");
  });

  it("cuts at gaps of two spaces and more, so that a fraction stays whole", () =>
    expect(cut("  Size   Bust girth\u00a0\u00a0Hip\n\n8  34 1/2    36")).toEqual([
      "gap",
      ["1.1 Size", "1.2 Bust girth", "1.3 Hip"],
      ["3.1 8", "3.2 34 1/2", "3.3 36"],
    ]));

  it("leaves single spaces to be cut elsewhere; what stands before and behind a line is no gap", () => {
    expect(cutCells("  Size Bust  \n8 80")).toEqual({ separator: "space", lines: [] });
    expect(cutCells("")).toEqual({ separator: "space", lines: [] });
  });

  it("takes what is quoted whole: marks, line ends and quotes in it", () =>
    expect(cut('Size,"Bust, full\ngirth","the ""real"" hip"\n8,80,"86"')).toEqual([
      "comma",
      ["1.1 Size", "1.2 Bust, full girth", '2.3 the "real" hip'],
      ["3.1 8", "3.2 80", "3.3 86"],
    ]));

  it("takes a quoted table for one with commas, though no comma stands outside of the quotes", () =>
    expect(cut('"Size, all"')).toEqual(["comma", ["1.1 Size, all"]]));

  it("takes a mark for inches for no quote, and a quote that never closes for itself", () => {
    expect(cut('8\t31"\t24"')).toEqual(["tab", ["1.1 8", '1.2 31"', '1.3 24"']]);
    expect(cut('8\t"31\t24')).toEqual(["tab", ["1.1 8", '1.2 "31', "1.3 24"]]);
    expect(cut('8\t"31"x\t24')).toEqual(["tab", ["1.1 8", '1.2 "31"x', "1.3 24"]]);
    expect(cut('8\t"31""\t24')).toEqual(["tab", ["1.1 8", '1.2 "31""', "1.3 24"]]);
    expect(cut('8\t""\t24')).toEqual(["tab", ["1.1 8", "1.2 ", "1.3 24"]]);
    expect(cut('8;"31;5";24')).toEqual(["semicolon", ["1.1 8", "1.2 31;5", "1.3 24"]]);
  });
});

describe("plainLines", () => {
  it("has line ends of one kind, and no mark before the text", () => {
    expect(plainLines("a\ufeffb")).toBe("a\ufeffb");
    expect(plainLines("\ufeffa\r\nb\rc\u2028d\u2029e\n\ufefff")).toBe("a\nb\nc\nd\ne\n\ufefff");
  });

  it("has tabs for the upright strokes of a drawn table, and no ruled lines", () => {
    expect(plainLines("Chart\n\n| Size | Bust |\n|:---|---:|\n| 8 | 80 |\n  |10|84|  ")).toBe(
      "Chart\n\n Size \t Bust \n 8 \t 80 \n10\t84",
    );
    expect(plainLines("+----+----+\n| 8 | 80 |\n+----+\n| 9 | 81 |\n| 10 | 82 |\n+----+")).toBe(
      " 8 \t 80 \n 9 \t 81 \n 10 \t 82 ",
    );
  });

  it("takes three lines with two strokes for a drawing, and fewer for none", () => {
    expect(plainLines("|a|b|\n|c|d|\n|e|f|")).toBe("a\tb\nc\td\ne\tf");
    expect(plainLines("|a|b|\n|c|d|\ne|f")).toBe("|a|b|\n|c|d|\ne|f");
  });
});

it("says of gaps and spaces alone that an empty cell leaves no trace", () => {
  expect((["tab", "semicolon", "comma", "gap", "space"] as const).filter(losesEmptyCells)).toEqual(["gap", "space"]);
});
