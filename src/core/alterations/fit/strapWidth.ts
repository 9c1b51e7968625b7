/** Width of the straps: the strap, and the seams on cup and back that it is sewn to. */
import { moveMouthEnd } from "../../dart/mouthEnd";
import { shift } from "../../geometry/point";
import { pointOf, type Piece, type PointName } from "../../pattern/piece";
import { fail, invariant, ok } from "../../result";
import type { Mm } from "../../units";
import { withPiece } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";
import { roomForStrap, slideStrapSeam, strapBearers, strapSeam } from "./strapEnds";

/** A strap narrower than this cannot be turned right side out (common practice, no source). */
const NARROWEST: Mm = 6;

const OUTER_EDGE: readonly PointName[] = ["strapBackOuter", "strapFrontOuter"];

const widened = (strap: Piece, amount: Mm): Piece =>
  OUTER_EDGE.reduce((piece, name) => moveMouthEnd(piece, name, shift(pointOf(piece, name), amount, 0)), strap);

export const strapWidth: FitDefinition = {
  range: { least: -34, most: 40 },
  madeOn: ["cup", "back", "strap"],
  applies: (pieces) => pieces.strap !== undefined && strapBearers(pieces).length > 0,
  apply: (pieces, amount) => {
    const narrowest = Math.min(...strapBearers(pieces).map(strapSeam));
    if (narrowest + amount < NARROWEST)
      return fail({ code: "alteration/too-much", most: Math.min(0, NARROWEST - narrowest) });
    const { inward, outward } = roomForStrap(pieces);
    const room = 2 * Math.min(inward, outward);
    if (amount > room) return fail({ code: "alteration/too-much", most: room });
    const half = amount / 2;
    const set = strapBearers(pieces).reduce(
      (done, piece) => withPiece(done, slideStrapSeam(piece, half, -half)),
      pieces,
    );
    return ok({
      pieces: withPiece(set, widened(invariant(pieces.strap, "strap"), amount)),
      traces: [],
      values: { half: Math.abs(half) },
    });
  },
};
