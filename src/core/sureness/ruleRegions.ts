/**
 * How often the planner's own rule picks each way, over all that the body may measure given what the tape read. Nothing is
 * drawn by lot: the upper chest is cut into cells, the finer the more the rule changes there; along the bust, in each cell, the places where the rule changes are found and the normal distribution is summed exactly.
 */
import type { SizeChart } from "../chart/sizeChart";
import { halve } from "../geometry/iterate";
import { remember } from "../remember";
import { invariant } from "../result";
import { alterationFor, bustHarm } from "../sizing/harm";
import { lookedUpIn, reachOf } from "../sizing/pickSizing";
import { frameHarms, leastHarm, offersFor, type Offer, type OwnPicks, type TakenGirths } from "../sizing/pickWay";
import { intervalOf } from "../sizing/pickInterval";
import type { Taken } from "../sizing/sizing";
import { normalBelow } from "../statistics/normal";
import {
  BUST_LEFT_ALONE,
  CHANCE_OF_A_CELL,
  HARM_TIE,
  NEVER,
  PICK_CHANGES_TO,
  SPREAD_WORTH_WEIGHING,
} from "../tolerance";
import type { Mm } from "../units";

/** What is done at the bust: nothing, a full bust adjustment or a small one. */
export type BustDone = "nothing" | "full" | "small";

/** One way to cut the body. */
export interface WayTaken {
  /** null: the body lies off the chart. */
  readonly size: string | null;
  /** null: the pattern has no cup versions, or the body lies off the chart. */
  readonly cup: string | null;
  readonly bust: BustDone;
}

/** And how likely it is that the true measures ask for it. */
export interface Way extends WayTaken {
  readonly probability: number;
}

const OFF_CHART: WayTaken = { size: null, cup: null, bust: "nothing" };

const doneBy = (alteration: Mm): BustDone => (alteration > 0 ? "full" : alteration < 0 ? "small" : "nothing");

/** The way of an offer of a chart at a bust. */
export const wayOf = (chart: SizeChart, { index, cup }: Offer, alteration: Mm): WayTaken => ({
  size: invariant(chart.sizes[index], "size").label,
  cup: cup?.label ?? null,
  bust: doneBy(alteration),
});

/** The rule along the bust: the ways between the places where it changes, one more of them than places. */
interface Row {
  readonly places: readonly Mm[];
  readonly ways: readonly number[];
}

/** A stretch of the upper chest. What is known of it is found when it is first asked for. */
interface Cell {
  readonly from: Mm;
  readonly to: Mm;
  /** The rule in its middle. */
  row: Row | null;
  halves: readonly [Cell, Cell] | null;
}

const cellOf = (from: Mm, to: Mm): Cell => ({ from, to, row: null, halves: null });

/** The rule for one chart and one doubt. */
interface Regions {
  readonly offers: readonly Offer[];
  readonly ways: WayTaken[];
  /** By the place of the offer and what is done. */
  readonly placeOfWay: Map<number, number>;
  readonly cells: readonly Cell[];
  readonly spreads: Spreads;
}

/** What the rule depends on beside the chart. */
interface Spreads extends OwnPicks {
  readonly chart: SizeChart;
  readonly bustSpread: Mm;
  /** null: not taken. */
  readonly chestSpread: Mm | null;
  /** In steps of `ABOUT`: the bust about which the rule is wanted. */
  readonly about: number;
}

/** Cells of the upper chest are cut finer wherever the rule is not the same in one and in the next. */
const CELLS_IN_A_SPREAD = 2;
const WIDEST_CELL: Mm = 8;
/** One no wider than this is not cut. */
const NARROWEST_CELL: Mm = 0.2;
/** Standard deviations either way that are looked through: all but some 1e-6 of a normal value lies nearer. */
const FURTHEST = 5;
const ABOUT: Mm = 40;
const REGIONS_KEPT = 24;

const regionsOf = remember(
  ["chart", "bustSpread", "chestSpread", "about", "baseSize", "cup", "bustAlteration"],
  (spreads: Spreads): Regions => ({
    offers: offersFor(spreads.chart, spreads, spreads.chestSpread === null),
    ways: [OFF_CHART],
    placeOfWay: new Map(),
    cells: cellsOf(spreads),
    spreads,
  }),
  REGIONS_KEPT,
);

/** From one bound between two sizes to the next, cut evenly; past the ends of the chart as far as it is carried on. */
function cellsOf({ chart, chestSpread }: Spreads): readonly Cell[] {
  if (chestSpread === null) return [];
  const values = lookedUpIn(chart, false);
  const { least, most } = reachOf(values);
  const bounds = [least, ...values.slice(0, -1).map((_, index) => intervalOf(values, index).to), most];
  const widest = Math.min(WIDEST_CELL, Math.max(SPREAD_WORTH_WEIGHING, chestSpread) / CELLS_IN_A_SPREAD);
  return bounds.slice(1).flatMap((to, index) => {
    const from = invariant(bounds[index], "bound");
    const count = Math.ceil((to - from) / widest);
    const width = (to - from) / count;
    return Array.from({ length: count }, (_, at) => cellOf(from + at * width, from + (at + 1) * width));
  });
}

/**
 * The ways the planner's rule may go, given independent normal errors of both girths.
 *
 * @param own the wearer's own picks, which are not in doubt
 * @returns most likely first, adding up to 1
 */
export function waysOf(chart: SizeChart, girths: TakenGirths, own: OwnPicks = {}): readonly Way[] {
  const { ways, chances } = chancesOf(chart, girths, own);
  return ways
    .map((way, index) => ({ ...way, probability: chances[index] ?? 0 }))
    .filter(({ probability }) => probability > NEVER)
    .toSorted((a, b) => b.probability - a.probability);
}

/**
 * Probability of each way of the chart's rule, in an order of its own; the first is to be off the chart.
 *
 * @param isRough quicker by far, and out by a few hundredths at the most: good enough where many are averaged
 */
export function chancesOf(
  chart: SizeChart,
  { bust, upperChest }: TakenGirths,
  own: OwnPicks = {},
  isRough = false,
): { readonly ways: readonly WayTaken[]; readonly chances: readonly number[] } {
  const regions = regionsOf({
    chart,
    bustSpread: bust.spread,
    chestSpread: upperChest?.spread ?? null,
    about: Math.round(bust.value / ABOUT),
    baseSize: own.baseSize,
    cup: own.cup,
    bustAlteration: own.bustAlteration,
  });
  const sums: number[] = [];
  if (upperChest === null) addByBust(regions, bust, sums);
  else if (upperChest.spread < SPREAD_WORTH_WEIGHING) addAlong(rowAt(regions, upperChest.value), bust, 1, sums);
  else addCells(regions, upperChest, bust, isRough, sums);
  const off = own.baseSize === undefined ? offChance(chart, upperChest ?? bust, upperChest === null) : 0;
  const total = sums.reduce((all, sum) => all + sum, 0);
  // Off the chart no size is asked for; what the cells leave out of it is shared among the rest.
  const chances = regions.ways.map((_, way) => (total === 0 ? 0 : ((sums[way] ?? 0) / total) * (1 - off)));
  chances[0] = total === 0 ? 1 : off;
  return { ways: regions.ways, chances };
}

/** A stretch of the upper chest with the chances in it. */
interface Weighed {
  readonly cell: Cell;
  readonly chances: readonly number[];
  readonly weight: number;
}

function addCells(regions: Regions, chest: Taken, bust: Taken, isRough: boolean, sums: number[]): void {
  const reach = FURTHEST * chest.spread;
  const weigh = (cell: Cell): Weighed => {
    const chances: number[] = [];
    addHalf(regions, cell, chest, bust, chances);
    return { cell, chances, weight: chances.reduce((all, chance) => all + chance, 0) };
  };
  const near = regions.cells.filter(({ from, to }) => to >= chest.value - reach && from <= chest.value + reach);
  let stretches = near.flatMap(halvesOf).map(weigh);
  // Where two neighbours are not alike the rule changes between their middles: in the one or in the other.
  for (let isFine = isRough; !isFine;) {
    const isCut = stretches.map(
      (one, at) =>
        one.cell.to - one.cell.from > NARROWEST_CELL &&
        (differ(regions, one, stretches[at - 1]) || differ(regions, one, stretches[at + 1])),
    );
    isFine = !isCut.includes(true);
    stretches = stretches.flatMap((one, at) => (isCut[at] === true ? halvesOf(one.cell).map(weigh) : [one]));
  }
  for (const { chances } of stretches)
    chances.forEach((chance, way) => {
      sums[way] = (sums[way] ?? 0) + chance;
    });
}

/** Whether taking one stretch for the other would show. */
function differ({ ways }: Regions, one: Weighed, other: Weighed | undefined): boolean {
  if (other === undefined) return false;
  return ways.some((_, way) => {
    const off = (one.chances[way] ?? 0) / one.weight - (other.chances[way] ?? 0) / other.weight;
    return Math.abs(off) * (one.weight + other.weight) > CHANCE_OF_A_CELL;
  });
}

function halvesOf(cell: Cell): readonly [Cell, Cell] {
  const middle = (cell.from + cell.to) / 2;
  cell.halves ??= [cellOf(cell.from, middle), cellOf(middle, cell.to)];
  return cell.halves;
}

/** Adds a stretch by the rule in its middle. */
function addHalf(regions: Regions, half: Cell, chest: Taken, bust: Taken, sums: number[]): void {
  half.row ??= rowAt(regions, (half.from + half.to) / 2);
  addAlong(half.row, bust, normalBetween(half.from, half.to, chest), sums);
}

const normalBetween = (from: Mm, to: Mm, { value, spread }: Taken): number =>
  normalBelow((to - value) / spread) - normalBelow((from - value) / spread);

/** That the chart does not reach the girth that the base size goes by. */
function offChance(chart: SizeChart, taken: Taken, byBust: boolean): number {
  const { least, most } = reachOf(lookedUpIn(chart, byBust));
  return 1 - normalBetween(least, most, taken);
}

/** Adds the exact chances along the bust, the upper chest standing still. */
function addAlong({ places, ways }: Row, bust: Taken, weight: number, sums: number[]): void {
  let before = 0;
  ways.forEach((way, j) => {
    const next = places[j];
    const below = next === undefined ? 1 : normalBelow((next - bust.value) / bust.spread);
    sums[way] = (sums[way] ?? 0) + weight * (below - before);
    before = below;
  });
}

/** Without an upper chest the base size goes by the bust, as far as the chart reaches. */
function addByBust(regions: Regions, bust: Taken, sums: number[]): void {
  const { chart } = regions.spreads;
  const { least, most } = reachOf(lookedUpIn(chart, true));
  const { places, ways } = rowAt(regions, null);
  const within = (place: Mm): Mm => Math.min(most, Math.max(least, place));
  const ends = [-Infinity, ...places, Infinity];
  const isHers = regions.spreads.baseSize !== undefined;
  ways.forEach((way, j) => {
    const [from, to] = [ends[j] ?? -Infinity, ends[j + 1] ?? Infinity];
    const chance = isHers ? normalBetween(from, to, bust) : normalBetween(within(from), within(to), bust);
    sums[way] = (sums[way] ?? 0) + chance;
  });
}

/** The rule along the bust, about the bust that was read. */
function rowAt(regions: Regions, chest: Mm | null): Row {
  const { spreads } = regions;
  const { bustSpread, chestSpread, about, bustAlteration } = spreads;
  const reach = ABOUT / 2 + FURTHEST * bustSpread;
  const [least, most] = [about * ABOUT - reach, about * ABOUT + reach];
  const upperChest = chest === null || chestSpread === null ? null : { value: chest, spread: chestSpread };
  const all = upperChest === null ? null : frameHarms(regions.offers, { bust: { value: 0, spread: 0 }, upperChest });
  const near = all === null ? regions.offers.map((_, at) => at) : worthWeighing(regions, all, least, most);
  const offers = near.map((at) => invariant(regions.offers[at], "offer"));
  const still = all === null ? null : near.map((at) => invariant(all[at], "harm"));
  const wayAt = (value: Mm): number => {
    const bust = { value, spread: bustSpread };
    const frames = still ?? frameHarms(offers, { bust, upperChest: null });
    const at = leastHarm(offers, frames, bust, bustAlteration);
    const alteration = bustAlteration ?? alterationFor(value - invariant(offers[at], "offer").bust);
    return placeOf(regions, invariant(near[at], "place"), alteration);
  };
  const jumps = offers
    .flatMap(({ bust }) => [bust - BUST_LEFT_ALONE, bust + BUST_LEFT_ALONE])
    .filter((at) => at > least && at < most);
  // What is best between two stretches of another way is so where it harms least: where the bust is just what is cut.
  const bottoms = offers.map(({ bust }) => bust + (bustAlteration ?? 0)).toSorted((a, b) => a - b);
  const ends = apart([least, ...jumps, most].toSorted((a, b) => a - b));
  const places: Mm[] = [];
  const ways: number[] = [];
  const put = (from: Mm, way: number): void => {
    if (ways.at(-1) === way) return;
    if (ways.length > 0) places.push(from);
    ways.push(way);
  };
  ends.slice(0, -1).forEach((from, index) => {
    const to = invariant(ends[index + 1], "end");
    // Between two places at which an alteration begins, no harm jumps.
    const [start, end] = [from + PICK_CHANGES_TO / 10, to - PICK_CHANGES_TO / 10];
    const inner = [...bottoms.filter((at) => at > start && at < end), end];
    let [at, way] = [start, wayAt(start)];
    put(from, way);
    for (const next of inner) {
      const there = wayAt(next);
      // There may be others on the way from the one to the other.
      while (way !== there) {
        const change = changeBetween(at, way, next, wayAt);
        [at, way] = [change.behind, wayAt(change.behind)];
        put(change.place, way);
      }
      at = next;
    }
  });
  return { places, ways };
}

/** Places of the offers that may harm least anywhere between two busts: the others harm more than some other's worst. */
function worthWeighing(
  { offers, spreads: { bustSpread, bustAlteration } }: Regions,
  frames: readonly number[],
  least: Mm,
  most: Mm,
): readonly number[] {
  const harmAt = (at: number, value: Mm): number => {
    const residual = value - invariant(offers[at], "offer").bust;
    return invariant(frames[at], "harm") + bustHarm(residual, bustAlteration ?? alterationFor(residual), bustSpread);
  };
  const worst = offers.map((_, at) => Math.max(harmAt(at, least), harmAt(at, most)));
  const bound = Math.min(...worst) + HARM_TIE;
  return offers.flatMap((_, at) => (invariant(frames[at], "harm") <= bound ? [at] : []));
}

/** Where between two places the way stops being the first one's, and a place just behind, where it is another. */
function changeBetween(
  from: Mm,
  way: number,
  to: Mm,
  wayAt: (bust: Mm) => number,
): { readonly place: Mm; readonly behind: Mm } {
  const { holding, failing } = halve(from, to, PICK_CHANGES_TO, (tried) => wayAt(tried) === way);
  return { place: (holding + failing) / 2, behind: failing };
}

/** Of a growing row those that are not the same as the one before. */
const apart = (places: readonly Mm[]): readonly Mm[] =>
  places.filter((place, index) => place - (places[index - 1] ?? -Infinity) > PICK_CHANGES_TO);

/** The place of a way among all that were met. */
function placeOf({ offers, ways, placeOfWay, spreads }: Regions, at: number, alteration: Mm): number {
  const key = 3 * at + Math.sign(alteration);
  const known = placeOfWay.get(key);
  if (known !== undefined) return known;
  const place = ways.push(wayOf(spreads.chart, invariant(offers[at], "offer"), alteration)) - 1;
  placeOfWay.set(key, place);
  return place;
}
