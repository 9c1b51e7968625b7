/** The test squares of a page, one in the other: measured before anything is cut, so that no scaling goes unnoticed. */
import { MM_PER_INCH, type Mm } from "../units";

/** The side of the inner square, for a tape in centimetres; and of the outer one, for a tape in inches. */
export const TEST_CM: Mm = 100;
export const TEST_INCH: Mm = 4 * MM_PER_INCH;
