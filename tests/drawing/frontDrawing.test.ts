import { describe, expect, it } from "vitest";
import type { StyleName } from "../../src/core/decisions/pattern";
import type { Work } from "../../src/core/decisions/work";
import { derivePlan } from "../../src/core/plan/derivePlan";
import { frontDrawing, type FrontDrawing } from "../../src/drawing/frontDrawing";
import { readPath } from "../support/pathReader";
import { sampleWork } from "../support/sampleWork";

function frontOf(change: Partial<Work> = {}): FrontDrawing {
  const plan = derivePlan({ ...sampleWork, alterations: [], ...change });
  if (!plan.ok) throw new Error(plan.failure.code);
  return frontDrawing(plan.value);
}

const styled = (style: StyleName, length: "waist" | "hip") =>
  frontOf({ pattern: { ...sampleWork.pattern, style, length } });

/** How far from the centre line each half reaches, mm. */
const reachOf = ({ halves }: FrontDrawing): readonly number[] =>
  halves.map(({ pieces }) =>
    Math.max(
      ...pieces.flatMap(({ outline }) =>
        readPath(outline).flatMap(({ numbers }) => numbers.filter((_number, at) => at % 2 === 0)),
      ),
    ),
  );

describe("the front in small", () => {
  it("has her right half at the left, turned over, and her left half at the right", () => {
    expect(frontOf().halves.map(({ mirrored }) => mirrored)).toEqual([true, false]);
    const let6out = { kind: "fit", id: "fit-sideSeamWaist-left", fit: "sideSeamWaist", amount: 6 } as const;
    const [right = 0, left = 0] = reachOf(frontOf());
    expect(left).toBeCloseTo(right, 6);
    // The side seam let out at the waist on her left half: only the half at the right changes.
    const uneven = frontOf({ alterations: [{ ...let6out, half: "left" }] });
    expect(uneven.halves[0]).toEqual(frontOf().halves[0]);
    expect(uneven.halves[1]).not.toEqual(frontOf().halves[1]);
  });

  it.each([
    ["sideDart", "waist", 1],
    ["sideDart", "hip", 2],
    ["princessArmhole", "waist", 2],
    ["princessShoulder", "hip", 3],
    ["midriff", "waist", 2],
  ] as const)("of %s to the %s has %i pieces on each half", (style, length, count) => {
    expect(styled(style, length).halves.map(({ pieces }) => pieces.length)).toEqual([count, count]);
  });

  it("draws the darts, and lies in its box on both sides of the centre line", () => {
    const front = styled("sideDart", "waist");
    // A side dart and a waist dart, two legs each.
    expect(front.halves[0]?.pieces[0]?.darts.match(/M/g)).toHaveLength(2);
    const [reach = 0] = reachOf(front);
    // Paths are written to 0.01 mm.
    expect(front.box.x).toBeCloseTo(-reach, 1);
    expect(front.box.x + front.box.width).toBeCloseTo(reach, 1);
  });
});
