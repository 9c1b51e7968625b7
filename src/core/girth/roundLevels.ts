/**
 * Levels round the sewn garment, from the underarm to the hem: horizontal on each piece, front and back joined at the side
 * seam, darts closed. Curves are taken as polylines; on them the girth and the way along the opening change evenly from bend
 * to bend, so the levels given, one at each bend, hold the least of any sum of the two exactly.
 */
import { edgeFlatten, edgeReverse } from "../geometry/edgeCurve";
import { distance, piecePoint, type PiecePoint } from "../geometry/point";
import { pointOf, type Edge, type Piece, type PieceName, type SeamName } from "../pattern/piece";
import { isBand, isBasque } from "../pattern/pieceGroups";
import { pieceIn, piecesOf, type PieceSet } from "../pattern/pieceSet";
import { curveOf } from "../pattern/ring";
import { remember } from "../remember";
import { OPENING_ACCURACY, SOLVER_ACCURACY } from "../tolerance";
import type { Mm } from "../units";
import { clothBetween } from "./levelWidth";
import { seamLength } from "./seamLength";

export interface RoundLevel {
  /** Of both halves, darts closed. */
  readonly girth: Mm;
  /** How far below the waist seam it meets the seam that opens, along that seam, darts closed; negative above. */
  readonly below: Mm;
  /** Along a seam; null: across the cloth. */
  readonly seam: "waist" | "underBust" | null;
}

/** Which seam opens. */
export type OpenSeam = "centreBack" | "side";

/**
 * The stations of a seam from its end at the waist on, with the sewn distance from there. Number by number, not place by place:
 * they are gone through some thousand times a plan.
 */
interface Way {
  readonly s: readonly Mm[];
  readonly x: readonly Mm[];
  readonly y: readonly Mm[];
}

/** A place on a seam: the number of the station before it, and the share of the way from there to the next. */
type Place = number;

/** A piece between two of its seams, and what is joined to the inner one. */
interface Strip {
  readonly piece: Piece;
  readonly outer: Way;
  readonly inner: Way;
  readonly next: Strip | null;
}

interface HalfLevel {
  readonly width: Mm;
  /** Sewn distance along the centre from its end at the waist. */
  readonly centre: Mm;
}

/** Strips that lie between two seams round the body; `base` is how far the waist is from their nearer end. */
interface Zone {
  readonly way: 1 | -1;
  readonly base: { readonly side: Mm; readonly centreBack: Mm };
  readonly front: Strip;
  readonly back: Strip;
}

/**
 * @param halves both halves; what hangs below the waist and is no basque is not among them
 * @param end    how far below the waist the opening ends, along it: a level is taken just there too
 */
export const roundLevels = (halves: readonly [PieceSet, PieceSet], opens: OpenSeam, end: Mm): readonly RoundLevel[] =>
  round({ halves, opens, end });

interface Round {
  readonly halves: readonly [PieceSet, PieceSet];
  readonly opens: OpenSeam;
  readonly end: Mm;
}

/** A bodice keeps them whatever hangs on it. */
const round = remember(["halves", "opens", "end"], ({ halves, opens, end }: Round): readonly RoundLevel[] => {
  const left = zonesOf(halves[0]);
  const right = halves[1] === halves[0] ? left : zonesOf(halves[1]);
  return [
    ...seamLevels(halves, opens),
    ...left.flatMap((zone, at) => {
      const other = right[at];
      return other === undefined ? [] : levelsIn({ zone, other, opens, end });
    }),
  ];
});

function seamLevels(halves: readonly [PieceSet, PieceSet], opens: OpenSeam): readonly RoundLevel[] {
  const girthOf = (seam: "waist" | "underBust", has: (name: PieceName) => boolean) =>
    sum(
      halves.flatMap((half) =>
        piecesOf(half)
          .filter(({ name }) => has(name))
          .map((piece) => seamLength(piece, seam)),
      ),
    );
  const isOfWaist = hasBasques(halves[0]) ? isBasque : (name: PieceName) => !isBasque(name);
  const waist = { girth: girthOf("waist", isOfWaist), below: 0, seam: "waist" } as const;
  if (halves[0].backBand === undefined) return [waist];
  const deep = sum(
    halves.map((half) => seamLength(pieceIn(half, "backBand"), opens === "side" ? "side" : "centre") / 2),
  );
  return [waist, { girth: girthOf("underBust", isBand), below: -deep, seam: "underBust" }];
}

const hasBasques = ({ frontBasque, backBasque }: PieceSet): boolean =>
  frontBasque !== undefined && backBasque !== undefined;

/** At the waist itself. */
const none: Zone["base"] = { side: 0, centreBack: 0 };

const across = (piece: Piece, way: 1 | -1): Strip => strip(piece, ["centre", "side"], way, null);

const basqueZone = remember(["front", "back"], ({ front, back }: Readonly<Record<"front" | "back", Piece>>): Zone => ({
  way: 1,
  base: none,
  front: across(front, 1),
  back: across(back, 1),
}));

function zonesOf(half: PieceSet): readonly Zone[] {
  const { frontBand, backBand, cup, centreFront, sideFront } = half;
  const back = pieceIn(half, "back");
  const below = hasBasques(half)
    ? [basqueZone({ front: pieceIn(half, "frontBasque"), back: pieceIn(half, "backBasque") })]
    : [];
  if (cup !== undefined && frontBand !== undefined && backBand !== undefined) {
    const base = { side: seamLength(backBand, "side"), centreBack: seamLength(backBand, "centre") };
    return [
      ...below,
      { way: -1, base: none, front: across(frontBand, -1), back: across(backBand, -1) },
      { way: -1, base, front: across(cup, -1), back: across(back, -1) },
    ];
  }
  const front =
    centreFront !== undefined && sideFront !== undefined
      ? strip(sideFront, ["princess", "side"], -1, strip(centreFront, ["centre", "princess"], -1, null))
      : across(pieceIn(half, "front"), -1);
  return [...below, { way: -1, base: none, front, back: across(back, -1) }];
}

const strip = (
  piece: Piece,
  [inner, outer]: readonly [SeamName, SeamName],
  way: 1 | -1,
  next: Strip | null,
): Strip => ({
  piece,
  inner: stationsOf(piece, inner, way),
  outer: stationsOf(piece, outer, way),
  next,
});

/** A seam of a piece from its end at the waist on: downwards with `way` 1, upwards with −1. */
function stationsOf(piece: Piece, seam: SeamName, way: 1 | -1): Way {
  const edges = inRow(piece.edges, seam);
  const [first, last] = [edges.at(0), edges.at(-1)];
  const stations: { s: Mm[]; x: Mm[]; y: Mm[] } = { s: [], x: [], y: [] };
  if (first === undefined || last === undefined) return stations;
  const isAgainst = (pointOf(piece, last.to).y - pointOf(piece, first.from).y) * way < 0;
  let s: Mm = 0;
  let before: PiecePoint | null = null;
  for (const edge of isAgainst ? edges.toReversed() : edges) {
    const curve = curveOf(piece, edge);
    for (const point of edgeFlatten(isAgainst ? edgeReverse(curve) : curve, OPENING_ACCURACY)) {
      // Across the mouth of a dart nothing is sewn.
      if (before !== null && edge.mouthOf === null) s += distance(before, point);
      before = point;
      stations.s.push(s);
      stations.x.push(point.x);
      stations.y.push(point.y);
    }
  }
  return stations;
}

/** The edges of a seam one after the other, though the ring may begin in the middle of it. */
function inRow(edges: readonly Edge[], seam: SeamName): readonly Edge[] {
  const start = edges.findIndex((edge, at) => edge.seam === seam && edges.at(at - 1)?.seam !== seam);
  return start < 0 ? [] : [...edges.slice(start), ...edges.slice(0, start)].filter((edge) => edge.seam === seam);
}

interface Zones {
  readonly zone: Zone;
  /** The same zone of the other half. */
  readonly other: Zone;
  readonly opens: OpenSeam;
  readonly end: Mm;
}

/** A drag on one piece leaves the zones of all others as they are. */
const levelsIn = remember(["zone", "other", "opens", "end"], findLevels);

function findLevels({ zone, other, opens, end }: Zones): readonly RoundLevel[] {
  const both = other === zone ? [zone] : [zone, other];
  const bends = both.flatMap(({ front, back }) => [...bendsOf(front), ...bendsOf(back)]);
  const ends = opens === "side" ? [end] : both.flatMap(({ back }) => sidesAt(back, back.inner, end));
  // Bends that lie nearer together than curves are followed are one; just at the end of the opening there is always one.
  const sides = zone.way === 1 ? [...ends] : [];
  let last: Mm = -Infinity;
  for (const bend of Float64Array.from(bends).toSorted()) {
    if (bend - last > SOLVER_ACCURACY) sides.push(bend);
    last = bend;
  }
  const levels: RoundLevel[] = [];
  for (const side of Float64Array.from(sides).toSorted()) {
    const level = roundAt(both, opens, side);
    if (level !== null) levels.push(level);
  }
  return levels;
}

/** The level round a zone, or the zone of each half, that meets the side seam at a sewn distance. */
function roundAt(both: readonly Zone[], opens: OpenSeam, side: Mm): RoundLevel | null {
  let girth: Mm = 0;
  let lowest: Mm = -Infinity;
  let sumOfBelows: Mm = 0;
  for (const { front, back, base, way } of both) {
    const [inFront, behind] = [levelAt(front, side), levelAt(back, side)];
    if (inFront === null || behind === null) return null;
    girth += (2 / both.length) * (inFront.width + behind.width);
    const below = way * (opens === "side" ? base.side + side : base.centreBack + behind.centre);
    lowest = Math.max(lowest, below);
    sumOfBelows += below;
  }
  // A centre back is sewn of both halves; a side opens on one of them, and nobody says which: the lower one lets less through.
  return { girth, below: opens === "side" ? lowest : sumOfBelows / both.length, seam: null };
}

/** The level that meets the outer seam at a sewn distance; null where it does not run from seam to seam. */
function levelAt({ piece, outer, inner, next }: Strip, side: Mm): HalfLevel | null {
  // Beside a dart there are two of them: the tighter one counts.
  let tightest: Mm = Infinity;
  let centre: Mm = 0;
  const starts = placesAt(outer.s, side);
  for (let i = 0; i < starts.length; i += 1) {
    const from = starts[i] ?? 0;
    const y = valueAt(outer.y, from);
    const ends = placesAt(inner.y, y);
    for (let j = 0; j < ends.length; j += 1) {
      const to = ends[j] ?? 0;
      const s = valueAt(inner.s, to);
      const on = next === null ? null : levelAt(next, s);
      if (next !== null && on === null) continue;
      const own = clothBetween(piece, piecePoint(valueAt(inner.x, to), y), piecePoint(valueAt(outer.x, from), y));
      const width = own + (on?.width ?? 0);
      if (width >= tightest) continue;
      tightest = width;
      centre = on?.centre ?? s;
    }
  }
  return tightest === Infinity ? null : { width: tightest, centre };
}

/** Where along the outer seam a level meets a corner of anything that it crosses. */
function bendsOf({ piece, outer, inner, next }: Strip): readonly Mm[] {
  const heights = new Set([...outer.y, ...inner.y]);
  for (const dart of piece.darts)
    for (const name of [dart.apex, dart.inner, dart.outer]) heights.add(pointOf(piece, name).y);
  if (next !== null) for (const s of bendsOf(next)) for (const y of valuesAt(inner.s, s, inner.y)) heights.add(y);
  const sides: Mm[] = [];
  for (const y of heights) sides.push(...valuesAt(outer.y, y, outer.s));
  return sides;
}

/** Where along the outer seam the level runs that meets the inner one at a sewn distance. */
const sidesAt = ({ outer }: Strip, inner: Way, s: Mm): readonly Mm[] =>
  valuesAt(inner.s, s, inner.y).flatMap((y) => valuesAt(outer.y, y, outer.s));

/** What one number of a seam's stations is where another has a value. */
const valuesAt = (by: readonly Mm[], value: Mm, of: readonly Mm[]): readonly Mm[] =>
  placesAt(by, value).map((place) => valueAt(of, place));

const NOWHERE: readonly Place[] = [];

/** Where a number of a seam's stations has a value: in order, and a station where two stretches meet once. */
function placesAt(numbers: readonly Mm[], value: Mm): readonly Place[] {
  // Nearly always it is one place, and what most stretches come to is two comparisons: nothing is made for them.
  let places = NOWHERE;
  let last: Place = -1;
  for (let at = 1; at < numbers.length; at += 1) {
    const start = numbers[at - 1] ?? 0;
    const end = numbers[at] ?? 0;
    const least = start < end ? start : end;
    const most = start < end ? end : start;
    if (value < least - SOLVER_ACCURACY || value > most + SOLVER_ACCURACY) continue;
    const whole = most - least;
    const isLevel = whole <= SOLVER_ACCURACY;
    const into = isLevel ? 0 : (start < end ? value - start : start - value) / whole;
    const place = at - 1 + (into < 0 ? 0 : into > 1 ? 1 : into);
    if (place > last) {
      places = last < 0 ? [place] : [...places, place];
      last = place;
    }
    // Along the mouth of a dart, or a level stretch: both ends.
    if (isLevel && at > last) {
      places = [...places, at];
      last = at;
    }
  }
  return places;
}

function valueAt(numbers: readonly Mm[], place: Place): Mm {
  const station = Math.floor(place);
  const value = numbers[station] ?? 0;
  return place === station ? value : value + (place - station) * ((numbers[station + 1] ?? 0) - value);
}

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
