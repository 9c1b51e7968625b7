/** Pieces that were misread are not used: what is sewn together is about as long, and what goes round the body fits round. */
import { describe, expect, it } from "vitest";
import type { SizeChart } from "../../../src/core/chart/sizeChart";
import type { OwnPieceSaid } from "../../../src/core/decisions/ownPattern";
import type { Pattern } from "../../../src/core/decisions/pattern";
import { readOwn } from "../../../src/core/ownPieces/readOwn";
import type { Piece } from "../../../src/core/pattern/piece";
import { chartOf } from "../../support/foreign/asTraced";
import { drawingOf } from "../../support/foreign/drawingOf";
import { foreignNest } from "../../support/foreign/foreignNest";
import type { ForeignOptions } from "../../support/foreign/foreignTypes";
import { sampleWork } from "../../support/sampleWork";

function drawn(options: ForeignOptions) {
  const nest = foreignNest(options);
  const { drawing, truth } = drawingOf(nest, { seed: 3, titles: true });
  const chart = chartOf(nest);
  const read = (pieces: readonly OwnPieceSaid[] = [], by: SizeChart = chart) => {
    const pattern: Pattern = { ...sampleWork.pattern, chart: by, style: nest.style, length: "waist" };
    // Points would mark the bust point.
    return readOwn({ own: { file: "nest", drawing: { ...drawing, points: [] }, pieces }, pattern });
  };
  return { truth, chart, read };
}

const side = { seed: 3, basque: false, front: "side" } as const;

describe("pieces read from lines", () => {
  it("are used where all is as it is sewn", () => {
    expect(drawn(side).read().missing).toEqual([]);
  });

  it("are not used where a side seam is 30 mm shorter than the one it is sewn to", () => {
    const { truth, chart, read } = drawn(side);
    const back = read().pieces.find(({ said }) => said.name === "back");
    const [of] = truth.filter(({ piece, size }) => piece === "back" && size === chart.sizes[0]?.label);
    const [top, low] = [of?.corners.underarm, of?.corners.sideWaist];
    if (back === undefined || of === undefined || top === undefined || low === undefined) throw new Error("back");
    const share = 30 / Math.hypot(low.x - top.x, low.y - top.y);
    const at = { x: top.x + share * (low.x - top.x), y: top.y + share * (low.y - top.y) };
    const { missing, nest } = read([{ id: back.id, name: "back", corners: [{ name: "underarm", size: of.size, at }] }]);
    expect(nest).toBeNull();
    const [first, ...more] = missing;
    expect(more).toEqual([]);
    if (first?.code !== "own/seams-unlike") throw new Error(first?.code);
    expect(first).toMatchObject({ seam: "side", piece: "back", other: "front" });
    // The other sizes follow by the same share of a longer seam.
    expect(first.by).toBeLessThan(-28);
    expect(first.by).toBeGreaterThan(-45);
  });

  it.each([
    ["waist", -600, 1],
    ["bust", 600, -1],
  ] as const)("are not used where the chart's %s is another's by %s mm", (level, by, sign) => {
    const { chart, read } = drawn(side);
    const sizes = chart.sizes.map((size, index) => (index === 2 ? { ...size, [level]: size[level] + by } : size));
    const { missing, nest } = read([], { ...chart, sizes });
    expect(nest).toBeNull();
    expect(missing).toMatchObject([{ code: "own/girth-unlike", level, size: sizes[2]?.label }]);
    const [only] = missing;
    if (only?.code !== "own/girth-unlike") throw new Error(only?.code);
    expect(Math.sign(only.by)).toBe(sign);
    // With the nest's own ease, which is between 20 and 160 mm.
    expect(only.by + by).toBeGreaterThan(-50);
    expect(only.by + by).toBeLessThan(250);
  });
});

describe("labels of the chart", () => {
  it.each(["another", "again", ""])("that are not the file's leave one size untraced: %s", (label) => {
    const { chart, read } = drawn(side);
    const at = 2;
    const sizes = chart.sizes.map((size, index) =>
      index === at ? { ...size, label: label === "again" ? (chart.sizes[0]?.label ?? "") : label } : size,
    );
    const { missing, nest } = read([], { ...chart, sizes });
    expect(missing).toEqual([]);
    expect(nest?.sizes.map((size) => size.label)).toEqual(
      chart.sizes.filter((_, index) => index !== at).map((size) => size.label),
    );
  });
});

describe("a bust point that nothing marks", () => {
  it.each(["princessArmhole", "princessShoulder"] as const)("lies below the underarm: %s", (front) => {
    for (let seed = 11; seed < 17; seed += 1) {
      const { read } = drawn({ seed, front, basque: false });
      const reading = read();
      expect(reading.missing).toEqual([]);
      for (const { pieces } of reading.nest?.sizes ?? []) {
        const heightAbove = (name: Piece["name"], point: "bustPoint" | "underarm"): number => {
          const piece = pieces.find((one) => one.name === name);
          const [at, waist] = [piece?.points[point]?.at, piece?.points.princessWaist?.at];
          if (at === undefined || waist === undefined) throw new Error(name);
          return waist.y - at.y;
        };
        const below = heightAbove("sideFront", "underarm") - heightAbove("centreFront", "bustPoint");
        expect(below).toBeGreaterThan(10);
        expect(below).toBeLessThan(110);
      }
    }
  });
});
