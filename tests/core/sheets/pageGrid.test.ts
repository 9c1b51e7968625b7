/** The grid of pages by hand: windows, steps, zones, how many reach over a length, and where they are too small. */
import { describe, expect, it } from "vitest";
import { FORMATS } from "../../../src/core/sheets/formats";
import { neededPages } from "../../../src/core/sheets/neededPages";
import { pageGridOf, pagesOver, zoneLines } from "../../../src/core/sheets/pageGrid";
import { TEST_CM, TEST_INCH } from "../../../src/core/sheets/testSquares";
import { SAME_POINT } from "../../../src/core/tolerance";
import { picture } from "./pictures";

describe("the grid of pages", () => {
  it("steps by the window less the overlap: A4 with margins of 10 and an overlap of 15", () => {
    expect(pageGridOf(FORMATS.A4, 10, 15)).toEqual({
      ok: true,
      value: { x: { shown: 190, step: 175 }, y: { shown: 277, step: 262 } },
    });
  });

  it("has no steps down a roll", () => {
    expect(pageGridOf(FORMATS["A0 roll"], 20, 15)).toEqual({
      ok: true,
      value: { x: { shown: 801, step: 786 }, y: null },
    });
  });

  it.each([
    ["across", { width: 149, height: 297 }, 129, 277],
    ["down", { width: 210, height: 149 }, 190, 129],
    ["a roll", { width: 149, height: null }, 129, 129],
  ] as const)("is refused where less than 130 mm show %s", (_way, format, width, height) => {
    const failure = { code: "sheet/page-too-small", width, height, least: 130 };
    expect(pageGridOf(format, 10, 15)).toEqual({ ok: false, failure });
    const grown = { width: format.width + 1, height: format.height === null ? null : format.height + 1 };
    expect(pageGridOf(grown, 10, 15).ok).toBe(true);
  });

  it("is refused where the overlap takes more than half of the window", () => {
    // 190 mm show: half of it is 95.
    expect(pageGridOf(FORMATS.A4, 10, 95).ok).toBe(true);
    expect(pageGridOf(FORMATS.A4, 10, 95.5)).toEqual({
      ok: false,
      failure: { code: "sheet/page-too-small", width: 190, height: 277, least: 191 },
    });
  });

  it("is parted where one page's window ends and the next begins", () => {
    expect(zoneLines({ shown: 200, step: 180 }, 1)).toEqual([0, 200]);
    expect(zoneLines({ shown: 200, step: 180 }, 3)).toEqual([0, 180, 200, 360, 380, 560]);
  });

  it.each([
    [0, 1],
    [200, 1],
    [200 + SAME_POINT / 2, 1],
    [200 + 2 * SAME_POINT, 2],
    [380, 2],
    [380.1, 3],
    [1000, 6],
  ])("reaches over %d mm with %d pages", (length, pages) => {
    expect(pagesOver({ shown: 200, step: 180 }, length)).toBe(pages);
  });

  it("has test squares of 10 cm and of 4 in, and papers of the sizes that their standards give", () => {
    expect([TEST_CM, TEST_INCH]).toEqual([100, 101.6]);
    // ISO 216: A0 is 841 mm wide, each next size half of the last, rounded down. Inches: 8½ by 11, 11 by 17, 36.
    expect(FORMATS).toEqual({
      A4: { width: 210, height: 297 },
      A3: { width: 297, height: 420 },
      Letter: { width: 215.9, height: 279.4 },
      Tabloid: { width: 279.4, height: 431.8 },
      "A0 roll": { width: 841, height: null },
      "36 in roll": { width: 914.4, height: null },
    });
  });
});

/** Zones as pictures, a piece each: of two by two pages three by three zones, strips and the corner between. */
const needed = (columns: number, rows: number, ...pieces: readonly (readonly string[])[]): readonly string[] =>
  picture(
    neededPages({
      touchedBy: pieces.map((lines) => Uint8Array.from(lines.join(""), (mark) => (mark === "#" ? 1 : 0))),
      columns,
      rows,
    }),
    columns,
  );

describe("needed pages", () => {
  it("are those that show something no other does", () => {
    expect(needed(2, 2, ["..#", "...", "#.."])).toEqual([".#", "#."]);
    expect(needed(3, 1, ["#...#"])).toEqual(["#.#"]);
  });

  it("are one of two for a strip between them: one there anyhow, else the first", () => {
    expect(needed(2, 1, [".#."])).toEqual(["#."]);
    expect(needed(2, 1, [".##"])).toEqual([".#"]);
    expect(needed(1, 2, [".", "#", "."])).toEqual(["#", "."]);
    expect(needed(1, 2, [".", "#", "#"])).toEqual([".", "#"]);
    expect(needed(2, 2, ["...", "..#", "..."])).toEqual([".#", ".."]);
    expect(needed(2, 2, ["...", "...", ".#."])).toEqual(["..", "#."]);
    // One that is there, but not beside it.
    expect(needed(2, 2, ["..#", "#..", "..."])).toEqual(["##", ".."]);
    expect(needed(2, 2, [".#.", "...", "#.."])).toEqual(["#.", "#."]);
    expect(needed(2, 2, ["#..", "..#", "..."])).toEqual(["##", ".."]);
    expect(needed(2, 2, ["#..", "...", ".#."])).toEqual(["#.", "#."]);
  });

  it("are one of four for the corner between them: one there anyhow, one of a strip, else the first", () => {
    expect(needed(2, 2, ["...", ".#.", "..."])).toEqual(["#.", ".."]);
    expect(needed(2, 2, ["...", ".#.", "..#"])).toEqual(["..", ".#"]);
    expect(needed(2, 2, ["...", ".#.", ".#."])).toEqual(["..", "#."]);
    expect(needed(3, 2, [".....", "...#.", "....."])).toEqual([".#.", "..."]);
    expect(needed(3, 2, [".....", "...#.", "...#."])).toEqual(["...", ".#."]);
  });

  it("are the same for a piece however much more of them it touches", () => {
    expect(needed(2, 2, ["###", "###", "###"])).toEqual(["##", "##"]);
    expect(needed(2, 2, ["##.", "##.", "..."])).toEqual(["#.", ".."]);
  });

  it("are counted over all pieces", () => {
    expect(needed(2, 2, ["#..", "...", "..."], ["...", "...", ".##"])).toEqual(["#.", ".#"]);
  });
});

describe("two pages that meet at their corner alone", () => {
  const bothPages = (a: string, b: string): readonly string[] => [a, "...", b];
  /** The middle of the zones is the corner; a piece is there, and at a place on either page's side of it. */
  const across = (...places: readonly number[]): readonly string[] => {
    const zones = Array.from({ length: 9 }, (_, at) => (at === 4 || places.includes(at) ? "#" : "."));
    return [0, 3, 6].map((row) => zones.slice(row, row + 3).join(""));
  };

  // Zones in order: 0 1 2 the first page, its strip, the second; 3 5 the strips beside the corner; 6 7 8 below.
  it.each([0, 1, 3].flatMap((from) => [8, 7, 5].map((to) => [from, to] as const)))(
    "are joined by the one beside for a piece that goes from zone %d to %d",
    (from, to) => {
      expect(needed(2, 2, bothPages("#..", "..#"), across(from, to))).toEqual(["##", ".#"]);
    },
  );

  it.each([2, 1, 5].flatMap((from) => [6, 7, 3].map((to) => [from, to] as const)))(
    "and the other way from zone %d to %d",
    (from, to) => {
      expect(needed(2, 2, bothPages("..#", "#.."), across(from, to))).toEqual(["##", "#."]);
    },
  );

  it.each([
    ["at the corner alone", across()],
    ["on the first page", across(0)],
    ["on its strips", across(1, 3)],
    ["on the last page", across(8)],
    ["on its strips", across(7, 5)],
  ] as const)("are not joined for a piece that is %s", (_where, piece) => {
    expect(needed(2, 2, bothPages("#..", "..#"), piece)).toEqual(["#.", ".#"]);
  });

  it.each([
    ["at the corner alone", across()],
    ["on the second page", across(2)],
    ["on its strips", across(1, 5)],
    ["on the third page", across(6)],
    ["on its strips", across(7, 3)],
  ] as const)("nor the other way for one that is %s", (_where, piece) => {
    expect(needed(2, 2, bothPages("..#", "#.."), piece)).toEqual([".#", "#."]);
  });

  it("are not joined for one that goes round the corner without lying on it", () => {
    expect(needed(2, 2, bothPages("#..", "..#"), ["##.", "#..", "..."], ["...", "..#", ".##"])).toEqual(["#.", ".#"]);
  });

  it("are joined on a larger sheet at their own corner", () => {
    const zones = [".....", ".....", "..#..", "...#.", "....#"];
    expect(needed(3, 3, zones)).toEqual(["...", ".##", "..#"]);
  });
});
