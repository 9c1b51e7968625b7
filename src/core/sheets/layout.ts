/** How pieces lie on one large sheet, and how that is parted into pages. Sheet frame: x to the right, y down, mm. */
import type { PiecePoint, SheetPoint } from "../geometry/point";
import type { Mm } from "../units";

/** What is to be laid: a closed ring, flattened, that holds all that is drawn of it. */
export interface ToLay {
  readonly key: string;
  readonly ring: readonly PiecePoint[];
}

/** Turned about the origin of the piece frame by so many quarters (+x towards +y), then moved. Never turned over. */
export interface Placement {
  readonly key: string;
  readonly quarters: 0 | 1 | 2 | 3;
  readonly dx: Mm;
  readonly dy: Mm;
}

/**
 * One page of a tiled sheet. Its window (`x`, `y`, `width`, `height`, in the sheet frame) is all that is printed on it; it
 * runs over into the pages at its right and below by the overlap.
 */
export interface Tile {
  /** Counted from 0. */
  readonly column: number;
  readonly row: number;
  /** Column letter and row number: "A1", "B1", …; after Z come AA, AB. */
  readonly name: string;
  readonly x: Mm;
  readonly y: Mm;
  readonly width: Mm;
  readonly height: Mm;
}

/** Where two neighbouring pages meet, in the middle of their overlap: printed on both, to be laid one on the other. */
export interface JoinMark {
  readonly at: SheetPoint;
  /** Names of the two pages. */
  readonly pages: readonly [string, string];
}

export interface SheetLayout {
  readonly placements: readonly Placement[];
  /** All of the sheet that is used. */
  readonly width: Mm;
  readonly height: Mm;
  /** Only pages that carry some of a piece, row by row. For a roll: one tile, the whole. */
  readonly tiles: readonly Tile[];
  readonly joins: readonly JoinMark[];
  readonly columns: number;
  readonly rows: number;
}

export type LayoutFailure =
  /** Wider than the roll whichever way it lies. `least`: the width that it needs. */
  | { readonly code: "sheet/piece-too-wide"; readonly key: string; readonly least: Mm; readonly width: Mm }
  /** Margins leave less than `least` in width or height. */
  | { readonly code: "sheet/page-too-small"; readonly width: Mm; readonly height: Mm; readonly least: Mm }
  | { readonly code: "sheet/too-many-pages"; readonly pages: number; readonly most: number }
  | { readonly code: "sheet/nothing-to-lay" };
