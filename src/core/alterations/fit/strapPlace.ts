/** Where the straps sit: nearer the neck or nearer the end of the shoulder, on cup and back alike. */
import { fail, ok } from "../../result";
import { withPiece } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";
import { roomForStrap, slideStrapSeam, strapBearers } from "./strapEnds";

export const strapPlace: FitDefinition = {
  range: { least: -40, most: 40 },
  madeOn: ["cup", "back"],
  applies: (pieces) => strapBearers(pieces).length > 0,
  apply: (pieces, amount) => {
    const { inward, outward } = roomForStrap(pieces);
    if (amount > inward || amount < -outward)
      return fail({ code: "alteration/too-much", most: amount > 0 ? inward : -outward });
    const set = strapBearers(pieces).reduce(
      (done, piece) => withPiece(done, slideStrapSeam(piece, amount, amount)),
      pieces,
    );
    return ok({ pieces: set, traces: [], values: {} });
  },
};
