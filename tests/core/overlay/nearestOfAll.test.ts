/** The nearest of several lines, held against looking at each of them; and how much work a heavily altered overlay is. */
import * as fc from "fast-check";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { cubicEdge, edgeNearest, lineEdge } from "../../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../../src/core/geometry/point";
import { nearestOfAll } from "../../../src/core/overlay/nearestOfAll";
import { overlayOf } from "../../../src/core/overlay/overlayOf";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { anyAmount } from "../../support/amounts";
import { ref, testWork } from "../../support/works";

const counted = vi.hoisted(() => ({ nearest: 0, titles: 0 }));

vi.mock("../../../src/core/geometry/edgeCurve", async (original) => {
  const real = await original<typeof import("../../../src/core/geometry/edgeCurve")>();
  return {
    ...real,
    edgeNearest: (...of: Parameters<typeof real.edgeNearest>) => {
      counted.nearest += 1;
      return real.edgeNearest(...of);
    },
  };
});
vi.mock("../../../src/core/overlay/titlePlace", async (original) => {
  const real = await original<typeof import("../../../src/core/overlay/titlePlace")>();
  return {
    ...real,
    placeTitle: (...of: Parameters<typeof real.placeTitle>) => {
      counted.titles += 1;
      return real.placeTitle(...of);
    },
  };
});

beforeEach(() => {
  counted.nearest = 0;
  counted.titles = 0;
});

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

  it("is not looked for on lines that lie further off than what was found", () => {
    const lines = Array.from({ length: 20 }, (_, row) => lineEdge(piecePoint(0, 30 * row), piecePoint(100, 30 * row)));
    expect(nearestOfAll(lines)(piecePoint(50, 4))?.distance).toBeCloseTo(4, 9);
    expect(counted.nearest).toBe(1);
  });
});

/** Strips that are tried, and lines searched, for ten strips: as it is 95 and 70 306. */
const MOST_TITLES = 99;
const MOST_NEAREST = 74_000;

describe("the work of an overlay", () => {
  it("grows with the strips there are, not with every two of them in every round", () => {
    const plan = derivePlan({
      ...testWork,
      alterations: [
        { kind: "dartMouth", id: "a", dart: ref("front", "waistDart"), inner: 4, outer: 3, giveBack: {} },
        { kind: "dartMouth", id: "b", dart: ref("back", "waistDart"), inner: 3, outer: 4, giveBack: {} },
        { kind: "fit", id: "c", fit: "armholeDepth", amount: 6 },
        { kind: "fit", id: "d", fit: "sideSeamWaist", amount: 12 },
        { kind: "fit", id: "e", fit: "swayBack", amount: 8 },
        { kind: "fit", id: "f", fit: "shoulderSlope", amount: 6, half: "left" },
        { kind: "fit", id: "g", fit: "shoulderWidth", amount: 6, half: "right" },
      ],
    });
    if (!plan.ok) throw new Error(plan.failure.code);
    const names = [...new Set(plan.value.left.pieces.map(({ name }) => name))];
    const { patches } = overlayOf(plan.value, names, 180);
    expect(patches.length).toBeGreaterThan(9);
    expect(counted.titles).toBeLessThan(MOST_TITLES);
    expect(counted.nearest).toBeLessThan(MOST_NEAREST);
  });
});
