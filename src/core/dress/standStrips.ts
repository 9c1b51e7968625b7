/** Interfacing for the button stands: a strip for each back, without which buttons tear out and buttonholes stretch. */
import { HALVES, type Half } from "../decisions/alteration";
import type { Allowances } from "../decisions/allowances";
import type { Closure } from "../decisions/pattern";
import { belowIn, buttonedLength, HOLE_WITHIN } from "../cutting/buttons";
import { allowanceOf } from "../cutting/usualAllowances";
import type { Part, RectanglePart } from "../parts/part";
import type { PieceSet } from "../pattern/pieceSet";
import { HALVES_AGREE } from "../tolerance";
import type { Mm } from "../units";

/** How far a strip reaches past the inner ends of the buttonholes, mm (common practice, no source). */
const PAST_HOLES: Mm = 3;

/**
 * How wide a strip is, mm: the stand, which is half of the allowance, the other half of it being turned in; and as much again
 * inside the centre line, on which the buttons are sewn, but always past the buttonholes (common practice, no source).
 */
function widthWithin(allowance: Mm): Mm {
  const stand = allowance / 2;
  return stand + Math.max(stand, HOLE_WITHIN + PAST_HOLES);
}

interface StandsAsked {
  /** The finished bodice, the wearer's left half first. */
  readonly bodice: readonly [PieceSet, PieceSet];
  /** What is drafted of a skirt, for each half; null: nothing. */
  readonly skirt: readonly [PieceSet, PieceSet] | null;
  /** Of bodice and skirt. */
  readonly shell: readonly Part[];
  readonly closure: Closure;
  readonly allowances: Allowances;
}

/**
 * As long as the opening that the buttons close, from the finished neck edge to its end; cut by that measure, since it ends at
 * the seams. One length for both halves where the centre backs agree as they are sewn, the longer. Nothing without buttons.
 */
export function standStrips({ bodice, skirt, shell, closure, allowances }: StandsAsked): readonly RectanglePart[] {
  const below = belowIn(shell);
  const lengthOn = (at: 0 | 1): Mm | null => buttonedLength({ ...bodice[at], ...skirt?.[at] }, closure, below);
  const lengths = [lengthOn(0), lengthOn(1)] as const;
  const [left, right] = lengths;
  if (left === null || right === null) return [];
  const allowance = allowanceOf(allowances, "centre");
  // Nothing is turned in then.
  if (allowance === 0) return [];
  const width = widthWithin(allowance);
  if (Math.abs(left - right) <= HALVES_AGREE) return [strip(width, Math.max(left, right), null)];
  return HALVES.map((half, at) => strip(width, at === 0 ? left : right, half));
}

const strip = (width: Mm, depth: Mm, half: Half | null): RectanglePart => ({
  kind: "rectangle",
  key: half === null ? "buttonStand" : `buttonStand-${half}`,
  group: "buttonStand",
  cloth: "interfacing",
  cut: { onFold: false, count: half === null ? HALVES.length : 1 },
  half,
  grain: "along",
  name: "buttonStand",
  width,
  depth,
  allowances: { top: 0, bottom: 0, sides: 0 },
});
