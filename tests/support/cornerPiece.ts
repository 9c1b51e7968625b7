/** A piece by its corners, clockwise as it lies: straight edges, and what else is wanted of it. */
import { piecePoint } from "../../src/core/geometry/point";
import type {
  Dart,
  DartName,
  Edge,
  LevelName,
  NamedPoint,
  Piece,
  PieceName,
  PointName,
  SeamName,
} from "../../src/core/pattern/piece";

/** Name, across, down, the seam that leaves it; the dart whose mouth that is. */
export type CornerOf = readonly [PointName, number, number, SeamName, DartName?];

interface CornerPiece {
  readonly name?: PieceName;
  readonly corners: readonly CornerOf[];
  /** Off the outline. */
  readonly inside?: Readonly<Partial<Record<PointName, readonly [number, number]>>>;
  /** Curves by the point that their edge leaves. */
  readonly curves?: Readonly<
    Partial<Record<PointName, readonly [readonly [number, number], readonly [number, number]]>>
  >;
  readonly darts?: readonly Dart[];
  readonly levelLines?: Piece["levelLines"];
}

export function cornerPiece({ name = "front", corners, inside = {}, curves = {}, ...rest }: CornerPiece): Piece {
  const level: LevelName = "bust";
  const points: Partial<Record<PointName, NamedPoint>> = {};
  for (const [corner, x, y] of corners) points[corner] = { at: piecePoint(x, y), level };
  // The record is only ever built from names of points, which `Object.entries` cannot know.
  for (const [corner, place] of Object.entries(inside) as [PointName, readonly [number, number]][])
    points[corner] = { at: piecePoint(place[0], place[1]), level };
  const edges = corners.map(([from, , , seam, mouthOf = null], index): Edge => {
    const [to] = corners[(index + 1) % corners.length] ?? [from];
    const [c1, c2] = curves[from] ?? [];
    const curve =
      c1 === undefined || c2 === undefined ? null : { c1: piecePoint(c1[0], c1[1]), c2: piecePoint(c2[0], c2[1]) };
    return { from, to, seam, curve, mouthOf };
  });
  return { name, points, edges, darts: rest.darts ?? [], levelLines: rest.levelLines ?? [], centreOnFold: true };
}

export const dartFor = (name: DartName, seam: SeamName, aimsAt: PointName | null = null): Dart => ({
  name,
  seam,
  inner: `${name}Inner`,
  outer: `${name}Outer`,
  apex: `${name}Apex`,
  aimsAt,
});
