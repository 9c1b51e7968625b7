/** Depth of the midriff band: both halves of it cut along the middle, so that its upper and lower seams stay as they are. */
import { lengthenAll } from "./lengthenAll";
import { bandLine } from "./bandLine";
import type { FitDefinition } from "../outcome/definition";

const LINE = "Draw a line along the middle of the band, from half-way down the centre to half-way down the side seam.";
const REDRAW =
  "Draw the centre straight and the side seam smooth through the change. The seams to the upper part and at the waist stay as they are.";
const WALK = "Walk the side seams of both bands against each other.";

const DEEPER = [
  LINE,
  "Cut along it. Slide the lower part straight down until the gap is {amount} all the way, and stick paper behind it.",
  REDRAW,
  WALK,
];
const SHALLOWER = [LINE, "Fold {amount} out along it, by the same all the way.", REDRAW, WALK];

export const bandDepth: FitDefinition = {
  phase: "length",
  words: {
    name: "Depth of the midriff band",
    seen: "The band ends above the waist, or folds across because it is too deep between bust and waist.",
    amount: "Deepen by",
    hint: "less than 0 makes it shallower",
    more: { title: "Make the midriff band {amount} deeper", steps: { frontBand: DEEPER, backBand: DEEPER } },
    less: { title: "Make the midriff band {amount} shallower", steps: { frontBand: SHALLOWER, backBand: SHALLOWER } },
  },
  range: { least: -40, most: 60 },
  applies: (pieces) => bandLine(pieces).length > 0,
  apply: (pieces, amount) => lengthenAll(pieces, bandLine(pieces), amount),
};
