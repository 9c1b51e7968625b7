import { describe, expect, it } from "vitest";
import { STYLE_NAMES } from "../../src/core/decisions/pattern";
import type { Observation } from "../../src/core/decisions/trial";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { Plan } from "../../src/core/plan/plan";
import type { Work } from "../../src/core/decisions/work";
import { DISC, drawnSigns, numbersOn, toileFigures, type ToileFigure } from "../../src/drawing/toileFigure";
import { trialFigure } from "../../src/drawing/trialFigure";
import { sampleWork } from "../support/sampleWork";

function planOf(work: Work): Plan {
  const plan = derivePlan(work);
  if (!plan.ok) throw new Error(plan.failure.code);
  return plan.value;
}

const { closure } = sampleWork.pattern;
const plain: Work = { ...sampleWork, alterations: [] };
const styled = STYLE_NAMES.map((style) => ({
  style,
  plan: planOf({ ...plain, pattern: { ...plain.pattern, style } }),
}));
const [front, leftSide, rightSide, back] = toileFigures(planOf(plain), closure) as [
  ToileFigure,
  ToileFigure,
  ToileFigure,
  ToileFigure,
];

/** The points that a path goes through, where it is written in absolute lines. */
const ends = (path: string): readonly (readonly [number, number])[] =>
  [...path.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/gu)].map(([, x, y]) => [Number(x), Number(y)]);

describe("toileFigures", () => {
  it("walks round her: front, left side, right side, back", () => {
    expect([front, leftSide, rightSide, back].map(({ view }) => view)).toEqual([
      "front",
      "leftSide",
      "rightSide",
      "back",
    ]);
  });

  it.each(styled)("lays the numbers of a $style over no other, within the drawing", ({ plan }) => {
    for (const { box, numbers } of toileFigures(plan, closure)) {
      expect(numbers.length).toBeGreaterThan(0);
      for (const [index, { at }] of numbers.entries()) {
        expect(at.x - DISC).toBeGreaterThanOrEqual(box.x - 1e-9);
        expect(at.x + DISC).toBeLessThanOrEqual(box.x + box.width + 1e-9);
        expect(at.y - DISC).toBeGreaterThanOrEqual(box.y - 1e-9);
        expect(at.y + DISC).toBeLessThanOrEqual(box.y + box.height + 1e-9);
        for (const other of numbers.slice(index + 1))
          expect(Math.hypot(at.x - other.at.x, at.y - other.at.y)).toBeGreaterThan(2 * DISC - 0.5);
      }
    }
  });

  it("shows her right half at the left from before, and at the right from behind", () => {
    const at = (figure: ToileFigure, half: "left" | "right") =>
      figure.numbers.filter((number) => number.half === half).map(({ of }) => Math.sign(of.x));
    expect(new Set(at(front, "right"))).toEqual(new Set([-1]));
    expect(new Set(at(front, "left"))).toEqual(new Set([1]));
    expect(new Set(at(back, "left"))).toEqual(new Set([-1]));
    expect(new Set(at(back, "right"))).toEqual(new Set([1]));
  });

  it("shows her front at the left from her left side, at the right from her right one, and that half alone", () => {
    for (const [figure, half, side] of [
      [leftSide, "left", -1],
      [rightSide, "right", 1],
    ] as const) {
      expect(new Set(figure.numbers.map((number) => number.half))).toEqual(new Set([half]));
      const fronts = figure.halves.find(({ pieces }) => pieces.some(({ piece }) => piece === "front"));
      const [piece] = fronts?.pieces ?? [];
      // The bust point of a front lies well towards its middle from the side seam.
      const x = (piece?.bustPoint?.x ?? 0) + (piece?.across ?? 0);
      expect(Math.sign(fronts?.mirrored === true ? -x : x)).toBe(side);
    }
  });

  it("has what lies on the centre line once, and on it", () => {
    const centres = [...front.numbers, ...back.numbers].filter(({ half }) => half === null);
    expect(centres.map(({ place }) => place)).toEqual(["betweenBusts", "closureBust", "closureWaist", "closureHip"]);
    for (const { at, of } of centres) expect(Math.max(Math.abs(at.x), Math.abs(of.x))).toBe(0);
  });

  it("has the same numbers at the same places as the printed record's front and back", () => {
    const plan = planOf(plain);
    for (const [index, figure] of [front, back].entries()) {
      const view = trialFigure(plan)[index];
      if (view === undefined) throw new Error("a view");
      const told = (list: ToileFigure["numbers"]) => list.map(({ number, half, of }) => [number, half, of.x, of.y]);
      expect(told(numbersOn(plan, closure, view))).toEqual(told(figure.numbers));
    }
  });
});

describe("drawnSigns", () => {
  const draw = (figure: ToileFigure, ...lines: readonly Omit<Observation, "id">[]) =>
    drawnSigns(
      figure,
      lines.map((line, index) => ({ ...line, id: String(index) })),
    );

  it("draws a fold as a wavy line on each half that it is seen on, in the views that show the place", () => {
    expect(draw(back, { place: "backAboveWaist", sign: "foldAcross" })).toHaveLength(2);
    expect(draw(back, { place: "backAboveWaist", sign: "foldAcross", half: "left" })).toHaveLength(1);
    expect(draw(front, { place: "backAboveWaist", sign: "foldAcross" })).toEqual([]);
    expect(draw(back, { place: "backAboveWaist" }, { sign: "foldAcross" })).toEqual([]);
    const [one] = draw(back, { place: "chest", sign: "tight" }, { place: "blades", sign: "foldAcross", half: "left" });
    expect(one?.line).toBe(2);
    expect(one?.path.match(/q/gu)).toHaveLength(6);
  });

  it("draws drag lines as an arrow from their place to where they point, on the same half", () => {
    const [drawn, ...more] = draw(front, {
      place: "neckPoint",
      sign: "dragLines",
      towards: "frontArmhole",
      half: "right",
    });
    expect(more).toEqual([]);
    const spot = (place: string) => front.numbers.find((one) => one.place === place && one.half === "right")?.of;
    const [from, to] = ends(drawn?.path ?? "");
    expect(from?.[0]).toBeCloseTo(spot("neckPoint")?.x ?? 0, 0);
    expect(to?.[0]).toBeCloseTo(spot("frontArmhole")?.x ?? 0, 0);
    expect(to?.[1]).toBeCloseTo(spot("frontArmhole")?.y ?? 0, 0);
    // From behind the neck point is seen and the front armhole is not.
    expect(draw(back, { place: "neckPoint", sign: "dragLines", towards: "frontArmhole" })).toEqual([]);
  });

  it("marks a bust point away from the centre on either half, and further down", () => {
    const bust = (half: "left" | "right") => front.numbers.find((one) => one.place === "bust" && one.half === half)?.of;
    for (const [half, side] of [
      ["left", 1],
      ["right", -1],
    ] as const) {
      const [drawn] = draw(front, { place: "bust", sign: "bustPoint", half, mark: { out: 10, down: 20 } });
      const [across, upright] = ends(drawn?.path ?? "");
      // The middle of a cross: its first line begins 8 mm before it, its second 8 mm above.
      expect((across?.[0] ?? 0) + 8 - (bust(half)?.x ?? 0)).toBeCloseTo(side * 10, 0);
      expect((upright?.[1] ?? 0) + 8 - (bust(half)?.y ?? 0)).toBeCloseTo(20, 0);
    }
  });

  it("leans a side seam towards her front as it is seen from each side", () => {
    for (const [figure, side] of [
      [leftSide, -1],
      [rightSide, 1],
    ] as const) {
      const [drawn] = draw(figure, { place: "sideSeam", sign: "leansForward" });
      const [from, to] = ends(drawn?.path ?? "");
      expect(Math.sign((to?.[0] ?? 0) - (from?.[0] ?? 0))).toBe(side);
    }
  });
});
