/** A plan is worked out once for a bodice, whatever hangs on it. */
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { planOf } from "../../../src/core/plan/planOf";
import { invariant } from "../../../src/core/result";
import { demoDresses } from "../../../src/document/demo";

const work = invariant(
  demoDresses().find(({ dress }) => dress?.neckline !== undefined),
  "a demo dress with a neckline",
);
const dress = invariant(work.dress, "dress");
const neckline = invariant(dress.neckline, "neckline");

const planned = (of: Work) => {
  const plan = planOf(of);
  if (!plan.ok) throw new Error(plan.failure.code);
  return plan.value;
};

describe("the plan of a dress", () => {
  it("is the very same whatever skirt, lining and straps are chosen", () => {
    const other: Work = {
      ...work,
      dress: { ...dress, skirt: { kind: "straight", length: 555 }, lining: { skirt: true }, straps: { kind: "tied" } },
    };
    expect(planned(other)).toBe(planned(work));
  });

  it("is what is derived from the whole work", () => {
    for (const one of demoDresses()) expect(planOf(one)).toEqual(derivePlan(one));
  });

  it.each([
    ["another neckline", { dress: { ...dress, neckline: { ...neckline, deeper: (neckline.deeper ?? 0) + 4 } } }],
    ["the neckline of the pattern", { dress: {} }],
    ["another alteration", { alterations: [] }],
    ["another opening", { pattern: { ...work.pattern, closure: { ...work.pattern.closure, belowWaist: 31 } } }],
  ] satisfies readonly (readonly [string, Partial<Work>])[])("is another one with %s", (_, change) => {
    const other: Work = { ...work, ...change };
    expect(planned(other)).not.toBe(planned(work));
    expect(planOf(other)).toEqual(derivePlan(other));
  });

  it("reads the opening itself only where no dress does", () => {
    const { dress: _, ...bodice } = work;
    const names = (of: Work) => planned(of).checks.map(({ name }) => name);
    expect(names(bodice)).toContain("openingPasses");
    expect(names(work)).not.toContain("openingPasses");
  });
});

describe("what is told of a plan", () => {
  it("is not made before it is read, since what follows a drag reads none of it, and then once", () => {
    const plan = planned({ ...work, alterations: [...work.alterations] });
    for (const told of ["checks", "checklist"] as const) {
      expect(Object.getOwnPropertyDescriptor(plan, told)?.value).toBe(undefined);
      expect(plan[told].length).toBeGreaterThan(0);
      expect(plan[told]).toBe(plan[told]);
    }
  });
});
