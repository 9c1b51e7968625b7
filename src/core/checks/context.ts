/** What the checks look at. */
import type { Closure } from "../decisions/pattern";
import type { DartFigures } from "../dart/dartFigures";
import type { DartRef, PieceName } from "../pattern/piece";
import type { PieceSet } from "../pattern/pieceSet";
import type { Result } from "../result";
import type { Mm } from "../units";
import type { CheckResult } from "./check";

/** A whole girth: what the pattern claims, and what the pieces give. */
interface CheckedLevel {
  readonly level: "bust" | "waist" | "hip";
  readonly claim: Mm;
  readonly finished: Mm;
}

export interface CheckContext {
  readonly pieces: PieceSet;
  /** Of both halves of the body, left first; `pieces` are those of one of them. */
  readonly halves: readonly [PieceSet, PieceSet];
  readonly levels: readonly CheckedLevel[];
  readonly darts: readonly { readonly ref: DartRef; readonly drawn: DartFigures }[];
  /** The lines of the ledger, with whether each could be made. */
  readonly alterations: readonly { readonly piece: PieceName; readonly outcome: Result<unknown, unknown> }[];
  readonly closure: Closure;
  readonly body: { readonly bust: Mm; readonly hip: Mm | null };
}

export type Check = (context: CheckContext) => readonly CheckResult[];

/** A check of nearness: holds where measured and expected differ by no more than the tolerance. */
export function near(result: Omit<CheckResult, "ok">): CheckResult {
  return { ...result, ok: Math.abs(result.measured - result.expected) <= result.tolerance };
}
