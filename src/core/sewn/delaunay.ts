/**
 * Triangles over points of a plane, no point inside the circle through any three that make one (Delaunay), put in one
 * point after another. Points are taken from left to right, so that triangles whose circle lies behind are left alone.
 */
import { CoreBug, invariant } from "../result";
import { ROUNDING } from "../tolerance";
import type { Mm } from "../units";

export interface Flat {
  readonly x: Mm;
  readonly y: Mm;
}

/** Three indices into the points. */
export type Triangle = readonly [number, number, number];

interface Corner extends Flat {
  readonly index: number;
}

interface Held {
  readonly a: Corner;
  readonly b: Corner;
  readonly c: Corner;
  /** The circle through the three, its radius squared. */
  readonly x: Mm;
  readonly y: Mm;
  readonly r2: number;
}

/** How many times the extent of the points the first triangle is drawn away from them. */
const FAR_AWAY = 40;

/**
 * The triangles of the points; they cover the hull.
 *
 * @param points at least three, no two the same, not all on a line
 */
export function triangulate(points: readonly Flat[]): readonly Triangle[] {
  const corners = points.map(({ x, y }, index) => ({ x, y, index }));
  const around = triangleAround(corners);
  const done: Held[] = [];
  let open: Held[] = [around];
  for (const p of corners.toSorted((p1, p2) => p1.x - p2.x || p1.y - p2.y)) {
    const rim = new Map<string, readonly [Corner, Corner]>();
    const kept: Held[] = [];
    for (const held of open) {
      const dx = p.x - held.x;
      const dy = p.y - held.y;
      if (dx > 0 && dx * dx > held.r2) done.push(held);
      else if (dx * dx + dy * dy - held.r2 > -ROUNDING * held.r2) kept.push(held);
      else {
        toggle(rim, held.a, held.b);
        toggle(rim, held.b, held.c);
        toggle(rim, held.c, held.a);
      }
    }
    for (const [a, b] of rim.values()) {
      const fresh = circled(a, b, p);
      if (fresh !== null) kept.push(fresh);
    }
    open = kept;
  }
  const real = [...done, ...open].filter(({ a, b, c }) => a.index >= 0 && b.index >= 0 && c.index >= 0);
  return real.map(({ a, b, c }) => [a.index, b.index, c.index]);
}

/** A side met twice lies between two triangles that go; one met once is the rim of the hole. */
function toggle(rim: Map<string, readonly [Corner, Corner]>, a: Corner, b: Corner): void {
  if (!rim.delete(`${b.index} ${a.index}`)) rim.set(`${a.index} ${b.index}`, [a, b]);
}

/** The triangle with its circle, going round one way; null where the three lie on a line. */
function circled(a: Corner, b: Corner, c: Corner): Held | null {
  const bx = b.x - a.x;
  const by = b.y - a.y;
  const cx = c.x - a.x;
  const cy = c.y - a.y;
  const twice = 2 * (bx * cy - by * cx);
  const bb = bx * bx + by * by;
  const cc = cx * cx + cy * cy;
  if (Math.abs(twice) <= ROUNDING * (bb + cc)) return null;
  const x = (cy * bb - by * cc) / twice;
  const y = (bx * cc - cx * bb) / twice;
  return { a, b, c, x: a.x + x, y: a.y + y, r2: x * x + y * y };
}

function triangleAround(corners: readonly Corner[]): Held {
  const first = invariant(corners[0], "a point to triangulate");
  let [left, right, top, bottom] = [first.x, first.x, first.y, first.y];
  for (const { x, y } of corners) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  const size = FAR_AWAY * Math.max(right - left, bottom - top);
  const [x, y] = [(left + right) / 2, (top + bottom) / 2];
  const around = circled(
    { x: x - size, y: y - size, index: -1 },
    { x: x + size, y: y - size, index: -2 },
    { x, y: y + size, index: -3 },
  );
  if (around === null) throw new CoreBug("points to triangulate lie in one place");
  return around;
}
