/**
 * The base size and the cup. The base size (neck, shoulder, armhole) is a whole printed size, because collars, sleeves and
 * facings follow it; it goes by the upper chest, which says what the bust girth alone cannot. The cup version goes by
 * how far the bust stands out beyond the upper chest.
 */
import type { SizingFailure } from "./sizingFailure";
import type { SizeChart } from "../chart/sizeChart";
import type { Picks } from "../decisions/work";
import { fail, invariant, ok, type Result } from "../result";
import { BUST_LEFT_ALONE, EXTRAPOLATION_STEPS } from "../tolerance";
import type { Mm } from "../units";
import { marginOf, pickInterval } from "./pickInterval";
import type { BustPick, CupPick, BaseSizePick, Taken } from "./sizing";

/** Bust less upper chest; null without an upper chest. Their errors have nothing to do with each other, so their variances add. */
export const differenceTaken = (bust: Taken, upperChest: Taken | undefined): Taken | null =>
  upperChest === undefined
    ? null
    : { value: bust.value - upperChest.value, spread: Math.hypot(bust.spread, upperChest.spread) };

/** Upper-chest girth that a size is drafted for. */
export const upperChestOf = (chart: SizeChart, index: number): Mm =>
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

/**
 * Picks the base size.
 *
 * By upper chest; by bust where no upper chest was taken, or where the pattern has no cup versions and the body's own
 * difference is the drafted one, as the trade does.
 */
export function pickBaseSize(
  chart: SizeChart,
  bust: Taken,
  upperChest: Taken | undefined,
  picks: Picks,
): Result<BaseSizePick, SizingFailure> {
  const byBust =
    upperChest === undefined ||
    (chart.cups.length === 0 && Math.abs(bust.value - upperChest.value - chart.draftedDifference) <= BUST_LEFT_ALONE);
  const values = chart.sizes.map((size, index) => (byBust ? size.bust : upperChestOf(chart, index)));
  const { value: lookedUp, spread } = byBust ? bust : upperChest;
  const found = pickInterval(values, lookedUp);
  const { least, most } = reachOf(values);
  const own = picks.baseSize === undefined ? null : chart.sizes.findIndex((size) => size.label === picks.baseSize);
  if (own === -1) return fail({ code: "plan/base-size-unknown", label: picks.baseSize ?? "" });
  if (own === null && (lookedUp < least || lookedUp > most)) {
    return fail({ code: "plan/outside-chart", level: byBust ? "bust" : "upperChest", wanted: lookedUp, least, most });
  }
  const index = own ?? found.index;
  const near = marginOf(values, found.index, lookedUp, spread);
  return ok({
    label: invariant(chart.sizes[index], "size").label,
    index,
    chosenBy: own !== null ? "wearer" : byBust ? "bust" : "upperChest",
    found: found.index,
    byBust,
    lookedUp,
    chartValue: invariant(values[index], "size"),
    from: found.from,
    to: found.to,
    beyond: found.beyond,
    spread,
    margin: near.margin,
    runnerUp: near.runnerUp === null ? null : invariant(chart.sizes[near.runnerUp], "size").label,
    probability: near.probability,
    borderline: near.borderline,
  });
}

/** Picks the cup version by the body's difference; without cup versions what the chart is drafted for. */
export function pickCup(chart: SizeChart, taken: Taken | null, picks: Picks): Result<CupPick, SizingFailure> {
  const difference = taken?.value ?? null;
  const none = {
    spread: taken?.spread ?? 0,
    margin: Infinity,
    runnerUp: null,
    probability: 0,
    borderline: false,
  } as const;
  if (chart.cups.length === 0) {
    return ok({ label: null, chosenBy: "none", difference, drafted: chart.draftedDifference, ...none });
  }
  const values = chart.cups.map((cup) => cup.difference);
  const own = picks.cup === undefined ? null : chart.cups.findIndex((cup) => cup.label === picks.cup);
  if (own === -1) return fail({ code: "plan/cup-unknown", label: picks.cup ?? "" });
  // Without an upper chest the version nearest the drafted difference is the one the bust column stands for.
  const lookedUp = difference ?? chart.draftedDifference;
  const found = pickInterval(values, lookedUp).index;
  const index = own ?? found;
  const near = taken === null || values.length < 2 ? null : marginOf(values, found, taken.value, taken.spread);
  return ok({
    label: invariant(chart.cups[index], "cup").label,
    chosenBy: own === null ? "difference" : "wearer",
    difference,
    drafted: invariant(values[index], "cup"),
    ...(near === null
      ? none
      : {
          spread: none.spread,
          margin: near.margin,
          runnerUp: near.runnerUp === null ? null : invariant(chart.cups[near.runnerUp], "cup").label,
          probability: near.probability,
          borderline: near.borderline,
        }),
  });
}

/**
 * What the bust lacks (or has too much of) on a base size and cup version.
 *
 * On the planner's own frame that is the cup's residual alone: being somewhere within a size is what ease is for (0 where
 * no upper chest was taken). Another base size brings its whole difference in bust with it.
 */
export function residualOn(
  chart: SizeChart,
  bust: Mm,
  baseSize: BaseSizePick,
  index: number,
  difference: Mm | null,
  drafted: Mm,
): Mm {
  if (index !== baseSize.found) return bust - (upperChestOf(chart, index) + drafted);
  return difference === null ? 0 : difference - drafted;
}

/** The bust alteration: nothing up to `BUST_LEFT_ALONE`, else the whole residual; or what the wearer set. */
export function pickBust(chart: SizeChart, bust: Mm, cup: CupPick, baseSize: BaseSizePick, picks: Picks): BustPick {
  const residual = residualOn(chart, bust, baseSize, baseSize.index, cup.difference, cup.drafted);
  const leftAlone = Math.abs(residual) <= BUST_LEFT_ALONE;
  return {
    difference: cup.difference,
    residual,
    leftAlone,
    alteration: picks.bustAlteration ?? (leftAlone ? 0 : residual),
    chosenBy: picks.bustAlteration === undefined ? "residual" : "wearer",
  };
}
