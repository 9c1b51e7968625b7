/** A toile outranks a tape: what it asked for is not asked back by measures that say otherwise. */
import { describe, expect, it } from "vitest";
import type { FitAlteration } from "../../../src/core/decisions/alteration";
import type { Trial } from "../../../src/core/decisions/trial";
import type { Work } from "../../../src/core/decisions/work";
import { tapesOf } from "../../../src/core/measures/tape";
import { proposalsOf } from "../../../src/core/proposals/proposals";
import { planOf, testWork } from "../../support/works";

/** The block's own back waist length (common practice, no source) is 410: at 420 and 14 out, 24 are missing by the tape. */
const measured: Work = {
  ...testWork,
  tapes: tapesOf({
    bustGirth: 880,
    upperChestGirth: 830,
    waistGirth: 700,
    hipGirth: 940,
    backWaistLength: 420,
    shoulderLength: 138,
  }),
  alterations: [],
};
const swayBack: FitAlteration = { kind: "fit", id: "s", fit: "swayBack", amount: 14 };
const altered: Work = { ...measured, alterations: [swayBack] };
const taken: Trial = {
  id: "t",
  sewn: measured,
  observations: [{ id: "fold", place: "backAboveWaist", sign: "foldAcross", way: "pinched", amount: 7 }],
  taken: [{ causes: ["swayBack"], because: ["fold"], alterations: ["s"] }],
};
const kept: Trial = { id: "t", sewn: altered, observations: [], verdict: "keep" };

const fits = (work: Work): readonly string[] =>
  proposalsOf(work, planOf(work)).proposals.map(({ altered: { kind, ...of } }) => ("fit" in of ? of.fit : kind));
const back = (work: Work): string | undefined =>
  proposalsOf(work, planOf(work)).unanswered.find(({ compared }) => compared.measure === "backWaistLength")?.because;

describe("what a toile showed", () => {
  it("is asked back by a tape alone, which goes on asking for the rest", () => {
    expect(fits(altered)).toEqual(["swayBack", "shoulderWidth"]);
    expect(back(altered)).toBeUndefined();
  });

  it.each([
    ["was an answer that was taken", { ...altered, trials: [taken] }],
    ["was sewn in what was kept", { ...altered, trials: [kept] }],
    ["came from a base", { ...altered, begunFrom: { name: "Wren" } }],
  ])("is not asked back where it %s", (_, work) => {
    expect(fits(work)).toEqual(["shoulderWidth"]);
    expect(back(work)).toBe("toile");
  });

  it("is asked back where the toile that was sewn with it is to be tried again", () => {
    expect(fits({ ...altered, trials: [{ ...kept, verdict: "again" }] })).toContain("swayBack");
  });
});
