/** The order of sewing of the parts that are there. */
import type { Allowances } from "../decisions/allowances";
import type { Closure } from "../decisions/pattern";
import type { Dress } from "../decisions/dress";
import type { EdgesDraft } from "../edges/edgesDraft";
import type { LiningDraft } from "../lining/liningDraft";
import type { ClosureReading } from "../opening/gettingIn";
import type { Part } from "../parts/part";
import type { FinishedWaist } from "../parts/dressBody";
import type { PieceSet } from "../pattern/pieceSet";
import type { SkirtDraft } from "../skirts/skirtDraft";
import type { Under } from "../decisions/dress";
import type { Notion, SewingStep } from "./sewingStep";

export interface SewingAsked {
  readonly dress: Dress;
  readonly bodice: readonly [PieceSet, PieceSet];
  readonly waist: FinishedWaist;
  readonly skirt: SkirtDraft | null;
  readonly lining: LiningDraft | null;
  readonly edges: EdgesDraft;
  readonly closure: Closure;
  readonly reading: ClosureReading | null;
  readonly under: Under;
  readonly parts: readonly Part[];
  readonly allowances: Allowances;
}

export function orderOfSewing(_asked: SewingAsked): readonly SewingStep[] {
  return [];
}

export function notionsOf(_asked: SewingAsked): readonly Notion[] {
  return [];
}
