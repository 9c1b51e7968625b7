/** The nearest of several lines, held against looking at each of them. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cubicEdge, edgeNearest, lineEdge, type EdgeCurve } from "../../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../../src/core/geometry/point";
import { nearestOfAll } from "../../../src/core/overlay/nearestOfAll";
import { anyAmount } from "../../support/amounts";

const anyPlace = fc.tuple(anyAmount(-300, 300), anyAmount(-300, 300)).map(([x, y]) => piecePoint(x, y));

describe("the nearest place of several lines", () => {
  it("is the first of those that are nearest when each of them is looked at", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(anyPlace, anyPlace, anyPlace, anyPlace), { minLength: 1, maxLength: 8 }),
        anyPlace,
        (lines, at) => {
          const curves = lines.map(([a, c1, c2, b], index) =>
            index % 2 === 0 ? cubicEdge({ a, c1, c2, b }) : lineEdge(a, b),
          );
          const each = curves.map((curve) => edgeNearest(curve, at));
          const least = Math.min(...each.map(({ distance }) => distance));
          const first = each.find(({ distance }) => distance === least);
          expect(nearestOfAll([...curves, ...curves])(at)).toEqual(first);
        },
      ),
      { numRuns: 200 },
    );
  });

  it("is none where there are no lines", () => {
    expect(nearestOfAll([])(piecePoint(0, 0))).toBeNull();
  });

  it("is not looked for on lines whose box lies further off than what was found", () => {
    let looked: number[] = [];
    // A row of lines 30 mm apart that tell when they are looked at.
    const rows = Array.from({ length: 20 }, (_, row): EdgeCurve<"piece"> => {
      const [a, b] = [piecePoint(0, 30 * row), piecePoint(100, 30 * row)];
      return {
        get a() {
          looked.push(row);
          return a;
        },
        b,
        curve: null,
      };
    });
    const nearest = nearestOfAll(rows);
    const lookedAt = (x: number, y: number): readonly number[] => {
      looked = [];
      expect(nearest(piecePoint(x, y))?.distance).toBeCloseTo(
        Math.hypot(Math.max(0, x - 100, -x), Math.min(y % 30, 30 - (y % 30))),
        9,
      );
      return [...new Set(looked)];
    };
    expect(lookedAt(50, 4)).toEqual([0]);
    // The first is 15 mm off, the second as far: neither is further.
    expect(lookedAt(50, 15)).toEqual([0, 1]);
    expect(lookedAt(50, 14)).toEqual([0]);
    // 40 mm past the ends of all of them the first is √(40² + 4²) off, the second √(40² + 26²).
    expect(lookedAt(140, 4)).toEqual([0]);
    expect(lookedAt(-40, 4)).toEqual([0]);
    expect(lookedAt(50, 44)).toEqual([0, 1]);
  });
});
