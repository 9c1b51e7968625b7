/**
 * Random chains with alterations of every kind on one half alone. Each half comes out as in a work in which all that is made on
 * it is for both; what halves share can be sewn together, or a named refusal says what was left out; one half kept is that half.
 */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { HALVES, isMadeOn, onHalves, type Alteration, type Half } from "../../../src/core/decisions/alteration";
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import type { Piece, PieceName } from "../../../src/core/pattern/piece";
import { applyCommand } from "../../../src/core/plan/commands";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { keepHalf, tryOnOther } from "../../../src/core/plan/halfEdit";
import type { Plan } from "../../../src/core/plan/plan";
import { put } from "../../../src/core/plan/putAlteration";
import { anyChainWork } from "../../support/anyChainWork";
import type { ForeignFront } from "../../support/foreign/foreignTypes";
import { anyForeignWork, planOfForeign } from "../../support/foreign/foreignWork";
import { seamByBezierJs } from "../../support/independent";

/** Plans of each style; more by hand. */
const RUNS = Number(process.env.CHAINS ?? 24);
const FOREIGN_RUNS = Number(process.env.CHAINS ?? 8);
/** ms. A busy machine is slow. */
const PATIENCE = Math.max(120_000, RUNS * 400);

/** mm. What halves may differ by at the centre, with a hundredth for the library. */
const SEWN_TO_EACH_OTHER = 0.51;
/** mm. The same chain of the same alterations: what summing in another order leaves. */
const ALIKE = 1e-6;

const anyHalves = fc.array(fc.constantFrom<Half | undefined>("left", "right", undefined), {
  minLength: 8,
  maxLength: 8,
});

/** A chain put together by hand, as a wearer would: each alteration put on the left, on the right or on both. */
const unevenly = (work: Work, halves: readonly (Half | undefined)[]): Work => ({
  ...work,
  alterations: work.alterations
    .map(({ half: _any, ...one }, at): Alteration => {
      const half = halves[at];
      return half === undefined ? one : { ...one, half };
    })
    .reduce(put, []),
});

const CENTRES: readonly (readonly PieceName[])[] = [
  ["front", "centreFront", "cup"],
  ["frontBand"],
  ["back"],
  ["backBand"],
  ["frontBasque"],
  ["backBasque"],
];

/** Centres that cannot be sewn to each other, by bezier-js. */
const unsewn = ({ left, right }: Pick<Plan, "left" | "right">): readonly string[] =>
  CENTRES.flatMap((names) => {
    const lengthOf = (pieces: readonly Piece[]): number =>
      pieces.filter(({ name }) => names.includes(name)).reduce((sum, one) => sum + seamByBezierJs(one, "centre"), 0);
    const [a, b] = [lengthOf(left.pieces), lengthOf(right.pieces)];
    return Math.abs(a - b) <= SEWN_TO_EACH_OTHER ? [] : [`${names.join("/")}: ${a} and ${b}`];
  });

/** All that is made on one half, for both. */
const forBoth = (work: Work, half: Half): Work => ({
  ...work,
  alterations: work.alterations.filter((a) => isMadeOn(a, half)).map((a) => onHalves(a, undefined)),
});

/** The furthest that any point or handle of two sets lies apart, mm; Infinity where they are not built alike. */
function furthest(a: readonly Piece[], b: readonly Piece[]): number {
  const spots = (pieces: readonly Piece[]) =>
    pieces.flatMap(({ name, points, edges }) => [
      ...Object.entries(points).map(([point, { at }]) => [`${name} ${point}`, at.x, at.y] as const),
      ...edges.flatMap(({ from, curve }) =>
        curve === null
          ? []
          : [
              [`${name} ${from} 1`, curve.c1.x, curve.c1.y] as const,
              [`${name} ${from} 2`, curve.c2.x, curve.c2.y] as const,
            ],
      ),
    ]);
  const [those, others] = [spots(a), new Map(spots(b).map(([key, x, y]) => [key, [x, y] as const]))];
  if (those.length !== others.size) return Infinity;
  return those.reduce((most, [key, x, y]) => {
    const [u, v] = others.get(key) ?? [Infinity, Infinity];
    return Math.max(most, Math.hypot(x - u, y - v));
  }, 0);
}

/** The work without what was left out of its plan. */
const soundOf = (work: Work, { ledger }: Plan): Work => ({
  ...work,
  alterations: work.alterations.filter(({ id }) => ledger.some((line) => line.id === id && line.outcome.ok)),
});
const isAllMade = ({ ledger }: Plan): boolean => ledger.every(({ outcome }) => outcome.ok);
/** Whether a centre was drawn to the other half's length: then no half is as it would be for both. */
const isLevelled = ({ left, right }: Plan): boolean =>
  [left, right].some(({ levelled, truing }) => levelled !== null || truing.some(({ seam }) => seam === "centre"));

interface Tally {
  apart: number;
  refused: number;
  compared: number;
}

/** All that is claimed of one work, planned in one way or another. */
function expectSewn(work: Work, planned: (of: Work) => ReturnType<typeof derivePlan>, tally: Tally): void {
  const derived = planned(work);
  if (!derived.ok) return;
  const plan = derived.value;
  expect(unsewn(plan)).toEqual([]);
  expect(plan.checks.filter(({ name, ok }) => name === "halvesWalk" && !ok)).toEqual([]);
  if (plan.left !== plan.right) tally.apart += 1;
  if (plan.ledger.some(({ outcome }) => !outcome.ok && outcome.failure.code === "alteration/halves-apart"))
    tally.refused += 1;
  const sound = soundOf(work, plan);
  const made = planned(sound);
  if (!made.ok || !isAllMade(made.value) || isLevelled(made.value)) return;
  for (const half of HALVES) {
    const { pieces } = made.value[half];
    const alone = planned(forBoth(sound, half));
    if (!alone.ok) throw new Error(alone.failure.code);
    expect(furthest(alone.value.left.pieces, pieces)).toBeLessThanOrEqual(ALIKE);
    const kept = keepHalf(sound, half);
    expect(kept.ok || sound.alterations.every((a) => a.half === undefined)).toBe(true);
    if (!kept.ok) continue;
    const after = planned(applyCommand(sound, kept.value));
    if (!after.ok) throw new Error(after.failure.code);
    expect(after.value.left).toBe(after.value.right);
    expect(furthest(after.value.left.pieces, pieces)).toBeLessThanOrEqual(ALIKE);
    tally.compared += 1;
  }
}

const FRONTS: readonly ForeignFront[] = ["side", "french", "waist", "princessArmhole", "princessShoulder"];

describe.each(FRONTS)("uneven chains on foreign fronts: %s", { timeout: PATIENCE }, (front) => {
  it("can be sewn together, each half as if all of it were for both", () => {
    const tally: Tally = { apart: 0, refused: 0, compared: 0 };
    fc.assert(
      fc.property(anyForeignWork({ front }), anyHalves, ({ foreign, work }, halves) => {
        expectSewn(unevenly(work, halves), (of) => planOfForeign({ foreign, work: of }), tally);
      }),
      { numRuns: FOREIGN_RUNS },
    );
    expect(tally.apart).toBeGreaterThan(FOREIGN_RUNS / 4);
    expect(tally.compared).toBeGreaterThan(0);
  });
});

describe.each(STYLE_NAMES)("uneven chains on the style %s", { timeout: PATIENCE }, (style) => {
  it("can be sewn together, each half as if all of it were for both, and either half kept is that half", () => {
    const tally: Tally = { apart: 0, refused: 0, compared: 0 };
    fc.assert(
      fc.property(anyChainWork(style), anyHalves, (work, halves) => {
        expectSewn(unevenly(work, halves), derivePlan, tally);
      }),
      { numRuns: RUNS },
    );
    expect(tally.apart).toBeGreaterThan(RUNS / 4);
    expect(tally.refused).toBeGreaterThan(0);
    expect(tally.compared).toBeGreaterThan(RUNS / 8);
  });

  it("give the same plan with everything made one for each half", () => {
    fc.assert(
      fc.property(anyChainWork(style), (work) => {
        const even = { ...work, alterations: work.alterations.map((a) => onHalves(a, undefined)).reduce(put, []) };
        const plan = derivePlan(even);
        if (!plan.ok) return;
        const apart = even.alterations.reduce<Work>(
          (so, { id }, at) => tryOnOther(so, id, at % 2 === 0 ? "left" : "right").reduce(applyCommand, so),
          even,
        );
        expect(apart.alterations).toHaveLength(2 * even.alterations.length);
        expect(new Set(apart.alterations.map(({ id }) => id)).size).toBe(apart.alterations.length);
        const tried = derivePlan(apart);
        if (!tried.ok) throw new Error(tried.failure.code);
        for (const half of HALVES)
          expect(furthest(tried.value[half].pieces, plan.value.left.pieces)).toBeLessThanOrEqual(ALIKE);
        // What all round the body could not be made on both was left out on each by itself.
        const due = isAllMade(plan.value) ? plan.value : tried.value;
        tried.value.levels.forEach(({ finished }, at) =>
          expect(finished).toBeCloseTo(due.levels[at]?.finished ?? NaN, 6),
        );
      }),
      { numRuns: RUNS / 2 },
    );
  });
});
