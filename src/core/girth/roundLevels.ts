/**
 * Levels round the sewn garment, from the underarm to the hem: horizontal on each piece, front and back joined at the side
 * seam, darts closed. Curves are taken as polylines; on them the girth and the way along the opening change evenly from bend
 * to bend, so the levels given, one at each bend, hold the least of any sum of the two exactly.
 */
import { edgeFlatten, edgeReverse } from "../geometry/edgeCurve";
import { piecePoint } from "../geometry/point";
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

/** A place on a seam: sewn distance from its end at the waist. */
interface Station {
  readonly s: Mm;
  readonly x: Mm;
  readonly y: Mm;
}

/** A piece between two of its seams, and what is joined to the inner one. */
interface Strip {
  readonly piece: Piece;
  readonly outer: readonly Station[];
  readonly inner: readonly Station[];
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
function stationsOf(piece: Piece, seam: SeamName, way: 1 | -1): readonly Station[] {
  const edges = inRow(piece.edges, seam);
  const [first, last] = [edges.at(0), edges.at(-1)];
  if (first === undefined || last === undefined) return [];
  const isAgainst = (pointOf(piece, last.to).y - pointOf(piece, first.from).y) * way < 0;
  const stations: Station[] = [];
  let s: Mm = 0;
  for (const edge of isAgainst ? edges.toReversed() : edges) {
    const curve = curveOf(piece, edge);
    for (const { x, y } of edgeFlatten(isAgainst ? edgeReverse(curve) : curve, OPENING_ACCURACY)) {
      const before = stations.at(-1);
      // Across the mouth of a dart nothing is sewn.
      if (before !== undefined && edge.mouthOf === null) s += Math.hypot(x - before.x, y - before.y);
      stations.push({ s, x, y });
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
  const sides = both.flatMap(({ front, back }) => [...bendsOf(front), ...bendsOf(back)]);
  const ends = opens === "side" ? [end] : both.flatMap(({ back }) => sidesAt(back, back.inner, end));
  // Bends that lie nearer together than curves are followed are one; just at the end of the opening there is always one.
  const places = [
    ...(zone.way === 1 ? ends : []),
    ...sides.toSorted((a, b) => a - b).filter((at, i, all) => i === 0 || at - (all[i - 1] ?? at) > SOLVER_ACCURACY),
  ].toSorted((a, b) => a - b);
  return places.flatMap((side): RoundLevel[] => {
    let girth: Mm = 0;
    const belows: Mm[] = [];
    for (const half of both) {
      const [front, back] = [levelAt(half.front, side), levelAt(half.back, side)];
      if (front === null || back === null) return [];
      const { base, way } = half;
      girth += (2 / both.length) * (front.width + back.width);
      belows.push(way * (opens === "side" ? base.side + side : base.centreBack + back.centre));
    }
    // A centre back is sewn of both halves; a side opens on one of them, and nobody says which: the lower one lets less through.
    const below = opens === "side" ? Math.max(...belows) : sum(belows) / belows.length;
    return [{ girth, below, seam: null }];
  });
}

/** The level that meets the outer seam at a sewn distance; null where it does not run from seam to seam. */
function levelAt({ piece, outer, inner, next }: Strip, side: Mm): HalfLevel | null {
  // Beside a dart there are two of them: the tighter one counts.
  let tightest: Mm = Infinity;
  let centre: Mm = 0;
  for (const from of heightsAt(outer, side)) {
    for (const to of crossingsAt(inner, from.y)) {
      const on = next === null ? null : levelAt(next, to.s);
      if (next !== null && on === null) continue;
      const own = clothBetween(piece, piecePoint(to.x, from.y), piecePoint(from.x, from.y));
      const width = own + (on?.width ?? 0);
      if (width >= tightest) continue;
      tightest = width;
      centre = on?.centre ?? to.s;
    }
  }
  return tightest === Infinity ? null : { width: tightest, centre };
}

/** Where along the outer seam a level meets a corner of anything that it crosses. */
function bendsOf({ piece, outer, inner, next }: Strip): readonly Mm[] {
  const heights = [
    ...outer.map(({ y }) => y),
    ...inner.map(({ y }) => y),
    ...piece.darts.flatMap((dart) => [dart.apex, dart.inner, dart.outer].map((name) => pointOf(piece, name).y)),
    ...(next === null ? [] : bendsOf(next).flatMap((s) => heightsAt(inner, s).map(({ y }) => y))),
  ];
  const sides: Mm[] = [];
  for (const y of new Set(heights)) for (const { s } of crossingsAt(outer, y)) sides.push(s);
  return sides;
}

/** Where along the outer seam the level runs that meets the inner one at a sewn distance. */
const sidesAt = ({ outer }: Strip, inner: readonly Station[], s: Mm): readonly Mm[] =>
  heightsAt(inner, s).flatMap(({ y }) => crossingsAt(outer, y).map((at) => at.s));

const heightsAt = (way: readonly Station[], s: Mm): readonly Station[] => placesAt(way, "s", s);
const crossingsAt = (way: readonly Station[], y: Mm): readonly Station[] => placesAt(way, "y", y);

function placesAt(way: readonly Station[], by: "s" | "y", value: Mm): readonly Station[] {
  const places: Station[] = [];
  let from: Station | null = null;
  // Asked some hundred times a plan: what most stretches come to is two comparisons, and nothing is made for them.
  for (const to of way) {
    if (from !== null) {
      const start = from[by];
      const end = to[by];
      const least = Math.min(start, end);
      const most = Math.max(start, end);
      if (value >= least - SOLVER_ACCURACY && value <= most + SOLVER_ACCURACY) {
        const whole = most - least;
        const into = start < end ? value - start : start - value;
        // Along the mouth of a dart, or a level stretch: both ends.
        if (whole <= SOLVER_ACCURACY) places.push(from, to);
        else places.push(between(from, to, Math.min(1, Math.max(0, into / whole))));
      }
    }
    from = to;
  }
  return places;
}

const between = (from: Station, to: Station, share: number): Station => ({
  s: from.s + share * (to.s - from.s),
  x: from.x + share * (to.x - from.x),
  y: from.y + share * (to.y - from.y),
});

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
