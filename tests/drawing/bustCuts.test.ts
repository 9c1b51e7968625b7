import type { StyleName } from "../../src/core/decisions/pattern";
import { describe, expect, it } from "vitest";
import { measuresOf, tapesOf } from "../../src/core/measures/tape";
import { derivePlan } from "../../src/core/plan/derivePlan";
import { bustCuts, type BustCuts } from "../../src/drawing/bustCuts";
import { sampleWork } from "../support/sampleWork";

function cutsAt(bustGirth: number, style: StyleName): readonly BustCuts[] {
  const plan = derivePlan({
    ...sampleWork,
    alterations: [],
    tapes: tapesOf({ ...measuresOf(sampleWork.tapes), bustGirth }),
    pattern: { ...sampleWork.pattern, style, chart: { ...sampleWork.pattern.chart, cups: [] } },
  });
  if (!plan.ok) throw new Error(plan.failure.code);
  return bustCuts(plan.value.left);
}

/** Where a matrix(a b c d e f) of SVG lays a point: (ax + cy + e, bx + dy + f). */
function laidAt(transform: string, { x, y }: { readonly x: number; readonly y: number }): readonly [number, number] {
  const [a = NaN, b = NaN, c = NaN, d = NaN, e = NaN, f = NaN] = transform
    .replace(/^matrix\(|\)$/g, "")
    .split(" ")
    .map(Number);
  return [a * x + c * y + e, b * x + d * y + f];
}

describe("bustCuts", () => {
  it("has none where no bust alteration is made", () => {
    expect(cutsAt(912, "sideDart")).toEqual([]);
  });

  it("opens for a fuller bust: one hinge, on which the turned part stays", () => {
    const [front, ...others] = cutsAt(975, "sideDart");
    expect(others).toEqual([]);
    expect(front).toMatchObject({ piece: "front", opens: true });
    expect(front?.cuts).toHaveLength(3);
    const hinge = front?.hinges[0] ?? { x: NaN, y: NaN };
    const stays = (front?.parts ?? [])
      .map(({ transform }) => laidAt(transform, hinge))
      .filter(([x, y]) => Math.hypot(x - hinge.x, y - hinge.y) < 0.01);
    // What is not moved, and the upper side part, which turns about it; the two others slide away from under it.
    expect(stays).toHaveLength(2);
    expect(front?.parts).toHaveLength(4);
  });

  it("laps for a smaller bust", () => {
    expect(cutsAt(895, "sideDart")).toMatchObject([{ piece: "front", opens: false }]);
  });

  it("gives one drawing for each piece that is cut", () => {
    expect(
      cutsAt(975, "princessArmhole")
        .map(({ piece }) => piece)
        .toSorted(),
    ).toEqual(["centreFront", "sideFront"]);
    expect(cutsAt(975, "midriff").map(({ piece }) => piece)).toEqual(["cup"]);
  });
});
