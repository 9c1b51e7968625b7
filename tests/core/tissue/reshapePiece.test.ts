/** Curves taken along by moved points, on quarter turns. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Piece, PointName } from "../../../src/core/pattern/piece";
import { reshapePiece } from "../../../src/core/tissue/reshapePiece";
import { handFront, pieceOf } from "./handPieces";

const near = (x: number, y: number) => ({ x: expect.closeTo(x, 9) as number, y: expect.closeTo(y, 9) as number });

/** A square of 100 whose lower edge may be a cubic with its handles 30 below its ends. */
const square = (curved: readonly PointName[]): Piece => {
  const piece = pieceOf("back", [
    ["centreNeck", 0, 0, "neck"],
    ["sideNeck", 100, 0, "side"],
    ["sideWaist", 100, 100, "waist"],
    ["centreWaist", 0, 100, "centre"],
  ]);
  const handles = {
    sideWaist: { c1: piecePoint(100, 130), c2: piecePoint(0, 130) },
    centreNeck: { c1: piecePoint(0, -30), c2: piecePoint(100, -30) },
    centreWaist: { c1: piecePoint(-30, 100), c2: piecePoint(-30, 0) },
    sideNeck: { c1: piecePoint(130, 0), c2: piecePoint(130, 100) },
  };
  return {
    ...piece,
    edges: piece.edges.map((edge) =>
      curved.includes(edge.from) && edge.from in handles
        ? { ...edge, curve: handles[edge.from as keyof typeof handles] }
        : edge,
    ),
  };
};
const curveFrom = (piece: Piece, from: PointName) => piece.edges.find((edge) => edge.from === from)?.curve;

describe("a reshaped piece", () => {
  it("has its named points moved, and all others where they were", () => {
    const front = handFront();
    const moved = reshapePiece(front, new Map([["sideWaist", [3, -2] as const]]));
    expect(moved.points.sideWaist).toEqual({ at: near(223, 398), level: "bust" });
    const { sideWaist: _, ...others } = moved.points;
    const { sideWaist: __, ...were } = front.points;
    expect(others).toEqual(were);
    expect(moved.edges).toEqual(front.edges);
    expect(moved.darts).toBe(front.darts);
  });

  it("keeps a curve's handles at their angle to the straight edge beside, and its share of the length", () => {
    // The lower edge becomes half as long again, and the side leans: its handle stays in line with the side.
    const moved = reshapePiece(square(["sideWaist"]), new Map([["sideWaist", [50, 0] as const]]));
    const curve = curveFrom(moved, "sideWaist");
    // The side now runs from (100, 0) to (150, 100): its way is (50, 100)/√12500.
    const long = 45 / Math.hypot(50, 100);
    expect(curve?.c1).toEqual(near(150 + 50 * long, 100 + 100 * long));
    expect(curve?.c2).toEqual(near(0, 145));
  });

  it("moves a handle along where all of its edge is moved", () => {
    const by = [7, 11] as const;
    const moved = reshapePiece(
      square(["sideWaist"]),
      new Map((["centreNeck", "sideNeck", "sideWaist", "centreWaist"] as const).map((name) => [name, by])),
    );
    expect(curveFrom(moved, "sideWaist")).toEqual({ c1: near(107, 141), c2: near(7, 141) });
  });

  it("turns both handles at a smooth place by the middle of what both chords turn", () => {
    // Both edges at sideWaist are curves: the lower one's chord turns by atan(1/2), the side's by nothing but length.
    const moved = reshapePiece(square(["sideWaist", "sideNeck"]), new Map([["sideWaist", [0, 50] as const]]));
    const half = -Math.atan2(50, 100) / 2;
    // The lower chord leads from (100, 150) to (0, 100): seen from its start it turns from west to north of west, clockwise on screen.
    const turn = -half;
    const longer = Math.hypot(100, 50) / 100;
    const way = Math.PI / 2 + turn;
    expect(curveFrom(moved, "sideWaist")?.c1).toEqual(
      near(100 + 30 * longer * Math.cos(way), 150 + 30 * longer * Math.sin(way)),
    );
  });

  it("turns what meets at a dart's mouth as the dart's leg turns", () => {
    const front = handFront();
    const curved = {
      ...front,
      edges: front.edges.map((edge) =>
        edge.from === "waistDartInner"
          ? { ...edge, curve: { c1: piecePoint(60, 410), c2: piecePoint(30, 400) } }
          : edge,
      ),
    };
    // The leg from (110, 280) to (90, 400); its lower end goes 20 to the right, so that the leg stands upright.
    const moved = reshapePiece(curved, new Map([["waistDartInner", [20, 0] as const]]));
    const turn = Math.PI / 2 - Math.atan2(120, -20);
    const way = Math.atan2(10, -30) + turn;
    const length = Math.hypot(30, 10) * (110 / 90);
    expect(curveFrom(moved, "waistDartInner")?.c1).toEqual(
      near(110 + length * Math.cos(way), 400 + length * Math.sin(way)),
    );
    // At the centre the straight centre line does not turn.
    expect(curveFrom(moved, "waistDartInner")?.c2).toEqual(near((30 * 110) / 90, 400));
  });

  it("keeps a curve of no length as it is", () => {
    const piece = square(["sideWaist"]);
    const shut = {
      ...piece,
      points: { ...piece.points, centreWaist: { at: piecePoint(100, 100), level: "bust" as const } },
    };
    const moved = reshapePiece(shut, new Map([["centreNeck", [0, 0] as const]]));
    expect(curveFrom(moved, "sideWaist")).toEqual({ c1: near(100, 130), c2: near(0, 130) });
  });
});
