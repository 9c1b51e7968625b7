/** What is for both halves and cannot be made on one of them is made on neither, and the ledger tells why, once. */
import { describe, expect, it } from "vitest";
import type { FitAlteration, Half } from "../../../src/core/decisions/alteration";
import { planOf, testWork } from "../../support/works";

/** With the shoulder raised that much, there is no room left for so deep an armhole. */
const shoulder = (half?: Half): FitAlteration => ({
  kind: "fit",
  id: "shoulder",
  fit: "shoulderSlope",
  amount: -20,
  ...(half === undefined ? {} : { half }),
});
const armhole: FitAlteration = { kind: "fit", id: "armhole", fit: "armholeDepth", amount: 18 };
const planWith = (...alterations: readonly FitAlteration[]) => planOf({ ...testWork, alterations });

describe("an alteration of both halves", () => {
  it("is made where nothing stands in its way", () => {
    const { ledger, left, right } = planWith(armhole);
    expect(ledger.find(({ id }) => id === "armhole")?.outcome.ok).toBe(true);
    expect(right).toBe(left);
  });

  it.each(["left", "right"] as const)("is made on neither where it cannot be on the %s", (half) => {
    const { ledger, left, right } = planWith(shoulder(half), armhole);
    const told = ledger.filter(({ id }) => id === "armhole");
    expect(told.map(({ outcome }) => outcome.ok)).toEqual([false]);
    const [plain, raised] = [planWith(), planWith(shoulder())];
    const [own, other] = half === "left" ? [left, right] : [right, left];
    expect(other.pieces).toEqual(plain.left.pieces);
    expect(own.pieces).toEqual(raised.left.pieces);
  });
});
