/** Of an answer for a hollow back and an armhole that gapes each is told by its own lines. */
import { describe, expect, it } from "vitest";
import type { FitName } from "../../../src/core/decisions/fitNames";
import type { TakenAnswer } from "../../../src/core/decisions/trial";
import { linesAsking } from "../../../src/core/trial/linesAsking";
import { line, toile } from "../../support/trials";

const fold = line("backAboveWaist", "foldAcross", { way: "pinched", amount: 7 });
const hem = line("backHem", "drops", { way: "off", amount: 14 });
const gape = line("frontArmhole", "gapes", { way: "pinched", amount: 9, half: "right" });
const trial = toile("sideDart", [fold, hem, gape]);
const taken: TakenAnswer = {
  causes: ["swayBack", "armholeGapes-right"],
  because: [fold.id, hem.id, gape.id],
  alterations: ["s", "a"],
};
const of = (fit: FitName) => ({ kind: "fit", id: fit, fit, amount: 14 }) as const;

describe("the lines that asked for an alteration", () => {
  it("are those of its own cause", () => {
    expect(linesAsking(trial, taken, of("swayBack")).toSorted()).toEqual([fold.id, hem.id].toSorted());
    expect(linesAsking(trial, taken, of("armholeGape"))).toEqual([gape.id]);
  });

  it("are all where the causes cannot be told apart any more", () => {
    expect(linesAsking(toile("sideDart", [gape]), taken, of("swayBack"))).toEqual(taken.because);
    expect(linesAsking(trial, taken, of("roundBack"))).toEqual(taken.because);
    expect(linesAsking(trial, taken, "bust")).toEqual(taken.because);
  });
});
