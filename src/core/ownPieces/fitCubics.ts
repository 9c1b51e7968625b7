/** Cubics fitted to lines that were drawn in any number of stretches; the same number in every size, split at like shares. */
import {
  cubicEdge,
  edgeLength,
  edgeParameterAtLength,
  edgePointAt,
  edgeTangentAt,
  lineEdge,
  type EdgeCurve,
} from "../geometry/edgeCurve";
import { piecePoint, polar, type PiecePoint } from "../geometry/point";
import { lineDistance } from "../geometry/segment";
import { invariant } from "../result";
import { FITTED_WITHIN, SAME_POINT, SHORTEST_EDGE } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";
import { turnAt, type Chain } from "./tracedRing";

/** Halvings of a stretch between two corners; eight curves hold what any seam does. */
const MOST_HALVINGS = 5;
/** Points of a curve that its fit is held against, and how far apart they are put on a long straight stretch; mm. */
const SAMPLES = 12;
const APART: Mm = 5;
/** Rounds in which each point finds its place along the fitted curve. */
const ROUNDS = 8;
/** A stretch shorter than this needs no more points than its ends and its middle, and one of these lengths each; mm. */
const POINT_EVERY: Mm = 3;

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
}

function follow(chain: Chain): Followed {
  const starts: Mm[] = [];
  const samples: Sample[] = [];
  let length: Mm = 0;
  for (const edge of chain) {
    starts.push(length);
    const whole = edgeLength(edge);
    const count =
      edge.curve === null
        ? Math.max(1, Math.floor(whole / (2 * APART)) * 2)
        : Math.min(SAMPLES, Math.max(2, Math.ceil(whole / POINT_EVERY)));
    samples.push({ at: edge.a, s: length });
    // Where along its length each lies need not be known exactly: it only says where to begin to look for it.
    for (let i = 1; i < count; i += 1)
      samples.push({ at: edgePointAt(edge, i / count), s: length + (whole * i) / count });
    length += whole;
  }
  samples.push({ at: invariant(chain.at(-1), "edge").b, s: length });
  return { chain, starts, length, samples };
}

/** Index of the edge that holds a length, and how far along it that lies. */
function edgeIn(one: Followed, s: Mm): { readonly edge: EdgeCurve<"piece">; readonly along: Mm } {
  let index = one.starts.findLastIndex((start) => start <= s);
  if (index < 0) index = 0;
  return { edge: invariant(one.chain[index], "edge"), along: s - invariant(one.starts[index], "start") };
}

/** The way of the line into a place or out of it. */
function wayAt(one: Followed, s: Mm, isOut: boolean): Radians {
  const beside = isOut ? s + SAME_POINT : s - SAME_POINT;
  const found = edgeIn(one, Math.min(Math.max(beside, 0), one.length - SAME_POINT));
  const { edge } = found;
  const along = Math.min(Math.max(0, found.along + s - beside), edgeLength(edge));
  return edgeTangentAt(edge, edge.curve === null ? 0 : edgeParameterAtLength(edge, along));
}

interface End {
  readonly at: PiecePoint;
  readonly s: Mm;
  readonly wayIn: Radians;
  readonly wayOut: Radians;
}

function endAt(one: Followed, share: number): End {
  const s = share * one.length;
  const { edge, along } = edgeIn(one, s);
  const at =
    share === 0
      ? invariant(one.samples[0], "point").at
      : share === 1
        ? invariant(one.samples.at(-1), "point").at
        : edgePointAt(edge, edgeParameterAtLength(edge, along));
  return { at, s, wayIn: wayAt(one, s, false), wayOut: wayAt(one, s, true) };
}

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
    // Two points or less, or all in one line, leave the lengths of the handles open: a third is what an even curve has. Much
    // shorter or longer ones would make a cusp or a loop.
    const isEven = (handle: Mm): boolean => handle > SHORTEST_HANDLE * span && handle < LONGEST_HANDLE * span;
    if (!isEven(alpha) || !isEven(beta)) [alpha, beta] = [span / 3, span / 3];
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

/** Shares of what the curve spans. */
const SHORTEST_HANDLE = 0.06;
const LONGEST_HANDLE = 0.8;

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
    const clear = Math.max(CLEAR_OF_ENDS * (to - from), (2 * SHORTEST_EDGE) / length);
    if (share < from + clear || share > to - clear) continue;
    const turn = Math.abs(turnAt(before, edge));
    if (turn > best.turn) best = { share, turn };
  }
  return best.share;
}
/** Degrees; and how near to the ends of what is split, as a share of it. */
const BENT = 0.2;
const CLEAR_OF_ENDS = 0.04;

export interface Fitted {
  /** By size: as many in each. */
  readonly edges: readonly (readonly EdgeCurve<"piece">[])[];
  /** How far each size's leave what is drawn, mm. */
  readonly off: readonly Mm[];
}

/**
 * One smooth stretch of every size as edges: as many in each, split at the same shares of their lengths.
 *
 * @param chains the stretch in each size, from one corner to the next; none is empty
 * @returns the edges of each size, within FITTED_WITHIN of what is drawn
 */
export function fitAlike(chains: readonly Chain[]): Fitted {
  const all = chains.map(follow);
  const edges: EdgeCurve<"piece">[][] = all.map(() => []);
  const furthest: Mm[] = all.map(() => 0);
  const add = (from: readonly End[], to: readonly End[], u0: number, u1: number, depth: number): void => {
    const fitted = (make: (one: Followed, a: End, b: End) => Fit): readonly Fit[] =>
      all.map((one, index) => make(one, invariant(from[index], "end"), invariant(to[index], "end")));
    const straight = fitted(straightFit);
    const isStraight = straight.every(({ off }) => off <= FITTED_WITHIN / 2);
    const fits = isStraight ? straight : fitted(cubicFit);
    // Halves too short to be sewn would be no edges. What is parted elsewhere keeps twice as much, for the smaller sizes.
    const isShort = all.some(({ length }) => (u1 - u0) * length < 2 * SHORTEST_EDGE);
    if (isStraight || isShort || fits.every(({ off }) => off <= FITTED_WITHIN) || depth >= MOST_HALVINGS) {
      for (const [index, { edge, off }] of fits.entries()) {
        invariant(edges[index], "size").push(edge);
        furthest[index] = Math.max(invariant(furthest[index], "size"), off);
      }
      return;
    }
    const worst = fits.reduce((most, { off }, index) => (off > (fits[most]?.off ?? 0) ? index : most), 0);
    const middle = bentAt(invariant(all[worst], "size"), u0, u1) ?? (u0 + u1) / 2;
    const ends = all.map((one) => endAt(one, middle));
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
  return { edges, off: furthest };
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
