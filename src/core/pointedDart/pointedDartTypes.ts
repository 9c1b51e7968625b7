/** What is seen of a bust dart on the toile, and what is answered: the records of the pointed dart. */
import type { DartEndAlteration, DartRedraw, GiveBackPlace } from "../decisions/alteration";
import type { DartAnswerKey } from "../decisions/seenAtDart";
import type { AlterationNote } from "../alterations/outcome/trace";
import type { AlterationFailure } from "../alterations/outcome/alterationFailure";
import type { PiecePoint } from "../geometry/point";
import type { DartRef } from "../pattern/piece";
import type { Mm } from "../units";
import type { DartFigures } from "../dart/dartFigures";

export type { SeenAtDart } from "../decisions/seenAtDart";

export interface PointedDartContext {
  /** The bust point the plan judges its darts by, in the frame of the dart's piece. */
  readonly bustPoint: PiecePoint;
  /** Fullness that the wearer's cup asks of this dart, mm. */
  readonly wantedFullness: Mm;
  /** At which fullness is stated, mm: the dart's own of the plan (`coneRadius`). */
  readonly radius: Mm;
  /** Bust minus upper chest, mm, for the usual stop of a side dart. Absent: an average one. */
  readonly cupDifference?: Mm;
  /** This dart's own redraws, made in this order when the toile was sewn; the answers take their place. */
  readonly existing: readonly DartRedraw[];
}

/** A term of the sum that proves the seam, on the half; they add up to `after`. mm. */
export type SeamTerm =
  /** Sewn length before this dart's own redraws: the dart's piece, at the waist with the other bodice piece. */
  | { readonly kind: "before"; readonly amount: Mm }
  /** What the mouth sets free (positive) or takes up, from `from` wide to `to` wide. */
  | { readonly kind: "mouth"; readonly amount: Mm; readonly from: Mm; readonly to: Mm }
  /** Negative: off the whole centre-front seam. */
  | { readonly kind: "offCentre"; readonly amount: Mm }
  /** Negative: taken there; positive: let out. */
  | { readonly kind: "given"; readonly amount: Mm; readonly place: GiveBackPlace }
  /** Gained or lost by drawing curves anew and smooth: fractions of a millimetre, or more where much is given back. */
  | { readonly kind: "smoothed"; readonly amount: Mm }
  | { readonly kind: "after"; readonly amount: Mm };

/** One whole solution. Amounts are against the pieces before this dart's own redraws, as those of its alterations are. */
export interface DartAnswer {
  readonly key: DartAnswerKey;
  /** In the order they are made: place, mouth, end. To be put in place of all this dart's redraws. */
  readonly alterations: readonly DartRedraw[];
  /** `before`: as sewn on the toile. Stops are from the bust point as seen. */
  readonly figures: { readonly before: DartFigures; readonly after: DartFigures; readonly wantedFullness: Mm };
  /** Width set free on the seam; negative: taken up. By the mouth and, brought to the centre, less what came off there. */
  readonly freed: Mm;
  /** Positive: taken there. */
  readonly given: readonly { readonly place: GiveBackPlace; readonly amount: Mm }[];
  readonly sum: readonly SeamTerm[];
  /** After less wanted, mm of fullness. */
  readonly fullnessOff: Mm;
  /** The whole bust girth loses so much; 0: nothing. */
  readonly bustLoses: Mm;
  /** Sewn, the dart meets the waist seam so far nearer the centre than before, where a basque's dart met it; 0: no basque. */
  readonly basqueDartOff: Mm;
  readonly notes: readonly AlterationNote[];
  /** The lower the better; see `costOf` of pointedDartAnswer.ts. */
  readonly cost: number;
}

/** Shortening alone, the mouth held, made on the dart as sewn: what not to do. */
export interface NaiveShortening {
  readonly alterations: readonly [DartEndAlteration];
  readonly shorten: Mm;
  readonly figures: { readonly before: DartFigures; readonly after: DartFigures };
}

export interface PointedDartAnswers {
  /** Best first; at least one. */
  readonly answers: readonly DartAnswer[];
  /** null: the end need not move along the dart, or cannot without leaving the piece. */
  readonly naive: NaiveShortening | null;
  readonly wantedFullness: Mm;
  /** How all of them move the end from where it was sewn: along the dart (positive shortens), and to the centre or upwards. */
  readonly shorten: Mm;
  readonly across: Mm;
  /** How far short of the bust point the answers end, mm. */
  readonly stop: Mm;
  /** The bust point as seen, in the frame of the pieces as sewn. */
  readonly bustPointSeen: PiecePoint;
  /** From the plan's bust point to the one seen, mm: large, and a measure is to be taken again. */
  readonly bustPointOff: Mm;
}

export type PointedDartFailure =
  | { readonly code: "pointedDart/no-such-dart"; readonly dart: DartRef }
  /** It serves no bust, is gathered, or opens on a seam that cannot give back. */
  | { readonly code: "pointedDart/not-this-dart"; readonly dart: DartRef }
  /**
   * One number alone stands in the way: `most` of it works with the others as they are. `length`: how far the end moves
   * along the dart (positive shortens); `aside`: `tooFarToSide`; `fullness`: the fullness itself, nearest to what is wanted.
   */
  | {
      readonly code: "pointedDart/too-much";
      readonly what: "length" | "aside" | "fullness";
      readonly asked: Mm;
      readonly most: Mm;
      readonly because: AlterationFailure | null;
    }
  /** Only together are they too much: `share` of all of it works, from 0 to 1. */
  | {
      readonly code: "pointedDart/together-too-much";
      readonly share: number;
      readonly because: AlterationFailure | null;
    };
