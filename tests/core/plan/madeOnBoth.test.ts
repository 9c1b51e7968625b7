/** What is for both halves and cannot be made on one of them is made on neither, and the ledger tells why, once. */
import { describe, expect, it } from "vitest";
import type { FitAlteration, Half } from "../../../src/core/decisions/alteration";
import { invariant } from "../../../src/core/result";
import { seamByBezierJs } from "../../support/independent";
import { planOf, ref, testWork } from "../../support/works";

/** With the shoulder raised that much, there is no room left for so deep an armhole. */
const shoulder = (half?: Half): FitAlteration => ({
  kind: "fit",
  id: "shoulder",
  fit: "shoulderSlope",
  amount: -10,
  ...(half === undefined ? {} : { half }),
});
const armhole: FitAlteration = { kind: "fit", id: "armhole", fit: "armholeDepth", amount: 15 };
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

describe("a dart that gives back at the other piece's dart", () => {
  it.each([
    [8, 8],
    [0, 20],
    [-6, -5],
  ])("by %d and %d mm leaves both waists as long as their basques, by bezier-js", (inner, outer) => {
    const alteration = { kind: "dartMouth", id: "mouth", dart: ref("back", "waistDart"), inner, outer } as const;
    const { ledger, left } = planOf({ ...testWork, alterations: [{ ...alteration, giveBack: { otherDart: 1 } }] });
    expect(ledger.every(({ outcome }) => outcome.ok)).toBe(true);
    const waistOf = (name: string): number =>
      seamByBezierJs(invariant(left.pieces.find((piece) => piece.name === name) ?? null, name), "waist");
    for (const half of ["front", "back"])
      expect(Math.abs(waistOf(half) - waistOf(`${half}Basque`))).toBeLessThanOrEqual(0.05);
  });
});
