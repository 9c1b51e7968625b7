/** The upper edge of a strapped bodice: neckline up to the strap's seam, and on down into the underarm. */
import { edgeTangentAt } from "../geometry/edgeCurve";
import { piecePoint } from "../geometry/point";
import { controls, curved, OUTWARD, straight } from "../pattern/namedEdges";
import { pointOf, type Piece } from "../pattern/piece";
import { invariant } from "../result";
import { curveOf, edgeFrom, edgeTo } from "../pattern/ring";
import { radians, type Mm } from "../units";
import type { StrapEnd } from "./strap";

export interface UpperEdge {
  /** Height of the neckline at the centre. */
  readonly centreY: Mm;
  readonly strap: StrapEnd;
  /** Where the curves leave and arrive: controls as shares of the straight distance. */
  readonly neck: readonly [number, number];
  readonly armhole: readonly [number, number];
  /** How far the curves lean from the strap's own way at its seam: 0 runs on in line with the strap. */
  readonly neckLean: number;
  readonly armholeLean: number;
}

/**
 * The piece with everything above a new upper edge cut off. The neckline leaves the centre squarely, so that the two
 * halves make one smooth curve; the armhole comes into the underarm as the block's does.
 */
export function cutUpperEdge(piece: Piece, edge: UpperEdge): Piece {
  const { strap } = edge;
  const centre = piecePoint(0, edge.centreY);
  const underarm = pointOf(piece, "underarm");
  const arriving = edgeTangentAt(curveOf(piece, invariant(piece.edges[edgeTo(piece, "underarm")], "armhole")), 1);
  const neck = controls(
    centre,
    OUTWARD,
    strap.inner,
    radians(strap.towards + edge.neckLean),
    edge.neck[0],
    edge.neck[1],
  );
  const down = radians(strap.towards + Math.PI - edge.armholeLean);
  const armhole = controls(strap.outer, down, underarm, arriving, edge.armhole[0], edge.armhole[1]);
  return {
    ...piece,
    points: {
      ...piece.points,
      centreNeck: { at: centre, level: "neck" },
      strapInner: { at: strap.inner, level: "shoulder" },
      strapOuter: { at: strap.outer, level: "shoulder" },
    },
    edges: [
      curved("centreNeck", "strapInner", "neck", neck[0], neck[1]),
      straight("strapInner", "strapOuter", "strap"),
      curved("strapOuter", "underarm", "armhole", armhole[0], armhole[1]),
      ...piece.edges.slice(edgeFrom(piece, "underarm")),
    ],
  };
}
