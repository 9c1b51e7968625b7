/** Boxes that may stand at a slant: the paper of a strip, and what is inside it. Piece frame, mm. */
import type { Bounds } from "../geometry/bounds";
import { edgeIntersections, edgePart, edgePointAt, lineEdge, type EdgeCurve } from "../geometry/edgeCurve";
import { piecePoint, rotateAbout, type PiecePoint } from "../geometry/point";
import { invariant } from "../result";
import { END_PARAMETER, SAME_POINT } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";
import type { SlantBox } from "./overlay";

/** In its own turned frame: u along its turned x, v along its turned y, both about the origin of the piece frame. */
export interface Strip {
  readonly turn: Radians;
  readonly u: readonly [Mm, Mm];
  readonly v: readonly [Mm, Mm];
}

export type Side = "u0" | "u1" | "v0" | "v1";
export const SIDES: readonly Side[] = ["u0", "u1", "v0", "v1"];

const ORIGIN = piecePoint(0, 0);
export const toStrip = (p: PiecePoint, turn: Radians): PiecePoint => rotateAbout(p, ORIGIN, radians(-turn));
const fromStrip = (u: Mm, v: Mm, turn: Radians): PiecePoint => rotateAbout(piecePoint(u, v), ORIGIN, turn);

const range = (of: readonly Mm[]): [Mm, Mm] => [
  of.reduce((a, b) => Math.min(a, b)),
  of.reduce((a, b) => Math.max(a, b)),
];

/** The smallest box at a slant about the points. */
export function stripAbout(points: readonly PiecePoint[], turn: Radians): Strip {
  const turned = points.map((p) => toStrip(p, turn));
  return { turn, u: range(turned.map(({ x }) => x)), v: range(turned.map(({ y }) => y)) };
}

/** The smallest that holds another at that slant, too. */
export function stripWith(strip: Strip, points: readonly PiecePoint[], turn: Radians): Strip {
  if (points.length === 0) return strip;
  const { u, v } = stripAbout(points, turn);
  return {
    turn,
    u: [Math.min(strip.u[0], u[0]), Math.max(strip.u[1], u[1])],
    v: [Math.min(strip.v[0], v[0]), Math.max(strip.v[1], v[1])],
  };
}

export const stripWidth = ({ u }: Strip): Mm => u[1] - u[0];
export const stripHeight = ({ v }: Strip): Mm => v[1] - v[0];
export const stripArea = (strip: Strip): number => stripWidth(strip) * stripHeight(strip);

/** The box with one side, or all, moved outwards. */
export function widened({ turn, u, v }: Strip, by: Mm, side?: Side): Strip {
  const move = (of: Side): Mm => (side === undefined || side === of ? by : 0);
  return { turn, u: [u[0] - move("u0"), u[1] + move("u1")], v: [v[0] - move("v0"), v[1] + move("v1")] };
}

/** Its four corners, going round as the outline of a piece does. */
export const stripRing = ({ turn, u, v }: Strip): readonly PiecePoint[] => [
  fromStrip(u[0], v[0], turn),
  fromStrip(u[1], v[0], turn),
  fromStrip(u[1], v[1], turn),
  fromStrip(u[0], v[1], turn),
];

/** The upright box about it. */
export function uprightBox(strip: Strip): Bounds<"piece"> {
  const { u, v } = stripAbout(stripRing(strip), radians(0));
  return { min: piecePoint(u[0], v[0]), max: piecePoint(u[1], v[1]) };
}

/** The longer side of the upright box about it. */
export function stripReach(strip: Strip): Mm {
  const { min, max } = uprightBox(strip);
  return Math.max(max.x - min.x, max.y - min.y);
}

export const isInStrip = ({ turn, u, v }: Strip, p: PiecePoint): boolean => {
  const { x, y } = toStrip(p, turn);
  return x >= u[0] - SAME_POINT && x <= u[1] + SAME_POINT && y >= v[0] - SAME_POINT && y <= v[1] + SAME_POINT;
};

/** The parts of a line that lie in the box. */
export function partsInStrip(edge: EdgeCurve<"piece">, strip: Strip): readonly EdgeCurve<"piece">[] {
  const ring = stripRing(strip);
  const sides = ring.map((a, index) => lineEdge(a, invariant(ring[(index + 1) % ring.length], "corner")));
  const cuts = [0, ...sides.flatMap((side) => edgeIntersections(edge, side).map(({ t1 }) => t1)), 1].toSorted(
    (a, b) => a - b,
  );
  const kept: [number, number][] = [];
  cuts.slice(1).forEach((to, index) => {
    const from = invariant(cuts[index], "cut");
    if (to - from < END_PARAMETER || !isInStrip(strip, edgePointAt(edge, (from + to) / 2))) return;
    const last = kept.at(-1);
    if (last !== undefined && last[1] === from) last[1] = to;
    else kept.push([from, to]);
  });
  return kept.map(([from, to]) => (from === 0 && to === 1 ? edge : edgePart(edge, from, to)));
}

export const slantBoxOf = ({ turn, u, v }: Strip): SlantBox => ({
  centre: fromStrip((u[0] + u[1]) / 2, (v[0] + v[1]) / 2, turn),
  width: u[1] - u[0],
  height: v[1] - v[0],
  turn,
});
