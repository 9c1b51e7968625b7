/** What is asked on one half of the body alone: how much is done there, and what is traced for each half. */
import { describe, expect, it } from "vitest";
import { HALVES, type Alteration, type FitAlteration, type Half } from "../../../src/core/decisions/alteration";
import { leftOutBy } from "../../../src/core/plan/leftOutBy";
import { seamLength } from "../../../src/core/girth/seamLength";
import { pieceIn, setOf } from "../../../src/core/pattern/pieceSet";
import type { Work } from "../../../src/core/decisions/work";
import { planOf, ref, testWork } from "../../support/works";

const fitOn = (fit: FitAlteration["fit"], amount: number, half?: Half): FitAlteration => ({
  kind: "fit",
  id: fit,
  fit,
  amount,
  ...(half === undefined ? {} : { half }),
});
const workWith = (...alterations: readonly Alteration[]): Work => ({ ...testWork, alterations });

const waistOf = (work: Work, half: Half): number => {
  const pieces = setOf(planOf(work)[half].pieces);
  return seamLength(pieceIn(pieces, "front"), "waist") + seamLength(pieceIn(pieces, "back"), "waist");
};

describe("an amount all round the body", () => {
  it("is that half's own where it is asked on one half, and half of it goes to each otherwise", () => {
    const plain = waistOf(testWork, "left");
    const one = workWith(fitOn("sideSeamWaist", 12, "left"));
    expect(waistOf(one, "left") - plain).toBeCloseTo(12, 1);
    expect(waistOf(one, "right")).toBeCloseTo(waistOf(testWork, "right"), 6);
    const both = workWith(fitOn("sideSeamWaist", 12));
    expect(waistOf(both, "left") - plain).toBeCloseTo(6, 1);
    expect(waistOf(both, "right") - plain).toBeCloseTo(6, 1);
  });

  it("that is too much is refused with the most of that half: half of what goes all round", () => {
    const refusedMost = (half?: Half): number => {
      const [line] = planOf(workWith(fitOn("sideSeamWaist", 5000, half))).ledger.filter(({ outcome }) => !outcome.ok);
      if (line === undefined || line.outcome.ok || line.outcome.failure.code !== "alteration/too-much")
        throw new Error("it was made");
      return line.outcome.failure.most;
    };
    expect(refusedMost("right")).toBeCloseTo(refusedMost() / 2, 6);
  });
});

describe("tracing", () => {
  const twice = (work: Work): readonly string[] =>
    planOf(work).checklist.flatMap(({ piece, step }) => (step.kind === "trace" && step.isTwice ? [piece] : []));

  it("is done once where the halves are alike", () => {
    expect(twice(testWork)).toEqual([]);
    expect(twice(workWith(fitOn("sideSeamWaist", 12)))).toEqual([]);
  });

  it("is done twice of the pieces that differ, and of no other", () => {
    expect(twice(workWith(fitOn("backNeckGape", 6, "left")))).toEqual(["back"]);
    expect(twice(workWith(fitOn("sideSeamWaist", 12, "left")))).toEqual(expect.arrayContaining(["front", "back"]));
  });
});

describe("what an alteration leaves no room for", () => {
  it("is told of it alone: what could not be made without it either is not", () => {
    const side = ref("front", "sideDart");
    const longer: Alteration = {
      kind: "dartEnd",
      id: "longer",
      dart: side,
      shorten: -400,
      across: 0,
      hold: "mouth",
      giveBack: {},
    };
    const work = workWith(fitOn("sideSeamWaist", 4), longer);
    const refused = planOf(work).ledger.filter(({ outcome }) => !outcome.ok);
    expect(refused.map(({ id }) => id)).toEqual(["longer"]);
    expect(leftOutBy(work, "sideSeamWaist")).toEqual([]);
    expect(leftOutBy(work, "longer")).toEqual([]);
  });
});

describe("halves that are sewn to each other", () => {
  const refused = (work: Work) =>
    planOf(work).ledger.flatMap(({ id, outcome }) => (outcome.ok ? [] : [[id, outcome.failure.code]]));

  it.each(HALVES)("leave out what sets their centre fronts apart, and nothing beside it: on the %s", (half) => {
    const apart = fitOn("waistDropFront", 12, half);
    for (const beside of [fitOn("shoulderSlope", 6, half), fitOn("armholeDepth", 6, half)])
      expect(refused(workWith(apart, beside))).toEqual([["waistDropFront", "alteration/halves-apart"]]);
    expect(refused(workWith(fitOn("waistDropFront", 12), fitOn("shoulderSlope", 6, half)))).toEqual([]);
  });

  it.each(HALVES)("leave out a length of one half however small it is, rather than draw it back: on the %s", (half) => {
    for (const fit of ["waistDropFront", "swayBack", "roundBack"] as const)
      expect(refused(workWith(fitOn(fit, 4, half)))).toEqual([[fit, "alteration/halves-apart"]]);
  });

  it.each(HALVES)("have a seam down the centre of both where it is no fold on one: on the %s", (half) => {
    const moved: Alteration = {
      kind: "dartPlace",
      id: "moved",
      half,
      dart: ref("front", "waistDart"),
      by: 6,
      how: "offCentreSeam",
      giveBack: {},
    };
    const plan = planOf(workWith(moved));
    expect(refused(workWith(moved))).toEqual([]);
    const onFold = ({ pieces }: typeof plan.left) => pieceIn(setOf(pieces), "front").centreOnFold;
    expect(onFold(planOf(testWork).left)).toBe(true);
    expect([onFold(plan.left), onFold(plan.right)]).toEqual([false, false]);
  });

  it.each(HALVES)("leave out on both what is for both and cannot be made on one: not on the %s", (half) => {
    const side = ref("front", "sideDart");
    const pivot: Alteration = { kind: "dartPivot", id: "pivot", half, dart: side, to: "shoulder", share: 1 };
    const end: Alteration = {
      kind: "dartEnd",
      id: "end",
      dart: side,
      shorten: 10,
      across: 0,
      hold: "mouth",
      giveBack: {},
    };
    const plan = planOf(workWith(pivot, end));
    expect(refused(workWith(pivot, end)).map(([id]) => id)).toEqual(["end"]);
    for (const { alterations } of [plan.left, plan.right])
      expect(alterations.find(({ id }) => id === "end")?.outcome.ok).toBe(false);
    const without = planOf(workWith(pivot));
    expect(plan.right.pieces).toEqual(without.right.pieces);
    expect(plan.left.pieces).toEqual(without.left.pieces);
  });
});
