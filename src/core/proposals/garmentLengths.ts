/**
 * What the pieces of a garment give of a body's lengths and widths. Where a garment has not all of a length, as a strapped one
 * has no nape, the part that it has is measured: it is by how much a length changed that is asked, never how long it is.
 */
import type { PrintedLength } from "../decisions/pattern";
import { edgeCrossingsAtY, edgePointAt } from "../geometry/edgeCurve";
import { distance, piecePoint, type PiecePoint } from "../geometry/point";
import { widthUpTo } from "../girth/levelWidth";
import { seamLength } from "../girth/seamLength";
import { pointOf, type Piece, type PointName, type SeamName } from "../pattern/piece";
import type { PieceSet } from "../pattern/pieceSet";
import { curveOf } from "../pattern/ring";
import type { Mm } from "../units";

/** How far the wearer's redraws brought the ends of the bust darts, beside what moved with the piece: outwards, and down. */
export interface DartsMoved {
  readonly out: Mm;
  readonly down: Mm;
}

const NOT_MOVED: DartsMoved = { out: 0, down: 0 };

const at = (piece: Piece | undefined, name: PointName): PiecePoint | null => piece?.points[name]?.at ?? null;

/** The piece that carries the bust point. */
export const bustPieceIn = ({ front, centreFront, cup }: PieceSet): Piece | undefined =>
  [front, centreFront, cup].find((piece) => piece?.points.bustPoint !== undefined);

/** Where the bust darts of a garment aim. */
function aimOf(pieces: PieceSet, { out, down }: DartsMoved): PiecePoint | null {
  const bust = at(bustPieceIn(pieces), "bustPoint");
  return bust === null ? null : piecePoint(bust.x + out, bust.y + down);
}

/** Sewn length of a seam on the pieces that are there; null where none has it. */
function sewn(pieces: readonly (Piece | undefined)[], seam: SeamName): Mm | null {
  const having = pieces.filter((piece) => piece?.edges.some((edge) => edge.seam === seam));
  return having.length === 0
    ? null
    : having.reduce((sum, piece) => sum + (piece === undefined ? 0 : seamLength(piece, seam)), 0);
}

const added = (...parts: readonly (Mm | null)[]): Mm | null =>
  parts.some((part) => part === null) ? null : parts.reduce<Mm>((sum, part) => sum + (part ?? 0), 0);

const doubled = (half: Mm | null): Mm | null => (half === null ? null : 2 * half);

/** Down the centre back; of a strapped back from its upper edge. */
const backWaist = ({ back, backBand }: PieceSet): Mm | null =>
  back === undefined ? null : added(sewn([back], "centre"), backBand === undefined ? 0 : sewn([backBand], "centre"));

/** From the side neck, or from where a strap goes over the shoulder, to where the bust darts aim. */
function bustDepth(pieces: PieceSet, moved: DartsMoved): Mm | null {
  const piece = bustPieceIn(pieces);
  const top = at(piece, "sideNeck") ?? at(piece, "strapAim");
  const bust = aimOf(pieces, moved);
  if (top === null || bust === null) return null;
  return distance(top, bust) + (pieces.strap === undefined ? 0 : strapLength(pieces.strap));
}

/** A longer strap lets the front down: the back is held by the band. */
const strapLength = (strap: Piece): Mm => seamLength(strap, "neck");

/** On from the bust point straight down to the waist seam, and of a cup to its lower seam and over the band. */
function belowBust(pieces: PieceSet): Mm | null {
  const piece = bustPieceIn(pieces);
  const bust = at(piece, "bustPoint");
  if (piece === undefined || bust === null) return null;
  if (pieces.frontBand !== undefined) {
    const dart = piece.darts.find(({ seam }) => seam === "underBust");
    const ends = dart === undefined ? [] : [pointOf(piece, dart.inner), pointOf(piece, dart.outer)];
    if (ends.length === 0) return null;
    // The two ends of the mouth meet where the tape runs.
    const cup = ends.reduce((sum, end) => sum + distance(bust, end), 0) / ends.length;
    return added(cup, sewn([pieces.frontBand], "centre"));
  }
  const waist = heightBelow(piece, bust.x);
  return waist === null ? null : waist - bust.y;
}

/** Turned, what runs up and down runs across: crossings are sought at a height. */
const turned = ({ x, y }: PiecePoint): PiecePoint => piecePoint(y, x);

/** The height of a piece's waist straight below a place; where the waist does not reach so far, of its outer end. */
function heightBelow(piece: Piece, x: Mm): Mm | null {
  const heights = piece.edges
    .filter(({ seam }) => seam === "waist")
    .flatMap((edge) => {
      const { a, b, curve } = curveOf(piece, edge);
      const side = {
        a: turned(a),
        b: turned(b),
        curve: curve === null ? null : { c1: turned(curve.c1), c2: turned(curve.c2) },
      };
      return edgeCrossingsAtY(side, x).map((t) => edgePointAt(side, t).x);
    });
  if (heights.length > 0) return Math.max(...heights);
  return at(piece, "princessWaist")?.y ?? at(piece, "centreWaist")?.y ?? null;
}

const bustWidth = (pieces: PieceSet, moved: DartsMoved): Mm | null => {
  const [bust, centre] = [aimOf(pieces, moved), at(bustPieceIn(pieces), "centreBust")];
  return bust === null ? null : 2 * (bust.x - (centre?.x ?? 0));
};

/** Half the width at the fullest turn of an armhole, darts shut. */
function acrossHalf(piece: Piece | undefined): Mm | null {
  const touch = at(piece, "armholeTouch");
  return piece === undefined || touch === null ? null : widthUpTo(piece, touch);
}

/** The same over a princess seam: the centre front is measured where the two meet. */
function acrossFrontHalf({ front, centreFront, sideFront }: PieceSet): Mm | null {
  if (front !== undefined) return acrossHalf(front);
  const touch = at(sideFront, "armholeTouch");
  if (centreFront === undefined || sideFront === undefined || touch === null) return null;
  const [top, topOfSide] = [at(centreFront, "princessTop"), at(sideFront, "princessTop")];
  if (top === null || topOfSide === null) return null;
  const height = top.y + touch.y - topOfSide.y;
  const meets = centreFront.edges
    .filter(({ seam }) => seam === "princess")
    .flatMap((edge) => {
      const curve = curveOf(centreFront, edge);
      return edgeCrossingsAtY(curve, height).map((t) => edgePointAt(curve, t));
    })[0];
  return meets === undefined ? null : widthUpTo(centreFront, meets) + widthUpTo(sideFront, touch);
}

const shoulder = ({ front, centreFront, sideFront }: PieceSet): Mm | null =>
  sewn([front, centreFront, sideFront], "shoulder");

/** All round, of a garment that has a whole neck. */
function neck({ front, centreFront, back }: PieceSet): Mm | null {
  const pieces = [front ?? centreFront, back];
  return pieces.every((piece) => at(piece, "sideNeck") !== null) ? doubled(sewn(pieces, "neck")) : null;
}

/** The upper edge of a midriff band; other garments have no seam there. */
const underBust = ({ frontBand, backBand }: PieceSet): Mm | null =>
  frontBand === undefined || backBand === undefined ? null : doubled(sewn([frontBand, backBand], "underBust"));

/**
 * What a set of pieces gives of a length of the body, whole widths and girths; null where it has nothing of it.
 *
 * @param moved how far the wearer's redraws brought the ends of the bust darts
 */
export function garmentLength(measure: PrintedLength, pieces: PieceSet, moved: DartsMoved = NOT_MOVED): Mm | null {
  switch (measure) {
    case "backWaistLength":
      return backWaist(pieces);
    case "frontWaistLength":
      return added(bustDepth(pieces, NOT_MOVED), belowBust(pieces));
    case "shoulderLength":
      return shoulder(pieces);
    case "acrossBack":
      return doubled(acrossHalf(pieces.back));
    case "acrossFront":
      return doubled(acrossFrontHalf(pieces));
    case "neckBaseGirth":
      return neck(pieces);
    case "bustPointWidth":
      return bustWidth(pieces, moved);
    case "sideNeckToBustPoint":
      return bustDepth(pieces, moved);
    case "underBustGirth":
      return underBust(pieces);
    case "height":
      return null;
  }
}
