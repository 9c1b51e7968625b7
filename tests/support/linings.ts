/** Linings for tests: a bodice, a waist and a shell that is there by its lengths alone. */
import type { Closure } from "../../src/core/decisions/pattern";
import type { Lining } from "../../src/core/decisions/dress";
import { draftLining, type LiningAsked } from "../../src/core/lining/draftLining";
import type { LiningDraft } from "../../src/core/lining/liningDraft";
import type { DressBody, FinishedWaist, WaistHalf } from "../../src/core/parts/dressBody";
import type { PieceSet } from "../../src/core/pattern/pieceSet";
import type { SkirtDraft } from "../../src/core/skirts/skirtDraft";

export const body: DressBody = {
  bust: 880,
  waist: 720,
  hip: 960,
  height: 1680,
  hipDepth: 200,
  isHipDepthUsual: false,
  toFloor: null,
  shoulderGirth: null,
};

/** Sides that are not at a quarter: 190 in front and 180 behind on each half, 740 all round. */
const half: WaistHalf = { front: 190, back: 180 };

export const waistOf = (left: WaistHalf, right = left): FinishedWaist => ({
  halves: [left, right],
  whole: left.front + left.back + right.front + right.back,
});

/** Gathered: nothing of it is a piece. */
export const shellOf = (front: number, side = front, back = front): SkirtDraft => ({
  kind: "gathered",
  lengths: { front, side, back },
  hem: 1110,
  halves: [{}, {}],
  parts: [],
  levels: [],
  notes: [],
});

export const closed = (place: Closure["place"], belowWaist: number): Closure => ({ place, belowWaist });

const NONE: PieceSet = {};

export const lined = (lining: Lining, more: Partial<LiningAsked> = {}): ReturnType<typeof draftLining> =>
  draftLining({
    lining,
    bodice: [NONE, NONE],
    skirt: shellOf(600),
    waist: waistOf(half),
    body,
    closure: closed("centreBack", 180),
    allowances: {},
    ...more,
  });

export function madeOf(result: ReturnType<typeof draftLining>): LiningDraft {
  if (!result.ok) throw new Error(result.failure.code);
  return result.value;
}

/** Of a bodice without a skirt. */
export const draftedOn = (
  bodice: LiningAsked["bodice"],
  lining: Lining,
  closure = closed("centreBack", 180),
): LiningDraft => madeOf(lined(lining, { bodice, skirt: null, closure }));
