/** Parts of cubic Béziers. */
import { cubicPointAt, type Cubic } from "./bezier";
import { between, type Frame, type Point } from "./point";

/**
 * The curve cut in two at parameter t (0..1). Both parts follow it exactly and share the cut as one point; the outer
 * ends are the very points of the curve.
 *
 * @source de Casteljau's construction
 */
export function cubicSplit<F extends Frame>(c: Cubic<F>, t: number): readonly [Cubic<F>, Cubic<F>] {
  const p = between(c.a, c.c1, t);
  const q = between(c.c1, c.c2, t);
  const r = between(c.c2, c.b, t);
  const pq = between(p, q, t);
  const qr = between(q, r, t);
  const cut = between(pq, qr, t);
  return [
    { a: c.a, c1: p, c2: pq, b: cut },
    { a: cut, c1: qr, c2: r, b: c.b },
  ];
}

/**
 * The part of the curve from parameter t0 to t1; backwards when t1 is before t0. An end at parameter 0 or 1 is the
 * very end point of the curve.
 *
 * @source the control points of [t0, t1] are the blossom at (t0,t0,t0), (t0,t0,t1), (t0,t1,t1), (t1,t1,t1): Ramshaw 1987
 */
export function cubicPart<F extends Frame>(c: Cubic<F>, t0: number, t1: number): Cubic<F> {
  return {
    a: endAt(c, t0),
    c1: blossom(c, t0, t0, t1),
    c2: blossom(c, t0, t1, t1),
    b: endAt(c, t1),
  };
}

const endAt = <F extends Frame>(c: Cubic<F>, t: number): Point<F> =>
  t === 0 ? c.a : t === 1 ? c.b : cubicPointAt(c, t);

function blossom<F extends Frame>(c: Cubic<F>, t: number, u: number, v: number): Point<F> {
  const p = between(c.a, c.c1, t);
  const q = between(c.c1, c.c2, t);
  const r = between(c.c2, c.b, t);
  return between(between(p, q, u), between(q, r, u), v);
}
