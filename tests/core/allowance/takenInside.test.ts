/** A seam that turns a little on its way keeps its allowance on both sides of the turn. */
import { describe, expect, it } from "vitest";
import { takenInside, type CutRun } from "../../../src/core/allowance/takenInside";
import { lineEdge } from "../../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../../src/core/geometry/point";

describe("the line inside a seam with a turn", () => {
  it.each([10, 20, 40])("turns where both parallels meet: a gable %s mm high", (rise) => {
    const allowance = 10;
    const at = [
      [0, 0],
      [100, -rise],
      [200, 0],
      [200, 200],
      [0, 200],
    ].map(([x, y]) => piecePoint(x ?? 0, y ?? 0));
    const edge = (from: number) => lineEdge(at[from] ?? piecePoint(0, 0), at[(from + 1) % 5] ?? piecePoint(0, 0));
    const run = (...from: number[]): CutRun => ({ edges: from.map(edge), allowance, next: { kind: "corner" } });
    const taken = takenInside([run(0, 1), run(2), run(3), run(4)], () => false);
    if (!taken.ok) throw new Error("nothing left");
    // Two lines through (100, -rise), each moved square to itself by the allowance.
    const y = -rise + allowance / Math.cos(Math.atan2(rise, 100));
    const tip = taken.value[0]?.toSorted((p, q) => p.y - q.y)[0];
    expect(tip?.x).toBeCloseTo(100, 6);
    expect(tip?.y).toBeCloseTo(y, 6);
    // A point for each end and one for the turn.
    expect(taken.value[0]).toHaveLength(3);
  });
});

describe("the line inside a seam that is rounded", () => {
  // A corner rounded by less than the allowance has none left: both sides' own lines meet where they would without it.
  it.each([2, 5, 9.5, 10])("by %s mm, with an allowance of 10, has a corner", (radius) => {
    const reach = (radius * 4 * (Math.SQRT2 - 1)) / 3;
    const run = (...edges: CutRun["edges"]): CutRun => ({ edges, allowance: 10, next: { kind: "corner" } });
    const taken = takenInside(
      [
        run(lineEdge(piecePoint(0, 0), piecePoint(200, 0))),
        run(
          lineEdge(piecePoint(200, 0), piecePoint(200, 100 - radius)),
          {
            a: piecePoint(200, 100 - radius),
            b: piecePoint(200 - radius, 100),
            curve: {
              c1: piecePoint(200, 100 - radius + reach),
              c2: piecePoint(200 - radius + reach, 100),
            },
          },
          lineEdge(piecePoint(200 - radius, 100), piecePoint(0, 100)),
        ),
        run(lineEdge(piecePoint(0, 100), piecePoint(0, 0))),
      ],
      () => false,
    );
    if (!taken.ok) throw new Error("nothing left");
    const line = taken.value[1] ?? [];
    // Of a curve as tight as the allowance a hundredth is left.
    for (const { x, y } of line) expect(Math.min(190 - x, 90 - y)).toBeGreaterThan(-0.02);
    for (const { x, y } of line) expect(Math.min(190 - x, 90 - y)).toBeLessThan(0.02);
    expect([line[0], line.at(-1)]).toEqual([
      { x: expect.closeTo(190, 2), y: expect.closeTo(10, 2) },
      { x: expect.closeTo(10, 2), y: expect.closeTo(90, 2) },
    ]);
    expect(Math.min(...line.map(({ x, y }) => Math.hypot(x - 190, y - 90)))).toBeLessThan(0.02);
  });
});
