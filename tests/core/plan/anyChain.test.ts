/**
 * Random bodies, styles and chains of up to eight alterations: either a plan whose pieces can be cut, with every fault
 * told by a check, or a named refusal. Never a crash, never a number that is none.
 */
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Piece, PieceName, SeamName } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import type { Plan } from "../../../src/core/plan/plan";
import type { CheckName } from "../../../src/core/checks/check";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { badNumbers, isSpoilt, isToldOf } from "../../support/faultsOfPlan";
import { seamByBezierJs } from "../../support/independent";
import { anyChainWork } from "../../support/anyChainWork";

/** How many plans of each style; more by hand, to look for what is rare. */
const RUNS = Number(process.env.CHAINS ?? 60);

/** mm. A seam or a girth that is further off must be told of: what the checks allow, and a hundredth for the library. */
const NEAR = 0.06;

/** Seams that do not walk, by bezier-js; the back shoulder is drafted 6 mm longer. */
function unwalked(pieces: readonly Piece[]): string[] {
  const of = (names: readonly PieceName[], seam: SeamName): number =>
    pieces.filter(({ name }) => names.includes(name)).reduce((sum, piece) => sum + seamByBezierJs(piece, seam), 0);
  return SEWN.flatMap(([seam, first, second, ease]) => {
    const [a, b] = [of(first, seam), of(second, seam)];
    return a > 0 && b > 0 && !(Math.abs(a - b - ease) <= NEAR) ? [`${seam} of ${first.join("+")}: ${a} and ${b}`] : [];
  });
}

/** What the waist must finish at: the body, the ease and what the side seams were let out by there. */
function waistDue({ ledger, levels }: Plan): number {
  const { body, ease } = invariant(
    levels.find(({ level }) => level === "waist"),
    "waist",
  );
  const letOut = ledger.map(({ what, outcome }) => {
    if (!outcome.ok || what.kind !== "alteration" || what.alteration.kind !== "fit") return 0;
    // On one half alone it is what that half is let out by, and so the whole waist.
    const { fit, amount } = what.alteration;
    return fit === "sideSeamWaist" ? amount : 0;
  });
  return letOut.reduce((sum, one) => sum + one, body + ease);
}

/** The waist round both halves, by bezier-js; the basque is sewn to it, and is no part of it. */
const waistOf = ({ left, right }: Plan): number =>
  [...left.pieces, ...right.pieces]
    .filter(({ name }) => !name.endsWith("Basque"))
    .reduce((sum, piece) => sum + seamByBezierJs(piece, "waist"), 0);

const isTold = ({ checks }: Plan, check: CheckName): boolean => checks.some(({ name, ok }) => name === check && !ok);

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
  it(
    "gives pieces that can be cut, or says which fault or refusal there is",
    () => {
      fc.assert(
        fc.property(anyChainWork(style), (work) => {
          const plan = derivePlan(work);
          if (!plan.ok) {
            if (!plan.failure.code.startsWith("plan/")) throw new Error(plan.failure.code);
            return;
          }
          const { value } = plan;
          expect(badNumbers(value.left.pieces)).toEqual([]);
          expect(badNumbers(value.right)).toEqual([]);
          expect(badNumbers(value.levels)).toEqual([]);
          expect(
            value.ledger.filter(({ outcome }) => !outcome.ok && !outcome.failure.code.startsWith("alteration/")),
          ).toEqual([]);
          for (const half of [value.left, value.right])
            expect(unwalked(half.pieces).filter(() => !isTold(value, "seamsWalk"))).toEqual([]);
          const off = Math.abs(waistOf(value) - waistDue(value));
          expect(off <= NEAR || isTold(value, "girthAsClaimed") ? 0 : off).toBe(0);
          const silent = [...value.left.pieces, ...value.right.pieces].filter(
            (piece) => isSpoilt(piece) && !isToldOf(value, piece),
          );
          expect(silent.map(({ name }) => name)).toEqual([]);
        }),
        { numRuns: RUNS },
      );
    },
    Math.max(120_000, RUNS * 200),
  );
});
