/** What an alteration did, as drawn: the marks of known cuts, and what lies on the way. */
import type { Alteration } from "../../src/core/decisions/alteration";
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../src/core/geometry/point";
import { rigidMotion, shiftMotion } from "../../src/core/geometry/rigid";
import { radians } from "../../src/core/units";
import { alterationMarks, stageAt, transformAt } from "../../src/drawing/surgeryMarks";
import { planOf, ref, withAlterations } from "../support/works";

function marksOf(alteration: Alteration) {
  const outcome = planOf(withAlterations(alteration)).ledger.find(({ id }) => id === alteration.id)?.outcome;
  if (outcome?.ok !== true) throw new Error("the slip was left out");
  return { trace: outcome.value, marks: alterationMarks(outcome.value) };
}

const numbers = (path: string): readonly number[] => (path.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);

describe("transformAt", () => {
  it("is an SVG matrix of the motion, and the identity for what stays", () => {
    expect(transformAt(null, 0.4)).toBe("matrix(1 0 0 1 0 0)");
    expect(transformAt(shiftMotion(piecePoint(0, 0), piecePoint(0, 20)), 0.25)).toBe("matrix(1 0 0 1 0 5)");
    // A quarter turn about (10, 0) takes (x, y) to (10 - y, x - 10).
    expect(transformAt(rigidMotion(piecePoint(10, 0), radians(Math.PI / 2)), 1)).toBe("matrix(0 1 -1 0 10 -10)");
  });
});

describe("stageAt", () => {
  it("gives each of several operations its turn", () => {
    expect(stageAt(1, 0.3)).toEqual({ stage: 0, share: 0.3 });
    expect(stageAt(2, 0.25)).toEqual({ stage: 0, share: 0.5 });
    expect(stageAt(2, 0.75)).toEqual({ stage: 1, share: 0.5 });
    expect(stageAt(4, 0)).toEqual({ stage: 0, share: 0 });
    expect(stageAt(4, 1)).toEqual({ stage: 3, share: 1 });
  });
});

describe("a bodice lengthened", () => {
  const { marks } = marksOf({ kind: "fit", id: "l", fit: "lengthBelowBust", amount: 20 });

  it("is cut once across the front and once across the back", () => {
    expect(marks.map(({ piece }) => piece)).toEqual(["front", "back"]);
    for (const { stages } of marks) {
      expect(stages).toHaveLength(1);
      expect(stages[0]?.cuts).toHaveLength(1);
      const cut = numbers(stages[0]?.cuts[0] ?? "");
      // Level: both ends at one height.
      expect(cut[1]).toBeCloseTo(cut[3] ?? NaN, 6);
    }
  });

  it("has one part that goes 20 mm down, and one that stays", () => {
    for (const { stages } of marks) {
      const moving = stages[0]?.regions.filter(({ motion }) => motion !== null) ?? [];
      expect(stages[0]?.regions).toHaveLength(2);
      expect(moving.map(({ motion }) => transformAt(motion, 1))).toEqual(["matrix(1 0 0 1 0 20)"]);
      expect(moving.map(({ motion }) => transformAt(motion, 0.5))).toEqual(["matrix(1 0 0 1 0 10)"]);
    }
  });
});

describe("a dart redrawn", () => {
  const { marks } = marksOf({
    kind: "dartPlace",
    id: "p",
    dart: ref("front", "waistDart"),
    by: 12,
    how: "redraw",
    giveBack: {},
  });
  const [front] = marks;

  it("is not cut, and runs from the outline before to the one after", () => {
    expect(front?.stages).toEqual([]);
    expect(front?.outlineAt(0)).toBe(front?.before);
    expect(front?.outlineAt(1)).toBe(front?.after);
    expect(front?.before).not.toBe(front?.after);
  });

  it("lies half-way between the two at half the way", () => {
    const [before, half, after] = [front?.before, front?.outlineAt(0.5) ?? "", front?.after].map((path) =>
      numbers(path ?? ""),
    );
    expect(half?.length).toBe(before?.length);
    half?.forEach((value, index) => {
      // Each written to a hundredth of a millimetre.
      expect(Math.abs(value - ((before?.[index] ?? NaN) + (after?.[index] ?? NaN)) / 2)).toBeLessThan(0.0101);
    });
  });

  it("has the legs of each dart before and after", () => {
    expect(front?.legsBefore).toHaveLength(2);
    expect(front?.legsAfter).toHaveLength(2);
    expect(front?.legsBefore.filter((legs) => front.legsAfter.includes(legs))).toHaveLength(1);
  });
});
