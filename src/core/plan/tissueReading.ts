/** Her tissue by tape: the places to measure, what the stand-in has there, and what came of the answers. */
import type { Pattern } from "../decisions/pattern";
import type { Tissue } from "../decisions/tissue";
import type { Work } from "../decisions/work";
import type { Nest, Piece } from "../pattern/piece";
import { remember } from "../remember";
import { fitToTissue, type FittedNest } from "../tissue/fitToTissue";
import { tissuePlaces, type TissuePlace } from "../tissue/placesToMeasure";
import { planOf, printedNestOf } from "./planOf";

export interface TissueReading {
  /** Labels of the chart. */
  readonly sizes: readonly string[];
  /** The size whose line is measured; the chart may have lost it since. */
  readonly size: string;
  /** The stand-in in that size and in the next one up; empty where there is none. */
  readonly pieces: readonly Piece[];
  readonly next: readonly Piece[];
  /** What matters most first. */
  readonly places: readonly TissuePlace[];
  readonly fit: FittedNest;
}

type Drafted = Pick<Pattern, "chart" | "ease" | "length" | "closure" | "style" | "strap">;

/** The pattern as its chart alone makes it: the very same, whatever is measured. */
const plain = remember(
  ["chart", "ease", "length", "closure", "style", "strap"],
  ({ chart, ease, length, closure, style, strap }: Drafted): Pattern => ({
    name: "",
    chart,
    ease,
    length,
    closure,
    style,
    strap,
  }),
);

const placesOf = remember(
  ["nest", "chart", "sizeIndex"],
  ({ nest, chart, sizeIndex }: { readonly nest: Nest; readonly chart: Pattern["chart"]; readonly sizeIndex: number }) =>
    tissuePlaces({ nest, pattern: { chart }, sizeIndex }),
);

interface FitOf {
  readonly nest: Nest;
  readonly chart: Pattern["chart"];
  /** undefined: nothing is measured. */
  readonly tissue: Tissue | undefined;
  readonly size: string;
  readonly sizeIndex: number;
}

const fitOf = remember(
  ["nest", "chart", "tissue", "size", "sizeIndex"],
  ({ nest, chart, tissue, size, sizeIndex }: FitOf): FittedNest =>
    fitToTissue({ nest, pattern: { chart }, tissue: tissue ?? { size, pieces: {} }, sizeIndex }),
);

/**
 * null where no pieces can be drafted from the chart.
 *
 * @param asked the size to measure where nothing is measured yet; null: the base size
 */
export function readTissue(work: Work, asked: string | null): TissueReading | null {
  const { pattern, tapes, picks } = work;
  const stripped = plain(pattern);
  const printed = printedNestOf({ pattern: stripped, tapes, picks });
  if (!printed.ok) return null;
  const nest = printed.value;
  const plan = planOf(work);
  const usual = plan.ok ? plan.value.sizing.baseSize.label : nest.labels[Math.floor(nest.labels.length / 2)];
  const size = pattern.tissue?.size ?? asked ?? usual ?? "";
  const index = nest.labels.indexOf(size);
  const waist = plan.ok ? plan.value.levels.find(({ level }) => level === "waist")?.size : undefined;
  const { chart } = stripped;
  // The doubt is told of the line that the waist is cut on.
  const sizeIndex = Math.min(Math.max(Math.round(waist ?? index), 0), nest.labels.length - 1);
  return {
    sizes: nest.labels,
    size,
    pieces: nest.sizes[index] ?? [],
    next: nest.sizes[index + 1] ?? [],
    places: index < 0 ? [] : placesOf({ nest, chart, sizeIndex: index }),
    fit: fitOf({ nest, chart, tissue: pattern.tissue, size, sizeIndex }),
  };
}
