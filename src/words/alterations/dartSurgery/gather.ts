/** A dart drawn up as gathers. */
import type { DartGatherAlteration } from "../../../core/decisions/alteration";
import { dartWords } from "../../terms/names";
import { seamOf, type Told } from "./saidOfDart";

export const gatherTitle = ({ dart }: DartGatherAlteration): string => `Gather the ${dartWords(dart.dart)}`;

export function gatherSteps(told: Told): readonly string[] {
  const { dart, amount, round } = told;
  const [words, seam] = [dartWords(dart.name), seamOf(told)];
  return [
    `Leave out the legs and the end of the ${words}. Draw the ${seam} smooth over its open mouth, ${amount("mouth")} wide.`,
    `Mark where the gathers begin and end: ${round("beyond")} outside each end of the mouth (common practice, no source), so that they spread softly.`,
    `Sew two gathering rows between the marks and draw them up by ${amount("mouth")}: the ${seam} then measures what it did before.`,
  ];
}
