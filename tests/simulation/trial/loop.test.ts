import { describe, expect, it } from "vitest";
import { ADVISORS } from "./advisors";
import { idealWork } from "./body";
import { isRight, isWorse, play, type Advisor } from "./loop";
import { NO_NOISE } from "./mirror";
import { hasRow } from "./truths";
import { tallyOf, tallyTruths } from "./tally";
import { wearerOf, wearerWith, type Wearer } from "./wearers";

const nobody = ADVISORS["none"];
const each = ADVISORS["each by itself"];
if (nobody === undefined || each === undefined) throw new Error("advisors");

/** Who knows the truth. */
const knowing =
  ({ work, plan, truths }: Wearer): Advisor =>
  (_, asked) => ({
    ...(idealWork(
      work,
      plan,
      truths.filter(({ name }) => hasRow(name)),
    ) ?? asked),
    trials: asked.trials ?? [],
  });

describe("fittings", () => {
  const wearers = Array.from({ length: 30 }, (_, at) => wearerOf(900 + at, 1 + (at % 3)));

  it("draw the same wearers for the same seed, each with so many truths", () => {
    for (const [at, wearer] of wearers.entries()) expect(wearer.truths.length).toBe(1 + (at % 3));
    expect(wearerOf(907, 2).truths).toEqual(wearerOf(907, 2).truths);
    expect(new Set(wearers.map(({ truths }) => JSON.stringify(truths))).size).toBeGreaterThan(25);
    expect(new Set(wearers.map(({ work }) => work.pattern.style)).size).toBe(4);
  });

  it("come right for who knows the truth, in one trial", () => {
    for (const wearer of wearers) {
      const played = play(wearer, knowing(wearer), 2);
      const [, first] = played.stages;
      expect([first !== undefined && isRight(played, first), wearer.truths]).toEqual([true, wearer.truths]);
      expect(played.stages.every((stage) => !isWorse(played, stage))).toBe(true);
    }
  });

  it("are not right while a truth that can be known is off by more than 8 mm of cloth", () => {
    for (const [amount, right] of [
      [7, true],
      [9, false],
    ] as const) {
      const wearer = wearerWith("sideDart", [{ name: "broadShoulders", amount, half: "left" }]);
      if (wearer === null) throw new Error("no wearer");
      const played = play(wearer, nobody, 1);
      expect(played.stages.map((stage) => isRight(played, stage))).toEqual([right, right]);
    }
  });

  it("leave everything as it is where nobody answers", () => {
    for (const wearer of wearers) {
      const { stages } = play(wearer, nobody, 3);
      for (const { left, sum, inVain } of stages) {
        expect(left).toEqual(stages[0]?.left);
        expect(sum).toBe(stages[0]?.sum);
        expect(inVain).toBe(0);
      }
    }
  });

  it("make a garment worse by a wrong alteration, and tell that it was in vain", () => {
    const wearer = wearerWith("sideDart", [{ name: "offGrain", amount: 12, half: "left" }]);
    if (wearer === null) throw new Error("no wearer");
    const widening: Advisor = (_, work) => ({
      ...work,
      alterations: [{ kind: "fit", id: "w", fit: "sideSeamWaist", amount: 40 }],
    });
    const played = play(wearer, widening, 1);
    const [first, second] = played.stages;
    // 40 in all are 20 on the half.
    expect((second?.sum ?? 0) - (first?.sum ?? 0)).toBeGreaterThan(19);
    expect(second !== undefined && isWorse(played, second)).toBe(true);
    expect(second?.inVain).toBe(1);
  });

  it("go on with the garment as it was where an advisor fails", () => {
    const [wearer] = wearers;
    if (wearer === undefined) throw new Error("no wearer");
    const failing: Advisor = () => {
      throw new Error("no answer");
    };
    const played = play(wearer, failing, 2);
    expect(played.failed).toBe(2);
    expect(played.stages[2]?.sum).toBe(played.stages[0]?.sum);
  });

  it("hand the advisor a work whose newest trial is the one looked at, sewn as the work is", () => {
    const [wearer] = wearers;
    if (wearer === undefined) throw new Error("no wearer");
    const seen: (readonly [string | undefined, number, boolean])[] = [];
    play(
      wearer,
      (trial, work) => {
        seen.push([work.trials?.[0]?.id, work.trials?.length ?? 0, trial.sewn.alterations === work.alterations]);
        return work;
      },
      2,
    );
    expect(seen).toEqual([
      ["trial-1", 1, true],
      ["trial-2", 2, true],
    ]);
  });

  it("answer one plain truth by what is seen of it, each by itself", () => {
    for (const [name, style] of [
      ["swayBack", "sideDart"],
      ["largerWaist", "midriff"],
      ["forwardShoulders", "princessShoulder"],
      ["hollowChest", "princessArmhole"],
      ["waistDartPastPoint", "sideDart"],
    ] as const) {
      const wearer = wearerWith(style, [{ name, amount: 12 }]);
      if (wearer === null) throw new Error(name);
      const played = play(wearer, each, 1, NO_NOISE);
      const [, first] = played.stages;
      expect([name, first !== undefined && isRight(played, first)]).toEqual([name, true]);
    }
  });

  it("are counted", () => {
    const played = wearers.map((wearer) => play(wearer, knowing(wearer), 1));
    const tally = tallyOf(played, 1);
    expect(tally.wearers).toBe(30);
    expect(tally.right[1]).toBe(1);
    expect(tally.worse).toEqual([0, 0]);
    expect(tally.failed).toBe(0);
    const truths = tallyTruths(played, 1);
    expect(truths.reduce((sum, { count }) => sum + count, 0)).toBe(60);
    expect(truths.every(({ answered }) => answered[1] === 1)).toBe(true);
  });
});
