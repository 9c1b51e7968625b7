/** Sizes between those that are there, and past them: widths of straight pieces by the rule of three. */
import { describe, expect, it } from "vitest";
import type { SizeChart } from "../../../src/core/chart/sizeChart";
import { inAllSizes } from "../../../src/core/nest/allSizes";
import { pointOf, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { straightNest } from "../../support/straightNest";

const chartOf = (...rows: readonly (readonly [bust: number, waist: number])[]): SizeChart => ({
  sizes: rows.map(([bust, waist], index) => ({ label: String(index), bust, waist, hip: bust + 60 })),
  draftedDifference: 50,
  cups: [],
});
const piecesOf = (bust: number, waist: number): readonly Piece[] =>
  invariant(
    straightNest([{ label: "", front: { bust, waist, dart: 20 }, back: { bust, waist, dart: 20 } }]).sizes[0],
    "size",
  ).pieces;
const widths = (sizes: readonly (readonly Piece[])[], name: PointName): readonly number[] =>
  sizes.map((pieces) => Math.round(pointOf(invariant(pieces[0], "front"), name).x * 1e6) / 1e6);

describe("sizes from those that there are", () => {
  const [small, large] = [piecesOf(200, 160), piecesOf(240, 190)];

  it("are the very pieces where they are there, and lie between by bust and waist, each by its girths", () => {
    // Bust 800 to 900: 820 is a fifth, 880 four. Waist 600 to 660: 630 a half, 640 two thirds.
    const made = inAllSizes(chartOf([800, 600], [820, 630], [880, 640], [900, 660]), [
      { index: 0, pieces: small },
      { index: 3, pieces: large },
    ]);
    expect(widths(made, "sideBust")).toEqual([200, 208, 232, 240]);
    expect(widths(made, "sideWaist")).toEqual([160, 175, 180, 190]);
    expect(made.map((pieces) => pieces.map(({ name }) => name))).toEqual(
      Array.from({ length: 4 }, () => ["front", "back"]),
    );
    expect(made[0]?.[0]).toBe(small[0]);
    expect(made[3]?.[1]).toBe(large[1]);
  });

  it("go on beyond both ends by the nearest step", () => {
    // Steps of two: from index 1 to 2 the bust 40 and 20 mm a half piece, from 2 to 4 80 and 60.
    const middle = piecesOf(220, 170);
    const far = piecesOf(280, 230);
    const made = inAllSizes(chartOf([780, 590], [800, 600], [840, 620], [880, 650], [920, 680], [960, 700]), [
      { index: 1, pieces: small },
      { index: 2, pieces: middle },
      { index: 4, pieces: far },
    ]);
    // Below: half a step of 20; between: half of 60; above: 40 of 80, so half of 60.
    expect(widths(made, "sideBust")).toEqual([190, 200, 220, 250, 280, 310]);
    // Below: half of 10; between: half of 60; above: a third of 60.
    expect(widths(made, "sideWaist")).toEqual([155, 160, 170, 200, 230, 250]);
  });

  it("go by their number where the chart does not grow, a hundredth of a millimetre counting as nothing", () => {
    const there = [
      { index: 0, pieces: small },
      { index: 4, pieces: large },
    ];
    const flat = inAllSizes(chartOf([800, 600], [850, 600], [850, 600], [850, 600.005], [850, 600.01]), there);
    expect(widths(flat, "sideWaist")).toEqual([160, 167.5, 175, 182.5, 190]);
    expect(widths(flat, "sideBust")).toEqual([200, 240, 240, 240, 240]);
    const hardly = inAllSizes(chartOf([800, 600], [850, 600.03], [850, 600.03], [850, 600.03], [850, 600.04]), there);
    expect(widths(hardly, "sideWaist")).toEqual([160, 182.5, 182.5, 182.5, 190]);
    // A third of the way from the second to the fifth.
    const later = inAllSizes(chartOf([800, 600], [850, 600], [860, 600], [870, 600], [880, 600]), [
      { index: 1, pieces: small },
      { index: 4, pieces: large },
    ]);
    expect(widths(later, "sideWaist")).toEqual([150, 160, 170, 180, 190]);
  });

  it("reckon with sizes below and above the chart, whose girths carry its nearest steps on", () => {
    const below = inAllSizes(chartOf([800, 600], [840, 630], [900, 660]), [
      { index: -1, pieces: small },
      { index: 0, pieces: large },
    ]);
    // The size below has 760 and 570. 840 lies two steps of 40 up, 900 three and a half; the waist two and three of 30.
    expect(widths(below, "sideBust")).toEqual([240, 280, 340]);
    expect(widths(below, "sideWaist")).toEqual([190, 220, 250]);
    const above = inAllSizes(chartOf([800, 600], [840, 630], [900, 660]), [
      { index: 2, pieces: small },
      { index: 3, pieces: large },
    ]);
    // The size above has 960 and 690: 840 a whole step of 60 down, 800 one and two thirds.
    expect(widths(above, "sideBust")).toEqual([133.333333, 160, 200]);
    expect(widths(above, "sideWaist")).toEqual([100, 130, 160]);
  });

  it("are all alike from one, and from a chart of one row", () => {
    const made = inAllSizes(chartOf([800, 600], [840, 630], [900, 660]), [{ index: 1, pieces: small }]);
    expect(made[0]).toEqual(small);
    expect(made[2]).toEqual(small);
    const single = inAllSizes(chartOf([800, 600]), [
      { index: 0, pieces: small },
      { index: 1, pieces: large },
    ]);
    expect(single).toEqual([small]);
  });

  it("take a piece that some sizes lack from those that have it", () => {
    const made = inAllSizes(chartOf([800, 600], [840, 630], [880, 660]), [
      { index: 0, pieces: small },
      { index: 1, pieces: large.slice(1) },
      { index: 2, pieces: large },
    ]);
    expect(
      widths(
        made.map((pieces) => pieces.filter(({ name }) => name === "front")),
        "sideBust",
      ),
    ).toEqual([200, 220, 240]);
    expect(made[1]?.find(({ name }) => name === "back")).toBe(large[1]);
  });
});
