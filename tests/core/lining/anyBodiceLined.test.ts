/**
 * The lining of whatever a plan may come to: pieces of a house that is not ours and our own, after chains of alterations, on
 * either half or both. Where the shell can be sewn, its lining can.
 */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { finishedWaist } from "../../../src/core/dress/finishedWaist";
import { checkLining } from "../../../src/core/dress/checkLining";
import { validateOutline } from "../../../src/core/geometry/outline";
import type { Half } from "../../../src/core/decisions/alteration";
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { isBasque } from "../../../src/core/pattern/pieceGroups";
import { pieceIn, piecesOf, setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { pointOf, type PieceName, type SeamName } from "../../../src/core/pattern/piece";
import { outlineOf } from "../../../src/core/pattern/ring";
import { seamPairsOf } from "../../../src/core/pattern/sewnTogether";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import type { Plan } from "../../../src/core/plan/plan";
import { anyChainWork } from "../../support/anyChainWork";
import type { ForeignFront } from "../../support/foreign/foreignTypes";
import { anyForeignWork, planOfForeign } from "../../support/foreign/foreignWork";
import { seamByBezierJs } from "../../support/independent";
import { closed, lined, madeOf } from "../../support/linings";

const RUNS = Number(process.env.CHAINS ?? 8);
const PATIENCE = Math.max(120_000, RUNS * 2000);

/** mm. What walking leaves, and a hundredth for the library. */
const NEAR = 0.06;

const KINDS: readonly ForeignFront[] = ["side", "french", "waist", "none", "princessArmhole", "princessShoulder"];

const anyClosure = fc.record({
  place: fc.constantFrom("centreBack" as const, "side" as const),
  belowWaist: fc.integer({ min: 0, max: 220 }),
});

const lengthOf = (pieces: PieceSet, names: readonly PieceName[], seam: SeamName): number =>
  names.reduce((sum, name) => sum + seamByBezierJs(pieceIn(pieces, name), seam), 0);

const unwalked = (pieces: PieceSet): readonly string[] =>
  seamPairsOf(pieces)
    .filter(
      ({ seam, first, second, ease }) =>
        !(Math.abs(lengthOf(pieces, first, seam) - lengthOf(pieces, second, seam) - ease) <= NEAR),
    )
    .map(({ seam, first }) => `${seam} of ${first.join("+")}`);

const uncut = (pieces: PieceSet): readonly string[] =>
  piecesOf(pieces).flatMap((piece) =>
    validateOutline(outlineOf(piece))
      .filter(({ code }) => code !== "outline/short-edge")
      .map(({ code }) => `${piece.name} ${code}`),
  );

const unlikeLegs = (pieces: PieceSet): readonly string[] =>
  piecesOf(pieces).flatMap((piece) =>
    piece.darts
      .filter(({ gathered, apex, inner, outer, drawnLegs = 0 }) => {
        const leg = (end: typeof inner) =>
          Math.hypot(pointOf(piece, end).x - pointOf(piece, apex).x, pointOf(piece, end).y - pointOf(piece, apex).y);
        return gathered === true || Math.abs(leg(outer) - leg(inner) - drawnLegs) > NEAR;
      })
      .map(({ name }) => `${piece.name} ${name}`),
  );

function held({ left, right }: Plan, closure: ReturnType<typeof closed>): void {
  const of = (half: Plan["left"]): PieceSet => setOf(half.pieces.filter(({ name }) => !isBasque(name)));
  const one = of(left);
  const bodice = [one, right === left ? one : of(right)] as const;
  const waist = finishedWaist(bodice);
  const lining = madeOf(lined({ bodice: true }, { bodice, waist, closure, skirt: null }));
  lining.bodice.forEach((pieces, at) => {
    const shell = at === 0 ? bodice[0] : bodice[1];
    const faults = [unwalked, uncut, unlikeLegs].map((faultsOf) => {
      const before = faultsOf(shell);
      return faultsOf(pieces).filter((fault) => !before.includes(fault));
    });
    expect(faults).toEqual([[], [], []]);
  });
  for (const check of checkLining({ lining, waist, closure }).filter(({ name }) => name === "liningWaistWalks"))
    expect(check).toMatchObject({ ok: true });
}

describe.each(KINDS)("on foreign fronts: %s", (front) => {
  it("is sewn where the shell is", { timeout: PATIENCE }, () => {
    fc.assert(
      fc.property(anyForeignWork({ front, basque: false }), anyClosure, (chain, closure) => {
        const plan = planOfForeign(chain);
        if (plan.ok) held(plan.value, closure);
      }),
      { numRuns: RUNS },
    );
  });
});

const anyHalves = fc.array(fc.constantFrom<Half | undefined>("left", "right", undefined), {
  minLength: 8,
  maxLength: 8,
});

const unevenly = (work: Work, halves: readonly (Half | undefined)[]): Work => ({
  ...work,
  alterations: work.alterations.map((one, at) => {
    const half = halves[at];
    return half === undefined ? one : { ...one, half };
  }),
});

describe.each(STYLE_NAMES)("on our own: %s", (style) => {
  it("is sewn where the shell is, halves alike or not", { timeout: PATIENCE }, () => {
    fc.assert(
      fc.property(anyChainWork(style), anyHalves, anyClosure, (work, halves, closure) => {
        const plan = derivePlan(unevenly(work, halves));
        if (plan.ok) held(plan.value, closure);
      }),
      { numRuns: RUNS },
    );
  });
});
