/** What a command may bring, on both sides of each limit, and the parts of a work and of a trial that come and go by it. */
import { describe, expect, it } from "vitest";
import type { DartRedraw } from "../../../src/core/decisions/alteration";
import { LIMITS } from "../../../src/core/decisions/limits";
import type { OwnPattern } from "../../../src/core/decisions/ownPattern";
import type { Observation, Trial } from "../../../src/core/decisions/trial";
import type { Work } from "../../../src/core/decisions/work";
import { applyCommand, type Command } from "../../../src/core/plan/commands";
import { ref } from "../../support/dartRef";
import { sampleWork } from "../../support/sampleWork";

const testWork: Work = { ...sampleWork, alterations: [] };
const dart = ref("front", "waistDart");
const side = ref("front", "sideDart");
const end = (shorten: number, id = "end"): DartRedraw => ({
  kind: "dartEnd",
  id,
  dart,
  shorten,
  across: 0,
  hold: "mouth",
  giveBack: {},
});
const run = (work: Work, ...commands: readonly Command[]): Work => commands.reduce(applyCommand, work);
const isKept = (command: Command, work: Work = testWork): boolean => applyCommand(work, command) !== work;

describe("limits of what a command brings", () => {
  it.each<[string, (value: number) => Command, number, number]>([
    ["an age", (age) => ({ kind: "setAge", age }), 0, LIMITS.age],
    ["an allowance", (value) => ({ kind: "setAllowance", seam: "hem", value }), 0, LIMITS.allowance],
    [
      "a printer's edge",
      (value) => ({ kind: "setPrinterMargin", value }),
      LIMITS.printerMargin.least,
      LIMITS.printerMargin.most,
    ],
    [
      "buttons",
      (buttons) => ({ kind: "setClosure", closure: { place: "centreBack", belowWaist: 180, buttons } }),
      LIMITS.buttons.least,
      LIMITS.buttons.most,
    ],
    ["any length", (value) => ({ kind: "setBustRadius", value }), -LIMITS.length, LIMITS.length],
    [
      "a share given back",
      (share) => ({ kind: "putAlteration", alteration: { ...end(5), giveBack: { sideSeam: share } } }),
      0,
      1,
    ],
    [
      "a share pivoted",
      (share) => ({
        kind: "putAlteration",
        alteration: { kind: "dartPivot", id: "p", dart: side, to: "shoulder", share },
      }),
      0,
      1,
    ],
  ])("%s: from the least to the most, and not beyond", (_, command, least, most) => {
    expect([least, most].map((value) => isKept(command(value)))).toEqual([true, true]);
    expect([least - 1, most + 1].map((value) => isKept(command(value)))).toEqual([false, false]);
  });

  it("buttons are whole ones, of the pattern put in its place too", () => {
    const closure = { place: "centreBack", belowWaist: 180, buttons: 2.5 } as const;
    expect(isKept({ kind: "setClosure", closure })).toBe(false);
    expect(isKept({ kind: "setPattern", pattern: { ...testWork.pattern, name: "B", closure } })).toBe(false);
    const six = { ...closure, buttons: 6 };
    expect(isKept({ kind: "setPattern", pattern: { ...testWork.pattern, name: "B", closure: six } })).toBe(true);
  });

  it("ids of alterations are no longer than a name, whichever command brings them", () => {
    const [fits, long] = ["x".repeat(LIMITS.text), "x".repeat(LIMITS.text + 1)];
    const bringing = (id: string): readonly Command[] => [
      { kind: "putAlteration", alteration: end(5, id) },
      { kind: "replaceRedraws", dart, alterations: [end(5, id)] },
      { kind: "keepHalf", alterations: [end(5, id)], picks: {} },
      {
        kind: "takeAnswer",
        dart,
        half: "left",
        seen: { pastBustPoint: 0, tooFarToSide: 0, pointed: "right" },
        answer: "sideSeam",
        alterations: [end(5, id)],
      },
      {
        kind: "takeTrialAnswer",
        trial: "t",
        answer: { causes: [], because: [], alterations: [] },
        alterations: [end(5, id)],
      },
    ];
    const work = applyCommand(testWork, { kind: "beginTrial", id: "t", day: "2026-11-20" });
    expect(bringing(fits).map((command) => isKept(command, work))).toEqual([true, true, true, true, true]);
    expect(bringing(long).map((command) => isKept(command, work))).toEqual([false, false, false, false, false]);
  });

  it("readings stand at a whole place", () => {
    const read = (place: number): Command => ({ kind: "setReading", measure: "bustGirth", at: place, value: 900 });
    expect([0, 1, -1, 0.5].map((place) => isKept(read(place)))).toEqual([true, true, false, false]);
  });
});

describe("parts of a work", () => {
  it("own outlines come and go with the pattern's other parts as they were", () => {
    const own: OwnPattern = {
      file: "a.svg",
      drawing: { format: "svg", unit: null, lines: [], points: [], writings: [], hiddenLayers: [] },
      pieces: [],
    };
    const had = applyCommand(testWork, { kind: "setOwnPattern", own });
    expect(had).toEqual({ ...testWork, pattern: { ...testWork.pattern, own } });
    expect(applyCommand(had, { kind: "setOwnPattern", own: null })).toStrictEqual(testWork);
  });

  it("lengths of the tissue are kept by piece, and go with the last of them", () => {
    const set = (piece: "front" | "back", value: number | null): Command => ({
      kind: "setTissueLength",
      piece,
      length: "waistWidth",
      size: "12",
      value,
    });
    const both = run(testWork, set("front", 250), set("back", 230));
    expect(both.pattern.tissue).toEqual({
      size: "12",
      pieces: { front: { waistWidth: 250 }, back: { waistWidth: 230 } },
    });
    expect(run(both, { kind: "setTissueSize", size: "14" }).pattern.tissue?.size).toBe("14");
    expect(run(both, set("front", null)).pattern.tissue).toEqual({ size: "12", pieces: { back: { waistWidth: 230 } } });
    expect(run(both, set("front", null), set("back", null))).toStrictEqual(testWork);
    expect(isKept({ kind: "setTissueSize", size: "14" })).toBe(false);
    expect(isKept(set("front", null))).toBe(false);
  });

  it("parts of the dress come and go one by one", () => {
    const zip = run(testWork, { kind: "setDress", part: "zip", value: "lapped" });
    expect(zip).toEqual({ ...testWork, dress: { zip: "lapped" } });
    const two = run(zip, { kind: "setDress", part: "opacity", value: "sheer" });
    expect(two.dress).toEqual({ zip: "lapped", opacity: "sheer" });
    expect(run(two, { kind: "setDress", part: "zip", value: null }).dress).toEqual({ opacity: "sheer" });
    expect(run(zip, { kind: "setDress", part: "zip", value: null })).toStrictEqual(testWork);
    expect(isKept({ kind: "setDress", part: "zip", value: null })).toBe(false);
  });

  it("what she trusts goes one by one, and with the last of it", () => {
    const two = run(
      testWork,
      { kind: "setTrusted", measure: "bustGirth", value: 905 },
      { kind: "setTrusted", measure: "waistGirth", value: 752 },
    );
    expect(two.trusted).toEqual({ bustGirth: 905, waistGirth: 752 });
    const one = run(two, { kind: "setTrusted", measure: "bustGirth", value: null });
    expect(one.trusted).toEqual({ waistGirth: 752 });
    expect(run(one, { kind: "setTrusted", measure: "waistGirth", value: null })).toStrictEqual(testWork);
  });

  it("what she leaves out is kept in the order of the alphabet, each once, within limits", () => {
    const leave = (key: string, isLeft: boolean): Command => ({ kind: "leaveStanding", key, isLeft });
    const two = run(testWork, leave("swayBack", true), leave("roundBack", true));
    expect(two.standingLeft).toEqual(["roundBack", "swayBack"]);
    expect(applyCommand(two, leave("swayBack", true))).toBe(two);
    expect(run(two, leave("roundBack", false)).standingLeft).toEqual(["swayBack"]);
    expect(run(two, leave("roundBack", false), leave("swayBack", false))).toStrictEqual(testWork);
    expect(isKept(leave("swayBack", false))).toBe(false);
    expect([LIMITS.text, LIMITS.text + 1].map((long) => isKept(leave("x".repeat(long), true)))).toEqual([true, false]);
    const full: Work = { ...testWork, standingLeft: Array.from({ length: LIMITS.alterations }, (_, n) => `${n}`) };
    expect(isKept(leave("one more", true), full)).toBe(false);
    expect(isKept(leave("0", false), full)).toBe(true);
  });

  it("the day of a set is taken back by itself", () => {
    const dated = run(testWork, { kind: "newTape", taken: "2026-11-25" });
    const [set, before] = run(dated, { kind: "setTaken", set: 0, taken: null }).tapes;
    expect([set, before]).toEqual([{ readings: {} }, testWork.tapes[0]]);
    expect(run(dated, { kind: "removeTape", set: 1 }).tapes).toEqual([{ taken: "2026-11-25", readings: {} }]);
  });

  it("there are no more sets than a work holds", () => {
    const full: Work = {
      ...testWork,
      tapes: [{ readings: {} }, ...Array.from({ length: LIMITS.tapes - 1 }, () => ({ readings: {} }))],
    };
    expect(isKept({ kind: "newTape", taken: "2026-11-25" }, full)).toBe(false);
  });
});

describe("a trial", () => {
  const begun = applyCommand(testWork, { kind: "beginTrial", id: "t", day: "2026-11-20" });
  const trialOf = (work: Work): Trial | undefined => work.trials?.[0];
  const after = (...commands: readonly Command[]) => trialOf(run(begun, ...commands));
  const write = (observation: Observation): Command => ({ kind: "putObservation", trial: "t", observation });

  it("has a day, words of a length, and ticks, each for itself", () => {
    expect(after({ kind: "setTrialDay", trial: "t", day: "2026-11-21" })?.day).toBe("2026-11-21");
    expect(after({ kind: "setTrialDay", trial: "t", day: null })).not.toHaveProperty("day");
    const text = (long: number): Command => ({ kind: "setTrialText", trial: "t", of: "bra", text: "x".repeat(long) });
    expect(after(text(LIMITS.text + 1))?.bra).toHaveLength(LIMITS.text);
    const checks = after(
      { kind: "setTrialCheck", trial: "t", check: "hemLevel", is: false },
      { kind: "setTrialCheck", trial: "t", check: "canSit", is: true },
      { kind: "setTrialCheck", trial: "t", check: "hemLevel", is: null },
    );
    expect(checks?.checks).toEqual({ canSit: true });
    const lengths = after(
      { kind: "setToileLength", trial: "t", length: "waistGirth", value: 0 },
      { kind: "setToileLength", trial: "t", length: "shoulder", value: 120 },
      { kind: "setToileLength", trial: "t", length: "shoulder", value: null },
    );
    expect(lengths?.measured).toEqual({ waistGirth: 0 });
    const long = (id: string): Command => ({ kind: "beginTrial", id, day: "2026-11-20" });
    expect([LIMITS.text, LIMITS.text + 1].map((n) => isKept(long("x".repeat(n))))).toEqual([true, false]);
  });

  it("has lines of amounts that cloth can have, marks either way, and words of a length", () => {
    const most = LIMITS.seenAmount;
    const isPut = (line: Partial<Observation>): boolean => isKept(write({ id: "a", ...line }), begun);
    expect([
      isPut({ amount: 0 }),
      isPut({ amount: most }),
      isPut({ amount: -0.1 }),
      isPut({ amount: most + 1 }),
    ]).toEqual([true, true, false, false]);
    const mark = (out: number, down: number): boolean => isPut({ mark: { out, down } });
    expect([mark(most, -most), mark(-most, most), mark(most + 1, 0), mark(0, most + 1)]).toEqual([
      true,
      true,
      false,
      false,
    ]);
    expect([mark(-most - 1, 0), mark(0, -most - 1)]).toEqual([false, false]);
    expect([LIMITS.text, LIMITS.text + 1].map((n) => isPut({ id: "x".repeat(n) }))).toEqual([true, false]);
    const said = after(write({ id: "a", changed: "x".repeat(LIMITS.text + 1) }))?.observations[0];
    expect(said?.changed).toBe("x".repeat(LIMITS.text));
    const full = run(begun, ...Array.from({ length: LIMITS.observations }, (_, n) => write({ id: `${n}` })));
    expect(trialOf(full)?.observations).toHaveLength(LIMITS.observations);
    expect(isKept(write({ id: "more" }), full)).toBe(false);
    expect(isKept(write({ id: "7", amount: 4 }), full)).toBe(true);
  });

  it("sets picks with an answer, takes them back, and leaves those it says nothing of", () => {
    const take = (more: object): Command => ({
      kind: "takeTrialAnswer",
      trial: "t",
      answer: { causes: [], because: [], alterations: [] },
      alterations: [],
      ...more,
    });
    const picks = { baseSize: "12", cup: "C", bustAlteration: 12, halfCups: { left: "D" } };
    expect(run(begun, take(picks)).picks).toEqual(picks);
    const work: Work = { ...begun, picks };
    expect(run(work, take({})).picks).toEqual(picks);
    expect(run(work, take({ cup: null, halfCups: null })).picks).toEqual({ baseSize: "12", bustAlteration: 12 });
    expect(run(work, take({ baseSize: null, bustAlteration: null })).picks).toEqual({
      cup: "C",
      halfCups: { left: "D" },
    });
  });

  it("that is kept is a base, or none again", () => {
    const kept = run(
      begun,
      { kind: "setVerdict", trial: "t", verdict: "keep" },
      { kind: "setBase", trial: "t", isBase: true },
    );
    expect(trialOf(run(kept, { kind: "setBase", trial: "t", isBase: false }))).toEqual({
      ...trialOf(begun),
      verdict: "keep",
    });
    expect(trialOf(run(kept, { kind: "setVerdict", trial: "t", verdict: null }))).toEqual(trialOf(begun));
  });

  it("brings back the upper edge it was sewn with, and leaves what hangs below", () => {
    const sewn = run(
      testWork,
      { kind: "setDress", part: "neckline", value: { shape: "vee" } },
      { kind: "beginTrial", id: "t", day: "2026-11-20" },
      { kind: "setDress", part: "neckline", value: { shape: "scoop" } },
      { kind: "setDress", part: "zip", value: "lapped" },
    );
    expect(trialOf(sewn)?.sewn.dress).toEqual({ neckline: { shape: "vee" } });
    expect(run(sewn, { kind: "returnToTrial", trial: "t" }).dress).toEqual({
      neckline: { shape: "vee" },
      zip: "lapped",
    });
    // Nothing is there that was not.
    const other = run(begun, { kind: "setPick", picks: { cup: "D" } });
    expect(run(other, { kind: "returnToTrial", trial: "t" })).toStrictEqual(begun);
    const bare = run(begun, { kind: "setDress", part: "neckline", value: { shape: "scoop" } });
    expect(run(bare, { kind: "returnToTrial", trial: "t" })).not.toHaveProperty("dress");
  });
});
