/** All the checks, run on every plan, in the order they are shown. To add one: a file beside this, and a line here. */
import type { CheckName, CheckResult } from "./check";
import type { Check, CheckContext } from "./context";
import { cornersSquare } from "./cornersSquare";
import { dartEndShortOfBustPoint } from "./dartEndShortOfBustPoint";
import { dartPointsAtBustPoint } from "./dartPointsAtBustPoint";
import { dartLegsEqual } from "./dartLegsEqual";
import { dartsClear } from "./dartsClear";
import { girthAsClaimed } from "./girthAsClaimed";
import { halvesWalk } from "./halvesWalk";
import { joinedCornersStraight } from "./joinedCornersStraight";
import { openingPasses } from "./openingPasses";
import { outlineClosed } from "./outlineClosed";
import { seamsSmooth } from "./seamsSmooth";
import { seamsWalk } from "./seamsWalk";
import { strapsReach } from "./strapsReach";
import { alterationsMade } from "./alterationsMade";

export const CHECKS: Readonly<Record<CheckName, Check>> = {
  alterationsMade,
  girthAsClaimed,
  seamsWalk,
  halvesWalk,
  strapsReach,
  dartLegsEqual,
  dartEndShortOfBustPoint,
  dartPointsAtBustPoint,
  cornersSquare,
  joinedCornersStraight,
  seamsSmooth,
  openingPasses,
  outlineClosed,
  dartsClear,
};

/** @param but one that is not run */
export const runChecks = (context: CheckContext, but: CheckName | null = null): readonly CheckResult[] =>
  Object.entries(CHECKS).flatMap(([name, check]) => (name === but ? [] : check(context)));
