/** The seams that a strap is sewn to, on cup and back. */
import { moveMouthEnd } from "../../dart/mouthEnd";
import { distance, directionOf, polar } from "../../geometry/point";
import { pointOf, type Piece } from "../../pattern/piece";
import { stretchFrom, stretchLength, stretchTo, type Stretch } from "../../pattern/seamStretch";
import type { Mm } from "../../units";
import type { PieceSet } from "../../pattern/pieceSet";

/** What must be left of the neckline or the armhole beside a strap. */
const LEFT_OF_EDGE: Mm = 15;

/** The pieces that a strap is sewn on to. */
export const strapBearers = ({ cup, back }: PieceSet): Piece[] =>
  [cup, back]
    .filter((piece) => piece?.points.strapInner !== undefined && piece.points.strapOuter !== undefined)
    .filter((piece) => piece !== undefined);

/**
 * The strap's seam with its ends moved along it: towards the centre (positive) by amounts of their own. The place on the
 * shoulder that the strap makes for goes with the middle of its seam.
 */
export function slideStrapSeam(piece: Piece, inner: Mm, outer: Mm): Piece {
  const [a, b] = [pointOf(piece, "strapInner"), pointOf(piece, "strapOuter")];
  const inward = directionOf(b, a);
  const moved = moveMouthEnd(
    moveMouthEnd(piece, "strapInner", polar(a, inward, inner)),
    "strapOuter",
    polar(b, inward, outer),
  );
  const aim = piece.points.strapAim;
  return aim === undefined ? moved : moveMouthEnd(moved, "strapAim", polar(aim.at, inward, (inner + outer) / 2));
}

export const strapSeam = (piece: Piece): Mm => distance(pointOf(piece, "strapInner"), pointOf(piece, "strapOuter"));

const room = (piece: Piece, stretch: Stretch): Mm => stretchLength(piece, stretch) - LEFT_OF_EDGE;

/** How far the strap's seam can go towards the centre, and towards the armhole, on every piece that bears it. */
export function roomForStrap(pieces: PieceSet): { readonly inward: Mm; readonly outward: Mm } {
  const bearers = strapBearers(pieces);
  return {
    inward: Math.max(0, Math.min(...bearers.map((piece) => room(piece, stretchTo(piece, "strapInner"))))),
    outward: Math.max(0, Math.min(...bearers.map((piece) => room(piece, stretchFrom(piece, "strapOuter"))))),
  };
}
