/** Shoulder slope: the end of the shoulder raised or lowered, and the whole armhole with it, on front and back alike. */
import { rotateAbout, shift, piecePoint } from "../../geometry/point";
import { moveMouthEnd } from "../../dart/mouthEnd";
import { seamLength } from "../../girth/seamLength";
import { isBend, pointOf, type Piece, type PieceName, type PointName } from "../../pattern/piece";
import { fail, invariant, ok } from "../../result";
import { edgeFrom, edgeTo } from "../../pattern/ring";
import {
  fitUpperArmhole,
  hasShoulders,
  ontoSideFront,
  roomAtUnderarm,
  shoulderFall,
  shoulderLength,
  shiftCorners,
  shoulderPieces,
  tiltAtTip,
  turnShoulder,
  underarmPieces,
  walkUpperPrincess,
} from "../../surgery/shoulderLine";
import { edgeTurned } from "../../surgery/straightThrough";
import { withSeamEnd } from "../../surgery/walkAgain";
import { radians, type Mm, type Radians } from "../../units";
import { pieceIn, withPiece, type PieceSet } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";
import { topMoved } from "./whatChanged";

const sides = ["front", "back"] as const;
type Side = (typeof sides)[number];

/** What an armhole traced anew may come out longer or shorter than it was: it is eased in unseen (our own choice). */
const WITHIN: Mm = 3;

/**
 * The turn of a shoulder about the side neck point that raises its end.
 *
 * @source the end moves on a circle of the shoulder's length L: sin(new fall) = sin(fall) - rise / L
 */
function turnFor(pieces: PieceSet, side: Side, rise: Mm): Radians {
  const names = shoulderPieces(pieces, side);
  const fall = shoulderFall(pieceIn(pieces, invariant(names[0], "shoulder piece")));
  return radians(Math.asin(Math.sin(fall) - rise / shoulderLength(pieces, names)) - fall);
}

function raised(pieces: PieceSet, side: Side, rise: Mm): PieceSet {
  const names = shoulderPieces(pieces, side);
  const turn = turnFor(pieces, side, rise);
  let set = turnShoulder(pieces, side, turn);
  const neckPiece = pieceIn(set, invariant(names[0], "neck piece"));
  set = withPiece(set, edgeTurned(neckPiece, edgeTo(neckPiece, "sideNeck"), "end", turn));
  const tipPiece = pieceIn(set, invariant(names.at(-1), "tip piece"));
  set = withPiece(set, edgeTurned(tipPiece, edgeFrom(tipPiece, "shoulderTip"), "start", turn));
  if (side === "front") set = withUpperPieceRaised(set, rise);
  const under = invariant(
    underarmPieces(set).find((name) => (name === "back") === (side === "back")),
    "underarm piece",
  );
  set = withPiece(set, armholeRaised(pieceIn(set, under), rise, tiltOf(pieces, side, under)));
  return withArmholesFitted(pieces, set, [...new Set([...names, under])]);
}

/** How far the upper end of a piece's armhole stands tilted from upright. */
const tiltOf = (pieces: PieceSet, side: Side, under: PieceName): Radians =>
  under === "sideFront" && !shoulderPieces(pieces, side).includes("sideFront")
    ? ontoSideFront(pieceIn(pieces, "centreFront"), pieceIn(pieces, "sideFront")).angle
    : tiltAtTip(pieces, side);

/** A princess seam from the armhole: its upper end goes up with the armhole on both pieces. */
function withUpperPieceRaised(set: PieceSet, rise: Mm): PieceSet {
  const { centreFront, sideFront } = set;
  if (centreFront === undefined || sideFront === undefined || !isBetween(centreFront, "princessTop", "armhole"))
    return set;
  const up = rotateAbout(piecePoint(0, -rise), piecePoint(0, 0), ontoSideFront(centreFront, sideFront).angle);
  const centre = moveMouthEnd(centreFront, "princessTop", shift(pointOf(centreFront, "princessTop"), 0, -rise));
  const side = moveMouthEnd(sideFront, "princessTop", shift(pointOf(sideFront, "princessTop"), up.x, up.y));
  return walkUpperPrincess(set, withPiece(withPiece(set, centre), side));
}

const isBetween = (piece: Piece, corner: PointName, seam: "armhole"): boolean =>
  piece.edges.some((edge) => edge.to === corner && edge.seam === seam);

/** The underarm up along the side seam; the armhole's other corners straight up, the lower ones more as the underarm does. */
function armholeRaised(piece: Piece, rise: Mm, tilt: Radians): Piece {
  const up = rotateAbout(piecePoint(0, -rise), piecePoint(0, 0), tilt);
  const corners = piece.edges.flatMap(({ to, seam }) =>
    seam === "armhole" && to !== "princessTop" && !isBend(to) ? [to] : [],
  );
  const lifted = withSeamEnd(piece, "side", "underarm", seamLength(piece, "side") + rise);
  const [was, is] = [pointOf(piece, "underarm"), pointOf(lifted, "underarm")];
  return corners.slice(0, -1).reduce((moved, corner, index) => {
    const share = (index + 1) / corners.length;
    return shiftCorners(moved, [corner], up.x + (is.x - was.x - up.x) * share, up.y + (is.y - was.y - up.y) * share);
  }, lifted);
}

/** Each piece's stretch of the armhole as long as before, redrawn at its upper end. */
const withArmholesFitted = (before: PieceSet, after: PieceSet, names: readonly PieceName[]): PieceSet =>
  names.reduce((set, name) => {
    const piece = pieceIn(set, name);
    const length = seamLength(pieceIn(before, name), "armhole");
    if (length === 0) return set;
    const from = piece.edges.some((edge) => edge.from === "shoulderTip") ? "shoulderTip" : "princessTop";
    return withPiece(set, fitUpperArmhole(piece, from, length));
  }, after);

export const shoulderSlope: FitDefinition = {
  range: { least: -25, most: 25 },
  madeOn: ["front", "centreFront", "sideFront", "back"],
  applies: (pieces) => hasShoulders(pieces) && underarmPieces(pieces).length === 2,
  apply: (pieces, amount) => {
    const most = 0 - roomAtUnderarm(pieces);
    if (amount < most) return fail({ code: "alteration/too-much", most });
    const after = sides.reduce((set, side) => raised(set, side, amount), pieces);
    return ok({ pieces: after, traces: [], values: { top: topMoved(pieces, after), within: WITHIN } });
  },
};
