/** What the pages of a tiled sheet are called. */
import { CoreBug } from "../result";

const LETTERS = 26;
const FIRST_LETTER = "A".codePointAt(0) ?? 0;

/**
 * Letters of a column counted from 0: A to Z, then AA, AB, … as in spreadsheets.
 *
 * @throws CoreBug for anything but a whole number from 0 on
 */
function columnLetters(column: number): string {
  if (!Number.isSafeInteger(column) || column < 0) throw new CoreBug(`no column ${column}`);
  let letters = "";
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / LETTERS)) {
    letters = String.fromCodePoint(FIRST_LETTER + ((rest - 1) % LETTERS)) + letters;
  }
  return letters;
}

/** "A1" for the first page: the letters of its column, then its row counted from 1. Both are given counted from 0. */
export const pageName = (column: number, row: number): string => `${columnLetters(column)}${row + 1}`;
