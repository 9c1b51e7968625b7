/** What each kind of dart surgery does. To add one: a file beside this, and a line here. */
import type { SlipFailure } from "../../plan/plan";
import type { DartSurgery } from "../../plan/work";
import { fail, type Result } from "../../result";
import type { FitApplied } from "../fit/definition";
import type { PieceSet } from "../pieceSet";

/** The pieces after an operation on a dart that is there. */
export function operateOnDart(pieces: PieceSet, alteration: DartSurgery): Result<FitApplied, SlipFailure> {
  void pieces;
  void alteration;
  return fail({ code: "slip/not-on-this-style" });
}
