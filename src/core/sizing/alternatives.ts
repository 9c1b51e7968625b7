/**
 * Other whole ways to cut this body from this chart, ranked. A base size that does not fit costs most, since shoulder, neck
 * and armhole cannot be taken in at a seam; a bust alteration costs less; side-seam moves least.
 */
import type { SizeChart } from "../chart/sizeChart";
import { invariant } from "../result";
import { BUST_LEFT_ALONE, HAND_AGREEMENT } from "../tolerance";
import type { Mm } from "../units";
import { intervalOf } from "./pickInterval";
import { residualOn, upperChestOf } from "./pickBaseSize";
import type { Alternative, BaseSizePick } from "./sizing";

/** Weights of a millimetre (our own choice; the order is common practice, no source). */
const COST = { baseSize: 3, baseSizeOutside: 6, bust: 1, bustAlteration: 15, side: 0.5 };

export interface AlternativeInputs {
  readonly chart: SizeChart;
  readonly bust: Mm;
  readonly upperChest: Mm | null;
  /** Finished waist and hip (null where the pattern stops above) of each printed size, measured on its pieces. */
  readonly finished: { readonly waist: readonly Mm[]; readonly hip: readonly Mm[] | null };
  readonly waistTarget: Mm;
  readonly hipTarget: Mm | null;
  readonly picked: { readonly baseSize: BaseSizePick; readonly cup: string | null };
}

const LISTED = 5;

/** The ways worth showing, best first; the pick is always among them. */
export function rankAlternatives(inputs: AlternativeInputs): readonly Alternative[] {
  const { chart, picked } = inputs;
  const cups = chart.cups.length === 0 ? [null] : chart.cups;
  const all: Alternative[] = [];
  for (let baseSize = 0; baseSize < chart.sizes.length; baseSize += 1) {
    if (Math.abs(baseSize - picked.baseSize.index) > 2) continue;
    for (const cup of cups) all.push(alternative(inputs, baseSize, cup));
  }
  all.sort((a, b) => a.cost - b.cost || Number(b.picked) - Number(a.picked));
  const shown = all.slice(0, LISTED);
  const pick = invariant(
    all.find((a) => a.picked),
    "the pick among the alternatives",
  );
  return shown.includes(pick) ? shown : [...shown.slice(0, LISTED - 1), pick];
}

function alternative(
  inputs: AlternativeInputs,
  baseSize: number,
  cup: { readonly label: string; readonly difference: Mm } | null,
): Alternative {
  const { chart, bust, upperChest, picked } = inputs;
  const drafted = cup?.difference ?? chart.draftedDifference;
  const upperChests = chart.sizes.map((_, index) => upperChestOf(chart, index));
  const own = invariant(upperChests[baseSize], "size");
  const difference = upperChest === null ? null : bust - upperChest;
  const residual = residualOn(chart, bust, picked.baseSize, baseSize, difference, drafted);
  const baseSizeMisfit = upperChest === null ? 0 : upperChest - own;
  const { from, to } = intervalOf(upperChests, baseSize);
  const outside = upperChest === null ? 0 : Math.max(0, from - upperChest, upperChest - to);
  const { finished } = inputs;
  const waistMove = inputs.waistTarget - invariant(finished.waist[baseSize], "waist");
  const hipMove =
    finished.hip === null || inputs.hipTarget === null
      ? 0
      : inputs.hipTarget - invariant(finished.hip[baseSize], "hip");
  const needsBust = Math.abs(residual) > BUST_LEFT_ALONE;
  const moves = [waistMove, hipMove].filter((move) => Math.abs(move) > HAND_AGREEMENT);
  const largestMove = Math.max(needsBust ? Math.abs(residual) / 2 : 0, Math.abs(waistMove) / 4, Math.abs(hipMove) / 4);
  return {
    baseSize: invariant(chart.sizes[baseSize], "size").label,
    cup: cup?.label ?? null,
    residual,
    baseSizeMisfit,
    waistMove,
    hipMove,
    alterations: moves.length + (needsBust ? 1 : 0) + (outside > 0 ? 1 : 0),
    largestMove,
    cost:
      COST.baseSize * (Math.abs(baseSizeMisfit) / 4) +
      COST.baseSizeOutside * outside +
      COST.bust * Math.abs(residual) +
      (needsBust ? COST.bustAlteration : 0) +
      COST.side * (Math.abs(waistMove) + Math.abs(hipMove)) * 0.25,
    picked: baseSize === picked.baseSize.index && (cup?.label ?? null) === picked.cup,
  };
}
