/**
 * The shoulder line turned about the side neck point as if it were sewn: over a dart in it, and over a princess seam that
 * ends in it, to the piece beyond. Its length stays; what it joins on each piece is drawn on to it.
 */
import { edgeTangentAt } from "../geometry/edgeCurve";
import { directionOf, shift, turnBetween } from "../geometry/point";
import { composeRigid, invertRigid, moveRigidly, rigidMotion, type Rigid } from "../geometry/rigid";
import { moveMouthEnd } from "../dart/mouthEnd";
import { seamLength } from "../girth/seamLength";
import { dartOf, isBend, pointOf, type DartName, type Piece, type PieceName, type PointName } from "../pattern/piece";
import { invariant } from "../result";
import { SAME_POINT, SHORTEST_EDGE } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";
import { pieceIn, withPiece, type PieceSet } from "../pattern/pieceSet";
import { fitHandles } from "./fitHandles";
import { curveOf, edgeFrom, edgeTo } from "../pattern/ring";
import { smoothStretchAt, stretchLength } from "../pattern/seamStretch";

/** The pieces that a shoulder seam lies on, from the neck outwards; empty where there is no whole shoulder. */
export function shoulderPieces(pieces: PieceSet, side: "front" | "back"): readonly PieceName[] {
  const names: readonly PieceName[] =
    side === "back" ? ["back"] : pieces.front === undefined ? ["centreFront", "sideFront"] : ["front"];
  const found = names.filter((name) => (pieces[name]?.edges ?? []).some((edge) => edge.seam === "shoulder"));
  const first = pieces[found[0] ?? "strap"];
  const last = pieces[found.at(-1) ?? "strap"];
  return isCorner(first, "sideNeck") && isCorner(last, "shoulderTip") ? found : [];
}

const isCorner = (piece: Piece | undefined, point: PointName): boolean =>
  piece !== undefined && piece.edges.some((edge) => edge.from === point);

/** Both sides have a shoulder seam. */
export const hasShoulders = (pieces: PieceSet): boolean =>
  shoulderPieces(pieces, "front").length > 0 && shoulderPieces(pieces, "back").length > 0;

export const shoulderLength = (pieces: PieceSet, names: readonly PieceName[]): Mm =>
  names.reduce((sum, name) => sum + seamLength(pieceIn(pieces, name), "shoulder"), 0);

/** The direction in which a shoulder leaves the side neck point. */
export const shoulderFall = (piece: Piece): Radians =>
  edgeTangentAt(curveOf(piece, invariant(piece.edges[edgeFrom(piece, "sideNeck")], "shoulder edge")), 0);

/** Turns the shoulder about the side neck point; positive turns +x towards +y, which lowers its end. */
export function turnShoulder(pieces: PieceSet, side: "front" | "back", turn: Radians): PieceSet {
  const names = shoulderPieces(pieces, side);
  let set = pieces;
  let motion = rigidMotion(pointOf(pieceIn(pieces, invariant(names[0], "shoulder piece")), "sideNeck"), turn);
  names.forEach((name, index) => {
    const before = names[index - 1];
    if (before !== undefined)
      motion = seenBeyond(motion, ontoSideFront(pieceIn(pieces, before), pieceIn(pieces, name)));
    const done = turnedOn(pieceIn(pieces, name), motion);
    motion = done.motion;
    set = withPiece(set, done.piece);
  });
  return names.length > 1 ? walkUpperPrincess(pieces, set) : set;
}

/** The corners of a piece's shoulder moved; the motion changes over each dart, which would be sewn shut. */
function turnedOn(piece: Piece, start: Rigid<"piece">): { readonly piece: Piece; readonly motion: Rigid<"piece"> } {
  let moved = piece;
  let motion = start;
  for (const edge of piece.edges) {
    if (edge.seam !== "shoulder") continue;
    if (edge.from === "princessTop")
      moved = moveMouthEnd(moved, edge.from, moveRigidly(motion, pointOf(piece, edge.from)));
    if (edge.mouthOf !== null) motion = seenBeyond(motion, openingOf(piece, edge.mouthOf));
    if (isBend(edge.to)) continue;
    moved = moveMouthEnd(moved, edge.to, moveRigidly(motion, pointOf(piece, edge.to)));
  }
  return { piece: moved, motion };
}

/** A motion of the near side as it is seen on the far side, where `onto` takes the near side to the far one. */
const seenBeyond = (motion: Rigid<"piece">, onto: Rigid<"piece">): Rigid<"piece"> =>
  composeRigid(composeRigid(invertRigid(onto), motion), onto);

/** What opens a shut dart: the turn about its end that takes the leg met first to the other. */
function openingOf(piece: Piece, name: DartName): Rigid<"piece"> {
  const { apex } = dartOf(piece, name);
  const mouth = invariant(
    piece.edges.find((edge) => edge.mouthOf === name),
    name,
  );
  const at = pointOf(piece, apex);
  return rigidMotion(
    at,
    turnBetween(directionOf(at, pointOf(piece, mouth.from)), directionOf(at, pointOf(piece, mouth.to))),
  );
}

/** What takes the centre front to where it lies sewn to the side front at the top of the princess seam. */
export function ontoSideFront(centreFront: Piece, sideFront: Piece): Rigid<"piece"> {
  const [top, onto] = [pointOf(centreFront, "princessTop"), pointOf(sideFront, "princessTop")];
  const turn = turnBetween(seamDown(centreFront), seamDown(sideFront));
  return composeRigid(rigidMotion(top, turn), rigidMotion(top, radians(0), onto.x - top.x, onto.y - top.y));
}

/** The direction of the princess seam at its top, downwards. */
function seamDown(piece: Piece): Radians {
  const out = invariant(piece.edges[edgeFrom(piece, "princessTop")], "edge");
  if (out.seam === "princess") return edgeTangentAt(curveOf(piece, out), 0);
  return radians(
    edgeTangentAt(curveOf(piece, invariant(piece.edges[edgeTo(piece, "princessTop")], "edge")), 1) + Math.PI,
  );
}

const upperPrincess = (piece: Piece): number =>
  piece.edges.findIndex(
    (edge) => edge.seam === "princess" && (edge.from === "princessTop" || edge.to === "princessTop"),
  );

const lengthAt = (piece: Piece, index: number): Mm => stretchLength(piece, smoothStretchAt(piece, index));

/** The upper stretch of the side front's princess seam differs from the centre front's by as much as before. */
export function walkUpperPrincess(before: PieceSet, after: PieceSet): PieceSet {
  const difference = (set: PieceSet): Mm => {
    const [centre, side] = [pieceIn(set, "centreFront"), pieceIn(set, "sideFront")];
    return lengthAt(side, upperPrincess(side)) - lengthAt(centre, upperPrincess(centre));
  };
  const drift = difference(after) - difference(before);
  const side = pieceIn(after, "sideFront");
  const index = upperPrincess(side);
  return withPiece(after, fitHandles(side, [index], lengthAt(side, index) - drift));
}

/** The upper armhole is nearly straight: handles much longer or shorter would bend it where the arm needs it smooth. */
const ARMHOLE_REACH = { shortest: 0.6, longest: 1.5 } as const;

/** The armhole's first edge redrawn so that the whole is as long as wanted, or as nearly as a smooth line can make it. */
export function fitUpperArmhole(piece: Piece, from: PointName, length: Mm): Piece {
  const index = edgeFrom(piece, from);
  return fitHandles(piece, [index], lengthAt(piece, index) + length - seamLength(piece, "armhole"), ARMHOLE_REACH);
}

/**
 * How far round the end of the shoulder stands on its piece from where it would lie on the piece of the neck, all darts
 * on the way sewn.
 */
export function tiltAtTip(pieces: PieceSet, side: "front" | "back"): Radians {
  const names = shoulderPieces(pieces, side);
  const tilts = names.map((name, index): number => {
    const piece = pieceIn(pieces, name);
    const before = names[index - 1];
    const seam = before === undefined ? 0 : ontoSideFront(pieceIn(pieces, before), piece).angle;
    const darts = piece.edges.flatMap(({ seam: on, mouthOf }) =>
      on === "shoulder" && mouthOf !== null ? [openingOf(piece, mouthOf).angle] : [],
    );
    return darts.reduce((sum, dart) => sum + dart, seam);
  });
  return radians(tilts.reduce((sum, tilt) => sum + tilt, 0));
}

/** The pieces that meet at the underarm. */
export const underarmPieces = (pieces: PieceSet): readonly PieceName[] =>
  (["front", "sideFront", "cup", "back"] as const).filter((name) => isCorner(pieces[name], "underarm"));

/** How much of the side seam can be taken from its upper end on every piece; mm. */
export function roomAtUnderarm(pieces: PieceSet): Mm {
  const rooms = underarmPieces(pieces).map((name) =>
    lengthAt(pieceIn(pieces, name), edgeFrom(pieceIn(pieces, name), "underarm")),
  );
  return Math.max(0, Math.min(...rooms) - SHORTEST_EDGE - SAME_POINT);
}

/** The piece with some corners shifted alike. */
export const shiftCorners = (piece: Piece, corners: readonly PointName[], dx: Mm, dy: Mm): Piece =>
  corners.reduce((moved, corner) => moveMouthEnd(moved, corner, shift(pointOf(moved, corner), dx, dy)), piece);
