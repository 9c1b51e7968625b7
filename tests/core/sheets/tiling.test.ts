import { describe, expect, it } from "vitest";
import { sheetPoint, type SheetPoint } from "../../../src/core/geometry/point";
import { joinsOf, tilesFor } from "../../../src/core/sheets/tiling";

/** Windows of 200 mm that begin every 180 mm: strips of 20 mm, from 180 to 200, from 360 to 380, and so on. */
const grid = { x: { shown: 200, step: 180 }, y: { shown: 200, step: 180 } };

const ring = (...corners: readonly (readonly [number, number])[]): readonly SheetPoint[] =>
  corners.map(([x, y]) => sheetPoint(x, y));
const box = (left: number, top: number, right: number, bottom: number): readonly SheetPoint[] =>
  ring([left, top], [right, top], [right, bottom], [left, bottom]);
const names = (...rings: readonly (readonly SheetPoint[])[]): readonly string[] =>
  tilesFor(rings, grid).tiles.map(({ name }) => name);

describe("tilesFor", () => {
  it("keeps what fits a window on one page, its strip too", () => {
    expect(names(box(0, 0, 200, 200))).toEqual(["A1"]);
    expect(names(box(0, 0, 200.01, 200))).toEqual(["A1", "B1"]);
  });

  it("gives what lies in a strip alone to one of its two pages, the one that is there anyhow", () => {
    expect(names(box(182, 50, 198, 60))).toEqual(["A1"]);
    expect(names(box(182, 50, 198, 60), box(210, 100, 300, 180))).toEqual(["A1"]);
    expect(tilesFor([box(182, 50, 198, 60), box(210, 100, 300, 180)], grid).skipped).toEqual({ columns: 1, rows: 0 });
  });

  it("gives what lies in a corner of four pages to one of them", () => {
    expect(names(box(182, 182, 198, 198))).toEqual(["A1"]);
  });

  it("counts the inside too: the middle of a large piece that no line crosses", () => {
    expect(names(box(0, 0, 560, 560))).toEqual(["A1", "B1", "C1", "A2", "B2", "C2", "A3", "B3", "C3"]);
  });

  it("leaves out pages that a piece goes round", () => {
    const angle = ring([0, 0], [150, 0], [150, 380], [560, 380], [560, 560], [0, 560]);
    expect(names(angle)).toEqual(["A1", "A2", "A3", "B3", "C3"]);
  });

  it("joins two pages that a piece goes between by their corner alone", () => {
    const slanting = ring([100, 90], [110, 100], [290, 280], [280, 290], [100, 110]);
    const pages = names(slanting);
    expect(pages).toHaveLength(3);
    expect(pages).toContain("A1");
    expect(pages).toContain("B2");
  });

  it("joins no pages by a corner for two pieces that only come near each other there", () => {
    expect(names(box(20, 20, 300, 170), box(365, 190, 500, 300))).toEqual(["A1", "B1", "C2"]);
  });

  it("counts its pages from the first used column and row", () => {
    const { tiles, columns, rows, skipped } = tilesFor([box(400, 210, 500, 300)], grid);
    expect(tiles).toEqual([{ column: 0, row: 0, name: "A1", x: 0, y: 0, width: 200, height: 200 }]);
    expect({ columns, rows, skipped }).toEqual({ columns: 1, rows: 1, skipped: { columns: 2, rows: 1 } });
  });

  it("counts what a ring goes round twice as inside", () => {
    const twice = [...box(0, 0, 560, 150), ...box(0, 0, 560, 150)];
    expect(names(twice)).toEqual(["A1", "B1", "C1"]);
  });
});

describe("joinsOf", () => {
  it("puts one mark on a side of 200 mm, in the middle of the strip", () => {
    expect(joinsOf(tilesFor([box(0, 0, 300, 300)], grid).tiles)).toEqual([
      { at: { x: 190, y: 100 }, pages: ["A1", "B1"] },
      { at: { x: 100, y: 190 }, pages: ["A1", "A2"] },
      { at: { x: 280, y: 190 }, pages: ["B1", "B2"] },
      { at: { x: 190, y: 280 }, pages: ["A2", "B2"] },
    ]);
  });

  it("puts two on a longer side, at a quarter and three quarters", () => {
    const tall = { x: grid.x, y: { shown: 280, step: 260 } };
    expect(joinsOf(tilesFor([box(0, 0, 300, 250)], tall).tiles)).toEqual([
      { at: { x: 190, y: 70 }, pages: ["A1", "B1"] },
      { at: { x: 190, y: 210 }, pages: ["A1", "B1"] },
    ]);
  });

  it("joins nothing to a page that is not there", () => {
    const angle = ring([0, 0], [150, 0], [150, 380], [560, 380], [560, 560], [0, 560]);
    expect(joinsOf(tilesFor([angle], grid).tiles).map(({ pages }) => pages.join(" "))).toEqual([
      "A1 A2",
      "A2 A3",
      "A3 B3",
      "B3 C3",
    ]);
  });
});
