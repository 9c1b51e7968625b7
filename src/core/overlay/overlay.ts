/**
 * An overlay for those who trace: strips at true scale with only what changed on each piece, and with printed lines and
 * points to lay them on the printed tissue by. Everything in the piece frame, mm; derived from a plan and never stored.
 */
import type { Half } from "../decisions/alteration";
import type { EdgeCurve } from "../geometry/edgeCurve";
import type { PiecePoint } from "../geometry/point";
import type { DartName, LevelName, PieceName, PointName, SeamName } from "../pattern/piece";
import type { Mm, Radians } from "../units";

/** A line of a patch. Its edges follow one another, each starting where the one before ends. */
export interface PatchLine {
  readonly kind: "seam" | "dartLeg" | "level";
  readonly edges: readonly EdgeCurve<"piece">[];
}

/** A line of another printed size than the base size's. */
export interface NeighbourLine extends PatchLine {
  /** Its place in the chart, and its label. */
  readonly size: number;
  readonly label: string;
}

/** A point printed on the tissue, by which the strip is laid on. */
export interface LayOnPoint {
  readonly name: PointName;
  readonly at: PiecePoint;
}

/** How far the final line runs from the lower one of the two printed lines it runs between, positive outside it. */
export interface PatchAmount {
  readonly level: LevelName;
  readonly at: PiecePoint;
  readonly between: readonly [string, string];
  readonly offset: Mm;
}

/** What a patch is of. `from` and `to`: the named points of the final line that its two ends are nearest to. */
export type PatchOf =
  | { readonly kind: "seam"; readonly seam: SeamName; readonly from: PointName; readonly to: PointName }
  | { readonly kind: "dart"; readonly dart: DartName };

/** A box that may stand at a slant: `turn` turns +x towards +y; `width` runs along the turned x. */
export interface SlantBox {
  readonly centre: PiecePoint;
  readonly width: Mm;
  readonly height: Mm;
  readonly turn: Radians;
}

/** One strip of paper. */
export interface Patch {
  /** Unlike any other of the overlay: letters, digits and hyphens. */
  readonly key: string;
  readonly piece: PieceName;
  /** Her own word for it, where the planner has none. */
  readonly label?: string;
  /** The printed piece it is laid on: the same, but for a piece that the wearer made of it by a seam. */
  readonly tissue: PieceName;
  /** Set where left and right halves differ. */
  readonly half: Half | null;
  /** Its cup version, where the halves have each their own. */
  readonly cup?: string;
  /** Counted from 1 on its piece, and how many there are. */
  readonly number: number;
  readonly count: number;
  /** One, or several where they share a strip. */
  readonly of: readonly PatchOf[];
  /** The wearer's own line: what moved, and a little beyond. */
  readonly changed: readonly PatchLine[];
  /** Ends of her darts that lie on it. */
  readonly ends: readonly PiecePoint[];
  /** The base size as printed, or the piece as it was before: the lines to lay it on by. */
  readonly baseSize: readonly PatchLine[];
  /** The printed lines that hers runs between. */
  readonly neighbours: readonly NeighbourLine[];
  /** At least two, the furthest pair at least `LAY_ON_APART` apart. */
  readonly layOn: readonly LayOnPoint[];
  readonly amounts: readonly PatchAmount[];
  /** Its edge, a closed ring of four corners; all its lines lie within. */
  readonly ring: readonly PiecePoint[];
  /** A place within the ring, free of lines, for its words; its width runs along the words. */
  readonly title: SlantBox;
}

/** A piece, or one half of it where the halves differ. */
export interface OverlayPiece {
  readonly piece: PieceName;
  /** Her own word for it, where the planner has none. */
  readonly label?: string;
  readonly half: Half | null;
  /** Its cup version, where the halves have each their own. */
  readonly cup?: string;
}

/**
 * Why there are no strips for a piece. `mostMoved`: they would take nearly as much paper. `cutAndMoved`: the same, but
 * its parts only slid as they are, so that cutting and moving the tissue does as well. `notPrinted`: the tissue has no
 * such piece in the base size. `noHold`: too few printed points lie near enough to lay a strip on by.
 */
export type TooMuchWhy = "mostMoved" | "cutAndMoved" | "notPrinted" | "noHold";

export interface Overlay {
  /**
   * The printed size that the strips are laid on: its label, and its place in the chart. Label null: they are laid on pieces
   * of her own, as they were before.
   */
  readonly baseSize: { readonly label: string | null; readonly size: number };
  readonly patches: readonly Patch[];
  /** Pieces that are as printed, or as they were before. */
  readonly same: readonly OverlayPiece[];
  readonly tooMuch: readonly (OverlayPiece & { readonly why: TooMuchWhy })[];
}
