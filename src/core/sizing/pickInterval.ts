/**
 * Picking the nearest of a row of values: each stands for the interval that reaches half-way to its neighbours. A value
 * on a bound belongs to the larger one; the published size-designation standard prints the bound in both and does not
 * say, so this is our choice.
 */
import { invariant } from "../result";
import { BORDERLINE } from "../tolerance";
import type { Mm } from "../units";
import { normalBelow } from "../statistics/normal";

export interface IntervalPick {
  readonly index: number;
  readonly from: Mm;
  readonly to: Mm;
  /** Past the first or the last interval by this much; 0 inside. */
  readonly beyond: Mm;
}

/** The interval of one value of a growing row; the ends reach out as far as their inner half. */
export function intervalOf(values: readonly Mm[], index: number): { from: Mm; to: Mm } {
  const own = invariant(values[index], "value");
  const below = values[index - 1];
  const above = values[index + 1];
  const halfBelow = below === undefined ? null : (own - below) / 2;
  const halfAbove = above === undefined ? null : (above - own) / 2;
  return { from: own - (halfBelow ?? halfAbove ?? 0), to: own + (halfAbove ?? halfBelow ?? 0) };
}

/** The value of a growing row whose interval holds `wanted`. */
export function pickInterval(values: readonly Mm[], wanted: Mm): IntervalPick {
  let index = 0;
  while (index + 1 < values.length && wanted >= intervalOf(values, index).to) index += 1;
  const { from, to } = intervalOf(values, index);
  const beyond = wanted < from ? from - wanted : wanted > to ? wanted - to : 0;
  return { index, from, to, beyond };
}

/**
 * How near a pick is to the next one: the distance to the nearer inner bound, and the probability that a tape with the
 * given spread would have read past it.
 *
 * @param spread one standard deviation of the looked-up value, mm
 */
export function marginOf(values: readonly Mm[], index: number, wanted: Mm, spread: Mm) {
  const { from, to } = intervalOf(values, index);
  const down = index > 0 ? wanted - from : Infinity;
  const up = index + 1 < values.length ? to - wanted : Infinity;
  const nearest = Math.min(down, up);
  const runnerUp = nearest === Infinity ? null : down < up ? index - 1 : index + 1;
  const probability = runnerUp === null ? 0 : normalBelow(-nearest / spread);
  return { margin: nearest, runnerUp, probability, borderline: probability > BORDERLINE };
}
