/** Her own outlines as the pieces of a pattern. */
import type { SizeChart } from "../chart/sizeChart";
import type { Pattern } from "../decisions/pattern";
import type { TracedNest } from "../ownPieces/ownReading";
import type { Nest } from "../pattern/piece";
import { remember } from "../remember";
import { invariant } from "../result";
import { asDrawn } from "../truing/asDrawn";
import type { Mm } from "../units";
import { inAllSizes, type SizePieces } from "./allSizes";
import { drawnPieces } from "./drawnPieces";
import type { GirthLevel, PatternPieces } from "./patternPieces";
import { followLevels } from "./followLevels";
import { differenceOf } from "./printedNest";
import { withSeamEase } from "./seamEase";
import { stepSize } from "./stepSizes";

export interface OwnNest {
  /** Every size of the chart. */
  readonly nest: Nest;
  /** The chart with no other cup version than the one that was drawn. */
  readonly chart: SizeChart;
  /** Bust less upper chest that it is drawn for. */
  readonly difference: Mm;
  /** Levels at which the sizes are all alike, for want of a second. */
  readonly alike: ReadonlySet<GirthLevel>;
}

interface TracedIn {
  readonly traced: TracedNest;
  readonly chart: SizeChart;
  readonly tissue: Pattern["tissue"];
}

/** Nothing else of the pattern counts. */
const nestOf = remember(["traced", "chart", "tissue"], ({ traced, chart, tissue }: TracedIn): OwnNest => {
  const labelled = chart.sizes.flatMap(({ label }, index): SizePieces[] => {
    // Of two rows of one name the first is meant.
    const isFirst = chart.sizes.findIndex((size) => size.label === label) === index;
    const found = isFirst ? traced.sizes.find((size) => size.label === label) : undefined;
    return found === undefined ? [] : [{ index, pieces: withSeamEase(found.pieces).map(asDrawn) }];
  });
  const followed = followLevels(labelled.map(({ pieces }) => pieces));
  const there = labelled.map(({ index }, at): SizePieces => ({ index, pieces: invariant(followed[at], "size") }));
  const first = invariant(there[0], "a size traced");
  const one =
    there.length > 1 ? null : stepSize(first, { chart, tissue }, first.index + 1 < chart.sizes.length ? 1 : -1);
  const sizes = one === null ? there : [first, one.next].toSorted((a, b) => a.index - b.index);
  return {
    nest: {
      source: "own",
      labels: chart.sizes.map(({ label }) => label),
      sizes: inAllSizes(chart, sizes),
      traced: chart.sizes.map((_, index) => there.some((size) => size.index === index)),
      otherNames: traced.labels,
    },
    chart: { ...chart, cups: chart.cups.filter(({ label }) => label === traced.cup) },
    difference: differenceOf({ chart }, traced.cup),
    alike: one === null ? new Set() : one.alike,
  };
});

/** The nest of all sizes from those traced. Pure: no outlines are read. */
export const ownNestOf = (traced: TracedNest, { chart, tissue }: Pattern): OwnNest => nestOf({ traced, chart, tissue });

export function ownPieces(traced: TracedNest, pattern: Pattern): PatternPieces {
  const { nest, chart, difference, alike } = ownNestOf(traced, pattern);
  const drawn = { nest, difference, refusedAt: () => undefined };
  return drawnPieces({ source: "own", pattern, chart, alike, drawnIn: () => drawn });
}
