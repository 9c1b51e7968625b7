/** Armhole depth: the underarm lowered or raised along the side seam, on front and back alike. */
import { seamLength } from "../../girth/seamLength";
import { fail, ok } from "../../result";
import { roomAtUnderarm, underarmPieces } from "../../surgery/shoulderLine";
import { withSeamEnd } from "../../surgery/walkAgain";
import { pieceIn, withPiece } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";

export const armholeDepth: FitDefinition = {
  range: { least: -25, most: 30 },
  madeOn: ["front", "sideFront", "cup", "back"],
  applies: (pieces) => underarmPieces(pieces).length === 2,
  apply: (pieces, amount) => {
    const most = roomAtUnderarm(pieces);
    if (amount > most) return fail({ code: "alteration/too-much", most });
    const set = underarmPieces(pieces).reduce((done, name) => {
      const piece = pieceIn(done, name);
      return withPiece(done, withSeamEnd(piece, "side", "underarm", seamLength(piece, "side") - amount));
    }, pieces);
    return ok({ pieces: set, traces: [], values: {} });
  },
};
