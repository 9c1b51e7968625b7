import { describe, expect, it } from "vitest";
import type { FitAlteration } from "../../../src/core/decisions/alteration";
import { LIMITS } from "../../../src/core/decisions/limits";
import type { Observation, TakenAnswer, Trial } from "../../../src/core/decisions/trial";
import type { Work } from "../../../src/core/decisions/work";
import { applyCommand, type Command } from "../../../src/core/plan/commands";
import { parseWork } from "../../../src/document/workFile";
import { sampleWork } from "../../support/sampleWork";

const { alterations: _own, trials: _none, ...rest } = sampleWork;
const bare: Work = { ...rest, alterations: [] };

const after = (work: Work, ...commands: readonly Command[]): Work => commands.reduce(applyCommand, work);

const begun = after(bare, { kind: "beginTrial", id: "t1", day: "2026-11-20" });
const trialOf = (work: Work, id = "t1"): Trial => {
  const found = work.trials?.find((one) => one.id === id);
  if (found === undefined) throw new Error("no such trial");
  return found;
};

const fit = (amount: number, half?: "left" | "right"): FitAlteration => ({
  kind: "fit",
  id: `sway${half ?? ""}`,
  fit: "swayBack",
  amount,
  ...(half === undefined ? {} : { half }),
});

const answer = (half?: "left" | "right"): TakenAnswer => ({
  causes: ["swayBack"],
  because: ["a"],
  alterations: ["sway"],
  ...(half === undefined ? {} : { half }),
});

const take = (amount: number, half?: "left" | "right"): Command => ({
  kind: "takeTrialAnswer",
  trial: "t1",
  answer: answer(half),
  alterations: [fit(amount, half)],
});

const line: Observation = { id: "a", place: "backAboveWaist", sign: "foldAcross", way: "pinched", amount: 6 };

describe("a trial garment in a work", () => {
  it("keeps what was decided when it was sewn, whatever is decided afterwards", () => {
    const later = after(
      begun,
      { kind: "putAlteration", alteration: fit(10) },
      { kind: "setPick", picks: { waist: 2.5 } },
      { kind: "setStrap", strap: bare.pattern.strap === "thin" ? "wide" : "thin" },
    );
    const { sewn } = trialOf(later);
    expect(sewn.alterations).toEqual([]);
    expect(sewn.picks).toBe(bare.picks);
    expect(sewn.pattern).toBe(bare.pattern);
    expect(sewn.tapes).toBe(bare.tapes);
    expect(sewn).not.toHaveProperty("name");
    expect(sewn).not.toHaveProperty("trials");
    expect(parseWork(later).ok).toBe(true);
  });

  it("goes back to all that was decided then, and keeps name, unit and trials", () => {
    const later = after(
      begun,
      { kind: "putAlteration", alteration: fit(10) },
      { kind: "setName", name: "Another name" },
      { kind: "setAge", age: 44 },
    );
    const returned = applyCommand(later, { kind: "returnToTrial", trial: "t1" });
    expect(returned).toEqual({ ...begun, name: "Another name" });
    // There already: the very same work.
    expect(applyCommand(returned, { kind: "returnToTrial", trial: "t1" })).toBe(returned);
  });

  it("keeps every decision that may be absent, and goes back without touching what is decided of no plan", () => {
    const decided = {
      trusted: { waistGirth: 738 },
      age: 44,
      bustRadius: 90,
      seen: [{ piece: "front", dart: "waistDart", half: "left", pastBustPoint: 5, tooFarToSide: 0, pointed: "right" }],
      allowances: { side: 25 },
    } as const satisfies Partial<Work>;
    const own = {
      wearer: "Ada",
      begunFrom: { name: "Blue dress", day: "2026-11-01" },
      standingLeft: ["swayBack"],
      sheetFormat: "A3",
      printerMargin: 8,
    } as const satisfies Partial<Work>;
    const full: Work = { ...bare, ...decided, ...own, unread: { height: "five foot" } };
    const sewn = after(full, { kind: "beginTrial", id: "t1", day: "2026-11-20" });
    expect(trialOf(sewn).sewn).toMatchObject(decided);
    for (const key of Object.keys(own)) expect(trialOf(sewn).sewn).not.toHaveProperty(key);
    const { trials, tapes, pattern, easeWanted } = sewn;
    const emptied: Work = {
      ...own,
      name: full.name,
      invented: full.invented,
      unit: full.unit,
      paper: full.paper,
      unread: full.unread,
      tapes,
      pattern,
      easeWanted,
      picks: {},
      alterations: [fit(3)],
      ...(trials === undefined ? {} : { trials }),
    };
    expect(applyCommand(emptied, { kind: "returnToTrial", trial: "t1" })).toEqual(sewn);
  });

  it("stands before those that were begun earlier, each by an id of its own", () => {
    const two = after(
      begun,
      { kind: "beginTrial", id: "t2", day: "2026-11-21" },
      { kind: "beginTrial", id: "t1", day: "2026-11-22" },
    );
    expect(two.trials?.map(({ id, day }) => [id, day])).toEqual([
      ["t2", "2026-11-21"],
      ["t1", "2026-11-20"],
    ]);
    const one = applyCommand(two, { kind: "removeTrial", trial: "t2" });
    expect(one.trials?.map(({ id }) => id)).toEqual(["t1"]);
    expect(applyCommand(one, { kind: "removeTrial", trial: "t1" })).not.toHaveProperty("trials");
  });

  it("is not begun on a day that no calendar has, nor beyond what a work holds", () => {
    expect(applyCommand(bare, { kind: "beginTrial", id: "t", day: "2026-02-30" })).toBe(bare);
    const full = Array.from({ length: LIMITS.trials + 3 }, (_, at): Command => ({
      kind: "beginTrial",
      id: `t${at}`,
      day: "2026-11-20",
    }));
    expect(after(bare, ...full).trials).toHaveLength(LIMITS.trials);
  });

  it("keeps words, lengths and ticks, and loses them when nothing is said any more", () => {
    const said = after(
      begun,
      { kind: "setTrialText", trial: "t1", of: "cloth", text: "old sheet" },
      { kind: "setToileLength", trial: "t1", length: "waistGirth", value: 742 },
      { kind: "setTrialCheck", trial: "t1", check: "hemLevel", is: false },
    );
    expect(trialOf(said)).toMatchObject({
      cloth: "old sheet",
      measured: { waistGirth: 742 },
      checks: { hemLevel: false },
    });
    const unsaid = after(
      said,
      { kind: "setTrialText", trial: "t1", of: "cloth", text: "  " },
      { kind: "setToileLength", trial: "t1", length: "waistGirth", value: null },
      { kind: "setTrialCheck", trial: "t1", check: "hemLevel", is: null },
    );
    expect(unsaid).toEqual(begun);
    expect(applyCommand(begun, { kind: "setToileLength", trial: "t1", length: "waistGirth", value: -1 })).toBe(begun);
  });

  it("keeps lines of the record by their id, in the order they were first written", () => {
    const put = (observation: Observation): Command => ({ kind: "putObservation", trial: "t1", observation });
    const two = after(begun, put(line), put({ id: "b" }), put({ ...line, amount: 9 }));
    expect(trialOf(two).observations).toEqual([{ ...line, amount: 9 }, { id: "b" }]);
    // No cloth has these, and the same line again changes nothing.
    for (const odd of [
      { ...line, amount: -1 },
      { ...line, amount: LIMITS.seenAmount + 1 },
      { ...line, amount: 9 },
    ])
      expect(applyCommand(two, put(odd))).toBe(two);
    expect(trialOf(applyCommand(two, { kind: "removeObservation", trial: "t1", id: "a" })).observations).toEqual([
      { id: "b" },
    ]);
  });

  it("takes an answer as one step, kept with the trial; no amount takes the alteration out", () => {
    const taken = applyCommand(begun, take(12));
    expect(taken.alterations).toEqual([fit(12)]);
    expect(trialOf(taken).taken).toEqual([answer()]);
    const bust = applyCommand(begun, {
      kind: "takeTrialAnswer",
      trial: "t1",
      answer: answer(),
      alterations: [],
      bustAlteration: 20,
    });
    expect(bust.picks).toEqual({ ...bare.picks, bustAlteration: 20 });
    expect(applyCommand(taken, take(0)).alterations).toEqual([]);
  });

  it("keeps one answer for each half, or one for both", () => {
    const halves = after(begun, take(12, "left"), take(8, "right"), take(9, "right"));
    expect(trialOf(halves).taken?.map(({ half }) => half)).toEqual(["left", "right"]);
    expect(trialOf(applyCommand(halves, take(5))).taken).toEqual([answer()]);
  });

  it("is a base only while its verdict is to keep it", () => {
    const base: Command = { kind: "setBase", trial: "t1", isBase: true };
    expect(applyCommand(begun, base)).toBe(begun);
    const kept = after(begun, { kind: "setVerdict", trial: "t1", verdict: "keep" }, base);
    expect(trialOf(kept)).toMatchObject({ verdict: "keep", base: true });
    for (const verdict of ["again", null] as const)
      expect(trialOf(applyCommand(kept, { kind: "setVerdict", trial: "t1", verdict }))).not.toHaveProperty("base");
  });

  it("changes nothing of a work that has no such trial", () => {
    const commands: readonly Command[] = [
      { kind: "removeTrial", trial: "none" },
      { kind: "setVerdict", trial: "none", verdict: "keep" },
      { kind: "returnToTrial", trial: "none" },
      { kind: "takeTrialAnswer", trial: "none", answer: answer(), alterations: [fit(4)] },
    ];
    for (const command of commands) expect(applyCommand(begun, command)).toBe(begun);
  });
});
