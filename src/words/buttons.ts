/** Buttons down the centre back, told where they are chosen and on the first page of the pieces. */
import type { Closure } from "../core/decisions/pattern";
import { allowanceOf } from "../core/cutting/usualAllowances";
import { type Allowances } from "../core/decisions/allowances";
import { buttonRow, HOLE_BEYOND, LEAST_STAND, STAND_TO_ALLOW, type ButtonRow } from "../core/cutting/buttons";
import type { Piece, PieceName } from "../core/pattern/piece";
import { setOf } from "../core/pattern/pieceSet";
import { isFrontPiece } from "../core/pattern/pieceGroups";
import { LIMITS } from "../core/decisions/limits";
import type { LengthUnit } from "../core/decisions/work";
import type { Mm } from "../core/units";
import { allowanceAmount } from "./allowances";
import { listWords, plural } from "./terms/language";
import { formatAmount } from "./terms/length";

export const BUTTONS_LABEL = "Buttons down the centre back";
const ZIP = "Leave it empty for a zip.";

/** The row that a closure asks for on these pieces; null without buttons. */
export const buttonRowOf = (pieces: readonly Piece[], closure: Closure): ButtonRow | null =>
  buttonRow(setOf(pieces), closure);

/** Buttons that stand nearer than this are as close as their own width, mm. */
const CLOSE: Mm = 15;

/** "62 mm from one to the next, the first 12 mm below the neck edge, the last 12 mm above the end of the opening." */
function rowWords({ spacing, ends }: ButtonRow, unit: LengthUnit): string {
  const [first, last] = ends.map((mm) => formatAmount(mm, unit));
  return `${formatAmount(spacing, unit)} from one to the next, the first ${first} below the neck edge, the last ${last} above the end of the opening.`;
}

/** What stands at the field: how far apart they come. */
export function buttonsHint(row: ButtonRow | null, unit: LengthUnit): string {
  if (row === null) return ZIP;
  const close = row.spacing < CLOSE ? " That is too close for most buttons." : "";
  return `${rowWords(row, unit)}${close} ${ZIP}`;
}

export const BUTTONS_REFUSAL = `Write a whole number from ${LIMITS.buttons.least} to ${LIMITS.buttons.most}, or leave it empty for a zip.`;

/** How many; null for an empty entry, undefined for one that is no such number. */
export function readButtons(text: string): number | null | undefined {
  if (text === "") return null;
  const count = /^\d{1,2}$/u.test(text) ? Number(text) : Number.NaN;
  return count >= LIMITS.buttons.least && count <= LIMITS.buttons.most ? count : undefined;
}

const BACKS: ReadonlySet<PieceName> = new Set(["back", "backBand", "backBasque", "skirtBack"]);

/** Buttons on a skirt that no piece is printed of: how many, and how far below the waist seam each comes. */
export function buttonsBelowWords(below: readonly Mm[], unit: LengthUnit): readonly string[] {
  if (below.length === 0) return [];
  const where = `${listWords(below.map((mm) => formatAmount(mm, unit)))} below the waist seam`;
  return [
    plural(below.length, {
      one: `1 button comes on the skirt, which is cut by its measures: mark it ${where}.`,
      other: `${below.length} buttons come on the skirt, which is cut by its measures: mark them ${where}.`,
    }),
  ];
}

/** Said where the allowance at the centre back is too narrow to be a stand; null where it is not, or where there are no buttons. */
export function narrowStandWords(
  pieces: readonly Piece[],
  closure: Closure,
  allowances: Allowances,
  unit: LengthUnit,
): string | null {
  const allowed = allowanceOf(allowances, "centre");
  if (allowed >= LEAST_STAND || buttonRowOf(pieces, closure) === null) return null;
  const isFrontToo = pieces.some(
    ({ name, centreOnFold, edges }) =>
      isFrontPiece(name) && !centreOnFold && edges.some(({ seam }) => seam === "centre"),
  );
  const also = isFrontToo ? " The centre front seam then has as much." : "";
  return `Only ${allowanceAmount(allowed, unit)} at the centre seam: narrow for a button stand. Allow ${allowanceAmount(STAND_TO_ALLOW[unit], unit)} or more.${also}`;
}

/** Pressed, it is allowed: "Make it 30 mm". */
export const widenStand = (unit: LengthUnit): string => `Make it ${allowanceAmount(STAND_TO_ALLOW[unit], unit)}`;
/** Told then. */
export const standWidened = (unit: LengthUnit): string =>
  `The centre seam has ${allowanceAmount(STAND_TO_ALLOW[unit], unit)} now.`;

/**
 * What the first page says of the buttons on its pieces; `allowances` null: cut along the stitch line.
 *
 * @param row as it goes down all that is cut
 */
export function buttonSheetWords(
  pieces: readonly Piece[],
  names: readonly PieceName[],
  row: ButtonRow | null,
  closure: Closure,
  allowances: Allowances | null,
  unit: LengthUnit,
): readonly string[] {
  if (row === null || !names.some((name) => BACKS.has(name))) return [];
  const wide = "at least the width of your button, and the facing turned in besides";
  const narrow = allowances === null ? null : narrowStandWords(pieces, closure, allowances, unit);
  return [
    allowances === null
      ? `Add a button stand beyond the centre back: ${wide}.`
      : `The allowance at the centre back is the button stand: ${wide}.`,
    ...(narrow === null ? [] : [narrow]),
    `${plural(row.along.length, { one: "1 button", other: `${row.along.length} buttons` })}: ${rowWords(row, unit)}`,
    `Circles on the centre back: buttons on one half, buttonholes on the other, each begun ${formatAmount(HOLE_BEYOND, unit)} outside the centre line and as long as your button needs.`,
  ];
}
