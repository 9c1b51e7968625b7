/** A handle is brought where it is asked to be, whatever has been done to the dart before: measured on the plan that follows. */
import { describe, expect, it } from "vitest";
import type { Alteration, Hold } from "../../../src/core/decisions/alteration";
import type { Work } from "../../../src/core/decisions/work";
import { distance, shift, type PiecePoint } from "../../../src/core/geometry/point";
import type { DartRef } from "../../../src/core/pattern/piece";
import { applyCommand } from "../../../src/core/plan/commands";
import {
  endOf,
  moverOf,
  mouthOf,
  placeOf,
  putOrRemove,
  snapStep,
  type HandleEnd,
} from "../../../src/core/plan/dartEdit";
import { invariant } from "../../../src/core/result";
import { planOf, ref, testWork } from "../../support/works";

const WAIST = ref("front", "waistDart");
const SIDE = ref("front", "sideDart");

const redraws = (dart: DartRef): readonly Alteration[] => [
  { kind: "dartPlace", id: "p", dart, by: 6, how: "redraw", giveBack: {} },
  { kind: "dartMouth", id: "m", dart, inner: 3, outer: -2, giveBack: {} },
  { kind: "dartEnd", id: "e", dart, shorten: 14, across: 3, hold: "mouth", giveBack: {} },
];

const handleAt = (work: Work, { piece, dart }: DartRef, end: HandleEnd, half: "left" | "right" = "left"): PiecePoint =>
  invariant(
    planOf(work)[half].darts.find(({ ref: own }) => own.piece === piece && own.dart === dart),
    dart,
  ).drawn[end];

const moved = (
  work: Work,
  dart: DartRef,
  end: HandleEnd,
  to: PiecePoint,
  hold: Hold = "mouth",
  half?: "left" | "right",
) => applyCommand(work, invariant(moverOf(work, dart, end, hold, half ?? "left"), "mover")(to));

/** Half a step either way along the dart and across it; what truing moves comes on top for a mouth. */
const SNAPPED = { apex: 0.72, mouth: 1.6 };

describe.each([
  ["the waist dart", WAIST],
  ["the side dart", SIDE],
])("a handle of %s", (_name, dart) => {
  it.each([
    ["as printed", []],
    ["redrawn before", redraws(dart)],
  ])("of its end comes to where it is dragged, the dart %s", (_what, alterations) => {
    const work = { ...testWork, alterations };
    const to = shift(handleAt(work, dart, "apex"), dart === SIDE ? 8 : -4, dart === SIDE ? 3 : 9);
    expect(distance(handleAt(moved(work, dart, "apex", to), dart, "apex"), to)).toBeLessThan(SNAPPED.apex);
  });

  it.each(["inner", "outer"] as const)("of its mouth (%s) comes to where it is dragged along the mouth", (end) => {
    // What moves its end comes after the mouth, and brings it along: it is left out of the reckoning.
    const work = { ...testWork, alterations: redraws(dart) };
    const [inner, outer] = [handleAt(work, dart, "inner"), handleAt(work, dart, "outer")];
    const wide = distance(inner, outer);
    const way = end === "inner" ? { from: outer, to: inner } : { from: inner, to: outer };
    const at = handleAt(work, dart, end);
    const to = shift(at, ((way.to.x - way.from.x) / wide) * -5, ((way.to.y - way.from.y) / wide) * -5);
    const after = moved(work, dart, end, to);
    const narrower = wide - distance(handleAt(after, dart, "inner"), handleAt(after, dart, "outer"));
    expect(Math.abs(narrower - 5)).toBeLessThan(SNAPPED.mouth);
    expect(distance(handleAt(after, dart, end), to)).toBeLessThan(SNAPPED.mouth);
  });

  it("is where it was when it is not moved", () => {
    const work = { ...testWork, alterations: redraws(dart) };
    for (const end of ["apex", "inner", "outer"] as const)
      expect(
        distance(handleAt(moved(work, dart, end, handleAt(work, dart, end)), dart, end), handleAt(work, dart, end)),
      ).toBeLessThan(SNAPPED.apex);
  });
});

describe("a handle", () => {
  it("of the right half is measured on the right half", () => {
    const uneven: Work = {
      ...testWork,
      alterations: [{ kind: "fit", id: "r", fit: "bustPointLevel", amount: 15, half: "right" }],
    };
    const at = handleAt(uneven, WAIST, "apex", "right");
    expect(distance(at, handleAt(uneven, WAIST, "apex", "left"))).toBeGreaterThan(10);
    const to = shift(at, 0, 8);
    const after = moved(uneven, WAIST, "apex", to, "mouth", "right");
    expect(distance(handleAt(after, WAIST, "apex", "right"), to)).toBeLessThan(SNAPPED.apex);
  });

  it.each([
    ["cm", 1],
    ["in", 25.4 / 16],
  ] as const)("moves by what the eye can set in %s", (unit, step) => {
    expect(snapStep(unit)).toBe(step);
    const work: Work = { ...testWork, unit };
    const to = shift(handleAt(work, WAIST, "apex"), 0, 10.3);
    const after = moved(work, WAIST, "apex", to);
    const { shorten, across } = endOf(after, WAIST, "mouth");
    for (const value of [shorten, across]) expect(Math.abs(value / step - Math.round(value / step))).toBeLessThan(1e-4);
  });

  it("is none of a dart that is not there", () => {
    expect(moverOf(testWork, ref("front", "neckDart"), "apex", "mouth", "left")).toBeNull();
  });
});

describe("an alteration of a dart that does nothing", () => {
  const giveBack = { sideSeam: 1 };
  it.each([
    [{ ...endOf(testWork, WAIST, "mouth") }, { shorten: 4 }, { across: -2 }],
    [{ ...mouthOf(testWork, WAIST) }, { inner: 4 }, { outer: -2 }],
    [{ ...placeOf(testWork, WAIST) }, { by: 4 }, { by: -2 }],
  ])("is taken out of the ledger, and put where it does: %j", (nothing, one, other) => {
    expect(putOrRemove(nothing)).toEqual({ kind: "removeAlteration", id: nothing.id });
    for (const some of [one, other]) {
      const alteration = { ...nothing, ...some };
      expect(putOrRemove(alteration)).toEqual({ kind: "putAlteration", alteration });
    }
  });

  it("begins with the shares that another redraw of the dart has", () => {
    const alterations: Alteration[] = [{ kind: "dartMouth", id: "m", dart: WAIST, inner: 2, outer: 0, giveBack }];
    const work = { ...testWork, alterations };
    expect(endOf(work, WAIST, "mouth").giveBack).toEqual(giveBack);
    expect(endOf(work, SIDE, "mouth").giveBack).toEqual({});
    expect(mouthOf(work, WAIST)).toBe(alterations[0]);
  });
});
