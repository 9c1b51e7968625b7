/** The stand-in brought to what was measured on the tissue, as the pieces of a pattern. */
import type { Pattern } from "../decisions/pattern";
import type { Tissue } from "../decisions/tissue";
import { remember } from "../remember";
import { fitToTissue } from "../tissue/fitToTissue";
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

const fittedNest = remember(["pattern", "cup"], ({ pattern, cup }: FitIn): DrawnNest => {
  const { nest, refused } = standInNest({ pattern, cup });
  const { chart, tissue } = pattern;
  const there = nest.sizes.map((pieces, index) => ({ index, pieces }));
  // A size that cannot be made in this cup has no front: it is worked out from the others, and refused all the same.
  const whole = refused.size === 0 ? nest : { ...nest, sizes: inAllSizes(chart, there) };
  const sizeIndex = tissue === undefined ? -1 : sizeMeasured(pattern, tissue);
  const fitted = tissue === undefined ? whole : fitToTissue({ tissue, pattern, nest: whole, sizeIndex }).nest;
  return {
    nest: { ...fitted, source: "fitted", sizes: followLevels(fitted.sizes.map(withSeamEase)) },
    difference: differenceOf(pattern, cup),
    refused,
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
