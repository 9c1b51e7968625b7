/** Two darts joined over the bust point into a seam. */
import type { DartSeamAlteration } from "../../../core/decisions/alteration";
import { dartWords } from "../../terms/names";
import { legsDrawnOn, seamOf, type Told } from "./saidOfDart";

export const seamTitle = ({ dart }: DartSeamAlteration): string =>
  `Join the ${dartWords(dart.dart)} and the waist dart into a seam`;

export function seamSteps(told: Told): readonly string[] {
  const words = dartWords(told.dart.name);
  return [
    ...legsDrawnOn(told, told.dart.name, "waistDart"),
    `Cut the front in two along the legs, from the ${seamOf(told)} over the bust point to the waist: it becomes a centre front and a side front. What lies between the legs falls away.`,
    `On both pieces, draw the edge smooth over the bust point and straight into the ${seamOf(told)} and the waist.`,
    `Walk the two edges on each other, from the bust point up and from the bust point down. Lengthen the centre front at the bust line until they match, by ${told.amount("drop")} altogether.`,
    `Notch both edges at the bust point, and mark which end was the ${words}. Both edges are seams now: give them an allowance.`,
  ];
}
