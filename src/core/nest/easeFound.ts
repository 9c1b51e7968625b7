/** What her own pieces are larger than the bodies that they are drawn for, size by size: the very ease that the plan goes by. */
import type { Ease, Pattern } from "../decisions/pattern";
import type { TracedNest } from "../ownPieces/ownReading";
import type { Mm } from "../units";
import { ownPieces } from "./ownPieces";

export interface EaseFound {
  readonly size: string;
  /** Whole finished girths less the body's, in the cup that is drawn, mm; null: no piece has that level. */
  readonly ease: Readonly<Record<keyof Ease, Mm | null>>;
}

/** Of every size that was traced and is in the chart. */
export function easeFound(nest: TracedNest, pattern: Pattern): readonly EaseFound[] {
  const pieces = ownPieces(nest, pattern);
  const hasHip = nest.sizes.some((size) =>
    size.pieces.some(({ levelLines }) => levelLines.some(({ level }) => level === "hip")),
  );
  return nest.sizes.flatMap(({ label }) => {
    const at = pattern.chart.sizes.findIndex((size) => size.label === label);
    if (at < 0) return [];
    const { hip, ...above } = pieces.easeOf(nest.cup, at);
    return [{ size: label, ease: { ...above, hip: hasHip ? hip : null } }];
  });
}
