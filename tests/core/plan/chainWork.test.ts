/**
 * How much work a chain of alterations is, by how often a line is measured: a count, since a time says as much of the
 * machine. And that no chain, however harsh, makes nonsense. `npm run chains` plans many thousands, and times them.
 */
import * as fc from "fast-check";
import { beforeEach, describe, expect, it, vi } from "vitest";
import type { Alteration } from "../../../src/core/decisions/alteration";
import { FIT_NAMES } from "../../../src/core/decisions/fitNames";
import { LIMITS } from "../../../src/core/decisions/limits";
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { alterationConflicts } from "../../../src/core/plan/alterationConflicts";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { demoWorks } from "../../../src/document/demo";
import { faultsOfPlan } from "../../support/faultsOfPlan";
import { harshChainWork } from "../../support/harshChainWork";
import { seamByBezierJs } from "../../support/independent";
import { tapesOf } from "../../../src/core/measures/tape";
import { planOf, testWork, withAlterations } from "../../support/works";

const counted = vi.hoisted(() => ({ lengths: 0 }));

vi.mock("../../../src/core/geometry/edgeCurve", async (original) => {
  const real = await original<typeof import("../../../src/core/geometry/edgeCurve")>();
  return {
    ...real,
    edgeLength: (edge: Parameters<typeof real.edgeLength>[0]) => {
      counted.lengths += 1;
      return real.edgeLength(edge);
    },
  };
});

/** Lengths measured for a plan whose sizes are picked already. */
function measuredFor(work: Work): number {
  const { alterations } = work;
  derivePlan({ ...work, alterations: [] });
  counted.lengths = 0;
  derivePlan({ ...work, alterations: alterations.map((alteration) => ({ ...alteration })) });
  return counted.lengths;
}

beforeEach(() => {
  counted.lengths = 0;
});

/** Of up to sixteen alterations; of some hundred chains half needed under 200, one in a hundred 2100, the worst 5500. */
const MOST_LENGTHS = 6000;

/** A little more than each takes: what is measured twice again is noticed. The draft itself takes 240 of the first. */
const DEMOS = [
  { style: "sideDart", length: "hip", drafted: 700, onPicks: 20 },
  { style: "midriff", length: "waist", drafted: 250, onPicks: 20 },
  { style: "princessArmhole", length: "hip", drafted: 680, onPicks: 20 },
] as const;

describe.each(DEMOS)("the demo work of the style $style", ({ style, length, drafted, onPicks }) => {
  const work = demoWorks().find(({ pattern }) => pattern.style === style && pattern.length === length);
  if (work === undefined) throw new Error(`no demo work of the style ${style}`);

  it("is planned with few lengths measured, nothing remembered", () => {
    derivePlan({ ...work, pattern: { ...work.pattern } });
    expect(counted.lengths).toBeLessThan(drafted);
    // That nothing is measured any more would say that nothing is counted.
    expect(counted.lengths).toBeGreaterThan(drafted / 2);
  });

  it("is planned with fewer where its sizes are picked already", () => {
    expect(measuredFor(work)).toBeLessThan(onPicks);
  });
});

describe.each(STYLE_NAMES)("harsh chains on the style %s", (style) => {
  it("give a plan that makes sense, or named refusals, and ask for no more work than a drag can bear", () => {
    fc.assert(
      fc.property(harshChainWork(style), (work) => {
        expect(measuredFor(work)).toBeLessThan(MOST_LENGTHS);
        expect(faultsOfPlan(derivePlan(work))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  }, 120_000);
});

describe("as many alterations as a work can hold", () => {
  const dart = { piece: "front", dart: "waistDart" } as const;
  const anyFit = (index: number): Alteration => ({
    kind: "fit",
    id: String(index),
    fit: FIT_NAMES[index % FIT_NAMES.length] ?? "swayBack",
    amount: index % 2 === 0 ? 1 : -1,
    ...(index % 3 === 0 ? { half: "left" as const } : {}),
  });
  const KINDS: Readonly<Record<string, (index: number) => Alteration>> = {
    "of one dart's end": (index) => ({
      kind: "dartEnd",
      id: String(index),
      dart,
      shorten: index % 2 === 0 ? 1 : -1,
      across: 0,
      hold: "fullness",
      giveBack: {},
    }),
    "of one dart's mouth, all refused": (index) => ({
      kind: "dartMouth",
      id: String(index),
      dart,
      inner: -100 - index,
      outer: 0,
      giveBack: {},
    }),
    "of every fit, some on one half alone": anyFit,
  };
  const chainOf = (of: (index: number) => Alteration, count: number): Work =>
    withAlterations(...Array.from({ length: count }, (_, index) => of(index)));

  it.each(Object.keys(KINDS))("are no more work each than half as many: %s", (kind) => {
    const of = KINDS[kind] ?? (() => ({ kind: "dartGather", id: "", dart }) as const);
    const [half, whole] = [LIMITS.alterations / 2, LIMITS.alterations].map((count) => measuredFor(chainOf(of, count)));
    // What sets the halves apart is sought a few times over.
    expect(whole).toBeLessThan(2.6 * (half ?? 0));
  });

  it("each name no more alterations before it than seams they change", () => {
    const { ledger } = planOf(chainOf(anyFit, LIMITS.alterations));
    const conflicts = alterationConflicts(ledger);
    for (const { id } of ledger) expect(conflicts.filter(({ b }) => b === id).length).toBeLessThan(30);
    expect(new Set(conflicts.map(({ b }) => b)).size).toBeGreaterThan(90);
  });
});

describe("an armhole drawn so low that it all but reaches the side dart, which was moved up on one half", () => {
  // The stretch of side seam above the dart is then so short that a wider mouth bends it more than it shortens it.
  const work: Work = {
    ...testWork,
    tapes: tapesOf({ bustGirth: 871.421, upperChestGirth: 814.701, waistGirth: 811.405, hipGirth: 911.625 }),
    pattern: { ...testWork.pattern, length: "waist", strap: "thin" },
    alterations: [
      { kind: "fit", id: "a", fit: "bustPointLevel", amount: -5.04, half: "right" },
      { kind: "fit", id: "b", fit: "armholeDepth", amount: 16.5 },
    ],
  };

  it("is trued: both side seams are of one length, and no longer than a body", () => {
    const plan = planOf(work);
    expect(plan.ledger.every(({ outcome }) => outcome.ok)).toBe(true);
    const [front, back] = ["front", "back"].map((name) => plan.right.pieces.find((piece) => piece.name === name));
    const [one, other] = [front, back].map((piece) => (piece === undefined ? NaN : seamByBezierJs(piece, "side")));
    expect(Math.abs((one ?? NaN) - (other ?? NaN))).toBeLessThan(0.06);
    expect(one).toBeLessThan(300);
    expect(plan.checks.filter(({ name, ok }) => name === "outlineClosed" && !ok)).toEqual([]);
  });
});
