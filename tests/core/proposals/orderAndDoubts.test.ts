/**
 * The order of what is proposed, and which doubts it waits for. The body has the block's own figures at bust 880 mm (common
 * practice, no source) but for what is planted: a shoulder 22 mm longer, a waist 30 mm lower behind and in front.
 */
import { describe, expect, it } from "vitest";
import type { Alteration } from "../../../src/core/decisions/alteration";
import type { Work } from "../../../src/core/decisions/work";
import type { Measures } from "../../../src/core/measures/measure";
import { tapesOf } from "../../../src/core/measures/tape";
import { proposalsOf } from "../../../src/core/proposals/proposals";
import { openDoubts } from "../../../src/core/bodies/tapeDoubts";
import { planOf, testWork } from "../../support/works";

const BODY = { bustGirth: 880, upperChestGirth: 830, waistGirth: 700, hipGirth: 940 };
const LENGTHS = { backWaistLength: 410, frontWaistLength: 432, shoulderLength: 122 };

const workOf = (measures: Measures, alterations: readonly Alteration[] = []): Work => ({
  ...testWork,
  tapes: tapesOf({ ...BODY, ...LENGTHS, ...measures }),
  alterations: [...alterations],
});
const shoulder = (amount: number): Alteration => ({ kind: "fit", id: "a", fit: "shoulderWidth", amount });

function adviceOn(work: Work) {
  const { proposals, unanswered, heldBackBy, agreeing } = proposalsOf(work, planOf(work));
  return {
    proposed: proposals.map(({ altered, stands, amount }) => [
      altered.kind === "fit" ? altered.fit : altered.kind,
      stands,
      amount,
    ]),
    unanswered,
    heldBackBy,
    agreeing: agreeing.map(({ measure }) => measure),
  };
}

describe("what is proposed", () => {
  it("is told in the trade's order, lengths before edges, though an edge stands altered already", () => {
    const { proposed } = adviceOn(
      workOf({ backWaistLength: 440, frontWaistLength: 462, shoulderLength: 144 }, [shoulder(4)]),
    );
    expect(proposed).toEqual([
      ["lengthBelowBust", 0, 30],
      ["shoulderWidth", 4, 22],
    ]);
  });

  it("is nothing where all of it stands, and what it went by agrees", () => {
    const { proposed, unanswered, agreeing } = adviceOn(workOf({ shoulderLength: 144 }, [shoulder(22)]));
    expect([proposed, unanswered]).toEqual([[], []]);
    expect(agreeing).toContain("shoulderLength");
  });
});

describe("a doubt", () => {
  it("that nothing waits for is not said to hold anything back", () => {
    const work = workOf({ waistGirth: 1100, shoulderLength: 144 });
    expect(openDoubts(work).map(({ measure }) => measure)).toEqual(["waistGirth"]);
    const { proposed, heldBackBy } = adviceOn(work);
    expect([proposed, heldBackBy]).toEqual([[["shoulderWidth", 0, 22]], []]);
  });

  it("is named alone where something waits for it, not the others", () => {
    const work = workOf({ waistGirth: 1100, backWaistLength: 300, shoulderLength: 144 });
    expect(openDoubts(work).map(({ measure }) => measure)).toContain("waistGirth");
    const { proposed, heldBackBy } = adviceOn(work);
    expect([proposed, heldBackBy]).toEqual([[["shoulderWidth", 0, 22]], ["backWaistLength"]]);
  });
});
