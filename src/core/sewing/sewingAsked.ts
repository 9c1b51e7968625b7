/** What the order of sewing and the notions follow from: the dress and all its parts. */
import type { Allowances } from "../decisions/allowances";
import type { Dress, Under } from "../decisions/dress";
import type { Closure } from "../decisions/pattern";
import type { EdgesDraft } from "../edges/edgesDraft";
import type { LiningDraft } from "../lining/liningDraft";
import type { ClosureReading } from "../opening/gettingIn";
import type { FinishedWaist } from "../parts/dressBody";
import type { Part } from "../parts/part";
import type { PieceSet } from "../pattern/pieceSet";
import type { Finished } from "./sewingStep";
import type { SkirtDraft } from "../skirts/skirtDraft";

export interface SewingAsked {
  readonly dress: Dress;
  /** The wearer's left half first; the very same object twice where they are alike. */
  readonly bodice: readonly [PieceSet, PieceSet];
  readonly waist: FinishedWaist;
  readonly skirt: SkirtDraft | null;
  readonly lining: LiningDraft | null;
  readonly edges: EdgesDraft;
  readonly closure: Closure;
  readonly reading: ClosureReading | null;
  readonly under: Under;
  /** How what shows through the cloth is finished; absent: nothing shows. */
  readonly finishes?: readonly Finished[];
  readonly parts: readonly Part[];
  readonly allowances: Allowances;
}
