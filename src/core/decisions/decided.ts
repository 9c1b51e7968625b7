/** All that a plan follows from, as the wearer decided it. */
import type { Tapes } from "../measures/tape";
import type { Mm } from "../units";
import type { Allowances } from "./allowances";
import type { Alteration, Half } from "./alteration";
import type { Dress } from "./dress";
import type { Ease, Pattern } from "./pattern";
import type { SeenOfDart } from "./seenAtDart";
import type { Trusted } from "./trusted";

/** Picks the wearer set over the planner's own. Sizes by label; waist and hip as fractional indexes (0 = first size). */
export interface Picks {
  readonly baseSize?: string;
  readonly cup?: string;
  /** A cup version of its own for one half, by label: breasts are seldom alike. */
  readonly halfCups?: Readonly<Partial<Record<Half, string>>>;
  readonly waist?: number;
  readonly hip?: number;
  /** Whole change of bust girth to make by alteration; absent: what the planner finds; 0: none. */
  readonly bustAlteration?: Mm;
}

/** All that the plan follows from. */
export interface Decided {
  /** What was read off the tape: newest set first, always at least one. */
  readonly tapes: Tapes;
  /** Readings that were doubted and that she said are right, as long as they stand. */
  readonly trusted?: Trusted;
  /** Years, where the wearer says: it tells how well the body survey speaks for her, and nothing else. */
  readonly age?: number;
  readonly pattern: Pattern;
  /** Ease wanted where the wearer wants other than the pattern's. */
  readonly easeWanted: Partial<Ease>;
  /** Radius of the bust at which fullness is stated, where given. */
  readonly bustRadius?: Mm;
  readonly picks: Picks;
  readonly alterations: readonly Alteration[];
  /** What she said she sees of sewn darts: at most one for each dart of each half, in the order of `compareSeen`. */
  readonly seen?: readonly SeenOfDart[];
  /** Her own seam and hem allowances; a seam that is absent has the usual one. */
  readonly allowances?: Allowances;
  /** The rest of the dress; absent: nothing is decided of it. */
  readonly dress?: Dress;
}
