/** How near an upper edge may come to what lies about it. All common practice, no source; mm. */
import { edgeFlatten, type EdgeCurve } from "../geometry/edgeCurve";
import { distance, type PiecePoint } from "../geometry/point";
import { segmentIntersections, segmentNearest } from "../geometry/segment";
import { curveOf } from "../pattern/ring";
import { pointOf, type Piece, type SeamName } from "../pattern/piece";
import { PLACED_ACCURACY } from "../tolerance";
import type { Mm } from "../units";

/** The breast is covered by this much about its point. */
const ABOUT_BUST_POINT: Mm = 30;
/** Beside the lines of a dart, and its end. */
const BESIDE_DART: Mm = 12;
/** Beside any seam that the edge does not end at. */
const BESIDE_SEAM: Mm = 20;
/** What is left of a shoulder: narrower it is a strap. */
export const SHOULDER_LEFT: Mm = 25;
/** Beside a dart's mouth, or the princess seam, in the shoulder. */
export const BESIDE_MOUTH: Mm = 10;
/** What is left of the centre above the bust line, and above the under-bust of a cup. */
export const CENTRE_LEFT: Mm = 15;
/** Higher, or narrower, than the pattern's own, an edge is no more than this: the neck is there. */
export const HIGHER_AT_MOST: Mm = 20;

/** Seams that an edge may end at. */
const ENDS_AT: ReadonlySet<SeamName> = new Set(["neck", "centre", "shoulder", "strap"]);

/** Beside a princess seam no more than beside the dart that it stands for. */
const besideSeam = (seam: SeamName): Mm => (seam === "princess" ? BESIDE_DART : BESIDE_SEAM);

export type Polyline = readonly PiecePoint[];

export const flattened = (curves: readonly EdgeCurve<"piece">[]): Polyline =>
  curves.flatMap((curve, index) => {
    const places = edgeFlatten(curve, PLACED_ACCURACY);
    return index === 0 ? places : places.slice(1);
  });

/** How near a line comes to a point. */
export function nearestTo(line: Polyline, point: PiecePoint): Mm {
  let least = Infinity;
  for (let at = 1; at < line.length; at += 1) {
    const [a, b] = [line[at - 1], line[at]];
    if (a !== undefined && b !== undefined) least = Math.min(least, segmentNearest(a, b, point).distance);
  }
  return least;
}

/** How near two lines come, none of them nearer the end of the first than `beyond`. */
function apart(line: Polyline, other: Polyline, beyond: Mm): Mm {
  const end = line.at(-1);
  const off = line.filter((place) => end === undefined || distance(place, end) >= beyond);
  return Math.min(
    ...off.map((place) => nearestTo(other, place)),
    ...other
      .filter((place) => end === undefined || distance(place, end) >= beyond)
      .map((place) => nearestTo(line, place)),
  );
}

const crosses = (line: Polyline, a: PiecePoint, b: PiecePoint): boolean =>
  line.some((place, at) => {
    const next = line[at + 1];
    return next !== undefined && segmentIntersections(place, next, a, b).length > 0;
  });

/** Whether a new edge keeps clear of all that lies about it on its piece, but for a seam that it crosses. */
export function isClear(piece: Piece, line: Polyline, crossed: SeamName | null = null): boolean {
  const bust = (piece.points.bustPoint ?? piece.points.princessBust)?.at;
  if (bust !== undefined && nearestTo(line, bust) < ABOUT_BUST_POINT) return false;
  const isBesideDart = piece.darts.some(({ inner, outer, apex }) => {
    return [inner, outer].some((mouth) => {
      const leg = [pointOf(piece, apex), pointOf(piece, mouth)] as const;
      return crosses(line, ...leg) || apart(line, leg, 0) < BESIDE_DART;
    });
  });
  if (isBesideDart) return false;
  return piece.edges.every(
    (edge) =>
      ENDS_AT.has(edge.seam) ||
      edge.seam === crossed ||
      edge.mouthOf !== null ||
      apart(line, flattened([curveOf(piece, edge)]), BESIDE_SEAM * 2) >= besideSeam(edge.seam),
  );
}
