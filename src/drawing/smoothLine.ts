/** Smooth lines through a few places of a drawing. */
import type { Mm } from "../core/units";
import type { Spot } from "./figure";

/** So many stretches between two places. */
const STRETCHES = 10;

/**
 * How far out at a height, between heights given, without overshooting any of them; held beyond the first and the last.
 *
 * @source monotone cubic interpolation (Fritsch and Carlson)
 */
export function smoothOut(places: readonly Spot[]): (y: Mm) => Mm {
  const sorted = places.toSorted((p, q) => p.y - q.y).filter(({ y }, i, all) => i === 0 || y > (all[i - 1]?.y ?? y));
  const slopes = sorted.slice(1).map((to, i) => {
    const from = sorted[i] ?? to;
    return (to.x - from.x) / (to.y - from.y);
  });
  const tangents = sorted.map((_, i) => {
    const [before, after] = [slopes[i - 1], slopes[i]];
    if (before === undefined || after === undefined) return before ?? after ?? 0;
    return before * after <= 0 ? 0 : (2 * before * after) / (before + after);
  });
  return (y) => {
    const [first, last] = [sorted[0], sorted.at(-1)];
    if (first === undefined || last === undefined) return 0;
    if (y <= first.y) return first.x;
    if (y >= last.y) return last.x;
    const i = sorted.findLastIndex((place) => place.y <= y);
    const [from, to] = [sorted[i] ?? first, sorted[i + 1] ?? last];
    const span = to.y - from.y;
    const t = (y - from.y) / span;
    const [m0, m1] = [(tangents[i] ?? 0) * span, (tangents[i + 1] ?? 0) * span];
    return (
      (2 * t ** 3 - 3 * t ** 2 + 1) * from.x +
      (t ** 3 - 2 * t ** 2 + t) * m0 +
      (3 * t ** 2 - 2 * t ** 3) * to.x +
      (t ** 3 - t ** 2) * m1
    );
  };
}

/** A smooth line through places in their order, whichever way it turns. */
export function smoothThrough(places: readonly Spot[]): readonly Spot[] {
  const at = (index: number): Spot => places[Math.min(Math.max(index, 0), places.length - 1)] ?? { x: 0, y: 0 };
  const spots: Spot[] = places.slice(0, 1);
  for (let i = 0; i + 1 < places.length; i += 1) {
    const [a, b, c, d] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    for (let step = 1; step <= STRETCHES; step += 1) {
      const t = step / STRETCHES;
      const through = (p: number, q: number, r: number, s: number): number =>
        (2 * q + (r - p) * t + (2 * p - 5 * q + 4 * r - s) * t * t + (3 * q - p - 3 * r + s) * t ** 3) / 2;
      spots.push({ x: through(a.x, b.x, c.x, d.x), y: through(a.y, b.y, c.y, d.y) });
    }
  }
  return spots;
}
