/**
 * A part of the dress as it is cut: a drafted piece, a measured rectangle or a sector of a circle, each with how often and from
 * which cloth. Finished measures lie on the stitch lines; allowances are beside them. mm, radians.
 */
import type { Half } from "../decisions/alteration";
import type { Allowances } from "../decisions/allowances";
import type { ClothName } from "../decisions/dress";
import type { Piece } from "../pattern/piece";
import type { Mm, Radians } from "../units";

/** What a part belongs to: the words name it by this and by what it is. */
export type PartGroup =
  | "bodice"
  | "skirt"
  | "bodiceLining"
  | "skirtLining"
  | "facing"
  | "strap"
  | "binding"
  | "buttonStand"
  | "underlining";

interface AnyPart {
  /** Unlike any other of the dress: letters, digits and hyphens. */
  readonly key: string;
  readonly group: PartGroup;
  readonly cloth: ClothName;
  /** On the fold: so many times double; else so many single, each second one turned over where the halves mirror. */
  readonly cut: { readonly onFold: boolean; readonly count: number };
  /** Set where the halves of the body differ. */
  readonly half: Half | null;
  /** How it lies to the grain of the cloth: its own y along it, across it, or on the bias. */
  readonly grain: "along" | "across" | "bias";
}

/** Goes through the true-scale paper. */
export interface PiecePart extends AnyPart {
  readonly kind: "piece";
  readonly piece: Piece;
  /** Set where the halves differ but hang together at the centre: `piece` is then the left one, and both are cut as one, open. */
  readonly otherHalf?: Piece;
  /** Of its seams that are cut by another allowance than the wearer's: a hem of its own. */
  readonly allowances?: Allowances;
}

/** What a rectangle is for. */
export type RectangleName = "tier" | "gathered" | "strap" | "tie" | "binding" | "elasticCasing" | "buttonStand";

/** Given by its measures: torn or cut along a thread, not printed. */
export interface RectanglePart extends AnyPart {
  readonly kind: "rectangle";
  readonly name: RectangleName;
  /** Of tiers, from 1 at the waist. */
  readonly tier?: number;
  /** Finished, across the body and down it. */
  readonly width: Mm;
  readonly depth: Mm;
  readonly allowances: { readonly top: Mm; readonly bottom: Mm; readonly sides: Mm };
  /** For a level hem: by how much its upper edge, once joined to a ring, is cut lower there, in one even curve. Absent: straight. */
  readonly upperEdge?: { readonly front: Mm; readonly side: Mm; readonly back: Mm };
}

/** Drawn with string and pin: a share of a ring. */
export interface SectorPart extends AnyPart {
  readonly kind: "sector";
  /** Of the stitch lines at the waist and at the hem. */
  readonly inner: Mm;
  readonly outer: Mm;
  readonly angle: Radians;
  readonly allowances: { readonly inner: Mm; readonly outer: Mm; readonly sides: Mm };
  /** Sides that lie on the fold, where it is cut so: then the first. `angle` is of what is drawn, the half of the piece. */
  readonly foldSides: 0 | 1;
  /**
   * For a level hem the waist is no circle: how far from the pin it is, by the angle from the first side, both sides among them;
   * `inner` is then the least of them. Absent: it is `inner` all along.
   */
  readonly waistRadii?: readonly { readonly at: Radians; readonly radius: Mm }[];
  /** A ring that closes has no cloth beside it for an allowance: it is slashed open, and so much of each edge goes into the seam. */
  readonly slash?: Mm;
}

export type Part = PiecePart | RectanglePart | SectorPart;

/** The same set of cut sizes of every part: as it lies on the cloth, with allowances. */
export const cutWidth = ({ width, allowances }: RectanglePart): Mm => width + 2 * allowances.sides;
export const cutDepth = ({ depth, allowances }: RectanglePart): Mm => depth + allowances.top + allowances.bottom;
