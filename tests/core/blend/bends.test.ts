/** Points between two levels blended: a share of each, and a line that was smooth in every size smooth. */
import { describe, expect, it } from "vitest";
import { blendPiece, levelSizes } from "../../../src/core/blend/blendPiece";
import { pointOf, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { foreignNest } from "../../support/foreign/foreignNest";
import { tracedOf } from "../../support/foreign/asTraced";

const nestOf = (seed: number): readonly Piece[] =>
  tracedOf(foreignNest({ seed, side: "shaped", front: "waist", sizes: 4 })).sizes.flatMap(({ pieces }) =>
    pieces.filter(({ name }) => name === "back"),
  );

const isBend = (name: PointName): boolean => name.startsWith("bend");

/** Degrees that the outline turns at the bends of its side seam. */
function turnsOf(piece: Piece): readonly number[] {
  return piece.edges.flatMap((edge, index) => {
    const into = piece.edges[index - 1];
    if (!isBend(edge.from) || edge.seam !== "side" || into?.curve === undefined) return [];
    const p = pointOf(piece, edge.from);
    const [a, b] = [into.curve?.c2 ?? pointOf(piece, into.from), edge.curve?.c1 ?? pointOf(piece, edge.to)];
    const turn = Math.atan2(b.y - p.y, b.x - p.x) - Math.atan2(p.y - a.y, p.x - a.x);
    return [(Math.atan2(Math.sin(turn), Math.cos(turn)) * 180) / Math.PI];
  });
}

describe("bends in the blend", () => {
  it("take the share of each level that they follow", () => {
    const sizes = nestOf(3);
    const [low, high] = sizes;
    if (low === undefined || high === undefined) throw new Error("sizes");
    const bend = low.edges.find(({ from, seam }) => isBend(from) && seam === "side")?.from;
    if (bend === undefined) throw new Error("no bend");
    const { towards } = low.points[bend] ?? {};
    expect(towards?.level).toBe("waist");
    const share = towards?.share ?? NaN;
    // Bust and heights of the first size, waist of the second.
    const blended = blendPiece(sizes, levelSizes(0, 1, 0));
    const x = pointOf(low, bend).x * (1 - share) + pointOf(high, bend).x * share;
    expect(pointOf(blended, bend).x).toBeCloseTo(x, 9);
    expect(pointOf(blended, bend).y).toBe(pointOf(low, bend).y);
  });

  it("leave a whole size as it is", () => {
    for (const seed of [3, 5, 8]) {
      const sizes = nestOf(seed);
      sizes.forEach((piece, index) => expect(blendPiece(sizes, levelSizes(index, index, index))).toEqual(piece));
    }
  });

  it("stay smooth at any sizes of bust and waist", () => {
    for (const seed of [3, 5, 8, 13]) {
      const sizes = nestOf(seed);
      for (const waist of [0, 0.4, 1.7, 3]) {
        const turns = turnsOf(blendPiece(sizes, levelSizes(1, waist, 1)));
        expect(turns.length).toBeGreaterThan(0);
        for (const turn of turns) expect(Math.abs(turn)).toBeLessThan(0.05);
      }
    }
  });
});
