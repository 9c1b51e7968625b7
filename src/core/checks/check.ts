/** A check is a claim about the plan, with what was measured, what was expected and how near is near enough. */
import type { WayIn } from "../opening/gettingIn";
import type { Half } from "../decisions/alteration";
import type { LevelName, PieceName, PointName, SeamName, DartName } from "../pattern/piece";
import type { Mm } from "../units";

export type CheckName =
  | "girthAsClaimed"
  | "seamsWalk"
  | "halvesWalk"
  | "dartLegsEqual"
  | "cornersSquare"
  | "joinedCornersStraight"
  | "dartEndShortOfBustPoint"
  | "dartPointsAtBustPoint"
  | "seamsSmooth"
  | "openingPasses"
  | "outlineClosed"
  | "dartsClear"
  | "strapsReach"
  | "alterationsMade";

/** Where an opening is tightest. */
interface Tightest {
  readonly way: WayIn;
  /** How far below the waist seam, along the seam that opens; negative above. mm */
  readonly belowWaist: Mm;
  /** How much further down the opening would have to end; 0 where it passes. mm */
  readonly longer: Mm;
}

export interface CheckResult {
  readonly name: CheckName;
  readonly ok: boolean;
  /** In `unit`. For range checks `expected` is the nearest acceptable value. */
  readonly measured: number;
  readonly expected: number;
  readonly tolerance: number;
  readonly unit: "mm" | "degrees" | "faults";
  /** Where: as much as applies. */
  readonly pieces: readonly PieceName[];
  readonly level?: LevelName;
  readonly seam?: SeamName;
  readonly dart?: DartName;
  readonly point?: PointName;
  /** Of an opening alone. */
  readonly tightest?: Tightest;
  /** Of one half of the body alone, where the halves differ. */
  readonly half?: Half;
}
