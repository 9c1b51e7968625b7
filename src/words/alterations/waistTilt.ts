/** What to do on the tissue to tilt the waist seam, the same for front and back but for the name of the centre. */
import { isDartCut } from "../../core/alterations/fit/whatChanged";
import { isBasque } from "../../core/pattern/pieceGroups";
import { centreWords } from "../terms/names";
import type { Altered, Steps } from "./fitWords";

const PART = "Take the two pieces apart, and draw the princess seam smooth on both; walk it.";

/** Lowered at the centre by a positive amount: the bodice is opened and the basque lapped; raised, the other way. */
export function tiltSteps({ piece, amount, trace }: Altered): Steps {
  if (piece.name === "sideFront")
    return [
      "This piece is cut together with the centre front: taped to it, along the same line, turned about the same point.",
      PART,
    ];
  const isLower = isBasque(piece.name);
  const isShared = piece.name === "centreFront";
  const centre = centreWords(piece.name);
  return [
    isShared &&
      "Lay centre front and side front side by side, stitch lines touching over the last {together:round} above the waist, and tape them lightly together.",
    isLower
      ? `Draw a line from the ${centre}, {below:round} below the waist, straight across to the side seam, {belowAtSide:round} below the waist there.`
      : `Draw a line from the ${centre}, {above:round} above the waist, straight across to the side seam, {aboveAtSide:round} above the waist there.`,
    `Cut along it from the ${centre} to the side seam, to within a thread of the seam line; snip the allowance to it, so that the paper hinges there.`,
    amount > 0 === isLower
      ? `Turn the part with the waist about that point until it laps {amount} over the rest at the ${centre}; tape it down.`
      : `Turn the part with the waist about that point until the gap at the ${centre} is {amount}, and stick paper behind it.`,
    isShared && PART,
    `Draw the ${centre} straight again and the waist seam square to it for the first {square:round}.`,
    !isShared &&
      isDartCut(piece, trace.surgery) &&
      "Draw the legs of the dart that was cut across again from its end to its mouth and make them equal; the waist seam stays as long as it was.",
  ];
}
