/** A fit for one half of the body has the amount that was pinned there: half of the body grows by it, the other stays. */
import type { FitName } from "../../../../src/core/decisions/fitNames";
import type { Half } from "../../../../src/core/decisions/alteration";
import { describe, expect, it } from "vitest";
import type { Piece } from "../../../../src/core/pattern/piece";
import { seamByBezierJs } from "../../../support/independent";
import { planOf, withAlterations } from "../../../support/works";

/** mm. */
const AGREE = 0.1;

const asked = (fit: FitName, amount: number, half?: Half) =>
  planOf(withAlterations({ kind: "fit", id: "a", fit, amount, ...(half === undefined ? {} : { half }) }));

const across = (
  pieces: readonly Piece[],
  point: "sideWaist" | "sideHip" | "armholeTouch",
  names: readonly string[],
): number =>
  pieces
    .filter(({ name }) => names.includes(name))
    .reduce((sum, piece) => sum + (piece.points[point]?.at.x ?? Number.NaN), 0);

describe("pinned on one half", () => {
  it.each([
    ["sideSeamWaist", "sideWaist", ["front", "back"], 2],
    ["sideSeamHip", "sideHip", ["frontBasque", "backBasque"], 2],
    ["backWidth", "armholeTouch", ["back"], 2],
    ["chestWidth", "armholeTouch", ["front"], 2],
  ] as const)(
    "%s changes that half by the whole amount, where both halves get a half of it each",
    (fit, point, names, halves) => {
      const plain = planOf(withAlterations());
      const before = across(plain.left.pieces, point, names);
      const [one, both] = [asked(fit, 6, "left"), asked(fit, 6)];
      expect(Math.abs(across(one.left.pieces, point, names) - before - 6)).toBeLessThan(AGREE);
      expect(Math.abs(across(one.right.pieces, point, names) - before)).toBeLessThan(AGREE);
      expect(Math.abs(across(both.left.pieces, point, names) - before - 6 / halves)).toBeLessThan(AGREE);
    },
  );

  it("sideSeamUnderBust lets one half's band grow by the whole amount", () => {
    const banded = (half?: Half) => {
      const alterations = [{ kind: "fit" as const, id: "a", fit: "sideSeamUnderBust" as const, amount: 8 }];
      const work = withAlterations(...alterations.map((one) => (half === undefined ? one : { ...one, half })));
      return planOf({ ...work, pattern: { ...work.pattern, style: "midriff" } });
    };
    const around = (pieces: readonly Piece[]): number =>
      pieces
        .filter(({ name }) => name === "frontBand" || name === "backBand")
        .reduce((sum, piece) => sum + seamByBezierJs(piece, "underBust"), 0);
    const [one, both] = [banded("left"), banded()];
    expect(around(one.left.pieces) - around(one.right.pieces)).toBeCloseTo(8, 2);
    expect(around(both.left.pieces) - around(one.right.pieces)).toBeCloseTo(4, 2);
  });

  it("tells the most that works as that half's own", () => {
    const plan = asked("sideSeamWaist", 50, "left");
    expect(plan.ledger.find(({ id }) => id === "a")?.outcome).toEqual({
      ok: false,
      failure: { code: "alteration/too-much", most: 40 },
    });
    const waist = asked("sideSeamWaist", 6, "left").levels.find(({ level }) => level === "waist");
    const plain = planOf(withAlterations()).levels.find(({ level }) => level === "waist");
    expect(Math.abs((waist?.finished ?? 0) - (plain?.finished ?? 0) - 6)).toBeLessThan(AGREE);
    expect((waist?.claim ?? 0) - (plain?.claim ?? 0)).toBeCloseTo(6, 6);
  });
});
