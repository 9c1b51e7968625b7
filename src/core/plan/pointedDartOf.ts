/** The pointed dart, asked of a whole work: the pieces and figures that its answers start from, and how the plan takes them. */
import type { CheckResult } from "../checks/check";
import { isRedraw, type Alteration, type DartRedraw, type Half } from "../decisions/alteration";
import { redrawsOn, sewnWith, type DartAnswerKey } from "../decisions/seenAtDart";
import {
  answerPointedDart,
  answersForCup,
  seenAsSewn,
  type DartAnswer,
  type PointedDartAnswers,
  type PointedDartContext,
  type PointedDartFailure,
  type SeenAtDart,
} from "../pointedDart/pointedDart";
import { isSameDart, type DartRef } from "../pattern/piece";
import { fail, ok, type Result } from "../result";
import { setOf, type PieceSet } from "../pattern/pieceSet";
import { BUST_POINT_REMEASURED } from "../tolerance";
import { applyCommand, type Command } from "./commands";
import { derivePlan } from "./derivePlan";
import { newlyFailing } from "./newlyFailing";
import { type Work } from "../decisions/work";

interface Question {
  readonly pieces: PieceSet;
  readonly context: PointedDartContext;
  /** Whether the wearer measured her bust point. */
  readonly measured: boolean;
}

/** Whether an alteration redraws this very dart: what the answers take the place of. */
const redraws = (alteration: Alteration, ref: DartRef): boolean =>
  isRedraw(alteration) && isSameDart(alteration.dart, ref);

/** The pieces with every alteration but this dart's own redraws, and what is wanted of the dart. */
function questionOf(
  work: Work,
  ref: DartRef,
  half: Half,
  existing: readonly DartRedraw[],
): Result<Question, PointedDartFailure> {
  const plain = derivePlan({ ...work, alterations: work.alterations.filter((a) => !redraws(a, ref)), seen: [] });
  // Without a plan there is no dart to ask of.
  if (!plain.ok) return fail({ code: "pointedDart/no-such-dart", dart: ref });
  const { pieces, darts, bustPoint, sizing } = plain.value[half];
  const dart = darts.find(({ ref: own }) => isSameDart(own, ref));
  if (dart === undefined) return fail({ code: "pointedDart/no-such-dart", dart: ref });
  return {
    ok: true,
    value: {
      pieces: setOf(pieces),
      measured: bustPoint.own !== null,
      context: {
        bustPoint: bustPoint.own ?? bustPoint.printed,
        wantedFullness: (dart.wanted ?? dart.drawn).fullness,
        radius: dart.coneRadius,
        cupDifference: sizing.cup.drafted + sizing.bust.alteration,
        existing,
      },
    },
  };
}

/** What the plan itself sees of a dart on one half of the body, to start from; null where there is no plan or no such dart. */
export function seenInPlan(work: Work, ref: DartRef, half: Half): SeenAtDart | null {
  const question = questionOf(work, ref, half, redrawsOn(work.alterations, ref, half));
  return question.ok ? seenAsSewn(question.value.pieces, ref, question.value.context) : null;
}

/** An answer as the plan takes it. */
export interface OfferedAnswer extends DartAnswer {
  /** Checks that do not hold with it and held for the toile as sewn. */
  readonly failing: readonly CheckResult[];
  /** What takes it. */
  readonly take: Command;
}

export interface OfferedAnswers extends Omit<PointedDartAnswers, "answers"> {
  /** Those that no check fails of first, best first; at least one. */
  readonly answers: readonly OfferedAnswer[];
  /** The one to take first; null where every one leaves a check that does not hold, or the bust point is to be measured first. */
  readonly recommended: DartAnswerKey | null;
  /** The bust point as marked lies so far from the measured one that it is to be measured again before a dart goes by it. */
  readonly measureFirst: boolean;
  /** Whether the wearer measured her bust point: what the marked one is held against. */
  readonly measured: boolean;
}

/**
 * Whole answers to what the wearer sees of a dart on one half; or why there are none. They are reckoned from the toile as it
 * was sewn when she said so: whichever is taken, the others stay what they were.
 *
 * @param alone they are made on that half alone; else on both
 */
export function answerFor(
  work: Work,
  ref: DartRef,
  half: Half,
  seen: SeenAtDart,
  alone = false,
): Result<OfferedAnswers, PointedDartFailure> {
  const existing = sewnWith(work, ref, half);
  const question = questionOf(work, ref, half, existing);
  if (!question.ok) return question;
  const answered = answerPointedDart(question.value.pieces, ref, seen, question.value.context);
  if (!answered.ok) return answered;
  const asSewn = applyCommand(work, {
    kind: "replaceRedraws",
    dart: ref,
    ...(alone ? { half } : {}),
    alterations: existing,
  });
  const offered = answered.value.answers.map((answer): OfferedAnswer => {
    const take: Command = {
      kind: "takeAnswer",
      dart: ref,
      half,
      ...(alone ? { alone } : {}),
      seen,
      answer: answer.key,
      alterations: answer.alterations,
    };
    return { ...answer, failing: newlyFailing(asSewn, applyCommand(asSewn, take)), take };
  });
  const answers = offered.toSorted((a, b) => a.failing.length - b.failing.length || a.cost - b.cost);
  const { measured } = question.value;
  const measureFirst = measured && answered.value.bustPointOff > BUST_POINT_REMEASURED;
  const [first] = answers;
  const isSound = first !== undefined && first.failing.length === 0;
  return ok({
    ...answered.value,
    answers,
    recommended: isSound && !measureFirst ? first.key : null,
    measureFirst,
    measured,
  });
}

/** Whole ways to make a dart as the wearer's cup asks, its own redraws in place of those it has; best first. */
export function redrawsForCup(work: Work, ref: DartRef, half: Half): readonly (readonly DartRedraw[])[] {
  const question = questionOf(work, ref, half, redrawsOn(work.alterations, ref, half));
  if (!question.ok) return [];
  return answersForCup(question.value.pieces, ref, question.value.context).map(({ alterations }) => alterations);
}
