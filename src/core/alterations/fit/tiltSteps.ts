/** What to do on the tissue to tilt the waist seam, the same for front and back but for the name of the centre. */
import { ok, type Result } from "../../result";
import type { Mm } from "../../units";
import type { PieceSet } from "../../pattern/pieceSet";
import type { FitApplied, FitWords } from "../outcome/definition";
import { isDartCut, toldFor } from "./told";
import { tiltWaist } from "./waistWedge";

const DART =
  "Draw the legs of the dart that was cut across again from its end to its mouth and make them equal; the waist seam stays as long as it was.";

/** The waist seam tilted, and told as it is on these pieces. */
export function tiltedWaist(
  pieces: PieceSet,
  half: "front" | "back",
  amount: Mm,
  { more, less }: Pick<FitWords, "more" | "less">,
): Result<FitApplied, never> {
  const { pieces: after, traces } = tiltWaist(pieces, half, amount);
  const { steps } = amount < 0 && less !== undefined ? less : more;
  const tell = toldFor(pieces, after, (piece) => {
    const all = steps[piece.name] ?? [];
    return isDartCut(piece, traces) ? all : all.filter((step) => step !== DART);
  });
  return ok({ pieces: after, traces, values: {}, steps: tell });
}

export function tiltSteps(centre: "centre front" | "centre back") {
  const above = `Draw a line from the ${centre}, 2 cm above the waist, straight across to the side seam, 2 cm above the waist there.`;
  const below = `Draw a line from the ${centre}, 2 cm below the waist, straight across to the side seam, 2 cm below the waist there.`;
  const cut = `Cut along it from the ${centre} to the side seam, to within a thread of the seam line; snip the allowance to it, so that the paper hinges there.`;
  const draw = `Draw the ${centre} straight again and the waist seam square to it for the first 2 cm.`;
  const open = `Turn the part with the waist about that point until the gap at the ${centre} is {amount}, and stick paper behind it.`;
  const lap = `Turn the part with the waist about that point until it laps {amount} over the rest at the ${centre}; tape it down.`;
  const lay =
    "Lay centre front and side front side by side, stitch lines touching over the last 4 cm above the waist, and tape them lightly together.";
  const part = "Take the two pieces apart, and draw the princess seam smooth on both; walk it.";
  const withCentre = (move: string): readonly string[] => [lay, above, cut, move, part, draw];
  const withSide = [
    `This piece is cut together with the centre front: taped to it, along the same line, turned about the same point.`,
    part,
  ] as const;
  return {
    open: [above, cut, open, draw, DART],
    fold: [above, cut, lap, draw, DART],
    openCentre: withCentre(open),
    foldCentre: withCentre(lap),
    openSide: withSide,
    foldSide: withSide,
    lap: [below, cut, lap, draw, DART],
    letIn: [below, cut, open, draw, DART],
  } as const;
}
