/** The demonstration on pieces of its own is what its file says, read anew; nothing in it is newer or older than that file. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { derivePlan } from "../../src/core/plan/derivePlan";
import { demoWorks } from "../../src/document/demo";
import { invariant } from "../../src/core/result";
import { root } from "../support/doors";
import { drawLinnet, linnet, linnetWork } from "../tools/ownDemo";

const svg = readFileSync(join(root, "demo-data/linnet.svg"), "utf8");
const work = invariant(
  demoWorks().find(({ pattern }) => pattern.own !== undefined),
  "demo on own pieces",
);

describe("the demonstration on pieces of its own", () => {
  it("is drawn as its tool draws it, and holds what is read from its file", () => {
    expect(svg).toBe(drawLinnet());
    expect(work).toEqual(linnetWork(svg));
  });

  it("is planned on these pieces: bust, waist and hip measure what its house drafted, by closed form", () => {
    const planned = derivePlan(work);
    const plan = invariant(planned.ok ? planned.value : null, "plan");
    expect(plan.nest.source).toBe("own");
    expect(plan.printed.map(({ name }) => name)).toEqual(["front", "back", "frontBasque", "backBasque", "other1"]);
    const { ease } = linnet();
    const eased = plan.levels.map((level) => level.ease);
    for (const [index, drafted] of [ease.bust, ease.waist, ease.hip].entries())
      expect(Math.abs((eased[index] ?? Number.NaN) - drafted)).toBeLessThan(0.2);
    expect(plan.checks.filter(({ ok }) => !ok)).toEqual([]);
  });
});
