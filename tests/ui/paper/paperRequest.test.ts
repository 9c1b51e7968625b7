/** What is asked of the paper of a dress. */
import { describe, expect, it } from "vitest";
import type { Work } from "../../../src/core/decisions/work";
import { createShowing } from "../../../src/ui/session/ofWork";
import { useChoices } from "../../../src/ui/paper/choicesState";
import { isNothingAsked, requestFor } from "../../../src/ui/paper/paperRequest";
import { planOf, testWork } from "../../support/works";

const work: Work = { ...testWork, dress: { skirt: { kind: "aLine", length: 600 } } };
const plan = planOf(work);
const bodice = plan.left.pieces.map(({ name }) => name);

describe("what is asked of the paper", () => {
  const asked = (leftOut: typeof bodice, partsLeftOut: readonly string[] = []) =>
    requestFor(
      work,
      plan,
      "pieces",
      { ...useChoices.of(createShowing()).getState(), leftOut, partsLeftOut },
      "2026-11-25",
    );

  it("is something where parts of the dress alone are", () => {
    const skirt = asked(bodice);
    expect(skirt.choices.pieces).toEqual([]);
    expect(skirt.choices.parts).toContain("skirtFront");
    expect(isNothingAsked(skirt)).toBe(false);
    expect(isNothingAsked(asked(bodice, skirt.choices.parts))).toBe(true);
    expect(isNothingAsked(asked([]))).toBe(false);
  });
});
