/**
 * One girth against another as plain drawing data: surveyed bodies, the rings that hold half and nine in ten of them, the
 * pattern's sizes as a line, a standard chart, and the wearer. In units of the picture, y down; about one to a pixel.
 */
import { modelBodies, ringOf, type Girth } from "../core/bodies/modelBodies";
import type { StandardSize } from "../core/chart/standardCharts";
import type { Measured, MeasuredBody } from "../core/measures/tape";
import { MEASURE_RANGES } from "../core/measures/registry";
import type { LengthUnit } from "../core/decisions/work";
import { MM_PER_CM, MM_PER_INCH, type Mm } from "../core/units";

interface PlotPoint {
  readonly x: number;
  readonly y: number;
}

interface PlotTick {
  readonly at: number;
  readonly label: string;
}

/** Where a size's label is written; its line of writing stands on y. */
interface PlotName extends PlotPoint {
  readonly anchor: "start" | "end";
}

/** A chart's sizes as a line; `name` is null where there is no room for the label. */
export interface PlotLine {
  readonly path: string;
  readonly sizes: readonly (PlotPoint & { readonly label: string; readonly name: PlotName | null })[];
}

export interface ChartPlot {
  readonly width: number;
  readonly height: number;
  /** Where the axes stand. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly acrossTicks: readonly PlotTick[];
  readonly upTicks: readonly PlotTick[];
  readonly dots: readonly PlotPoint[];
  /** Closed lines that hold nine in ten and half of the bodies. */
  readonly rings: { readonly most: string; readonly half: string };
  /** Least and most of the ring that holds half of them, mm. */
  readonly half: { readonly across: readonly [Mm, Mm]; readonly up: readonly [Mm, Mm] };
  readonly sizes: PlotLine | null;
  /** May run out of the picture. */
  readonly standard: PlotLine | null;
  /** The wearer, and how far her tape reaches to either side, nine times in ten; null where a girth is missing or nonsense. */
  readonly wearer: (PlotPoint & { readonly reachX: number; readonly reachY: number }) | null;
}

export interface PlotInput {
  readonly across: Girth;
  readonly up: Girth;
  /** Sizes from the smallest to the largest; empty where the chart cannot be used. */
  readonly sizes: readonly StandardSize[];
  readonly standard: readonly StandardSize[];
  readonly body: MeasuredBody;
  readonly unit: LengthUnit;
}

const WIDTH = 340;
const HEIGHT = 290;
const EDGES = { left: 44, right: 322, top: 10, bottom: 246 };
const DOTS = 150;
const RINGS = { most: 0.9, half: 0.5 };

/** Nine of ten readings lie within this many standard deviations. */
const NINE_OF_TEN = 1.645;

/** Share of the span left free at each end of an axis. */
const MARGIN = 0.06;
const MOST_TICKS = 6;

const TICK_STEPS: Readonly<Record<LengthUnit, readonly Mm[]>> = {
  cm: [5, 10, 20, 50, 100].map((step) => step * MM_PER_CM),
  in: [2, 4, 10, 20, 40].map((step) => step * MM_PER_INCH),
};
const UNIT: Readonly<Record<LengthUnit, Mm>> = { cm: MM_PER_CM, in: MM_PER_INCH };
const MEASURE = { bust: "bustGirth", waist: "waistGirth", hip: "hipGirth" } as const;

type Scale = (value: Mm) => number;

interface Span {
  readonly least: Mm;
  readonly most: Mm;
}

/** The whole picture. */
export function chartPlot({ across, up, sizes, standard, body, unit }: PlotInput): ChartPlot {
  const bodies = modelBodies().slice(0, DOTS);
  const outer = ringOf(across, up, RINGS.most);
  const inner = ringOf(across, up, RINGS.half);
  const hers = saneOf(body, across, up);
  const spanOf = (girth: Girth, ring: readonly Mm[], own: Measured | undefined): Span =>
    spanOver([
      ...bodies.map((each) => each[girth]),
      ...ring,
      ...sizes.map((size) => size[girth]),
      ...(own === undefined ? [] : [own.value - reachOf(own), own.value + reachOf(own)]),
    ]);
  const acrossSpan = spanOf(
    across,
    outer.map(([a]) => a),
    hers?.across,
  );
  const upSpan = spanOf(
    up,
    outer.map(([, b]) => b),
    hers?.up,
  );
  const x = scaleOf(acrossSpan, EDGES.left, EDGES.right);
  const y = scaleOf(upSpan, EDGES.bottom, EDGES.top);
  const place = (each: Readonly<Record<Girth, Mm>>): PlotPoint => ({ x: x(each[across]), y: y(each[up]) });
  const ringPath = (ring: ReturnType<typeof ringOf>): string =>
    `${pathOf(ring.map(([a, b]) => ({ x: x(a), y: y(b) })))}Z`;
  const wearer = hers === null ? null : wearerAt(hers, x, y);
  const naming = { wearer: wearer === null ? null : around(wearer), written: [] };
  const [own, other] = isLower(standard, sizes, across, up)
    ? (["above", "below"] as const)
    : (["below", "above"] as const);
  return {
    width: WIDTH,
    height: HEIGHT,
    ...EDGES,
    acrossTicks: ticksOf(acrossSpan, unit, x),
    upTicks: ticksOf(upSpan, unit, y),
    dots: bodies.map(place),
    rings: { most: ringPath(outer), half: ringPath(inner) },
    half: { across: endsOf(inner.map(([a]) => a)), up: endsOf(inner.map(([, b]) => b)) },
    sizes: lineOf(sizes, place, { ...naming, side: own, within: PICTURE }),
    standard: lineOf(standard, place, { ...naming, side: other, within: EDGES }),
    wearer,
  };
}

const spanOver = (values: readonly Mm[]): Span => ({ least: Math.min(...values), most: Math.max(...values) });

function scaleOf({ least, most }: Span, from: number, to: number): Scale {
  const room = MARGIN * (most - least);
  return (value) => from + ((value - least + room) / (most - least + 2 * room)) * (to - from);
}

interface Hers {
  readonly across: Measured;
  readonly up: Measured;
}

function wearerAt({ across, up }: Hers, x: Scale, y: Scale): NonNullable<ChartPlot["wearer"]> {
  return {
    x: x(across.value),
    y: y(up.value),
    reachX: x(across.value + reachOf(across)) - x(across.value),
    reachY: y(up.value) - y(up.value + reachOf(up)),
  };
}

const endsOf = (values: readonly Mm[]): readonly [Mm, Mm] => [Math.min(...values), Math.max(...values)];

const around = ({ x, y, reachX, reachY }: NonNullable<ChartPlot["wearer"]>): Area => ({
  left: x - reachX,
  right: x + reachX,
  top: y - reachY,
  bottom: y + reachY,
});

/** How far a mean of readings reaches to either side, nine times in ten. */
const reachOf = ({ spread }: Measured): Mm => NINE_OF_TEN * spread;

/** Both girths, if they were taken. What no adult body measures would shrink all the rest to a point: it is left out. */
function saneOf(body: MeasuredBody, across: Girth, up: Girth): Hers | null {
  const isSane = (girth: Girth): boolean => {
    const value = body[MEASURE[girth]]?.value ?? Number.NaN;
    const { least, most } = MEASURE_RANGES[MEASURE[girth]];
    return value >= least && value <= most;
  };
  const [first, second] = [body[MEASURE[across]], body[MEASURE[up]]];
  return first === undefined || second === undefined || !isSane(across) || !isSane(up)
    ? null
    : { across: first, up: second };
}

function ticksOf({ least, most }: Span, unit: LengthUnit, scale: Scale): readonly PlotTick[] {
  const steps = TICK_STEPS[unit];
  const step = steps.find((each) => (most - least) / each <= MOST_TICKS) ?? steps.at(-1) ?? most - least;
  const first = Math.ceil(least / step);
  const count = Math.floor(most / step) - first + 1;
  return Array.from({ length: count }, (_, at) => {
    const value = (first + at) * step;
    return { at: scale(value), label: String(Math.round(value / UNIT[unit])) };
  });
}

const hundredth = (value: number): number => Math.round(value * 100) / 100;
const pathOf = (points: readonly PlotPoint[]): string =>
  points.map(({ x, y }, at) => `${at === 0 ? "M" : "L"}${hundredth(x)} ${hundredth(y)}`).join("");

/** Whether the standard's middle size lies under the pattern's line, by the pattern's size next to it. */
function isLower(standard: readonly StandardSize[], sizes: readonly StandardSize[], across: Girth, up: Girth): boolean {
  const middle = standard[Math.floor(standard.length / 2)];
  if (middle === undefined) return false;
  const [near] = sizes.toSorted((a, b) => Math.abs(a[across] - middle[across]) - Math.abs(b[across] - middle[across]));
  return near !== undefined && middle[up] - middle[across] < near[up] - near[across];
}

interface Area {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const overlap = (a: Area, b: Area): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Rough width of a letter or digit, and height of a line of writing. */
const LETTER = 7;
const WRITING = 12;

type Side = "below" | "above";

/** Below to the right of a point, or above to its left: a chart's line climbs to the right. */
const nameAt = ({ x, y }: PlotPoint, side: Side): PlotName =>
  side === "below" ? { x: x + 5, y: y + 13, anchor: "start" } : { x: x - 5, y: y - 5, anchor: "end" };

function areaOf({ x, y, anchor }: PlotName, label: string): Area {
  const width = label.length * LETTER;
  const left = anchor === "start" ? x : x - width;
  return { left, right: left + width, top: y - WRITING + 2, bottom: y + 2 };
}

const isIn = (outer: Area, { left, right, top, bottom }: Area): boolean =>
  left >= outer.left && right <= outer.right && top >= outer.top && bottom <= outer.bottom;

const PICTURE: Area = { left: 0, right: WIDTH, top: 0, bottom: HEIGHT };

interface Naming {
  /** Where names are written; to the other side only where the picture ends or the wearer stands. */
  readonly side: Side;
  readonly within: Area;
  readonly wearer: Area | null;
  /** Grows by what is written. */
  readonly written: Area[];
}

/** The line, its last size named before the others. */
function lineOf(
  sizes: readonly StandardSize[],
  place: (size: StandardSize) => PlotPoint,
  { side, within, wearer, written }: Naming,
): PlotLine | null {
  if (sizes.length === 0) return null;
  const points = sizes.map((size) => ({ ...place(size), label: size.label }));
  const names = new Map<string, PlotName>();
  const isShut = (area: Area): boolean => !isIn(within, area) || (wearer !== null && overlap(area, wearer));
  for (const point of [...points.slice(-1), ...points.slice(0, -1)]) {
    if (!isIn(within, { left: point.x, right: point.x, top: point.y, bottom: point.y })) continue;
    const first = nameAt(point, side);
    const name = isShut(areaOf(first, point.label)) ? nameAt(point, side === "below" ? "above" : "below") : first;
    const area = areaOf(name, point.label);
    if (isShut(area) || written.some((other) => overlap(area, other))) continue;
    names.set(point.label, name);
    written.push(area);
  }
  return { path: pathOf(points), sizes: points.map((point) => ({ ...point, name: names.get(point.label) ?? null })) };
}
