/**
 * The waist seam turned about a hinge on the side seam: the bodice gets a wedge across just above the waist, the basque
 * one just below it. Nothing changes at the side seam; the centre gets the whole amount.
 */
import { piecePoint, shift, type PiecePoint } from "../../geometry/point";
import { rigidMotion } from "../../geometry/rigid";
import { invariant } from "../../result";
import { pointOf, type Piece } from "../../pattern/piece";
import { moveBeyondCut } from "../../surgery/beyondCut";
import type { Operated } from "../../surgery/cutAndMove";
import { walkAgain } from "../../surgery/walkAgain";
import {
  alongFrom,
  placeFrom,
  pointAt,
  squareWaistAgain,
  turnAbout,
  wedgeTurn,
  withLengthsOf,
} from "../../surgery/wedge";
import type { Mm } from "../../units";
import { withPiece, type PieceSet } from "../../pattern/pieceSet";
import type { FitApplied } from "../outcome/definition";

/**
 * How far from the waist seam the cut lies, along the centre and along the side seam; over how much the waist is drawn square
 * to the centre; and over how much above the waist a centre and a side front are laid together to be cut as one (our own
 * choices).
 */
const FROM_WAIST: Mm = 20;
const SQUARE: Mm = 20;
const TOGETHER: Mm = 40;

/** How far from the waist seam a cut lies: less than is wanted on an edge too short for it. */
interface FromWaist {
  readonly centre: Mm;
  readonly side: Mm;
}

interface Lowered extends Operated {
  readonly fromWaist: FromWaist;
}

/** The lengths that the words of a cut above the waist name. */
export const valuesOf = ({ centre, side }: FromWaist) => ({ above: centre, aboveAtSide: side, square: SQUARE });

/** Where the amount is measured: on the centre line, level with the hinge; so lowering and raising undo each other. */
const atCentre = (piece: Piece, hinge: PiecePoint): PiecePoint => piecePoint(pointOf(piece, "centreWaist").x, hinge.y);

/** The waist of one piece with a centre and a side seam lowered at the centre, above it (bodice) or below it (basque). */
export function lowerWaist(piece: Piece, amount: Mm, part: "bodice" | "basque"): Lowered {
  const isBodice = part === "bodice";
  const [before, after] = isBodice ? (["before", "after"] as const) : (["after", "before"] as const);
  const side = placeFrom(piece, "sideWaist", before, FROM_WAIST);
  const centre = placeFrom(piece, "centreWaist", after, FROM_WAIST);
  const hinge = pointAt(piece, side);
  const turn = wedgeTurn(hinge, atCentre(piece, hinge), amount, false);
  const [into, outOf] = isBodice ? [side, centre] : [centre, side];
  const done = moveBeyondCut(piece, { into, outOf, motion: turnAbout(hinge, turn) });
  return {
    ...done,
    piece: squareWaistAgain(done.piece, piece, { turned: turn, lower: amount }, "sideWaist"),
    fromWaist: {
      side: alongFrom(piece, "sideWaist", before, FROM_WAIST),
      centre: alongFrom(piece, "centreWaist", after, FROM_WAIST),
    },
  };
}

/** The same over a princess seam: the cut goes on where the two pieces meet, and both turn as one. */
function lowerPrincessWaist(pieces: PieceSet, amount: Mm): FitApplied {
  const centreFront = invariant(pieces.centreFront, "centreFront");
  const sideFront = invariant(pieces.sideFront, "sideFront");
  const side = placeFrom(sideFront, "sideWaist", "before", FROM_WAIST);
  const sideSeam = placeFrom(sideFront, "princessWaist", "after", FROM_WAIST);
  const centreSeam = placeFrom(centreFront, "princessWaist", "before", FROM_WAIST);
  const centre = placeFrom(centreFront, "centreWaist", "after", FROM_WAIST);
  const hinge = pointAt(sideFront, side);
  const [meets, met] = [pointAt(sideFront, sideSeam), pointAt(centreFront, centreSeam)];
  const laid = shift(hinge, met.x - meets.x, met.y - meets.y);
  const turn = wedgeTurn(laid, atCentre(centreFront, laid), amount, false);
  const sideDone = moveBeyondCut(sideFront, { into: side, outOf: sideSeam, motion: rigidMotion(hinge, turn) });
  const centreDone = moveBeyondCut(centreFront, { into: centreSeam, outOf: centre, motion: rigidMotion(laid, turn) });
  const set = withPiece(
    withPiece(pieces, withLengthsOf(sideDone.piece, sideFront, "sideWaist")),
    squareWaistAgain(centreDone.piece, centreFront, { turned: turn, lower: amount }, "princessWaist"),
  );
  const fromWaist = {
    side: alongFrom(sideFront, "sideWaist", "before", FROM_WAIST),
    centre: alongFrom(centreFront, "centreWaist", "after", FROM_WAIST),
  };
  return {
    pieces: walkAgain(pieces, set),
    traces: [centreDone.trace, sideDone.trace],
    values: { ...valuesOf(fromWaist), together: TOGETHER },
  };
}

/** The bodice piece that has the front's or back's centre and side ends of the waist; null with a princess seam between. */
export function waistPiece(pieces: PieceSet, half: "front" | "back"): Piece | null {
  const candidates = half === "front" ? [pieces.frontBand, pieces.front] : [pieces.backBand, pieces.back];
  return (
    candidates.find((piece) => piece?.points.centreWaist !== undefined && piece.points.sideWaist !== undefined) ?? null
  );
}

/** The waist seam of the front or back lowered at the centre: bodice longer by a wedge, basque shorter by the same. */
export function tiltWaist(pieces: PieceSet, half: "front" | "back", amount: Mm): FitApplied {
  const above = lowerAbove(pieces, half, amount);
  const basque = half === "front" ? pieces.frontBasque : pieces.backBasque;
  if (basque === undefined) return above;
  const { piece, trace, fromWaist } = lowerWaist(basque, amount, "basque");
  return {
    pieces: withPiece(above.pieces, piece),
    traces: [...above.traces, trace],
    values: { ...above.values, below: fromWaist.centre, belowAtSide: fromWaist.side },
  };
}

/** The bodice alone longer by a wedge at the centre front or back. */
export function lowerAbove(pieces: PieceSet, half: "front" | "back", amount: Mm): FitApplied {
  const bodice = waistPiece(pieces, half);
  return bodice === null ? lowerPrincessWaist(pieces, amount) : lowerBodice(pieces, bodice, amount);
}

function lowerBodice(pieces: PieceSet, bodice: Piece, amount: Mm): FitApplied {
  const { piece, trace, fromWaist } = lowerWaist(bodice, amount, "bodice");
  return { pieces: withPiece(pieces, piece), traces: [trace], values: valuesOf(fromWaist) };
}
