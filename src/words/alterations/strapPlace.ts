import type { FitWords } from "./fitWords";

export const strapPlace: FitWords = {
  name: "Place of the straps",
  seen: "The straps slip off the shoulders, or rub against the neck.",
  amount: "Nearer the neck by",
  hint: "less than 0 moves them towards the end of the shoulder",
  more: "Move the straps {amount} nearer the neck",
  less: "Move the straps {amount} nearer the end of the shoulder",
  steps: ({ amount }) => [
    `Move both ends of the strap's seam {amount} nearer the ${amount > 0 ? "neck" : "end of the shoulder"}, along the line of the seam; its length stays.`,
    "Keep the two ends of the strap in line over the shoulder.",
    "Draw neckline and armhole anew to its ends, as smooth as they were.",
  ],
};
