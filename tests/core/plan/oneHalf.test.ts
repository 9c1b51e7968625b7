/** What is asked on one half of the body alone: how much is done there, and what is traced for each half. */
import { describe, expect, it } from "vitest";
import type { Alteration, FitAlteration, Half } from "../../../src/core/decisions/alteration";
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
