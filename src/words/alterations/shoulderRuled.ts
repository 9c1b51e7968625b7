/** The shoulder ruled anew: a shoulder that lies on two pieces is ruled over both as they lie together. */
import { hasDartIn, princessBeginsIn } from "../../core/alterations/fit/whatChanged";
import type { Piece } from "../../core/pattern/piece";
import { isSeamOf } from "../../core/surgery/wedge";
import type { Steps } from "./fitWords";

/** What is to be done at the shoulder of a piece; `mark` is how its new end is found: a mark, or a line that it lies on. */
export function ruledTold(piece: Piece, mark: string, to: "mark" | "line" = "mark"): Steps {
  const isShared = princessBeginsIn(piece, "shoulder");
  if (isShared && piece.name === "sideFront")
    return [
      "The shoulder is ruled on both fronts together, as told on the centre front. The top of the princess seam moves by {top}: draw the seam smooth to its new top, and walk it.",
    ];
  if (!isSeamOf(piece, "shoulder")) return [];
  return [
    isShared &&
      "Lay centre front and side front together along the top of the princess seam, so that the shoulder runs across both.",
    mark,
    hasDartIn(piece, "shoulder") && "Fold the shoulder dart shut before you rule.",
    `Rule the shoulder from the neck end to that ${to}, as long as it was.`,
    isShared &&
      "The top of the princess seam moves by {top} on both fronts. Take the pieces apart, draw the seam smooth to its new top on both, and walk it.",
  ];
}
