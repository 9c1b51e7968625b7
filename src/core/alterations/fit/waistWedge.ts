/**
 * The waist seam turned about a hinge on the side seam: the bodice gets a wedge across just above the waist, the basque
 * one just below it. Nothing changes at the side seam; the centre gets the whole amount.
 */
import { piecePoint, shift, type PiecePoint } from "../../geometry/point";
import { rigidMotion } from "../../geometry/rigid";
import { must } from "../../result";
import { pointOf, type Piece } from "../../pattern/piece";
import { moveBeyondCut } from "../../surgery/beyondCut";
import type { Operated, SurgeryTrace } from "../../surgery/cutAndMove";
import { walkAgain } from "../../surgery/walkAgain";
import { placeFrom, pointAt, squareWaistAgain, turnAbout, wedgeTurn, withLengthsOf } from "../../surgery/wedge";
import type { Mm } from "../../units";
import { withPiece, type PieceSet } from "../../pattern/pieceSet";

/** How far from the waist seam the cut lies, along the centre and along the side seam (our own choice). */
const FROM_WAIST: Mm = 20;

export interface Wedged {
  readonly pieces: PieceSet;
  readonly traces: readonly SurgeryTrace[];
}

/** Where the amount is measured: on the centre line, level with the hinge; so lowering and raising undo each other. */
const atCentre = (piece: Piece, hinge: PiecePoint): PiecePoint => piecePoint(pointOf(piece, "centreWaist").x, hinge.y);

/** The waist of one piece with a centre and a side seam lowered at the centre, above it (bodice) or below it (basque). */
export function lowerWaist(piece: Piece, amount: Mm, part: "bodice" | "basque"): Operated {
  const isBodice = part === "bodice";
  const side = placeFrom(piece, "sideWaist", isBodice ? "before" : "after", FROM_WAIST);
  const centre = placeFrom(piece, "centreWaist", isBodice ? "after" : "before", FROM_WAIST);
  const hinge = pointAt(piece, side);
  const turn = wedgeTurn(hinge, atCentre(piece, hinge), amount, false);
  const [into, outOf] = isBodice ? [side, centre] : [centre, side];
  const done = moveBeyondCut(piece, { into, outOf, motion: turnAbout(hinge, turn) });
  return { ...done, piece: squareWaistAgain(done.piece, piece, { turned: turn, lower: amount }, "sideWaist") };
}

/** The same over a princess seam: the cut goes on where the two pieces meet, and both turn as one. */
export function lowerPrincessWaist(pieces: PieceSet, amount: Mm): Wedged {
  const centreFront = must(pieces.centreFront, "centreFront");
  const sideFront = must(pieces.sideFront, "sideFront");
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
  return { pieces: walkAgain(pieces, set), traces: [centreDone.trace, sideDone.trace] };
}

/** The bodice piece that has the front's or back's centre and side ends of the waist; null with a princess seam between. */
export function waistPiece(pieces: PieceSet, half: "front" | "back"): Piece | null {
  const candidates = half === "front" ? [pieces.frontBand, pieces.front] : [pieces.backBand, pieces.back];
  return (
    candidates.find((piece) => piece?.points.centreWaist !== undefined && piece.points.sideWaist !== undefined) ?? null
  );
}

/** The waist seam of the front or back lowered at the centre: bodice longer by a wedge, basque shorter by the same. */
export function tiltWaist(pieces: PieceSet, half: "front" | "back", amount: Mm): Wedged {
  const bodice = waistPiece(pieces, half);
  const above =
    bodice === null ? lowerPrincessWaist(pieces, amount) : one(pieces, lowerWaist(bodice, amount, "bodice"));
  const basque = half === "front" ? pieces.frontBasque : pieces.backBasque;
  if (basque === undefined) return above;
  const below = one(above.pieces, lowerWaist(basque, amount, "basque"));
  return { pieces: below.pieces, traces: [...above.traces, ...below.traces] };
}

const one = (pieces: PieceSet, { piece, trace }: Operated): Wedged => ({
  pieces: withPiece(pieces, piece),
  traces: [trace],
});
