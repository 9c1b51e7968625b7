/** A check is a claim about the plan, with what was measured, what was expected and how near is near enough. */
import type { Half } from "../decisions/alteration";
import type { LevelName, PieceName, PointName, SeamName, DartName } from "../pattern/piece";

export type CheckName =
  | "girthAsClaimed"
  | "seamsWalk"
  | "dartLegsEqual"
  | "cornersSquare"
  | "joinedCornersStraight"
  | "dartEndShortOfBustPoint"
  | "dartPointsAtBustPoint"
  | "seamsSmooth"
  | "openingPasses"
  | "outlineClosed"
  | "strapsReach"
  | "alterationsMade";

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
  /** Of one half of the body alone, where the halves differ. */
  readonly half?: Half;
}
