/** Splines of DXF as cubics. */
import { SPLINE_FOLLOWED } from "../core/tolerance";
import type { Place } from "./affine";
import { STEPS } from "./drawingBuilder";
import type { Part, Stroke } from "./stroke";

export interface Spline {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly points: readonly Place[];
  /** One for each point; none where all count alike. */
  readonly weights: readonly number[];
  readonly closed: boolean;
}

const HIGHEST_DEGREE = 25;
/** Halvings of one stretch between two knots. */
const MOST_HALVINGS = 12;

/** A point with its weight: x and y are multiplied by it. */
interface Weighted {
  readonly x: number;
  readonly y: number;
  readonly w: number;
}

const mix = (p: Weighted, q: Weighted, share: number): Weighted => ({
  x: p.x + share * (q.x - p.x),
  y: p.y + share * (q.y - p.y),
  w: p.w + share * (q.w - p.w),
});

/**
 * A spline of degree 1, 2 or 3 without weights becomes the very same curve; any other is followed within SPLINE_FOLLOWED of
 * its size. null: its knots, points and degree do not go together.
 *
 * @param spend is called with the steps of work
 */
export function splineStroke(spline: Spline, spend: (steps: number) => void): Stroke | null {
  const { degree: p, knots, points, weights } = spline;
  const n = points.length;
  if (!Number.isInteger(p) || p < 1 || p > HIGHEST_DEGREE || n <= p || knots.length !== n + p + 1) return null;
  if (knots.some((knot, i) => !Number.isFinite(knot) || knot < (knots[i - 1] ?? -Infinity))) return null;
  if (weights.length > 0 && (weights.length !== n || !weights.every((w) => w > 0 && Number.isFinite(w)))) return null;
  const isPlain = weights.every((w) => w === weights[0]);
  const held = points.map(({ x, y }, i): Weighted => {
    const w = isPlain ? 1 : (weights[i] ?? 1);
    return { x: x * w, y: y * w, w };
  });

  const parts: Part[] = [];
  let from: Place | null = null;
  for (let span = p; span < n; span += 1) {
    const [a = 0, b = 0] = [knots[span], knots[span + 1]];
    if (!(b > a)) continue;
    spend(p * p * p + STEPS.computed);
    const polar = (args: readonly number[]): Weighted => blossom(held, knots, p, span, args);
    const bezier = Array.from({ length: p + 1 }, (_, i) =>
      polar(Array.from({ length: p }, (__, k) => (k < p - i ? a : b))),
    );
    from ??= flat(bezier[0]);
    parts.push(...(isPlain && p <= 3 ? [exact(bezier.map(flat))] : followed(bezier, sizeOf(points), spend)));
  }
  return from === null ? null : finished(from, parts, spline.closed);
}

const flat = (point: Weighted | undefined): Place =>
  point === undefined ? { x: NaN, y: NaN } : { x: point.x / point.w, y: point.y / point.w };

/** The value of the symmetric form of the spline's stretch between two knots, at p arguments. */
function blossom(
  points: readonly Weighted[],
  knots: readonly number[],
  p: number,
  span: number,
  args: readonly number[],
): Weighted {
  let row = points.slice(span - p, span + 1);
  args.forEach((t, level) => {
    const r = level + 1;
    row = row.slice(1).map((point, i) => {
      const index = span - p + r + i;
      const [low = 0, high = 0] = [knots[index], knots[index + p - r + 1]];
      return mix(row[i] ?? point, point, (t - low) / (high - low));
    });
  });
  return row[0] ?? { x: NaN, y: NaN, w: 1 };
}

/** A Bézier curve of degree 1, 2 or 3 as a part. */
function exact([p = ZERO, q = ZERO, r, s]: readonly Place[]): Part {
  if (r === undefined) return { to: q };
  if (s !== undefined) return { controls: [q, r], to: s };
  const third = (from: Place): Place => ({
    x: from.x + (2 / 3) * (q.x - from.x),
    y: from.y + (2 / 3) * (q.y - from.y),
  });
  return { controls: [third(p), third(r)], to: r };
}

const ZERO: Place = { x: 0, y: 0 };

function sizeOf(points: readonly Place[]): number {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return Math.hypot(right - left, bottom - top);
}

/** Cubics with the curve's own tangents at their ends, halved until they lie on it. */
function followed(bezier: readonly Weighted[], size: number, spend: (steps: number) => void): Part[] {
  const parts: Part[] = [];
  const halves: { readonly curve: readonly Weighted[]; readonly depth: number }[] = [{ curve: bezier, depth: 0 }];
  for (let next = halves.pop(); next !== undefined; next = halves.pop()) {
    const { curve, depth } = next;
    const degree = curve.length - 1;
    spend(degree * degree);
    const [start, second, ,] = curve;
    const [before, end] = curve.slice(-2);
    const tangent = (from: Weighted | undefined, to: Weighted | undefined, at: Weighted | undefined): Place => {
      const [p, q] = [flat(from), flat(to)];
      // The slope of a quotient: weights at both ends count against that of the end itself.
      const other = from === at ? to : from;
      const share = (degree * (other?.w ?? 1)) / (3 * (at?.w ?? 1));
      return { x: (q.x - p.x) * share, y: (q.y - p.y) * share };
    };
    const [a, b] = [flat(start), flat(end)];
    const [out, into] = [tangent(start, second, start), tangent(before, end, end)];
    const controls: readonly [Place, Place] = [
      { x: a.x + out.x, y: a.y + out.y },
      { x: b.x - into.x, y: b.y - into.y },
    ];
    const isNear = [1 / 4, 1 / 2, 3 / 4].every((t) => {
      const [p, q] = [valueAt(curve, t), cubicAt(a, controls, b, t)];
      return Math.hypot(p.x - q.x, p.y - q.y) <= SPLINE_FOLLOWED * size;
    });
    if (isNear || depth === MOST_HALVINGS) {
      parts.push({ controls, to: b });
    } else {
      const [first, last] = halved(curve);
      halves.push({ curve: last, depth: depth + 1 }, { curve: first, depth: depth + 1 });
    }
  }
  return parts;
}

function halved(curve: readonly Weighted[]): readonly [Weighted[], Weighted[]] {
  const first: Weighted[] = [];
  const last: Weighted[] = [];
  for (let row = curve; row.length > 0; row = row.slice(1).map((q, i) => mix(row[i] ?? q, q, 1 / 2))) {
    const [start, end] = [row[0], row.at(-1)];
    if (start !== undefined && end !== undefined) {
      first.push(start);
      last.unshift(end);
    }
  }
  return [first, last];
}

function valueAt(curve: readonly Weighted[], t: number): Place {
  let row = curve;
  while (row.length > 1) {
    const above = row;
    row = above.slice(1).map((q, i) => mix(above[i] ?? q, q, t));
  }
  return flat(row[0]);
}

function cubicAt(a: Place, [c, d]: readonly [Place, Place], b: Place, t: number): Place {
  const s = 1 - t;
  const of = (p: number, q: number, r: number, u: number): number =>
    s * s * s * p + 3 * s * s * t * q + 3 * s * t * t * r + t * t * t * u;
  return { x: of(a.x, c.x, d.x, b.x), y: of(a.y, c.y, d.y, b.y) };
}

function finished(from: Place, parts: readonly Part[], closed: boolean): Stroke {
  const end = parts.at(-1)?.to;
  return { from, parts, closed: closed && end !== undefined };
}

/**
 * A smooth line through points, where a spline is given by nothing else: cubics that agree in slope and bend, along the
 * chords, and that end without bend where no tangent is given. Other programs may draw another line between the points.
 */
export function throughPoints(
  points: readonly Place[],
  closed: boolean,
  ends: { readonly start: Place | null; readonly end: Place | null },
): Stroke | null {
  const apart = points.filter(({ x, y }, i) => i === 0 || x !== points[i - 1]?.x || y !== points[i - 1]?.y);
  const [first, second] = apart;
  if (first === undefined || second === undefined) return null;
  if (!closed) return { from: first, parts: smooth(apart, ends), closed: false };
  const last = apart.at(-1);
  const ring = last !== undefined && last.x === first.x && last.y === first.y ? apart.slice(0, -1) : apart;
  // What lies further off than a dozen points has no say in how the line runs.
  const round = Math.min(12, ring.length);
  const wound = [...ring.slice(-round), ...ring, ...ring.slice(0, round + 1)];
  return { from: first, parts: smooth(wound, FREE).slice(round, round + ring.length), closed: true };
}

const FREE = { start: null, end: null };

function unit(place: Place | null): Place | null {
  const length = place === null ? 0 : Math.hypot(place.x, place.y);
  return place === null || !(length > 0) ? null : { x: place.x / length, y: place.y / length };
}

function smooth(points: readonly Place[], ends: { readonly start: Place | null; readonly end: Place | null }): Part[] {
  const steps = points.slice(1).map(({ x, y }, i) => Math.hypot(x - (points[i]?.x ?? x), y - (points[i]?.y ?? y)));
  const [start, end] = [unit(ends.start), unit(ends.end)];
  const xs = slopes(
    points.map(({ x }) => x),
    steps,
    start?.x ?? null,
    end?.x ?? null,
  );
  const ys = slopes(
    points.map(({ y }) => y),
    steps,
    start?.y ?? null,
    end?.y ?? null,
  );
  return steps.map((step, i): Part => {
    const [p = ZERO, q = ZERO] = [points[i], points[i + 1]];
    return {
      controls: [
        { x: p.x + ((xs[i] ?? 0) * step) / 3, y: p.y + ((ys[i] ?? 0) * step) / 3 },
        { x: q.x - ((xs[i + 1] ?? 0) * step) / 3, y: q.y - ((ys[i + 1] ?? 0) * step) / 3 },
      ],
      to: q,
    };
  });
}

/** Slopes at the points so that the bend goes on from one stretch to the next: three in a row, solved from the top down. */
function slopes(
  values: readonly number[],
  steps: readonly number[],
  start: number | null,
  end: number | null,
): number[] {
  const last = values.length - 1;
  const rise = (i: number): number => ((values[i + 1] ?? 0) - (values[i] ?? 0)) / (steps[i] ?? 1);
  const ahead: number[] = [];
  const right: number[] = [];
  for (let i = 0; i <= last; i += 1) {
    const [h = 0, k = 0] = [steps[i - 1], steps[i]];
    const row =
      i === 0
        ? start === null
          ? { low: 0, middle: 2, high: 1, said: 3 * rise(0) }
          : { low: 0, middle: 1, high: 0, said: start }
        : i === last
          ? end === null
            ? { low: 1, middle: 2, high: 0, said: 3 * rise(last - 1) }
            : { low: 0, middle: 1, high: 0, said: end }
          : { low: k, middle: 2 * (h + k), high: h, said: 3 * (k * rise(i - 1) + h * rise(i)) };
    const pivot = row.middle - row.low * (ahead[i - 1] ?? 0);
    ahead.push(row.high / pivot);
    right.push((row.said - row.low * (right[i - 1] ?? 0)) / pivot);
  }
  const found: number[] = [];
  for (let i = last; i >= 0; i -= 1) found[i] = (right[i] ?? 0) - (ahead[i] ?? 0) * (found[i + 1] ?? 0);
  return found;
}
