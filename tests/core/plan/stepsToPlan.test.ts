/** A plan in steps: each leaves the very thing that the next one and the plan ask for. */
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { readingOf } from "../../../src/core/nest/piecesOfPattern";
import { planOf, printedNestOf } from "../../../src/core/plan/planOf";
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

/** The very pieces of every printed size: they are not made again when they are drawn. */
function areSizesOf(work: Work, sizes: unknown): void {
  const nest = printedNestOf(work);
  if (!nest.ok || !Array.isArray(sizes)) throw new Error("no sizes");
  expect(sizes).toHaveLength(work.pattern.chart.sizes.length);
  for (const [at, pieces] of nest.value.sizes.entries()) expect(sizes[at]).toBe(pieces);
}

describe("the steps to a plan", () => {
  it("of pieces from a file are its outlines, its pieces, the plan, its checks and its sizes, and none is done twice", () => {
    const work = fresh(true);
    const [outlines, pieces, plan, checks, sizes, ...others] = stepsToPlan(work).map((step) => step());
    expect(others).toEqual([]);
    const reading = invariant(readingOf(work.pattern), "reading");
    expect(reading.outlines).toBe(outlines);
    expect(reading).toBe(pieces);
    expect(planOf(work)).toBe(plan);
    expect(checksOf(work)).toBe(checks);
    areSizesOf(work, sizes);
  });

  it("of any other work are the plan, its checks and the printed sizes", () => {
    const work = fresh(false);
    const [plan, checks, sizes, ...others] = stepsToPlan(work).map((step) => step());
    expect(others).toEqual([]);
    expect(planOf(work)).toBe(plan);
    expect(checksOf(work)).toBe(checks);
    areSizesOf(work, sizes);
  });

  it("of a work without a plan come to its printed sizes alone", () => {
    const work = { ...fresh(false), tapes: [] };
    const [plan, checks, sizes] = stepsToPlan(work).map((step) => step());
    expect(plan).toBe(planOf(work));
    expect(checks).toBeNull();
    expect(sizes).toHaveLength(work.pattern.chart.sizes.length);
  });
});
