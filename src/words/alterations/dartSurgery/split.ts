/** A dart split into two or three. */
import type { DartSplitAlteration } from "../../../core/decisions/alteration";
import { dartWords } from "../../terms/names";
import { legsDrawnOn, pivotWords, seamOf, type Told } from "./saidOfDart";

export const splitTitle = ({ dart, into }: DartSplitAlteration): string =>
  `Split the ${dartWords(dart.dart)} into ${into === 2 ? "two" : "three"}`;

export function splitSteps({ into }: DartSplitAlteration, told: Told): readonly string[] {
  const { dart, amount } = told;
  const [about, words, seam] = [pivotWords(dart), dartWords(dart.name), seamOf(told)];
  return [
    ...legsDrawnOn(told, dart.name),
    `On the ${seam}, mark ${amount("aside")} to each side of the mouth of the ${words}. Draw a line from each mark to ${about}.`,
    `Cut along both lines and along both legs of the ${words}, each to within a hair of ${about}, so that a strip hangs there on each side.`,
    into === 2
      ? `Swing the two strips towards each other, each as far as the other, until the ${words} is shut. Tape them down.`
      : `Swing the two strips towards each other, each as far as the other, until a third of the mouth of the ${words} is left. Tape them down.`,
    `There are now ${into === 2 ? "two" : "three"} darts, each about ${amount("each")} wide, with ${amount("strip")} of seam between ${into === 2 ? "them" : "one and the next"}. Put paper behind the cuts.`,
    `End each ${amount("stop")} short of ${about}, in the middle between its edges, and draw its legs from there to its mouth ends.`,
    `Fold all of them shut as they will be pressed and draw the ${seam} smooth over them; it measures what it did before.`,
  ];
}
