/** Shoulder slope: the end of the shoulder raised or lowered, and the whole armhole with it, on front and back alike. */
import { rotateAbout, shift, piecePoint } from "../../geometry/point";
import { moveMouthEnd } from "../../dart/mouthEnd";
import { seamLength } from "../../girth/seamLength";
import { pointOf, type Piece, type PieceName, type PointName } from "../../pattern/piece";
import { fail, must, ok } from "../../result";
import { edgeFrom, edgeTo } from "../../surgery/ring";
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
import { pieceIn, withPiece, type PieceSet } from "../pieceSet";
import type { FitDefinition } from "./definition";

const sides = ["front", "back"] as const;
type Side = (typeof sides)[number];

/**
 * The turn of a shoulder about the side neck point that raises its end.
 *
 * @source the end moves on a circle of the shoulder's length L: sin(new fall) = sin(fall) - rise / L
 */
function turnFor(pieces: PieceSet, side: Side, rise: Mm): Radians {
  const names = shoulderPieces(pieces, side);
  const fall = shoulderFall(pieceIn(pieces, must(names[0], "shoulder piece")));
  return radians(Math.asin(Math.sin(fall) - rise / shoulderLength(pieces, names)) - fall);
}

function raised(pieces: PieceSet, side: Side, rise: Mm): PieceSet {
  const names = shoulderPieces(pieces, side);
  const turn = turnFor(pieces, side, rise);
  let set = turnShoulder(pieces, side, turn);
  const neckPiece = pieceIn(set, must(names[0], "neck piece"));
  set = withPiece(set, edgeTurned(neckPiece, edgeTo(neckPiece, "sideNeck"), "end", turn));
  const tipPiece = pieceIn(set, must(names.at(-1), "tip piece"));
  set = withPiece(set, edgeTurned(tipPiece, edgeFrom(tipPiece, "shoulderTip"), "start", turn));
  if (side === "front") set = withUpperPieceRaised(set, rise);
  const under = must(underarmPieces(set).find((name) => (name === "back") === (side === "back")), "underarm piece");
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
  if (centreFront === undefined || sideFront === undefined || !isBetween(centreFront, "princessTop", "armhole")) return set;
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
  const corners = piece.edges.flatMap(({ to, seam }) => (seam === "armhole" && to !== "princessTop" ? [to] : []));
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

const steps = (move: string, slide: string): Readonly<Partial<Record<PieceName, readonly string[]>>> => {
  const shoulder = [
    move,
    "Rule the shoulder from the neck end to that mark, as long as it was. A shoulder dart is folded shut for this.",
  ];
  const armhole = [
    slide,
    "Trace the armhole again from the new underarm to the new end of the shoulder; it keeps its shape, and its length to within a few millimetres.",
    "Draw the side seam straight up or down to the new underarm, and the neckline smooth into the shoulder.",
  ];
  return {
    front: [...shoulder, ...armhole],
    centreFront: [...shoulder, "Draw the princess seam, and any armhole on this piece, smooth to the new corners."],
    sideFront: [
      "Move the upper end of the princess seam as on the centre front, so that the seam is as long on both; lay the pieces together there and carry the shoulder across.",
      ...armhole,
    ],
    back: [...shoulder, ...armhole],
  };
};

export const shoulderSlope: FitDefinition = {
  phase: "edges",
  words: {
    name: "Shoulder slope",
    seen: "Square shoulders: folds lie across below the neck and the shoulder ends are tight. Sloping shoulders: folds fall from the neck to the underarm.",
    amount: "Raise the end of the shoulder by",
    hint: "for square shoulders; less than 0 lowers it for sloping ones",
    more: {
      title: "Raise the end of the shoulder and the armhole by {amount}",
      steps: steps(
        "Mark {amount} above the end of the shoulder, straight up.",
        "Lay the traced armhole {amount} higher: its underarm {amount} further up the line of the side seam.",
      ),
    },
    less: {
      title: "Lower the end of the shoulder and the armhole by {amount}",
      steps: steps(
        "Mark {amount} below the end of the shoulder, straight down.",
        "Lay the traced armhole {amount} lower: its underarm {amount} further down the side seam.",
      ),
    },
  },
  range: { least: -25, most: 25 },
  applies: (pieces) => hasShoulders(pieces) && underarmPieces(pieces).length === 2,
  apply: (pieces, amount) => {
    const most = -roomAtUnderarm(pieces);
    if (amount < most) return fail({ code: "slip/too-much", most });
    return ok({ pieces: sides.reduce((set, side) => raised(set, side, amount), pieces), traces: [], values: {} });
  },
};
