/** Which phase of the work each step belongs to: common practice, no source; told once more by hand. */
import { expect, it } from "vitest";
import type { ChecklistItem, ChecklistStep } from "../../../src/core/plan/plan";
import { inOrderOfWork, phaseOfStep } from "../../../src/core/plan/workPhases";
import { planOf, ref, withAlterations } from "../../support/works";

const waistDart = ref("front", "waistDart");
const plan = planOf(
  withAlterations(
    { kind: "dartEnd", id: "end", dart: waistDart, shorten: 10, across: 0, hold: "mouth", giveBack: {} },
    { kind: "fit", id: "sway", fit: "swayBack", amount: 10 },
    { kind: "fit", id: "side", fit: "sideSeamBust", amount: 24 },
  ),
);
const phases = (kind: ChecklistStep["kind"]) =>
  plan.checklist.flatMap(({ step }) => (step.kind === kind ? [phaseOfStep(step)] : []));

it("steps belong to tracing, the phase of what is altered, darts, truing, or the edges where a dart is late", () => {
  expect(new Set(phases("trace"))).toEqual(new Set(["trace"]));
  expect(new Set(phases("blend"))).toEqual(new Set(["widthsTraced"]));
  expect(phases("alteration")).toEqual(["darts", "widths", "length", "widths"]);
  expect(phases("dart")).toEqual(["darts", "edges", "darts"]);
  expect(new Set([...phases("places"), ...phases("trueDart"), ...phases("walk")])).toEqual(new Set(["truing"]));
  const trued = { piece: "front", seam: "side", what: "seamSmoothed", point: null, amount: 1 } as const;
  expect(phaseOfStep({ kind: "trued", change: trued })).toBe("truing");
  expect(phaseOfStep({ kind: "bust", spread: 1, whole: 2, drop: 0, hinge: 0 })).toBe("bust");
  expect(phaseOfStep({ kind: "neckline", places: [], lines: [], wider: 0, pinched: 0 })).toBe("neckline");
});

it("steps stand piece by piece, points before what is trued, seams to walk last, what is alike as it was", () => {
  const trued = (piece: ChecklistItem["piece"], amount: number): ChecklistItem => ({
    piece,
    step: { kind: "trueDart", dart: waistDart, amount },
    amount,
  });
  const places = (piece: ChecklistItem["piece"]): ChecklistItem => ({
    piece,
    step: { kind: "places", places: [], lengths: [], stayed: [] },
    amount: 0,
  });
  const walk: ChecklistItem = {
    piece: "front",
    step: { kind: "walk", seam: "side", first: ["front"], second: ["back"], ease: 0 },
    amount: 0,
  };
  const edge: ChecklistItem = {
    piece: "front",
    step: { kind: "neckline", places: [], lines: [], wider: 0, pinched: 0 },
    amount: 0,
  };
  const [first, second, back] = [trued("front", 2), trued("front", 1), trued("back", 3)];
  expect(inOrderOfWork([walk, back, edge, first, places("front"), second, places("back")])).toEqual([
    places("front"),
    first,
    second,
    edge,
    places("back"),
    back,
    walk,
  ]);
});
