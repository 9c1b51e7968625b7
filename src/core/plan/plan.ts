/** What follows from a work: the whole answer, derived afresh, never stored. */
import type { CheckResult } from "../checks/check";
import type { DartFigures } from "../dart/dartFigures";
import type { ProbableBustPoint } from "../bodies/probableBustPoint";
import type { PiecePoint } from "../geometry/point";
import type { PieceSet } from "../alterations/pieceSet";
import type { DartRef, LevelName, Nest, Piece, PieceName, PointName, SeamName } from "../pattern/piece";
import type { SurgeryTrace } from "../surgery/cutAndMove";
import type { Result } from "../result";
import type { Sizing } from "../sizing/sizing";
import type { Mm, Radians } from "../units";
import type { Alteration, GiveBackPlace, Half } from "./work";

/** Why there is no plan yet. `field` names the entry to look at. */
export type PlanFailure =
  | { readonly code: "plan/measure-missing"; readonly measures: readonly ("bustGirth" | "waistGirth" | "hipGirth")[] }
  | { readonly code: "plan/chart-unusable"; readonly faults: number }
  | {
      readonly code: "plan/outside-chart";
      /** The girth that the frame is picked by: the bust, or the upper chest. */
      readonly level: "bust" | "upperChest" | "waist" | "hip";
      /** Body girth (bust, upper chest) or garment target (waist, hip), mm, and the range that can be reached. */
      readonly wanted: Mm;
      readonly least: Mm;
      readonly most: Mm;
    }
  | { readonly code: "plan/frame-unknown"; readonly label: string }
  | { readonly code: "plan/cup-unknown"; readonly label: string }
  /** `least`: how much smaller (negative) than a usual draft's a cup difference can be at the most. */
  | { readonly code: "plan/cup-undraftable"; readonly label: string; readonly least: Mm };

/** A girth at a level: between which sizes its line runs, what is wanted and what the pieces give. */
export interface PlannedLevel {
  readonly level: "bust" | "waist" | "hip";
  /** Labels of the lower and the upper printed line. Beyond the range: the last two, with a share below 0 or above 1. */
  readonly between: readonly [string, string];
  readonly share: number;
  /** Fractional index in the chart. */
  readonly size: number;
  readonly extrapolated: boolean;
  readonly body: Mm;
  readonly ease: Mm;
  /** Body + ease, whole girth. */
  readonly target: Mm;
  /** What the pattern's pieces claim to give (chart finished girth carried through the picks and slips). */
  readonly claim: Mm;
  /** Measured on the final pieces, whole girth, darts closed. */
  readonly finished: Mm;
  /** One standard deviation of the body girth it stands on (of the upper chest, where the frame goes by it). */
  readonly spread: Mm;
  /** Tape error that would change the pick or carry the line past the next printed one. */
  readonly margin: Mm;
  /** Probability of that, the girth being good to `spread`. */
  readonly probability: number;
  readonly borderline: boolean;
}

/** Where the new cutting line runs at one level of one piece. */
export interface CutLine {
  readonly piece: PieceName;
  readonly level: "bust" | "waist" | "hip";
  readonly between: readonly [string, string];
  readonly share: number;
  /** From the lower printed line, positive outside it (towards the side). Before any slip moves the seam. */
  readonly offset: Mm;
  /** What slips moved the same point afterwards, positive outside. */
  readonly slipMove: Mm;
  readonly at: PiecePoint;
}

/** One dart seen three ways: as printed, as the wearer's cup asks, as drawn now. */
export interface PlannedDart {
  readonly ref: DartRef;
  /** null: a dart that the pattern does not have. */
  readonly printed: DartFigures | null;
  /** Only where the dart serves the bust. */
  readonly wanted: DartFigures | null;
  readonly drawn: DartFigures;
  /** Drawn against wanted (or printed): sharper means fuller by more than `FULLNESS_NOTICED`. */
  readonly verdict: "asWanted" | "tooSharp" | "tooFlat";
  /** True where the end lies past the bust point. */
  readonly beyondBustPoint: boolean;
  /** Stop short of the bust point that is usual for this dart and cup (common practice, no source). */
  readonly usualStop: { readonly least: Mm; readonly most: Mm } | null;
  /** What truing moved each mouth end along its leg (positive lengthens). */
  readonly truing: { readonly inner: Mm; readonly outer: Mm };
  /** The sewn seam line inside the mouth: inner mouth end, the cap, outer mouth end. */
  readonly cap: readonly PiecePoint[];
  /** Where shares can go. */
  readonly giveBackPlaces: readonly GiveBackPlace[];
}

/** What one slip did, for the ledger and for the table. */
export interface SlipTrace {
  readonly piece: PieceName;
  /** The cuts and moves it is made of, in order; none where a line was only redrawn. */
  readonly surgery: readonly SurgeryTrace[];
  /** Lengths that its words name, by the name they carry there. */
  readonly values: Readonly<Record<string, Mm>>;
  /** The pieces it changed, just before and just after. */
  readonly before: PieceSet;
  readonly after: PieceSet;
  readonly moved: readonly { readonly piece: PieceName; readonly from: PiecePoint; readonly to: PiecePoint }[];
  readonly seam: SeamName | null;
  /** Sewn length of the seam before, after the dart alone, and after giving back. */
  readonly seamBefore: Mm;
  readonly seamUngiven: Mm;
  readonly seamAfter: Mm;
  /** Amount taken (positive) or added (negative) at each place, on the half. */
  readonly given: readonly { readonly place: GiveBackPlace; readonly piece: PieceName; readonly amount: Mm }[];
  readonly notes: readonly SlipNote[];
}

export type SlipNote =
  | { readonly code: "centreNowSeam" }
  | { readonly code: "bustLoses"; readonly amount: Mm }
  | { readonly code: "legsTrued"; readonly amount: Mm }
  | { readonly code: "armholeSmoothed"; readonly turned: Radians }
  | { readonly code: "centreLengthened"; readonly amount: Mm };

/** Why a slip could not be applied. The pieces are then as without it. */
export type SlipFailure =
  /** The style has no such seam or place. */
  | { readonly code: "slip/not-on-this-style" }
  /** `most`: the nearest amount that works, with its sign. */
  | { readonly code: "slip/too-much"; readonly most: Mm }
  /** The outline would cross itself or an edge become too short. */
  | { readonly code: "slip/outline-spoilt"; readonly piece: PieceName }
  /** There is no free name left for another dart on that seam. */
  | { readonly code: "slip/too-many-darts" }
  | { readonly code: "slip/no-such-dart"; readonly dart: DartRef }
  /** `dart` where it is not the altered one but the one that was to give back. */
  | { readonly code: "slip/dart-vanishes"; readonly smallest: Mm; readonly would: Mm; readonly dart?: DartRef }
  | { readonly code: "slip/end-outside-piece"; readonly most: Mm }
  | { readonly code: "slip/too-short"; readonly most: Mm }
  | { readonly code: "slip/off-the-seam"; readonly most: Mm; readonly dart?: DartRef }
  | { readonly code: "slip/shares-not-whole"; readonly sum: number }
  /** What would still be left over after as much as the chosen places can take. */
  | { readonly code: "slip/not-given-back"; readonly left: Mm }
  | { readonly code: "slip/not-this-dart"; readonly dart: DartRef }
  | { readonly code: "slip/bust-reduction-too-large"; readonly most: Mm };

/** A line of the ledger: blend lines and the bust alteration come from the picks, the rest from the wearer. */
export interface Slip {
  readonly id: string;
  readonly source: "blend" | "bust" | "wearer";
  /** Where it stands in the trade's order. */
  readonly phase: SlipPhase;
  readonly piece: PieceName;
  readonly what: SlipWhat;
  readonly outcome: Result<SlipTrace, SlipFailure>;
}

/** The trade's order: length first, since all else is measured on it; edges last, since they only finish. */
export type SlipPhase = "widthsTraced" | "length" | "bust" | "darts" | "widths" | "edges";

export type SlipWhat =
  | { readonly kind: "blend"; readonly level: "waist" | "hip"; readonly cutLine: CutLine }
  | { readonly kind: "bust"; readonly amount: Mm; readonly spread: Mm; readonly drop: Mm; readonly turn: Radians }
  | { readonly kind: "alteration"; readonly alteration: Alteration };

/** One job on one piece for the printed order of work; words are made of it elsewhere. */
export interface ChecklistItem {
  readonly piece: PieceName;
  readonly step: ChecklistStep;
  readonly amount: Mm;
  /** On one half alone, where the halves differ. */
  readonly half?: Half;
}

export type ChecklistStep =
  | { readonly kind: "trace"; readonly size: string; readonly cup: string | null }
  | { readonly kind: "bust"; readonly spread: Mm; readonly whole: Mm; readonly drop: Mm }
  | { readonly kind: "blend"; readonly cutLine: CutLine; readonly from: LevelName }
  | { readonly kind: "slip"; readonly slip: Slip }
  /** `late`: widths or edges change it after the darts are done, so that it can only be drawn then. */
  | { readonly kind: "dart"; readonly dart: DartRef; readonly figures: DartFigures; readonly late: boolean }
  | { readonly kind: "trueDart"; readonly dart: DartRef; readonly amount: Mm }
  | {
      readonly kind: "walk";
      readonly seam: SeamName;
      readonly first: readonly PieceName[];
      readonly second: readonly PieceName[];
      readonly ease: Mm;
    }
  | { readonly kind: "trued"; readonly change: TruingChange };

/** What truing changed at the end of the chain. */
export interface TruingChange {
  readonly piece: PieceName;
  readonly seam: SeamName;
  readonly what: "seamWalked" | "seamSmoothed" | "cornerSquared" | "legsEqualled";
  readonly point: PointName | null;
  /** mm the seam or corner moved; degrees for a corner squared. */
  readonly amount: number;
}

/** What the halves of the body can differ in. */
export interface PlanHalf {
  readonly pieces: readonly Piece[];
  readonly darts: readonly PlannedDart[];
  readonly slips: readonly Slip[];
  readonly truing: readonly TruingChange[];
  readonly cutLines: readonly CutLine[];
}

export interface Plan {
  /** Set where left and right halves differ: this plan's pieces are then the left half's, and here is the right's. */
  readonly right: PlanHalf | null;
  /** What truing changed after the last slip. */
  readonly truing: readonly TruingChange[];
  readonly sizing: Sizing;
  readonly levels: readonly PlannedLevel[];
  /** The pieces printed, in the cup version picked, all sizes. */
  readonly nest: Nest;
  /** The frame size as printed, before blend and slips. */
  readonly printed: readonly Piece[];
  /** The blended pieces before the wearer's slips. */
  readonly blended: readonly Piece[];
  /** The final pieces. */
  readonly pieces: readonly Piece[];
  /** The bodice as the wearer's own cup asks for it, before her slips; null where it cannot be made. */
  readonly wanted: readonly Piece[] | null;
  /** The piece that carries the bust point. */
  readonly bustPiece: PieceName;
  /**
   * On that piece: the pattern's bust point (after any bust alteration), the wearer's own where she measured it, and where
   * it probably lies where she did not.
   */
  readonly bustPoint: {
    readonly printed: PiecePoint;
    readonly own: PiecePoint | null;
    readonly probable: ProbableBustPoint | null;
  };
  readonly darts: readonly PlannedDart[];
  readonly cutLines: readonly CutLine[];
  readonly slips: readonly Slip[];
  readonly checks: readonly CheckResult[];
  readonly checklist: readonly ChecklistItem[];
}
