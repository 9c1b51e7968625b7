/**
 * Which corner of a traced outline is which: of all places where it turns, those that together come nearest to what the piece
 * usually looks like, or to how another size of it was read. A proposal, put right by hand.
 *
 * @source dynamic programming along the ring: the best way to a corner goes on from the best way to the one before
 */
import { extentOf } from "../geometry/bounds";
import { piecePoint, type PiecePoint } from "../geometry/point";
import { invariant } from "../result";
import type { PointName } from "../pattern/piece";
import type { Mm } from "../units";
import type { ShapeCorner } from "./pieceShapes";
import { flattened, jointsOf, lastUpTo, wayFrom, wrapped, type TracedRing } from "./tracedRing";

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
  const flat = walkEvenly(ring);
  const turnNear = (s: Mm): number => {
    const [before, here, after] = [flat(s - SEEN_OVER), flat(s), flat(s + SEEN_OVER)];
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
  const turns = Array.from({ length: count }, (_, index) => turnNear(index * step));
  const isClear = (s: Mm): boolean =>
    found.every((one) => Math.min(wayFrom(ring, one.s, s), wayFrom(ring, s, one.s)) > CLEAR);
  const bends: Candidate[] = [];
  for (const [index, turn] of turns.entries()) {
    const [before, after] = [turns.at(index - 1) ?? 0, turns[(index + 1) % count] ?? 0];
    const by = Math.abs(turn);
    if (by < BEND || by < Math.abs(before) || by <= Math.abs(after)) continue;
    const s = index * step;
    if (isClear(s)) bends.push({ s, at: flat(s), turn, sharp: false, atDart: isAtDart(s) });
  }
  return [...found, ...bends]
    .toSorted((p, q) => Math.abs(q.turn) - Math.abs(p.turn))
    .slice(0, MOST_CANDIDATES)
    .toSorted((p, q) => p.s - q.s);
}

/** Places on the ring by a table, quickly, to within what a turn over some millimetres can tell. */
function walkEvenly(ring: TracedRing): (s: Mm) => PiecePoint {
  const { points, s } = flattened(ring, TABLE);
  return (at) => {
    const on = wrapped(ring, at);
    const low = lastUpTo(s, on);
    const [a, b] = [invariant(points[low], "point"), invariant(points[(low + 1) % points.length], "point")];
    const [from, to] = [invariant(s[low], "s"), s[low + 1] ?? ring.length];
    const share = to === from ? 0 : (on - from) / (to - from);
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
  const candidates = withFixed(ring, places, fixed);
  const count = candidates.length;
  if (count < wanted.length || wanted.length === 0) return null;
  const box = extentOf(flattened(ring, 1).points);
  const isFixed = (k: number, j: number): boolean | null => {
    const at = fixed.get(invariant(wanted[k], "corner").name);
    if (at !== undefined) return Math.abs(invariant(candidates[j], "place").s - at) < FIXED_AT;
    return null;
  };
  const cornerCost = wanted.map((corner, k) =>
    candidates.map((place, j) => {
      const known = isFixed(k, j);
      if (known !== null) return known ? 0 : Infinity;
      const turn = (place.turn - corner.turn) / slack.turn;
      const x = ((place.at.x - box.x) / box.width - corner.x) / slack.place;
      const y = ((place.at.y - box.y) / box.height - corner.y) / slack.place;
      return turn * turn + (x * x + y * y) / 2 + (place.atDart ? AT_DART : 0);
    }),
  );
  // What lies between two places, passed over; sums round twice, so that a stretch over the start is one too.
  const passed = [0];
  for (let i = 0; i < 2 * count; i += 1)
    passed.push(invariant(passed[i], "sum") + passedOver(invariant(candidates[i % count], "place")));
  const ways = candidates.map((a) =>
    candidates.map((b) => (Math.atan2(b.at.y - a.at.y, b.at.x - a.at.x) * 180) / Math.PI),
  );
  const seamCost = (k: number, from: number, steps: number): number => {
    const corner = invariant(wanted[k], "corner");
    const way = invariant(invariant(ways[from % count], "ways")[(from + steps) % count], "way");
    const off = (((way - corner.way + 900) % 360) - 180) / slack.way;
    const over = invariant(passed[(from % count) + steps], "sum") - invariant(passed[(from % count) + 1], "sum");
    return off * off + (MAY_TURN.has(corner.seam) ? over / 4 : over);
  };
  let best: { readonly cost: number; readonly picks: readonly number[] } = { cost: Infinity, picks: [] };
  for (let start = 0; start < count; start += 1) {
    const first = invariant(invariant(cornerCost[0], "costs")[start], "cost");
    if (first >= Math.min(best.cost, FIRST_AT_MOST)) continue;
    const found = bestFrom(start, first);
    if (found.cost < best.cost) best = found;
  }
  if (best.picks.length === 0) return null;
  return {
    cost: best.cost / wanted.length,
    corners: wanted.map(({ name }, k) => ({
      name,
      s: invariant(candidates[invariant(best.picks[k], "pick")], "place").s,
    })),
  };

  function bestFrom(start: number, first: number): { readonly cost: number; readonly picks: readonly number[] } {
    let row: (number | null)[] = Array.from({ length: count }, (_, j) => (j === 0 ? first : null));
    const back: number[][] = [];
    for (let k = 1; k < wanted.length; k += 1) {
      const costs = invariant(cornerCost[k], "costs");
      const next: (number | null)[] = Array.from({ length: count }, () => null);
      const from: number[] = Array.from({ length: count }, () => 0);
      for (let j = k; j < count; j += 1) {
        const own = invariant(costs[(start + j) % count], "cost");
        if (own === Infinity) continue;
        for (let i = k - 1; i < j; i += 1) {
          const so = row[i];
          if (so === null || so === undefined) continue;
          const cost = so + own + seamCost(k - 1, start + i, j - i);
          const known = next[j];
          if (known === null || known === undefined || cost < known) {
            next[j] = cost;
            from[j] = i;
          }
        }
      }
      row = next;
      back.push(from);
    }
    let [end, cost] = [-1, Infinity];
    for (const [j, so] of row.entries()) {
      if (so === null) continue;
      const all = so + seamCost(wanted.length - 1, start + j, count - j);
      if (all < cost) [end, cost] = [j, all];
    }
    if (end < 0) return { cost: Infinity, picks: [] };
    const picks = [end];
    for (const from of back.toReversed()) picks.push(invariant(from[invariant(picks.at(-1), "pick")], "pick"));
    return { cost, picks: picks.toReversed().map((j) => (start + j) % count) };
  }
}

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
  const box = extentOf(flattened(ring, 1).points);
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
