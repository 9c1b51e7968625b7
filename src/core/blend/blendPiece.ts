/**
 * Blending a nest: every point takes its place across the piece from the fractional size of its own level, and its
 * height from the base size, so that lengths stay the base size's and the same fraction at a level is the same on every
 * piece. Control points follow the level of the point they belong to, so a seam between two levels stays one smooth
 * curve that keeps the base size's directions at its ends. A bend between two levels takes a share of each, its controls
 * with it, so that a line of several cubics stays one smooth line too.
 */
import { edgeLength } from "../geometry/edgeCurve";
import { directionOf, distance, piecePoint, polar, turnBetween, type PiecePoint } from "../geometry/point";
import { invariant } from "../result";
import {
  isBend,
  pointNames,
  pointOf,
  type Edge,
  type LevelName,
  type NamedPoint,
  type Piece,
  type PointName,
  type SeamName,
} from "../pattern/piece";
import { placedAt, withCurve } from "../pattern/redraw";
import { curveOf } from "../pattern/ring";
import { DRAWN_ALIKE_DEGREES, SMOOTH_BEND } from "../tolerance";
import { radians, radiansFromDegrees, type Mm } from "../units";

/** What sizes a place goes with. */
type Follows = Pick<NamedPoint, "level" | "towards">;

/** Fractional index into the nest at each level: 0 is the first size, 1.5 half-way from the second to the third. */
export type LevelSizes = Readonly<Record<LevelName, number>>;

/** The same size at every level but waist and hip. */
export const levelSizes = (baseSize: number, waist: number, hip: number): LevelSizes => ({
  neck: baseSize,
  shoulder: baseSize,
  underarm: baseSize,
  bust: baseSize,
  underBust: baseSize,
  waist,
  hip,
});

/** The two neighbours of a fractional index in a list, and the share between them; below 0 or above 1 past the ends. */
export function neighbours(size: number, count: number): { lower: number; share: number } {
  const lower = Math.min(Math.max(Math.floor(size), 0), Math.max(count - 2, 0));
  return { lower, share: size - lower };
}

/**
 * The piece blended from one nest.
 *
 * @param sizes the same piece in every printed size: same points, same edges, smallest first; at least one
 * @param at    the fractional size of each level; the base size's (`at.bust`) gives the heights
 * @param only  one seam to blend, where nothing else is asked; the result then has just that seam
 */
export function blendPiece(sizes: readonly Piece[], at: LevelSizes, only?: SeamName): Piece {
  const base = invariant(sizes[0], "a nest with a size");
  const wanted =
    only === undefined ? null : new Set(base.edges.flatMap((e) => (e.seam === only ? [e.from, e.to] : [])));
  const blending = blendingOf(sizes, at);
  const points: Partial<Record<PointName, NamedPoint>> = {};
  for (const name of pointNames(base)) {
    if (wanted !== null && !wanted.has(name)) continue;
    const point = invariant(base.points[name], name);
    points[name] = placedAt(point, pointBlended(blending, name));
  }
  const edges = base.edges.map((edge, index): Edge =>
    edge.curve === null || (only !== undefined && edge.seam !== only)
      ? edge
      : withCurve(edge, curveBlended(blending, index)),
  );
  const blendedPiece = { ...base, points, edges, ...turnsAt(base, blending.heights) };
  const smooth = smoothBends(sizes, blendedPiece);
  return { ...blendedPiece, edges: only === undefined ? smooth : smooth.filter(({ seam }) => seam === only) };
}

/**
 * How long a seam of the blended piece is, darts closed, mm. No piece is put together for it: for every plan it is asked at every
 * size.
 */
export function blendedSeamLength(sizes: readonly Piece[], at: LevelSizes, seam: SeamName): Mm {
  const blending = blendingOf(sizes, at);
  let sum = 0;
  for (const [index, edge] of blending.base.edges.entries()) {
    if (edge.seam !== seam || edge.mouthOf !== null) continue;
    // What is smoothed at its bends is smoothed as a piece.
    if (isBend(edge.from) || isBend(edge.to)) return sewnLength(blendPiece(sizes, at, seam));
    sum += edgeLength({
      a: pointBlended(blending, edge.from),
      b: pointBlended(blending, edge.to),
      curve: edge.curve === null ? null : curveBlended(blending, index),
    });
  }
  return sum;
}

const sewnLength = (piece: Piece): Mm =>
  piece.edges.reduce((sum, edge) => (edge.mouthOf === null ? sum + edgeLength(curveOf(piece, edge)) : sum), 0);

/** What is blended, and between which two sizes each level lies. */
interface Blending {
  readonly base: Piece;
  readonly at: LevelSizes;
  readonly heights: Between;
  readonly between: (size: number) => Between;
}

function blendingOf(sizes: readonly Piece[], at: LevelSizes): Blending {
  const between = placesIn(sizes);
  return { base: invariant(sizes[0], "a nest with a size"), at, heights: between(at.bust), between };
}

function pointBlended(blending: Blending, name: PointName): PiecePoint {
  const { level, towards } = invariant(blending.base.points[name], name);
  return placeBlended(blending, level, towards, (size) => pointOf(size, name));
}

function curveBlended(blending: Blending, index: number): NonNullable<Edge["curve"]> {
  const { edges, points } = blending.base;
  const edge = invariant(edges[index], "edge");
  const [of1, of2] = controlsFollow(invariant(points[edge.from], edge.from), invariant(points[edge.to], edge.to));
  return {
    c1: placeBlended(blending, of1.level, of1.towards, (size) => invariant(size.edges[index]?.curve, "curve").c1),
    c2: placeBlended(blending, of2.level, of2.towards, (size) => invariant(size.edges[index]?.curve, "curve").c2),
  };
}

/** Where a point of the pieces comes to lie: across by what it follows, its height by the base size. */
function placeBlended(
  { at, heights, between }: Blending,
  level: LevelName,
  towards: Follows["towards"],
  on: (piece: Piece) => PiecePoint,
): PiecePoint {
  const own = acrossAt(between(at[level]), on);
  return piecePoint(
    towards === undefined ? own : own + towards.share * (acrossAt(between(at[towards.level]), on) - own),
    heightAt(heights, on),
  );
}

/**
 * What the controls of an edge follow: their points, but where these lie between two levels, what a single cubic from level to
 * level would take there. So a seam that a dart or a bend parts keeps the very line of one that is not parted.
 *
 * @source a cubic between two levels whose controls go with its ends takes w = 3t² − 2t³ of the second; a part of it from t to u
 *         has its first control at w + w′(u − t) / 3
 */
function controlsFollow(from: Follows, to: Follows): readonly [Follows, Follows] {
  const between = from.towards === undefined ? to : from;
  const { level, towards } = between;
  if (towards === undefined) return [from, to];
  const placeOf = (point: Follows): number | null => {
    if (point.towards !== undefined)
      return point.level === level && point.towards.level === towards.level ? placeOfShare(point.towards.share) : null;
    return point.level === level ? 0 : point.level === towards.level ? 1 : null;
  };
  const [t, u] = [placeOf(from), placeOf(to)];
  if (t === null || u === null) return [from, to];
  const follows = (at: number, reach: number): Follows => ({
    level,
    towards: { level: towards.level, share: at * at * (3 - 2 * at) + 2 * at * (1 - at) * reach },
  });
  return [follows(t, u - t), follows(u, t - u)];
}

/** @source the inverse of 3t² − 2t³ in closed form, by the trisection of an angle */
const placeOfShare = (share: number): number => 1 / 2 - Math.sin(Math.asin(1 - 2 * share) / 3);

/** What the pattern itself was drawn with, at the base size. */
function turnsAt(base: Piece, between: Between): Pick<Piece, "drawnTurns" | "darts"> | null {
  if (base.drawnTurns === undefined) return null;
  const drawnTurns: Partial<Record<PointName, number>> = {};
  for (const { from } of base.edges) {
    if (base.drawnTurns[from] === undefined) continue;
    drawnTurns[from] = interpolate(between, (piece) => piece.drawnTurns?.[from] ?? 0);
  }
  const darts = base.darts.map((dart, index) =>
    dart.drawnTurn === undefined
      ? dart
      : {
          ...dart,
          drawnTurn: interpolate(between, (piece) => piece.darts[index]?.drawnTurn ?? 0),
          drawnLegs: interpolate(between, (piece) => piece.darts[index]?.drawnLegs ?? 0),
        },
  );
  return { drawnTurns, darts };
}

/**
 * Where a line ran smooth through a bend in every size it runs smooth through it still: its handles, of other lengths in each
 * size, may not come to lie in one line, and share what is missing.
 */
function smoothBends(sizes: readonly Piece[], blended: Piece): readonly Edge[] {
  let { edges } = blended;
  blended.edges.forEach(({ from, curve }, index) => {
    const before = blended.edges.at(index - 1);
    const at = blended.points[from]?.at;
    if (!isBend(from) || curve === null || before === undefined || before.curve === null || at === undefined) return;
    const drawn = Math.max(...sizes.map((size) => turnAtBend(size, index)));
    if (drawn > SMOOTH_BEND) return;
    const [c2, c1] = [before.curve.c2, curve.c1];
    const half = turnBetween(directionOf(c2, at), directionOf(at, c1)) / 2;
    // No less smooth than some size is: left as it is, so that a whole size is just the printed one.
    if (2 * Math.abs(half) <= drawn + radiansFromDegrees(DRAWN_ALIKE_DEGREES)) return;
    const turned = (control: PiecePoint, turn: number): PiecePoint =>
      polar(at, radians(directionOf(at, control) + turn), distance(at, control));
    const last = (index + edges.length - 1) % edges.length;
    const into = invariant(edges[last], "edge");
    const outOf = invariant(edges[index], "edge");
    edges = edges
      .with(last, { ...into, curve: into.curve === null ? null : { ...into.curve, c2: turned(c2, half) } })
      .with(index, { ...outOf, curve: outOf.curve === null ? null : { ...outOf.curve, c1: turned(c1, -half) } });
  });
  return edges;
}

/** How far a line turns where an edge of it begins; more than any bend where it is no curve there. */
function turnAtBend(piece: Piece, index: number): number {
  const [into, outOf] = [piece.edges.at(index - 1)?.curve, piece.edges[index]?.curve];
  const at = piece.points[invariant(piece.edges[index], "edge").from]?.at;
  if (into === null || into === undefined || outOf === null || outOf === undefined || at === undefined) return Infinity;
  return Math.abs(turnBetween(directionOf(into.c2, at), directionOf(at, outOf.c1)));
}

/** The two sizes that a fractional size lies between, and the share between them. */
interface Between {
  readonly low: Piece;
  readonly high: Piece;
  readonly share: number;
}

/** The places of fractional sizes among the pieces; most levels have one and the same, which is looked up once. */
function placesIn(sizes: readonly Piece[]): (size: number) => Between {
  const known: { readonly size: number; readonly place: Between }[] = [];
  return (size) => {
    for (const one of known) if (one.size === size) return one.place;
    const { lower, share } = neighbours(size, sizes.length);
    const low = invariant(sizes[lower], "size");
    const place = {
      low,
      high: share === 0 ? low : invariant(sizes[Math.min(lower + 1, sizes.length - 1)], "size"),
      share,
    };
    known.push({ size, place });
    return place;
  };
}

function acrossAt({ low, high, share }: Between, on: (piece: Piece) => PiecePoint): number {
  const { x } = on(low);
  return share === 0 ? x : x + (on(high).x - x) * share;
}

function heightAt({ low, high, share }: Between, on: (piece: Piece) => PiecePoint): number {
  const { y } = on(low);
  return share === 0 ? y : y + (on(high).y - y) * share;
}

function interpolate({ low, high, share }: Between, value: (piece: Piece) => number): number {
  const at = value(low);
  return share === 0 ? at : at + (value(high) - at) * share;
}
