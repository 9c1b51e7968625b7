/** Which lines of a record asked for one alteration of an answer that explains several things. */
import type { Alteration } from "../decisions/alteration";
import type { TakenAnswer, Trial } from "../decisions/trial";
import { readTrial } from "./readTrial";
import { ruleOf, type Change } from "./rules";

/** The bust of the picks is altered as a whole. */
export type Asking = Alteration | "bust";

/**
 * The lines, by id, of the causes that one alteration is made for; all those of the answer where its causes cannot be told apart,
 * as when the record was changed after it was taken.
 */
export function linesAsking(trial: Trial, { causes, because }: TakenAnswer, asking: Asking): readonly string[] {
  const reading = readTrial(trial);
  const answer = reading.ok
    ? reading.value.answers.find(({ causes: own }) => {
        const names = own.map(({ rule, half }) => (half === undefined ? rule : `${rule}-${half}`));
        return names.length === causes.length && names.every((name, at) => name === causes[at]);
      })
    : undefined;
  const lines = (answer?.causes ?? [])
    .filter(({ rule }) => ruleOf(rule).changes.some((change) => isMadeBy(asking, change)))
    .flatMap(({ explains }) => explains)
    .filter((id) => because.includes(id));
  return lines.length === 0 ? because : lines;
}

function isMadeBy(asking: Asking, change: Change): boolean {
  if (asking === "bust") return change.of === "bust";
  switch (asking.kind) {
    case "fit":
      return change.of === "fit" && change.fits.includes(asking.fit);
    case "dartEnd":
      return change.of === "dartEnd" || change.of === "bustPoint";
    case "dartMouth":
      return change.of === "dartMouth";
    case "dartPlace":
      return change.of === "offCentre";
    case "dartPivot":
    case "dartLegs":
    case "dartSplit":
    case "dartGather":
    case "dartSeam":
      return false;
  }
}
