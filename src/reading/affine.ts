/** Affine maps of the plane. */

/** Maps x, y to a·x + c·y + e, b·x + d·y + f. */
export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export interface Place {
  readonly x: number;
  readonly y: number;
}

export const IDENTITY: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** First the inner map, then the outer. */
export const after = (outer: Affine, inner: Affine): Affine => ({
  a: outer.a * inner.a + outer.c * inner.b,
  b: outer.b * inner.a + outer.d * inner.b,
  c: outer.a * inner.c + outer.c * inner.d,
  d: outer.b * inner.c + outer.d * inner.d,
  e: outer.a * inner.e + outer.c * inner.f + outer.e,
  f: outer.b * inner.e + outer.d * inner.f + outer.f,
});

export const mapped = (map: Affine, { x, y }: Place): Place => ({
  x: map.a * x + map.c * y + map.e,
  y: map.b * x + map.d * y + map.f,
});

export const moving = (x: number, y: number): Affine => ({ ...IDENTITY, e: x, f: y });
export const scaling = (x: number, y: number): Affine => ({ ...IDENTITY, a: x, d: y });

/** From +x towards +y. */
export function turning(degrees: number): Affine {
  const [sine, cosine] = [sineOf(degrees), sineOf(degrees + 90)];
  return { a: cosine, b: sine, c: -sine, d: cosine, e: 0, f: 0 };
}

/** Exact at quarter turns, so that what is upright stays so. */
function sineOf(degrees: number): number {
  const within = degrees % 360;
  if (within % 180 === 0) return 0;
  if (within % 90 === 0) return within === 90 || within === -270 ? 1 : -1;
  return Math.sin((within * Math.PI) / 180);
}

/** How much longer lengths become, on the whole. */
export const growthOf = ({ a, b, c, d }: Affine): number => Math.sqrt(Math.abs(a * d - b * c));
