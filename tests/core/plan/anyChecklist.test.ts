/**
 * The order of work against what a dressmaker finds to do who lays the pieces beside what they were: for any chain of
 * alterations, in every style, each job once, nothing else, in the trade's order and with figures measured on the pieces.
 */
import type { Alteration } from "../../../src/core/decisions/alteration";
import { STYLE_NAMES, type StyleName } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import type { PieceName } from "../../../src/core/pattern/piece";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import type { Plan } from "../../../src/core/plan/plan";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyChainWork } from "../../support/anyChainWork";
import { planOf, ref, testWork, withAlterations } from "../../support/works";
import {
  figuresApart,
  IN_CUPS,
  isPlaces,
  jobOf,
  jobsOfHalf,
  nameOf,
  wrongOrder,
  type JobKind,
} from "../../support/workToDo";

/** Plans of each style. */
const RUNS = 30;

/** ms. A busy machine is slow. */
const PATIENCE = 240_000;

/** mm. Two ways of taking one distance differ by rounding only. */
const ROUNDING = 1e-6;

/** The same for both halves. */
const onBothHalves = (work: Work): Work => ({
  ...work,
  alterations: work.alterations.map((alteration): Alteration => {
    if (alteration.kind !== "fit") return alteration;
    const { half: _half, ...both } = alteration;
    return both;
  }),
});

/** The front made into two pieces first, by a seam of its darts; what comes after is made on those. */
const seamed = (work: Work): Work => ({
  ...work,
  alterations: [
    { kind: "dartPivot", id: "to", dart: ref("front", "sideDart"), to: "shoulder", share: 1 },
    { kind: "dartSeam", id: "seam", dart: ref("front", "shoulderDart") },
    ...work.alterations,
  ],
});

/** Jobs that stand too often or not at all, jobs that nobody has to do, and figures that the pieces do not bear out. */
function wrongJobs(plan: Plan): readonly string[] {
  const found = plan.checklist.filter((item) => !isPlaces(item)).map(jobOf);
  const expected = jobsOfHalf(plan, plan.left);
  const known = new Set(expected.map(nameOf));
  return [
    ...expected.flatMap((job): readonly string[] => {
      const same = found.filter((one) => nameOf(one) === nameOf(job));
      if (same.length === 0 && job.isOptional === true) return [];
      if (same.length !== 1) return [`${nameOf(job)}: ${same.length} times`];
      return same.flatMap((one) =>
        figuresApart(one, job) <= ROUNDING
          ? []
          : [`${nameOf(job)}: ${one.figures.join(" ")}, not ${job.figures.join(" ")}`],
      );
    }),
    ...found.filter((job) => !known.has(nameOf(job))).map((job) => `${nameOf(job)}: nothing to do`),
  ];
}

describe.each(STYLE_NAMES)("any chain on the style %s", { timeout: PATIENCE }, (style) => {
  it("has each job once on the pieces that it changes, in order, with the figures of the pieces", () => {
    const seen = new Set<JobKind>();
    fc.assert(
      fc.property(anyChainWork(style).map(onBothHalves), (work) => {
        const derived = derivePlan(work);
        if (!derived.ok) return;
        const plan = derived.value;
        expect([...wrongJobs(plan), ...wrongOrder(work, plan.checklist)]).toEqual([]);
        expect(plan.checklist.filter(({ half }) => half !== undefined)).toEqual([]);
        for (const { step } of plan.checklist) seen.add(step.kind);
      }),
      { numRuns: RUNS },
    );
    // Every kind of job came up, or the property would say less than it seems to.
    expect([...seen].toSorted()).toEqual([
      "alteration",
      "blend",
      "bust",
      "dart",
      "places",
      "trace",
      "trueDart",
      "trued",
      "walk",
    ]);
  });
});

it(
  "has each job once where darts are made into a seam and the front is two pieces after that",
  { timeout: PATIENCE },
  () => {
    let seams = 0;
    fc.assert(
      fc.property(anyChainWork("sideDart").map(onBothHalves).map(seamed), (work) => {
        const derived = derivePlan(work);
        if (!derived.ok) return;
        const plan = derived.value;
        expect([...wrongJobs(plan), ...wrongOrder(work, plan.checklist)]).toEqual([]);
        if (plan.left.pieces.some(({ name }) => name === "sideFront")) seams += 1;
      }),
      { numRuns: RUNS },
    );
    expect(seams).toBeGreaterThan(RUNS / 3);
  },
);

const stepsOf = ({ checklist }: Plan, piece: PieceName): readonly string[] =>
  checklist.filter((item) => item.piece === piece && item.step.kind !== "walk").map(({ step }) => step.kind);

describe("nothing to do", () => {
  it.each<Alteration>([
    { kind: "fit", id: "a", fit: "lengthAboveBust", amount: 0 },
    { kind: "fit", id: "a", fit: "sideSeamHip", amount: 0 },
    { kind: "dartLegs", id: "a", dart: ref("back", "waistDart"), bow: 0 },
    { kind: "dartEnd", id: "a", dart: ref("front", "waistDart"), shorten: 0, across: 0, hold: "mouth", giveBack: {} },
    { kind: "dartMouth", id: "a", dart: ref("back", "waistDart"), inner: 0, outer: 0, giveBack: {} },
    { kind: "dartPlace", id: "a", dart: ref("front", "waistDart"), by: 0, how: "redraw", giveBack: {} },
  ])("is told of $kind by nothing", (alteration) => {
    const plan = planOf(withAlterations(alteration));
    expect(plan.ledger.find(({ id }) => id === "a")?.outcome.ok).toBe(true);
    expect(plan.checklist.filter(({ step }) => step.kind === "alteration")).toEqual([]);
  });

  it("is told of an alteration that could not be made", () => {
    const plan = planOf(withAlterations({ kind: "fit", id: "a", fit: "lengthAboveBust", amount: 500 }));
    expect(plan.ledger.find(({ id }) => id === "a")?.outcome.ok).toBe(false);
    expect(plan.checklist.filter(({ step }) => step.kind === "alteration")).toEqual([]);
  });
});

describe("a dart as printed", () => {
  const plain: Work = { ...testWork, picks: { baseSize: "14", waist: 4, hip: 4, bustAlteration: 0 } };

  it("is neither drawn nor folded for truing where nothing is moved", () => {
    for (const piece of ["front", "back", "frontBasque", "backBasque"] as const)
      expect(stepsOf(planOf(plain), piece).filter((kind) => kind !== "blend")).toEqual(["trace"]);
  });

  it("is folded, and the side seam cut over it, where that seam goes to another printed line", () => {
    const wider = planOf({ ...plain, picks: { ...plain.picks, waist: 5 } });
    // The line for the waist lies on the printed 16, a size outside the 14 that is traced.
    expect(wider.left.cutLines.find(({ piece }) => piece === "front")).toMatchObject({
      between: ["16", "18"],
      share: 0,
    });
    expect(stepsOf(wider, "front")).toEqual(["trace", "blend", "places", "trueDart"]);
    expect(stepsOf(wider, "back")).toEqual(["trace", "blend"]);
  });

  it("is drawn where its mouth is moved along its seam, end and width as they were", () => {
    const moved: Alteration = {
      kind: "dartMouth",
      id: "a",
      dart: ref("back", "waistDart"),
      inner: -5,
      outer: 5,
      giveBack: {},
    };
    const plan = planOf({ ...plain, alterations: [moved] });
    const dart = plan.left.darts.find(({ ref: { piece, dart: name } }) => piece === "back" && name === "waistDart");
    expect(Math.abs((dart?.drawn.intake ?? 0) - (dart?.printed?.intake ?? 0))).toBeLessThan(1);
    expect(stepsOf(plan, "back")).toEqual(["trace", "blend", "alteration", "dart", "trueDart"]);
  });
});

it.each(STYLE_NAMES)(
  "names the cup version of %s where the pattern prints one, and there alone",
  (style: StyleName) => {
    const picks = { baseSize: "14", waist: 4, hip: 4, bustAlteration: 0 };
    const inCup = (cup: string): Plan =>
      planOf({ ...testWork, pattern: { ...testWork.pattern, style }, picks: { ...picks, cup } });
    const [small, large] = [inCup("B"), inCup("D")];
    const printedAnew = small.printed
      .filter((piece, i) => JSON.stringify(piece) !== JSON.stringify(large.printed[i]))
      .map(({ name }) => name);
    const told = large.checklist.flatMap(({ piece, step }) =>
      step.kind === "trace" && step.cup === "D" ? [piece] : [],
    );
    expect(told).toEqual(printedAnew);
    expect(IN_CUPS).toEqual(expect.arrayContaining(printedAnew));
  },
);
