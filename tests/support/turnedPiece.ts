/** A piece turned about the origin, curves with it: what is reckoned of it should not be another for that. */
import { expect } from "vitest";
import { piecePoint, type PiecePoint } from "../../src/core/geometry/point";
import { pointNames, type NamedPoint, type Piece, type PointName } from "../../src/core/pattern/piece";

export function turned(piece: Piece, degrees: number): Piece {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const at = ({ x, y }: PiecePoint): PiecePoint => piecePoint(x * c - y * s, x * s + y * c);
  const points: Partial<Record<PointName, NamedPoint>> = {};
  for (const name of pointNames(piece)) {
    const point = piece.points[name];
    if (point !== undefined) points[name] = { ...point, at: at(point.at) };
  }
  const edges = piece.edges.map((edge) =>
    edge.curve === null ? edge : { ...edge, curve: { c1: at(edge.curve.c1), c2: at(edge.curve.c2) } },
  );
  return { ...piece, points, edges };
}

/** Its points by name, each to be met to within hundredths of a thousandth. */
export const closePoints = (piece: Piece): Readonly<Record<string, unknown>> =>
  Object.fromEntries(
    pointNames(piece).map((name) => {
      const { at, level } = piece.points[name] ?? { at: { x: NaN, y: NaN }, level: null };
      return [name, { at: { x: expect.closeTo(at.x, 4), y: expect.closeTo(at.y, 4) }, level }];
    }),
  );
