/** Bodice length between bust and waist: every piece that the level crosses is cut there and lengthened alike. */
import { pointOf, type Piece } from "../../pattern/piece";
import { fail, ok } from "../../result";
import { lengthenAcross } from "../../surgery/lengthenAcross";
import type { SurgeryTrace } from "../../surgery/cutAndMove";
import { piecesOf, withPiece } from "../pieceSet";
import type { FitDefinition } from "./definition";

/** Share of the way from the lowest bust-level corner down to the waist at which the line is drawn (our own choice). */
const LINE = 0.6;

const crosses = (piece: Piece): boolean => piece.points.centreBust !== undefined && piece.points.centreWaist !== undefined;

const CUT = [
  "Draw a line straight across the {piece}, at right angles to the grain, below the bust line and above the waist.",
] as const;

const LENGTHEN = [
  ...CUT,
  "Cut along it. Move the lower part straight down until the gap is {amount} all the way; stick paper behind it.",
  "Draw the side seam and the dart legs straight on through the gap.",
];

const SHORTEN = [
  ...CUT,
  "Fold {amount} out along it, all the way across.",
  "Draw the side seam and the dart legs anew across the fold.",
];

export const lengthBelowBust: FitDefinition = {
  phase: "length",
  words: {
    name: "Bodice length below the bust",
    seen: "The waist seam sits above the waist, or folds lie round the waist because it sits below.",
    amount: "Lengthen by",
    hint: "less than 0 shortens",
    more: { title: "Lengthen the bodice below the bust by {amount}", steps: { front: LENGTHEN, back: LENGTHEN, centreFront: LENGTHEN, sideFront: LENGTHEN } },
    less: { title: "Shorten the bodice below the bust by {amount}", steps: { front: SHORTEN, back: SHORTEN, centreFront: SHORTEN, sideFront: SHORTEN } },
  },
  range: { least: -60, most: 80 },
  applies: (pieces) => piecesOf(pieces).some(crosses),
  apply: (pieces, amount) => {
    let set = pieces;
    const traces: SurgeryTrace[] = [];
    for (const piece of piecesOf(pieces)) {
      if (!crosses(piece)) continue;
      const waist = pointOf(piece, "centreWaist").y;
      const bust = pointOf(piece, "centreBust").y;
      const done = lengthenAcross(piece, bust + (waist - bust) * LINE, amount);
      if (!done.ok) return fail({ code: "slip/too-much", most: done.failure.least });
      set = withPiece(set, done.value.piece);
      traces.push(done.value.trace);
    }
    return ok({ pieces: set, traces, values: {} });
  },
};
