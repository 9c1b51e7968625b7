/** How sure one pick is, in three steps: finer than that no chance is known. */
import { LIKELY, NEARLY_SURE } from "../tolerance";

/**
 * `sure`: nothing need be measured again for it; `fair`: likely, and yet another may be right; `open`: nobody could tell; `doubted`: it
 * rests on a reading that is doubted, so that no chance can be told (`doubtedPicks.ts`).
 */
export type Surety = "sure" | "fair" | "open" | "doubted";

/** @param probability that the true measures ask for what was picked */
export const suretyOf = (probability: number): Surety =>
  probability >= NEARLY_SURE ? "sure" : probability >= LIKELY ? "fair" : "open";
