/**
 * How sure the picks are: the planner's own rule, asked of all that the body may measure given what the tape read. Nothing
 * is drawn by lot: across the upper chest the rule is integrated stretch by stretch between the places where it changes,
 * across the bust it is summed exactly between such places. The wearer's own picks are laid aside: they are not in doubt.
 */
import type { PlanFailure } from "../plan/planFailure";
import { estimatesOf } from "../bodies/estimate";
import type { SizeChart } from "../chart/sizeChart";
import { easeOfRow } from "../draft/draftMeasures";
import { bodyOf } from "../measures/tape";
import { chartFaults } from "../chart/chartFaults";
import { printedGirths } from "../plan/printed";
import type { Work } from "../decisions/work";
import { remember } from "../remember";
import { fail, invariant, ok, type Result } from "../result";
import { BUST_LEFT_ALONE, KNOWN_EXACTLY, LINE_BAND_WIDE, NEVER } from "../tolerance";
import type { Mm } from "../units";
import { NINE_OF_TEN, normalBelow, weighedPlaces } from "../statistics/normal";
import { differenceTaken, pickBust, pickCup, pickBaseSize, reachOf, upperChestOf } from "../sizing/pickBaseSize";
import { intervalOf } from "../sizing/pickInterval";
import type { Taken } from "../sizing/sizing";
import { solveLevel } from "../sizing/solveLevel";
import { suretyOf, type Surety } from "./surety";

/** What is done at the bust: nothing, a full bust adjustment or a small one. */
export type BustDone = "nothing" | "full" | "small";

/** One way to cut the body, and how likely it is that the true measures ask for it. */
export interface Way {
  /** null: the body lies off the chart. */
  readonly size: string | null;
  /** null: the pattern has no cup versions, or the body lies off the chart. */
  readonly cup: string | null;
  readonly bust: BustDone;
  readonly probability: number;
}

export interface Chance {
  readonly label: string | null;
  readonly probability: number;
}

/** How far a line at the waist or the hip may lie from where it is drawn, nine times in ten. */
export interface LineBand {
  readonly level: "waist" | "hip";
  /** One standard deviation of the girth. */
  readonly spread: Mm;
  /** Fractional sizes; null where the chart does not reach so far. */
  readonly from: number | null;
  readonly to: number | null;
  /** Either way at each of the four side-seam edges: a quarter of what the girth may be out. */
  readonly side: Mm;
}

export interface HowSure {
  /** Most likely first; they add up to 1. Without an upper chest they go by the bust alone, as the plan does. */
  readonly ways: readonly Way[];
  readonly sizes: readonly Chance[];
  /** Where no upper chest was taken: the base sizes that what it probably is would pick; empty where nothing tells it. */
  readonly sizesGuessed: readonly Chance[];
  /** Empty where the pattern has no cup versions, or nothing tells them. */
  readonly cups: readonly Chance[];
  readonly bust: Readonly<Record<BustDone, number>>;
  /** No upper chest was taken: `cups` and `bust` go by what it probably is, and the plan by neither. */
  readonly cupsGuessed: boolean;
  /** What the planner takes, going by the measures as they were read. */
  readonly picked: Omit<Way, "probability">;
  readonly lines: readonly LineBand[];
  /** Of each pick by itself. */
  readonly surety: Sureties;
  /** What it all stands on. */
  readonly girths: Girths;
}

/** How sure each pick is; null where there is nothing to pick, or nothing tells it. */
export interface Sureties {
  readonly baseSize: Surety | null;
  readonly cup: Surety | null;
  readonly bust: Surety | null;
  readonly waist: Surety | null;
  readonly hip: Surety | null;
}

export interface Girths {
  readonly bust: Taken;
  /** null: not taken. */
  readonly upperChest: Taken | null;
  /** What the other measures say of the upper chest, where it was not taken. */
  readonly estimate: Taken | null;
}

/** What the picks stand on, the wearer's own picks left out. */
export type SureInputs = Pick<Work, "pattern" | "tapes" | "age" | "easeWanted">;

/** How sure the planner's picks are for a work, the wearer's own picks laid aside. */
export function howSure(work: SureInputs): Result<HowSure, PlanFailure> {
  const { chart } = work.pattern;
  const faults = chartFaults(chart);
  if (faults > 0) return fail({ code: "plan/chart-unusable", faults });
  const girths = girthsOf(work);
  if (girths === null) return fail({ code: "plan/measure-missing", measures: ["bustGirth"] });
  const { bust, upperChest, estimate } = girths;
  const ways = waysOf(chart, bust, upperChest);
  // Taken as independent, though the estimate leans on the bust too: it is much the wider of the two, so little is lost.
  const told = upperChest === null && estimate !== null ? waysOf(chart, bust, estimate) : ways;
  const isTold = upperChest !== null || estimate !== null;
  const picked = wayAt(chart, bust.value, upperChest?.value ?? null);
  const sizes = marginal(ways, ({ size }) => size);
  const cups = chart.cups.length === 0 || !isTold ? [] : marginal(told, ({ cup }) => cup);
  const lines = linesOf(work, girths);
  return ok({
    ways,
    sizes,
    sizesGuessed: upperChest === null && estimate !== null ? marginal(told, ({ size }) => size) : [],
    cups,
    bust: { nothing: shareOf(told, "nothing"), full: shareOf(told, "full"), small: shareOf(told, "small") },
    cupsGuessed: upperChest === null && estimate !== null,
    picked,
    lines,
    surety: {
      baseSize: suretyAmong(sizes, picked.size),
      cup: suretyAmong(cups, picked.cup),
      bust: picked.size === null || !isTold ? null : suretyOf(shareOf(told, picked.bust)),
      waist: suretyOfLine(lines, "waist"),
      hip: suretyOfLine(lines, "hip"),
    },
    girths,
  });
}

function suretyAmong(chances: readonly Chance[], label: string | null): Surety | null {
  if (label === null || chances.length === 0) return null;
  return suretyOf(chances.find((chance) => chance.label === label)?.probability ?? 0);
}

/** A line is as sure as it is that it lies within `LINE_BAND_WIDE` of where it is drawn, at each of four side-seam edges. */
function suretyOfLine(lines: readonly LineBand[], level: LineBand["level"]): Surety | null {
  const line = lines.find((one) => one.level === level);
  return line === undefined ? null : suretyOf(1 - 2 * normalBelow((-4 * LINE_BAND_WIDE) / line.spread));
}

/** The girths that base size and cup stand on; null without a bust. */
function girthsOf({ tapes, age }: SureInputs): Girths | null {
  const body = bodyOf(tapes);
  const { bustGirth, upperChestGirth } = body;
  if (bustGirth === undefined) return null;
  const bust = { value: bustGirth.value, spread: bustGirth.spread };
  if (upperChestGirth !== undefined) {
    return { bust, upperChest: { value: upperChestGirth.value, spread: upperChestGirth.spread }, estimate: null };
  }
  const told = estimatesOf(body, age).upperChestGirth;
  return {
    bust,
    upperChest: null,
    estimate: told === undefined ? null : { value: told.value, spread: (told.most - told.least) / (2 * NINE_OF_TEN) },
  };
}

/** The planner's own rule along the bust, while the upper chest is anywhere in one stretch: there its breaks keep their order. */
interface Stretch {
  /** Of the upper chest. */
  readonly from: Mm;
  readonly to: Mm;
  /** Places along the bust, in order, at which the way changes. */
  readonly breaks: readonly Break[];
  /** Before the first break, between them, and after the last: indexes of ways. */
  readonly ways: readonly number[];
}

/** A place along the bust where the rule may change: at a girth, or at a difference from the upper chest. */
interface Break {
  readonly at: Mm;
  readonly moves: boolean;
}

type WayTaken = Omit<Way, "probability">;

/** The planner's rule for one chart, told once: all the ways, and where each is taken. */
interface Rule {
  readonly ways: readonly WayTaken[];
  readonly withChest: readonly Stretch[];
  readonly byBust: Stretch;
}

const ruleOf = remember(["chart"], ({ chart }: { readonly chart: SizeChart }): Rule => {
  const ways: WayTaken[] = [];
  const indexes = new Map<string, number>();
  const indexOf = (way: WayTaken): number => {
    const key = JSON.stringify([way.size, way.cup, way.bust]);
    const index = indexes.get(key) ?? ways.push(way) - 1;
    indexes.set(key, index);
    return index;
  };
  const stretch = (from: Mm, to: Mm, chest: Mm | null): Stretch => {
    const breaks = bustBreaks(chart, chest !== null).toSorted(
      (a, b) => placeOf(a, chest ?? 0) - placeOf(b, chest ?? 0),
    );
    const places = breaks.map((one) => placeOf(one, chest ?? 0));
    const taken = middles(places).map((bust) => indexOf(wayAt(chart, bust, chest)));
    // Where nothing changes there is no break.
    return {
      from,
      to,
      breaks: breaks.filter((_, j) => taken[j] !== taken[j + 1]),
      ways: taken.filter((way, j) => way !== taken[j - 1]),
    };
  };
  const cuts = chestCuts(chart);
  const withChest = middles(cuts).map((chest, i) => stretch(cuts[i - 1] ?? -Infinity, cuts[i] ?? Infinity, chest));
  return { ways, withChest: joined(withChest), byBust: stretch(-Infinity, Infinity, null) };
});

/** Neighbours that go alike are one. */
function joined(stretches: readonly Stretch[]): readonly Stretch[] {
  const all: Stretch[] = [];
  for (const stretch of stretches) {
    const last = all.at(-1);
    if (
      last !== undefined &&
      JSON.stringify([last.breaks, last.ways]) === JSON.stringify([stretch.breaks, stretch.ways])
    ) {
      all[all.length - 1] = { ...last, to: stretch.to };
    } else {
      all.push(stretch);
    }
  }
  return all;
}

const placeOf = ({ at, moves }: Break, chest: Mm): Mm => (moves ? at + chest : at);

/** A place before the first of a growing row, one between each two, and one after the last. */
function middles(places: readonly Mm[]): readonly Mm[] {
  const first = invariant(places[0], "place");
  return [first - 1, ...places.map((place, i) => (place + (places[i + 1] ?? place + 2)) / 2)];
}

/** Known exactly: only its value is asked for. */
const exactly = (value: Mm): Taken => ({ value, spread: KNOWN_EXACTLY });

/** The planner's own rule at exact girths. */
function wayAt(chart: SizeChart, bust: Mm, upperChest: Mm | null): WayTaken {
  const taken = exactly(bust);
  const chest = upperChest === null ? undefined : exactly(upperChest);
  const baseSize = pickBaseSize(chart, taken, chest, {});
  const cup = pickCup(chart, differenceTaken(taken, chest), {});
  if (!baseSize.ok || !cup.ok) return { size: null, cup: null, bust: "nothing" };
  const { alteration } = pickBust(chart, bust, cup.value, baseSize.value, {});
  return {
    size: baseSize.value.label,
    cup: cup.value.label,
    bust: alteration > 0 ? "full" : alteration < 0 ? "small" : "nothing",
  };
}

/** Inner bounds of a growing row. */
const boundsOf = (values: readonly Mm[]): readonly Mm[] =>
  values.slice(0, -1).map((_, index) => intervalOf(values, index).to);

/** Where a pick by a row changes: between its values, and where the chart ends. */
function boundsAndEnds(values: readonly Mm[]): readonly Mm[] {
  const { least, most } = reachOf(values);
  return [least, ...boundsOf(values), most];
}

const bustBounds = (chart: SizeChart): readonly Mm[] => boundsAndEnds(chart.sizes.map(({ bust }) => bust));

/** Differences at which the cup or the bust alteration changes. */
function differenceBounds(chart: SizeChart): readonly Mm[] {
  const cups = chart.cups.map(({ difference }) => difference);
  const drafted = cups.length === 0 ? [chart.draftedDifference] : cups;
  return [...boundsOf(cups), ...drafted.flatMap((at) => [at - BUST_LEFT_ALONE, at + BUST_LEFT_ALONE])];
}

function bustBreaks(chart: SizeChart, hasChest: boolean): readonly Break[] {
  const still = bustBounds(chart).map((at) => ({ at, moves: false }));
  if (!hasChest) return still;
  const moving = differenceBounds(chart).map((at) => ({ at, moves: true }));
  return chart.cups.length === 0 ? [...still, ...moving] : moving;
}

/** The upper chest cut where the base size changes, and where two breaks along the bust change places. */
function chestCuts(chart: SizeChart): readonly Mm[] {
  const bounds = boundsAndEnds(chart.sizes.map((_, index) => upperChestOf(chart, index)));
  const crossings =
    chart.cups.length > 0
      ? []
      : bustBounds(chart).flatMap((bound) => differenceBounds(chart).map((difference) => bound - difference));
  return [...bounds, ...crossings].toSorted((a, b) => a - b);
}

/** How far out a normal value is looked for, in standard deviations: all but some 1e-11 of it lie nearer. */
const FURTHEST = 6.7;
/** Standard deviations of the finer girth that one rule of 8 points is trusted with; and how much finer than the other it can be. */
const FINEST = 1.5;
const FINER = 20;

/**
 * The ways the planner's rule may go, given independent normal errors of both girths.
 *
 * @returns most likely first, adding up to 1
 */
export function waysOf(chart: SizeChart, bust: Taken, upperChest: Taken | null): readonly Way[] {
  const { ways } = ruleOf({ chart });
  const chances = chancesOf(chart, bust, upperChest);
  return ways
    .map((way, index) => ({ ...way, probability: chances[index] ?? 0 }))
    .filter(({ probability }) => probability > NEVER)
    .toSorted((a, b) => b.probability - a.probability);
}

/** Probability of each way of the chart's rule, in its own order. */
export function chancesOf(chart: SizeChart, bust: Taken, upperChest: Taken | null): readonly number[] {
  const { ways, withChest, byBust } = ruleOf({ chart });
  const sums = ways.map(() => 0);
  if (upperChest === null) {
    addAlong(byBust, 0, bust, 1, sums);
  } else {
    const { value, spread } = upperChest;
    const finest = FINEST * Math.min(spread, Math.max(bust.spread, spread / FINER));
    for (const stretch of withChest) {
      const from = Math.max(stretch.from, value - FURTHEST * spread);
      const to = Math.min(stretch.to, value + FURTHEST * spread);
      if (from >= to) continue;
      for (const { at, weight } of weighedPlaces(value, spread, from, to, finest))
        addAlong(stretch, at, bust, weight, sums);
    }
  }
  const total = sums.reduce((all, sum) => all + sum, 0);
  return sums.map((sum) => sum / total);
}

/** Adds the exact chances along the bust, the upper chest standing still. */
function addAlong({ breaks, ways }: Stretch, chest: Mm, bust: Taken, weight: number, sums: number[]): void {
  let before = 0;
  ways.forEach((way, j) => {
    const next = breaks[j];
    const below = next === undefined ? 1 : normalBelow((placeOf(next, chest) - bust.value) / bust.spread);
    sums[way] = (sums[way] ?? 0) + weight * (below - before);
    before = below;
  });
}

/** Probability of each label, the likeliest first. */
function marginal(ways: readonly Way[], labelOf: (way: Way) => string | null): readonly Chance[] {
  const sums = new Map<string | null, number>();
  for (const way of ways) sums.set(labelOf(way), (sums.get(labelOf(way)) ?? 0) + way.probability);
  return [...sums]
    .map(([label, probability]) => ({ label, probability }))
    .toSorted((a, b) => b.probability - a.probability);
}

const shareOf = (ways: readonly Way[], done: BustDone): number =>
  ways.reduce((sum, way) => sum + (way.bust === done ? way.probability : 0), 0);

/** The lines at waist and hip, on the planner's own frame. */
function linesOf(work: SureInputs, { bust, upperChest }: Girths): readonly LineBand[] {
  const { pattern } = work;
  const baseSize = pickBaseSize(pattern.chart, bust, upperChest ?? undefined, {});
  if (!baseSize.ok) return [];
  const body = bodyOf(work.tapes);
  const ease = {
    ...easeOfRow(invariant(pattern.chart.sizes[baseSize.value.index], "frame row"), pattern.ease),
    ...work.easeWanted,
  };
  const printed = printedGirths(pattern, baseSize.value.index);
  const lines: LineBand[] = [];
  for (const level of ["waist", "hip"] as const) {
    const girth = level === "waist" ? body.waistGirth : body.hipGirth;
    const finished = printed[level];
    if (girth === undefined || finished === null) continue;
    const out = NINE_OF_TEN * girth.spread;
    const [from, to] = [-out, out].map((by) => {
      const solved = solveLevel(finished, girth.value + ease[level] + by, baseSize.value.index);
      return solved.ok ? solved.value : null;
    });
    lines.push({ level, spread: girth.spread, from: from ?? null, to: to ?? null, side: out / 4 });
  }
  return lines;
}
