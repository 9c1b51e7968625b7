/** How sure the picks are and what to measure again before cutting, short enough for paper and for the command line. */
import type { Work } from "../core/decisions/work";
import { howSure } from "../core/sureness/howSure";
import { nextMeasure } from "../core/sureness/nextMeasure";
import {
  besideLikeliestSentence,
  bustDoneSentence,
  cupSentence,
  linesSentence,
  nextWords,
  NOTHING_NEXT,
  sizeSentence,
} from "./sure";

export interface SurePassage {
  /** Whole sentences, one after the other. */
  readonly said: readonly string[];
  /** What to measure again before cutting, and what that would settle. */
  readonly next: string;
}

const SETTLED = "Your measures settle the picks: nothing need be measured again.";

/** null where nothing can be said yet: no chart, or no bust measured. */
export function surePassage(work: Work): SurePassage | null {
  const sure = howSure(work);
  if (!sure.ok) return null;
  const said = [
    sizeSentence(sure.value),
    cupSentence(sure.value),
    bustDoneSentence(sure.value),
    besideLikeliestSentence(sure.value),
    linesSentence(sure.value.lines, work.unit),
  ].filter((one) => one !== null);
  return { said, next: nextSentence(work, work.pattern.chart.cups.length > 0) };
}

function nextSentence(work: Work, hasCups: boolean): string {
  const next = nextMeasure(work);
  if (next === null) return SETTLED;
  const [first] = next;
  if (first === undefined) return NOTHING_NEXT;
  const { ask, why } = nextWords(first, hasCups, work.unit);
  return `${ask} before you cut: ${why}`;
}
