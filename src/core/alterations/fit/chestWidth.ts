/** Width across the chest, at the armholes. */
import type { Piece } from "../../pattern/piece";
import { invariant, ok } from "../../result";
import { withPiece, type PieceSet } from "../../pattern/pieceSet";
import { cutInside, fromUnderarm, hasArmhole, slideArmhole } from "./armholeWidth";
import type { FitDefinition } from "../outcome/definition";

const armholeFront = ({ front, sideFront }: PieceSet): Piece | undefined => [front, sideFront].find(hasArmhole);

export const chestWidth: FitDefinition = {
  range: { least: -30, most: 30 },
  isWhole: true,
  madeOn: ["front", "sideFront"],
  applies: (pieces) => armholeFront(pieces) !== undefined,
  apply: (pieces, amount) => {
    const front = invariant(armholeFront(pieces), "front");
    const { piece, trace } = slideArmhole(front, amount / 2);
    const { inside } = cutInside(front);
    const values = {
      half: Math.abs(amount) / 2,
      ...(inside === null ? {} : { inside }),
      apart: fromUnderarm(front),
    };
    return ok({ pieces: withPiece(pieces, piece), traces: [trace], values });
  },
};
