/** The stand-in brought to what was measured on the tissue, as the pieces of a pattern. */
import type { Pattern } from "../decisions/pattern";
import type { Tissue } from "../decisions/tissue";
import type { Nest } from "../pattern/piece";
import { remember } from "../remember";
import { fitToTissue, type FittedNest } from "../tissue/fitToTissue";
import { asDrawn } from "../truing/asDrawn";
import { inAllSizes } from "./allSizes";
import { drawnPieces, type DrawnNest } from "./drawnPieces";
import type { Cup, PatternPieces } from "./patternPieces";
import { followLevels } from "./followLevels";
import { differenceOf } from "./printedNest";
import { withSeamEase } from "./seamEase";
import { standInNest } from "./standInPieces";

interface FitIn {
  readonly pattern: Pattern;
  readonly cup: Cup;
}

/** The stand-in in one cup, every size of it there: one that cannot be made has no front, and is worked out from the others. */
export const standInWhole = remember(["pattern", "cup"], ({ pattern, cup }: FitIn): Nest => {
  const { nest, refusedAt } = standInNest({ pattern, cup });
  const there = nest.sizes.map((pieces, index) => ({ index, pieces }));
  return there.every(({ index }) => refusedAt(index) === undefined)
    ? nest
    : { ...nest, sizes: inAllSizes(pattern.chart, there) };
});

/** The stand-in of one cup brought to what was measured; null where nothing is. */
export const fitIn = remember(["pattern", "cup"], ({ pattern, cup }: FitIn): FittedNest | null => {
  const { tissue } = pattern;
  if (tissue === undefined) return null;
  return fitToTissue({
    tissue,
    pattern,
    nest: standInWhole({ pattern, cup }),
    sizeIndex: sizeMeasured(pattern, tissue),
  });
});

const fittedNest = remember(["pattern", "cup"], ({ pattern, cup }: FitIn): DrawnNest => {
  const { refusedAt } = standInNest({ pattern, cup });
  const fitted = fitIn({ pattern, cup })?.nest ?? standInWhole({ pattern, cup });
  return {
    nest: {
      ...fitted,
      source: "fitted",
      sizes: followLevels(fitted.sizes.map((pieces) => withSeamEase(pieces).map(asDrawn))),
    },
    difference: differenceOf(pattern, cup),
    // A size that cannot be made in this cup is refused all the same.
    refusedAt,
  };
});

/** Place of the size measured in the chart; −1 where the chart has no such size. */
export const sizeMeasured = ({ chart }: Pattern, { size }: Tissue): number =>
  chart.sizes.findIndex(({ label }) => label === size);

export const fittedPieces = (pattern: Pattern): PatternPieces =>
  drawnPieces({
    source: "fitted",
    pattern,
    chart: pattern.chart,
    alike: new Set(),
    drawnIn: (cup) => fittedNest({ pattern, cup }),
  });
