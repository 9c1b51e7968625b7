/** The whole dress that follows from a work: derived afresh, never stored. */
import type { ClothName, Under } from "../decisions/dress";
import type { EdgesDraft } from "../edges/edgesDraft";
import type { LiningDraft, LiningFailure } from "../lining/liningDraft";
import type { ClosureReading } from "../opening/gettingIn";
import type { DressBody, FinishedWaist } from "../parts/dressBody";
import type { Part } from "../parts/part";
import type { PieceSet } from "../pattern/pieceSet";
import type { Result } from "../result";
import type { Finished, Notion, SewingStep, Showing } from "../sewing/sewingStep";
import type { SkirtDraft, SkirtFailure } from "../skirts/skirtDraft";
import type { Mm } from "../units";

/** A claim about the dress, held like those about the plan. */
export interface DressCheck {
  readonly name:
    | "waistWalks"
    | "liningWaistWalks"
    | "skirtSidesWalk"
    | "liningSidesWalk"
    | "tiersGather"
    | "facingsWalk"
    | "hemLevel"
    | "liningOverHip"
    | "opensEnough";
  readonly ok: boolean;
  readonly measured: Mm;
  readonly expected: Mm;
  readonly tolerance: Mm;
}

export interface UnderAdvice {
  readonly recommended: Under;
  readonly chosen: Under;
  /** A lining or an underlining that is chosen is among the parts; of nothing and of a slip of its own nothing is missing. */
  readonly isThere: boolean;
  /** Seams that show through, and are to be finished so that they may be seen. */
  readonly showing: readonly Showing[];
  /** Of each of them. */
  readonly finishes: readonly Finished[];
}

export interface DressPlan {
  readonly waist: FinishedWaist;
  readonly body: DressBody;
  /** The bodice that it hangs on: the plan's pieces without a basque where a skirt takes its place. */
  readonly bodice: readonly [PieceSet, PieceSet];
  readonly skirt: Result<SkirtDraft, SkirtFailure> | null;
  readonly lining: Result<LiningDraft, LiningFailure> | null;
  readonly edges: EdgesDraft;
  readonly closure: ClosureReading | null;
  readonly under: UnderAdvice;
  /** All that is cut. */
  readonly parts: readonly Part[];
  /** Cloths that anything is cut from. */
  readonly cloths: readonly ClothName[];
  readonly notions: readonly Notion[];
  readonly sewing: readonly SewingStep[];
  readonly checks: readonly DressCheck[];
}
