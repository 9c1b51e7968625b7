/**
 * Random bodies, styles and chains of up to eight alterations: either a plan whose pieces can be cut, with every fault
 * told by a check, or a named refusal. Never a crash, never a number that is none.
 */
import { tapesOf } from "../../../src/core/measures/tape";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FIT_NAMES, fitOf } from "../../../src/core/alterations/fit/index";
import { outlineBounds, signedArea } from "../../../src/core/geometry/outline";
import { DART_HOMES } from "../../../src/core/pattern/dartNames";
import type { DartName, DartRef, Piece, PieceName, SeamName } from "../../../src/core/pattern/piece";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import type { Plan } from "../../../src/core/plan/plan";
import type { Alteration, Work } from "../../../src/core/plan/work";
import { STYLE_NAMES } from "../../../src/core/style/index";
import type { StyleName } from "../../../src/core/style/style";
import { outlineOf } from "../../../src/core/surgery/ring";
import { crossesItself, seamByBezierJs } from "../../support/independent";
import { anyAmount } from "../../support/amounts";
import { testWork } from "../../support/works";

/** How many plans of each style; more by hand, to look for what is rare. */
const RUNS = Number(process.env.CHAINS ?? 60);

const DARTS: Readonly<Record<StyleName, readonly DartRef[]>> = {
  sideDart: darts(["front", "sideDart"], ["front", "waistDart"], ["back", "waistDart"], ["front", "armholeDart"], ["front", "frenchDart"], ["front", "sideDart2"], ["front", "shoulderDart"]),
  midriff: darts(["cup", "underBustDart"], ["cup", "underBustDart2"], ["cup", "sideDart"], ["back", "underBustDart"], ["frontBasque", "waistDart"]),
  princessArmhole: darts(["back", "waistDart"], ["backBasque", "waistDart"]),
  princessShoulder: darts(["back", "waistDart"], ["frontBasque", "waistDart"]),
};

function darts(...refs: readonly (readonly [PieceName, DartName])[]): readonly DartRef[] {
  return refs.map(([piece, dart]) => ({ piece, dart }));
}

/** Small mostly, now and then up to the ends of what is ever sensible. */
const share = fc.oneof({ weight: 3, arbitrary: anyAmount(-0.3, 0.3) }, { weight: 1, arbitrary: anyAmount(-1, 1) });

const anyFit = fc
  .record({ fit: fc.constantFrom(...FIT_NAMES), share, half: fc.constantFrom("left" as const, "right" as const, null, null, null) })
  .map(({ fit, share: of, half }): Alteration => {
    const { least, most } = fitOf(fit).range;
    const amount = of < 0 ? Math.abs(of) * Math.min(least, 0) : of * most;
    return { kind: "fit", id: `${fit}-${half ?? "both"}`, fit, amount, ...(half === null ? {} : { half }) };
  });

const anyOnDart = (dart: DartRef): fc.Arbitrary<Alteration> => {
  const on = { dart: fc.constant(dart), giveBack: fc.constant({}) };
  const id = fc.constantFrom("a", "b", "c", "d", "e", "f").map((name) => `${name}-${dart.piece}-${dart.dart}`);
  return fc.oneof(
    fc.record({ kind: fc.constant("dartEnd" as const), id, ...on, shorten: anyAmount(-20, 40), across: anyAmount(-12, 12), hold: fc.constantFrom("mouth" as const, "fullness" as const) }),
    fc.record({ kind: fc.constant("dartMouth" as const), id, ...on, inner: anyAmount(-6, 8), outer: anyAmount(-6, 8) }),
    fc.record({ kind: fc.constant("dartPlace" as const), id, ...on, by: anyAmount(-12, 12), how: fc.constantFrom("redraw" as const, "offCentreSeam" as const) }),
    fc.record({ kind: fc.constant("dartPivot" as const), id, dart: fc.constant(dart), to: fc.constantFrom(...DART_HOMES), share: fc.constantFrom(0.3, 0.5, 1) }),
    fc.record({ kind: fc.constant("dartSplit" as const), id, dart: fc.constant(dart), into: fc.constantFrom(2 as const, 3 as const) }),
    fc.record({ kind: fc.constantFrom("dartGather" as const, "dartSeam" as const), id, dart: fc.constant(dart) }),
    fc.record({ kind: fc.constant("dartLegs" as const), id, dart: fc.constant(dart), bow: anyAmount(-7, 7) }),
  );
};

const anyBody = fc.record({ bust: anyAmount(780, 1140), out: anyAmount(20, 150), waist: anyAmount(-280, -60), hip: anyAmount(-20, 190) });

const anyOf = (style: StyleName): fc.Arbitrary<Work> =>
  fc
    .record({
      body: anyBody,
      alterations: fc.array(fc.oneof({ weight: 3, arbitrary: anyFit }, { weight: 2, arbitrary: fc.constantFrom(...DARTS[style]).chain(anyOnDart) }), {
        maxLength: 8,
      }),
      length: fc.constantFrom("waist" as const, "hip" as const),
      strap: fc.constantFrom("thin" as const, "wide" as const),
    })
    .map(({ body, alterations, length, strap }) => ({
      ...testWork,
      tapes: tapesOf({ bustGirth: body.bust, upperChestGirth: body.bust - body.out, waistGirth: body.bust + body.waist, hipGirth: body.bust + body.hip }),
      pattern: { ...testWork.pattern, style, length, strap },
      alterations: alterations.map((a, index) => ({ ...a, id: `${index}-${a.id}` })),
    }));

function badNumbers(value: unknown, path = ""): string[] {
  // A margin may be without end.
  if (typeof value === "number") return Number.isFinite(value) || path.endsWith(".margin") ? [] : [path];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => badNumbers(inner, `${path}.${key}`));
}

/** A piece is spoilt when it has no area to speak of or crosses itself, by a library of others. */
const isSpoilt = (piece: Piece): boolean => {
  const { min, max } = outlineBounds(outlineOf(piece));
  const area = Math.abs(signedArea(outlineOf(piece)));
  return !(area > 200 && max.x - min.x > 5 && max.y - min.y > 5) || crossesItself(piece);
};

function toldOf(plan: Plan, piece: PieceName): boolean {
  return plan.checks.some(({ name, ok, pieces }) => name === "outlineClosed" && !ok && pieces.includes(piece));
}

/** Seams that do not walk, by bezier-js; the back shoulder is drafted 6 mm longer. */
function unwalked(pieces: readonly Piece[]): string[] {
  const of = (names: readonly PieceName[], seam: SeamName): number =>
    pieces.filter(({ name }) => names.includes(name)).reduce((sum, piece) => sum + seamByBezierJs(piece, seam), 0);
  return SEWN.flatMap(([seam, first, second, ease]) => {
    const [a, b] = [of(first, seam), of(second, seam)];
    return a > 0 && b > 0 && Math.abs(a - b - ease) > 1.5 ? [`${seam} of ${first.join("+")}: ${a} and ${b}`] : [];
  });
}

const FRONTS: readonly PieceName[] = ["front", "centreFront", "sideFront", "cup"];
const SEWN: readonly (readonly [SeamName, readonly PieceName[], readonly PieceName[], number])[] = [
  ["shoulder", ["back"], FRONTS, 6],
  ["side", ["back"], FRONTS, 0],
  ["princess", ["centreFront"], ["sideFront"], 0],
  ["underBust", ["cup"], ["frontBand"], 0],
  ["underBust", ["back"], ["backBand"], 0],
  ["side", ["backBand"], ["frontBand"], 0],
  ["waist", [...FRONTS, "frontBand"], ["frontBasque"], 0],
  ["waist", ["back", "backBand"], ["backBasque"], 0],
  ["side", ["backBasque"], ["frontBasque"], 0],
];

describe.each(STYLE_NAMES)("any chain on the style %s", (style) => {
  it("gives pieces that can be cut, or says which fault or refusal there is", () => {
    fc.assert(
      fc.property(anyOf(style), (work) => {
        const plan = derivePlan(work);
        if (!plan.ok) {
          if (!plan.failure.code.startsWith("plan/")) throw new Error(plan.failure.code);
          return;
        }
        const { value } = plan;
        expect(badNumbers(value.pieces)).toEqual([]);
        expect(badNumbers(value.right)).toEqual([]);
        expect(badNumbers(value.levels)).toEqual([]);
        expect(value.slips.filter(({ outcome }) => !outcome.ok && !outcome.failure.code.startsWith("slip/"))).toEqual([]);
        expect(unwalked(value.pieces).filter(() => !value.checks.some(({ name, ok }) => name === "seamsWalk" && !ok))).toEqual([]);
        const silent = [...value.pieces, ...(value.right?.pieces ?? [])].filter((piece) => isSpoilt(piece) && !toldOf(value, piece.name));
        expect(silent.map(({ name }) => name)).toEqual([]);
      }),
      { numRuns: RUNS },
    );
  }, Math.max(120_000, RUNS * 200));
});
