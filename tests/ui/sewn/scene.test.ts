import { describe, expect, it } from "vitest";
import type { SewnFront } from "../../../src/core/sewn/sewFront";
import { fitInto } from "../../../src/ui/sewn/paint";
import { modelOf, sceneOf, type Mark } from "../../../src/ui/sewn/scene";

/** One half of a plain front: a triangle before the chest, 100 mm out, with a line down its centre. */
const front: SewnFront = {
  places: [
    { x: 0, y: 0, z: 100 },
    { x: 80, y: 0, z: 100 },
    { x: 0, y: 120, z: 100 },
  ],
  triangles: [[0, 1, 2]],
  lines: [
    {
      kind: "centre",
      seam: "centre",
      dart: null,
      places: [
        { x: 0, y: 0, z: 100 },
        { x: 0, y: 120, z: 100 },
      ],
    },
  ],
  tips: [],
  strain: { mean: 0, most: 0 },
};

const faces = (turn: number) =>
  sceneOf(modelOf(front), turn).filter((mark): mark is Mark & { kind: "face" } => mark.kind === "face");
const middle = (turn: number): number => {
  const line = sceneOf(modelOf(front), turn).find((mark) => mark.kind === "line");
  return line?.kind === "line" ? line.from.x : Number.NaN;
};

describe("the scene", () => {
  it("shows both halves from their right side, as mirror images", () => {
    const [one, other] = faces(0);
    expect([one?.wrongSide, other?.wrongSide]).toEqual([false, false]);
    const across = faces(0)
      .flatMap(({ corners }) => corners.map(({ x }) => x))
      .filter((x) => x !== 0);
    expect(across.toSorted((a, b) => a - b)).toEqual([-80, 80]);
  });

  it("shows the wrong side from behind", () => {
    expect(faces(180).map(({ wrongSide }) => wrongSide)).toEqual([true, true]);
  });

  // 100 mm out, turned by 30°: 100 sin 30° to the side.
  it.each([
    [30, 50],
    [-30, -50],
    [90, 100],
  ])("turned by %d° carries the middle %d mm to the right", (turn, x) => {
    expect(middle(turn)).toBeCloseTo(x, 9);
  });

  it("puts what is further off first", () => {
    const depths = sceneOf(modelOf(front), 25).map(({ depth }) => depth);
    expect(depths).toEqual(depths.toSorted((a, b) => a - b));
  });

  it("fits two fronts in one scale", () => {
    const fit = fitInto(200, 200, [
      { across: 50, top: 0, bottom: 100 },
      { across: 100, top: -20, bottom: 100 },
    ]);
    expect(fit.middle).toBe(40);
    // The wider one is 200 mm across in 200 pixels, less the margin.
    expect(fit.scale).toBeGreaterThan(0.9);
    expect(fit.scale).toBeLessThan(1);
  });
});
