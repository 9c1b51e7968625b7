/** How much work a heavily altered overlay is. */
import { beforeEach, describe, expect, it, vi } from "vitest";
import { overlayOf } from "../../../src/core/overlay/overlayOf";
import { derivePlan } from "../../../src/core/plan/derivePlan";
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
