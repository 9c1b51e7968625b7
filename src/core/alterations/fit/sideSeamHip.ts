/** The side seam let out or taken in at the hip: a quarter of the amount at each edge of the basque. */
import { seamLength } from "../../girth/seamLength";
import { pointOf, type Piece } from "../../pattern/piece";
import { fail, ok } from "../../result";
import { shiftCorners } from "../../surgery/shoulderLine";
import { withSeamEnd } from "../../surgery/walkAgain";
import type { Mm } from "../../units";
import { piecesOf, withPiece, type PieceSet } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";
import { QUARTER } from "./quarter";

const basques = (pieces: PieceSet): readonly Piece[] =>
  piecesOf(pieces).filter(
    ({ edges }) => edges.some(({ from }) => from === "sideHip") && edges.some(({ from }) => from === "sideHem"),
  );

/** A basque is not taken in by more than this share of its width at the hip (our own choice). */
const SHARE = 0.25;

export const sideSeamHip: FitDefinition = {
  range: { least: -80, most: 100 },
  isWhole: true,
  madeOn: ["frontBasque", "backBasque"],
  applies: (pieces) => basques(pieces).length === 2,
  apply: (pieces, amount) => {
    const pair = basques(pieces);
    const most = (-SHARE * Math.min(...pair.map((piece) => pointOf(piece, "sideHip").x))) / QUARTER;
    if (amount < most) return fail({ code: "alteration/too-much", most });
    const moved = pair.map((piece) => shiftCorners(piece, ["sideHip", "sideHem"], amount * QUARTER, 0));
    // The slope of the seam differs a little between front and back: both take the mean of what it adds.
    const longer = moved.map((piece, i): Mm => seamLength(piece, "side") - seamLength(pair[i] ?? piece, "side"));
    const mean = longer.reduce((sum, one) => sum + one, 0) / pair.length;
    const set = moved.reduce((done, piece, i) => {
      const length = seamLength(pair[i] ?? piece, "side") + mean;
      return withPiece(done, withSeamEnd(piece, "side", "sideHem", length));
    }, pieces);
    return ok({ pieces: set, traces: [], values: { quarter: Math.abs(amount) * QUARTER }, girths: { hip: amount } });
  },
};
