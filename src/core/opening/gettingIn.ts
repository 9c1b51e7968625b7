/** How she gets into the dress, and which zip it takes. mm. */
import type { Closure } from "../decisions/pattern";
import type { Mm } from "../units";

/** How an opening is gone through: feet first by the hips, or overhead by bust and shoulders. */
export type WayIn = "steppingIn" | "overhead";

/** At the side it is a zip, though buttons may have been chosen for a centre back before. */
export const isButtoned = ({ place, buttons }: Closure): boolean => place === "centreBack" && buttons !== undefined;

/** A loop of cloth that the body goes through: the girth at a level and twice the way from there to the opening's end. */
export interface OpeningLoop {
  /** Below the waist seam along the seam that opens; negative above. */
  readonly below: Mm;
  /** A seam or an edge that it runs along; null: across the cloth. The neck beside an opening at the side stays closed. */
  readonly at: "neck" | "waist" | "underBust" | null;
  readonly girth: Mm;
  readonly lets: Mm;
  readonly of: "shell" | "lining";
}

export interface WayThrough {
  readonly way: WayIn;
  readonly needed: Mm;
  /** The loop that lets through the least. */
  readonly tightest: OpeningLoop;
  readonly passes: boolean;
  /** How much further down the opening would have to end; null: no opening of this seam would do. */
  readonly longer: Mm | null;
}

/** Sold in centimetres or inches; the label is what stands on the packet: its length in that unit. */
export interface ZipLength {
  readonly length: Mm;
  readonly unit: "cm" | "in";
}

export interface ClosureReading {
  /** The easier one first; none where it comes apart all the way. */
  readonly ways: readonly WayThrough[];
  readonly passes: boolean;
  /** The opening as it stands, from its upper end to its lower one. */
  readonly opening: Mm;
  /** It is open to the hem: nothing holds it together, and its zip is one that comes apart. */
  readonly comesApart: boolean;
  /** The shortest that lets her in, over the easier way; null: none does. */
  readonly leastOpening: Mm | null;
  /**
   * The next longer sold in each unit, for the opening as it stands, or for the least one where that is too short; the longest
   * sold where that lets her in with the opening ended higher; null: none sold is long enough, or buttons close it, or it comes
   * apart.
   */
  readonly zip: { readonly cm: ZipLength | null; readonly in: ZipLength | null };
  /**
   * Where the opening then has to end, from its upper end, if none sold is long enough for it as it stands, but the longest is
   * for the least one; else null.
   */
  readonly endsAt: { readonly cm: Mm | null; readonly in: Mm | null };
  /** Where both tapes are marked level, from the upper end of the zip. */
  readonly levelMarks: readonly { readonly at: "topEdge" | "underBust" | "waist" | "end"; readonly from: Mm }[];
}
