/** What every job of the order of work is said by: its words, its moves, and the amount beside it. */
import type { Half } from "../../core/decisions/alteration";
import type { Piece, PieceName } from "../../core/pattern/piece";
import type { LengthUnit } from "../../core/decisions/work";
import type { Mm } from "../../core/units";
import { formatAmount, formatLength } from "./length";

export interface Context {
  readonly unit: LengthUnit;
  readonly piece: Piece | undefined;
  readonly pieceName: PieceName;
  /** Her own word for it, where she gave one. */
  readonly label?: string;
  /** Label of the size traced on this piece, where it is known. */
  readonly traced: string | undefined;
  /** Where the job is told of one half alone. */
  readonly half?: Half;
  /** Told from the piece as it was sewn before, not from the printed tissue. */
  readonly isFromOld?: true;
}

/** A job in words. */
export interface Said {
  readonly text: string;
  readonly moves?: readonly string[];
  readonly amount?: string | null;
}

/** From here on an amount is said as lengths on the tape are. */
const LONG: Mm = 100;
export const small = (value: Mm, { unit }: Context): string =>
  unit === "in" || Math.abs(value) < LONG ? formatAmount(Math.abs(value), unit) : formatLength(Math.abs(value), unit);

/** Two lengths that are read together, in one unit: never millimetres beside centimetres. */
export const pair = (a: Mm, b: Mm, context: Context): readonly [string, string] =>
  context.unit === "cm" && Math.max(Math.abs(a), Math.abs(b)) >= LONG
    ? [formatLength(Math.abs(a), context.unit), formatLength(Math.abs(b), context.unit)]
    : [small(a, context), small(b, context)];

/** False for an amount too small to be marked: it would read as nothing. */
export const drawn = (value: Mm, { unit }: Context): boolean =>
  formatAmount(Math.abs(value), unit) !== formatAmount(0, unit);
