/** What the pattern is drafted for: what it prints of a length, else the draft's own figure, or what her pieces measure. */
import type { Pattern, PrintedLength } from "../decisions/pattern";
import { BLOCK_DIFFERENCE, draftMeasuresFor, type DraftMeasures } from "../draft/draftMeasures";
import type { Cup, PatternPieces } from "../nest/patternPieces";
import { piecesOfPattern } from "../nest/piecesOfPattern";
import { differenceOf, printNest } from "../nest/printedNest";
import { blocksOf } from "../nest/standInPieces";
import { setOf, type PieceSet } from "../pattern/pieceSet";
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
  /** The pieces that it is said of: the base size, in the cup that the chart, or the draft, is made for; her own as they are. */
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
 * @param cup  the cup version that is cut; what counts of it is which pieces of her own there are
 * @returns null where neither the pattern nor the draft has a figure, or the size cannot be made in that cup
 */
export function patternFigure(
  pattern: Pattern,
  measure: PrintedLength,
  size: number,
  cup: Cup = null,
): PatternFigure | null {
  const row = invariant(pattern.chart.sizes[size], "size");
  const printed = printedFigure(pattern, measure, row.label);
  const difference = printed === null ? BLOCK_DIFFERENCE : pattern.chart.draftedDifference;
  const standIn = standInOf(pattern, size, difference);
  if (standIn === null) return null;
  const value = printed ?? draftFigure(measure, draftMeasuresFor(row, pattern.chart, pattern.ease), standIn);
  if (value === null) return null;
  const figure = {
    from: printed === null ? "draft" : "printed",
    doubt: doubtOf(measure, printed !== null),
  } as const;
  const own = piecesOfPattern({ pattern });
  if (!own.ok || own.value.source === "standIn") return { ...figure, value, pieces: standIn };
  return onOwnPieces({ ...figure, value, pieces: standIn }, own.value, { pattern, measure, size, cup });
}

function standInOf(pattern: Pattern, size: number, difference: Mm): PieceSet | null {
  const { nest, refusedAt } = nestOf({ pattern, difference });
  return refusedAt(size) !== undefined ? null : setOf(invariant(nest.sizes[size], "size"));
}

/**
 * The figure said of her own pieces. What the pattern prints is said of the chart's own cup: hers are longer or shorter by as
 * much as the stand-in's in her cup. What it does not print is what her pieces measure, less what the stand-in's measure over
 * the figure that they are drafted by.
 */
function onOwnPieces(
  figure: PatternFigure,
  own: PatternPieces,
  { pattern, measure, size, cup }: { pattern: Pattern; measure: PrintedLength; size: number; cup: Cup },
): PatternFigure | null {
  const { nest, refusedAt } = own.printed(cup);
  if (refusedAt(size) !== undefined) return null;
  const pieces = setOf(invariant(nest.sizes[size], "size"));
  const [hers, drafted] = [garmentLength(measure, pieces), garmentLength(measure, figure.pieces)];
  if (figure.from === "draft")
    return {
      ...figure,
      pieces,
      value: hers === null || drafted === null ? figure.value : hers - (drafted - figure.value),
    };
  const inCup = standInOf(pattern, size, differenceOf(pattern, cup));
  const longer = inCup === null ? null : garmentLength(measure, inCup);
  return { ...figure, pieces, value: figure.value + (longer === null || drafted === null ? 0 : longer - drafted) };
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
