/** What the wearer decided: the whole of the saved document, and nothing derived. */
import type { SizeChart } from "../chart/sizeChart";
import type { Measures } from "../measures/measure";
import type { DartRef } from "../pattern/piece";
import type { Mm } from "../units";

export type LengthUnit = "cm" | "in";
export type PaperSize = "A4" | "Letter";

/** Waist length alone, or with a fitted basque to the hip sewn to the waist seam. */
export type PatternLength = "waist" | "hip";

/** Where the garment opens, and how far the opening runs below the waist seam (0: it ends at the waist). */
export interface Closure {
  readonly place: "centreBack" | "side";
  readonly belowWaist: Mm;
}

/** Garment girth minus body girth. */
export interface Ease {
  readonly bust: Mm;
  readonly waist: Mm;
  readonly hip: Mm;
}

export interface Pattern {
  readonly name: string;
  readonly chart: SizeChart;
  /** The ease drafted in, used where the chart prints no finished measures. */
  readonly ease: Ease;
  readonly length: PatternLength;
  readonly closure: Closure;
}

/** Picks the wearer set over the planner's own. Sizes by label; waist and hip as fractional indexes (0 = first size). */
export interface Picks {
  readonly frame?: string;
  readonly cup?: string;
  readonly waist?: number;
  readonly hip?: number;
  /** Whole change of bust girth to make by alteration; absent: what the planner finds; 0: none. */
  readonly bustAlteration?: Mm;
}

/** Where what a dart sets free (or asks for) is taken: shares that add up to 1. */
export type GiveBackPlace = "centreSeam" | "sideSeam" | "otherDart" | "underarm" | "waistEnd";
export type GiveBack = Readonly<Partial<Record<GiveBackPlace, number>>>;

/** Held while a dart's end moves: the mouth (the angle changes) or the fullness (the mouth changes). */
export type Hold = "mouth" | "fullness";

/** Moves a dart's end. */
export interface DartEndAlteration {
  readonly kind: "dartEnd";
  readonly id: string;
  readonly dart: DartRef;
  /** Along the axis towards the mouth: positive shortens, negative lengthens. */
  readonly shorten: Mm;
  /** Across the axis: positive towards the centre line (waist darts) or upwards (side darts). */
  readonly across: Mm;
  readonly hold: Hold;
  readonly giveBack: GiveBack;
}

/** Widens (positive) or narrows (negative) a dart's mouth, by each end's own move away from the dart's middle. */
export interface DartMouthAlteration {
  readonly kind: "dartMouth";
  readonly id: string;
  readonly dart: DartRef;
  readonly inner: Mm;
  readonly outer: Mm;
  readonly giveBack: GiveBack;
}

/** Moves a whole dart along its seam: towards the centre line (waist darts) or upwards (side darts) when positive. */
export interface DartPlaceAlteration {
  readonly kind: "dartPlace";
  readonly id: string;
  readonly dart: DartRef;
  readonly by: Mm;
  /** Redraw it on the same seam, or take the amount off the centre-front seam (waist dart of the front only). */
  readonly how: "redraw" | "offCentreSeam";
  readonly giveBack: GiveBack;
}

/** One decision of the wearer about the pieces. At most one of each kind for each dart. */
export type Alteration = DartEndAlteration | DartMouthAlteration | DartPlaceAlteration;
export type AlterationKind = Alteration["kind"];

export interface Work {
  readonly name: string;
  /** A scenario made up for showing, not a person. */
  readonly invented: boolean;
  readonly unit: LengthUnit;
  readonly paper: PaperSize;
  readonly measures: Measures;
  readonly pattern: Pattern;
  /** Ease wanted where the wearer wants other than the pattern's. */
  readonly easeWanted: Partial<Ease>;
  /** Radius of the bust at which fullness is stated, where given. */
  readonly bustRadius?: Mm;
  readonly picks: Picks;
  readonly alterations: readonly Alteration[];
  /** Entries that could not be read yet, as typed, by field: nothing typed is lost. */
  readonly unread: Readonly<Record<string, string>>;
}
