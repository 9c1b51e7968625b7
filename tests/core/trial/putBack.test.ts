/** What one answer altered stands as the toile was sewn, not as nothing, once another takes its place. */
import { describe, expect, it } from "vitest";
import type { FitAlteration } from "../../../src/core/decisions/alteration";
import type { Observation, Trial } from "../../../src/core/decisions/trial";
import type { Work } from "../../../src/core/decisions/work";
import { applyCommand } from "../../../src/core/plan/commands";
import { answerCommand } from "../../../src/core/trial/takeAnswer";
import { first, line, toile } from "../../support/trials";
import { testWork } from "../../support/works";

const sway: FitAlteration = { kind: "fit", id: "fit-swayBack", fit: "swayBack", amount: 5 };
const gapes = [line("frontArmhole", "gapes", { amount: 5 })];

/** The first answers to two records of one toile taken one after the other. */
function inTurn(sewn: Partial<Work>, one: readonly Observation[], other: readonly Observation[]): readonly Work[] {
  const sewnBy = { ...testWork, ...sewn };
  const seeing = (observations: readonly Observation[]): Trial => ({
    ...toile("sideDart", observations),
    sewn: { ...toile("sideDart", []).sewn, ...sewn },
  });
  const work: Work = { ...sewnBy, ...seeing(one).sewn, trials: [seeing(one)] };
  const once = applyCommand(work, answerCommand(work, seeing(one), first(seeing(one)), null));
  const then: Trial = { ...seeing(other), taken: once.trials?.[0]?.taken ?? [] };
  const twice = applyCommand({ ...once, trials: [then] }, answerCommand(once, then, first(then), null));
  return [once, twice];
}

describe("an answer that another takes the place of", () => {
  it("leaves what it altered with the amount that was sewn", () => {
    const behind = [line("backAboveWaist", "foldAcross", { amount: 6 }), line("backWaist", "drops", { amount: 12 })];
    const [once, twice] = inTurn({ alterations: [sway] }, behind, gapes);
    expect(once?.alterations).toMatchObject([{ fit: "swayBack", amount: 17 }]);
    expect(twice?.alterations).toMatchObject([{ fit: "swayBack", amount: 5 }, { fit: "armholeGape" }]);
  });

  it("leaves the bust as it was picked when it was sewn", () => {
    const [once, twice] = inTurn({ picks: { bustAlteration: 8 } }, [line("bust", "foldAlong", { amount: 5 })], gapes);
    expect(once?.picks.bustAlteration).not.toBe(8);
    expect(twice?.picks.bustAlteration).toBe(8);
  });
});
