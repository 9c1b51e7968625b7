/** Where the straps sit: nearer the neck or nearer the end of the shoulder, on cup and back alike. */
import type { PieceName } from "../../pattern/piece";
import { fail, ok } from "../../result";
import { withPiece } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";
import { roomForStrap, slideStrapSeam, strapBearers } from "./strapEnds";

const steps = (towards: string): Partial<Record<PieceName, readonly string[]>> => {
  const moves = [
    `Move both ends of the strap's seam {amount} nearer the ${towards}, along the line of the seam; its length stays.`,
    "Keep the two ends of the strap in line over the shoulder.",
    "Draw neckline and armhole anew to its ends, as smooth as they were.",
  ];
  return { cup: moves, back: moves };
};

export const strapPlace: FitDefinition = {
  phase: "edges",
  words: {
    name: "Place of the straps",
    seen: "The straps slip off the shoulders, or rub against the neck.",
    amount: "Nearer the neck by",
    hint: "less than 0 moves them towards the end of the shoulder",
    more: { title: "Move the straps {amount} nearer the neck", steps: steps("neck") },
    less: { title: "Move the straps {amount} nearer the end of the shoulder", steps: steps("end of the shoulder") },
  },
  range: { least: -40, most: 40 },
  applies: (pieces) => strapBearers(pieces).length > 0,
  apply: (pieces, amount) => {
    const { inward, outward } = roomForStrap(pieces);
    if (amount > inward || amount < -outward)
      return fail({ code: "slip/too-much", most: amount > 0 ? inward : -outward });
    const set = strapBearers(pieces).reduce(
      (done, piece) => withPiece(done, slideStrapSeam(piece, amount, amount)),
      pieces,
    );
    return ok({ pieces: set, traces: [], values: {} });
  },
};
