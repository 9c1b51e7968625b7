/** What is asked of the paper, and what comes back. Plain data, so that it can be sent to a worker. */
import type { SheetFormat } from "../core/decisions/paperChoice";
import { toileAllowances } from "../core/cutting/usualAllowances";
import type { Allowances } from "../core/decisions/allowances";
import type { DressPlan } from "../core/dress/dressPlan";
import type { Part } from "../core/parts/part";
import type { Half } from "../core/decisions/alteration";
import type { PieceName } from "../core/pattern/piece";
import type { Plan } from "../core/plan/plan";
import type { Work } from "../core/decisions/work";
import type { LayoutFailure } from "../core/sheets/layout";
import type { Mm } from "../core/units";
import type { InkPage } from "../drawing/ink";

export type PaperFile = "pdf" | "svg" | "dxf";

/** Whole pieces to cut, or strips with only what changed, to lay under tissue. */
export type PaperKind = "pieces" | "overlay";

export interface PaperChoices {
  readonly kind: PaperKind;
  readonly format: SheetFormat;
  /** White edge that the printer leaves, mm. */
  readonly margin: Mm;
  /** The wearer's own line (null), or one printed size by its label. */
  readonly size: string | null;
  /** All printed sizes, one in another, as the pattern in the envelope has them: stitch lines, without allowances. */
  readonly nested?: true;
  readonly pieces: readonly PieceName[];
  /** Parts of the dress besides those, by their ids; absent: none. */
  readonly parts?: readonly string[];
  /** Printed sizes drawn in grey under it, by their labels. */
  readonly under: readonly string[];
  /** The pieces before the wearer's alterations, drawn dotted under it. */
  readonly before: boolean;
  /** Cutting lines with allowances; without, the pieces end at the stitch line. */
  readonly allowances: boolean;
  /** For a toile: wide allowances where it may have to be let out. */
  readonly toile?: true;
}

/** The allowances that are drawn; null: none. */
export const allowancesFor = ({ work, choices }: Pick<PaperRequest, "work" | "choices">): Allowances | null => {
  if (!choices.allowances) return null;
  const own = work.allowances ?? {};
  return choices.toile === true ? toileAllowances(own, work.unit) : own;
};

/** The pieces of another version, and what it is called in the middle of a sentence: "trial 2". */
export interface OldPieces {
  readonly called: string;
  readonly plan: Pick<Plan, "left" | "right">;
}

/** Of the dress, what its paper follows from. */
export interface DressOnPaper {
  readonly parts: readonly Part[];
  /** How far below the waist its lining is left open, of the skirt or of the basque; null: it opens nowhere there. */
  readonly liningOpen: Mm | null;
}

export const dressOnPaper = ({ parts, lining }: Pick<DressPlan, "parts" | "lining">): DressOnPaper => ({
  parts,
  liningOpen: lining?.ok === true ? (lining.value.free?.below ?? null) : null,
});

export interface PaperRequest {
  readonly work: Work;
  readonly plan: Plan;
  /** Absent: nothing is chosen of a dress. */
  readonly dress?: DressOnPaper;
  /** Of an overlay: the version whose pieces it is laid on. Absent: the printed tissue. */
  readonly old?: OldPieces;
  /** The day it is made, yyyy-mm-dd. */
  readonly day: string;
  readonly choices: PaperChoices;
}

export type PaperFailure =
  | LayoutFailure
  /** Its outline is spoilt: it cannot be cut. `half` where the halves differ. */
  | { readonly code: "paper/outline-refused"; readonly piece: PieceName; readonly half: Half | null }
  /** The overlay would be as large as the pieces: too much of them moved. */
  | { readonly code: "paper/overlay-too-much"; readonly pieces: readonly PieceName[] }
  | { readonly code: "paper/nothing-changed" }
  /** No PDF has a page as long, mm. */
  | { readonly code: "paper/roll-too-long"; readonly length: Mm; readonly most: Mm }
  /** Strips are no pieces: the exchange format has nothing for them. */
  | { readonly code: "paper/overlay-no-dxf" };

/** What would be printed, told before it is made. */
export interface PaperPreview {
  /** Pages with pieces, without the first page (the map). */
  readonly pages: number;
  /** Pages before those: what to do, and the map; none of a roll. */
  readonly before: number;
  /** Sentences on what is left out of it, and why. */
  readonly notes: readonly string[];
  /** The whole sheet in small: pieces and page borders, drawn in the sheet's own mm. */
  readonly map: InkPage;
}

export interface PaperMade {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly fileName: string;
  readonly mediaType: string;
  /** All pages of the file, the map too; 1 for SVG and DXF. */
  readonly pages: number;
}

/** How far the making has come. */
export interface PaperProgress {
  readonly stage: "pieces" | "layout" | "writing";
  /** 0 to 1 over all stages. */
  readonly share: number;
}
