/** Thread on a reel as it is usually sold. */
import type { Mm } from "../units";

/** mm (common practice, no source). */
export const REEL: Mm = 100_000;
