/** A plan that is nothing but its pieces, for what is laid on the tissue: what is printed, in three sizes, and what is final. */
import type { Nest, Piece } from "../../src/core/pattern/piece";
import type { Plan, PlanHalf } from "../../src/core/plan/plan";
import { alike } from "./halves";
import { planOf, testWork } from "./works";

const real = planOf(testWork);

/** The middle one is the base size. */
export const THREE_SIZES = ["10", "12", "14"] as const;

interface Laid {
  readonly printed: readonly Piece[];
  readonly final: readonly Piece[];
  /** Pieces of the sizes on either side; absent: the same as the base size's. */
  readonly sizes?: readonly [readonly Piece[], readonly Piece[]];
  readonly nest?: Partial<Nest>;
  /** What else is so on both halves. */
  readonly also?: Partial<PlanHalf>;
}

export function planOfPieces({ printed, final, sizes = [printed, printed], nest: more = {}, also = {} }: Laid): Plan {
  const nest: Nest = { source: "standIn", labels: THREE_SIZES, sizes: [sizes[0], printed, sizes[1]], ...more };
  const sizing = { ...real.sizing, baseSize: { ...real.sizing.baseSize, label: THREE_SIZES[1] } };
  const print = { printed, nest, sizing };
  return { ...alike(real, { pieces: final, cutLines: [], alterations: [], ...print, ...also }), ...print };
}
