/**
 * What the wearer decided of the rest of the dress: all that hangs on the finished bodice. What is absent is as it usually is; a
 * choice that another one makes idle is kept, so that nothing is lost by trying.
 */
import type { Mm } from "../units";

/** The shapes of a skirt, in the order they are offered. */
export const SKIRT_KINDS = ["gathered", "tiers", "circle", "aLine", "straight", "peplum"] as const;
export type SkirtKind = (typeof SKIRT_KINDS)[number];

/** How the cloth of a gathered skirt or tier is divided: evenly into as few widths as it needs, or into whole widths of the cloth. */
export const TIER_CUTS = ["even", "wholeWidths"] as const;
export type TierCut = (typeof TIER_CUTS)[number];

export interface Tier {
  /** Finished depth; absent: shared out by `growing`. */
  readonly depth?: Mm;
  /** Its width before gathering, times that of what it is gathered on; absent: the ratio of the skirt. */
  readonly ratio?: number;
  /** In whole widths of the cloth, where those are chosen; absent: as many as the ratio needs at least. */
  readonly widths?: number;
}

export interface Skirt {
  readonly kind: SkirtKind;
  /** From the finished waist to the hem at the side; absent: to the knee, from her height. */
  readonly length?: Mm;
  readonly peplumLength?: Mm;
  /** Gathered: how many times the waist, and of every tier that has no ratio of its own. */
  readonly ratio?: number;
  /** From the waist down, two to five. */
  readonly tiers?: readonly Tier[];
  /** Each tier deeper than the one above by a quarter; else all alike. */
  readonly growing?: boolean;
  readonly tierCut?: TierCut;
  /** Circle: share of a full one, 1 whole. */
  readonly share?: number;
  readonly peplumShare?: number;
  /** A-line: panels all round. */
  readonly panels?: 2 | 4 | 6;
  /** Over her hip at her hip depth, all round. */
  readonly hipEase?: Mm;
  /** A-line: how far each side leans out below the hip, degrees. */
  readonly flare?: number;
  /** A-line: waist darts sewn, or shut into the flare. */
  readonly darts?: boolean;
  /** Straight: a vent in the centre back, this high above the hem; 0: none. */
  readonly vent?: Mm;
  readonly hem?: Mm;
  /** Pockets in the side seams: told, not drawn. */
  readonly pockets?: boolean;
}

export interface Lining {
  readonly bodice?: boolean;
  /** A-line on the same waist. */
  readonly skirt?: boolean;
  /** Ease over the bodice's own, bust and waist alike. */
  readonly bodiceEase?: Mm;
  readonly hipEase?: Mm;
  /** Of the skirt's hem, all round. */
  readonly hemGirth?: Mm;
  /** How much shorter than the shell. */
  readonly shorter?: Mm;
  /** How far below the zip's end its V runs. */
  readonly freeBelow?: Mm;
  /** Kept from the zip's teeth on each side. */
  readonly freeBeside?: Mm;
  /** How its waist is brought to the finished waist. */
  readonly shaping?: "darts" | "pleats";
}

/** The front's upper edge as she wants it. `asPattern`: left as it is. */
export const NECKLINE_SHAPES = ["asPattern", "scoop", "vee", "square", "sweetheart"] as const;
export type NecklineShape = (typeof NECKLINE_SHAPES)[number];

export interface Neckline {
  readonly shape: NecklineShape;
  /** Down the centre front from where the pattern's edge is; negative: higher. */
  readonly deeper?: Mm;
  /** Along the shoulder, from where the pattern's edge is. */
  readonly wider?: Mm;
  /** Down the centre back. */
  readonly backDeeper?: Mm;
  /** Of the gape that the new edge will show: pinched out of the pieces. */
  readonly pinched?: boolean;
}

export const STRAP_KINDS = ["plain", "tied", "crossed"] as const;
export type StrapKind = (typeof STRAP_KINDS)[number];

export interface Straps {
  readonly kind: StrapKind;
  /** Finished; absent: as the pattern's. */
  readonly width?: Mm;
  /** Of what is worn under it, to be covered; absent: nothing is said. */
  readonly braStrap?: Mm;
  /** Longer than the way over the shoulder, negative shorter. */
  readonly ease?: Mm;
  /** A length of elastic at its back end. */
  readonly elastic?: boolean;
}

/** How an edge is finished that no lining takes. */
export const EDGE_FINISHES = ["facing", "binding"] as const;
export type EdgeFinish = (typeof EDGE_FINISHES)[number];

export interface Edges {
  readonly neck?: EdgeFinish;
  readonly armhole?: EdgeFinish;
  readonly facingDepth?: Mm;
  /** Finished. */
  readonly bindingWidth?: Mm;
}

export const OPACITIES = ["opaque", "sheer", "clear"] as const;
export type Opacity = (typeof OPACITIES)[number];

/** What goes under a cloth that shows through. */
export const UNDER_NAMES = ["nothing", "lining", "underlining", "slip"] as const;
export type Under = (typeof UNDER_NAMES)[number];

export const CLOTH_NAMES = ["main", "lining", "underlining", "interfacing"] as const;
export type ClothName = (typeof CLOTH_NAMES)[number];

export interface Cloth {
  /** From selvage to selvage; absent: the usual. */
  readonly width?: Mm;
  /** What she has of it; absent: it is still to be bought. */
  readonly length?: Mm;
  /** Nap or a print with an up and down: no piece is turned upside down. */
  readonly oneWay?: boolean;
  /** Laid on the fold, pieces cut double; else single. */
  readonly fold?: boolean;
  /** Per cent, along the length, lost when it is washed first. */
  readonly shrinkage?: number;
}

/** Her body below the waist and round the shoulders, where it was measured for a dress. */
export const DRESS_MEASURES = [
  "waistToHip",
  "waistToFloorFront",
  "waistToFloorSide",
  "waistToFloorBack",
  "shoulderGirth",
] as const;
export type DressMeasure = (typeof DRESS_MEASURES)[number];

export interface Dress {
  readonly measures?: Readonly<Partial<Record<DressMeasure, Mm>>>;
  readonly skirt?: Skirt;
  readonly lining?: Lining;
  readonly neckline?: Neckline;
  readonly straps?: Straps;
  readonly edges?: Edges;
  /** Of a closure without buttons; absent: invisible. */
  readonly zip?: "invisible" | "lapped";
  readonly opacity?: Opacity;
  /** Absent: what is recommended. */
  readonly under?: Under;
  readonly cloths?: Readonly<Partial<Record<ClothName, Cloth>>>;
}

/** What is decided by itself, and merged by itself when two pages changed it. */
export type DressPart = keyof Dress;
