/** Width across the back, at the armholes. */
import { invariant, ok } from "../../result";
import { withPiece } from "../../pattern/pieceSet";
import { fromUnderarm, hasArmhole, slideArmhole } from "./armholeWidth";
import type { FitDefinition } from "../outcome/definition";

export const backWidth: FitDefinition = {
  range: { least: -30, most: 30 },
  isWhole: true,
  madeOn: ["back"],
  applies: ({ back }) => hasArmhole(back) && back.points.shoulderTip !== undefined,
  apply: (pieces, amount) => {
    const back = invariant(pieces.back, "back");
    const { piece, trace } = slideArmhole(back, amount / 2);
    const values = { half: Math.abs(amount) / 2, apart: fromUnderarm(back) };
    return ok({ pieces: withPiece(pieces, piece), traces: [trace], values });
  },
};
