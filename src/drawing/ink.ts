/** What is drawn on a true-scale sheet, as plain data: lines and writing, each with what it means. mm. */
import type { EdgeCurve } from "../core/geometry/edgeCurve";
import type { Frame, Point } from "../core/geometry/point";
import type { Mm, Radians } from "../core/units";

/** What a line or a piece of writing means. It tells its look, and its group in files. */
export type InkRole =
  /** Cut here; where the piece lies on the fold; sew here. */
  | "cutting"
  | "fold"
  /** Where two printed halves of one piece are joined: no edge of the cloth. */
  | "joinEdge"
  | "stitch"
  | "dartLeg"
  | "dartFold"
  /** Along the centre back: a vent is folded in by it. */
  | "ventFold"
  | "gather"
  | "notch"
  | "grain"
  | "level"
  /** Where the piece is cut across to be lengthened or shortened. */
  | "lengthen"
  /** Rows of tacking on the cloth, which tell the halves of a toile apart. */
  | "tacking"
  /** Bust point, ends of darts, buttons. */
  | "mark"
  /** A printed size, under the wearer's line: its dash tells which. */
  | "printed"
  /** The piece before the wearer's alterations. */
  | "before"
  /** On an overlay: what is new, and the printed points it is laid on by. */
  | "changed"
  | "layOn"
  | "title"
  /** Of the sheet: edge of the window, joining marks, test squares, the map and the writing round about. */
  | "frame"
  /** Where the next page comes to lie. */
  | "overlap"
  | "join"
  | "test"
  | "map"
  | "note";

export interface InkLine<F extends Frame> {
  readonly kind: "line";
  readonly role: InkRole;
  /** One after the other, each starting where the one before ends. */
  readonly edges: readonly EdgeCurve<F>[];
  readonly closed: boolean;
  /** Filled too, in the colour of its line (arrow heads, black triangles). */
  readonly filled?: true;
  /** Of a printed size: its place among the sizes, which chooses the dash. */
  readonly size?: number;
}

export interface InkText<F extends Frame> {
  readonly kind: "text";
  readonly role: InkRole;
  /** On the foot of the writing (its baseline), at its start, middle or end. */
  readonly at: Point<F>;
  readonly anchor: "start" | "middle" | "end";
  readonly text: string;
  /** Size of the type (em), mm. */
  readonly size: Mm;
  /** Turned about `at`, +x towards +y. */
  readonly turn: Radians;
  readonly bold?: true;
}

export type Ink<F extends Frame> = InkLine<F> | InkText<F>;

/** One named part of a page: a piece, or something of the sheet's own. */
export interface InkGroup {
  /** Letters, digits and hyphens; unlike any other of its page. */
  readonly id: string;
  /** For people. */
  readonly label: string;
  /** Added to every point to come from the sheet to the page. */
  readonly dx: Mm;
  readonly dy: Mm;
  /** Nothing is shown outside it; in the page's own frame. */
  readonly clip: { readonly x: Mm; readonly y: Mm; readonly width: Mm; readonly height: Mm } | null;
  readonly ink: readonly Ink<"sheet">[];
}

/** A page of paper, x to the right and y down from its upper left corner. */
export interface InkPage {
  /** Said in the file's list of pages: "Map", "A1". */
  readonly name: string;
  readonly width: Mm;
  readonly height: Mm;
  readonly groups: readonly InkGroup[];
}
