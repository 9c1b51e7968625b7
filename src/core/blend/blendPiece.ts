/**
 * Blending a nest: every point takes its place across the piece from the fractional size of its own level, and its
 * height from the base size, so that lengths stay the base size's and the same fraction at a level is the same on every
 * piece. Control points follow the level of the point they belong to, so a seam between two levels stays one smooth
 * curve that keeps the base size's directions at its ends. A bend between two levels takes a share of each, its controls
 * with it, so that a line of several cubics stays one smooth line too.
 */
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
import { DRAWN_ALIKE_DEGREES, SMOOTH_BEND } from "../tolerance";
import { radians, radiansFromDegrees } from "../units";

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
  const between = placesIn(sizes);
  /** Where a point of the pieces comes to lie: across by what it follows, its height by the base size. */
  const blended = ({ level, towards }: Follows, on: (piece: Piece) => PiecePoint): PiecePoint => {
    const own = acrossAt(between.at(at[level]), on);
    return piecePoint(
      towards === undefined ? own : own + towards.share * (acrossAt(between.at(at[towards.level]), on) - own),
      heightAt(between.at(at.bust), on),
    );
  };
  const points: Partial<Record<PointName, NamedPoint>> = {};
  for (const name of pointNames(base)) {
    if (wanted !== null && !wanted.has(name)) continue;
    const point = invariant(base.points[name], name);
    points[name] = placedAt(
      point,
      blended(point, (size) => pointOf(size, name)),
    );
  }
  const edges = base.edges.map((edge, index): Edge => {
    if (edge.curve === null || (only !== undefined && edge.seam !== only)) return edge;
    const control = (which: "c1" | "c2", follows: Follows): PiecePoint =>
      blended(follows, (size) => invariant(size.edges[index]?.curve, "curve")[which]);
    const [of1, of2] = controlsFollow(
      invariant(base.points[edge.from], edge.from),
      invariant(base.points[edge.to], edge.to),
    );
    return withCurve(edge, { c1: control("c1", of1), c2: control("c2", of2) });
  });
  const blendedPiece = { ...base, points, edges, ...turnsAt(base, between.at(at.bust)) };
  const smooth = smoothBends(sizes, blendedPiece);
  return { ...blendedPiece, edges: only === undefined ? smooth : smooth.filter(({ seam }) => seam === only) };
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
function placesIn(sizes: readonly Piece[]): { readonly at: (size: number) => Between } {
  const known = new Map<number, Between>();
  const find = (size: number): Between => {
    const { lower, share } = neighbours(size, sizes.length);
    const low = invariant(sizes[lower], "size");
    const place = {
      low,
      high: share === 0 ? low : invariant(sizes[Math.min(lower + 1, sizes.length - 1)], "size"),
      share,
    };
    known.set(size, place);
    return place;
  };
  return { at: (size) => known.get(size) ?? find(size) };
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
