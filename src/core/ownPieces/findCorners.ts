/**
 * Which corner of a traced outline is which: of all places where it turns, those that together come nearest to what the piece
 * usually looks like, or to how another size of it was read. A proposal, put right by hand.
 *
 * @source dynamic programming along the ring: the best way to a corner goes on from the best way to the one before
 */
import { extentOf } from "../geometry/bounds";
import { piecePoint, type PiecePoint } from "../geometry/point";
import { invariant } from "../result";
import { ROUNDING } from "../tolerance";
import type { PointName } from "../pattern/piece";
import type { Mm } from "../units";
import type { ShapeCorner } from "./pieceShapes";
import { flattened, jointsOf, wayFrom, wrapped, type TracedRing } from "./tracedRing";

/** A place that may be a corner. */
export interface Candidate {
  readonly s: Mm;
  readonly at: PiecePoint;
  /** Degrees, over a few millimetres either way. */
  readonly turn: number;
  /** A corner as drawn, not only a bend. */
  readonly sharp: boolean;
  /** Beside a dart: its mouth ends turn, and are no corners of the piece. */
  readonly atDart: boolean;
}

/** Over how far a turn is seen, and from where on it is one; mm and degrees. */
const SEEN_OVER: Mm = 7;
const SHARP = 8;
const BEND = 22;
/** Bends nearer than this to a corner are the corner; mm. */
const CLEAR: Mm = 9;
const STEP: Mm = 2;
const MOST_CANDIDATES = 36;
/** A longer way round than so many steps, ten metres, is walked in longer ones: no piece has it. */
const MOST_STEPS = 5000;

/** Places round the ring where it turns, in order. */
export function candidatesOf(ring: TracedRing, dartEnds: readonly Mm[]): readonly Candidate[] {
  const table = flattened(ring, TABLE);
  const [flatBefore, flat, flatAfter] = [walkEvenly(ring, table), walkEvenly(ring, table), walkEvenly(ring, table)];
  const turnNear = (s: Mm): number => {
    const [before, here, after] = [flatBefore(s - SEEN_OVER), flat(s), flatAfter(s + SEEN_OVER)];
    const [ax, ay, bx, by] = [here.x - before.x, here.y - before.y, after.x - here.x, after.y - here.y];
    return (Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * 180) / Math.PI;
  };
  const isAtDart = (s: Mm): boolean =>
    dartEnds.some((end) => Math.min(wayFrom(ring, end, s), wayFrom(ring, s, end)) < STEP);
  const found: Candidate[] = [];
  for (const joint of jointsOf(ring)) {
    if (joint.smooth || Math.abs(joint.turn) < SHARP) continue;
    const at = invariant(ring.edges[joint.edge], "edge").a;
    found.push({ s: joint.s, at, turn: turnNear(joint.s), sharp: true, atDart: isAtDart(joint.s) });
  }
  const count = Math.min(MOST_STEPS, Math.floor(ring.length / STEP));
  const step = ring.length < STEP * MOST_STEPS ? STEP : ring.length / count;
  const mayBend = bendingIn(ring, table);
  // What bends so little that it is no bend is not worked out.
  const turns = Array.from({ length: count }, (_, index) => (mayBend(index * step) ? turnNear(index * step) : 0));
  const isClear = (s: Mm): boolean =>
    found.every((one) => Math.min(wayFrom(ring, one.s, s), wayFrom(ring, s, one.s)) > CLEAR);
  const bends: Candidate[] = [];
  for (const [index, turn] of turns.entries()) {
    const by = Math.abs(turn);
    if (by < BEND) continue;
    const [before, after] = [turns.at(index - 1) ?? 0, turns[(index + 1) % count] ?? 0];
    if (by < Math.abs(before) || by <= Math.abs(after)) continue;
    const s = index * step;
    if (isClear(s)) bends.push({ s, at: flat(s), turn, sharp: false, atDart: isAtDart(s) });
  }
  return [...found, ...bends]
    .toSorted((p, q) => Math.abs(q.turn) - Math.abs(p.turn))
    .slice(0, MOST_CANDIDATES)
    .toSorted((p, q) => p.s - q.s);
}

/** A ring as straight stretches. */
type Table = ReturnType<typeof flattened>;

/**
 * Whether the ring may turn as much as a bend, seen from a place that lies further on than the last that was asked: its way from
 * the first to the last that is seen can't turn by more than all its corners there together. Over its start it always may.
 */
function bendingIn(ring: TracedRing, { points, s }: Table): (at: Mm) => boolean {
  const from = (index: number): Mm => s[index] ?? ring.length;
  let [first, beyond, sum] = [0, 1, 0];
  const turns = points.map((here, index) => {
    const [before, after] = [invariant(points.at(index - 1), "point"), points[(index + 1) % points.length] ?? here];
    const [ax, ay, bx, by] = [here.x - before.x, here.y - before.y, after.x - here.x, after.y - here.y];
    return (Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) * 180) / Math.PI;
  });
  return (at) => {
    for (; beyond < s.length && from(beyond) < at + SEEN_OVER; beyond += 1) sum += invariant(turns[beyond], "turn");
    for (; first + 1 < beyond && from(first + 1) <= at - SEEN_OVER; first += 1)
      sum -= invariant(turns[first + 1], "turn");
    return at <= SEEN_OVER || at + SEEN_OVER >= ring.length || sum > BEND / 2;
  };
}

/** Places on the ring by a table, to within what a turn over some millimetres can tell: quick where each lies near the one before. */
function walkEvenly(ring: TracedRing, { points, s }: Table = flattened(ring, TABLE)): (s: Mm) => PiecePoint {
  const from = (index: number): Mm => s[index] ?? ring.length;
  let low = 0;
  return (at) => {
    const on = wrapped(ring, at);
    for (; low + 1 < s.length && from(low + 1) <= on; low += 1);
    for (; low > 0 && from(low) > on; low -= 1);
    const [a, b] = [invariant(points[low], "point"), invariant(points[(low + 1) % points.length], "point")];
    const [start, end] = [from(low), from(low + 1)];
    const share = end === start ? 0 : (on - start) / (end - start);
    return piecePoint(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share);
  };
}

/** How near the table is to the ring, mm. */
const TABLE: Mm = 0.05;

/** How far each may be off for a cost of 1. */
export interface Slack {
  readonly turn: number;
  readonly way: number;
  readonly place: number;
}

/** Against what a piece usually looks like. */
export const USUAL_SLACK: Slack = { turn: 35, way: 18, place: 0.18 };
/** Against another size of the very same piece. */
export const SIZE_SLACK: Slack = { turn: 12, way: 5, place: 0.05 };

export interface FoundCorner {
  readonly name: PointName;
  readonly s: Mm;
}

export interface FoundCorners {
  readonly corners: readonly FoundCorner[];
  /** Of all corners and seams together, by corner: about 1 where each is as far off as it may be. */
  readonly cost: number;
}

/** What a corner that is passed over costs, by its turn in degrees. */
const passedOver = ({ turn, atDart, sharp }: Candidate): number =>
  atDart || Math.abs(turn) < 30 ? 0 : (Math.abs(turn) / 60) ** 2 * (sharp ? 1 : 0.3);
/** Seams that may have corners of their own. */
const MAY_TURN: ReadonlySet<string> = new Set(["neck", "hem"]);
const AT_DART = 3;

/**
 * Finds the corners.
 *
 * @param fixed corners that are known, by name
 * @returns null where there are fewer places than corners
 */
export function findCorners(
  ring: TracedRing,
  places: readonly Candidate[],
  wanted: readonly ShapeCorner[],
  slack: Slack,
  fixed: ReadonlyMap<PointName, Mm> = new Map(),
): FoundCorners | null {
  const sought = soughtAmong(withFixed(ring, places, fixed), boxOfRing(ring), wanted, slack, fixed);
  return sought === null ? null : sought.find(Infinity);
}

/** What lies in the box that places of corners are told in. */
export const boxPoints = (ring: TracedRing): readonly PiecePoint[] => flattened(ring, BOXED).points;
const boxOfRing = (ring: TracedRing): Box => extentOf(boxPoints(ring));
/** How near the box is to the ring, mm. */
const BOXED: Mm = 1;

interface Box {
  readonly x: Mm;
  readonly y: Mm;
  readonly width: Mm;
  readonly height: Mm;
}

/** Corners to be found among places. */
export interface SoughtCorners {
  /** They cost no less than this: each corner by itself where it looks most like it, and no seam anything. */
  readonly costAtLeast: number;
  /** The cheapest; null where they would cost more than asked. */
  readonly find: (atMost: number) => FoundCorners | null;
}

/**
 * Corners to be found among places in their order round a ring.
 *
 * @returns null where there are fewer places than corners
 */
export function soughtAmong(
  candidates: readonly Candidate[],
  box: Box,
  wanted: readonly ShapeCorner[],
  slack: Slack,
  fixed: ReadonlyMap<PointName, Mm> = new Map(),
): SoughtCorners | null {
  const count = candidates.length;
  if (count < wanted.length || wanted.length === 0) return null;
  const cornerCost = wanted.map((corner) => {
    const at = fixed.get(corner.name);
    return candidates.map((place) => {
      if (at !== undefined) return Math.abs(place.s - at) < FIXED_AT ? 0 : Infinity;
      const turn = (place.turn - corner.turn) / slack.turn;
      const x = ((place.at.x - box.x) / box.width - corner.x) / slack.place;
      const y = ((place.at.y - box.y) / box.height - corner.y) / slack.place;
      return turn * turn + (x * x + y * y) / 2 + (place.atDart ? AT_DART : 0);
    });
  });
  // What is still to come from each corner on, at the least.
  const rest = [0];
  for (const costs of cornerCost.toReversed()) rest.unshift(invariant(rest[0], "rest") + Math.min(...costs));
  return {
    costAtLeast: (invariant(rest[0], "rest") * (1 - ROUNDING)) / wanted.length,
    find: (atMost) => cheapest(candidates, wanted, slack, { cornerCost, rest, atMost }),
  };
}

function cheapest(
  candidates: readonly Candidate[],
  wanted: readonly ShapeCorner[],
  slack: Slack,
  {
    cornerCost,
    rest,
    atMost,
  }: {
    readonly cornerCost: readonly (readonly number[])[];
    readonly rest: readonly number[];
    readonly atMost: number;
  },
): FoundCorners | null {
  const count = candidates.length;
  // What lies between two places, passed over; sums round twice, so that a stretch over the start is one too.
  const passed = [0];
  for (let i = 0; i < 2 * count; i += 1)
    passed.push(invariant(passed[i], "sum") + passedOver(invariant(candidates[i % count], "place")));
  const seams = wanted.map((corner): SeamCosts => {
    const known = new Float64Array(count * (count + 1)).fill(NaN);
    return (from, steps) => {
      const start = from % count;
      const key = start * (count + 1) + steps;
      const before = invariant(known[key], "cost");
      if (!Number.isNaN(before)) return before;
      const [a, b] = [
        invariant(candidates[start], "place").at,
        invariant(candidates[(start + steps) % count], "place").at,
      ];
      const way = (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI;
      const off = (((way - corner.way + 900) % 360) - 180) / slack.way;
      const over = invariant(passed[start + steps], "sum") - invariant(passed[start + 1], "sum");
      const cost = off * off + (MAY_TURN.has(corner.seam) ? over / 4 : over);
      known[key] = cost;
      return cost;
    };
  });
  let best: { readonly cost: number; readonly picks: readonly number[] } = { cost: Infinity, picks: [] };
  for (let start = 0; start < count; start += 1) {
    const first = invariant(invariant(cornerCost[0], "costs")[start], "cost");
    if (first >= Math.min(best.cost, FIRST_AT_MOST)) continue;
    const found = bestFrom(start, first);
    if (found.cost < best.cost) best = found;
  }
  if (best.picks.length === 0 || best.cost / wanted.length > atMost) return null;
  return {
    cost: best.cost / wanted.length,
    corners: wanted.map(({ name }, k) => ({
      name,
      s: invariant(candidates[invariant(best.picks[k], "pick")], "place").s,
    })),
  };

  /** Whether a way that has come to a corner for so much can't be the best: with what is still to come, even the least, it is dearer. */
  function isTooDear(cost: number, k: number): boolean {
    const least = (cost + invariant(rest[k + 1], "rest")) * (1 - ROUNDING);
    return least >= best.cost || least / wanted.length > atMost;
  }

  function bestFrom(start: number, first: number): { readonly cost: number; readonly picks: readonly number[] } {
    let row = Array.from({ length: count }, (_, j) => (j === 0 && !isTooDear(first, 0) ? first : Infinity));
    const back: number[][] = [];
    for (let k = 1; k < wanted.length; k += 1) {
      const [costs, seam] = [invariant(cornerCost[k], "costs"), invariant(seams[k - 1], "seam")];
      const next = Array.from({ length: count }, () => Infinity);
      const from = Array.from({ length: count }, () => 0);
      for (let i = k - 1; i < count; i += 1) {
        const so = invariant(row[i], "cost");
        if (so === Infinity) continue;
        for (let j = i + 1; j < count; j += 1) {
          const own = invariant(costs[(start + j) % count], "cost");
          if (own === Infinity || so + own >= invariant(next[j], "cost")) continue;
          const cost = so + own + seam(start + i, j - i);
          if (cost >= invariant(next[j], "cost") || isTooDear(cost, k)) continue;
          next[j] = cost;
          from[j] = i;
        }
      }
      row = next;
      back.push(from);
    }
    const last = invariant(seams.at(-1), "seam");
    let [end, cost] = [-1, Infinity];
    for (const [j, so] of row.entries()) {
      if (so >= cost) continue;
      const all = so + last(start + j, count - j);
      if (all < cost) [end, cost] = [j, all];
    }
    if (end < 0) return { cost: Infinity, picks: [] };
    const picks = [end];
    for (const from of back.toReversed()) picks.push(invariant(from[invariant(picks.at(-1), "pick")], "pick"));
    return { cost, picks: picks.toReversed().map((j) => (start + j) % count) };
  }
}

/** What the seam that begins at a corner costs, from one place on to that so many steps further. */
type SeamCosts = (from: number, steps: number) => number;

/** The first corner is sought no further off than this costs: nothing that far is it. */
const FIRST_AT_MOST = 30;
const FIXED_AT: Mm = STEP / 4;

function withFixed(
  ring: TracedRing,
  places: readonly Candidate[],
  fixed: ReadonlyMap<PointName, Mm>,
): readonly Candidate[] {
  if (fixed.size === 0) return places;
  const flat = walkEvenly(ring);
  const more = [...fixed.values()]
    .filter((s) => places.every((place) => Math.abs(place.s - s) >= FIXED_AT))
    .map((s): Candidate => ({ s, at: flat(s), turn: 0, sharp: false, atDart: false }));
  return [...places, ...more].toSorted((p, q) => p.s - q.s);
}

/** What another size of the piece is to look like, from how this one was read. */
export function shapeAsFound(
  ring: TracedRing,
  places: readonly Candidate[],
  wanted: readonly ShapeCorner[],
  found: readonly FoundCorner[],
): readonly ShapeCorner[] {
  const flat = walkEvenly(ring);
  const box = boxOfRing(ring);
  return wanted.map((corner, k) => {
    const here = invariant(found[k], "corner").s;
    const [at, next] = [flat(here), flat(invariant(found[(k + 1) % found.length], "corner").s)];
    const place = places.find(({ s }) => Math.abs(s - here) < FIXED_AT);
    return {
      ...corner,
      turn: place?.turn ?? corner.turn,
      x: (at.x - box.x) / box.width,
      y: (at.y - box.y) / box.height,
      way: (Math.atan2(next.y - at.y, next.x - at.x) * 180) / Math.PI,
    };
  });
}
