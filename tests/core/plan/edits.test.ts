/** Edits of a work a move at a time, worked through by hand: both sides of each limit, what comes, what goes, what stays. */
import { describe, expect, it } from "vitest";
import type { Alteration, DartRedraw, Half } from "../../../src/core/decisions/alteration";
import { FIT_NAMES, type FitName } from "../../../src/core/decisions/fitNames";
import { LIMITS } from "../../../src/core/decisions/limits";
import type { OwnPattern, OwnPieceSaid } from "../../../src/core/decisions/ownPattern";
import type { Observation, Trial } from "../../../src/core/decisions/trial";
import type { Work } from "../../../src/core/decisions/work";
import { applyCommand, pickOn, relabelled, type Command } from "../../../src/core/plan/commands";
import { alterationId, putOrRemove, sharesOf, snapStep, snapToStep } from "../../../src/core/plan/dartEdit";
import { dartHalvesCommands, dartOn } from "../../../src/core/plan/dartHalves";
import { fitsByPhase, halvesAsked } from "../../../src/core/plan/fitEdit";
import { sharesWith, wholeShares } from "../../../src/core/plan/giveBackShares";
import { keepHalf, tryOnOther } from "../../../src/core/plan/halfEdit";
import { outOfTradeOrder } from "../../../src/core/plan/outOfTradeOrder";
import {
  isOther,
  named,
  saidOfPiece,
  withAllowance,
  withBustPoint,
  withCorner,
  withCup,
  withDart,
  withInUse,
  withJoin,
  withKnown,
  withLabel,
} from "../../../src/core/plan/ownEdit";
import { idOnHalf, isNothing, put, putOrTakeOut, split, takeOut } from "../../../src/core/plan/putAlteration";
import { planOf, ref, testWork, withAlterations } from "../../support/works";

const dart = ref("front", "waistDart");
const side = ref("front", "sideDart");
const at = (half?: Half): { readonly half?: Half } => (half === undefined ? {} : { half });
const fit = (name: FitName, amount: number, half?: Half, id: string = name): Alteration => ({
  kind: "fit",
  id,
  fit: name,
  amount,
  ...at(half),
});
const end = (shorten: number, half?: Half, id = "end"): DartRedraw => ({
  kind: "dartEnd",
  id,
  dart,
  shorten,
  across: 0,
  hold: "mouth",
  giveBack: {},
  ...at(half),
});
const endAcross = (shorten: number, across: number): Alteration => ({
  kind: "dartEnd",
  id: "a",
  dart,
  shorten,
  across,
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
      { kind: "putAlteration", alteration: end(5, undefined, id) },
      { kind: "replaceRedraws", dart, alterations: [end(5, undefined, id)] },
      { kind: "keepHalf", alterations: [end(5, undefined, id)], picks: {} },
      {
        kind: "takeAnswer",
        dart,
        half: "left",
        seen: { pastBustPoint: 0, tooFarToSide: 0, pointed: "right" },
        answer: "sideSeam",
        alterations: [end(5, undefined, id)],
      },
      {
        kind: "takeTrialAnswer",
        trial: "t",
        answer: { causes: [], because: [], alterations: [] },
        alterations: [end(5, undefined, id)],
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

describe("the order of the ledger", () => {
  const [a, b, c] = [fit("swayBack", 1), fit("roundBack", 2), fit("chestWidth", 3)];
  const work = withAlterations(a, b, c);
  const moved = (id: string, before: string | null) =>
    applyCommand(work, { kind: "moveAlteration", id, before }).alterations;

  it("is changed by putting one before another, or last; what is not there changes nothing", () => {
    expect(moved("chestWidth", "swayBack")).toEqual([c, a, b]);
    expect(moved("swayBack", "chestWidth")).toEqual([b, a, c]);
    expect(moved("swayBack", null)).toEqual([b, c, a]);
    expect(moved("swayBack", "none")).toEqual([b, c, a]);
    expect(moved("none", "swayBack")).toBe(work.alterations);
    expect(moved("swayBack", "swayBack")).toBe(work.alterations);
  });

  it("is broken on a half only by what is made on that half", () => {
    const [edge, length] = [fit("shoulderSlope", 3, "left"), fit("swayBack", 3, "right")];
    expect([...outOfTradeOrder([edge, length])]).toEqual([]);
    expect([...outOfTradeOrder([edge, fit("swayBack", 3)])]).toEqual([["shoulderSlope", "length"]]);
    expect([...outOfTradeOrder([fit("shoulderSlope", 3), fit("chestWidth", 4, "left"), length])]).toEqual([
      ["shoulderSlope", "length"],
    ]);
    expect([...outOfTradeOrder([c, edge, a])]).toEqual([
      ["chestWidth", "length"],
      ["shoulderSlope", "length"],
    ]);
  });
});

describe("two halves made of one", () => {
  it("are alike, the one on the half asked for under an id of its own", () => {
    const one = fit("chestWidth", 12);
    expect(split([one], "chestWidth", "left")).toEqual([
      fit("chestWidth", 6, "left", "chestWidth-left"),
      fit("chestWidth", 6, "right"),
    ]);
    expect(split([one], "chestWidth", "right")).toEqual([
      fit("chestWidth", 6, "left"),
      fit("chestWidth", 6, "right", "chestWidth-right"),
    ]);
    const ledger = [fit("swayBack", 4, "left")];
    expect(split(ledger, "swayBack", "left")).toBe(ledger);
    expect(split(ledger, "none", "left")).toBe(ledger);
    const older = [fit("swayBack", 4), fit("swayBack", 2, "left", "more")];
    expect(split(older, "swayBack", "left")).toBe(older);
    const full = [one, ...Array.from({ length: LIMITS.alterations - 1 }, (_, n) => fit("swayBack", n, "left", `${n}`))];
    expect(split(full, "chestWidth", "left")).toBe(full);
    expect(tryOnOther(withAlterations(one), "chestWidth", "left")).toEqual([
      { kind: "splitAlteration", id: "chestWidth", half: "left" },
    ]);
    expect(tryOnOther(withAlterations(...ledger), "swayBack", "left")).toEqual([]);
    expect(tryOnOther(testWork, "swayBack", "left")).toEqual([]);
  });

  it("are one again where they come out alike and nothing between them is in the way", () => {
    const [left, right] = [fit("swayBack", 4, "left", "sway-left"), fit("swayBack", 6, "right", "sway-right")];
    const same = { ...right, ...fit("swayBack", 4, "right", "sway-right") };
    expect(put([left, right], same)).toEqual([fit("swayBack", 4, undefined, "sway")]);
    const between = fit("chestWidth", 3);
    expect(put([left, between, right], same)).toEqual([left, between, same]);
    const onLeft = fit("chestWidth", 3, "left");
    // The one on the right is moved to before what is made on the left alone.
    expect(put([left, onLeft, right], same)).toEqual([fit("swayBack", 4, undefined, "sway"), onLeft]);
    const onRight = fit("chestWidth", 3, "right");
    expect(put([left, onRight, right], same)).toEqual([onRight, fit("swayBack", 4, undefined, "sway")]);
  });

  it("are taken out one by one: what is for both stays on the other half", () => {
    const both = [fit("chestWidth", 12)];
    expect(takeOut(both, "chestWidth")).toEqual([]);
    expect(takeOut(both, "chestWidth", "left")).toEqual([fit("chestWidth", 6, "right")]);
    const left = [fit("swayBack", 4, "left")];
    expect(takeOut(left, "swayBack", "right")).toBe(left);
    expect(takeOut(left, "swayBack", "left")).toEqual([]);
    const older = [fit("chestWidth", 12), fit("chestWidth", 5, "right", "more")];
    expect(takeOut(older, "chestWidth", "left")).toEqual([fit("chestWidth", 11, "right", "more")]);
    expect(putOrTakeOut(both, fit("chestWidth", 0))).toEqual([]);
    expect(putOrTakeOut(both, fit("chestWidth", 0, "left"))).toEqual([fit("chestWidth", 6, "right")]);
    expect(putOrTakeOut([], fit("chestWidth", 2))).toEqual([fit("chestWidth", 2)]);
  });

  it("of an older work stay as they are where the half that had none gets one", () => {
    const older = [fit("swayBack", 5), fit("swayBack", 3, "left", "more")];
    const right = fit("swayBack", 7, "right", "own");
    expect(put(older, right)).toEqual([...older, right]);
  });

  it("have ids by their half", () => {
    expect([idOnHalf("a-left", undefined), idOnHalf("a-left", "right"), idOnHalf("a", "left")]).toEqual([
      "a",
      "a-right",
      "a-left",
    ]);
    expect(alterationId("dartEnd", dart)).toBe("dartEnd-front-waistDart");
    expect(alterationId("dartEnd", dart, "right")).toBe("dartEnd-front-waistDart-right");
    // Another thing under the same id gets one that is free.
    const [first, ...others] = put([fit("swayBack", 3, undefined, "x"), fit("roundBack", 3, undefined, "x-2")], {
      ...fit("chestWidth", 3, undefined, "x"),
    }).map(({ id }) => id);
    expect(new Set([first, ...others]).size).toBe(3);
  });

  it("are nothing where all amounts are", () => {
    const nothing: readonly Alteration[] = [
      end(0),
      { kind: "dartMouth", id: "m", dart, inner: 0, outer: 0, giveBack: {} },
      { kind: "dartPlace", id: "p", dart, by: 0, how: "redraw", giveBack: {} },
      { kind: "dartPivot", id: "t", dart, to: "side", share: 0 },
      { kind: "dartLegs", id: "l", dart, bow: 0 },
      fit("swayBack", 0),
    ];
    expect(nothing.map(isNothing)).toEqual(nothing.map(() => true));
    const something: readonly Alteration[] = [
      end(1),
      endAcross(0, 1),
      { kind: "dartMouth", id: "m", dart, inner: 1, outer: 0, giveBack: {} },
      { kind: "dartMouth", id: "m", dart, inner: 0, outer: 1, giveBack: {} },
      { kind: "dartPlace", id: "p", dart, by: 1, how: "redraw", giveBack: {} },
      { kind: "dartPivot", id: "t", dart, to: "side", share: 0.1 },
      { kind: "dartLegs", id: "l", dart, bow: -1 },
      fit("swayBack", -1),
      { kind: "dartSplit", id: "s", dart, into: 2 },
      { kind: "dartGather", id: "g", dart },
      { kind: "dartSeam", id: "w", dart },
    ];
    expect(something.map(isNothing)).toEqual(something.map(() => false));
    expect(putOrRemove(end(0, "left", "e"))).toEqual({ kind: "removeAlteration", id: "e", half: "left" });
    expect(putOrRemove(end(0))).toEqual({ kind: "removeAlteration", id: "end" });
    expect(putOrRemove(end(2))).toEqual({ kind: "putAlteration", alteration: end(2) });
  });
});

describe("one half kept for both", () => {
  const pair = (left: Alteration, right: Alteration): Work =>
    withAlterations({ ...left, half: "left", id: "a-left" }, { ...right, half: "right", id: "a-right" });
  const mean = (left: Alteration, right: Alteration) => {
    const kept = keepHalf(pair(left, right), "mean");
    return kept.ok && kept.value.kind === "keepHalf" ? kept.value.alterations : kept;
  };

  it("has the mean of every amount of a thing, all else being alike", () => {
    const mouth = (inner: number, outer: number): Alteration => ({
      kind: "dartMouth",
      id: "a",
      dart,
      inner,
      outer,
      giveBack: {},
    });
    expect(mean(mouth(2, -4), mouth(6, 0))).toEqual([mouth(4, -2)]);
    const place = (by: number): Alteration => ({ kind: "dartPlace", id: "a", dart, by, how: "redraw", giveBack: {} });
    expect(mean(place(3), place(6))).toEqual([place(4.5)]);
    const pivot = (share: number): Alteration => ({ kind: "dartPivot", id: "a", dart: side, to: "shoulder", share });
    expect(mean(pivot(1), pivot(0.5))).toEqual([pivot(0.75)]);
    const legs = (bow: number): Alteration => ({ kind: "dartLegs", id: "a", dart, bow });
    expect(mean(legs(2), legs(4))).toEqual([legs(3)]);
    const across = endAcross(4, 6);
    expect(mean(end(8), across)).toEqual([endAcross(6, 3)]);
    // All round: 6 and 10 on the halves are 16 of the whole.
    expect(mean(fit("sideSeamWaist", 6), fit("sideSeamWaist", 10))).toEqual([fit("sideSeamWaist", 16, undefined, "a")]);
    const gather: Alteration = { kind: "dartGather", id: "a", dart };
    expect(mean(gather, gather)).toEqual([gather]);
    const two: Alteration = { kind: "dartSplit", id: "a", dart, into: 2 };
    expect(mean(two, { ...two, into: 3 })).toMatchObject({ failure: { code: "keep/another-way" } });
  });

  it("goes with the picks where there is no cup of one half, all under one id", () => {
    const work: Work = { ...pair(fit("swayBack", 4), fit("swayBack", 9)), picks: { baseSize: "12" } };
    expect(keepHalf(work, "right")).toEqual({
      ok: true,
      value: { kind: "keepHalf", alterations: [fit("swayBack", 9, undefined, "a")], picks: { baseSize: "12" } },
    });
    expect(keepHalf(testWork, "left")).toEqual({ ok: false, failure: { code: "keep/halves-alike" } });
    // A name that another thing has stays with it, and what is for both keeps its own, whatever it says.
    const names = (...alterations: readonly Alteration[]) => {
      const kept = keepHalf(withAlterations(...alterations), "left");
      return kept.ok && kept.value.kind === "keepHalf" ? kept.value.alterations.map(({ id }) => id) : [];
    };
    expect(names(fit("swayBack", 4, "left", "a-left"), fit("roundBack", 5, undefined, "a"))).toEqual(["a-left", "a"]);
    expect(names(fit("swayBack", 4, "left", "a-left"), fit("roundBack", 5, undefined, "b-left"))).toEqual([
      "a",
      "b-left",
    ]);
  });

  it("tells cups that are unlike also where there is no plan yet", () => {
    const bodiless = (picks: Work["picks"]): Work => ({ ...testWork, tapes: [{ readings: {} }], picks });
    const unlike = (left: string, right: string | null) => ({
      ok: false,
      failure: { code: "keep/cups-unlike", left, right },
    });
    expect(keepHalf(bodiless({ halfCups: { left: "D" } }), "mean")).toEqual(unlike("D", null));
    expect(keepHalf(bodiless({ cup: "B", halfCups: { left: "D" } }), "mean")).toEqual(unlike("D", "B"));
    expect(keepHalf(bodiless({ halfCups: { left: "D" } }), "left")).toEqual({
      ok: true,
      value: { kind: "keepHalf", alterations: [], picks: { cup: "D" } },
    });
  });
});

describe("a dart's halves", () => {
  const plan = planOf(testWork);

  it("a change is for both, unless asked for one, apart already, or of a dart of one half", () => {
    expect(dartOn(testWork, plan, dart, "left", false)).toBeUndefined();
    expect(dartOn(testWork, plan, dart, "right", true)).toBe("right");
    expect(dartOn(withAlterations(end(4, "left")), plan, dart, "right", false)).toBe("right");
    expect(dartOn(withAlterations(end(4, "left")), plan, side, "right", false)).toBeUndefined();
    expect(dartOn(withAlterations(fit("swayBack", 3, "left")), plan, dart, "left", false)).toBeUndefined();
    const pivoted = withAlterations({
      kind: "dartPivot",
      id: "p",
      dart: side,
      to: "shoulder",
      share: 1,
      half: "left",
    });
    const uneven = planOf(pivoted);
    expect(dartOn(pivoted, uneven, ref("front", "shoulderDart"), "left", false)).toBe("left");
    expect(dartOn(pivoted, uneven, ref("front", "shoulderDart"), "right", false)).toBeUndefined();
    expect(dartOn(pivoted, uneven, dart, "left", false)).toBeUndefined();
  });

  it("asked for both, what the half looked at has takes the place of what the other has", () => {
    const work = withAlterations(end(4, "left", "l"), end(8, "right", "r"), fit("swayBack", 3, "left"));
    expect(dartHalvesCommands(work, dart, "left", "both")).toEqual([
      { kind: "removeAlteration", id: "r" },
      { kind: "putAlteration", alteration: end(4, undefined, "l") },
    ]);
    expect(dartHalvesCommands(work, dart, "left", "right")).toEqual([]);
    expect(dartHalvesCommands(withAlterations(end(4)), dart, "left", "both")).toEqual([]);
  });

  it("begins with the shares of another redraw that has any, on that half", () => {
    const given = { ...end(4, "left"), giveBack: { centreSeam: 1 } };
    const work = withAlterations(end(3, "right"), given);
    expect(sharesOf(work, dart)).toEqual({ centreSeam: 1 });
    expect(sharesOf(work, dart, "left")).toEqual({ centreSeam: 1 });
    expect(sharesOf(work, dart, "right")).toEqual({});
    expect(sharesOf(work, side)).toEqual({});
    // The first that has any, of those on that half.
    const both = withAlterations(end(3), {
      kind: "dartMouth",
      id: "m",
      dart,
      inner: 1,
      outer: 1,
      giveBack: { sideSeam: 1 },
    });
    expect([sharesOf(both, dart), sharesOf(both, dart, "right")]).toEqual([{ sideSeam: 1 }, { sideSeam: 1 }]);
  });
});

describe("steps of a drag", () => {
  it("are whole millimetres, or sixteenths of an inch, and never minus nothing", () => {
    expect([snapStep("cm"), snapStep("in")]).toEqual([1, 25.4 / 16]);
    expect([snapToStep(3.4, "cm"), snapToStep(3.6, "cm"), snapToStep(-3.6, "cm")]).toEqual([3, 4, -4]);
    // Two sixteenths are 3.175 mm.
    expect(snapToStep(3.4, "in")).toBe(3.175);
    expect(Object.is(snapToStep(-0.2, "cm"), 0)).toBe(true);
  });
});

describe("fits as they are offered", () => {
  it("stand by phases, each phase with any of them, and none twice", () => {
    const phases = fitsByPhase();
    expect(phases.map(({ phase }) => phase)).toEqual(["length", "bust", "widths", "edges"]);
    expect(phases.flatMap(({ fits }) => fits).toSorted()).toEqual([...FIT_NAMES].toSorted());
    expect(fitsByPhase(["shoulderSlope", "swayBack"])).toEqual([
      { phase: "length", fits: ["swayBack"] },
      { phase: "edges", fits: ["shoulderSlope"] },
    ]);
    expect(
      [undefined, "left" as const].map((half) =>
        halvesAsked({ kind: "fit", id: "", fit: "swayBack", amount: 1, ...at(half) }),
      ),
    ).toEqual(["both", "left"]);
  });
});

describe("shares", () => {
  it("are told by what they are of their own sum, and kept whole when one is set", () => {
    expect(wholeShares(["sideSeam", "centreSeam"], { sideSeam: 0.5, centreSeam: 1.5 })).toEqual({
      sideSeam: 25,
      centreSeam: 75,
    });
    expect(wholeShares(["sideSeam"], { centreSeam: 1 })).toEqual({ sideSeam: 100 });
    // 1 is left for 30 and 60: a third of it rounds to nothing, the last takes it.
    const shares = { sideSeam: 0.1, centreSeam: 0.3, otherDart: 0.6 };
    expect(sharesWith(["sideSeam", "centreSeam", "otherDart"], shares, "sideSeam", 99)).toEqual({
      sideSeam: 0.99,
      centreSeam: 0,
      otherDart: 0.01,
    });
    expect(sharesWith(["sideSeam"], {}, "sideSeam", 40)).toEqual({ sideSeam: 0.4 });
  });
});

describe("sizes renamed", () => {
  const rows = (...labels: readonly string[]) =>
    labels.map((label, n) => ({ label, bust: 800 + n, waist: 600 + n, hip: 900 + n }));
  const lengths = { acrossBack: { all: 340, bySize: { b: 350 } } };

  it("take their figures along where one alone has another label", () => {
    const to = (...labels: readonly string[]) => relabelled(lengths, rows("a", "b", "c"), rows(...labels));
    expect(to("a", "m", "c")).toEqual({ acrossBack: { all: 340, bySize: { m: 350 } } });
    expect(to("x", "b", "c")).toBe(lengths);
    expect(to("a", "b", "c")).toBe(lengths);
    expect(to("x", "m", "c")).toBe(lengths);
    expect(to("a", "m")).toBe(lengths);
  });

  it("leave a pick between the same two lines, wherever they stand", () => {
    const on = (size: number | undefined, ...labels: readonly string[]) =>
      pickOn("hip", size, rows("a", "b", "c"), rows(...labels));
    expect(on(undefined, "a", "b", "c")).toEqual({});
    expect(on(1.5, "a", "b", "x")).toEqual({ hip: 1.5 });
    expect(on(1.5, "z", "a", "b", "c")).toEqual({ hip: 2.5 });
    // Beyond the last line it is told from the last two, below the first from the first two.
    expect(on(2.4, "z", "a", "b", "c")).toEqual({ hip: expect.closeTo(3.4, 9) });
    expect(on(-0.5, "z", "a", "b", "c")).toEqual({ hip: 0.5 });
    expect(on(1.5, "c", "b", "a")).toEqual({});
    expect(on(0.5, "b", "c", "d", "e")).toEqual({});
    expect(on(0.5, "a", "x", "b", "c")).toEqual({});
  });
});

describe("what is said of a file", () => {
  const own: OwnPattern = {
    file: "a.svg",
    drawing: { format: "svg", unit: null, lines: [], points: [], writings: [], hiddenLayers: [] },
    pieces: [{ id: "p", name: "front" }],
  };
  const piece: OwnPieceSaid = { id: "p", name: "front" };
  const here = { x: 1, y: 2 };

  it("comes and goes by itself, within limits", () => {
    expect(withCup(withCup(own, "D"), null)).toStrictEqual(own);
    expect(withCup(own, "D")).toEqual({ ...own, cup: "D" });
    expect(withInUse(own, true)).toEqual({ ...own, inUse: true });
    expect(withInUse(withInUse(own, true), false)).toStrictEqual(own);
    expect(withJoin(own, LIMITS.length + 5)).toEqual({ ...own, joinWithin: LIMITS.length });
    const known = (length: number) => withKnown(own, { from: here, to: here, length }).known?.length;
    expect([known(0.1), known(LIMITS.length), known(LIMITS.length + 1), known(-1)]).toEqual([
      0.1,
      LIMITS.length,
      undefined,
      undefined,
    ]);
    expect(saidOfPiece(own, "p")).toBe(own.pieces[0]);
  });

  it("of a piece is its name, label, allowances and bust point", () => {
    expect(named(piece, null)).toEqual({ id: "p", name: null });
    expect(withLabel(piece, "x".repeat(LIMITS.text + 1)).label).toBe("x".repeat(LIMITS.text));
    expect(withLabel(withLabel(piece, "Collar"), null)).toStrictEqual(piece);
    expect(withAllowance(piece, ["side"], LIMITS.allowance + 1).allowances).toEqual({ side: LIMITS.allowance });
    const marked = withBustPoint(piece, { size: "12", at: here });
    expect(marked).toEqual({ ...piece, bustPoint: { size: "12", at: here } });
    expect(withBustPoint(marked, null)).toStrictEqual(piece);
    expect([isOther("other3"), isOther("front")]).toEqual([true, false]);
  });

  it("stops at so many corners and darts, and still changes those it has", () => {
    const corner = (size: string) => ({ name: "underarm", size, at: here }) as const;
    const full: OwnPieceSaid = {
      ...piece,
      corners: Array.from({ length: LIMITS.fileCorners }, (_, n) => corner(`${n}`)),
    };
    expect(withCorner(full, corner("more"))).toBe(full);
    expect(withCorner(full, { ...corner("7"), at: null }).corners?.[7]?.at).toBeNull();
    const dartSaid = { name: "waistDart", size: "12", inner: here, outer: here, apex: here } as const;
    const darts: OwnPieceSaid = {
      ...piece,
      darts: Array.from({ length: LIMITS.fileCorners }, () => ({ ...dartSaid, name: "sideDart" as const })),
    };
    expect(withDart(darts, dartSaid)).toBe(darts);
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
