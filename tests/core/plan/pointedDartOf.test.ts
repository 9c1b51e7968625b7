/** A dart that comes out pointed is asked of the half that is looked at. */
import { checklistByPiece } from "../../../src/words/checklist";
import { planDoubts } from "../../../src/words/doubts";
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { answeredOf, type SeenAtDart } from "../../../src/core/decisions/seenAtDart";
import { tapesOf, measuresOf } from "../../../src/core/measures/tape";
import { isSameDart } from "../../../src/core/pattern/piece";
import { applyCommand } from "../../../src/core/plan/commands";
import { answerFor, seenInPlan, type OfferedAnswers } from "../../../src/core/plan/pointedDartOf";
import { demoWorks } from "../../../src/document/demo";
import * as fc from "fast-check";
import { anyAmount } from "../../support/amounts";
import { invariant } from "../../../src/core/result";
import { planOf, ref, testWork } from "../../support/works";

const SIDE = ref("front", "sideDart");
/** The bust point 15 mm lower on the right half alone: its darts lie lower with it. */
const uneven: Work = {
  ...testWork,
  alterations: [{ kind: "fit", id: "r", fit: "bustPointLevel", amount: 15, half: "right" }],
};

const drawn = (half: "left" | "right") =>
  invariant(
    planOf(uneven)[half].darts.find(({ ref: own }) => own.piece === SIDE.piece && own.dart === SIDE.dart),
    "side dart",
  ).drawn;

describe("a pointed dart", () => {
  it("begins with what the plan sees of it on that half", () => {
    const [left, right] = (["left", "right"] as const).map((half) => seenInPlan(uneven, SIDE, half));
    expect(left).not.toEqual(right);
    expect(left).toEqual(seenInPlan(testWork, SIDE, "left"));
    // Where the halves are alike, neither is another.
    expect(seenInPlan(testWork, SIDE, "right")).toEqual(left);
  });

  it.each(["left", "right"] as const)("is answered from the dart as it is on the %s half", (half) => {
    const seen = { pastBustPoint: 10, tooFarToSide: 0, pointed: "right" as const };
    const answered = answerFor(uneven, SIDE, half, seen);
    if (!answered.ok) throw new Error(answered.failure.code);
    const before = invariant(answered.value.answers[0], "answer").figures.before;
    expect(before.apex.x).toBeCloseTo(drawn(half).apex.x, 6);
    expect(before.apex.y).toBeCloseTo(drawn(half).apex.y, 6);
    const other = drawn(half === "left" ? "right" : "left").apex;
    expect(Math.hypot(before.apex.x - other.x, before.apex.y - other.y)).toBeGreaterThan(5);
  });
});

function answersTo(work: Work, dart: typeof SIDE, seen: SeenAtDart): OfferedAnswers {
  const done = answerFor(work, dart, "left", seen);
  if (!done.ok) throw new Error(done.failure.code);
  return done.value;
}

const dartsOf = (work: Work) => planOf(work).left.darts.filter(({ drawn: { end } }) => end !== null);

/** A demo with cups on a midriff band, seen 6 mm past the bust point, 13 mm too far to the side, and pointed. */
const midriff = invariant(
  demoWorks().find(({ pattern }) => pattern.style === "midriff"),
  "a midriff",
);
const CUP_DART = ref("cup", "underBustDart");
const said: SeenAtDart = { pastBustPoint: 6, tooFarToSide: 13, pointed: "pointed" };

describe("what she saw of a cup's dart, once an answer is taken", () => {
  const answers = answersTo(midriff, CUP_DART, said);
  const first = invariant(answers.answers[0], "answer");
  const taken = applyCommand(midriff, first.take);

  it("recommends the one that leaves no check failing, before the one that costs less and bends the centre seam", () => {
    expect(answers.recommended).toBe(first.key);
    expect(first.failing).toEqual([]);
    const bends = answers.answers.filter(({ failing }) => failing.some(({ name }) => name === "seamsSmooth"));
    expect(bends.length).toBeGreaterThan(0);
    for (const { cost } of bends) expect(cost).toBeLessThan(first.cost);
    expect(planOf(taken).checks.filter(({ ok }) => !ok)).toEqual([]);
  });

  it("stays as she said it, and is answered alike: nothing is asked again of the answer itself", () => {
    expect(taken.seen).toMatchObject([{ ...CUP_DART, half: "left", ...said, taken: { answer: first.key } }]);
    const again = answersTo(taken, CUP_DART, said);
    expect(again.answers.map(({ key, alterations }) => [key, alterations])).toEqual(
      answers.answers.map(({ key, alterations }) => [key, alterations]),
    );
    expect(again.recommended).toBe(answers.recommended);
  });

  it("twice is once, and another after it is the other alone", () => {
    const [, other] = answers.answers;
    const next = invariant(answersTo(taken, CUP_DART, said).answers[0], "answer");
    expect(applyCommand(taken, next.take)).toBe(taken);
    const otherAfter = invariant(
      answersTo(taken, CUP_DART, said).answers.find(({ key }) => key === other?.key),
      "other",
    );
    expect(applyCommand(taken, otherAfter.take)).toEqual(applyCommand(midriff, invariant(other, "other").take));
  });

  it("said of the other half too, is answered from the toile as well, not from the first half's answer", () => {
    const right = (work: Work): OfferedAnswers => {
      const done = answerFor(work, CUP_DART, "right", said);
      if (!done.ok) throw new Error(done.failure.code);
      return done.value;
    };
    const both = right(taken);
    const alone = right(midriff);
    expect(both.answers.map(({ key, alterations }) => [key, alterations])).toEqual(
      alone.answers.map(({ key, alterations }) => [key, alterations]),
    );
    // Darts are redrawn on both halves: the same answer given once more moves nothing.
    const again = applyCommand(taken, invariant(both.answers[0], "answer").take);
    expect(again.alterations).toEqual(taken.alterations);
    expect(again.seen?.map(({ sewn }) => sewn)).toEqual([[], []]);
  });

  it("is not called too flat for it, and says by how much less than the cup asks", () => {
    const [dart] = dartsOf(taken);
    expect(dart).toMatchObject({ verdict: "asWanted", bySight: "pointed" });
    const lines = checklistByPiece(planOf(taken), "cm").flatMap((group) => group.lines);
    const drawnDart = lines.find(({ text }) => text.includes("the under-bust dart, all the above included"));
    expect(drawnDart?.text).toContain("; it ends short of the bust point that you marked on the toile.");
    expect(drawnDart?.text).not.toContain("your own bust point");
    expect(planDoubts(planOf(taken), "cm").notes.join(" ")).not.toContain("on a trial");
    expect((dart?.wanted?.fullness ?? NaN) - (dart?.drawn.fullness ?? NaN)).toBeGreaterThan(2);
    // Moved by hand it is held against the cup again.
    const end = invariant(
      taken.alterations.find(({ kind }) => kind === "dartEnd"),
      "end",
    );
    if (end.kind !== "dartEnd") throw new Error("end");
    const moved = applyCommand(taken, { kind: "putAlteration", alteration: { ...end, shorten: end.shorten - 1 } });
    expect(answeredOf(moved, CUP_DART, "left")).toBeNull();
    expect(dartsOf(moved)[0]).toMatchObject({ verdict: "tooFlat", bySight: null });
  });
});

it("where the bust point was not measured, the mark on the toile is where it lies", () => {
  const { bustPointWidth: _width, sideNeckToBustPoint: _depth, ...readings } = measuresOf(testWork.tapes);
  const work: Work = { ...testWork, tapes: tapesOf(readings) };
  const waist = ref("front", "waistDart");
  // 35 mm past it: against the pattern's own bust point an end so much shorter would fail.
  const answers = answersTo(work, waist, { pastBustPoint: 35, tooFarToSide: 12, pointed: "right" });
  expect(answers).toMatchObject({ measured: false, measureFirst: false });
  const first = invariant(answers.answers[0], "answer");
  expect(answers.recommended).toBe(first.key);
  const dart = invariant(
    dartsOf(applyCommand(work, first.take)).find((one) => isSameDart(one.ref, waist)),
    "dart",
  );
  expect(dart.endJudged).toEqual({ along: "usual", across: "usual" });
});

it("whatever is seen on any demo: the first answer that is recommended fails no check, and taken stays what it was", () => {
  const seen = { answered: 0, recommended: 0, refused: 0 };
  const darts = demoWorks().flatMap((work) => dartsOf(work).map(({ ref: dart }) => ({ work, dart })));
  // Near where the plan sees it: marks far from a measured bust point are to be measured again first.
  const anySeen = fc.record({
    past: anyAmount(-14, 14),
    aside: anyAmount(-14, 14),
    pointed: fc.constantFrom("pointed" as const, "right" as const, "flat" as const),
  });
  fc.assert(
    fc.property(fc.constantFrom(...darts), anySeen, ({ work, dart }, { past, aside, pointed }) => {
      const inPlan = invariant(seenInPlan(work, dart, "left"), "seen");
      const what: SeenAtDart = {
        pastBustPoint: Math.round(inPlan.pastBustPoint + past),
        tooFarToSide: Math.round(inPlan.tooFarToSide + aside),
        pointed,
      };
      const done = answerFor(work, dart, "left", what);
      seen[done.ok ? "answered" : "refused"] += 1;
      if (!done.ok) return;
      const [first] = done.value.answers;
      if (first === undefined) throw new Error("no answer");
      const after = applyCommand(work, first.take);
      const failing = (of: Work): readonly string[] =>
        planOf(of)
          .checks.filter(({ ok }) => !ok)
          .map(({ name, pieces, dart: which, point }) => [name, ...pieces, which, point].join(" "));
      const newly = failing(after).filter((check) => !failing(work).includes(check));
      expect(first.failing.length === 0).toBe(newly.length === 0);
      const { recommended } = done.value;
      seen.recommended += recommended === null ? 0 : 1;
      expect([null, first.key]).toContain(recommended);
      expect(recommended === null ? [] : newly).toEqual([]);
      const again = invariant(answersTo(after, dart, what).answers[0], "again");
      expect(applyCommand(after, again.take)).toBe(after);
      const own = planOf(after).left.darts.find((one) => isSameDart(one.ref, dart));
      expect(own?.verdict).toBe("asWanted");
    }),
    { numRuns: 60 },
  );
  expect(seen.recommended).toBeGreaterThan(seen.answered * 0.75);
  expect(seen.answered).toBeGreaterThan(40);
}, 240_000);
