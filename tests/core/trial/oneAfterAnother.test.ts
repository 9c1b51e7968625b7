/** Answers to one trial taken one after the other, on both halves or on one: each takes the place of what stood there. */
import { describe, expect, it } from "vitest";
import { isMadeOn, type Half } from "../../../src/core/decisions/alteration";
import type { Work } from "../../../src/core/decisions/work";
import { applyCommand } from "../../../src/core/plan/commands";
import { answerCommand } from "../../../src/core/trial/takeAnswer";
import { standsOn } from "../../../src/core/trial/takenNow";
import type { TrialAnswer } from "../../../src/core/trial/trialReading";
import { first, line, toile } from "../../support/trials";
import { testWork } from "../../support/works";

const workOf = (trial: ReturnType<typeof toile>): Work => ({
  ...testWork,
  ...trial.sewn,
  trials: [trial],
});

describe("one answer after another", () => {
  const gapes = toile("sideDart", [line("frontArmhole", "gapes", { amount: 5 })]);
  const tooLong = first(toile("sideDart", [line("shoulder", "endsOutside", { amount: 8 })]));
  const take = (work: Work, answer: TrialAnswer, half: Half | null): Work =>
    applyCommand(work, answerCommand(work, work.trials?.[0] ?? gapes, answer, half));
  const on = (work: Work, half: Half) =>
    work.alterations.filter((one) => isMadeOn(one, half)).map((one) => (one.kind === "fit" ? one.fit : one.kind));

  it("takes the place of one that was tried on either half and is one for both by now", () => {
    const each = take(take(workOf(gapes), first(gapes), "left"), first(gapes), "right");
    expect(each.alterations).toMatchObject([{ fit: "armholeGape", amount: 10 }]);
    expect(each.alterations[0]?.half).toBeUndefined();
    expect(take(each, tooLong, null).alterations).toMatchObject([{ fit: "shoulderWidth" }]);
    const left = take(each, tooLong, "left");
    expect([on(left, "left"), on(left, "right")]).toEqual([["shoulderWidth"], ["armholeGape"]]);
  });

  it("tried on one half, takes the place of one for both there alone", () => {
    const left = take(take(workOf(gapes), first(gapes), null), tooLong, "left");
    expect([on(left, "left"), on(left, "right")]).toEqual([["shoulderWidth"], ["armholeGape"]]);
    const trial = left.trials?.[0] ?? gapes;
    expect(standsOn(trial, first(gapes))).toEqual(["right"]);
    expect(standsOn(trial, tooLong)).toEqual(["left"]);
    const both = take(left, tooLong, "right");
    expect([on(both, "left"), on(both, "right")]).toEqual([["shoulderWidth"], ["shoulderWidth"]]);
  });
});
