/** Width of the straps: the strap, and the seams on cup and back that it is sewn to. */
import { moveMouthEnd } from "../../dart/mouthEnd";
import { shift } from "../../geometry/point";
import { pointOf, type Piece, type PieceName, type PointName } from "../../pattern/piece";
import { fail, must, ok } from "../../result";
import type { Mm } from "../../units";
import { withPiece } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";
import { roomForStrap, slideStrapSeam, strapBearers, strapSeam } from "./strapEnds";

/** A strap narrower than this cannot be turned right side out (common practice, no source). */
const NARROWEST: Mm = 6;

const OUTER_EDGE: readonly PointName[] = ["strapBackOuter", "strapFrontOuter"];

const widened = (strap: Piece, amount: Mm): Piece =>
  OUTER_EDGE.reduce((piece, name) => moveMouthEnd(piece, name, shift(pointOf(piece, name), amount, 0)), strap);

const steps = (wider: boolean): Partial<Record<PieceName, readonly string[]>> => {
  const ends = [
    `Move both ends of the strap's seam ${wider ? "apart" : "together"} by {half} each, along the seam.`,
    "Draw neckline and armhole anew to its ends.",
  ];
  return {
    cup: ends,
    back: ends,
    strap: [`Draw one long edge {amount} further ${wider ? "out" : "in"}, all the way along.`],
  };
};

export const strapWidth: FitDefinition = {
  phase: "edges",
  words: {
    name: "Width of the straps",
    seen: "The straps do not hide what is worn beneath; or they are too wide for the shoulders.",
    amount: "Widen by",
    hint: "less than 0 narrows",
    more: { title: "Make the straps {amount} wider", steps: steps(true) },
    less: { title: "Make the straps {amount} narrower", steps: steps(false) },
  },
  range: { least: -34, most: 40 },
  applies: (pieces) => pieces.strap !== undefined && strapBearers(pieces).length > 0,
  apply: (pieces, amount) => {
    const narrowest = Math.min(...strapBearers(pieces).map(strapSeam));
    if (narrowest + amount < NARROWEST)
      return fail({ code: "slip/too-much", most: Math.min(0, NARROWEST - narrowest) });
    const { inward, outward } = roomForStrap(pieces);
    const room = 2 * Math.min(inward, outward);
    if (amount > room) return fail({ code: "slip/too-much", most: room });
    const half = amount / 2;
    const set = strapBearers(pieces).reduce(
      (done, piece) => withPiece(done, slideStrapSeam(piece, half, -half)),
      pieces,
    );
    return ok({
      pieces: withPiece(set, widened(must(pieces.strap, "strap"), amount)),
      traces: [],
      values: { half: Math.abs(half) },
    });
  },
};
