/** Corners where blended pieces join, on charts with uneven steps and in inches: straight, and every seam as long as it was. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SizeChart } from "../../../src/core/chart/sizeChart";
import type { Work } from "../../../src/core/decisions/work";
import { tapesOf } from "../../../src/core/measures/tape";
import { joinsOf } from "../../../src/core/pattern/sewnTogether";
import { setOf } from "../../../src/core/pattern/pieceSet";
import type { Piece } from "../../../src/core/pattern/piece";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { invariant } from "../../../src/core/result";
import { anyAmount } from "../../support/amounts";
import { inchChart, unevenChart } from "../../support/steppedCharts";
import { cornerAt, STYLE_NAMES } from "../../support/garments";
import { seamByBezierJs } from "../../support/independent";
import { testWork } from "../../support/works";

const anyBody = fc.record({
  bust: anyAmount(790, 1150),
  out: anyAmount(25, 110),
  waist: anyAmount(-280, -80),
  hip: anyAmount(-20, 170),
});

const workFor = (chart: SizeChart): fc.Arbitrary<Work> =>
  fc
    .record({ body: anyBody, style: fc.constantFrom(...STYLE_NAMES), length: fc.constantFrom("waist", "hip") })
    .map(({ body: { bust, out, waist, hip }, style, length }) => ({
      ...testWork,
      tapes: tapesOf({
        bustGirth: bust,
        upperChestGirth: bust - out,
        waistGirth: bust + waist,
        hipGirth: bust + hip,
      }),
      pattern: { ...testWork.pattern, chart, style, length },
    }));

describe.each([
  ["uneven steps", unevenChart],
  ["inches", inchChart],
])("a chart with %s", (_name, chart) => {
  it("has no corner more than 3° off straight where pieces join, and loses no seam by truing it", () => {
    const tally = { plans: 0, trued: 0 };
    fc.assert(
      fc.property(workFor(chart), (work) => {
        const plan = derivePlan(work);
        if (!plan.ok) return;
        tally.plans += 1;
        const { pieces, blended, truing } = plan.value.left;
        tally.trued += truing.some(({ what }) => what === "cornerSquared") ? 1 : 0;
        const named = (name: string): Piece =>
          invariant(
            pieces.find((piece) => piece.name === name),
            name,
          );
        for (const { point, first, second } of joinsOf(setOf(pieces)))
          expect(Math.abs(cornerAt(named(first), point) + cornerAt(named(second), point) - 180)).toBeLessThan(3.01);
        for (const was of blended)
          for (const seam of new Set(was.edges.map((edge) => edge.seam)))
            expect(Math.abs(seamByBezierJs(named(was.name), seam) - seamByBezierJs(was, seam))).toBeLessThan(0.05);
        expect(plan.value.checks.filter(({ name, ok }) => name === "joinedCornersStraight" && !ok)).toEqual([]);
      }),
      { numRuns: 80 },
    );
    expect(tally.plans).toBeGreaterThan(60);
    // There were such corners: a third of these plans had one.
    expect(tally.trued).toBeGreaterThan(8);
  }, 240_000);
});
