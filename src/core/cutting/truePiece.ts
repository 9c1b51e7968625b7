/**
 * A piece at true scale, with all that is drawn on it to cut and sew by. Everything in the piece frame, mm; it is derived
 * from a plan and never stored.
 */
import type { RingPoint } from "../allowance/cuttingLine";
import type { Half } from "../decisions/alteration";
import type { ClothName } from "../decisions/dress";
import type { EdgeCurve } from "../geometry/edgeCurve";
import type { PiecePoint } from "../geometry/point";
import type { PartGroup } from "../parts/part";
import type { DartName, LevelName, PieceName, SeamName } from "../pattern/piece";
import type { Radians } from "../units";
import type { TackingRow } from "./tacking";

export type { RingPoint };

/**
 * A mark across the allowance. `seam`: meets the notch of the same number on the piece it is sewn to. `dart`: the end of a
 * dart's leg. `centre`: the centre line where the piece is cut on the fold. `opening`: how far the closure is left open.
 * `balance`: on an armhole, to tell front from back by. `strap`: where the middle of a strap is sewn on, however wide it is.
 */
type NotchKind = "seam" | "dart" | "centre" | "opening" | "balance" | "strap";

/** Where a mark is cut: on the stitch line, and on the cutting line. */
export interface NotchCut {
  readonly stitch: PiecePoint;
  readonly cut: PiecePoint;
}

export interface Notch extends NotchCut {
  readonly kind: NotchKind;
  /** Of a seam notch; 0 for the others. */
  readonly number: number;
  readonly seam: SeamName;
  /** Square out of the piece; along the leg at a dart, along the fold at the centre line. */
  readonly outward: Radians;
  /** Of a double notch, as backs have: one on either side of where a single one would stand. */
  readonly twins?: readonly [NotchCut, NotchCut];
}

export interface TrueDart {
  readonly name: DartName;
  /** Both legs as they are sewn, from the mouth to the end; none for gathers. */
  readonly legs: readonly EdgeCurve<"piece">[];
  /** The line it is folded on, from its end to the cutting line; null for gathers. */
  readonly fold: readonly [PiecePoint, PiecePoint] | null;
  readonly end: PiecePoint;
  /** Mouth ends on the stitch line. */
  readonly mouth: readonly [PiecePoint, PiecePoint];
  readonly gathered: boolean;
}

/** How often a piece is cut: so many times on the fold, or so many times single, each second one turned over. */
export interface CutCount {
  readonly onFold: boolean;
  readonly count: number;
}

/** A hole or a thread tack through the cloth. Each button has its buttonhole on the other half, from outside the centre line inwards. */
export type Drill =
  | { readonly what: "dartEnd"; readonly at: PiecePoint }
  | { readonly what: "button"; readonly at: PiecePoint; readonly hole: readonly [PiecePoint, PiecePoint] };

/** A seam from corner to corner as it is sewn, darts left out: what it is called is written along it. */
export interface SeamRun {
  readonly seam: SeamName;
  readonly edges: readonly EdgeCurve<"piece">[];
  /** How it opens, where it does; `free`: left open beside the zip of another layer. */
  readonly opens: "zip" | "buttons" | "free" | null;
}

export interface TruePiece {
  /** Unlike any other of the same sheet: letters, digits and hyphens. */
  readonly key: string;
  readonly name: PieceName;
  /** Of a part of the dress that is no piece of the bodice: what it belongs to, and what it is cut from. */
  readonly part?: { readonly group: PartGroup; readonly cloth: ClothName };
  /** Other cloths that are cut by the same paper. Absent: it is not known, since no dress is chosen. */
  readonly also?: readonly ClothName[];
  /** Her own word for a piece that the planner has no name for. */
  readonly label?: string;
  /** Set where left and right halves differ. */
  readonly half: Half | null;
  /** Label of a printed size; null: the wearer's own. */
  readonly size: string | null;
  /** Its place among the pieces of the garment, from 1 on, and how many they are; two halves of one piece share a number. */
  readonly number: readonly [place: number, of: number];
  /** Closed; a straight stretch from the last point to the first. Without allowances it runs along the stitch line. */
  readonly cutting: readonly RingPoint[];
  /** Closed ring: the seams, and the cap across each dart's mouth. */
  readonly stitch: readonly EdgeCurve<"piece">[];
  /** The stretches of the stitch line that lie on the fold. */
  readonly fold: readonly EdgeCurve<"piece">[];
  /** The centre line where it is a seam or an opening. */
  readonly centreSeam: readonly EdgeCurve<"piece">[];
  readonly seams: readonly SeamRun[];
  /** Where it is cut across to be lengthened or shortened, from edge to edge. */
  readonly lengthen: readonly (readonly [PiecePoint, PiecePoint])[];
  readonly darts: readonly TrueDart[];
  /** The centre back line that a vent is folded in along, from its upper end to the cutting line of the hem; null without one. */
  readonly ventFold: readonly [PiecePoint, PiecePoint] | null;
  readonly notches: readonly Notch[];
  readonly grain: readonly [PiecePoint, PiecePoint];
  /** Bust, waist and hip lines to balance the piece by. */
  readonly levels: readonly { readonly level: LevelName; readonly points: readonly PiecePoint[] }[];
  readonly bustPoint: PiecePoint | null;
  /** Where a hole or a thread tack marks the cloth: ends of darts, buttons. */
  readonly drills: readonly Drill[];
  /** Corners of the stitch line that are brought together before the seam is pinned: the cut ends there do not match. */
  readonly dots: readonly PiecePoint[];
  readonly cut: CutCount;
  /** Of a piece for one half: rows to tack on the cloth, one for her left half, two for her right. */
  readonly tacking: readonly TackingRow[];
  /** A box on the piece, free of its lines, where its title goes; its width may be turned along y. */
  readonly title: { readonly centre: PiecePoint; readonly width: number; readonly height: number };
}
