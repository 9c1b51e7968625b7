/** Why sizes cannot be picked: each refusal with what it names, and both sides of how far out a pick may lie. */
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { measuresOf, tapesOf } from "../../../src/core/measures/tape";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { printedNestOf } from "../../../src/core/plan/planOf";
import { testWork } from "../../support/works";

const picked = (picks: Work["picks"], more: Partial<Work> = {}): Work => ({ ...testWork, ...more, picks });
const refusalOf = (work: Work) => {
  const plan = derivePlan(work);
  return plan.ok ? null : plan.failure;
};

describe("a plan is refused", () => {
  const without = (...names: readonly string[]): Work => ({
    ...testWork,
    tapes: tapesOf(
      Object.fromEntries(Object.entries(measuresOf(testWork.tapes)).filter(([name]) => !names.includes(name))),
    ),
  });

  it("where measures are missing, naming those, the hip only where the pattern goes there", () => {
    const missing = (...measures: readonly string[]) => ({ code: "plan/measure-missing", measures });
    expect(refusalOf(without("bustGirth"))).toEqual(missing("bustGirth"));
    expect(refusalOf(without("waistGirth", "hipGirth"))).toEqual(missing("waistGirth", "hipGirth"));
    expect(refusalOf(without("hipGirth"))).toEqual(missing("hipGirth"));
    const short: Work = { ...without("hipGirth"), pattern: { ...testWork.pattern, length: "waist" } };
    expect(refusalOf(short)).toBeNull();
    expect(refusalOf({ ...short, tapes: without("hipGirth", "waistGirth").tapes })).toEqual(missing("waistGirth"));
  });

  it("where the chart cannot be read, with how many faults", () => {
    const chart = { ...testWork.pattern.chart, sizes: [] };
    expect(refusalOf({ ...testWork, pattern: { ...testWork.pattern, chart } })).toMatchObject({
      code: "plan/chart-unusable",
    });
  });

  it("where a pick lies further out than two steps beyond the chart, and not at two", () => {
    expect(refusalOf(picked({ hip: 13 }))).toBeNull();
    expect(refusalOf(picked({ hip: 13.1 }))).toMatchObject({ code: "plan/outside-chart", level: "hip" });
    // Hips are finished to 870 in the smallest and to 1370 in the largest, 40 and 60 from the next.
    const reach = { code: "plan/outside-chart", level: "hip", least: 870 - 2 * 40, most: 1370 + 2 * 60 };
    const near = (value: number) => expect.closeTo(value, 6);
    const told = (wanted: number) => ({
      ...reach,
      least: near(reach.least),
      most: near(reach.most),
      wanted: near(wanted),
    });
    expect(refusalOf(picked({ hip: 13.1 }))).toEqual(told(1370 + 2.1 * 60));
    expect(refusalOf(picked({ hip: -2.1 }))).toEqual(told(870 - 2.1 * 40));
    const wide = tapesOf({ ...measuresOf(testWork.tapes), hipGirth: 1500 });
    expect(refusalOf({ ...testWork, tapes: wide })).toEqual(told(1550));
    expect(refusalOf(picked({ waist: -2 }))).toBeNull();
    expect(refusalOf(picked({ waist: -2.1 }))).toMatchObject({ code: "plan/outside-chart", level: "waist" });
  });

  it("where a picked size or cup is none of the chart's", () => {
    expect(refusalOf(picked({ baseSize: "13" }))).toEqual({ code: "plan/base-size-unknown", label: "13" });
    expect(refusalOf(picked({ cup: "Z" }))).toEqual({ code: "plan/cup-unknown", label: "Z" });
    expect(printedNestOf(picked({ cup: "Z" }))).toMatchObject({ ok: false });
  });
});
