/** What is said of the test squares. Each has its own unit, whatever the wearer's: they stand on the sheet for either tape. */
import type { LengthUnit } from "../core/decisions/work";
import { TEST_CM, TEST_INCH } from "../core/sheets/testSquares";
import { formatAmount } from "./terms/length";

const INNER = formatAmount(TEST_CM, "cm");
const OUTER = formatAmount(TEST_INCH, "in");

/** The side of the square for a tape in that unit. */
export const testSideWords = (unit: LengthUnit): string => (unit === "cm" ? INNER : OUTER);

/** Which of them is measured with that tape, and what it must be. */
export const testSquareWords = (unit: LengthUnit): string =>
  `the ${unit === "cm" ? "inner" : "outer"} test square must be ${testSideWords(unit)} each way`;

/** For either tape. */
export const TEST_SQUARES_MUST = `the inner square must be ${INNER} each way, the outer one ${OUTER}.`;

/** Beside the squares, and where only their corners are drawn. */
export const TEST_SQUARES = `Test squares: inner ${INNER}, outer ${OUTER}. Measure before you cut.`;
export const TEST_CORNERS = `Test: corner to corner ${INNER} (inner) and ${OUTER} (outer).`;
/** Beside a rule of both lengths, or of a share of both. */
export const testRuleWords = (share: number): string =>
  `Test: ${formatAmount(share * TEST_CM, "cm")} and ${formatAmount(share * TEST_INCH, "in")}.`;
