/** Doubts about the tape outside Tape: the same sentences as there, at the head of Blend, on the checklist and in the plan. */
import { isAskedElsewhere } from "../core/bodies/answered";
import type { Suspicion } from "../core/bodies/suspicion";
import type { LengthUnit } from "../core/decisions/work";
import { doubtSentence, misreadingQuestion } from "./tape";

export const TAPE_DOUBTS_HEAD = "First, the tape";

/** What to do of it before anything is cut. */
export const TAPE_DOUBTS_WHY = "All sizes here stand on it. Settle it before you cut.";

export const IT_IS_RIGHT = "It is right";

/** One passage for a doubt, its question with it. */
export const tapeDoubtWords = (doubt: Suspicion, unit: LengthUnit): string =>
  doubt.misreading === null
    ? doubtSentence(doubt, unit)
    : `${doubtSentence(doubt, unit)} ${misreadingQuestion(doubt, doubt.misreading, unit)}`;

/** Two measures in each other's place are one doubt. */
export const askedHere = (doubts: readonly Suspicion[]): readonly Suspicion[] =>
  doubts.filter((doubt) => !isAskedElsewhere(doubts, doubt));

export const tapeDoubtLines = (doubts: readonly Suspicion[], unit: LengthUnit): readonly string[] =>
  askedHere(doubts).map((doubt) => tapeDoubtWords(doubt, unit));
