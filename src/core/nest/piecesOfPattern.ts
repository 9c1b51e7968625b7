/** Where the pieces of a pattern come from, decided in one place. */
import type { OwnPattern } from "../decisions/ownPattern";
import type { Pattern } from "../decisions/pattern";
import type { OwnReading, TracedNest } from "../ownPieces/ownReading";
import { isCupSaid } from "../ownPieces/drawnCup";
import { piecesNeeded, readOwn } from "../ownPieces/readOwn";
import type { NestSource } from "../pattern/piece";
import { remember } from "../remember";
import { fail, ok, type Result } from "../result";
import { fittedPieces, sizeMeasured } from "./fittedPieces";
import { ownPieces } from "./ownPieces";
import type { PatternPieces } from "./patternPieces";
import { standInPieces } from "./standInPieces";

/** Her pieces are to be used, and are not ready. */
export interface PiecesUnready {
  readonly code: "plan/pieces-unready";
  /** How many things are missing. */
  readonly missing: number;
}

/** All of a pattern that its outlines are read by: what is typed elsewhere on the envelope reads none again. */
type ReadBy = Pick<Pattern, "chart" | "style" | "length" | "strap"> & { readonly own: OwnPattern };

const read = remember(
  ["own", "chart", "style", "length", "strap"],
  ({ own, chart, style, length, strap }: ReadBy): OwnReading =>
    readOwn({
      own,
      pattern: {
        name: "",
        chart,
        ease: { bust: 0, waist: 0, hip: 0 },
        length,
        closure: { place: "centreBack", belowWaist: 0 },
        style,
        strap,
        own,
      },
    }),
);

/** Her outlines as pieces, in use or not; null without any. */
export const readingOf = ({ own, chart, style, length, strap }: Pattern): OwnReading | null =>
  own === undefined ? null : read({ own, chart, style, length, strap });

/** Where the pieces of a pattern come from. */
function sourceOf(pattern: Pattern): NestSource {
  const { own, tissue } = pattern;
  if (own?.inUse === true) return "own";
  const isMeasured =
    tissue !== undefined &&
    sizeMeasured(pattern, tissue) >= 0 &&
    // What was measured on pieces of another style is kept, and brings nothing here.
    piecesNeeded(pattern).some((name) => Object.keys(tissue.pieces[name] ?? {}).length > 0);
  return isMeasured ? "fitted" : "standIn";
}

const isOnChart = ({ sizes }: TracedNest, { chart }: Pattern): boolean =>
  sizes.some(({ label }) => chart.sizes.some((size) => size.label === label));

/** The pieces of a pattern, wherever they come from. */
export const piecesOfPattern: (of: { readonly pattern: Pattern }) => Result<PatternPieces, PiecesUnready> = remember(
  ["pattern"],
  ({ pattern }: { readonly pattern: Pattern }) => {
    const source = sourceOf(pattern);
    if (source === "standIn") return ok(standInPieces(pattern));
    if (source === "fitted") return ok(fittedPieces(pattern));
    const reading = readingOf(pattern);
    const traced = reading?.nest ?? null;
    const isSaid = pattern.own !== undefined && isCupSaid(pattern.own, pattern.chart);
    return traced !== null && isSaid && isOnChart(traced, pattern)
      ? ok(ownPieces(traced, pattern))
      : fail({ code: "plan/pieces-unready", missing: (reading?.missing.length ?? 0) + (isSaid ? 0 : 1) });
  },
);
