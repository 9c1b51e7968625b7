/** The dress in the plan's JSON: cloth on every width asked for once, and an order of sewing that can be followed from the JSON alone. */
import { describe, expect, it } from "vitest";
import { planReport } from "../../src/cli/report";
import type { Work } from "../../src/core/decisions/work";
import { planOf, testWork } from "../support/works";

const work: Work = {
  ...testWork,
  dress: { skirt: { kind: "gathered", length: 600 }, cloths: { main: { width: 1500 } } },
};
const { dress } = planReport(work, planOf(work), [1140, 1500]);

describe("the dress of the plan's JSON", () => {
  it("is laid on its own cloth first, then on the other widths asked for", () => {
    const main = dress?.cloth.filter(({ cloth }) => cloth === "main") ?? [];
    expect(main.map(({ width_mm }) => width_mm)).toEqual([1500, 1140]);
    // No cloth holds more than it is large, and a narrower one has to be longer.
    const [own, narrow] = main;
    expect(narrow?.laid_mm).toBeGreaterThan(own?.laid_mm ?? Infinity);
  });

  it("counts its steps from 1, and names before each what has to be done, by the same numbers", () => {
    const steps = dress?.sewing ?? [];
    expect(steps.map(({ step }) => step)).toEqual(steps.map((_, at) => at + 1));
    const washed = steps.find(({ name }) => name === "washCloth")?.step;
    expect(steps.find(({ name }) => name === "cutOut")?.after).toEqual([washed]);
    expect(steps.flatMap(({ step, after }) => after.filter((before) => before < 1 || before >= step))).toEqual([]);
  });

  it("is absent of a work that decides nothing of one", () => {
    expect(planReport(testWork, planOf(testWork)).dress).toBeNull();
  });
});
