/**
 * The style "cups on a midriff band": the front cut at the under-bust into a cup with a dart from below and a band, the
 * back cut likewise, and straps over the shoulder. Made from the block by the operations a dressmaker uses: the dart of
 * the band is closed, the shoulder dart of the cup is closed into the dart from below, the upper edge is cut down.
 */
import { aimDart, drawnStop } from "../dart/dartEnd";
import { trueSeamEvenly } from "../dart/trueSeamEvenly";
import { BLOCK_DIFFERENCE } from "../draft/draftMeasures";
import { seamLength } from "../girth/seamLength";
import { directionOf, midpoint, piecePoint, turnBetween, type PiecePoint } from "../geometry/point";
import { rigidMotion } from "../geometry/rigid";
import { dartOf, pointOf, type Piece } from "../pattern/piece";
import { ok } from "../result";
import { cutAndMove } from "../surgery/cutAndMove";
import { adjustCup, smoothSeamEnds } from "../surgery/cupBust";
import { withArmholeHinge } from "../surgery/fullBust";
import { pieceIn, withPiece, type PieceSet } from "../pattern/pieceSet";
import { radians, type Mm } from "../units";
import { cutAtUnderBust, drawDartTo, usualSideDepth, withOwnPoints } from "./cutAtUnderBust";
import { draftStrap, strapEndAt, strapWidth, type StrapEnd } from "./strap";
import type { Style, StyleOptions } from "./style";
import { cutUpperEdge } from "./upperEdge";

/** Shares of the way from the front's side neck point down to its bust point; our own choice for this style. */
const STRAP_ABOVE_BUST_POINT = 0.4;
const NECK_ABOVE_BUST_LINE = 0.11;
/** The back's upper edge: how far the strap leaves above the underarm, as a share of the armhole's depth, and where across. */
const BACK_STRAP_RISE = 0.14;
const BACK_STRAP_ACROSS = 0.45;
const NO_TURN = radians(0);

/** Where a strap crosses the shoulder seam. */
const shoulderMiddle = (piece: Piece): PiecePoint =>
  midpoint(pointOf(piece, "sideNeck"), pointOf(piece, "shoulderTip"));

/** The cup before its bust is adjusted, and the end of the strap on it. */
function cupFrom(upper: Piece, width: Mm): { readonly cup: Piece; readonly strap: StrapEnd } {
  const closed = closeShoulderDart(upper);
  const bustPoint = pointOf(closed, "bustPoint");
  const depth = bustPoint.y - pointOf(closed, "sideNeck").y;
  const strap = strapEndAt(
    piecePoint(bustPoint.x, bustPoint.y - STRAP_ABOVE_BUST_POINT * depth),
    shoulderMiddle(closed),
    width,
  );
  const cup = cutUpperEdge(closed, {
    centreY: bustPoint.y - NECK_ABOVE_BUST_LINE * depth,
    strap,
    neck: [0.3, 0.3],
    neckLean: 0.5,
    armhole: [0.35, 0.4],
    armholeLean: 0.5,
  });
  const own = withOwnPoints({ ...cup, centreOnFold: false });
  return { strap, cup: withBustHinge(withStrapAim(own, shoulderMiddle(closed)), closed) };
}

/** The side part turned about the bust point until the shoulder dart is shut: it opens the dart from below by as much. */
function closeShoulderDart(upper: Piece): Piece {
  const { inner, outer } = dartOf(upper, "shoulderDart");
  const pivot = pointOf(upper, "bustPoint");
  const turn = turnBetween(directionOf(pivot, pointOf(upper, outer)), directionOf(pivot, pointOf(upper, inner)));
  const { piece } = cutAndMove(
    upper,
    [
      {
        from: outer,
        to: dartOf(upper, "underBustDart").outer,
        inside: [pivot],
        carries: [],
        motion: rigidMotion(pivot, turn),
      },
    ],
    { cuts: [], hinges: [pivot] },
  );
  return { ...piece, darts: piece.darts.filter(({ name }) => name !== "shoulderDart") };
}

function backFrom(upper: Piece, width: Mm): { readonly back: Piece; readonly strap: StrapEnd } {
  const underarm = pointOf(upper, "underarm");
  const nape = pointOf(upper, "centreNeck");
  const middle = piecePoint(BACK_STRAP_ACROSS * underarm.x, underarm.y - BACK_STRAP_RISE * (underarm.y - nape.y));
  const strap = strapEndAt(middle, shoulderMiddle(upper), width);
  const back = cutUpperEdge(upper, {
    centreY: underarm.y,
    strap,
    neck: [0.5, 0.2],
    neckLean: 0.6,
    armhole: [0.3, 0.4],
    armholeLean: 0.7,
  });
  return { strap, back: withStrapAim(withOwnPoints(back), shoulderMiddle(upper)) };
}

/** Off the piece, in its frame: the point of the shoulder seam that its strap goes over. */
const withStrapAim = (piece: Piece, at: PiecePoint): Piece => ({
  ...piece,
  points: { ...piece.points, strapAim: { at, level: "shoulder" } },
});

/** Off the piece, in its frame, and only as long as its bust is adjusted: what a front's side part would turn about. */
const withBustHinge = (cup: Piece, front: Piece): Piece => ({
  ...cup,
  points: { ...cup.points, armholeHinge: { at: pointOf(withArmholeHinge(front), "armholeHinge"), level: "shoulder" } },
});

function withoutBustHinge(cup: Piece): Piece {
  const { armholeHinge: _, ...points } = cup.points;
  return { ...cup, points };
}

/** The five pieces of one size at the block's own cup difference. */
function piecesFrom(frontBlock: Piece, backBlock: Piece, { strap }: StyleOptions): PieceSet {
  const width = strapWidth(strap);
  const front = drawDartTo(frontBlock, pointOf(frontBlock, "bustPoint"));
  const back = drawDartTo(backBlock, pointOf(backBlock, dartOf(backBlock, "waistDart").apex));
  const sideDepth = (usualSideDepth(front) + usualSideDepth(back)) / 2;
  const frontParts = cutAtUnderBust(front, sideDepth, { upper: "cup", band: "frontBand", aimsAt: "bustPoint" });
  const backParts = cutAtUnderBust(back, sideDepth, { upper: "back", band: "backBand", aimsAt: null });
  const cup = cupFrom(frontParts.upper, width);
  const upperBack = backFrom(backParts.upper, width);
  return {
    cup: cup.cup,
    frontBand: frontParts.band,
    back: upperBack.back,
    backBand: backParts.band,
    strap: draftStrap(width, cup.strap, upperBack.strap),
  };
}

/** The style as a whole: cup, front band, back, back band, strap. */
export const midriffStyle: Style = {
  name: "midriff",
  bustPiece: "cup",
  waistPieces: { front: ["frontBand"], back: ["backBand"] },
  open: (front, back, difference, options) => {
    const pieces = piecesFrom(front, back, options);
    if (difference === BLOCK_DIFFERENCE) return ok(pieces);
    const adjusted = adjustCup(pieceIn(pieces, "cup"), (difference - BLOCK_DIFFERENCE) / 2);
    return adjusted.ok ? ok(withPiece(pieces, adjusted.value.piece)) : adjusted;
  },
  adjustBust: (pieces, spread) => {
    const adjusted = adjustCup(pieceIn(pieces, "cup"), spread);
    if (!adjusted.ok) return adjusted;
    const { piece, turn, drop } = adjusted.value;
    return ok({
      pieces: withPiece(pieces, piece),
      turn,
      drop,
      smoothed: NO_TURN,
      get traces() {
        return [adjusted.value.trace];
      },
    });
  },
  finish: (pieces, bustPoint, difference, endOf) => {
    const cup = pieceIn(pieces, "cup");
    const smooth = withoutBustHinge(smoothSeamEnds(cup));
    const { along, across } = endOf?.("underBustDart") ?? { along: drawnStop("underBustDart", difference), across: 0 };
    const ended = aimDart(smooth, "underBustDart", bustPoint, along, across);
    return withPiece(pieces, trueSeamEvenly(ended, "underBustDart", seamLength(cup, "underBust")));
  },
};
