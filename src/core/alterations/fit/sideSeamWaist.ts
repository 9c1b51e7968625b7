/** The side seam let out or taken in at the waist: a quarter of the amount at each edge, bodice and basque alike. */
import { seamLength } from "../../girth/seamLength";
import type { Piece } from "../../pattern/piece";
import { fail, ok } from "../../result";
import { fitCorner } from "../../surgery/fitCorner";
import { stretchAt, stretchLength } from "../../pattern/seamStretch";
import { SAME_POINT, SHORTEST_EDGE } from "../../tolerance";
import type { Mm } from "../../units";
import { piecesOf, withPiece, type PieceSet } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";
import { QUARTER } from "./quarter";

const hasSideWaist = (piece: Piece): boolean =>
  piece.edges.some((edge) => edge.seam === "waist") && piece.edges.some(({ from }) => from === "sideWaist");

/** How much the stretch of waist next to the side seam can give up on every piece. */
const roomOf = (pieces: PieceSet): Mm =>
  Math.min(
    ...piecesOf(pieces)
      .filter(hasSideWaist)
      .map((piece) => {
        const edge = piece.edges.findIndex(
          (e) => e.seam === "waist" && (e.from === "sideWaist" || e.to === "sideWaist"),
        );
        return stretchLength(piece, stretchAt(piece, edge)) - SHORTEST_EDGE - SAME_POINT;
      }),
  );

export const sideSeamWaist: FitDefinition = {
  range: { least: -80, most: 80 },
  isWhole: true,
  madeOn: ["front", "sideFront", "frontBand", "back", "backBand", "frontBasque", "backBasque"],
  applies: (pieces) => piecesOf(pieces).some(hasSideWaist),
  apply: (pieces, amount) => {
    const most = -roomOf(pieces) / QUARTER;
    if (amount < most) return fail({ code: "alteration/too-much", most });
    let set = pieces;
    for (const piece of piecesOf(pieces).filter(hasSideWaist)) {
      const drawn = fitCorner(piece, "sideWaist", [
        { seam: "waist", length: seamLength(piece, "waist") + amount * QUARTER },
        { seam: "side", length: seamLength(piece, "side") },
      ]);
      if (drawn === null) return fail({ code: "alteration/outline-spoilt", piece: piece.name });
      set = withPiece(set, drawn);
    }
    return ok({ pieces: set, traces: [], values: { quarter: Math.abs(amount) * QUARTER }, girths: { waist: amount } });
  },
};
