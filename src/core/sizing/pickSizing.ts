/**
 * Base size, cup and bust alteration, picked together (`pickWay.ts`), and how near each is to another. The base size is a
 * whole printed size, because collars, sleeves and facings follow it.
 */
import type { SizeChart } from "../chart/sizeChart";
import type { Picks } from "../decisions/decided";
import { halve } from "../geometry/iterate";
import { fail, invariant, ok, type Result } from "../result";
import { normalBelow } from "../statistics/normal";
import { BORDERLINE, BUST_LEFT_ALONE, EXTRAPOLATION_STEPS, PICK_CHANGES_TO } from "../tolerance";
import type { Mm } from "../units";
import { alterationFor } from "./harm";
import { pickInterval } from "./pickInterval";
import {
  frameHarms,
  leastHarm,
  offersFor,
  pickOffer,
  pickWay,
  type OwnPicks,
  type TakenGirths,
  type WeighedWay,
} from "./pickWay";
import type { BaseSizePick, BustPick, CupPick, PickMargin, Taken } from "./sizing";
import type { SizingFailure } from "./sizingFailure";

export interface PickedTogether {
  readonly baseSize: BaseSizePick;
  readonly cup: CupPick;
  readonly bust: BustPick;
}

/** Upper-chest girth that a size is drafted for. */
const upperChestOf = (chart: SizeChart, index: number): Mm =>
  invariant(chart.sizes[index], "size").bust - chart.draftedDifference;

/** Least and most that a growing row reaches, carried on past either end by its nearest step. */
export function reachOf(values: readonly Mm[]): { readonly least: Mm; readonly most: Mm } {
  const first = invariant(values[0], "size");
  const last = invariant(values.at(-1), "size");
  return {
    least: first - EXTRAPOLATION_STEPS * (invariant(values[1], "size") - first),
    most: last + EXTRAPOLATION_STEPS * (last - invariant(values.at(-2), "size")),
  };
}

/** What the base sizes are looked up by: their upper chests, or their busts where no upper chest was taken. */
export const lookedUpIn = (chart: SizeChart, byBust: boolean): readonly Mm[] =>
  chart.sizes.map(({ bust }, index) => (byBust ? bust : upperChestOf(chart, index)));

/** The wearer's own picks as places in the chart, or which of them the chart does not know. */
export function ownPicksOf(chart: SizeChart, picks: Picks): Result<OwnPicks, SizingFailure> {
  const baseSize =
    picks.baseSize === undefined ? undefined : chart.sizes.findIndex(({ label }) => label === picks.baseSize);
  if (baseSize === -1) return fail({ code: "plan/base-size-unknown", label: picks.baseSize ?? "" });
  const hasCups = chart.cups.length > 0;
  const unknown = [picks.cup, picks.halfCups?.left, picks.halfCups?.right].find(
    (cup) => cup !== undefined && !chart.cups.some(({ label }) => label === cup),
  );
  if (hasCups && unknown !== undefined) return fail({ code: "plan/cup-unknown", label: unknown });
  return ok({ baseSize, cup: hasCups ? picks.cup : undefined, bustAlteration: picks.bustAlteration });
}

/** Whether the chart reaches a body that set no base size; the girth that it goes by, where it does not. */
export function outsideOf(chart: SizeChart, { bust, upperChest }: TakenGirths): SizingFailure | null {
  const { least, most } = reachOf(lookedUpIn(chart, upperChest === null));
  const wanted = (upperChest ?? bust).value;
  if (wanted >= least && wanted <= most) return null;
  return { code: "plan/outside-chart", level: upperChest === null ? "bust" : "upperChest", wanted, least, most };
}

/**
 * Picks base size, cup and bust alteration together.
 *
 * @param upperChest undefined: not taken, so that the base size goes by the bust
 */
export function pickSizing(
  chart: SizeChart,
  bust: Taken,
  upperChest: Taken | undefined,
  picks: Picks,
): Result<PickedTogether, SizingFailure> {
  const known = ownPicksOf(chart, picks);
  if (!known.ok) return known;
  const own = known.value;
  const girths: TakenGirths = { bust, upperChest: upperChest ?? null };
  const outside = own.baseSize === undefined ? outsideOf(chart, girths) : null;
  if (outside !== null) return fail(outside);
  const way = pickWay(chart, girths, own);
  return ok({
    baseSize: baseSizeOf(chart, girths, own, way),
    cup: cupOf(chart, girths, own, way),
    bust: bustOf(girths, own, way),
  });
}

function baseSizeOf(chart: SizeChart, girths: TakenGirths, own: OwnPicks, { offer }: WeighedWay): BaseSizePick {
  const byBust = girths.upperChest === null;
  const lookedUp = girths.upperChest ?? girths.bust;
  const others = { ...own, baseSize: undefined };
  const found = own.baseSize === undefined ? offer : pickWay(chart, girths, others).offer;
  const offers = offersFor(chart, others, byBust);
  const near = changeOf(lookedUp, (off) => {
    const moved = { value: lookedUp.value + off, spread: lookedUp.spread };
    const misread = byBust ? { bust: moved, upperChest: null } : { bust: girths.bust, upperChest: moved };
    return pickOffer(offers, misread, own.bustAlteration).index;
  });
  // By the bust a size stands at the bust that it is drafted for in the cup that is cut.
  const toBust = byBust ? offer.drafted : 0;
  return {
    label: invariant(chart.sizes[offer.index], "size").label,
    index: offer.index,
    chosenBy: own.baseSize !== undefined ? "wearer" : byBust ? "bust" : "upperChest",
    found: found.index,
    byBust,
    lookedUp: lookedUp.value,
    chartValue: offer.upperChest + toBust,
    from: found.from + toBust,
    to: found.to + toBust,
    beyond: pickInterval(lookedUpIn(chart, byBust), lookedUp.value).beyond,
    ...near,
    runnerUp: near.runnerUp === null ? null : invariant(chart.sizes[near.runnerUp], "size").label,
  };
}

function cupOf(chart: SizeChart, girths: TakenGirths, own: OwnPicks, { offer }: WeighedWay): CupPick {
  const { bust, upperChest } = girths;
  const isPicked = offer.cup !== null && upperChest !== null;
  const offers = offersFor(chart, { ...own, cup: undefined }, upperChest === null);
  // The base size goes by the upper chest alone.
  const frames = frameHarms(offers, girths);
  return {
    label: offer.cup?.label ?? null,
    chosenBy: offer.cup === null ? "none" : own.cup === undefined ? "difference" : "wearer",
    difference: upperChest === null ? null : bust.value - upperChest.value,
    drafted: offer.drafted,
    ...(isPicked
      ? changeOf(bust, (off) => {
          const moved = { value: bust.value + off, spread: bust.spread };
          return offers[leastHarm(offers, frames, moved, own.bustAlteration)]?.cup?.label ?? null;
        })
      : { spread: 0, margin: Infinity, runnerUp: null, probability: 0, borderline: false }),
  };
}

/** The cup version of one half, where it has one of its own. */
export const cupOnHalf = (cup: CupPick, chart: SizeChart, label: string | undefined): CupPick => {
  const own = chart.cups.find((version) => version.label === label);
  if (own === undefined) return cup;
  const unsure = { spread: 0, margin: Infinity, runnerUp: null, probability: 0, borderline: false };
  return { ...cup, ...unsure, label: own.label, drafted: own.difference, chosenBy: "wearer" };
};

/** What the bust lacks where each half has a cup of its own: it is drafted for the middle of the two. */
export function bustOnHalves(bust: BustPick, cup: CupPick, halves: readonly CupPick[]): BustPick {
  const more = halves.reduce((sum, { drafted }) => sum + (drafted - cup.drafted) / halves.length, 0);
  const residual = bust.residual - more;
  const asked = bust.chosenBy === "wearer" ? bust.asked : alterationFor(residual);
  return {
    ...bust,
    drafted: bust.drafted + more,
    residual,
    leftAlone: Math.abs(residual) <= BUST_LEFT_ALONE,
    asked,
    alteration: asked,
  };
}

/** Nothing up to `BUST_LEFT_ALONE`, else the whole residual; or what the wearer set. What can be made of it the pieces tell. */
function bustOf(
  { bust, upperChest }: TakenGirths,
  own: OwnPicks,
  { offer, residual, alteration }: WeighedWay,
): BustPick {
  return {
    difference: upperChest === null ? null : bust.value - upperChest.value,
    drafted: offer.bust,
    residual,
    leftAlone: Math.abs(residual) <= BUST_LEFT_ALONE,
    asked: alteration,
    alteration,
    chosenBy: own.bustAlteration === undefined ? "residual" : "wearer",
  };
}

/** mm of error that are looked through for another pick, and in what steps: what changes further out is told as no change. */
const LOOKED_THROUGH: Mm = 60;
const STEP: Mm = 2;

/** The nearest error of one girth, the other as it was read, that would change a pick; and how likely it is to be passed. */
function changeOf<T extends string | number>(
  { spread }: Taken,
  pickAt: (off: Mm) => T | null,
): Omit<PickMargin, "runnerUp"> & { readonly runnerUp: T | null } {
  const own = pickAt(0);
  for (let out = STEP; out <= LOOKED_THROUGH; out += STEP) {
    const changed = [-out, out].filter((off) => pickAt(off) !== own).map((off) => changeAt(off, own, pickAt));
    const [first] = changed.toSorted((a, b) => a.margin - b.margin);
    if (first === undefined) continue;
    const probability = normalBelow(-first.margin / spread);
    return { ...first, spread, probability, borderline: probability > BORDERLINE };
  }
  return { margin: Infinity, runnerUp: null, spread, probability: 0, borderline: false };
}

/** Where within the last step the pick changes, by halving. */
function changeAt<T>(
  off: Mm,
  own: T | null,
  pickAt: (off: Mm) => T | null,
): { readonly margin: Mm; readonly runnerUp: T | null } {
  const sign = Math.sign(off);
  const out = Math.abs(off);
  const { holding, failing } = halve(out - STEP, out, PICK_CHANGES_TO, (tried) => pickAt(sign * tried) === own);
  return { margin: (holding + failing) / 2, runnerUp: pickAt(sign * failing) };
}
