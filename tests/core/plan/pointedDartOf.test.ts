/** A dart that comes out pointed is asked of the half that is looked at. */
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { answerFor, seenInPlan } from "../../../src/core/plan/pointedDartOf";
import { invariant } from "../../../src/core/result";
import { planOf, ref, testWork } from "../../support/works";

const SIDE = ref("front", "sideDart");
/** Let in above the bust on the right half alone: its bust point, and its darts with it, lie lower against her own. */
const uneven: Work = {
  ...testWork,
  alterations: [{ kind: "fit", id: "r", fit: "lengthAboveBust", amount: 15, half: "right" }],
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
