/** Straps, and the finish of every upper edge that no lining takes. */
import type { Allowances } from "../decisions/allowances";
import type { Edges, Straps } from "../decisions/dress";
import type { Closure } from "../decisions/pattern";
import type { PieceSet } from "../pattern/pieceSet";
import type { EdgesDraft } from "./edgesDraft";

export interface EdgesAsked {
  readonly edges: Edges;
  readonly straps: Straps | null;
  /** The finished bodice, the wearer's left half first. */
  readonly bodice: readonly [PieceSet, PieceSet];
  readonly isLined: boolean;
  readonly closure: Closure;
  readonly allowances: Allowances;
}

export function draftEdges(_asked: EdgesAsked): EdgesDraft {
  return { edges: [], strap: null, bias: [], parts: [] };
}
