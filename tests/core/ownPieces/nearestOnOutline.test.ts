import { describe, expect, it } from "vitest";
import { lineEdge, cubicEdge } from "../../../src/core/geometry/edgeCurve";
import { sheetPoint } from "../../../src/core/geometry/point";
import { movedAlong, nearestOnOutline } from "../../../src/core/ownPieces/nearestOnOutline";

const corner = [sheetPoint(0, 0), sheetPoint(100, 0), sheetPoint(100, 60), sheetPoint(0, 60)] as const;
/** A rectangle of 100 by 60, 320 round. */
const rectangle = corner.map((a, at) => lineEdge(a, corner[(at + 1) % 4] ?? a));

describe("the place of an outline nearest to a point", () => {
  it.each([
    ["beside an edge", [40, 8], [40, 0]],
    ["beyond a corner", [120, 75], [100, 60]],
    ["inside, nearer to the left", [10, 30], [0, 30]],
  ] as const)("is found %s", (_, [x, y], [nx, ny]) => {
    expect(nearestOnOutline(rectangle, sheetPoint(x, y))).toEqual(sheetPoint(nx, ny));
  });

  it("lies on a curve where the curve is nearest", () => {
    // A quarter of a circle of 50 about the origin, by the usual cubic, right to 0.02.
    const k = 50 * 0.552285;
    const arc = cubicEdge({ a: sheetPoint(50, 0), c1: sheetPoint(50, k), c2: sheetPoint(k, 50), b: sheetPoint(0, 50) });
    const at = nearestOnOutline([arc], sheetPoint(80, 80));
    expect(at?.x).toBeCloseTo(50 * Math.SQRT1_2, 1);
    expect(at?.y).toBeCloseTo(50 * Math.SQRT1_2, 1);
  });

  it("is none where there are no edges", () => {
    expect(nearestOnOutline([], sheetPoint(0, 0))).toBeNull();
  });
});

describe("moved along an outline", () => {
  it.each([
    ["on the same edge", [30, 0], 25, [55, 0]],
    ["round a corner", [90, 0], 25, [100, 15]],
    ["backwards past the beginning", [10, 0], -25, [0, 15]],
    ["all the way round and on", [30, 0], 320 + 5, [35, 0]],
    ["from beside it", [30, -4], 10, [40, 0]],
  ] as const)("goes %s", (_, [x, y], by, [nx, ny]) => {
    const at = movedAlong(rectangle, sheetPoint(x, y), by);
    expect(at?.x).toBeCloseTo(nx, 9);
    expect(at?.y).toBeCloseTo(ny, 9);
  });
});
