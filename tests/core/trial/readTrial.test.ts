/** A record read as a whole: what must hold of any. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Half } from "../../../src/core/decisions/alteration";
import type { FitAlteration } from "../../../src/core/decisions/alteration";
import type { Observation } from "../../../src/core/decisions/trial";
import { TRIAL_PLACES, TRIAL_SIGNS } from "../../../src/core/decisions/trial";
import type { Work } from "../../../src/core/decisions/work";
import { applyCommand } from "../../../src/core/plan/commands";
import { decidedIn } from "../../../src/core/plan/trialCommands";
import { toileLengths } from "../../../src/core/toile/toileLengths";
import { readTrial } from "../../../src/core/trial/readTrial";
import { answerCommand } from "../../../src/core/trial/takeAnswer";
import { testWork } from "../../support/works";
import { answersTo, expectFirst, first, line, planOf, readingOf, sewnAs, toile, workAfter } from "../../support/trials";

const swayBack = (amount: number): FitAlteration => ({ kind: "fit", id: "fit-swayBack", fit: "swayBack", amount });
const behind = (depth: number): readonly Observation[] => [
  line("backAboveWaist", "foldAcross", { amount: depth }),
  line("backWaist", "drops", { amount: 2 * depth }),
];
const workOf = (trial: ReturnType<typeof toile>): Work => ({ ...testWork, ...trial.sewn, trials: [trial] });

describe("what is left alone", () => {
  it("nothing seen has no answer", () => expect(answersTo(toile("sideDart", []))).toEqual([]));

  it("half written lines, and a mark that was not measured, are not read", () => {
    const reading = readingOf(
      toile("sideDart", [{ id: "a", place: "bust" }, { id: "b", sign: "tight" }, line("bust", "bustPoint")]),
    );
    expect(reading).toMatchObject({ read: [], answers: [], unexplained: [] });
  });

  it("what no row shows stays unexplained and alters nothing", () => {
    const odd = line("frontHip", "pointed", { amount: 10 });
    expect(readingOf(toile("sideDart", [odd]))).toMatchObject({ answers: [], unexplained: [odd.id] });
    const [alone, beside] = [first(toile("sideDart", behind(6))), first(toile("sideDart", [...behind(6), odd]))];
    expect(beside.alterations).toEqual(alone.alterations);
    expect(beside.leaves).toEqual([odd.id]);
  });

  it("one faint sign is no cause", () => {
    const faint = line("frontNeck", "ridesUp", { amount: 12 });
    expect(readingOf(toile("sideDart", [faint]))).toMatchObject({ answers: [], unexplained: [faint.id] });
  });

  it("a fold above the back waist alone is a sway back, a mark alone is answered by as much as it lies off", () => {
    expectFirst(answersTo(toile("sideDart", [line("backAboveWaist", "foldAcross", { amount: 6 })])), ["swayBack"]);
    const marked = first(toile("sideDart", [line("dartEnd", "dartEnds", { mark: { out: 6, down: 8 } })]));
    expect(marked.causes).toMatchObject([{ rule: "dartEndElsewhere", amount: 10, amountBy: "measured" }]);
  });

  it("what is too little to alter is left", () =>
    expect(answersTo(toile("sideDart", [line("frontArmhole", "gapes", { amount: 1 })]))).toEqual([]));
});

describe("what was sewn counts", () => {
  const sewn = (amount: number): Partial<ReturnType<typeof toile>> => ({
    sewn: { ...sewnAs("sideDart"), alterations: [swayBack(amount)] },
  });

  it("amounts are added to it", () =>
    expect(first(toile("sideDart", behind(4), sewn(10))).alterations).toEqual([swayBack(18)]));

  it("of no amount it is taken out", () => {
    const trial = toile("sideDart", behind(5), sewn(-10));
    expect(first(trial).alterations).toEqual([swayBack(0)]);
    expect(workAfter(trial).alterations).toEqual([]);
  });

  it("one answer after another takes its place", () => {
    const earlier = toile("sideDart", behind(6));
    const once = workAfter(earlier);
    const trial = {
      ...earlier,
      taken: once.trials?.[0]?.taken ?? [],
      observations: [line("frontArmhole", "gapes", { amount: 5 })],
    };
    const twice = workAfter(trial, { ...once, trials: [trial] });
    expect(once.alterations).toEqual([swayBack(12)]);
    expect(twice.alterations).toMatchObject([{ fit: "armholeGape", amount: 10 }]);
    expect(twice.trials?.[0]?.taken).toHaveLength(1);
  });

  it("the bust of an earlier answer is as it was sewn again", () => {
    const earlier = toile("sideDart", [line("bust", "foldAlong", { amount: 5 })]);
    const once = workAfter(earlier);
    const trial = { ...earlier, taken: once.trials?.[0]?.taken ?? [], observations: behind(6) };
    expect(once.picks.bustAlteration).toBeDefined();
    expect(workAfter(trial, { ...once, trials: [trial] }).picks.bustAlteration).toBeUndefined();
  });

  it("a bust altered holds the base size and the cup that the toile was sewn from, until another answer takes its place", () => {
    const earlier = toile("sideDart", [line("bust", "foldAlong", { amount: 9 })]);
    const { baseSize, cup } = planOf(earlier.sewn).sizing;
    const once = workAfter(earlier);
    expect(once.picks).toMatchObject({ baseSize: baseSize.label, cup: cup.label });
    // 9 deep on each side is 36 of the whole bust, more than from one cup to the next.
    const after = planOf(once).sizing;
    expect([after.baseSize.label, after.cup.label]).toEqual([baseSize.label, cup.label]);
    const trial = { ...earlier, taken: once.trials?.[0]?.taken ?? [], observations: behind(6) };
    const twice = workAfter(trial, { ...once, trials: [trial] });
    expect(twice.picks).toEqual(earlier.sewn.picks);
    const ownCup = { ...once, picks: { ...once.picks, cup: "D" }, trials: [trial] };
    expect(workAfter(trial, ownCup).picks.cup).toBe("D");
  });

  it("a toile sewn too small at the waist explains what is tight there, and nothing is let out", () => {
    const plan = planOf(sewnAs("sideDart"));
    const waist = toileLengths(plan).waistGirth ?? 0;
    const tight = [
      line("closureWaist", "doesNotMeet", { amount: 14 }),
      line("sideSeam", "tight", { amount: 7 }),
      line("frontWaist", "tight"),
    ];
    const reading = readingOf(toile("sideDart", tight, { measured: { waistGirth: waist - 14 } }));
    expect(reading.sewnOff).toMatchObject([{ length: "waistGirth", sewn: waist - 14 }]);
    expect(reading.sewnOff[0]?.explains).toHaveLength(3);
    expect(reading.answers).toEqual([]);
    expectFirst(answersTo(toile("sideDart", tight, { measured: { waistGirth: waist } })), ["tightWaist"]);
  });

  it("what the pieces cannot give is answered with what they can", () => {
    const answer = first(toile("sideDart", [line("shoulder", "endsOutside", { amount: 60 })]));
    expect(answer.alterations).toHaveLength(1);
    const [alteration] = answer.alterations;
    expect(alteration).toMatchObject({ fit: "shoulderWidth" });
    expect(alteration?.kind === "fit" && alteration.amount < 0 && alteration.amount >= -30).toBe(true);
    expect(
      planOf(workAfter(toile("sideDart", [line("shoulder", "endsOutside", { amount: 60 })]))).ledger.every(
        ({ outcome }) => outcome.ok,
      ),
    ).toBe(true);
  });
});

describe("trials before it", () => {
  const gape = line("frontArmhole", "gapes", { amount: 5 });
  const before = (seen: readonly Observation[], more: Partial<ReturnType<typeof toile>> = {}) =>
    toile("sideDart", seen, { id: "before", sewn: decidedIn(sewnAs("sideDart")), ...more });

  it("what was measured twice is the mean of both", () => {
    const trial = toile("sideDart", [line("frontArmhole", "gapes", { amount: 4 })], {
      sewn: decidedIn(sewnAs("sideDart")),
    });
    const reading = readTrial(trial, [trial, before([line("frontArmhole", "gapes", { amount: 8 })])]);
    expect(reading.ok && reading.value.answers[0]?.alterations).toMatchObject([{ fit: "armholeGape", amount: 12 }]);
  });

  it("what was seen of a cause that was altered since says nothing of how much is left", () => {
    const earlier = before([line("frontArmhole", "gapes", { amount: 4 })]);
    const sewn = workAfter(earlier);
    const trial = toile("sideDart", [gape], { sewn: decidedIn(sewn) });
    const taken = sewn.trials?.[0] ?? earlier;
    const reading = readTrial(trial, [trial, taken]);
    // 8 was closed, 10 more is to be.
    expect(reading.ok && reading.value.answers[0]?.alterations).toMatchObject([{ fit: "armholeGape", amount: 18 }]);
  });

  it("what was seen then and is still there tells causes apart", () => {
    const sewn = decidedIn(sewnAs("sideDart"));
    const trial = toile("sideDart", [line("backWaist", "ridesUp", { amount: 12 })], { sewn });
    const allRound = before([
      line("backWaist", "ridesUp", { amount: 12 }),
      line("frontWaist", "ridesUp", { amount: 12 }),
    ]);
    expectFirst(answersTo(trial), ["waistRisesBehind"]);
    const reading = readTrial(trial, [trial, allRound]);
    expectFirst(reading.ok ? reading.value.answers : [], ["shortBelowBust"]);
  });

  it("a toile that was changed by hand since is another one", () => {
    const trial = toile("sideDart", [gape], {
      sewn: decidedIn({ ...sewnAs("sideDart"), alterations: [swayBack(10)] }),
    });
    const [alone, beside] = [readTrial(trial), readTrial(trial, [trial, before([line("bust", "tight")])])];
    expect(beside).toEqual(alone);
  });
});

describe("ticks", () => {
  const back = [line("backAboveWaist", "foldAcross", { amount: 6 })];
  it("a level hem speaks against what should drop it", () => {
    const [open, level] = [
      answersTo(toile("sideDart", back)),
      answersTo(toile("sideDart", back, { checks: { hemLevel: true, waistOnWaist: true } })),
    ];
    expectFirst(open, ["swayBack"]);
    expect(level[0]?.causes[0]?.against ?? ["hemLevel"]).toContain("hemLevel");
  });
});

describe("halves", () => {
  const sloping = (half?: Half): readonly Observation[] => [
    line("neckPoint", "dragLines", { amount: 8, way: "pinched", ...(half === undefined ? {} : { half }) }),
    line("frontArmhole", "dragLines", half === undefined ? {} : { half }),
  ];

  it("seen on one half alone it is altered there alone", () => {
    const trial = toile("sideDart", sloping("left"));
    expect(first(trial).causes).toMatchObject([{ rule: "slopingShoulder", half: "left", amount: 8 }]);
    expect(workAfter(trial).alterations).toMatchObject([{ fit: "shoulderSlope", amount: -8, half: "left" }]);
  });

  it("written as a line for each half it is the same as for both", () =>
    expect(first(toile("sideDart", [...sloping("left"), ...sloping("right")])).alterations).toEqual(
      first(toile("sideDart", sloping())).alterations,
    ));

  it("what is mirrored has the mirrored answer", () => {
    const other = (half: Half): Half => (half === "left" ? "right" : "left");
    const mirrored = first(toile("sideDart", sloping("right")));
    expect(mirrored.causes).toEqual(
      first(toile("sideDart", sloping("left"))).causes.map((cause) => ({
        ...cause,
        half: other(cause.half ?? "left"),
        explains: cause.explains.map((id) => id.replace("left", "right")),
        expects: cause.expects.map((one) => ({ ...one, half: other(one.half ?? "left") })),
      })),
    );
  });

  it("on the centre line it is for both, whatever half it was seen on", () =>
    expect(
      first(
        toile("sideDart", [
          line("backAboveWaist", "foldAcross", { amount: 6, half: "left" }),
          line("backWaist", "drops", { amount: 12 }),
        ]),
      ).alterations,
    ).toEqual([swayBack(12)]));

  it("tried on one half, the other stays as it was sewn", () => {
    const trial = toile("sideDart", [line("frontArmhole", "gapes", { amount: 5 })]);
    const work = applyCommand(workOf(trial), answerCommand(workOf(trial), trial, first(trial), "right"));
    expect(work.alterations).toMatchObject([{ fit: "armholeGape", amount: 10, half: "right" }]);
    expect(work.trials?.[0]?.taken).toMatchObject([{ half: "right", causes: ["armholeGapes"] }]);
    // The left another way: each half has its own.
    const then = work.trials?.[0] ?? trial;
    const left = applyCommand(
      work,
      answerCommand(work, then, first(toile("sideDart", [line("chest", "foldAlong", { amount: 4 })])), "left"),
    );
    expect(new Set(left.alterations.map(({ half }) => half))).toEqual(new Set(["left", "right"]));
    expect(left.trials?.[0]?.taken).toHaveLength(2);
  });
});

describe("any record", () => {
  const anyLine = fc.record({
    place: fc.constantFrom(...TRIAL_PLACES),
    sign: fc.constantFrom(...TRIAL_SIGNS),
    half: fc.constantFrom<Half | undefined>("left", "right", undefined),
    amount: fc.option(fc.integer({ min: 2, max: 20 }), { nil: undefined }),
  });
  const anyRecord = fc.array(anyLine, { maxLength: 7 }).map((lines) =>
    lines.map(({ half, amount, ...rest }, at): Observation => ({
      id: `${at}`,
      ...rest,
      ...(half === undefined ? {} : { half }),
      ...(amount === undefined ? {} : { amount }),
    })),
  );

  it("is answered the same in whatever order its lines are written", () =>
    fc.assert(
      fc.property(anyRecord, (lines) => {
        const [one, other] = [answersTo(toile("sideDart", lines)), answersTo(toile("sideDart", lines.toReversed()))];
        expect(other[0]?.key).toBe(one[0]?.key);
        expect(other[0]?.alterations).toEqual(one[0]?.alterations);
      }),
      { numRuns: 40 },
    ));

  it("tells of every line whether it is explained, and every answer can be made", () =>
    fc.assert(
      fc.property(anyRecord, fc.constantFrom("sideDart", "princessShoulder", "midriff"), (lines, style) => {
        const trial = toile(style, lines);
        const reading = readingOf(trial);
        for (const { explains, leaves } of reading.answers)
          expect([...explains, ...leaves].toSorted()).toEqual([...reading.read].toSorted());
        if (reading.answers.length === 0) return;
        const after = workAfter(trial);
        expect(planOf(after).ledger.filter(({ outcome }) => !outcome.ok)).toEqual([]);
        expect(after).not.toEqual(workOf(trial));
      }),
      { numRuns: 40 },
    ));

  it("twice as deep is twice as much", () =>
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 6 }), (depth) => {
        const gape = (amount: number): number | null => {
          const [one] = first(toile("sideDart", [line("frontArmhole", "gapes", { amount })])).alterations;
          return one?.kind === "fit" ? one.amount : null;
        };
        expect([gape(depth), gape(2 * depth)]).toEqual([2 * depth, 4 * depth]);
      }),
      { numRuns: 3 },
    ));
});
