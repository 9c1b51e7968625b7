/**
 * Pieces in every size of a chart from those that there are: between two sizes traced each level goes by the chart's girth at
 * that level, not by how many sizes lie between, and past them by their nearest step.
 */
import { blendPiece, levelSizes } from "../blend/blendPiece";
import type { SizeChart } from "../chart/sizeChart";
import type { Piece, PieceName } from "../pattern/piece";
import { invariant } from "../result";
import { SAME_GIRTH } from "../tolerance";
import { blendedEase } from "./seamEase";
import type { Mm } from "../units";

/** The pieces of one size, by its place in the chart. Places below 0 or past the last are sizes that the chart does not have. */
export interface SizePieces {
  readonly index: number;
  readonly pieces: readonly Piece[];
}

/** A girth of the chart at any whole place, carried on past either end by the nearest step. */
function chartGirth({ sizes }: SizeChart, index: number, level: "bust" | "waist" | "hip"): Mm {
  const last = sizes.length - 1;
  const at = (place: number): Mm => invariant(sizes[place], "row")[level];
  if (index < 0) return at(0) + index * (at(Math.min(1, last)) - at(0));
  if (index > last) return at(last) + (index - last) * (at(last) - at(Math.max(last - 1, 0)));
  return at(index);
}

/**
 * @param there one size or more, smallest first; a piece may be missing in some
 * @returns the pieces of every row of the chart; those that are there are the very same objects
 */
export function inAllSizes(chart: SizeChart, there: readonly SizePieces[]): readonly (readonly Piece[])[] {
  const names = new Set<PieceName>(there.flatMap(({ pieces }) => pieces.map(({ name }) => name)));
  const ofName = [...names].map((name) =>
    there.flatMap(({ index, pieces }) => {
      const piece = pieces.find((one) => one.name === name);
      return piece === undefined ? [] : [{ index, piece }];
    }),
  );
  return chart.sizes.map((_, index) => ofName.map((sizes) => pieceOf(chart, sizes, index)));
}

function pieceOf(
  chart: SizeChart,
  there: readonly { readonly index: number; readonly piece: Piece }[],
  index: number,
): Piece {
  const own = there.find((one) => one.index === index);
  if (own !== undefined) return own.piece;
  const placeAt = (level: "bust" | "waist" | "hip"): number =>
    placeAmong(
      there.map((one) => ({ index: one.index, girth: chartGirth(chart, one.index, level) })),
      { index, girth: chartGirth(chart, index, level) },
    );
  const sizes = there.map(({ piece }) => piece);
  const at = levelSizes(placeAt("bust"), placeAt("waist"), placeAt("hip"));
  return blendedEase(blendPiece(sizes, at), sizes, at.bust);
}

interface Place {
  readonly index: number;
  readonly girth: Mm;
}

/** Where a size lies among those that are there, as a fractional place; by the number of sizes where the girth does not grow. */
function placeAmong(there: readonly Place[], wanted: Place): number {
  const above = there.findIndex(({ index }) => index > wanted.index);
  const lower = Math.max((above < 0 ? there.length - 1 : above) - 1, 0);
  const [low, high] = [there[lower], there[lower + 1]];
  if (low === undefined || high === undefined) return 0;
  const step = high.girth - low.girth;
  const share =
    step > SAME_GIRTH ? (wanted.girth - low.girth) / step : (wanted.index - low.index) / (high.index - low.index);
  return lower + share;
}
