import type { FitWords } from "./fitWords";

export const lengthBasque: FitWords = {
  name: "Length from waist to hip",
  seen: "The basque is widest above or below the hip, and pulls or stands off there.",
  amount: "Lengthen by",
  hint: "less than 0 shortens",
  more: "Lengthen the basque between waist and hip by {amount}",
  less: "Shorten the basque between waist and hip by {amount}",
  steps: ({ amount }) => [
    "Draw a line straight across, square to the grain, below the end of the dart and above the hip, equally far below the waist on front and back.",
    amount > 0
      ? "Cut along it. Slide the lower part straight down until the gap is {amount} all the way, and stick paper behind it."
      : "Fold {amount} out along it, by the same all the way.",
    "Draw the centre straight and the side seam smooth through the change; walk front and back side seams against each other.",
  ],
};
