/** The dart cap: the shape of the seam line across the mouth, so that the folded dart is caught whole in the seam. */
import {
  edgeCrossingsAtY,
  edgeMap,
  edgePart,
  edgePointAt,
  edgeReverse,
  edgeTangentAt,
  lineEdge,
  type EdgeCurve,
} from "../geometry/edgeCurve";
import { angleAt, directionOf, distance, midpoint, polar, rotateAbout, type PiecePoint } from "../geometry/point";
import { reflectInLine } from "../geometry/segment";
import { invariant } from "../result";
import { opensUpright } from "../pattern/dartNames";
import { dartOf, pointOf, type DartName, type Piece } from "../pattern/piece";
import { radians, type Radians } from "../units";
import { curveOf, edgeFrom, edgeTo } from "../pattern/ring";

type Chain = readonly EdgeCurve<"piece">[];

export interface DartCap {
  /** From the inner mouth end to the tip on the dart's middle, and from the tip to the outer mouth end. */
  readonly halves: readonly [Chain, Chain];
  /** How the inner half would go on beyond the tip: what is parallel to the cap turns at the dart's middle, not here. */
  readonly beyond: Chain;
  /** A point of the dart's middle beside the tip: its end. */
  readonly apex: PiecePoint;
}

/** Going straight on from where the seam ends, the tip is sought no further from the dart's end than so many of that way. */
const FURTHEST_TIP = 1.25;

/**
 * The stitch line across the mouth of a dart whose bulk is folded towards the centre (upright darts) or down (those
 * along the bust, and French darts), seam cut through all layers while it is folded. A dart that is gathered has none.
 *
 * The bulk lies on the seam beside one leg; the stretch of that seam within half the dart's angle of the leg, reflected
 * across the leg, is half the cap, and reflected again across the dart's middle is the other half. Where the seam bends,
 * so does the cap. A seam that ends before that is taken to go straight on, if that does not lead far out. Piece frame.
 */
export function dartCapOf(piece: Piece, name: DartName): DartCap {
  const dart = dartOf(piece, name);
  const apex = pointOf(piece, dart.apex);
  const inner = pointOf(piece, dart.inner);
  const outer = pointOf(piece, dart.outer);
  const middle = midpoint(inner, outer);
  const straight = (tip: PiecePoint): DartCap => ({
    halves: [[lineEdge(inner, tip)], [lineEdge(tip, outer)]],
    beyond: [],
    apex,
  });
  if (dart.gathered === true) return straight(middle);
  const half = angleAt(apex, inner, outer) / 2;
  const isDown = isFoldedDown(name);
  const [foldedOnto, other] = isDown ? [outer, inner] : [inner, outer];
  const limit = radians(2 * directionOf(apex, foldedOnto) - directionOf(apex, middle));
  const beside = seamAway(piece, isDown ? dart.outer : dart.inner);
  const first = invariant(beside[0], "seam beside a dart");
  // A seam lying nearly along the leg never meets the middle line: leave the mouth straight.
  if (Math.sin(angleAt(foldedOnto, apex, polar(foldedOnto, edgeTangentAt(first, 0), 1)) + half) <= 0)
    return straight(middle);
  const found = partedAt(beside, apex, limit);
  const overLeg = (edges: Chain): Chain =>
    edges.map((edge) => edgeMap(edge, (p) => reflectInLine(p, apex, foldedOnto)));
  const overMiddle = (edges: Chain): Chain => edges.map((edge) => edgeMap(edge, (p) => reflectInLine(p, apex, middle)));
  const [near, beyond] = [overLeg(found.until), overLeg(found.rest)];
  const tip = invariant(near.at(-1), "cap").b;
  const far = joinedAt(backwards(overMiddle(near)), tip, other);
  return isDown
    ? { halves: [backwards(far), backwards(near)], beyond: overMiddle(beyond), apex }
    : { halves: [near, far], beyond, apex };
}

const backwards = (edges: Chain): Chain => edges.map((edge) => edgeReverse(edge)).toReversed();

/** Reflected twice, ends come back to themselves but for rounding: they are the very points again. */
function joinedAt(edges: Chain, a: PiecePoint, b: PiecePoint): Chain {
  return edges.map((edge, index) => ({
    ...edge,
    a: index === 0 ? a : edge.a,
    b: index === edges.length - 1 ? b : edge.b,
  }));
}

/** The same as three points: the inner end of the mouth, the tip on the dart's middle, the outer end. */
export function dartCap(piece: Piece, name: DartName): readonly [PiecePoint, PiecePoint, PiecePoint] {
  const [one, two] = dartCapOf(piece, name).halves;
  return [invariant(one[0], "cap").a, invariant(two[0], "cap").a, invariant(two.at(-1), "cap").b];
}

/** Which way a dart's bulk is pressed (common practice, no source). */
export const isFoldedDown = (name: DartName): boolean => opensUpright(name);

/** The seam from one mouth end away from the dart, as far as it goes on without another dart. */
function seamAway(piece: Piece, end: ReturnType<typeof dartOf>["inner"]): Chain {
  const count = piece.edges.length;
  const isBack = invariant(piece.edges[edgeTo(piece, end)], "edge").mouthOf === null;
  const start = isBack ? edgeTo(piece, end) : edgeFrom(piece, end);
  const { seam } = invariant(piece.edges[start], "edge");
  const found: EdgeCurve<"piece">[] = [];
  for (let k = 0; k < count; k += 1) {
    const edge = invariant(piece.edges[(start + (isBack ? count - k : k)) % count], "edge");
    if (edge.seam !== seam || edge.mouthOf !== null) break;
    found.push(isBack ? edgeReverse(curveOf(piece, edge)) : curveOf(piece, edge));
  }
  return found;
}

/** The chain until it meets a line from the apex, going straight on from its end, and the rest of it. */
function partedAt(chain: Chain, apex: PiecePoint, way: Radians): { readonly until: Chain; readonly rest: Chain } {
  const level = (p: PiecePoint): PiecePoint => rotateAbout(p, apex, radians(-way));
  for (const [index, edge] of chain.entries()) {
    const t = edgeCrossingsAtY(edgeMap(edge, level), apex.y).find((at) => level(edgePointAt(edge, at)).x > apex.x);
    if (t === undefined) continue;
    return {
      until: [...chain.slice(0, index), edgePart(edge, 0, t)],
      rest: [edgePart(edge, t, 1), ...chain.slice(index + 1)],
    };
  }
  const last = invariant(chain.at(-1), "seam beside a dart");
  const [from, along] = [last.b, edgeTangentAt(last, 1)];
  // Law of sines in the triangle of the apex, the seam's end and where it would meet the line.
  const beta = angleAt(from, apex, polar(from, along, 1));
  const gamma = angleAt(apex, from, polar(apex, way, 1));
  const leg = distance(apex, from);
  const on = Math.sin(beta + gamma) <= 0 ? Infinity : (leg * Math.sin(beta)) / Math.sin(beta + gamma);
  // What lies beyond the seam's end is caught in nothing: it is left off square to the fold.
  const to = polar(apex, way, on <= FURTHEST_TIP * leg ? on : leg * Math.cos(gamma));
  return { until: [...chain, lineEdge(from, to)], rest: [] };
}
