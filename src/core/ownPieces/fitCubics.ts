/** Cubics fitted to lines that were drawn in any number of stretches; the same number in every size, split at like shares. */
import {
  cubicEdge,
  edgeLength,
  edgeNearest,
  edgeParameterAtLength,
  edgePointAt,
  edgeTangentAt,
  lineEdge,
  type EdgeCurve,
} from "../geometry/edgeCurve";
import { distance, piecePoint, polar, type PiecePoint } from "../geometry/point";
import { lineDistance, segmentNearest } from "../geometry/segment";
import { invariant } from "../result";
import { FITTED_WITHIN, SAME_POINT } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";
import { sagittaOf, turnAt, type Chain } from "./tracedRing";

/** Halvings of a stretch between two corners; eight curves hold what any seam does. */
const MOST_HALVINGS = 5;
/** Points of a curve that its fit is held against, and how far apart they are put on a long straight stretch; mm. */
const SAMPLES = 12;
const APART: Mm = 5;
/** Rounds in which each point finds its place along the fitted curve. */
const ROUNDS = 8;
/** A straight stretch longer than this says itself which way it goes; mm. */
const SAYS_ITS_WAY: Mm = 15;
/** Points that the way at a place is taken from. */
const BESIDE = 5;

interface Sample {
  readonly at: PiecePoint;
  readonly s: Mm;
}

/** One stretch of one size, smooth all along. */
interface Followed {
  readonly chain: Chain;
  readonly starts: readonly Mm[];
  readonly length: Mm;
  /** Ends of edges, and points of curves between them. */
  readonly samples: readonly Sample[];
  /** Where stretches meet that stand for a curve. */
  readonly vertices: readonly Sample[];
  /** How far the drawn line may itself leave the curve that it stands for; mm. */
  readonly sagitta: Mm;
}

function follow(chain: Chain): Followed {
  const starts: Mm[] = [];
  const samples: Sample[] = [];
  const vertices: Sample[] = [];
  let length: Mm = 0;
  let sagitta: Mm = 0;
  for (const [index, edge] of chain.entries()) {
    starts.push(length);
    const whole = edgeLength(edge);
    const next = chain[index + 1];
    vertices.push({ at: edge.a, s: length });
    samples.push({ at: edge.a, s: length });
    if (edge.curve === null) {
      const more = Math.floor(whole / (2 * APART)) * 2;
      for (let i = 1; i < more; i += 1)
        samples.push({ at: edgePointAt(edge, i / more), s: length + (whole * i) / more });
      if (next?.curve === null) {
        const chord = Math.min(whole, distance(next.a, next.b));
        sagitta = Math.max(sagitta, sagittaOf(chord, turnAt(edge, next)));
      }
    } else {
      for (let i = 1; i < SAMPLES; i += 1) {
        const s = (whole * i) / SAMPLES;
        samples.push({ at: edgePointAt(edge, edgeParameterAtLength(edge, s)), s: length + s });
      }
    }
    length += whole;
  }
  const end = invariant(chain.at(-1), "edge").b;
  samples.push({ at: end, s: length });
  vertices.push({ at: end, s: length });
  return { chain, starts, length, samples, vertices, sagitta };
}

/** Index of the edge that holds a length, and how far along it that lies. */
function edgeIn(one: Followed, s: Mm): { readonly edge: EdgeCurve<"piece">; readonly along: Mm } {
  let index = one.starts.findLastIndex((start) => start <= s);
  if (index < 0) index = 0;
  return { edge: invariant(one.chain[index], "edge"), along: s - invariant(one.starts[index], "start") };
}

/** The place at a share of the stretch: a vertex of the drawn line where one is near, since those are what is drawn. */
function placeAt(one: Followed, share: number): Sample {
  const s = share * one.length;
  const { edge, along } = edgeIn(one, s);
  if (edge.curve === null) {
    const near = along < edgeLength(edge) / 2 ? s - along : s - along + edgeLength(edge);
    const vertex = one.vertices.find((v) => Math.abs(v.s - near) <= SAME_POINT);
    if (vertex !== undefined && edgeLength(edge) < SAYS_ITS_WAY && vertex.s > 0 && vertex.s < one.length) return vertex;
  }
  return { at: edgePointAt(edge, edgeParameterAtLength(edge, along)), s };
}

/** The way of the line into a place or out of it: of the curve that is drawn, or of a parabola through the points about it. */
function wayAt(one: Followed, s: Mm, isOut: boolean): Radians {
  const beside = isOut ? s + SAME_POINT : s - SAME_POINT;
  const found = edgeIn(one, Math.min(Math.max(beside, 0), one.length - SAME_POINT));
  const { edge } = found;
  const along = Math.max(0, found.along + s - beside);
  const whole = edgeLength(edge);
  if (edge.curve !== null) return edgeTangentAt(edge, edgeParameterAtLength(edge, Math.min(along, whole)));
  if (whole > SAYS_ITS_WAY || one.vertices.length < 3) return edgeTangentAt(edge, 0);
  const nearest = one.vertices
    .toSorted((p, q) => Math.abs(p.s - s) - Math.abs(q.s - s))
    .slice(0, Math.min(BESIDE, one.vertices.length));
  const [vx, vy] = [
    slopeAt(nearest.map(({ s: at, at: p }) => [at - s, p.x])),
    slopeAt(nearest.map(({ s: at, at: p }) => [at - s, p.y])),
  ];
  return radians(Math.atan2(vy, vx));
}

/** Slope at 0 of the parabola that comes nearest to some points; of the straight line through two. */
function slopeAt(points: readonly (readonly [number, number])[]): number {
  const scale = Math.max(...points.map(([x]) => Math.abs(x))) || 1;
  let [s0, s1, s2, s3, s4, t0, t1, t2] = [0, 0, 0, 0, 0, 0, 0, 0];
  for (const [x, y] of points) {
    const u = x / scale;
    s0 += 1;
    s1 += u;
    s2 += u * u;
    s3 += u * u * u;
    s4 += u * u * u * u;
    t0 += y;
    t1 += u * y;
    t2 += u * u * y;
  }
  if (points.length < 3) return (s0 * t1 - s1 * t0) / (s0 * s2 - s1 * s1) / scale;
  const det = s0 * (s2 * s4 - s3 * s3) - s1 * (s1 * s4 - s3 * s2) + s2 * (s1 * s3 - s2 * s2);
  const b = s0 * (t1 * s4 - s3 * t2) - t0 * (s1 * s4 - s3 * s2) + s2 * (s1 * t2 - t1 * s2);
  return b / det / scale;
}

interface End {
  readonly at: PiecePoint;
  readonly s: Mm;
  readonly wayIn: Radians;
  readonly wayOut: Radians;
}

const endAt = (one: Followed, share: number): End => {
  const place =
    share === 0
      ? { at: invariant(one.samples[0], "point").at, s: 0 }
      : share === 1
        ? { at: invariant(one.samples.at(-1), "point").at, s: one.length }
        : placeAt(one, share);
  return { ...place, wayIn: wayAt(one, place.s, false), wayOut: wayAt(one, place.s, true) };
};

const endBetween = (one: Followed, s: Mm): End => {
  const { edge, along } = edgeIn(one, s);
  const at = edgePointAt(edge, edgeParameterAtLength(edge, along));
  return { at, s, wayIn: wayAt(one, s, false), wayOut: wayAt(one, s, true) };
};

interface Fit {
  readonly edge: EdgeCurve<"piece">;
  /** Furthest that a point of the drawn line lies off it, mm. */
  readonly off: Mm;
}

const samplesBetween = (one: Followed, from: End, to: End): readonly Sample[] =>
  one.samples.filter(({ s }) => s > from.s + SAME_POINT && s < to.s - SAME_POINT);

function straightFit(one: Followed, from: End, to: End): Fit {
  let off: Mm = 0;
  for (const { at } of samplesBetween(one, from, to)) off = Math.max(off, Math.abs(lineDistance(at, from.at, to.at)));
  return { edge: lineEdge(from.at, to.at), off };
}

/**
 * The cubic with the given ways at its ends that comes nearest to the points between.
 *
 * @source least squares on chord length, each point's parameter bettered by a step of Newton's: Schneider, Graphics Gems I
 */
function cubicFit(one: Followed, from: End, to: End): Fit {
  const between = samplesBetween(one, from, to);
  const span = to.s - from.s;
  let at = between.map(({ s }) => (s - from.s) / span);
  const [ux, uy] = [Math.cos(from.wayOut), Math.sin(from.wayOut)];
  const [vx, vy] = [-Math.cos(to.wayIn), -Math.sin(to.wayIn)];
  let best: Fit = { edge: lineEdge(from.at, to.at), off: Infinity };
  for (let round = 0; round < ROUNDS; round += 1) {
    let [c00, c01, c11, x0, x1] = [0, 0, 0, 0, 0];
    for (const [index, { at: p }] of between.entries()) {
      const t = invariant(at[index], "parameter");
      const r = 1 - t;
      const [b0, b1, b2, b3] = [r * r * r, 3 * r * r * t, 3 * r * t * t, t * t * t];
      const dx = p.x - (from.at.x * (b0 + b1) + to.at.x * (b2 + b3));
      const dy = p.y - (from.at.y * (b0 + b1) + to.at.y * (b2 + b3));
      c00 += b1 * b1;
      c01 += b1 * b2 * (ux * vx + uy * vy);
      c11 += b2 * b2;
      x0 += b1 * (dx * ux + dy * uy);
      x1 += b2 * (dx * vx + dy * vy);
    }
    const det = c00 * c11 - c01 * c01;
    let [alpha, beta] = [(x0 * c11 - x1 * c01) / det, (c00 * x1 - c01 * x0) / det];
    // Two points or less, or all in one line, leave the lengths of the handles open: a third is what an even curve has.
    if (!(alpha > 0 && beta > 0 && alpha < span && beta < span)) [alpha, beta] = [span / 3, span / 3];
    const edge = cubicEdge({
      a: from.at,
      c1: polar(from.at, from.wayOut, alpha),
      c2: polar(to.at, radians(to.wayIn + Math.PI), beta),
      b: to.at,
    });
    const near = between.map(({ at: p }, index) => stepNearer(edge, p, invariant(at[index], "parameter")));
    const off = near.reduce((most, { off: by }) => Math.max(most, by), 0);
    if (off < best.off) best = { edge, off };
    else if (round > 1) break;
    at = near.map(({ t }) => t);
  }
  return best;
}

/** A step of Newton's to the nearest place of a curve, and how far off the point then is. */
function stepNearer(edge: EdgeCurve<"piece">, p: PiecePoint, from: number): { readonly t: number; readonly off: Mm } {
  const c = invariant(edge.curve, "curve");
  const { a, b } = edge;
  let t = from;
  let off = Infinity;
  for (let step = 0; step < 3; step += 1) {
    const r = 1 - t;
    const x = r * r * r * a.x + 3 * r * r * t * c.c1.x + 3 * r * t * t * c.c2.x + t * t * t * b.x - p.x;
    const y = r * r * r * a.y + 3 * r * r * t * c.c1.y + 3 * r * t * t * c.c2.y + t * t * t * b.y - p.y;
    off = Math.hypot(x, y);
    const dx = 3 * (r * r * (c.c1.x - a.x) + 2 * r * t * (c.c2.x - c.c1.x) + t * t * (b.x - c.c2.x));
    const dy = 3 * (r * r * (c.c1.y - a.y) + 2 * r * t * (c.c2.y - c.c1.y) + t * t * (b.y - c.c2.y));
    const speed = dx * dx + dy * dy;
    if (speed === 0) break;
    t = Math.min(1, Math.max(0, t - (x * dx + y * dy) / speed));
  }
  return { t, off };
}

/** Where a line turns most between two shares, though by too little for a corner: a share of it; null where it does not turn at once. */
function bentAt({ chain, starts, length }: Followed, from: number, to: number): number | null {
  let best: { share: number | null; turn: number } = { share: null, turn: BENT };
  for (const [index, edge] of chain.entries()) {
    const before = chain[index - 1];
    const share = invariant(starts[index], "start") / length;
    if (before === undefined || (before.curve === null && edge.curve === null)) continue;
    const clear = CLEAR_OF_ENDS * (to - from);
    if (share < from + clear || share > to - clear) continue;
    const turn = Math.abs(turnAt(before, edge));
    if (turn > best.turn) best = { share, turn };
  }
  return best.share;
}
/** Degrees; and how near to the ends of what is split, as a share of it. */
const BENT = 0.2;
const CLEAR_OF_ENDS = 0.04;

/**
 * One smooth stretch of every size as edges: as many in each, split at the same shares of their lengths.
 *
 * @param chains the stretch in each size, from one corner to the next; none is empty
 * @returns the edges of each size, within FITTED_WITHIN of what is drawn, or of what a line in short stretches stands for
 */
export function fitAlike(chains: readonly Chain[]): readonly (readonly EdgeCurve<"piece">[])[] {
  const all = chains.map(follow);
  const found: EdgeCurve<"piece">[][] = all.map(() => []);
  const add = (from: readonly End[], to: readonly End[], u0: number, u1: number, depth: number): void => {
    const isGood = (fits: readonly Fit[]): boolean =>
      fits.every(({ off }, index) => off <= Math.max(FITTED_WITHIN, invariant(all[index], "size").sagitta));
    const fitted = (make: (one: Followed, a: End, b: End) => Fit): readonly Fit[] =>
      all.map((one, index) => make(one, invariant(from[index], "end"), invariant(to[index], "end")));
    const straight = fitted(straightFit);
    const isStraight = straight.every(({ off }) => off <= FITTED_WITHIN / 2);
    const curved = isStraight ? straight : fitted(cubicFit);
    if (isStraight || isGood(curved) || depth >= MOST_HALVINGS) {
      for (const [index, { edge }] of curved.entries()) invariant(found[index], "size").push(edge);
      return;
    }
    const worst = curved.reduce((most, { off }, index) => (off > (curved[most]?.off ?? 0) ? index : most), 0);
    const middle = bentAt(invariant(all[worst], "size"), u0, u1) ?? (u0 + u1) / 2;
    const ends = all.map((one, index) => {
      const [a, b] = [invariant(from[index], "end").s, invariant(to[index], "end").s];
      const end = endAt(one, middle);
      // Taken to a vertex it can come to lie on an end of the stretch: then it is the middle of what is drawn between those.
      const clear = CLEAR_OF_ENDS * (b - a);
      return end.s > a + clear && end.s < b - clear ? end : endBetween(one, (a + b) / 2);
    });
    add(from, ends, u0, middle, depth + 1);
    add(ends, to, middle, u1, depth + 1);
  };
  add(
    all.map((one) => endAt(one, 0)),
    all.map((one) => endAt(one, 1)),
    0,
    1,
    0,
  );
  return found;
}

/** How far two lines between the same ends leave each other at the most, seen from either; mm. */
export function deviationBetween(drawn: Chain, made: Chain): Mm {
  let most: Mm = 0;
  for (const [one, other] of [
    [drawn, made],
    [made, drawn],
  ] as const) {
    for (const edge of one) {
      const count = edge.curve === null ? Math.min(8, 1 + Math.floor(edgeLength(edge) / APART)) : SAMPLES;
      for (let i = 0; i < count; i += 1) most = Math.max(most, distanceTo(other, edgePointAt(edge, i / count), most));
    }
  }
  return most;
}

/** Distance of a point from a chain; once under what is already known to be the most, it is not followed to the end. */
function distanceTo(chain: Chain, p: PiecePoint, most: Mm): Mm {
  let least: Mm = Infinity;
  for (const edge of chain) {
    const by = edge.curve === null ? segmentNearest(edge.a, edge.b, p).distance : edgeNearest(edge, p).distance;
    least = Math.min(least, by);
    if (least <= most) return least;
  }
  return least;
}

/** A straight edge as a cubic, where other sizes have a curve. */
export const asCubic = ({ a, b, curve }: EdgeCurve<"piece">): EdgeCurve<"piece"> =>
  curve !== null
    ? { a, b, curve }
    : {
        a,
        b,
        curve: {
          c1: piecePoint(a.x + (b.x - a.x) / 3, a.y + (b.y - a.y) / 3),
          c2: piecePoint(a.x + ((b.x - a.x) * 2) / 3, a.y + ((b.y - a.y) * 2) / 3),
        },
      };
