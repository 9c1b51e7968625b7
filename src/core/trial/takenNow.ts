/** Which answers of a trial stand, and where one can be tried on one half alone. */
import { otherHalf, type Half } from "../decisions/alteration";
import type { TakenAnswer, Trial } from "../decisions/trial";
import { canBeOnOneHalf } from "./alterationsFor";
import { ruleOf } from "./rules";
import type { TrialAnswer } from "./trialReading";

/** Of the answers taken those that no later one has taken the place of: one for both halves, or one on each; one for both stays on a half where another was tried on the other. */
function takenNow({ taken = [] }: Trial): readonly TakenAnswer[] {
  return taken.reduce<readonly TakenAnswer[]>(
    (stand, answer) =>
      answer.half === undefined ? [answer] : [...stand.flatMap((one) => leftBeside(one, answer.half)), answer],
    [],
  );
}

/** What is left of an answer where another is tried on a half: nothing there, all of it on the other. */
function leftBeside(one: TakenAnswer, half: Half | undefined): readonly TakenAnswer[] {
  if (half === undefined || one.half === half) return [];
  return one.half === undefined ? [{ ...one, half: otherHalf(half) }] : [one];
}

/** How an answer stands: `both` as it is told, or on which half it is tried; null: it was not taken. */
export function standsOn(trial: Trial, { causes }: TrialAnswer): "both" | readonly Half[] | null {
  const names = causes.map(({ rule, half }) => (half === undefined ? rule : `${rule}-${half}`));
  const found = takenNow(trial).filter(
    (one) => one.causes.length === names.length && one.causes.every((cause, at) => cause === names[at]),
  );
  if (found.some(({ half }) => half === undefined)) return "both";
  const halves = found.flatMap(({ half }) => (half === undefined ? [] : [half]));
  return halves.length === 0 ? null : halves;
}

/** Whether all of an answer can be made on one half alone: nothing of it is of the centre line or of a half already. */
export const canTryOnHalf = ({ sewn }: Trial, { causes }: TrialAnswer): boolean =>
  causes.some(({ rule }) => ruleOf(rule).isByHand !== true) &&
  causes.every(({ rule, half }) => {
    const row = ruleOf(rule);
    return half === undefined && row.isCentre !== true && canBeOnOneHalf(row, sewn);
  });

/** Whether an answer changes the pieces: one that is mended by hand is told, and there is nothing to take. */
export const isToTake = ({ alterations, bustAlteration, halfCups }: TrialAnswer): boolean =>
  alterations.length > 0 || bustAlteration !== undefined || halfCups !== undefined;
