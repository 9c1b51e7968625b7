/** Width across the back, at the armholes. */
import { invariant, ok } from "../../result";
import { withPiece } from "../../pattern/pieceSet";
import { hasArmhole, slideArmhole } from "./armholeWidth";
import type { FitDefinition } from "../outcome/definition";

export const backWidth: FitDefinition = {
  range: { least: -30, most: 30 },
  madeOn: ["back"],
  applies: ({ back }) => hasArmhole(back) && back.points.shoulderTip !== undefined,
  apply: (pieces, amount) => {
    const { piece, trace } = slideArmhole(invariant(pieces.back, "back"), amount / 2);
    return ok({ pieces: withPiece(pieces, piece), traces: [trace], values: { half: Math.abs(amount) / 2 } });
  },
};
