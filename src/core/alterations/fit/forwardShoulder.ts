/** Forward shoulder: the shoulder seam turned about the neck; what the front loses at its end the back gains. */
import { seamLength } from "../../girth/seamLength";
import type { Piece } from "../../pattern/piece";
import { fail, must, ok } from "../../result";
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
import { hasDartIn, isCorner, princessBeginsIn, told, toldFor, topMoved, type Steps } from "./told";

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

const DOWN = "Mark {amount} down the armhole from the end of the shoulder.";
const UP = "Stick paper to the shoulder. Carry the armhole on {amount} beyond the end of the shoulder and mark there.";
const RULE = "Rule the shoulder from the neck end to that mark, as long as it was.";
const SHUT = "Fold the shoulder dart shut before you rule.";
const ARMHOLE = "Draw the armhole smooth to the new end of the shoulder.";
const AS_LONG = "The armhole as a whole is as long as it was, to within 2 mm.";
const LAY =
  "Lay centre front and side front together along the top of the princess seam, so that the shoulder runs across both.";
const APART =
  "The top of the princess seam moves by {top} on both fronts. Take the pieces apart, draw the seam smooth to its new top on both, and walk it.";
const RULED =
  "The shoulder is ruled on both fronts together, as told on the centre front. The top of the princess seam moves by {top}: draw the seam smooth to its new top, and walk it.";

/** A shoulder that lies on two pieces is ruled over both as they lie together. */
function stepsFor(piece: Piece, mark: string): readonly string[] {
  const isShared = princessBeginsIn(piece, "shoulder");
  if (isShared && piece.name === "sideFront") return [RULED, ARMHOLE];
  return told(
    isShared && LAY,
    mark,
    hasDartIn(piece, "shoulder") && SHUT,
    RULE,
    isShared && APART,
    isCorner(piece, "shoulderTip") && ARMHOLE,
    piece.name === "back" && AS_LONG,
  );
}

/** For a shoulder that lies on one piece of the front. */
const steps = (front: string, back: string): Steps => {
  const onFront = [front, RULE, ARMHOLE];
  return { front: onFront, centreFront: onFront, sideFront: onFront, back: [back, RULE, ARMHOLE, AS_LONG] };
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
      steps: steps(DOWN, UP),
    },
    less: {
      title: "Move the end of the shoulder seam {amount} back",
      steps: steps(UP, DOWN),
    },
  },
  range: { least: -20, most: 20 },
  applies: hasShoulders,
  apply: (pieces, amount) => {
    const room =
      SHARE *
      Math.min(...(["front", "back"] as const).map((side) => shoulderLength(pieces, shoulderPieces(pieces, side))));
    if (Math.abs(amount) > room) return fail({ code: "slip/too-much", most: amount < 0 ? 0 - room : room });
    const after = moved(moved(pieces, "front", amount), "back", -amount);
    const tell = toldFor(pieces, after, (piece) => stepsFor(piece, (piece.name === "back") === amount < 0 ? DOWN : UP));
    return ok({ pieces: after, traces: [], values: { top: topMoved(pieces, after) }, steps: tell });
  },
};
