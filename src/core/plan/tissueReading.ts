/** Her tissue by tape: the places to measure, what the stand-in has there, and what came of the answers. */
import { chartFaults } from "../chart/chartFaults";
import type { Pattern } from "../decisions/pattern";
import type { Work } from "../decisions/work";
import type { Nest, Piece } from "../pattern/piece";
import { remember } from "../remember";
import { fitToTissue, toldAt, type FittedNest } from "../tissue/fitToTissue";
import { tissuePlaces, type TissuePlace } from "../tissue/placesToMeasure";
import { draftedCup } from "../sizing/pickWay";
import { fitIn, standInWhole } from "../nest/fittedPieces";
import { planOf } from "./planOf";

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

/** Nothing measured yet: how well the stand-in is known by itself. */
const unmeasured = remember(
  ["nest", "chart", "sizeIndex"],
  ({
    nest,
    chart,
    sizeIndex,
  }: {
    readonly nest: Nest;
    readonly chart: Pattern["chart"];
    readonly sizeIndex: number;
  }) => {
    const size = nest.labels[sizeIndex] ?? "";
    return fitToTissue({ nest, pattern: { chart }, tissue: { size, pieces: {} }, sizeIndex });
  },
);

const toldFor = remember(
  ["fit", "sizeIndex", "waistAt"],
  ({
    fit,
    sizeIndex,
    waistAt,
  }: {
    readonly fit: FittedNest;
    readonly sizeIndex: number;
    readonly waistAt: number | undefined;
  }) => toldAt(fit, waistAt === undefined ? { sizeIndex } : { sizeIndex, waistAt }),
);

/**
 * null where no pieces can be drafted from the chart.
 *
 * @param asked the size to measure where nothing is measured yet; null: the base size
 */
export function readTissue(work: Work, asked: string | null): TissueReading | null {
  const { pattern } = work;
  if (chartFaults(pattern.chart) > 0) return null;
  const plan = planOf(work);
  const sizing = plan.ok ? plan.value.sizing : null;
  const cup = sizing === null ? (draftedCup(pattern.chart)?.label ?? null) : sizing.cup.label;
  const { chart } = pattern;
  const nest = standInWhole({ pattern: plain(pattern), cup });
  const usual = sizing?.baseSize.label ?? nest.labels[Math.floor(nest.labels.length / 2)];
  const size = pattern.tissue?.size ?? asked ?? usual ?? "";
  const sizeIndex = nest.labels.indexOf(size);
  return {
    sizes: nest.labels,
    size,
    pieces: nest.sizes[sizeIndex] ?? [],
    next: sizeIndex < 0 ? [] : (nest.sizes[sizeIndex + 1] ?? []),
    places: sizeIndex < 0 ? [] : placesOf({ nest, chart, sizeIndex }),
    // The doubt is that of the plan's own finished girths, where there is a plan.
    fit: toldFor({
      fit: fitIn({ pattern, cup }) ?? unmeasured({ nest, chart, sizeIndex }),
      sizeIndex: sizing?.baseSize.index ?? sizeIndex,
      waistAt: plan.ok ? plan.value.levels.find(({ level }) => level === "waist")?.size : undefined,
    }),
  };
}
