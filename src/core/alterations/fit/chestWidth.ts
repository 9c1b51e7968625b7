/** Width across the chest, at the armholes. */
import type { Piece } from "../../pattern/piece";
import { must, ok } from "../../result";
import { withPiece, type PieceSet } from "../../pattern/pieceSet";
import { hasArmhole, sideFrontSteps, slideArmhole, widthSteps } from "./armholeWidth";
import type { FitDefinition } from "../outcome/definition";

const armholeFront = ({ front, sideFront }: PieceSet): Piece | undefined => [front, sideFront].find(hasArmhole);

export const chestWidth: FitDefinition = {
  phase: "widths",
  words: {
    name: "Width across the chest",
    seen: "The front pulls between the armholes above the bust; or upright folds hang beside the armholes in front.",
    amount: "Widen the whole chest by",
    hint: "less than 0 narrows",
    more: {
      title: "Widen across the chest by {amount}",
      steps: { front: widthSteps("chest", true), sideFront: sideFrontSteps(true) },
    },
    less: {
      title: "Narrow across the chest by {amount}",
      steps: { front: widthSteps("chest", false), sideFront: sideFrontSteps(false) },
    },
  },
  range: { least: -30, most: 30 },
  applies: (pieces) => armholeFront(pieces) !== undefined,
  apply: (pieces, amount) => {
    const before = must(armholeFront(pieces), "front");
    const { piece, trace } = slideArmhole(before, amount / 2);
    const isWider = amount > 0;
    const steps = {
      [before.name]: before.points.shoulderTip === undefined ? sideFrontSteps(isWider) : widthSteps("chest", isWider),
    };
    return ok({ pieces: withPiece(pieces, piece), traces: [trace], values: { half: Math.abs(amount) / 2 }, steps });
  },
};
