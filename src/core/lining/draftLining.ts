/** The lining of what is chosen to be lined. */
import type { Allowances } from "../decisions/allowances";
import type { Lining } from "../decisions/dress";
import type { Closure } from "../decisions/pattern";
import type { DressBody, FinishedWaist } from "../parts/dressBody";
import type { PieceSet } from "../pattern/pieceSet";
import { ok, type Result } from "../result";
import type { SkirtDraft } from "../skirts/skirtDraft";
import type { LiningDraft, LiningFailure } from "./liningDraft";

export interface LiningAsked {
  readonly lining: Lining;
  /** The finished bodice, the wearer's left half first. */
  readonly bodice: readonly [PieceSet, PieceSet];
  /** null: there is no skirt to be lined. */
  readonly skirt: SkirtDraft | null;
  readonly waist: FinishedWaist;
  readonly body: DressBody;
  readonly closure: Closure;
  readonly allowances: Allowances;
}

export function draftLining(_asked: LiningAsked): Result<LiningDraft, LiningFailure> {
  const none: PieceSet = {};
  return ok({ bodice: [none, none], skirt: [none, none], skirtFigures: null, parts: [], notes: [] });
}
