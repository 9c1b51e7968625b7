/** Plane geometry of the foreign nests' own: shares no code with src. mm, x from the centre to the side, y down. */

export interface XY {
  readonly x: number;
  readonly y: number;
}

/** A straight line, or a cubic where it has controls. */
export interface Segment {
  readonly a: XY;
  readonly b: XY;
  readonly c?: readonly [XY, XY];
}

export const xy = (x: number, y: number): XY => ({ x, y });
export const mix = (a: XY, b: XY, t: number): XY => xy(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t);
export const apart = (a: XY, b: XY): number => Math.hypot(b.x - a.x, b.y - a.y);
export const line = (a: XY, b: XY): Segment => ({ a, b });
export const cubic = (a: XY, c1: XY, c2: XY, b: XY): Segment => ({ a, b, c: [c1, c2] });
/** Through the points in turn, straight. */
export const lines = (...points: readonly XY[]): Segment[] =>
  points.slice(1).map((b, index) => line(points[index] ?? b, b));

export function turned(p: XY, about: XY, angle: number): XY {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [dx, dy] = [p.x - about.x, p.y - about.y];
  return xy(about.x + dx * cos - dy * sin, about.y + dx * sin + dy * cos);
}

export const mapped = (s: Segment, to: (p: XY) => XY): Segment =>
  s.c === undefined ? line(to(s.a), to(s.b)) : cubic(to(s.a), to(s.c[0]), to(s.c[1]), to(s.b));

export const backwards = (all: readonly Segment[]): Segment[] =>
  all.map((s): Segment => (s.c === undefined ? line(s.b, s.a) : cubic(s.b, s.c[1], s.c[0], s.a))).toReversed();

export function pointAt(s: Segment, t: number): XY {
  if (s.c === undefined) return mix(s.a, s.b, t);
  const u = 1 - t;
  const [w0, w1, w2, w3] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t];
  return xy(
    w0 * s.a.x + w1 * s.c[0].x + w2 * s.c[1].x + w3 * s.b.x,
    w0 * s.a.y + w1 * s.c[0].y + w2 * s.c[1].y + w3 * s.b.y,
  );
}

function speed(s: Segment, t: number): number {
  if (s.c === undefined) return apart(s.a, s.b);
  const u = 1 - t;
  const along = (a: number, c: number, d: number, b: number): number =>
    3 * (u * u * (c - a) + 2 * u * t * (d - c) + t * t * (b - d));
  return Math.hypot(along(s.a.x, s.c[0].x, s.c[1].x, s.b.x), along(s.a.y, s.c[0].y, s.c[1].y, s.b.y));
}

/** @source Gauss and Legendre, five places and their weights on -1 to 1 */
const GAUSS = [
  [0, 128 / 225],
  [Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
  [-Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
  [Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900],
  [-Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900],
] as const;
const PARTS = 6;

/** From the beginning to t. */
export function lengthTo(s: Segment, t: number): number {
  if (s.c === undefined) return apart(s.a, s.b) * t;
  const half = t / PARTS / 2;
  let sum = 0;
  for (let i = 0; i < PARTS; i += 1)
    for (const [place, weight] of GAUSS) sum += half * weight * speed(s, half * (2 * i + 1 + place));
  return sum;
}

export const lengthOf = (all: readonly Segment[]): number => all.reduce((sum, s) => sum + lengthTo(s, 1), 0);

/** Where a rising function is zero. */
export function bisect(low: number, high: number, of: (x: number) => number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 48; i += 1) {
    const middle = (a + b) / 2;
    if (of(middle) < 0) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

/** Cut in two, the shape kept (de Casteljau). */
export function cutAt(s: Segment, t: number): readonly [Segment, Segment] {
  const at = pointAt(s, t);
  if (s.c === undefined) return [line(s.a, at), line(at, s.b)];
  const [p, q, r] = [mix(s.a, s.c[0], t), mix(s.c[0], s.c[1], t), mix(s.c[1], s.b, t)];
  const [l, m] = [mix(p, q, t), mix(q, r, t)];
  return [cubic(s.a, p, l, at), cubic(at, m, r, s.b)];
}

/** A quarter of an ellipse in some cubics, leaving `a` towards `corner` and coming into `b` from it. */
export function quarter(a: XY, corner: XY, b: XY, parts: number): Segment[] {
  const centre = xy(a.x + b.x - corner.x, a.y + b.y - corner.y);
  const at = (angle: number): XY => {
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    return xy(
      centre.x + (a.x - centre.x) * cos + (b.x - centre.x) * sin,
      centre.y + (a.y - centre.y) * cos + (b.y - centre.y) * sin,
    );
  };
  const way = (angle: number): XY => {
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    return xy(-(a.x - centre.x) * sin + (b.x - centre.x) * cos, -(a.y - centre.y) * sin + (b.y - centre.y) * cos);
  };
  const step = Math.PI / 2 / parts;
  const k = (4 / 3) * Math.tan(step / 4);
  return Array.from({ length: parts }, (_, i) => {
    const [from, to] = [at(i * step), at((i + 1) * step)];
    const [leaving, coming] = [way(i * step), way((i + 1) * step)];
    return cubic(
      from,
      xy(from.x + k * leaving.x, from.y + k * leaving.y),
      xy(to.x - k * coming.x, to.y - k * coming.y),
      to,
    );
  });
}

/** A little hollow or full: off the straight by `bow` at its middle, to the right of the way it goes (negative: to the left). */
export function bowed(a: XY, b: XY, bow: number): Segment {
  const long = apart(a, b);
  const off = (4 / 3) * bow;
  const [nx, ny] = [(-(b.y - a.y) / long) * off, ((b.x - a.x) / long) * off];
  const [c1, c2] = [mix(a, b, 0.35), mix(a, b, 0.7)];
  return cubic(a, xy(c1.x + nx, c1.y + ny), xy(c2.x + nx, c2.y + ny), b);
}
