/** What the pattern is drafted for: what it prints of a length, else the draft's own figure. */
import type { Pattern, PrintedLength } from "../decisions/pattern";
import { BLOCK_DIFFERENCE, draftMeasuresFor, type DraftMeasures } from "../draft/draftMeasures";
import { printNest } from "../nest/printedNest";
import { setOf, type PieceSet } from "../pattern/pieceSet";
import { blocksOf } from "../plan/printed";
import { remember } from "../remember";
import { invariant } from "../result";
import { DRAFTED_DOUBT, PRINTED_DOUBT, SHORT_SHARE } from "../tolerance";
import type { Mm } from "../units";
import { garmentLength } from "./garmentLengths";

export interface PatternFigure {
  readonly value: Mm;
  readonly from: "printed" | "draft";
  /** What it is good to. */
  readonly doubt: Mm;
  /** The pieces that it is said of: the base size, in the cup that the chart, or the draft, is made for. */
  readonly pieces: PieceSet;
}

interface OfSize {
  readonly pattern: Pattern;
  /** Bust less upper chest. */
  readonly difference: Mm;
}

const nestOf = remember(["pattern", "difference"], ({ pattern, difference }: OfSize) =>
  printNest(pattern, blocksOf({ pattern }), difference),
);

/** What the pattern itself prints for a size; null where it says nothing. */
function printedFigure({ lengths = {} }: Pattern, measure: PrintedLength, size: string): Mm | null {
  const { all, bySize = {} } = lengths[measure] ?? {};
  return (Object.hasOwn(bySize, size) ? bySize[size] : undefined) ?? all ?? null;
}

/**
 * The figure of one size of a pattern.
 *
 * @param size its place in the chart
 * @returns null where neither the pattern nor the draft has a figure, or the size cannot be made in that cup
 */
export function patternFigure(pattern: Pattern, measure: PrintedLength, size: number): PatternFigure | null {
  const row = invariant(pattern.chart.sizes[size], "size");
  const printed = printedFigure(pattern, measure, row.label);
  const difference = printed === null ? BLOCK_DIFFERENCE : pattern.chart.draftedDifference;
  const nest = nestOf({ pattern, difference });
  if (nest.refused.has(size)) return null;
  const pieces = setOf(invariant(nest.nest.sizes[size], "size"));
  const value = printed ?? draftFigure(measure, draftMeasuresFor(row, pattern.chart, pattern.ease), pieces);
  if (value === null) return null;
  return { value, from: printed === null ? "draft" : "printed", doubt: doubtOf(measure, printed !== null), pieces };
}

/** The draft has no figure of its own for the under-bust: its band, less the ease of the waist that it runs down to. */
function draftFigure(measure: PrintedLength, draft: DraftMeasures, pieces: PieceSet): Mm | null {
  switch (measure) {
    case "height":
      return null;
    case "underBustGirth": {
      const band = garmentLength("underBustGirth", pieces);
      return band === null ? null : band - draft.ease.waist;
    }
    default:
      return draft[measure];
  }
}

const doubtOf = (measure: PrintedLength, isPrinted: boolean): Mm =>
  !isPrinted ? DRAFTED_DOUBT : PRINTED_DOUBT * (measure === "shoulderLength" ? SHORT_SHARE : 1);
