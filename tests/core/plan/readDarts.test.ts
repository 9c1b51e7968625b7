/** Each dart as the plan reads it: what serves the bust, what is printed nowhere, at which radius. */
import { describe, expect, it } from "vitest";
import type { Alteration } from "../../../src/core/decisions/alteration";
import { bustRadiusOf } from "../../../src/core/plan/bustRadius";
import { dartIn, planOf, ref, testWork, withAlterations } from "../../support/works";

describe("a dart as it is read", () => {
  it("has its fullness stated at the bust radius, hers where she gave one", () => {
    expect([bustRadiusOf({}), bustRadiusOf({ bustRadius: 95 }), bustRadiusOf({ bustRadius: 0 })]).toEqual([80, 95, 80]);
    expect(bustRadiusOf({ bustRadius: -3 })).toBe(80);
    expect(dartIn(planOf({ ...testWork, bustRadius: 60 }), "front", "waistDart").coneRadius).toBe(60);
  });

  it("serves the bust on the front, with a stop and an end; a back's has neither, nor anything wanted", () => {
    const plan = planOf(testWork);
    const [front, back] = [dartIn(plan, "front", "waistDart"), dartIn(plan, "back", "waistDart")];
    expect([front.wanted === null, front.usualStop === null, front.endJudged === null]).toEqual([false, false, false]);
    expect([back.wanted, back.usualStop, back.endJudged, back.bySight]).toEqual([null, null, null, null]);
    expect(back.printed?.intake).toBeCloseTo(back.drawn.intake, 9);
    expect([front.verdict, back.verdict, front.truing]).toEqual(["asWanted", "asWanted", { inner: 0, outer: 0 }]);
    expect(front.giveBackPlaces[0]).toBe("sideSeam");
  });

  it("that the pattern has not is printed nowhere", () => {
    const pivot: Alteration = { kind: "dartPivot", id: "p", dart: ref("front", "sideDart"), to: "shoulder", share: 1 };
    const opened = dartIn(planOf(withAlterations(pivot)), "front", "shoulderDart");
    expect([opened.printed, opened.wanted, opened.verdict]).toEqual([null, null, "asWanted"]);
    expect(opened.coneRadius).toBe(80);
  });
});
