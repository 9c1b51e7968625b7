/** A plan in steps: each leaves the very thing that the next one and the plan ask for. */
import { describe, expect, it } from "vitest";
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

describe("the steps to a plan", () => {
  it("of pieces from a file are its outlines, its pieces and the plan, and none is done twice", () => {
    const work = fresh(true);
    const [outlines, pieces, plan, ...others] = stepsToPlan(work).map((step) => step());
    expect(others).toEqual([]);
    const reading = invariant(readingOf(work.pattern), "reading");
    expect(reading.outlines).toBe(outlines);
    expect(reading).toBe(pieces);
    expect(planOf(work)).toBe(plan);
    expect(planOf(work).ok).toBe(true);
  });

  it("of any other work is the plan alone", () => {
    const work = fresh(false);
    expect(stepsToPlan(work).map((step) => step())).toEqual([planOf(work)]);
  });
});
