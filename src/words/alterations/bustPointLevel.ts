import { bustGained } from "../../core/alterations/fit/whatChanged";
import type { Dart, SeamName } from "../../core/pattern/piece";
import { GIRTH_WORTH_TELLING } from "../../core/tolerance";
import type { FitWords } from "./fitWords";
import { walkingTold } from "./walking";

type Way = "down" | "up";

const DART_NAMES: Readonly<Partial<Record<SeamName, string>>> = {
  waist: "waist dart",
  shoulder: "shoulder dart",
  armhole: "armhole dart",
  neck: "neck dart",
  centre: "centre dart",
};

const endTold = ({ seam, gathered }: Dart, way: Way): readonly (string | false)[] => [
  `Move the end of the ${DART_NAMES[seam] ?? "dart"} straight ${way} by {amount}.`,
  gathered !== true && "Draw its legs again to the old ends of its mouth and make them equal.",
];

const bendTold = (way: Way): readonly string[] => [
  `Mark the bust point on the princess seam and a new mark {amount} further ${way}.`,
  "Draw the seam in one smooth curve with its fullest place at the new mark; its ends stay.",
];

export const bustPointLevel: FitWords = {
  name: "Height of the bust point",
  seen: "The darts point above or below the fullest part of the bust, and the front is baggy there and tight at the bust.",
  amount: "Lower by",
  hint: "less than 0 raises it",
  more: "Lower the bust shaping by {amount}",
  less: "Raise the bust shaping by {amount}",
  steps: (altered) => {
    const { piece, amount, trace } = altered;
    const way = amount > 0 ? "down" : "up";
    if (piece.name === "sideFront")
      return [
        ...bendTold(way),
        "Walk both stretches of the seam, above and below the mark: what differs is taken up on the centre front, not here.",
      ];
    const darts = piece.darts.filter(({ aimsAt }) => aimsAt === "bustPoint");
    const hasSide = darts.some(({ seam }) => seam === "side");
    const isPrincess = piece.name === "centreFront";
    const girth = bustGained(trace.before, trace.after);
    return [
      !isPrincess && "Mark your own bust point.",
      hasSide && "Draw a window round the side dart, its mouth and its end.",
      hasSide &&
        `Cut the window out and slide it ${way} by {amount}, square to the dart's middle line; stick paper behind it.`,
      ...darts.filter(({ seam }) => seam !== "side").flatMap((dart) => endTold(dart, way)),
      hasSide &&
        "Fold the side dart shut and draw the side seam in one smooth curve from the underarm over it to the waist; walk it against the back's and take what is missing or over out of the dart's mouth, half on each leg.",
      ...(isPrincess ? [...bendTold(way), walkingTold(altered, 0)] : []),
      Math.abs(girth) > GIRTH_WORTH_TELLING &&
        (girth < 0
          ? "The garment loses {girth} round the bust: measure it there, and let it out at the side seams if you cannot spare that."
          : "The garment gains {girth} round the bust: measure it there, and take it in at the side seams if that is too loose."),
    ];
  },
};
