/** What each kind of dart surgery does. To add one: a file beside this, and a line here. */
import type { DartSurgery } from "../../decisions/alteration";
import type { AlterationFailure } from "../outcome/alterationFailure";
import type { Result } from "../../result";
import type { FitApplied } from "../outcome/definition";
import type { PieceSet } from "../../pattern/pieceSet";
import { gatherDart } from "./gather";
import { bowLegs } from "./legs";
import { pivotToSeam } from "./pivot";
import { joinIntoSeam } from "./seam";
import { splitDart } from "./split";

/** The pieces after an operation on a dart that is there. */
export function operateOnDart(pieces: PieceSet, alteration: DartSurgery): Result<FitApplied, AlterationFailure> {
  switch (alteration.kind) {
    case "dartPivot":
      return pivotToSeam(pieces, alteration);
    case "dartSplit":
      return splitDart(pieces, alteration);
    case "dartGather":
      return gatherDart(pieces, alteration);
    case "dartLegs":
      return bowLegs(pieces, alteration);
    case "dartSeam":
      return joinIntoSeam(pieces, alteration);
  }
}
