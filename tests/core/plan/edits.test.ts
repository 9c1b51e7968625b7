/** Edits of a work a move at a time, worked through by hand: both sides of each limit, what comes, what goes, what stays. */
import { describe, expect, it } from "vitest";
import type { Alteration, DartRedraw, Half } from "../../../src/core/decisions/alteration";
import { FIT_NAMES, type FitName } from "../../../src/core/decisions/fitNames";
import { LIMITS } from "../../../src/core/decisions/limits";
import type { OwnPattern, OwnPieceSaid } from "../../../src/core/decisions/ownPattern";
import type { Work } from "../../../src/core/decisions/work";
import { applyCommand, pickOn, relabelled } from "../../../src/core/plan/commands";
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
