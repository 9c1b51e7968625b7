/** What a skirt comes to, whatever its shape. mm, radians. */
import type { Allowances } from "../decisions/allowances";
import type { Skirt, SkirtKind } from "../decisions/dress";
import type { Closure } from "../decisions/pattern";
import type { DressBody, FinishedWaist } from "../parts/dressBody";
import type { Part } from "../parts/part";
import type { PieceSet } from "../pattern/pieceSet";
import type { Mm, Radians } from "../units";

export interface SkirtAsked {
  readonly skirt: Skirt;
  readonly waist: FinishedWaist;
  readonly body: DressBody;
  readonly closure: Closure;
  readonly allowances: Allowances;
  /** Of the cloth it is cut from, selvage to selvage. */
  readonly clothWidth: Mm;
  /** Laid on the fold: what is not cut there lies on half of the width. Absent: single. */
  readonly clothOnFold?: boolean;
  /** Where the bodice's darts or princess seams end at its waist, the left half first; absent: darts stand as usual. */
  readonly dartPlaces?: readonly [DartPlaces, DartPlaces];
}

/** Along each finished quarter from its centre. */
export interface DartPlaces {
  readonly front: readonly Mm[];
  readonly back: readonly Mm[];
}

/** How wide the skirt is all round, so far below the waist seam along the seam that opens; even between two of them. */
export interface SkirtLevel {
  readonly below: Mm;
  readonly girth: Mm;
}

export interface TierFigures {
  /** Finished width all round before it is gathered, and what it is gathered to. */
  readonly width: Mm;
  readonly gatheredTo: Mm;
  readonly depth: Mm;
  /** Widths of cloth, and the finished width of each. */
  readonly panels: number;
  readonly panelWidth: Mm;
}

interface CircleFigures {
  readonly share: number;
  readonly waistRadius: Mm;
  readonly hemRadius: Mm;
  /** Where its sectors are sewn together, the opening among them; `between`: within each quarter, since the cloth is narrow. */
  readonly seams?: readonly CircleSeam[];
}

export type CircleSeam = "centreFront" | "centreBack" | "leftSide" | "rightSide" | "between";

/** By how much a waist's suppression is taken up, of one quarter. */
export interface SuppressionFigures {
  readonly quarter: "front" | "back";
  readonly atSide: Mm;
  readonly inDarts: readonly Mm[];
  readonly dartLength: Mm;
  /** Opened at the hem where darts are shut. */
  readonly shutInto: Mm;
}

/** What she should know of it; told by name, the skirt is made all the same. */
export type SkirtNote =
  /** A level hem was not to be had: waist to floor is not measured at front, side and back. */
  | { readonly code: "skirt/hem-not-levelled" }
  /** Too narrow at the hem to step; `needed`: the girth to have, mm. */
  | { readonly code: "skirt/no-step"; readonly girth: Mm; readonly needed: Mm }
  /** The zip runs through so many tiers: each has to have a join there. */
  | { readonly code: "skirt/join-at-opening"; readonly tier: number }
  | { readonly code: "skirt/hang-before-hemming" }
  | { readonly code: "skirt/hip-depth-usual"; readonly depth: Mm }
  /** By her height, by the way from her waist to the floor, or by neither: `by` null. */
  | { readonly code: "skirt/length-usual"; readonly length: Mm; readonly by: "height" | "toFloor" | null }
  | { readonly code: "skirt/pockets" };

export interface SkirtDraft {
  readonly kind: SkirtKind;
  /** Finished, from the waist seam to the hem. */
  readonly lengths: { readonly front: Mm; readonly side: Mm; readonly back: Mm };
  /** All round. */
  readonly hem: Mm;
  /** Drafted panels, the wearer's left half first, the very same object twice where they are alike; none where it is gathered or round. */
  readonly halves: readonly [PieceSet, PieceSet];
  readonly parts: readonly Part[];
  /** From the waist to the hem, in order. */
  readonly levels: readonly SkirtLevel[];
  readonly tiers?: readonly TierFigures[];
  readonly circle?: CircleFigures;
  readonly suppression?: readonly SuppressionFigures[];
  /** How far each side leans out. */
  readonly flare?: Radians;
  /** How high above the hem the vent in the centre back starts. Absent: none. */
  readonly vent?: Mm;
  readonly notes: readonly SkirtNote[];
}

export type SkirtFailure =
  /** A fitted skirt cannot be drafted without the hip. */
  | { readonly code: "skirt/hip-missing"; readonly kind: SkirtKind }
  | { readonly code: "skirt/length-missing"; readonly kind: SkirtKind }
  /** Between these, mm. */
  | { readonly code: "skirt/length-out-of-range"; readonly length: Mm; readonly least: Mm; readonly most: Mm }
  | { readonly code: "skirt/ratio-out-of-range"; readonly ratio: number; readonly least: number; readonly most: number }
  /** Of a circle: less does not go round her hip, or is not drawn; more cannot be sewn to the waist. */
  | { readonly code: "skirt/share-out-of-range"; readonly share: number; readonly least: number; readonly most: number }
  | { readonly code: "skirt/tiers-deeper-than-skirt"; readonly depths: Mm; readonly length: Mm }
  /** The waist is larger than the hip leaves: nothing to take in, less than nothing. */
  | { readonly code: "skirt/waist-over-hip"; readonly waist: Mm; readonly hip: Mm }
  /** Of each dart, or of the seam between two panels. */
  | { readonly code: "skirt/darts-too-wide"; readonly intake: Mm; readonly most: Mm }
  | { readonly code: "skirt/cloth-too-narrow"; readonly width: Mm; readonly needed: Mm };
