/**
 * What a size chart fits: the planner's own rule asked of the body survey's women, and where the chart's proportions lie
 * beside one wearer's. It is the chart that fits more women or fewer; nothing here is said of any of them.
 */
import type { SizingFailure } from "../sizing/sizingFailure";
import type { SizeChart } from "../chart/sizeChart";
import type { MeasuredBody } from "../measures/tape";
import { chartFaults } from "../chart/chartFaults";
import type { Picks } from "../decisions/decided";
import { remember } from "../remember";
import { invariant } from "../result";
import { lookedUpIn, outsideOf, pickSizing } from "../sizing/pickSizing";
import { pickInterval } from "../sizing/pickInterval";
import { pickWay } from "../sizing/pickWay";
import type { Taken } from "../sizing/sizing";
import { girthAt, solveLevel } from "../sizing/solveLevel";
import { EXTRAPOLATION_STEPS, KNOWN_EXACTLY } from "../tolerance";
import type { Mm } from "../units";
import { BRIDGES } from "./bridges";
import { modelBodies, type Girth, type ModelBody } from "./modelBodies";

/** Shares of all surveyed bodies, 0 to 1: what else is asked of them is asked together with a base size. */
export interface ChartShares {
  /** Get a base size inside the chart: the girth looked up lies within its first and its last interval. */
  readonly placed: number;
  /** And need no bust alteration, with any of its cups. */
  readonly bustLeftAlone: number;
  /** The same, were all upper chests one doubt of the bridge smaller or larger: how far the share can be known at all. */
  readonly bustLeftAloneWithin: { readonly least: number; readonly most: number };
  /** And have their own line, by the chart's body girths, within half a size or one size of the base size's. */
  readonly waist: { readonly half: number; readonly one: number };
  readonly hip: { readonly half: number; readonly one: number };
  /** Both the waist's and the hip's within half a size: no line to be blended. */
  readonly unblended: number;
  /** How many whole sizes lie between the smallest and the largest of bust, waist and hip: none, one, two, more. They add up to `placed`. */
  readonly apart: readonly [number, number, number, number];
}

/** How far a body's waist or hip lies above the chart's line (below: negative). */
export interface OffLine {
  readonly off: Mm;
  /** Share of surveyed bodies further from the line, to either side. */
  readonly further: number;
}

/** The wearer beside the chart; null where a measure was not taken, or the chart cannot say. */
export interface BesideChart {
  /** What her girths have more than the base size's own size (less: negative). */
  readonly baseSize: { readonly label: string; readonly waist: Mm | null; readonly hip: Mm | null } | null;
  /** Why there is no frame: no bust taken, or the chart ends too soon for her (null too where her own frame is not in it). */
  readonly noBaseSize: "noBust" | "smaller" | "larger" | null;
  /** Her waist against the chart's waist at her bust. */
  readonly waistAtBust: OffLine | null;
  /** Her hip against the chart's hip at her waist. */
  readonly hipAtWaist: OffLine | null;
}

export interface ChartFit {
  readonly shares: ChartShares;
  readonly hers: BesideChart;
}

interface OfChart {
  readonly shares: ChartShares;
  /** How far each of the bodies lies from the line, to either side. */
  readonly waistAtBust: readonly Mm[];
  readonly hipAtWaist: readonly Mm[];
}

/**
 * What a chart fits.
 *
 * @param body  what the wearer's tape read; may be empty
 * @param picks her own frame is respected
 * @returns null for a chart with faults that keep it from being drafted from
 */
export function chartFit(chart: SizeChart, body: MeasuredBody, picks: Picks = {}): ChartFit | null {
  const of = ofChart({ chart });
  return of === null ? null : { shares: of.shares, hers: beside(chart, of, body, picks) };
}

/** null for a chart that cannot be drafted from. */
const ofChart = remember(["chart"], ({ chart }: { readonly chart: SizeChart }): OfChart | null => {
  if (chartFaults(chart) > 0) return null;
  const bodies = modelBodies();
  const distances = (along: Girth, of: Girth): readonly Mm[] => {
    const [from, to] = [columnOf(chart, along), columnOf(chart, of)];
    return bodies.map((body) => Math.abs(body[of] - lineAt(from, to, body[along])));
  };
  return {
    shares: sharesOf(chart, bodies),
    waistAtBust: distances("bust", "waist"),
    hipAtWaist: distances("waist", "hip"),
  };
});

const exactly = (value: Mm): Taken => ({ value, spread: KNOWN_EXACTLY });

/** The planner's own rule; null where the body gets no base size inside the chart. */
function pickFor(
  chart: SizeChart,
  { bust, upperChest }: ModelBody,
): { readonly index: number; readonly leftAlone: boolean } | null {
  const girths = { bust: exactly(bust), upperChest: exactly(upperChest) };
  if (outsideOf(chart, girths) !== null || pickInterval(lookedUpIn(chart, false), upperChest).beyond > 0) return null;
  const { offer, alteration } = pickWay(chart, girths);
  return { index: offer.index, leftAlone: alteration === 0 };
}

/** Shares of a chart among some bodies; for `chartFit`, and for bodies from elsewhere. */
export function sharesOf(chart: SizeChart, bodies: readonly ModelBody[]): ChartShares {
  const columns = { bust: columnOf(chart, "bust"), waist: columnOf(chart, "waist"), hip: columnOf(chart, "hip") };
  const counts = { placed: 0, leftAlone: 0, waistHalf: 0, waistOne: 0, hipHalf: 0, hipOne: 0, unblended: 0 };
  const apart: [number, number, number, number] = [0, 0, 0, 0];
  for (const body of bodies) {
    const pick = pickFor(chart, body);
    if (pick === null) continue;
    const sizeOf = (column: Girth): number | null => {
      const size = solveLevel(columns[column], body[column], pick.index);
      return size.ok ? size.value : null;
    };
    const [bust, waist, hip] = [sizeOf("bust"), sizeOf("waist"), sizeOf("hip")];
    const moved = (size: number | null): number => (size === null ? Infinity : Math.abs(size - pick.index));
    counts.placed += 1;
    if (pick.leftAlone) counts.leftAlone += 1;
    if (moved(waist) <= 0.5) counts.waistHalf += 1;
    if (moved(waist) <= 1) counts.waistOne += 1;
    if (moved(hip) <= 0.5) counts.hipHalf += 1;
    if (moved(hip) <= 1) counts.hipOne += 1;
    if (Math.max(moved(waist), moved(hip)) <= 0.5) counts.unblended += 1;
    apart[sizesApart([bust, waist, hip])] += 1;
  }
  const share = (count: number): number => count / bodies.length;
  return {
    placed: share(counts.placed),
    bustLeftAlone: share(counts.leftAlone),
    bustLeftAloneWithin: leftAloneWithin(chart, bodies, share(counts.leftAlone)),
    waist: { half: share(counts.waistHalf), one: share(counts.waistOne) },
    hip: { half: share(counts.hipHalf), one: share(counts.hipOne) },
    unblended: share(counts.unblended),
    apart: [share(apart[0]), share(apart[1]), share(apart[2]), share(apart[3])],
  };
}

/** Whole sizes between the smallest and the largest; past two sizes off the chart counts as the most. */
function sizesApart(sizes: readonly (number | null)[]): 0 | 1 | 2 | 3 {
  const whole = sizes.map((size) => (size === null ? Infinity : Math.round(size)));
  const between = Math.max(...whole) - Math.min(...whole);
  if (between === 0) return 0;
  return between === 1 ? 1 : between === 2 ? 2 : 3;
}

function leftAloneWithin(
  chart: SizeChart,
  bodies: readonly ModelBody[],
  now: number,
): ChartShares["bustLeftAloneWithin"] {
  const doubt = invariant(BRIDGES.upperChestGirth, "bridge").doubt;
  const moved = [-doubt, doubt].map(
    (by) =>
      bodies.filter((body) => pickFor(chart, { ...body, upperChest: body.upperChest + by })?.leftAlone === true)
        .length / bodies.length,
  );
  return { least: Math.min(now, ...moved), most: Math.max(now, ...moved) };
}

const columnOf = (chart: SizeChart, column: Girth): readonly Mm[] => chart.sizes.map((size) => size[column]);

/** The chart's line: one girth by another, carried on past either end by its nearest step. */
const lineAt = (along: readonly Mm[], of: readonly Mm[], at: Mm): Mm => girthAt(of, placeOn(along, at));

/** The fractional size of a girth, carried on without end; the first that has it where sizes share it. */
function placeOn(values: readonly Mm[], wanted: Mm): number {
  const last = values.length - 2;
  for (let i = 0; i <= last; i += 1) {
    const low = invariant(values[i], "size");
    const step = invariant(values[i + 1], "size") - low;
    if (step > 0 && (wanted <= low + step || i === last)) return i + (wanted - low) / step;
  }
  // The last sizes share this girth: as far as the chart tells.
  return last + 1;
}

function beside(chart: SizeChart, of: OfChart, body: MeasuredBody, picks: Picks): BesideChart {
  const { bustGirth: bust, waistGirth: waist, hipGirth: hip, upperChestGirth } = body;
  const line = (
    along: Girth,
    at: Taken | undefined,
    level: Girth,
    value: Taken | undefined,
    distances: readonly Mm[],
  ): OffLine | null => {
    if (at === undefined || value === undefined || !reaches(chart, along, at.value)) return null;
    const off = value.value - lineAt(columnOf(chart, along), columnOf(chart, level), at.value);
    return { off, further: distances.filter((distance) => distance > Math.abs(off)).length / distances.length };
  };
  const picked = bust === undefined ? null : pickSizing(chart, bust, upperChestGirth, picks);
  const size = picked?.ok === true ? invariant(chart.sizes[picked.value.baseSize.index], "size") : null;
  return {
    baseSize:
      size === null
        ? null
        : {
            label: size.label,
            waist: waist === undefined ? null : waist.value - size.waist,
            hip: hip === undefined ? null : hip.value - size.hip,
          },
    noBaseSize: picked === null ? "noBust" : picked.ok ? null : sideOf(picked.failure),
    waistAtBust: line("bust", bust, "waist", waist, of.waistAtBust),
    hipAtWaist: line("waist", waist, "hip", hip, of.hipAtWaist),
  };
}

const sideOf = (failure: SizingFailure): BesideChart["noBaseSize"] =>
  failure.code === "plan/outside-chart" ? (failure.wanted > failure.most ? "larger" : "smaller") : null;

/** Whether the line still speaks there: as far as the planner carries a chart on. */
function reaches(chart: SizeChart, column: Girth, value: Mm): boolean {
  const values = columnOf(chart, column);
  const place = placeOn(values, value);
  return place >= -EXTRAPOLATION_STEPS && place <= values.length - 1 + EXTRAPOLATION_STEPS;
}
