/** The demonstration of two trials is what its tool makes of commands, and tells what a fitting would. */
import { describe, expect, it } from "vitest";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { Decided } from "../../src/core/decisions/decided";
import type { Plan } from "../../src/core/plan/plan";
import { invariant } from "../../src/core/result";
import { demoStories } from "../../src/document/demo";
import { secondDress, story } from "../tools/storyDemo";

const [work, dress] = demoStories();
const [second, first] = work?.trials ?? [];

function planOf(decided: Decided | undefined): Plan {
  const planned = derivePlan(invariant(decided, "what was decided"));
  return invariant(planned.ok ? planned.value : null, "plan");
}

/** How far short of the bust point the side dart ends on a half, along its axis, mm. */
const shortOf = (plan: Plan, half: "left" | "right"): number =>
  plan[half].darts.find(({ ref }) => ref.dart === "sideDart")?.drawn.end?.along ?? Number.NaN;

describe("the demonstration of two trials", () => {
  it("is what its tool makes", () => {
    expect([work, dress]).toEqual([story(), secondDress()]);
  });

  it("begins with two answers to one dart, 14 mm apart, on a toile that can be sewn together", () => {
    const sewn = planOf(first?.sewn);
    expect(shortOf(sewn, "left") - shortOf(sewn, "right")).toBeCloseTo(14, 1);
    expect(sewn.checks.filter(({ ok }) => !ok)).toEqual([]);
  });

  it("takes out of the back twice what was pinched, and keeps the left dart on both halves", () => {
    // Pinched 7 mm deep inside a piece: 14 mm of cloth. The left dart was lengthened by 10.
    expect(second?.sewn.alterations.map((one) => (one.kind === "fit" ? [one.fit, one.amount] : one.kind))).toEqual([
      ["swayBack", 14],
      "dartEnd",
    ]);
    const sewn = planOf(second?.sewn);
    expect(sewn.left).toBe(sewn.right);
    expect(shortOf(sewn, "right")).toBeCloseTo(shortOf(planOf(first?.sewn), "left"), 6);
  });

  it("ends with a clean toile, kept as the base, and nothing decided since", () => {
    expect(first).toMatchObject({ verdict: "again" });
    expect(second).toMatchObject({ verdict: "keep", base: true });
    expect(second?.observations.map(({ sign }) => sign)).toEqual(["bustPoint", "bustPoint"]);
    expect(new Set(Object.values(second?.checks ?? {}))).toEqual(new Set([true]));
    expect(work?.alterations).toEqual(second?.sewn.alterations);
  });

  it("goes on in another dress of the same pattern, which has the base's alterations and no trial yet", () => {
    expect(dress?.begunFrom).toEqual({ name: work?.name, day: "2026-11-21" });
    expect(dress?.trials).toBeUndefined();
    expect(dress?.alterations).toEqual(second?.sewn.alterations);
    expect(dress?.pattern).toEqual(work?.pattern);
  });
});
