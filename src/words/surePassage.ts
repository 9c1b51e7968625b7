/** How sure the picks are and what to measure again before cutting, short enough for paper and for the command line. */
import type { Work } from "../core/decisions/work";
import { openDoubts } from "../core/bodies/tapeDoubts";
import { withDoubts } from "../core/sureness/doubtedPicks";
import { howSure } from "../core/sureness/howSure";
import { nextMeasure } from "../core/sureness/nextMeasure";
import {
  besideLikeliestSentence,
  bustDoneSentence,
  cupSentence,
  doubtedLinesSentence,
  linesSentence,
  nextWords,
  NOTHING_NEXT,
  sizeSentence,
} from "./sure";

export interface SurePassage {
  /** Whole sentences, one after the other. */
  readonly said: readonly string[];
  /** What to measure again before cutting, and what that would settle; null while a reading is doubted, which goes before. */
  readonly next: string | null;
}

const SETTLED = "Your measures settle the picks: nothing need be measured again.";

/** null where nothing can be said yet: no chart, or no bust measured. */
export function surePassage(work: Work): SurePassage | null {
  const known = howSure(work);
  if (!known.ok) return null;
  const doubts = openDoubts(work);
  const sure = withDoubts(known.value, doubts);
  const said = [
    sizeSentence(sure),
    cupSentence(sure),
    bustDoneSentence(sure),
    besideLikeliestSentence(sure),
    linesSentence(sure.lines, work.unit),
    doubtedLinesSentence(sure),
  ].filter((one) => one !== null);
  return { said, next: doubts.length > 0 ? null : nextSentence(work, work.pattern.chart.cups.length > 0) };
}

function nextSentence(work: Work, hasCups: boolean): string {
  const next = nextMeasure(work);
  if (next === null) return SETTLED;
  const [first] = next;
  if (first === undefined) return NOTHING_NEXT;
  const { ask, why } = nextWords(first, hasCups, work.unit);
  return `${ask} before you cut: ${why}`;
}
