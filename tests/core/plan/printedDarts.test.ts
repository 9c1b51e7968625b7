/** A tissue whose waist darts are as wide in every size: what the finished waist then comes to, measured on such a nest. */
import { describe, expect, it } from "vitest";
import type { Nest, Piece } from "../../../src/core/pattern/piece";
import { waistIfDartsAlike } from "../../../src/core/plan/printedDarts";
import { printedDartsNote } from "../../../src/words/printedDarts";
import { planOf, testWork } from "../../support/works";

/** Narrower at the waist in the larger sizes than their busts ask for: the draft makes up for that by wider darts. */
const chart = {
  ...testWork.pattern.chart,
  sizes: testWork.pattern.chart.sizes.map((row) => ({ ...row, waist: row.bust - 180 - 0.1 * (row.bust - 920) })),
};

const onLines = (baseSize: string, waist: number) =>
  planOf({
    ...testWork,
    pattern: { ...testWork.pattern, chart, style: "sideDart" },
    picks: { baseSize, waist, bustAlteration: 0 },
  });

/** By how much the waist darts of front and back together are wider in one size than in another, on the half. */
function wider({ labels, sizes }: Nest, size: string, than: string): number {
  const mouths = (label: string): number =>
    ["front", "back"].reduce((sum, name) => {
      const piece: Piece | undefined = sizes[labels.indexOf(label)]?.find((one) => one.name === name);
      const [a, b] = [piece?.points.waistDartInner?.at, piece?.points.waistDartOuter?.at];
      return sum + Math.hypot((b?.x ?? NaN) - (a?.x ?? NaN), (b?.y ?? NaN) - (a?.y ?? NaN));
    }, 0);
  return mouths(size) - mouths(than);
}

describe("waist darts equally wide in all sizes", () => {
  it("leave the waist smaller by what the darts of the line are drafted wider, on both halves", () => {
    const plan = onLines("14", 6);
    expect(plan.nest.labels[6]).toBe("18");
    expect(waistIfDartsAlike(plan)).toBeCloseTo(-2 * wider(plan.nest, "18", "14"), 6);
    const between = onLines("14", 5.5);
    const half = (wider(plan.nest, "16", "14") + wider(plan.nest, "18", "14")) / 2;
    expect(waistIfDartsAlike(between)).toBeCloseTo(-2 * half, 6);
  });

  it("make no difference on the size's own line, nor where no dart is at the waist, and then nothing is said", () => {
    expect(waistIfDartsAlike(onLines("14", 4))).toBeCloseTo(0, 9);
    expect(printedDartsNote(onLines("14", 4), testWork)).toBeNull();
    const midriff = planOf({ ...testWork, pattern: { ...testWork.pattern, style: "midriff" } });
    expect(waistIfDartsAlike(midriff)).toBe(0);
  });

  it("are told with the amount and the way", () => {
    const plan = onLines("14", 7);
    const off = waistIfDartsAlike(plan);
    expect(Math.abs(off)).toBeGreaterThan(1);
    expect(printedDartsNote(plan, testWork)).toContain(
      `${Math.abs(Math.round(off))} mm ${off < 0 ? "smaller than told: let that out" : "larger than told: take that in"}`,
    );
  });
});
