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
  });
});
