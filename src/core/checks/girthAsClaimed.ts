/** The girths measured on the final pieces are those that chart, picks and alterations add up to. */
import { piecesOf } from "../pattern/pieceSet";
import { levelWidth } from "../girth/levelWidth";
import { isBasque } from "../pattern/pieceGroups";
import { GIRTH_AGREEMENT } from "../tolerance";
import { near, type Check } from "./context";

export const girthAsClaimed: Check = ({ levels, pieces }) =>
  levels.map(({ level, finished, claim }) =>
    near({
      name: "girthAsClaimed",
      measured: finished,
      expected: claim,
      tolerance: GIRTH_AGREEMENT,
      unit: "mm",
      pieces: piecesOf(pieces)
        .filter((piece) => isBasque(piece.name) === (level === "hip") && levelWidth(piece, level) !== null)
        .map(({ name }) => name),
      level,
    }),
  );
