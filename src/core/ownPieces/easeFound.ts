/** What her own pieces are larger than the bodies of her chart, size by size. */
import type { SizeChart } from "../chart/sizeChart";
import { levelWidth } from "../girth/levelWidth";
import { isBasque } from "../pattern/pieceGroups";
import type { Piece } from "../pattern/piece";
import type { Mm } from "../units";
import type { TracedNest } from "./ownReading";

const LEVELS = ["bust", "waist", "hip"] as const;

export interface EaseFound {
  readonly size: string;
  /** Whole girths of the pieces less the chart's, mm; null: no piece has that level. */
  readonly ease: Readonly<Record<(typeof LEVELS)[number], Mm | null>>;
}

/** Of every size that is in the chart; a level is measured on the half pieces with their darts closed. */
export function easeFound(nest: TracedNest, chart: SizeChart): readonly EaseFound[] {
  return nest.sizes.flatMap(({ label, pieces }) => {
    const row = chart.sizes.find((size) => size.label === label);
    if (row === undefined) return [];
    const easeAt = (level: (typeof LEVELS)[number]): Mm | null => {
      const girth = girthOf(pieces, level);
      return girth === null ? null : girth - row[level];
    };
    return [{ size: label, ease: { bust: easeAt("bust"), waist: easeAt("waist"), hip: easeAt("hip") } }];
  });
}

function girthOf(pieces: readonly Piece[], level: (typeof LEVELS)[number]): Mm | null {
  const widths = pieces.flatMap((piece) => {
    const width = level === "waist" && isBasque(piece.name) ? null : levelWidth(piece, level);
    return width === null ? [] : [width];
  });
  return widths.length === 0 ? null : 2 * widths.reduce((sum, width) => sum + width, 0);
}
