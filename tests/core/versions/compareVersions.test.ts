import { describe, expect, it } from "vitest";
import type { Alteration } from "../../../src/core/decisions/alteration";
import type { Trial } from "../../../src/core/decisions/trial";
import type { Work } from "../../../src/core/decisions/work";
import { applyCommand } from "../../../src/core/plan/commands";
import { alterationRows, rowsOnHalf } from "../../../src/core/versions/alterationRows";
import { compareVersions, reasonsFor } from "../../../src/core/versions/compareVersions";
import { branchFrom, sewnAsNow, versionsOf } from "../../../src/core/versions/versionsOf";
import { sizeLines } from "../../../src/words/versions";
import { planOf, ref, testWork, withAlterations } from "../../support/works";

const sway = (amount: number, half?: "left" | "right", id = "sway"): Alteration => ({
  kind: "fit",
  id,
  fit: "swayBack",
  amount,
  ...(half === undefined ? {} : { half }),
});
const sideSeam = (amount: number, half?: "left" | "right"): Alteration => ({
  kind: "fit",
  id: `side${half ?? ""}`,
  fit: "sideSeamWaist",
  amount,
  ...(half === undefined ? {} : { half }),
});

const compared = (from: Work, to: Work) =>
  compareVersions({ decided: from, plan: planOf(from) }, { decided: to, plan: planOf(to) });

describe("alterations of two versions side by side", () => {
  it("of both halves stand in one row, with what one is more", () => {
    const [row, ...more] = alterationRows([sway(10)], [sway(18)]);
    expect(more).toEqual([]);
    expect(row).toMatchObject({ half: null, by: 8, isChanged: true });
  });

  it("that only another hand made are the same", () => {
    const [row] = alterationRows([sway(10, undefined, "a")], [sway(10, undefined, "b")]);
    expect(row).toMatchObject({ by: 0, isChanged: false });
  });

  it("of one half stand in a row of their own, beside what is for both", () => {
    const rows = alterationRows([sway(10)], [sway(10, "left", "l"), sway(14, "right", "r")]);
    expect(rows.map(({ half, by, isChanged }) => ({ half, by, isChanged }))).toEqual([
      { half: "left", by: 0, isChanged: false },
      { half: "right", by: 4, isChanged: true },
    ]);
  });

  it("of an older file, for both and for one half besides, count together on that half", () => {
    const older = [sway(5), sway(3, "left", "more")];
    expect(alterationRows(older, [sway(5)]).map(({ half, by }) => [half, by])).toEqual([
      ["left", -3],
      ["right", 0],
    ]);
    expect(rowsOnHalf(older, [sway(9)], "left").map(({ by }) => by)).toEqual([1]);
    expect(rowsOnHalf(older, [sway(9)], "right").map(({ by }) => by)).toEqual([4]);
  });

  it("all round the body count half on each half of it", () => {
    // 20 mm all round are 10 on each half; 6 on the left alone are 4 less there, and 10 less on the right.
    const rows = alterationRows([sideSeam(20)], [sideSeam(6, "left")]);
    expect(rows.map(({ half, by }) => ({ half, by }))).toEqual([
      { half: "left", by: -4 },
      { half: "right", by: -10 },
    ]);
  });
});

describe("two versions", () => {
  it("that are the same differ in nothing", () => {
    const made = compared(withAlterations(sway(10)), withAlterations(sway(10)));
    expect(made.alterations.some(({ isChanged }) => isChanged)).toBe(false);
    expect(made.darts.some(({ isChanged }) => isChanged)).toBe(false);
    expect(made.measures).toEqual([]);
    expect(made.levels.map(({ by }) => by)).toEqual([0, 0, 0]);
    expect(made.pattern.isChanged).toBe(false);
    expect(sizeLines(made, "cm").map(({ what }) => what)).not.toContain("Pattern");
  });

  it("tell a pattern that is another, or the same one otherwise", () => {
    const named: Work = { ...testWork, pattern: { ...testWork.pattern, name: "Another" } };
    const opened: Work = {
      ...testWork,
      pattern: { ...testWork.pattern, closure: { place: "side", belowWaist: 150 } },
    };
    const told = (to: Work) => {
      const line = sizeLines(compared(testWork, to), "cm").find(({ what }) => what === "Pattern");
      return [line?.before, line?.after, line?.by, line?.isChanged];
    };
    const { name } = testWork.pattern;
    expect(told(named)).toEqual([name, "Another", "", true]);
    expect(told(opened)).toEqual([name, name, "changed", true]);
  });

  it("tell measures, girths and darts that are other", () => {
    const end: Alteration = {
      kind: "dartMouth",
      id: "m",
      dart: ref("front", "waistDart"),
      inner: -3,
      outer: -3,
      giveBack: { sideSeam: 1 },
    };
    const wider = applyCommand(withAlterations(end), { kind: "setMeasure", measure: "hipGirth", value: 1054 });
    const made = compared(testWork, wider);
    expect(made.measures).toEqual([{ measure: "hipGirth", before: 1034, after: 1054 }]);
    const hip = made.levels.find(({ level }) => level === "hip");
    // The hip is cut to the girth and the ease, so 20 mm more of the body are 20 mm more of cloth.
    expect(hip?.by).toBeCloseTo(20, 1);
    const dart = made.darts.find(({ ref: of }) => of.piece === "front" && of.dart === "waistDart");
    expect((dart?.before?.intake ?? 0) - (dart?.after?.intake ?? 0)).toBeCloseTo(6, 1);
    expect(made.darts.filter(({ isChanged }) => isChanged).map(({ ref: of }) => `${of.piece} ${of.dart}`)).toEqual([
      "front waistDart",
    ]);
  });
});

/** Two trials: of the first a sway back of 10 was taken, of the second 8 more. */
function tried(): Work {
  const first = applyCommand(testWork, { kind: "beginTrial", id: "one", day: "2026-11-01" });
  const seen = applyCommand(first, {
    kind: "putObservation",
    trial: "one",
    observation: { id: "fold", place: "backAboveWaist", sign: "foldAcross", way: "pinched", amount: 5 },
  });
  const taken = applyCommand(seen, {
    kind: "takeTrialAnswer",
    trial: "one",
    answer: { causes: ["swayBack"], because: ["fold"], alterations: ["sway"] },
    alterations: [sway(10)],
  });
  const second = applyCommand(taken, { kind: "beginTrial", id: "two", day: "2026-11-08" });
  return applyCommand(second, {
    kind: "takeTrialAnswer",
    trial: "two",
    answer: { causes: ["swayBack"], because: [], alterations: ["sway"] },
    alterations: [sway(18)],
  });
}

describe("versions of a work", () => {
  it("are what is decided now and its trials, numbered from the oldest", () => {
    const work = tried();
    expect(versionsOf(work).map(({ trial, number }) => [trial?.id ?? null, number])).toEqual([
      [null, null],
      ["two", 2],
      ["one", 1],
    ]);
  });

  it("tell which answer asked for a change, between the versions asked about and no other", () => {
    const { trials = [] } = tried();
    const [now, second, first] = [-1, 0, 1];
    const asked = (from: number, to: number) =>
      reasonsFor(trials, [from, to], ["sway"]).map(({ number, because }) => [number, because.map(({ id }) => id)]);
    expect(asked(first, second)).toEqual([[1, ["fold"]]]);
    expect(asked(second, now)).toEqual([[2, []]]);
    expect(asked(first, now)).toEqual([
      [1, ["fold"]],
      [2, []],
    ]);
    expect(reasonsFor(trials, [first, now], ["another"])).toEqual([]);
  });

  it("know whether what is decided now was ever sewn", () => {
    const work = tried();
    expect(sewnAsNow(work)).toBeNull();
    const back = applyCommand(work, { kind: "returnToTrial", trial: "two" });
    expect(back.alterations).toEqual([sway(10)]);
    expect(sewnAsNow(back)?.id).toBe("two");
    expect(back.trials).toBe(work.trials);
  });

  it("branch off with the trials up to the one they begin from", () => {
    const work = tried();
    const trial = (work.trials ?? []).find(({ id }: Trial) => id === "one");
    if (trial === undefined) throw new Error("no trial");
    const branch = branchFrom(work, trial);
    expect(branch.alterations).toEqual([]);
    expect(branch.trials?.map(({ id }) => id)).toEqual(["one"]);
    expect(branch.name).toBe(work.name);
  });
});
