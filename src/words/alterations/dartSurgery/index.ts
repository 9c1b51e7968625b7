/** Dart surgery in words: what is asked for, and how it is done on the tissue, with no screen at hand. A file for each kind. */
import type { DartSurgery } from "../../../core/decisions/alteration";
import type { AlterationTrace } from "../../../core/alterations/outcome/trace";
import type { LengthUnit } from "../../../core/decisions/work";
import { formatAmount, formatLength, formatRound } from "../../terms/length";
import { gatherSteps, gatherTitle } from "./gather";
import { legsTitle, legSteps } from "./legs";
import { pivotSteps, pivotTitle } from "./pivot";
import { seamSteps, seamTitle } from "./seam";
import { splitSteps, splitTitle } from "./split";
import type { Told } from "./saidOfDart";

/** "Move half of the side dart to the armhole". */
export function dartSurgeryTitle(alteration: DartSurgery, unit: LengthUnit): string {
  switch (alteration.kind) {
    case "dartPivot":
      return pivotTitle(alteration);
    case "dartSplit":
      return splitTitle(alteration);
    case "dartGather":
      return gatherTitle(alteration);
    case "dartLegs":
      return legsTitle(alteration, unit);
    case "dartSeam":
      return seamTitle(alteration);
  }
}

/** What to do on the tissue, move by move. */
export function dartSurgerySteps(alteration: DartSurgery, trace: AlterationTrace, unit: LengthUnit): readonly string[] {
  const piece = trace.before[alteration.dart.piece];
  const dart = piece?.darts.find(({ name }) => name === alteration.dart.dart);
  // Nothing was changed: there is nothing to do.
  if (piece === undefined || dart === undefined) return [];
  const told: Told = {
    trace,
    piece,
    dart,
    amount: (name) => formatAmount(trace.values[name] ?? 0, unit),
    length: (name) => formatLength(trace.values[name] ?? 0, unit),
    round: (name) => formatRound(trace.values[name] ?? 0, unit),
  };
  switch (alteration.kind) {
    case "dartPivot":
      return pivotSteps(alteration, told);
    case "dartSplit":
      return splitSteps(alteration, told);
    case "dartGather":
      return gatherSteps(told);
    case "dartLegs":
      return legSteps(alteration, told);
    case "dartSeam":
      return seamSteps(told);
  }
}
