/**
 * Plans for works nobody would think of: uneven charts, waists larger than busts, frames far from the body, chains of
 * alterations. Each is planned or refused with a reason; nothing is no number; and what does not come out is said by a check.
 */
import type { Alteration, GiveBack } from "../../../src/core/decisions/alteration";
import type { PlanFailure } from "../../../src/core/plan/planFailure";
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import { tapesOf } from "../../../src/core/measures/tape";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isBasque } from "../../../src/core/pattern/pieceGroups";
import type { SizeRow } from "../../../src/core/chart/sizeChart";
import type { DartRef, Piece, PieceName, SeamName } from "../../../src/core/pattern/piece";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import type { Plan } from "../../../src/core/plan/plan";
import type { Work } from "../../../src/core/decisions/work";
import { invariant } from "../../../src/core/result";
import { anyAmount } from "../../support/amounts";
import { crossesItself, seamByBezierJs, seamByChords } from "../../support/independent";
import { ref } from "../../support/works";

const DARTS: readonly DartRef[] = [
  ref("front", "waistDart"),
  ref("front", "sideDart"),
  ref("back", "waistDart"),
  ref("frontBasque", "waistDart"),
  ref("backBasque", "waistDart"),
];
const maybe = <T>(one: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(one, { nil: undefined });
const set = <K extends string, V>(key: K, value: V | undefined): { readonly [k in K]?: V } =>
  // A computed key widens to a string, which the return type narrows again.
  value === undefined ? {} : ({ [key]: value } as { readonly [k in K]: V });

const chartOf = fc
  .record({
    first: fc.tuple(anyAmount(650, 1000), anyAmount(480, 1200), anyAmount(640, 1200)),
    steps: fc.array(fc.tuple(anyAmount(4, 110), anyAmount(0, 120), anyAmount(0, 120)), { minLength: 1, maxLength: 19 }),
    finished: maybe(fc.tuple(anyAmount(-10, 160), anyAmount(-30, 120), anyAmount(-10, 140))),
    draftedDifference: fc.oneof(fc.constant(50), anyAmount(30, 110)),
    cups: fc.nat(3),
    cupStep: anyAmount(8, 40),
  })
  .map(({ first, steps, finished, draftedDifference, cups, cupStep }) => {
    let [bust, waist, hip] = first;
    const sizes = [[0, 0, 0] as const, ...steps].map(([b, w, h], index): SizeRow => {
      [bust, waist, hip] = [bust + b, waist + w, hip + h];
      const printed =
        finished === undefined
          ? {}
          : { finishedBust: bust + finished[0], finishedWaist: waist + finished[1], finishedHip: hip + finished[2] };
      return { label: `s${index}`, bust, waist, hip, ...printed };
    });
    const versions = Array.from({ length: cups }, (_, i) => ({
      label: `v${i}`,
      difference: draftedDifference + i * cupStep,
    }));
    return { sizes, draftedDifference, cups: versions };
  });

const sharesFor = ({ piece, dart }: DartRef, weights: readonly number[]): GiveBack => {
  const places =
    dart === "sideDart"
      ? ["underarm", "waistEnd"]
      : piece.endsWith("Basque")
        ? ["sideSeam", "centreSeam"]
        : ["sideSeam", "centreSeam", "otherDart"];
  const sum = places.reduce((total, _, i) => total + (weights[i] ?? 0), 0);
  return sum === 0 ? {} : Object.fromEntries(places.map((place, i) => [place, (weights[i] ?? 0) / sum]));
};

const amount = (usual: number): fc.Arbitrary<number> =>
  fc.oneof(
    { weight: 3, arbitrary: anyAmount(-usual, usual) },
    { weight: 1, arbitrary: anyAmount(-8 * usual, 8 * usual) },
  );

const anyAlteration: fc.Arbitrary<Alteration> = fc.constantFrom(...DARTS).chain((dart) => {
  const common = {
    id: fc.constant(""),
    dart: fc.constant(dart),
    giveBack: fc.array(fc.nat(100), { minLength: 3, maxLength: 3 }).map((w) => sharesFor(dart, w)),
  };
  return fc.oneof(
    fc.record({
      ...common,
      kind: fc.constant("dartEnd" as const),
      shorten: amount(30),
      across: amount(12),
      hold: fc.constantFrom("mouth" as const, "fullness" as const),
    }),
    fc.record({ ...common, kind: fc.constant("dartMouth" as const), inner: amount(6), outer: amount(6) }),
    fc.record({
      ...common,
      kind: fc.constant("dartPlace" as const),
      by: amount(8),
      how: fc.constantFrom("redraw" as const, "offCentreSeam" as const),
    }),
  );
});

const anyWork: fc.Arbitrary<Work> = fc
  .record({
    chart: chartOf,
    ease: fc.record({ bust: anyAmount(-20, 160), waist: anyAmount(-40, 120), hip: anyAmount(-20, 150) }),
    length: fc.constantFrom("waist" as const, "hip" as const),
    closure: fc.record({
      place: fc.constantFrom("centreBack" as const, "side" as const),
      belowWaist: anyAmount(0, 300),
    }),
    style: fc.constantFrom(...STYLE_NAMES),
    strap: fc.constantFrom("thin" as const, "wide" as const),
    where: anyAmount(0, 1),
    off: fc.tuple(anyAmount(-80, 80), anyAmount(-120, 150), anyAmount(-120, 150)),
    standsOut: maybe(anyAmount(-10, 180)),
    point: maybe(fc.tuple(anyAmount(120, 280), anyAmount(195, 400))),
    baseSize: maybe(fc.nat(19)),
    waist: maybe(anyAmount(-2, 21)),
    hip: maybe(anyAmount(-2, 21)),
    bustAlteration: maybe(anyAmount(-120, 150)),
    alterations: fc.array(anyAlteration, { maxLength: 8 }),
  })
  .map(
    ({
      chart,
      ease,
      length,
      closure,
      style,
      strap,
      where,
      off,
      standsOut,
      point,
      baseSize,
      waist,
      hip,
      bustAlteration,
      alterations,
    }) => {
      const [first, last] = [chart.sizes[0], chart.sizes.at(-1)];
      if (first === undefined || last === undefined) throw new Error("no sizes");
      const about = (column: "bust" | "waist" | "hip", by: number): number =>
        first[column] + (last[column] - first[column]) * where + by;
      const bustGirth = about("bust", off[0]);
      return {
        name: "any",
        invented: true,
        unit: "cm",
        paper: "A4",
        tapes: tapesOf({
          bustGirth,
          waistGirth: about("waist", off[1]),
          hipGirth: about("hip", off[2]),
          ...set("upperChestGirth", standsOut === undefined ? undefined : bustGirth - standsOut),
          ...set("bustPointWidth", point?.[0]),
          ...set("sideNeckToBustPoint", point?.[1]),
        }),
        pattern: { name: "any", chart, ease, length, closure, style, strap },
        easeWanted: {},
        picks: {
          ...set("baseSize", baseSize === undefined ? undefined : `s${baseSize % chart.sizes.length}`),
          ...set("waist", waist === undefined ? undefined : Math.min(waist, chart.sizes.length + 1)),
          ...set("hip", hip === undefined ? undefined : Math.min(hip, chart.sizes.length + 1)),
          ...set("bustAlteration", bustAlteration),
        },
        alterations: alterations.map((planned, index) => ({ ...planned, id: `slip${index}` })),
        unread: {},
      };
    },
  );

/** Names of the places in a value that hold a number that is none; a margin may be without end. */
function noNumbers(value: unknown, name = ""): string[] {
  if (typeof value === "number") return Number.isFinite(value) || name === "margin" ? [] : [`${name} = ${value}`];
  if (typeof value !== "object" || value === null) return [];
  const found: string[] = [];
  for (const [key, one] of Object.entries(value)) if (typeof one !== "string") found.push(...noNumbers(one, key));
  return found;
}

const REASONS: readonly PlanFailure["code"][] = ["plan/chart-unusable", "plan/outside-chart", "plan/cup-undraftable"];

/** What is sewn together, in every style: those of one side that a plan has, and those of the other. */
const SEWN: readonly (readonly [SeamName, readonly PieceName[], readonly PieceName[]])[] = [
  ["side", ["front", "sideFront", "cup"], ["back"]],
  ["side", ["frontBand"], ["backBand"]],
  ["side", ["frontBasque"], ["backBasque"]],
  ["waist", ["front", "centreFront", "sideFront", "frontBand"], ["frontBasque"]],
  ["waist", ["back", "backBand"], ["backBasque"]],
];

/** mm. What the checks allow, and as much for the library on the tight curves that such works can have. */
const NEAR = 0.1;

/** Checks that must fail, as the independent libraries see the pieces, and do not. */
function silent(plan: Plan, crossed: readonly Piece[]): string[] {
  const failing = new Set(plan.checks.filter(({ ok }) => !ok).map(({ name, pieces }) => `${name} ${pieces.join("+")}`));
  const names = new Set(plan.checks.filter(({ ok }) => !ok).map(({ name }) => name));
  const of = (pieces: readonly PieceName[], seam: SeamName, by = seamByBezierJs): number =>
    plan.left.pieces.filter(({ name }) => pieces.includes(name)).reduce((sum, piece) => sum + by(piece, seam), 0);
  const bodice = plan.left.pieces.map(({ name }) => name).filter((name) => !isBasque(name));
  const level = invariant(
    plan.levels.find((one) => one.level === "waist"),
    "waist",
  );
  const girth = 2 * of(bodice, "waist");
  const refused = plan.ledger.filter(({ outcome }) => !outcome.ok).map(({ piece }) => piece);
  const due = [
    // A line that crosses itself never passes for a sound outline.
    ...crossed.map(({ name }) => `outlineClosed ${name}`),
    ...(refused.length > 0 ? [`alterationsMade ${[...new Set(refused)].join("+")}`] : []),
  ];
  // The library itself is out by some hundredths on the tight curves that such works can have.
  const misread = Math.abs(girth - level.finished) < 0.5 ? [] : [`waist ${level.finished} is ${girth}`];
  const unsaid = [
    ...(Math.abs(girth - level.claim) > NEAR && !names.has("girthAsClaimed") ? ["the waist is not as claimed"] : []),
    ...SEWN.filter(([seam, first, second]) => {
      const [one, other] = [of(first, seam), of(second, seam)];
      if (!(one > 0) || !(other > 0) || Math.abs(one - other) <= NEAR || names.has("seamsWalk")) return false;
      // On a curve that turns within a millimetre the library is out by tenths.
      return !(Math.abs(of(first, seam, seamByChords) - of(second, seam, seamByChords)) <= NEAR);
    }).map(([seam, first]) => `the ${seam} of ${first.join(" or ")} does not walk`),
  ];
  return [...misread, ...unsaid, ...due.filter((check) => !failing.has(check))];
}

describe("any work at all", () => {
  it("is planned or refused with a reason and numbers; no crash, no NaN, nothing wrong in silence", () => {
    const seen = { plans: 0, refusals: 0, alterations: 0, crossed: 0 };
    fc.assert(
      fc.property(anyWork, (work) => {
        const plan = derivePlan(work);
        expect(noNumbers(plan)).toEqual([]);
        const crossed = plan.ok ? plan.value.left.pieces.filter(crossesItself) : [];
        seen[plan.ok ? "plans" : "refusals"] += 1;
        seen.alterations += plan.ok ? work.alterations.length : 0;
        seen.crossed += crossed.length;
        expect(
          plan.ok ? silent(plan.value, crossed) : REASONS.filter((reason) => reason === plan.failure.code),
        ).toEqual(plan.ok ? [] : [plan.failure.code]);
      }),
      { numRuns: 350, seed: 4, endOnFailure: true },
    );
    // Half of it at least must really be planned, or the claims above were hardly tried.
    expect(seen.plans).toBeGreaterThan(250);
    expect(seen.refusals).toBeGreaterThan(5);
    expect(seen.alterations).toBeGreaterThan(800);
    expect(seen.crossed).toBeGreaterThan(0);
  }, 240_000);

  it("gives the same plan again, whatever was asked between", () => {
    fc.assert(
      fc.property(anyWork, anyWork, (work, other) => {
        const first = derivePlan(work);
        derivePlan(other);
        derivePlan({ ...work, tapes: other.tapes });
        expect(derivePlan(work)).toEqual(first);
        // A pattern of its own, so that nothing is remembered.
        expect(derivePlan({ ...work, pattern: { ...work.pattern } })).toEqual(first);
      }),
      { numRuns: 40, seed: 7 },
    );
  }, 120_000);
});
