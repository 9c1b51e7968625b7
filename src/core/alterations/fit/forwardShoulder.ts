/** Forward shoulder: the shoulder seam turned about the neck; what the front loses at its end the back gains. */
import { seamLength } from "../../girth/seamLength";
import type { PieceName } from "../../pattern/piece";
import { fail, must, ok } from "../../result";
import { fitUpperArmhole, hasShoulders, shoulderLength, shoulderPieces, turnShoulder } from "../../surgery/shoulderLine";
import { radians, type Mm } from "../../units";
import { pieceIn, withPiece, type PieceSet } from "../pieceSet";
import type { FitDefinition } from "./definition";

/**
 * The shoulder's end moved along the armhole: down (positive) or up.
 *
 * @source the end moves on a circle of the shoulder's length L: chord = 2 L sin(turn / 2)
 */
function moved(pieces: PieceSet, side: "front" | "back", down: Mm): PieceSet {
  const names = shoulderPieces(pieces, side);
  const turn = radians(2 * Math.asin(down / (2 * shoulderLength(pieces, names))));
  const set = turnShoulder(pieces, side, turn);
  const tip = must(names.at(-1), "tip piece");
  const length = seamLength(pieceIn(pieces, tip), "armhole") - down;
  return withPiece(set, fitUpperArmhole(pieceIn(set, tip), "shoulderTip", length));
}

/** No more than this share of the shoulder's length: beyond it the seam no longer lies on top (our own choice). */
const SHARE = 0.25;

const steps = (down: string, up: string): Readonly<Partial<Record<PieceName, readonly string[]>>> => {
  const rule = "Rule the shoulder from the neck end to that mark, as long as it was. A shoulder dart is folded shut for this.";
  const front = [down, rule, "Draw the armhole smooth from the new end of the shoulder."];
  const back = [up, rule, "Draw the armhole smooth to the new end of the shoulder. The armhole as a whole is as long as it was."];
  const onPrincess = "A princess seam that ends in the shoulder becomes longer or shorter there, by the same on both fronts: lay them together on the seam and rule across both.";
  return { front, centreFront: [...front, onPrincess], sideFront: [onPrincess, "Draw the armhole smooth from the end of the shoulder."], back };
};

export const forwardShoulder: FitDefinition = {
  phase: "edges",
  words: {
    name: "Forward shoulder",
    seen: "The shoulder seam lies behind the top of the shoulder at its outer end; the back pulls.",
    amount: "Move the seam forward by",
    hint: "less than 0 moves it back",
    more: {
      title: "Move the end of the shoulder seam {amount} forward",
      steps: steps("Mark {amount} down the armhole from the end of the shoulder.", "Stick paper to the shoulder. Carry the armhole on {amount} beyond the end of the shoulder and mark there."),
    },
    less: {
      title: "Move the end of the shoulder seam {amount} back",
      steps: steps("Stick paper to the shoulder. Carry the armhole on {amount} beyond the end of the shoulder and mark there.", "Mark {amount} down the armhole from the end of the shoulder."),
    },
  },
  range: { least: -20, most: 20 },
  applies: hasShoulders,
  apply: (pieces, amount) => {
    const room = SHARE * Math.min(...(["front", "back"] as const).map((side) => shoulderLength(pieces, shoulderPieces(pieces, side))));
    if (Math.abs(amount) > room) return fail({ code: "slip/too-much", most: Math.sign(amount) * room });
    return ok({ pieces: moved(moved(pieces, "front", amount), "back", -amount), traces: [], values: {} });
  },
};
