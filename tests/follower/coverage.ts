/**
 * What is followed, and what is not: held both ways by the test. An alteration is followed when its piece is found from the
 * printed sheet alone, whatever its moves say on the way.
 */
import type { AlterationKind } from "../../src/core/decisions/alteration";
import { FIT_NAMES, type FitName } from "../../src/core/decisions/fitNames";

export type Followable = FitName | Exclude<AlterationKind, "fit"> | "bust";

const DARTS: readonly Followable[] = [
  "dartEnd",
  "dartMouth",
  "dartPlace",
  "dartPivot",
  "dartSplit",
  "dartGather",
  "dartLegs",
  "dartSeam",
];

/** A front cut in two along its darts is told as two pieces, of which the tissue has none. */
export const NOT_FOLLOWED: readonly Followable[] = ["dartSeam"];

export const FOLLOWED: readonly Followable[] = ["bust", ...FIT_NAMES, ...DARTS].filter(
  (name): name is Followable => !NOT_FOLLOWED.some((one) => one === name),
);
