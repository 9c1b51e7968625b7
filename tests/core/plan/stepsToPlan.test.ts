/** A plan in steps: each leaves the very thing that the next one and the plan ask for. */
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { readingOf } from "../../../src/core/nest/piecesOfPattern";
import { planOf } from "../../../src/core/plan/planOf";
import { stepsToPlan } from "../../../src/core/plan/stepsToPlan";
import { invariant } from "../../../src/core/result";
import { demoWorks } from "../../../src/document/demo";

const fresh = (isOwn: boolean) =>
  structuredClone(
    invariant(
      demoWorks().find(({ pattern }) => (pattern.own?.inUse === true) === isOwn),
      "demo work",
    ),
  );

const checksOf = (work: Work) => {
  const plan = planOf(work);
  if (!plan.ok) throw new Error(plan.failure.code);
  return plan.value.checks;
};

describe("the steps to a plan", () => {
  it("of pieces from a file are its outlines, its pieces, the plan and its checks, and none is done twice", () => {
    const work = fresh(true);
    const [outlines, pieces, plan, checks, ...others] = stepsToPlan(work).map((step) => step());
    expect(others).toEqual([]);
    const reading = invariant(readingOf(work.pattern), "reading");
    expect(reading.outlines).toBe(outlines);
    expect(reading).toBe(pieces);
    expect(planOf(work)).toBe(plan);
    expect(checksOf(work)).toBe(checks);
  });

  it("of any other work is the plan and its checks alone", () => {
    const work = fresh(false);
    const [plan, checks, ...others] = stepsToPlan(work).map((step) => step());
    expect(others).toEqual([]);
    expect(planOf(work)).toBe(plan);
    expect(checksOf(work)).toBe(checks);
  });

  it("of a work without a plan come to nothing", () => {
    const work = fresh(false);
    const steps = stepsToPlan({ ...work, tapes: [] }).map((step) => step());
    expect(steps).toEqual([planOf({ ...work, tapes: [] }), null]);
  });
});
