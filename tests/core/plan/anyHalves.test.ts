/**
 * What is told of both halves of the body together, against the jobs and checks of each half found on its own pieces: what
 * is alike stands once, what is not stands twice, each with its own half's figures.
 */
import type { Half } from "../../../src/core/decisions/alteration";
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { runChecks } from "../../../src/core/checks/index";
import type { CheckResult } from "../../../src/core/checks/check";
import { measuresOf } from "../../../src/core/measures/tape";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import type { Plan, PlanHalf } from "../../../src/core/plan/plan";
import { invariant } from "../../../src/core/result";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyChainWork } from "../../support/anyChainWork";
import { seamByBezierJs } from "../../support/independent";
import { planOf, withAlterations } from "../../support/works";
import { figuresApart, isPlaces, jobOf, jobsOfHalf, nameOf, wrongOrder, type Job } from "../../support/workToDo";

/** Plans of each style. */
const RUNS = 25;
/** ms. A busy machine is slow. */
const PATIENCE = 240_000;

/** mm, degrees. Figures that differ by rounding only are alike; by more than a tenth they are said apart. */
const ROUNDING = 1e-6;
const SAID_APART = 0.1;

/** Chains with something on one half alone, on the left as often as on the right. */
const anyTwoHalves = (style: (typeof STYLE_NAMES)[number]): fc.Arbitrary<Work> =>
  fc
    .record({ work: anyChainWork(style), half: fc.constantFrom("left" as const, "right" as const) })
    .map(({ work, half }) => ({
      ...work,
      alterations: work.alterations.map((alteration, i) => (i % 2 === 0 ? { ...alteration, half } : alteration)),
    }));

/** One thing told: its name, its figures, and the half it is told of. */
interface Told {
  readonly name: string;
  readonly job: Job;
  readonly half: Half | undefined;
}

/** How each thing may stand: on which halves it is told, and with whose figures. */
function wrongHalves(found: readonly Told[], left: readonly Job[], right: readonly Job[]): readonly string[] {
  const [ofLeft, ofRight] = [left, right].map((jobs) => new Map(jobs.map((job) => [nameOf(job), job])));
  const names = new Set([...invariant(ofLeft, "left").keys(), ...invariant(ofRight, "right").keys()]);
  return [
    ...found.filter(({ name }) => !names.has(name)).map(({ name }) => `${name}: found on neither half`),
    ...[...names].flatMap((name) => {
      const own = { left: ofLeft?.get(name), right: ofRight?.get(name) };
      const off = own.left === undefined || own.right === undefined ? Infinity : figuresApart(own.left, own.right);
      const told = found.filter((one) => one.name === name);
      // A dart made two on one half stands elsewhere among the darts of its piece.
      const halves = told
        .map(({ half }) => half ?? "both")
        .toSorted()
        .join(" ");
      const apart = (["left", "right"] as const).filter((half) => own[half] !== undefined).join(" ");
      const isOptional = (own.left ?? own.right)?.isOptional === true && halves === "";
      const isRight = isOptional || (off <= SAID_APART && halves === "both") || (off > ROUNDING && halves === apart);
      const figures = told.flatMap(({ job, half }) => {
        const whose = own[half ?? "left"];
        return whose !== undefined && figuresApart(job, whose) <= ROUNDING
          ? []
          : [`${name}: not the figures of the ${half ?? "left"}`];
      });
      return [...(isRight ? [] : [`${name}: told of "${halves}", ${off} apart`]), ...figures];
    }),
  ];
}

function wrongWork(work: Work, plan: Plan): readonly string[] {
  const found = plan.checklist
    .filter((item) => !isPlaces(item))
    .map((item): Told => ({ name: nameOf(jobOf(item)), job: jobOf(item), half: item.half }));
  return [
    ...wrongHalves(found, jobsOfHalf(plan, plan.left), jobsOfHalf(plan, plan.right)),
    ...(["left", "right"] as const).flatMap((half) =>
      wrongOrder(
        work,
        plan.checklist.filter((item) => item.half === undefined || item.half === half),
      ),
    ),
    ...wrongOrder(
      { ...work, alterations: [] },
      plan.checklist.filter(({ step }) => step.kind !== "alteration"),
    ),
  ];
}

/** A check of one half as a thing told, so that the same can be asked of it. */
function checkTold({ name, pieces, level, seam, dart, point, measured, expected, ok }: CheckResult): Job {
  const what = [name, ...pieces, level, seam, dart, point, ok ? "holds" : "fails"].join(" ");
  return { piece: pieces[0] ?? "front", kind: "walk", what, figures: [measured, expected] };
}

const checksOf = ({ pattern, tapes }: Work, plan: Plan, half: PlanHalf): readonly CheckResult[] => {
  const { bustGirth = NaN, hipGirth } = measuresOf(tapes);
  const alike = setOf(plan.left.pieces);
  return runChecks({
    pieces: setOf(half.pieces),
    halves: plan.left === plan.right ? [alike, alike] : [setOf(plan.left.pieces), setOf(plan.right.pieces)],
    levels: half.levels,
    darts: half.darts,
    alterations: half.alterations,
    closure: pattern.closure,
    body: { bust: bustGirth, hip: hipGirth ?? null },
  });
};

/** Seams and legs once more, by bezier-js and by the named points of the half they are told of. */
function wrongFigures(plan: Plan): readonly string[] {
  return plan.checks.flatMap(({ name, measured, pieces, seam, dart, half = "left" }) => {
    const own = plan[half].pieces.filter((piece) => pieces.includes(piece.name));
    const measuredHere = ((): number => {
      if (name === "seamsWalk" && seam !== undefined) {
        const back = pieces[0];
        const lengths = own.map((piece) => seamByBezierJs(piece, seam) * (isFirst(seam, piece.name, back) ? 1 : -1));
        return lengths.reduce((a, b) => a + b, 0);
      }
      const [piece] = own;
      if (name !== "dartLegsEqual" || dart === undefined || piece === undefined) return measured;
      const [end, inner, outer] = ([`${dart}Apex`, `${dart}Inner`, `${dart}Outer`] as const).map(
        (point) => invariant(piece.points[point], point).at,
      );
      const leg = (mouth: typeof end): number =>
        Math.hypot((mouth?.x ?? NaN) - (end?.x ?? NaN), (mouth?.y ?? NaN) - (end?.y ?? NaN));
      return leg(outer) - leg(inner);
    })();
    return Math.abs(measured - measuredHere) < 1e-3 ? [] : [`${name} of the ${half}: ${measured}, not ${measuredHere}`];
  });
}

/** Of the pieces of a seam, those on the side that is told first: at the waist the bodice's, elsewhere the first. */
const isFirst = (seam: string, piece: string, first: string | undefined): boolean =>
  seam === "waist" ? !piece.endsWith("Basque") : piece === first;

/** The lines of the ledger: the bust, her own in the order she has them in, the blend; each once, as its half has it. */
function wrongLedger({ alterations }: Work, { ledger, left, right }: Plan): readonly string[] {
  const blends = left.alterations.filter(({ source }) => source === "blend").map(({ id }) => id);
  const bust = left.alterations.filter(({ source }) => source === "bust").map(({ id }) => id);
  const expected = [...bust, ...alterations.map(({ id }) => id), ...blends];
  const ids = ledger.map(({ id }) => id);
  const strange = ledger.filter(
    (planned) =>
      planned !==
      (left.alterations.find(({ id }) => id === planned.id) ?? right.alterations.find(({ id }) => id === planned.id)),
  );
  return [
    ...(ids.join() === expected.join() ? [] : [`ledger ${ids.join()}, not ${expected.join()}`]),
    ...strange.map(({ id }) => `${id}: as neither half has it`),
  ];
}

describe.each(STYLE_NAMES)("any chain with one-sided alterations on the style %s", { timeout: PATIENCE }, (style) => {
  it("tells what is alike on both halves once and the rest of each half, with its own figures", () => {
    let [different, alike] = [0, 0];
    fc.assert(
      fc.property(anyTwoHalves(style), (work) => {
        const derived = derivePlan(work);
        if (!derived.ok) return;
        const plan = derived.value;
        const checks = plan.checks.map((check): Told => ({
          name: nameOf(checkTold(check)),
          job: checkTold(check),
          half: check.half,
        }));
        const [left, right] = [plan.left, plan.right].map((half) => checksOf(work, plan, half).map(checkTold));
        expect([
          ...wrongLedger(work, plan),
          ...wrongWork(work, plan),
          ...wrongHalves(checks, invariant(left, "left"), invariant(right, "right")),
          ...wrongFigures(plan),
        ]).toEqual([]);
        if (plan.left === plan.right) alike += 1;
        else different += 1;
      }),
      { numRuns: RUNS },
    );
    expect(different).toBeGreaterThan(RUNS / 4);
    expect(alike).toBeGreaterThan(0);
  });
});

describe("an amount that is dragged on one half", () => {
  it("leaves the other half's pieces the very same objects", () => {
    const fit = { kind: "fit", fit: "sideSeamWaist" } as const;
    const right = { ...fit, id: "right", amount: 6, half: "right" } as const;
    const drawn = [4, 5].map((amount) => planOf(withAlterations({ ...fit, id: "left", amount, half: "left" }, right)));
    const [before, after] = [invariant(drawn[0], "before"), invariant(drawn[1], "after")];
    for (const [at, piece] of after.right.pieces.entries()) expect(piece).toBe(before.right.pieces[at]);
    expect(after.left.pieces.some((piece, at) => piece !== before.left.pieces[at])).toBe(true);
  });
});
