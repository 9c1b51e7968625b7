/** What follows from a work: the whole answer, derived afresh, never stored. */
import type { Alteration, GiveBackPlace, Half } from "../decisions/alteration";
import type { AlterationFailure } from "../alterations/outcome/alterationFailure";
import type { AlterationTrace } from "../alterations/outcome/trace";
import type { CheckResult } from "../checks/check";
import type { SeenAtDart } from "../decisions/seenAtDart";
import type { Ease } from "../decisions/pattern";
import type { Phase } from "../decisions/tradeOrder";
import type { TruingChange } from "../truing/changes";
import type { JudgedDartEnd } from "../dart/dartEndReading";
import type { DartFigures } from "../dart/dartFigures";
import type { ProbableBustPoint } from "../bodies/probableBustPoint";
import type { PiecePoint } from "../geometry/point";
import type { DartName, DartRef, LevelName, Nest, Piece, PieceName, PointName, SeamName } from "../pattern/piece";
import type { Result } from "../result";
import type { Sizing } from "../sizing/sizing";
import type { Mm, Radians } from "../units";
import type { NecklineFailure } from "../neckline/necklineFailure";
import type { RedrawnNeckline } from "../neckline/redrawNeckline";
import type { HalfLevelled } from "./levelHalves";
import type { NecklineJob } from "./necklineJob";
import type { DartPlaces, DrawnLength, TissuePlace } from "./tissuePlaces";

/** A girth at a level: between which sizes its line runs, what is wanted and what the pieces give. */
export interface PlannedLevel {
  readonly level: "bust" | "waist" | "hip";
  /** Labels of the lower and the upper printed line. Beyond the range: the last two, with a share below 0 or above 1. */
  readonly between: readonly [string, string];
  readonly share: number;
  /** Fractional index in the chart. */
  readonly size: number;
  readonly extrapolated: boolean;
  /** Labels of the lines that it stands on of which there is no outline: worked out from those that there are. */
  readonly untraced?: readonly string[];
  /** There is but one size here, so nothing is blended, whatever is wanted. */
  readonly isHeld?: true;
  readonly body: Mm;
  readonly ease: Mm;
  /** Body + ease, whole girth. */
  readonly target: Mm;
  /** What the pattern's pieces claim to give (chart finished girth carried through the picks and alterations). */
  readonly claim: Mm;
  /** Measured on the final pieces, whole girth, darts closed. */
  readonly finished: Mm;
  /** One standard deviation of the body girth it stands on (of the upper chest, where the base size goes by it). */
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
  /** From the lower printed line, positive outside it (towards the side). Before any alteration moves the seam. */
  readonly offset: Mm;
  /** What alterations moved the same point afterwards, positive outside. */
  readonly alterationMove: Mm;
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
  /**
   * At which the fullness of all three is stated: the bust radius, or the shortest leg of the dart as printed and as the cup
   * asks. What is drawn has no say in it.
   */
  readonly coneRadius: Mm;
  /**
   * Drawn against wanted (or printed): sharper means fuller by more than `FULLNESS_NOTICED`. What she saw on the toile goes
   * before what was worked out: a dart that stands as the answer she took is as wanted.
   */
  readonly verdict: "asWanted" | "tooSharp" | "tooFlat";
  /** How it came out on the toile that the answer was taken by; null where none was. */
  readonly bySight: SeenAtDart["pointed"] | null;
  /** Its end against the bust point; null for a dart that serves no bust. */
  readonly endJudged: JudgedDartEnd | null;
  /** Stop short of the bust point that is usual for this dart and cup (common practice, no source). */
  readonly usualStop: { readonly least: Mm; readonly most: Mm } | null;
  /** What truing moved each mouth end along its leg (positive lengthens). */
  readonly truing: { readonly inner: Mm; readonly outer: Mm };
  /** Where shares can go. */
  readonly giveBackPlaces: readonly GiveBackPlace[];
}

/** A line of the ledger: blend lines and the bust alteration come from the picks, the rest from the wearer. */
export interface PlannedAlteration {
  readonly id: string;
  readonly source: "blend" | "bust" | "wearer";
  /** Where it stands in the trade's order. */
  readonly phase: Phase;
  readonly piece: PieceName;
  readonly what: WhatIsAltered;
  /** For both halves, and yet not come out alike on them: of one alone, as a bust alteration of its own cup version. */
  readonly half?: Half;
  readonly outcome: Result<AlterationTrace, AlterationFailure>;
}

type WhatIsAltered =
  | { readonly kind: "blend"; readonly level: "waist" | "hip"; readonly cutLine: CutLine }
  /** `amount`: what is made of what was `asked`, or what was asked where it was left out; whole. */
  | {
      readonly kind: "bust";
      readonly amount: Mm;
      readonly asked: Mm;
      readonly spread: Mm;
      readonly drop: Mm;
      readonly turn: Radians;
    }
  | { readonly kind: "alteration"; readonly alteration: Alteration };

/** One job on one piece for the printed order of work; words are made of it elsewhere. */
export interface ChecklistItem {
  readonly piece: PieceName;
  readonly step: ChecklistStep;
  readonly amount: Mm;
  /** On one half alone, where the halves differ. */
  readonly half?: Half;
}

/** Where the wearer's own bust point is marked on a traced piece. */
interface OwnBustPoint {
  readonly fromCentre: Mm;
  /** Straight from the side neck point; null where the piece has none. */
  readonly fromSideNeck: Mm | null;
  /** From the bust point printed on it, positive away from the centre; null where it has none. */
  readonly fromPrinted: { readonly out: Mm; readonly down: Mm } | null;
  /** Work on the piece moves what was marked. */
  readonly isMoved: boolean;
}

/** The dart from the side and the one from the waist that a front is spread at. */
export interface BustSpreadAt {
  readonly side: DartName;
  /** Where a side dart is opened that was not there: how far from the side's corner at the bust line, or from the underarm. */
  readonly sideOpened: { readonly from: "sideBust" | "underarm"; readonly by: Mm } | null;
  readonly waist: DartName;
  readonly isWaistOpened: boolean;
}

export type ChecklistStep =
  /** `isTwice`: the piece is not the same on both halves of the body; `own`: on the piece that carries it. */
  | {
      readonly kind: "trace";
      readonly size: string;
      readonly cup: string | null;
      readonly isTwice: boolean;
      readonly own: OwnBustPoint | null;
    }
  /** `hinge`: how far the point that a front is turned about lies from the underarm, straight; 0 where there is none to find. */
  | {
      readonly kind: "bust";
      readonly spread: Mm;
      readonly whole: Mm;
      readonly drop: Mm;
      readonly hinge: Mm;
      /** Darts of a front that it is spread at; absent of other pieces. */
      readonly at?: BustSpreadAt;
    }
  /** The centre front let in, so that it can be sewn to the other half, which has a fuller cup. */
  | { readonly kind: "level"; readonly level: HalfLevelled }
  /** `taken`: what darts have given to the side seam there, so that it is marked once; mm taken off. */
  | { readonly kind: "blend"; readonly cutLine: CutLine; readonly from: LevelName; readonly taken: Mm }
  | { readonly kind: "alteration"; readonly planned: PlannedAlteration }
  /** `late`: widths or edges change it after the darts are done, so that it can only be drawn then. */
  | {
      readonly kind: "dart";
      readonly dart: DartRef;
      readonly figures: DartFigures;
      /** null where the tissue has nothing to measure from. */
      readonly places: DartPlaces | null;
      /** Its stop is told from the wearer's own bust point, not from the pattern's. */
      readonly isByOwnPoint: boolean;
      /** It stands as she saw it on the toile: the mark made there goes before any bust point. */
      readonly isBySight: boolean;
      /** The steps before have moved it and drawn it: what is told of it is a check. */
      readonly isMovedAlready: boolean;
      readonly late: boolean;
    }
  /** Where points lie that no longer lie where they are printed, lines to draw to a length; `stayed`: points that do, to lay it by. */
  | {
      readonly kind: "places";
      readonly places: readonly TissuePlace[];
      readonly lengths: readonly DrawnLength[];
      readonly stayed: readonly PointName[];
    }
  /** The upper edge drawn anew on the piece as it lies when all else is done. */
  | ({ readonly kind: "neckline" } & NecklineJob)
  | { readonly kind: "trueDart"; readonly dart: DartRef; readonly amount: Mm }
  | {
      readonly kind: "walk";
      readonly seam: SeamName;
      readonly first: readonly PieceName[];
      readonly second: readonly PieceName[];
      readonly ease: Mm;
    }
  | { readonly kind: "trued"; readonly change: TruingChange };

/** What is one for the whole garment, whichever half is looked at. */
export interface PlanGarment {
  readonly sizing: Sizing;
  readonly levels: readonly PlannedLevel[];
  /** Ease of the base size, and whether it is what its pieces measure over the chart's body. */
  readonly drafted: Ease;
  readonly isEaseMeasured: boolean;
  /** The pieces printed, in the cup version picked, all sizes. */
  readonly nest: Nest;
  /** The base size as printed, before blend and alterations. */
  readonly printed: readonly Piece[];
  /** The blended pieces before the wearer's alterations. */
  readonly blended: readonly Piece[];
  /** The bodice as the wearer's own cup asks for it, before her alterations; null where it cannot be made. */
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
}

/**
 * One half of the body: all that a panel, a check or a sheet can ask of it. Where it has a cup of its own, sizing, pieces printed
 * and blended and the bust point are those of that cup.
 */
export interface PlanHalf extends PlanGarment {
  /** What was let in at the centre front, so that it can be sewn to a half with a fuller cup; null: nothing. */
  readonly levelled: HalfLevelled | null;
  /** The final pieces. */
  readonly pieces: readonly Piece[];
  /** The same before the neckline was redrawn on them; the very same array where it was not. */
  readonly fitted: readonly Piece[];
  /** The neckline that was chosen, or why it cannot be had: the pieces then stay as they are. null: as the pattern has it. */
  readonly neckline: Result<RedrawnNeckline, NecklineFailure> | null;
  readonly darts: readonly PlannedDart[];
  readonly cutLines: readonly CutLine[];
  /** The lines of the ledger that are made on this half. */
  readonly alterations: readonly PlannedAlteration[];
  /** What truing changed after the last alteration. */
  readonly truing: readonly TruingChange[];
}

/** Both halves, and what is told of them together. */
export interface Plan extends PlanGarment {
  readonly left: PlanHalf;
  /** The very same object as `left` where the halves of the body are alike. */
  readonly right: PlanHalf;
  /** The ledger: what is made on both halves stands in it once. */
  readonly ledger: readonly PlannedAlteration[];
  /** These two are worked out when they are read: what follows a drag reads neither. */
  readonly checks: readonly CheckResult[];
  readonly checklist: readonly ChecklistItem[];
}

/** The halves that are drawn and told apart: one where they are alike. */
export const halvesOf = ({ left, right }: Pick<Plan, "left" | "right">): readonly PlanHalf[] =>
  left === right ? [left] : [left, right];
