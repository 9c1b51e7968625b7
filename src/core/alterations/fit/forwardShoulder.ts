/** Forward shoulder: the shoulder seam turned about the neck; what the front loses at its end the back gains. */
import { seamLength } from "../../girth/seamLength";
import { fail, invariant, ok } from "../../result";
import {
  fitUpperArmhole,
  hasShoulders,
  shoulderLength,
  shoulderPieces,
  turnShoulder,
} from "../../surgery/shoulderLine";
import { radians, type Mm } from "../../units";
import { pieceIn, withPiece, type PieceSet } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";
import { topMoved } from "./whatChanged";

/**
 * The shoulder's end moved along the armhole: down (positive) or up.
 *
 * @source the end moves on a circle of the shoulder's length L: chord = 2 L sin(turn / 2)
 */
function moved(pieces: PieceSet, side: "front" | "back", down: Mm): PieceSet {
  const names = shoulderPieces(pieces, side);
  const turn = radians(2 * Math.asin(down / (2 * shoulderLength(pieces, names))));
  const set = turnShoulder(pieces, side, turn);
  const tip = invariant(names.at(-1), "tip piece");
  const length = seamLength(pieceIn(pieces, tip), "armhole") - down;
  return withPiece(set, fitUpperArmhole(pieceIn(set, tip), "shoulderTip", length));
}

/** No more than this share of the shoulder's length: beyond it the seam no longer lies on top (our own choice). */
const SHARE = 0.25;

/** What front and back armhole together may come out longer or shorter when they are drawn by hand (our own choice). */
const WITHIN: Mm = 2;

export const forwardShoulder: FitDefinition = {
  range: { least: -20, most: 20 },
  madeOn: ["front", "centreFront", "sideFront", "back"],
  applies: hasShoulders,
  apply: (pieces, amount) => {
    const room =
      SHARE *
      Math.min(...(["front", "back"] as const).map((side) => shoulderLength(pieces, shoulderPieces(pieces, side))));
    if (Math.abs(amount) > room) return fail({ code: "alteration/too-much", most: amount < 0 ? 0 - room : room });
    const after = moved(moved(pieces, "front", amount), "back", -amount);
    return ok({ pieces: after, traces: [], values: { top: topMoved(pieces, after), within: WITHIN } });
  },
};
