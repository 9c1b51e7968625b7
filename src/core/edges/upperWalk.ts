/**
 * The upper edge of a half front or back as it is sewn: from the centre over neck, shoulder or strap and armhole down the side,
 * with every dart that it crosses folded shut, and the parts of a princess seam laid edge to edge.
 */
import type { EdgeCurve } from "../geometry/edgeCurve";
import { directionOf, turnBetween, type PiecePoint } from "../geometry/point";
import { composeRigid, moveEdgeRigidly, moveRigidly, rigidMotion, type Rigid } from "../geometry/rigid";
import { edgePointAt } from "../geometry/edgeCurve";
import { invariant } from "../result";
import { dartOf, pointOf, type Edge, type Piece, type PointName, type SeamName } from "../pattern/piece";
import { curveOf, edgeFrom, edgeTo } from "../pattern/ring";
import { placeAlong, stretchFrom, stretchLength, stretchTo, type RingPlace } from "../pattern/seamStretch";
import { radians, type Mm } from "../units";

/** An edge of the walk where it lies when all is flat. */
export interface WalkEdge {
  readonly curve: EdgeCurve<"piece">;
  readonly seam: SeamName;
  readonly from: PointName;
  readonly to: PointName;
}

const UPPER: ReadonlySet<SeamName> = new Set<SeamName>(["neck", "shoulder", "strap", "armhole", "side"]);

/**
 * @param pieces from the centre outwards: one, or the two of a princess seam
 * @param depth  how far down a princess seam the two are laid edge to edge
 * @returns in order, clockwise, in the frame of the first piece; each edge begins where the one before ends
 */
export function upperWalk(pieces: readonly Piece[], depth: Mm): readonly WalkEdge[] {
  const walk: WalkEdge[] = [];
  let motion = rigidMotion<"piece">(pointOf(invariant(pieces[0], "piece"), "centreNeck"), radians(0));
  for (const [at, piece] of pieces.entries()) {
    const before = pieces[at - 1];
    if (before !== undefined) motion = laidBeside(before, piece, motion, depth);
    for (const edge of edgesOn(piece, at === 0 ? "centreNeck" : "princessTop")) {
      if (edge.mouthOf === null)
        walk.push({
          curve: moveEdgeRigidly(motion, curveOf(piece, edge)),
          seam: edge.seam,
          from: edge.from,
          to: edge.to,
        });
      else motion = composeRigid(shut(piece, edge), motion);
    }
  }
  return walk;
}

/** From a corner on as long as it is of the upper edge. */
function edgesOn(piece: Piece, from: PointName): readonly Edge[] {
  const start = edgeFrom(piece, from);
  const ring = [...piece.edges.slice(start), ...piece.edges.slice(0, start)];
  const end = ring.findIndex(({ seam }) => !UPPER.has(seam));
  return end < 0 ? ring : ring.slice(0, end);
}

/** What lies beyond a dart's mouth turned about its end until the mouth is shut. */
function shut(piece: Piece, { from, to, mouthOf }: Edge): Rigid<"piece"> {
  const apex = pointOf(piece, dartOf(piece, invariant(mouthOf, "dart")).apex);
  const [near, far] = [pointOf(piece, from), pointOf(piece, to)];
  return turnedTo(apex, [apex, far], [apex, near], far, near);
}

/** The turn that brings one direction to another, and a point to a point. */
function turnedTo(
  centre: PiecePoint,
  [a, b]: readonly [PiecePoint, PiecePoint],
  [c, d]: readonly [PiecePoint, PiecePoint],
  from: PiecePoint,
  to: PiecePoint,
): Rigid<"piece"> {
  const turn = turnBetween(directionOf(a, b), directionOf(c, d));
  const at = moveRigidly(rigidMotion(centre, turn), from);
  return rigidMotion(centre, turn, to.x - at.x, to.y - at.y);
}

/** The outer part of a princess seam laid beside the inner one along its uppermost stretch. */
function laidBeside(inner: Piece, outer: Piece, motion: Rigid<"piece">, depth: Mm): Rigid<"piece"> {
  const down = stretchFrom(inner, "princessTop");
  const up = stretchTo(outer, "princessTop");
  const [top, low] = [
    moveRigidly(motion, pointOf(inner, "princessTop")),
    moveRigidly(motion, at(inner, placeAlong(inner, down, depth))),
  ];
  const own = pointOf(outer, "princessTop");
  const ownLow = at(outer, placeAlong(outer, up, stretchLength(outer, up) - depth));
  return turnedTo(own, [own, ownLow], [top, low], own, top);
}

const at = (piece: Piece, { index, t }: RingPlace): PiecePoint =>
  edgePointAt(curveOf(piece, invariant(piece.edges[index], "edge")), t);

/** The centre line from its upper end down, as far as no dart opens on it. */
export function centreDown(piece: Piece): readonly EdgeCurve<"piece">[] {
  const last = edgeTo(piece, "centreNeck");
  const ring = [...piece.edges.slice(last + 1), ...piece.edges.slice(0, last + 1)].toReversed();
  const end = ring.findIndex(({ seam, mouthOf }) => seam !== "centre" || mouthOf !== null);
  return (end < 0 ? ring : ring.slice(0, end)).map((edge) => {
    const { a, b, curve } = curveOf(piece, edge);
    return { a: b, b: a, curve: curve === null ? null : { c1: curve.c2, c2: curve.c1 } };
  });
}
