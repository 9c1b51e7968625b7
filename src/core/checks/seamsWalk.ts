/** Seams that are sewn together are of one length, but for a named ease. */
import { pieceIn, type PieceSet } from "../pattern/pieceSet";
import { seamLength } from "../girth/seamLength";
import type { PieceName, SeamName } from "../pattern/piece";
import { seamPairsOf } from "../pattern/sewnTogether";
import { SEWN_AGREEMENT } from "../tolerance";
import type { Mm } from "../units";
import { near, type Check } from "./context";

const lengthOf = (pieces: PieceSet, names: readonly PieceName[], seam: SeamName): Mm =>
  names.reduce((sum, name) => sum + seamLength(pieceIn(pieces, name), seam), 0);

export const seamsWalk: Check = ({ pieces }) =>
  seamPairsOf(pieces).map(({ seam, first, second, ease }) =>
    near({
      name: "seamsWalk",
      measured: lengthOf(pieces, first, seam) - lengthOf(pieces, second, seam),
      expected: ease,
      tolerance: SEWN_AGREEMENT,
      unit: "mm",
      pieces: [...first, ...second],
      seam,
    }),
  );
