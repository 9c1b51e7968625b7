/** Armhole depth: the underarm lowered or raised along the side seam, on front and back alike. */
import { seamLength } from "../../girth/seamLength";
import type { PieceName } from "../../pattern/piece";
import { fail, ok } from "../../result";
import { roomAtUnderarm, underarmPieces } from "../../surgery/shoulderLine";
import { withSeamEnd } from "../../surgery/walkAgain";
import { pieceIn, withPiece } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";

const steps = (mark: string): Readonly<Partial<Record<PieceName, readonly string[]>>> => {
  const move = [
    mark,
    "Draw the armhole from there into the old line, as hollow as before, square to the side seam at first. It joins the old line where the armhole is hollowest.",
    "Lay front and back together at the side seam: both ends are equally high, and the armhole runs across the seam without a corner.",
  ];
  return { front: move, sideFront: move, cup: move, back: move };
};

export const armholeDepth: FitDefinition = {
  phase: "edges",
  words: {
    name: "Armhole depth",
    seen: "The armhole cuts in under the arm, or gapes low and shows what is worn below.",
    amount: "Lower the underarm by",
    hint: "less than 0 raises it",
    more: {
      title: "Lower the underarm by {amount}",
      steps: steps("Mark {amount} down the side seam from the underarm."),
    },
    less: {
      title: "Raise the underarm by {amount}",
      steps: steps("Stick paper to the armhole. Carry the side seam on upwards by {amount} and mark its end."),
    },
  },
  range: { least: -25, most: 30 },
  applies: (pieces) => underarmPieces(pieces).length === 2,
  apply: (pieces, amount) => {
    const most = roomAtUnderarm(pieces);
    if (amount > most) return fail({ code: "slip/too-much", most });
    const set = underarmPieces(pieces).reduce((done, name) => {
      const piece = pieceIn(done, name);
      return withPiece(done, withSeamEnd(piece, "side", "underarm", seamLength(piece, "side") - amount));
    }, pieces);
    return ok({ pieces: set, traces: [], values: {} });
  },
};
