/**
 * Second opinions on pieces, by general-purpose libraries: `bezier-js` for the lengths of curves, `@flatten-js/core` for
 * areas and for what lies inside an outline. Nothing here uses the core's own geometry.
 */
import { Point, Polygon, Segment } from "@flatten-js/core";
import { Bezier } from "bezier-js";
import { referenceLength } from "./curves";
import { pointOf, type Edge, type Piece, type PointName, type SeamName } from "../../src/core/pattern/piece";

interface Place {
  readonly x: number;
  readonly y: number;
}

/** Chords an edge: a 250 mm armhole is then missed by some hundredths of a millimetre at the most. */
const CHORDS = 120;

const bezierOf = (piece: Piece, { from, to, curve }: Edge): Bezier | null =>
  curve === null ? null : new Bezier(pointOf(piece, from), curve.c1, curve.c2, pointOf(piece, to));

function edgeByBezierJs(piece: Piece, edge: Edge): number {
  const [a, b] = [pointOf(piece, edge.from), pointOf(piece, edge.to)];
  return bezierOf(piece, edge)?.length() ?? Math.hypot(b.x - a.x, b.y - a.y);
}

/** Sewn length of a seam, mouths of darts left out; mm. */
export const seamByBezierJs = (piece: Piece, seam: SeamName): number =>
  piece.edges
    .filter((edge) => edge.seam === seam && edge.mouthOf === null)
    .reduce((sum, edge) => sum + edgeByBezierJs(piece, edge), 0);

/** Chords of an edge that bends so tightly that the library's own sum is out by tenths. */
const MANY = 20_000;

/** The same by very many chords: slow, for where the library is in doubt. */
export const seamByChords = (piece: Piece, seam: SeamName): number =>
  piece.edges
    .filter((edge) => edge.seam === seam && edge.mouthOf === null)
    .reduce((sum, edge) => {
      const [a, b] = [pointOf(piece, edge.from), pointOf(piece, edge.to)];
      if (edge.curve === null) return sum + Math.hypot(b.x - a.x, b.y - a.y);
      return sum + referenceLength({ a, ...edge.curve, b }, 1, MANY);
    }, 0);

/** Corners of the cloth: the outline in short chords, each dart cut out as far as the points given for it, or its end. */
export function clothCorners(
  piece: Piece,
  cutTo: Readonly<Partial<Record<string, readonly PointName[]>>> = {},
): Place[] {
  return piece.edges.flatMap((edge): Place[] => {
    const start = pointOf(piece, edge.from);
    if (edge.mouthOf !== null) {
      const tips = cutTo[edge.mouthOf] ?? [`${edge.mouthOf}Apex` as const];
      const dart = piece.darts.find(({ name }) => name === edge.mouthOf);
      const points = tips.map((name) => pointOf(piece, name));
      return [start, ...(dart?.inner === edge.from ? points : points.toReversed())];
    }
    const bezier = bezierOf(piece, edge);
    return bezier === null ? [start] : Array.from({ length: CHORDS }, (_, i) => bezier.get(i / CHORDS));
  });
}

export const polygonOf = (corners: readonly Place[]): Polygon =>
  new Polygon(corners.map(({ x, y }): [number, number] => [x, y]));

/** How much of the straight line from a to b lies on the cloth; mm. */
export function lengthOnCloth(cloth: Polygon, a: Place, b: Place): number {
  const segment = new Segment(new Point(a.x, a.y), new Point(b.x, b.y));
  const along = (p: Place): number => Math.hypot(p.x - a.x, p.y - a.y);
  const cuts = [...cloth.intersect(segment).map(along), 0, segment.length].toSorted((p, q) => p - q);
  let sum = 0;
  for (let i = 1; i < cuts.length; i += 1) {
    const [from = 0, to = 0] = [cuts[i - 1], cuts[i]];
    const middle = (from + to) / 2 / segment.length;
    const inside = cloth.contains(new Point(a.x + (b.x - a.x) * middle, a.y + (b.y - a.y) * middle));
    if (inside) sum += to - from;
  }
  return sum;
}

/** Which side of the line a → b the point lies on, as twice the area of the triangle; mm². */
const side = (a: Place, b: Place, p: Place): number => (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);

/** mm². Twice the area of triangles smaller than this is rounding, not a crossing. */
const CLEARLY = 1e-3;

/** Chords an edge for a first look; what crosses in them is looked at again in many more. */
const FEW = 10;

/** Whether the closed outline clearly crosses itself: drawn in chords, of which every pair is tried. */
export const crossesItself = (piece: Piece): boolean => chordsCross(piece, FEW) && chordsCross(piece, CHORDS);

function chordsCross(piece: Piece, chords: number): boolean {
  const corners = piece.edges.flatMap((edge): Place[] => {
    const bezier = bezierOf(piece, edge);
    return bezier === null
      ? [pointOf(piece, edge.from)]
      : Array.from({ length: chords }, (_, i) => bezier.get(i / chords));
  });
  const count = corners.length;
  for (let i = 0; i < count; i += 1) {
    const [a, b] = [corners[i], corners[(i + 1) % count]];
    for (let j = i + 2; j < count; j += 1) {
      const [c, d] = [corners[j], corners[(j + 1) % count]];
      if (a === undefined || b === undefined || c === undefined || d === undefined || d === a) continue;
      if (side(a, b, c) * side(a, b, d) < -CLEARLY && side(c, d, a) * side(c, d, b) < -CLEARLY) return true;
    }
  }
  return false;
}
