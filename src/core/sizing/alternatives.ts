/**
 * Other whole ways to cut this body from this chart, by the same sum of harm that the planner's own is picked by: a base size
 * that does not fit harms most, since shoulder, neck and armhole cannot be taken in at a seam.
 */
import type { SizeChart } from "../chart/sizeChart";
import { invariant } from "../result";
import { HAND_AGREEMENT } from "../tolerance";
import type { Mm } from "../units";
import { offersFor, pickWay, weighWay, type OwnPicks, type TakenGirths, type WeighedWay } from "./pickWay";
import type { Alternative } from "./sizing";

export interface AlternativeInputs {
  readonly chart: SizeChart;
  readonly girths: TakenGirths;
  readonly own: OwnPicks;
  /** Finished waist and hip (null where the pattern stops above) of each printed size, measured on its pieces. */
  readonly finished: { readonly waist: readonly Mm[]; readonly hip: readonly Mm[] | null };
  readonly waistTarget: Mm;
  readonly hipTarget: Mm | null;
  readonly picked: { readonly baseSize: number; readonly cup: string | null };
}

const LISTED = 5;
/** Sizes either way that are looked at. */
const SIZES_OFF = 2;

/** The ways worth showing: the planner's own first, then the least harm; what is cut is always among them. */
export function rankAlternatives(inputs: AlternativeInputs): readonly Alternative[] {
  const { chart, girths, own, picked } = inputs;
  const { bustAlteration } = own;
  const planners = pickWay(chart, girths, { bustAlteration }).offer;
  // All cups are offered, where an upper chest tells one from the other.
  const offers = offersFor(chart, girths.upperChest === null ? { cup: own.cup } : {}, girths.upperChest === null);
  const all = offers
    .filter(
      ({ index, cup }) =>
        Math.abs(index - planners.index) <= SIZES_OFF ||
        (index === picked.baseSize && (cup?.label ?? null) === picked.cup),
    )
    .map((offer) => ({ offer, way: weighWay(offer, girths, bustAlteration) }))
    .toSorted((a, b) => Number(b.offer === planners) - Number(a.offer === planners) || a.way.harm - b.way.harm)
    .map(({ way }) => alternative(inputs, way));
  const shown = all.slice(0, LISTED);
  const pick = invariant(
    all.find((a) => a.picked),
    "the pick among the alternatives",
  );
  return shown.includes(pick) ? shown : [...shown.slice(0, LISTED - 1), pick];
}

function alternative(inputs: AlternativeInputs, { offer, residual, alteration, harm }: WeighedWay): Alternative {
  const { chart, girths, picked, finished } = inputs;
  const waistMove = inputs.waistTarget - invariant(finished.waist[offer.index], "waist");
  const hipMove =
    finished.hip === null || inputs.hipTarget === null
      ? 0
      : inputs.hipTarget - invariant(finished.hip[offer.index], "hip");
  const moves = [waistMove, hipMove].filter((move) => Math.abs(move) > HAND_AGREEMENT);
  const label = offer.cup?.label ?? null;
  return {
    baseSize: invariant(chart.sizes[offer.index], "size").label,
    cup: label,
    residual,
    alteration,
    baseSizeMisfit: girths.upperChest === null ? 0 : girths.upperChest.value - offer.upperChest,
    waistMove,
    hipMove,
    alterations: moves.length + (alteration === 0 ? 0 : 1),
    largestMove: Math.max(Math.abs(alteration) / 2, Math.abs(waistMove) / 4, Math.abs(hipMove) / 4),
    harm,
    picked: offer.index === picked.baseSize && label === picked.cup,
  };
}
