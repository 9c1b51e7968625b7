/** What the lining comes to. mm. */
import type { Part } from "../parts/part";
import type { PieceSet } from "../pattern/pieceSet";
import type { SkirtLevel } from "../skirts/skirtDraft";
import type { Mm } from "../units";
import type { FreeEnd } from "./leaveFree";

export type LiningNote =
  /** Whether it passes over the hips with the closure open: what it lets through, and what is needed. */
  | { readonly code: "lining/over-hips"; readonly lets: Mm; readonly needed: Mm; readonly passes: boolean }
  | { readonly code: "lining/no-step"; readonly girth: Mm; readonly needed: Mm }
  | { readonly code: "lining/longer-than-skirt"; readonly by: Mm };

export interface SkirtLiningFigures {
  /** As sewn into the waist seam: the shell's finished waist less what its ends keep from the zip. */
  readonly waist: Mm;
  readonly hip: Mm;
  /** Hers, with the ease that was chosen: no less will do. */
  readonly hipLeast: Mm;
  readonly hipDepth: Mm;
  readonly hem: Mm;
  readonly lengths: { readonly front: Mm; readonly side: Mm; readonly back: Mm };
  /** Of the V beside the zip: where it ends below the waist seam, and its width at the waist. null: nothing opens there. */
  readonly free: FreeEnd | null;
}

export interface LiningDraft {
  /** Of the bodice and of the skirt, the wearer's left half first; empty where that is not lined. */
  readonly bodice: readonly [PieceSet, PieceSet];
  readonly skirt: readonly [PieceSet, PieceSet];
  readonly skirtFigures: SkirtLiningFigures | null;
  /** Of the V beside the closure, of the skirt's lining or of the bodice's own basque; null: nothing opens below the waist. */
  readonly free: FreeEnd | null;
  /** What ends beside the closure keep from it, along the waist, each; 0 where nothing is lined. */
  readonly beside: Mm;
  /** Of the skirt's lining, from the waist to its hem: the cloth that goes round, with the ends left free of the zip open. */
  readonly levels: readonly SkirtLevel[];
  readonly parts: readonly Part[];
  readonly notes: readonly LiningNote[];
}

export type LiningFailure =
  | { readonly code: "lining/hip-missing" }
  | { readonly code: "lining/length-missing" }
  | { readonly code: "lining/waist-over-hip"; readonly waist: Mm; readonly hip: Mm }
  /** Too little of it would lie below the hip for an A-line, or above it at a centre that a level hem makes shorter. */
  | { readonly code: "lining/too-short"; readonly length: Mm; readonly least: Mm }
  /** At a centre that a level hem makes longer than an A-line's waist may be lifted. */
  | { readonly code: "lining/too-long"; readonly length: Mm; readonly most: Mm }
  /** The waist takes in more than darts can, of each; pleats take in twice that. */
  | { readonly code: "lining/darts-too-wide"; readonly intake: Mm; readonly most: Mm };
