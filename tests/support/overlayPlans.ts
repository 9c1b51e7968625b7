/** Plans that are nothing but their pieces, for what is laid on the tissue: what is printed, in three sizes, and what is final. */
import type { OverlaidPlan } from "../../src/core/overlay/overlayOf";
import type { Nest, Piece } from "../../src/core/pattern/piece";

/** The middle one is the base size. */
const THREE_SIZES = ["10", "12", "14"] as const;

interface Laid {
  readonly printed: readonly Piece[];
  readonly final: readonly Piece[];
  /** Pieces of the sizes on either side; absent: the same as the base size's. */
  readonly sizes?: readonly [readonly Piece[], readonly Piece[]];
  readonly nest?: Partial<Nest>;
  /** What else is so on both halves. */
  readonly also?: Partial<OverlaidPlan["left"]>;
}

/** Both halves alike: the very same object. */
export function planOfPieces({
  printed,
  final,
  sizes = [printed, printed],
  nest: more = {},
  also = {},
}: Laid): OverlaidPlan {
  const nest: Nest = { source: "standIn", labels: THREE_SIZES, sizes: [sizes[0], printed, sizes[1]], ...more };
  const print = { printed, nest, sizing: { baseSize: { label: THREE_SIZES[1] }, cup: { label: null } } };
  const half = { pieces: final, cutLines: [], alterations: [], ...print, ...also };
  return { ...print, left: half, right: half };
}
