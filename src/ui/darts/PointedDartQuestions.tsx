import { useViewState } from "../session/viewState";
import { useMemo } from "react";
import { isSeenOf, standingAnswer, type DartAnswerKey, type SeenAtDart } from "../../core/decisions/seenAtDart";
import type { Command } from "../../core/plan/commands";
import type { PlannedDart } from "../../core/plan/plan";
import { answerFor, seenInPlan, type OfferedAnswer, type OfferedAnswers } from "../../core/plan/pointedDartOf";
import type { LengthUnit, Work } from "../../core/decisions/work";
import { formatAngle } from "../../words/terms/darts";
import { formatAmount } from "../../words/terms/length";
import { checkFailureSentence } from "../../words/checks";
import {
  SEEN_AS_SEWN,
  SEWN_AGAIN,
  answerFullness,
  answerNotes,
  answerSum,
  answerTitle,
  bustPointOffSentence,
  naiveFigures,
  naiveWarning,
  pointedDartAim,
  pointedDartFailureSentence,
  pointedDartQuestions,
  takeWords,
} from "../../words/pointedDart";
import { useRun } from "../session/useWork";
import { AmountField } from "../fields/AmountField";
import { Choice } from "../fields/Choice";
import { snapStep } from "../../core/plan/dartEdit";
import * as say from "../../words/dartsStep";
import { Fractions } from "../fields/Fractions";

/** How many answers stand side by side: more would only be looked past. */
const SHOWN = 3;

export interface PointedDartProps {
  readonly dart: PlannedDart;
  readonly work: Work;
  /** Its answers are for the half that is looked at alone. */
  readonly alone: boolean;
}

/** What is seen of a sewn bust dart, and whole answers to it. */
export function PointedDartQuestions({ dart: { ref }, work, alone }: PointedDartProps) {
  const half = useViewState((view) => view.half);
  // Of halves that differ each is seen for itself.
  const key = `${half}-${ref.piece}-${ref.dart}`;
  const said = work.seen?.find((one) => isSeenOf(one, ref, half));
  const run = useRun();
  const inPlan = useMemo(() => seenInPlan(work, ref, half), [work, ref, half]);
  const seen = said ?? inPlan;
  const answers = useMemo(
    () => (seen === null ? null : answerFor(work, ref, half, seen, alone)),
    [work, ref, half, seen, alone],
  );
  if (seen === null || answers === null) return null;
  const { unit } = work;
  const questions = pointedDartQuestions(ref);
  const changed = (part: Partial<SeenAtDart>): Command => ({
    kind: "setSeen",
    dart: ref,
    half,
    seen: { ...seen, ...part },
  });
  return (
    <div className="pointed-body">
      <h4>{questions.heading}</h4>
      <p className="field-hint">{questions.how}</p>
      <div className="amounts">
        <AmountField
          {...questions.past}
          field={`seen.${key}.past`}
          value={seen.pastBustPoint}
          unit={unit}
          step={snapStep(unit)}
          set={(pastBustPoint) => [changed({ pastBustPoint })]}
        />
        <AmountField
          {...questions.aside}
          field={`seen.${key}.aside`}
          value={seen.tooFarToSide}
          unit={unit}
          step={snapStep(unit)}
          set={(tooFarToSide) => [changed({ tooFarToSide })]}
        />
      </div>
      <Choice
        legend={questions.pointed.label}
        options={questions.pointed.choices}
        value={seen.pointed}
        onChange={(pointed) => run(changed({ pointed }))}
      />
      {said !== undefined && (
        <p className="field-hint">
          {SEEN_AS_SEWN}{" "}
          <button
            type="button"
            className="link-button"
            onClick={() => run({ kind: "setSeen", dart: ref, half, seen: null })}
          >
            {SEWN_AGAIN}
          </button>
        </p>
      )}
      {answers.ok ? (
        <Answers
          answers={answers.value}
          dart={ref}
          pointed={seen.pointed}
          unit={unit}
          taken={said === undefined ? null : standingAnswer(said, work, half)}
          onTake={({ take }) => run(take)}
          onTakeBack={() =>
            run({
              kind: "replaceRedraws",
              dart: ref,
              ...(alone ? { half } : {}),
              alterations: said?.sewn ?? [],
            })
          }
        />
      ) : (
        <p className="field-error" role="alert">
          <Fractions text={pointedDartFailureSentence(answers.failure, unit)} />
        </p>
      )}
    </div>
  );
}

interface AnswersProps {
  readonly answers: OfferedAnswers;
  readonly dart: PlannedDart["ref"];
  readonly pointed: SeenAtDart["pointed"];
  readonly unit: LengthUnit;
  readonly taken: DartAnswerKey | null;
  readonly onTake: (answer: OfferedAnswer) => void;
  readonly onTakeBack: () => void;
}

function Answers({ answers, dart, pointed, unit, taken, onTake, onTakeBack }: AnswersProps) {
  const off = bustPointOffSentence(answers, unit);
  const before = answers.answers[0]?.figures.before;
  const shown = answers.answers.filter(({ key }, index) => index < SHOWN || key === taken);
  return (
    <>
      <p className="pointed-aim">
        <Fractions text={pointedDartAim(answers, dart, unit)} />
      </p>
      {off !== null && (
        <p className="field-warning">
          <Fractions text={off} />
        </p>
      )}
      <ol className="answers">
        {shown.map((answer) => (
          <li key={answer.key} className="answer" data-taken={answer.key === taken ? "" : undefined}>
            <h5>
              {answer.key === taken && <span className="answer-first">{say.taken}</span>}
              {taken === null && answer.key === answers.recommended && (
                <span className="answer-first">{say.firstChoice}</span>
              )}
              {answerTitle(answer, dart)}
            </h5>
            <p>
              <Fractions
                text={say.mouthAngle(
                  formatAmount(answer.figures.after.intake, unit),
                  formatAngle(answer.figures.after.angle),
                  answerFullness(answer, pointed, unit),
                )}
              />
            </p>
            {answer.failing.map((check) => {
              const sentence = checkFailureSentence(check, unit);
              return (
                <p key={sentence} className="field-warning">
                  <Fractions text={sentence} />
                </p>
              );
            })}
            <details className="sum">
              <summary>{say.theSum}</summary>
              <ul>
                {answerSum(answer, dart, unit).map((line) => (
                  <li key={line}>
                    <Fractions text={line} />
                  </li>
                ))}
              </ul>
            </details>
            {answerNotes(answer, dart, unit).map((note) => (
              <p key={note} className="field-hint">
                <Fractions text={note} />
              </p>
            ))}
            {answer.key === taken ? (
              <button type="button" className="button small" onClick={onTakeBack}>
                {say.takeItBack}
              </button>
            ) : (
              <button type="button" className="button small" onClick={() => onTake(answer)}>
                {takeWords(answers, taken)}
              </button>
            )}
          </li>
        ))}
      </ol>
      {answers.naive !== null && before !== undefined && (
        <p className="naive">
          <strong>{say.whatNotToDo}</strong>{" "}
          <Fractions text={naiveWarning(answers.naive, answers.wantedFullness, pointed, unit)} />{" "}
          <Fractions
            text={say.naiveOutcome(
              naiveFigures(answers.naive, unit),
              formatAngle(before.angle),
              formatAmount(before.fullness, unit),
            )}
          />
        </p>
      )}
    </>
  );
}
