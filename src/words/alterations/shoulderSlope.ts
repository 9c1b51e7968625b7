import { isCorner, princessBeginsIn } from "../../core/alterations/fit/whatChanged";
import type { FitWords } from "./fitWords";
import { ruledTold } from "./shoulderRuled";

const topAlike = (way: "up" | "down"): string =>
  `Lay the piece on the centre front along the top of the princess seam and carry the seam's new top over to it, {top} further ${way}. Draw the seam smooth to it, and walk it against the centre front's.`;

const UP = {
  mark: "Draw a line level across, {amount} above the end of the shoulder.",
  slide: "Lay the traced armhole {amount} higher: its underarm {amount} further up the line of the side seam.",
  top: "Move the top of the princess seam {top} straight up.",
  alike: topAlike("up"),
  side: "Draw the side seam straight up to the new underarm.",
};
const DOWN = {
  mark: "Draw a line level across, {amount} below the end of the shoulder.",
  slide: "Lay the traced armhole {amount} lower: its underarm {amount} further down the side seam.",
  top: "Move the top of the princess seam {top} straight down.",
  alike: topAlike("down"),
  side: "The side seam now ends at the new underarm.",
};

export const shoulderSlope: FitWords = {
  name: "Shoulder slope",
  seen: "Square shoulders: folds lie across below the neck and the shoulder ends are tight. Sloping shoulders: folds fall from the neck to the underarm.",
  amount: "Raise the end of the shoulder by",
  hint: "for square shoulders; less than 0 lowers it for sloping ones",
  more: "Raise the end of the shoulder and the armhole by {amount}",
  less: "Lower the end of the shoulder and the armhole by {amount}",
  steps: ({ piece, amount }) => {
    const way = amount > 0 ? UP : DOWN;
    const [hasTip, hasUnderarm] = [isCorner(piece, "shoulderTip"), isCorner(piece, "underarm")];
    const isParted = princessBeginsIn(piece, "armhole");
    return [
      ...ruledTold(piece, way.mark, "line"),
      isParted && (hasTip ? way.top : way.alike),
      isParted &&
        hasTip &&
        "Draw the armhole from the new end of the shoulder to the new top of the princess seam, in the shape that it had.",
      isParted && hasTip && "Draw the princess seam smooth to its new top.",
      hasUnderarm && way.slide,
      hasUnderarm &&
        `Trace the armhole again from the new underarm to the new ${hasTip ? "end of the shoulder" : "top of the princess seam"}; it keeps its shape, and its length to within {within:round}.`,
      hasUnderarm && way.side,
      isCorner(piece, "sideNeck") && "Draw the neckline smooth into the shoulder.",
    ];
  },
};
