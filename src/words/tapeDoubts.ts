/** Doubts about the tape outside Tape: the same sentences as there, at the head of Blend, on the checklist and in the plan. */
import { isAskedElsewhere } from "../core/bodies/answered";
import type { Suspicion } from "../core/bodies/suspicion";
import type { Pattern } from "../core/decisions/pattern";
import type { LengthUnit } from "../core/decisions/work";
import { doubtedPicks } from "../core/sureness/doubtedPicks";
import { doubtSentence, misreadingQuestion } from "./tape";
import { capital } from "./terms/names";
import { listWords, plural } from "./terms/language";

export const TAPE_DOUBTS_HEAD = "First, the tape";

/** What rests on it, and what to do of it before anything is cut. */
export function tapeDoubtsWhy(doubts: readonly Suspicion[], { chart, length }: Pattern): string {
  const doubted = doubtedPicks(doubts);
  const parts = [
    ...(doubted.includes("baseSize") ? ["frame", ...(chart.cups.length === 0 ? [] : ["cup"]), "bust"] : []),
    ...(doubted.includes("waist") ? ["waist line"] : []),
    ...(doubted.includes("hip") && length === "hip" ? ["hip line"] : []),
  ];
  const asked = askedHere(doubts).length;
  const it = plural(asked, { one: "it", other: "them" });
  const settle = plural(asked, { one: "Settle it", other: "Settle them" });
  const rests =
    parts.length === 0
      ? ""
      : `${capital(listWords(parts))} ${plural(parts.length, { one: "stands", other: "stand" })} on ${it}. `;
  return `${rests}${settle} before you cut.`;
}

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
