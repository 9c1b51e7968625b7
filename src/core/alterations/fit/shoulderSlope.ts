/** Shoulder slope: the end of the shoulder raised or lowered, and the whole armhole with it, on front and back alike. */
import { rotateAbout, shift, piecePoint } from "../../geometry/point";
import { moveMouthEnd } from "../../dart/mouthEnd";
import { seamLength } from "../../girth/seamLength";
import { pointOf, type Piece, type PieceName, type PointName } from "../../pattern/piece";
import { fail, must, ok } from "../../result";
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
import { hasDartIn, isCorner, princessBeginsIn, told, toldFor, topMoved, type Steps } from "./told";

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
  const under = must(
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

const topAlike = (way: "up" | "down"): string =>
  `Lay the piece on the centre front along the top of the princess seam and carry the seam's new top over to it, {top} further ${way}. Draw the seam smooth to it, and walk it against the centre front's.`;

const WAYS = {
  up: {
    mark: "Mark {amount} above the end of the shoulder, straight up.",
    slide: "Lay the traced armhole {amount} higher: its underarm {amount} further up the line of the side seam.",
    top: "Move the top of the princess seam {top} straight up.",
    alike: topAlike("up"),
    side: "Draw the side seam straight up to the new underarm.",
  },
  down: {
    mark: "Mark {amount} below the end of the shoulder, straight down.",
    slide: "Lay the traced armhole {amount} lower: its underarm {amount} further down the side seam.",
    top: "Move the top of the princess seam {top} straight down.",
    alike: topAlike("down"),
    side: "The side seam now ends at the new underarm.",
  },
} as const;
type Way = (typeof WAYS)[keyof typeof WAYS];

const LAY =
  "Lay centre front and side front together along the top of the princess seam, so that the shoulder runs across both.";
const SHUT = "Fold the shoulder dart shut before you rule.";
const RULE = "Rule the shoulder from the neck end to that mark, as long as it was.";
const APART =
  "The top of the princess seam moves by {top} on both fronts. Take the pieces apart, draw the seam smooth to its new top on both, and walk it.";
const RULED =
  "The shoulder is ruled on both fronts together, as told on the centre front. The top of the princess seam moves by {top}: draw the seam smooth to its new top, and walk it.";
const UPPER_ARMHOLE =
  "Draw the armhole from the new end of the shoulder to the new top of the princess seam, in the shape that it had.";
const SEAM = "Draw the princess seam smooth to its new top.";
const NECK = "Draw the neckline smooth into the shoulder.";
const armholeTo = (end: string): string =>
  `Trace the armhole again from the new underarm to the new ${end}; it keeps its shape, and its length to within a few millimetres.`;

/** What there is to do on a piece: by whether it has the shoulder, its end, the underarm and the top of a princess seam. */
function stepsFor(piece: Piece, way: Way): readonly string[] {
  const isShared = princessBeginsIn(piece, "shoulder");
  const isRuledBeside = isShared && piece.name === "sideFront";
  const hasShoulder = piece.edges.some(({ seam }) => seam === "shoulder") && !isRuledBeside;
  const [hasTip, hasUnderarm] = [isCorner(piece, "shoulderTip"), isCorner(piece, "underarm")];
  const isParted = princessBeginsIn(piece, "armhole");
  return told(
    isRuledBeside && RULED,
    isShared && !isRuledBeside && LAY,
    hasShoulder && way.mark,
    hasShoulder && hasDartIn(piece, "shoulder") && SHUT,
    hasShoulder && RULE,
    isShared && !isRuledBeside && APART,
    isParted && (hasTip ? way.top : way.alike),
    isParted && hasTip && UPPER_ARMHOLE,
    isParted && hasTip && SEAM,
    hasUnderarm && way.slide,
    hasUnderarm && armholeTo(hasTip ? "end of the shoulder" : "top of the princess seam"),
    hasUnderarm && way.side,
    isCorner(piece, "sideNeck") && NECK,
  );
}

/** For a front in one piece, or with the princess seam from the armhole. */
const steps = (way: Way): Steps => {
  const whole = [way.mark, RULE, way.slide, armholeTo("end of the shoulder"), way.side, NECK];
  return {
    front: whole,
    centreFront: [way.mark, RULE, way.top, UPPER_ARMHOLE, SEAM, NECK],
    sideFront: [way.alike, way.slide, armholeTo("top of the princess seam"), way.side],
    back: whole,
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
      steps: steps(WAYS.up),
    },
    less: {
      title: "Lower the end of the shoulder and the armhole by {amount}",
      steps: steps(WAYS.down),
    },
  },
  range: { least: -25, most: 25 },
  applies: (pieces) => hasShoulders(pieces) && underarmPieces(pieces).length === 2,
  apply: (pieces, amount) => {
    const most = 0 - roomAtUnderarm(pieces);
    if (amount < most) return fail({ code: "slip/too-much", most });
    const after = sides.reduce((set, side) => raised(set, side, amount), pieces);
    const tell = toldFor(pieces, after, (piece) => stepsFor(piece, amount > 0 ? WAYS.up : WAYS.down));
    return ok({ pieces: after, traces: [], values: { top: topMoved(pieces, after) }, steps: tell });
  },
};
