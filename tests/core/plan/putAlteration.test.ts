/** Of one thing there is one alteration for both halves, or one for each at the most. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  HALVES,
  isClash,
  isMadeOn,
  isSameThing,
  onHalves,
  type Alteration,
  type DartEndAlteration,
  type FitAlteration,
  type Half,
} from "../../../src/core/decisions/alteration";
import { FIT_NAMES, WHOLE_FITS } from "../../../src/core/decisions/fitNames";
import { LIMITS } from "../../../src/core/decisions/limits";
import { answeredOf, redrawsOn, sewnWith, standingAnswer } from "../../../src/core/decisions/seenAtDart";
import type { Work } from "../../../src/core/decisions/work";
import { fitOf } from "../../../src/core/alterations/fit/index";
import { applyCommand, type Command } from "../../../src/core/plan/commands";
import { endOf, moverOf, mouthOf, placeOf, putOrRemove, sharesOf } from "../../../src/core/plan/dartEdit";
import { keepHalf, tryOnOther } from "../../../src/core/plan/halfEdit";
import { outOfTradeOrder } from "../../../src/core/plan/outOfTradeOrder";
import { answerFor } from "../../../src/core/plan/pointedDartOf";
import { put, putOrTakeOut, takeOut } from "../../../src/core/plan/putAlteration";
import { settingOf } from "../../../src/core/plan/setDart";
import { piecePoint } from "../../../src/core/geometry/point";
import { isSameDart } from "../../../src/core/pattern/piece";
import { anyAlteration, anyHalf } from "../../support/arbitraryWork";
import { planOf, ref, testWork } from "../../support/works";

const SIDE = ref("front", "sideDart");
const WAIST = ref("front", "waistDart");

const end = (shorten: number, half?: Half, id = `end${half === undefined ? "" : `-${half}`}`): DartEndAlteration => ({
  kind: "dartEnd",
  id,
  dart: SIDE,
  shorten,
  across: 0,
  hold: "mouth",
  giveBack: {},
  ...(half === undefined ? {} : { half }),
});
const fit = (name: FitAlteration["fit"], amount: number, half?: Half): FitAlteration => ({
  kind: "fit",
  id: `fit-${name}${half === undefined ? "" : `-${half}`}`,
  fit: name,
  amount,
  ...(half === undefined ? {} : { half }),
});
const before = fit("swayBack", 5);
const after = fit("armholeDepth", 3);
const workWith = (...alterations: readonly Alteration[]): Work => ({ ...testWork, alterations });
const run = (work: Work, ...commands: readonly Command[]): readonly Alteration[] =>
  commands.reduce(applyCommand, work).alterations;

describe("putting an alteration", () => {
  it.each([
    ["on the left, where one is for both", "left", [end(9, "left", "end-left"), { ...end(4), half: "right" }]],
    ["on the right, where one is for both", "right", [{ ...end(4), half: "left" }, end(9, "right", "end-right")]],
  ] as const)("%s, leaves that on the other half, both in its place", (_what, half, pair) => {
    expect(put([before, end(4), after], end(9, half, "end"))).toEqual([before, ...pair, after]);
    expect(put([before, end(4), after], end(9, half))).toEqual([before, ...pair, after]);
  });

  it("for both takes the place of those for one half", () => {
    expect(put([before, end(4, "left"), after, end(6, "right")], end(9))).toEqual([before, end(9), after]);
    expect(put([before, end(6, "right"), after], end(9))).toEqual([before, end(9), after]);
  });

  it("on a half replaces that half's, beside the other's", () => {
    expect(put([end(4, "left"), end(6, "right")], end(9, "left"))).toEqual([end(9, "left"), end(6, "right")]);
    expect(put([before, end(6, "right"), after], end(9, "left"))).toEqual([
      before,
      end(9, "left"),
      end(6, "right"),
      after,
    ]);
  });

  it("that comes out as on the other half is one for both again, under the shorter name", () => {
    expect(put([before, end(4, "left"), end(6, "right"), after], end(4, "right"))).toEqual([before, end(4), after]);
    expect(put([end(9, "left", "end-left"), end(4, "right", "end")], end(4, "left"))).toEqual([end(4)]);
  });

  it("stays for one half where something between them in the order is made on both, or on the one that would move", () => {
    const apart = [end(4, "left"), after, end(6, "right")];
    expect(put(apart, end(4, "right"))).toEqual([end(4, "left"), after, end(4, "right")]);
    const onLeft = { ...after, half: "left" } as const;
    expect(put([end(4, "left"), onLeft, end(6, "right")], end(4, "right"))).toEqual([end(4), onLeft]);
    const onRight = { ...after, half: "right" } as const;
    expect(put([end(4, "left"), onRight, end(6, "right")], end(4, "right"))).toEqual([onRight, end(4)]);
  });

  it("all round the body leaves half of it to the other half, and is the whole again where both have half", () => {
    expect(put([fit("sideSeamWaist", 12)], fit("sideSeamWaist", 4, "left"))).toEqual([
      fit("sideSeamWaist", 4, "left"),
      { ...fit("sideSeamWaist", 6), half: "right" },
    ]);
    expect(put([fit("sideSeamWaist", 6, "right")], fit("sideSeamWaist", 6, "left"))).toEqual([
      fit("sideSeamWaist", 12),
    ]);
  });

  it("of an older file, with one for both beside one on a half, replaces either by itself", () => {
    const older = [fit("shoulderSlope", 5), fit("shoulderSlope", 3, "left")];
    expect(put(older, fit("shoulderSlope", 7))).toEqual([fit("shoulderSlope", 7), fit("shoulderSlope", 3, "left")]);
    expect(put(older, fit("shoulderSlope", 1, "left"))).toEqual([
      fit("shoulderSlope", 5),
      fit("shoulderSlope", 1, "left"),
    ]);
    // 5 on both and 3 more on the left: without the 5 on the left there is 3 there, and 5 on the right.
    expect(takeOut(older, "fit-shoulderSlope", "left")).toEqual([
      { ...fit("shoulderSlope", 5), half: "right" },
      fit("shoulderSlope", 3, "left"),
    ]);
    expect(takeOut(older, "fit-shoulderSlope", "right")).toEqual([fit("shoulderSlope", 8, "left")]);
  });

  it("beyond what a work can hold is not done", () => {
    const full = Array.from({ length: LIMITS.alterations }, (_, at): Alteration =>
      at === 0 ? end(4) : { ...after, id: `${at}`, half: at % 2 === 0 ? "left" : "right" },
    );
    expect(put(full, end(9, "left"))).toBe(full);
  });

  it("leaves at most one for each half of each thing, ids of their own, and what is made on the other half as it is", () => {
    fc.assert(
      fc.property(fc.array(anyAlteration, { maxLength: 12 }), fc.array(anyHalf, { maxLength: 12 }), (list, halves) => {
        const puts = list.map((one, at): Alteration => {
          const half = halves[at];
          return half === undefined ? onHalves(one, undefined) : { ...one, half };
        });
        // Few things, so that they meet.
        const few = puts.map((one) => (one.kind === "fit" ? { ...one, fit: "swayBack" as const } : one));
        few.reduce<readonly Alteration[]>((ledger, one, at) => {
          const named = { ...one, id: `${at % 5}` };
          const next = put(ledger, named);
          expect(next.some((a) => next.some((b) => a !== b && isClash(a, b)))).toBe(false);
          expect(new Set(next.map(({ id }) => id)).size).toBe(next.length);
          for (const half of HALVES) {
            const on = (all: readonly Alteration[]) =>
              all.filter((a) => isMadeOn(a, half)).map((a) => ({ ...onHalves(a, undefined), id: "" }));
            if (isMadeOn(named, half)) continue;
            expect(on(next)).toEqual(on(ledger));
          }
          return next;
        }, []);
      }),
      { numRuns: 200 },
    );
  });
});

describe("taking out", () => {
  it("of one half leaves what is for both on the other", () => {
    expect(takeOut([before, end(4), after], "end", "left")).toEqual([before, { ...end(4), half: "right" }, after]);
    expect(takeOut([end(4, "left"), end(6, "right")], "end-left", "left")).toEqual([end(6, "right")]);
    expect(takeOut([end(4, "left")], "end-left", "right")).toEqual([end(4, "left")]);
    expect(takeOut([end(4), after], "end")).toEqual([after]);
  });

  it("is what putting nothing does", () => {
    expect(putOrTakeOut([before, end(4)], end(0, "right"))).toEqual([before, { ...end(4), half: "left" }]);
    expect(putOrTakeOut([before, end(4, "left"), end(5, "right")], end(0))).toEqual([before]);
    expect(putOrTakeOut([before], fit("swayBack", 2))).toEqual([fit("swayBack", 2)]);
  });
});

describe("amounts all round", () => {
  it("are those of the fits that say so themselves", () => {
    expect(FIT_NAMES.filter((name) => fitOf(name).isWhole === true).toSorted()).toEqual([...WHOLE_FITS].toSorted());
  });
});

describe("a dart's alterations on one half", () => {
  const work = workWith(end(4), {
    ...end(0),
    kind: "dartMouth",
    id: "mouth",
    inner: 1,
    outer: 2,
    half: "left",
  } as const);

  it("are found as they stand there, and what is for both for that half alone", () => {
    expect(endOf(work, SIDE, "mouth", "left")).toEqual({ ...end(4), half: "left" });
    expect(endOf(work, SIDE, "mouth")).toEqual(end(4));
    expect(mouthOf(work, SIDE, "right")).toMatchObject({
      inner: 0,
      half: "right",
      id: "dartMouth-front-sideDart-right",
    });
    expect(mouthOf(work, SIDE, "left")).toMatchObject({ inner: 1, half: "left" });
    expect(mouthOf(work, SIDE)).toMatchObject({ inner: 0, id: "dartMouth-front-sideDart" });
    expect(placeOf(work, SIDE, "left")).toMatchObject({ by: 0, half: "left", id: "dartPlace-front-sideDart-left" });
  });

  it("are put and taken out there, the other half as it was", () => {
    const now = endOf(work, SIDE, "mouth", "right");
    const set = run(work, putOrRemove({ ...now, shorten: 8 }));
    expect(redrawsOn(set, SIDE, "right")).toMatchObject([{ shorten: 8 }]);
    expect(redrawsOn(set, SIDE, "left").filter(({ kind }) => kind === "dartEnd")).toMatchObject([{ shorten: 4 }]);
    const gone = run(work, putOrRemove({ ...now, shorten: 0 }));
    expect(redrawsOn(gone, SIDE, "right")).toEqual([]);
    expect(redrawsOn(gone, SIDE, "left")).toHaveLength(2);
  });

  it("have shares of their own", () => {
    const given = run(workWith(end(4), end(6, undefined, "other")), {
      kind: "setGiveBack",
      dart: SIDE,
      half: "left",
      giveBack: { underarm: 1 },
    });
    const so = workWith(...given);
    expect(sharesOf(so, SIDE, "left")).toEqual({ underarm: 1 });
    expect(sharesOf(so, SIDE, "right")).toEqual({});
  });

  it("move by a handle on that half alone", () => {
    const mover = moverOf(testWork, SIDE, "apex", "mouth", "right", "right");
    if (mover === null) throw new Error("no dart");
    const drawnOn = (of: Work, half: Half) =>
      planOf(of)[half].darts.find(({ ref: own }) => isSameDart(own, SIDE))?.drawn.apex ?? piecePoint(0, 0);
    const from = drawnOn(testWork, "right");
    const moved = applyCommand(testWork, mover(piecePoint(from.x + 12, from.y)));
    expect(drawnOn(moved, "right").x - from.x).toBeGreaterThan(10);
    expect(drawnOn(moved, "left")).toEqual(from);
  });

  it("are replaced there by a whole answer, which stands on that half alone", () => {
    const seen = { pastBustPoint: 8, tooFarToSide: 0, pointed: "pointed" } as const;
    const answered = answerFor(testWork, WAIST, "left", seen, true);
    if (!answered.ok) throw new Error(answered.failure.code);
    const [answer] = answered.value.answers;
    if (answer === undefined) throw new Error("no answer");
    const taken = applyCommand(testWork, answer.take);
    expect(redrawsOn(taken.alterations, WAIST, "left").length).toBeGreaterThan(0);
    expect(redrawsOn(taken.alterations, WAIST, "right")).toEqual([]);
    expect(planOf(taken).right.pieces).toEqual(planOf(testWork).left.pieces);
    const [said] = taken.seen ?? [];
    if (said === undefined) throw new Error("nothing seen");
    expect(standingAnswer(said, taken)).toBe(answer.key);
    expect(answeredOf(taken, WAIST, "right")).toBeNull();
    expect(sewnWith(taken, WAIST, "right")).toEqual([]);
    // Taken for both it stands on both, and on the left still where the right alone is then changed.
    const both = answerFor(testWork, WAIST, "left", seen);
    if (!both.ok) throw new Error(both.failure.code);
    const first = both.value.answers[0];
    if (first === undefined) throw new Error("no answer");
    const onBoth = applyCommand(testWork, first.take);
    expect(answeredOf(onBoth, WAIST, "right")).not.toBeNull();
    const changed = applyCommand(onBoth, putOrRemove({ ...endOf(onBoth, WAIST, "mouth", "right"), shorten: 31 }));
    expect(answeredOf(changed, WAIST, "left")?.taken?.answer).toBe(first.key);
    expect(answeredOf(changed, WAIST, "right")).toBeNull();
  });

  it("are set as the cup asks on that half alone", () => {
    const off = workWith(end(-25));
    const setting = settingOf(off, SIDE, "left", true);
    if (setting === null) throw new Error("nothing to set");
    const set = applyCommand(off, setting.command);
    expect(planOf(set).right.pieces).toEqual(planOf(off).left.pieces);
    expect(settingOf(set, SIDE, "left", true)).toBeNull();
  });
});

describe("the order of trade", () => {
  it("is out only among alterations that are made on one half", () => {
    const edges = fit("armholeDepth", 3, "left");
    expect(outOfTradeOrder([edges, fit("swayBack", 4, "right")])).toEqual(new Map());
    expect(outOfTradeOrder([edges, fit("swayBack", 4)])).toEqual(new Map([[edges.id, "length"]]));
    expect(outOfTradeOrder([fit("armholeDepth", 3), fit("swayBack", 4, "right")])).toEqual(
      new Map([["fit-armholeDepth", "length"]]),
    );
  });
});

describe("another way on one half", () => {
  it("is one for each, alike until it is changed", () => {
    const tried = run(workWith(before, end(4), after), ...tryOnOther(workWith(before, end(4), after), "end", "right"));
    expect(tried).toEqual([before, { ...end(4), half: "left" }, end(4, "right"), after]);
    expect(run(workWith(...tried), { kind: "putAlteration", alteration: end(9, "right") })).toEqual([
      before,
      { ...end(4), half: "left" },
      end(9, "right"),
      after,
    ]);
    expect(tryOnOther(workWith(end(4, "left")), "end-left", "right")).toEqual([]);
    expect(tryOnOther(workWith(end(4)), "none", "right")).toEqual([]);
  });
});

describe("keeping one half", () => {
  const work = workWith(before, end(4, "left"), end(8, "right"), fit("sideSeamWaist", 6, "right"), after);
  const kept = (of: Work, keep: Half | "mean"): readonly Alteration[] | string => {
    const command = keepHalf(of, keep);
    return command.ok ? run(of, command.value) : command.failure.code;
  };

  it("takes that half's to both", () => {
    expect(kept(work, "left")).toEqual([before, end(4), after]);
    expect(kept(work, "right")).toEqual([before, end(8), fit("sideSeamWaist", 12), after]);
  });

  // 5 on both and 3 more on the left are 8 there; 10 all round is 5 on a half, so with 3 more on the left it is 16 all round.
  it("of an older file takes what is for both with what is on that half besides", () => {
    const older = workWith(
      fit("shoulderSlope", 5),
      fit("shoulderSlope", 3, "left"),
      fit("sideSeamWaist", 10),
      fit("sideSeamWaist", 3, "left"),
    );
    expect(kept(older, "left")).toEqual([fit("shoulderSlope", 8), fit("sideSeamWaist", 16)]);
    expect(kept(older, "right")).toEqual([fit("shoulderSlope", 5), fit("sideSeamWaist", 10)]);
  });

  it("has a mean where both are altered alike but for the amounts", () => {
    const uneven = workWith(before, end(4, "left"), end(8, "right"), fit("sideSeamWaist", 3, "left"), {
      ...fit("sideSeamWaist", 6, "right"),
    });
    expect(kept(uneven, "mean")).toEqual([before, end(6), fit("sideSeamWaist", 9)]);
  });

  it("has no mean where one half alone is altered, or in another way: it is said which", () => {
    expect(keepHalf(work, "mean")).toEqual({
      ok: false,
      failure: { code: "keep/on-one-half", alterations: [fit("sideSeamWaist", 6, "right")] },
    });
    const unlike = workWith(end(4, "left"), { ...end(8, "right"), hold: "fullness" });
    expect(keepHalf(unlike, "mean")).toEqual({
      ok: false,
      failure: { code: "keep/another-way", alterations: [end(4, "left")] },
    });
  });

  it("has nothing to keep where the halves are alike", () => {
    expect(kept(workWith(before), "left")).toBe("keep/halves-alike");
  });
});

describe("one thing", () => {
  it("is the same on whichever half", () => {
    expect(isSameThing(end(4, "left"), end(9, "right"))).toBe(true);
    expect(isClash(end(4, "left"), end(9, "right"))).toBe(false);
    expect(isClash(end(4), end(9, "right"))).toBe(true);
  });
});
