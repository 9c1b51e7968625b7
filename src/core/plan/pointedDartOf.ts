/** The pointed dart, asked of a whole work: the pieces and figures that its answers start from. */
import { isRedraw, type Alteration, type Half } from "../decisions/alteration";
import {
  answerPointedDart,
  seenAsSewn,
  type PointedDartAnswers,
  type PointedDartContext,
  type PointedDartFailure,
  type SeenAtDart,
} from "../pointedDart/pointedDart";
import { isSameDart, type DartRef } from "../pattern/piece";
import { fail, type Result } from "../result";
import { setOf, type PieceSet } from "../pattern/pieceSet";
import { derivePlan } from "./derivePlan";
import { type Work } from "../decisions/work";

interface Question {
  readonly pieces: PieceSet;
  readonly context: PointedDartContext;
}

/** Whether an alteration redraws this very dart: what the answers take the place of. */
const redraws = (alteration: Alteration, ref: DartRef): boolean =>
  isRedraw(alteration) && isSameDart(alteration.dart, ref);

/** The pieces with every alteration but this dart's own redraws, and what is wanted of the dart. */
function questionOf(work: Work, ref: DartRef, half: Half): Result<Question, PointedDartFailure> {
  const plain = derivePlan({ ...work, alterations: work.alterations.filter((a) => !redraws(a, ref)) });
  // Without a plan there is no dart to ask of.
  if (!plain.ok) return fail({ code: "pointedDart/no-such-dart", dart: ref });
  const { pieces, darts, bustPoint, sizing } = plain.value[half];
  const dart = darts.find(({ ref: own }) => isSameDart(own, ref));
  if (dart === undefined) return fail({ code: "pointedDart/no-such-dart", dart: ref });
  return {
    ok: true,
    value: {
      pieces: setOf(pieces),
      context: {
        bustPoint: bustPoint.own ?? bustPoint.printed,
        wantedFullness: (dart.wanted ?? dart.drawn).fullness,
        radius: dart.coneRadius,
        cupDifference: sizing.cup.drafted + sizing.bust.alteration,
        existing: work.alterations.filter(isRedraw).filter((a) => redraws(a, ref)),
      },
    },
  };
}

/** What the plan itself sees of a dart on one half of the body, to start from; null where there is no plan or no such dart. */
export function seenInPlan(work: Work, ref: DartRef, half: Half): SeenAtDart | null {
  const question = questionOf(work, ref, half);
  return question.ok ? seenAsSewn(question.value.pieces, ref, question.value.context) : null;
}

/** Whole answers to what the wearer sees of a dart on one half, best first; or why there are none. */
export function answerFor(
  work: Work,
  ref: DartRef,
  half: Half,
  seen: SeenAtDart,
): Result<PointedDartAnswers, PointedDartFailure> {
  const question = questionOf(work, ref, half);
  return question.ok ? answerPointedDart(question.value.pieces, ref, seen, question.value.context) : question;
}
