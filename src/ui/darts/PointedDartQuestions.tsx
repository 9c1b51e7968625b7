import { useViewState } from "../session/viewState";
import { useMemo } from "react";
import { isSeenOf, type SeenAtDart } from "../../core/decisions/seenAtDart";
import type { DartAnswer, PointedDartAnswers } from "../../core/pointedDart/pointedDart";
import type { Command } from "../../core/plan/commands";
import type { PlannedDart } from "../../core/plan/plan";
import { answerFor, seenInPlan } from "../../core/plan/pointedDartOf";
import type { Half } from "../../core/decisions/alteration";
import type { LengthUnit, Work } from "../../core/decisions/work";
import { formatAngle } from "../../words/terms/darts";
import { formatAmount } from "../../words/terms/length";
import {
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
} from "../../words/pointedDart";
import { useRunAll } from "../session/useRunAll";
import { useRun } from "../session/useWork";
import { AmountField } from "../fields/AmountField";
import { Choice } from "../fields/Choice";
import { snapStep } from "../../core/plan/dartEdit";

/** How many answers stand side by side: more would only be looked past. */
const SHOWN = 3;

/** mm. A marked bust point further than this from the measured one is to be measured again first (our own choice). */
const REMEASURE = 25;

const HALVES: readonly Half[] = ["left", "right"];

export interface PointedDartProps {
  readonly dart: PlannedDart;
  readonly work: Work;
}

/** What is seen of a sewn bust dart, and whole answers to it. */
export function PointedDartQuestions({ dart: { ref }, work }: PointedDartProps) {
  const half = useViewState((view) => view.half);
  // Of halves that differ each is seen for itself.
  const key = `${half}-${ref.piece}-${ref.dart}`;
  const said = work.seen?.find((one) => isSeenOf(one, ref, half));
  const run = useRun();
  const runAll = useRunAll();
  const inPlan = useMemo(() => seenInPlan(work, ref, half), [work, ref, half]);
  const seen = said ?? inPlan;
  const answers = useMemo(() => (seen === null ? null : answerFor(work, ref, half, seen)), [work, ref, half, seen]);
  if (seen === null || answers === null) return null;
  const { unit } = work;
  const questions = pointedDartQuestions(ref);
  const changed = (part: Partial<SeenAtDart>): Command => ({
    kind: "setSeen",
    dart: ref,
    half,
    seen: { ...seen, ...part },
  });
  // What was seen, on either half, belongs to the toile that was sewn; the dart as answered starts afresh.
  const take = (answer: DartAnswer): void =>
    runAll([
      { kind: "replaceRedraws", dart: ref, alterations: answer.alterations },
      ...HALVES.map((one): Command => ({ kind: "setSeen", dart: ref, half: one, seen: null })),
    ]);
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
      {answers.ok ? (
        <Answers answers={answers.value} dart={ref} pointed={seen.pointed} unit={unit} onTake={take} />
      ) : (
        <p className="field-error" role="alert">
          {pointedDartFailureSentence(answers.failure, unit)}
        </p>
      )}
    </div>
  );
}

interface AnswersProps {
  readonly answers: PointedDartAnswers;
  readonly dart: PlannedDart["ref"];
  readonly pointed: SeenAtDart["pointed"];
  readonly unit: LengthUnit;
  readonly onTake: (answer: DartAnswer) => void;
}

function Answers({ answers, dart, pointed, unit, onTake }: AnswersProps) {
  const off = bustPointOffSentence(answers, unit);
  const before = answers.answers[0]?.figures.before;
  return (
    <>
      <p className="pointed-aim">{pointedDartAim(answers, dart, unit)}</p>
      {off !== null && <p className="slip-refusal">{off}</p>}
      <ol className="answers">
        {answers.answers.slice(0, SHOWN).map((answer, index) => (
          <li key={answer.key} className="answer">
            <h5>
              {index === 0 && answers.bustPointOff <= REMEASURE && <span className="answer-first">First choice. </span>}
              {answerTitle(answer, dart)}
            </h5>
            <p>
              Mouth {formatAmount(answer.figures.after.intake, unit)}, angle {formatAngle(answer.figures.after.angle)}.{" "}
              {answerFullness(answer, unit)}
            </p>
            <details className="sum">
              <summary>The sum</summary>
              <ul>
                {answerSum(answer, dart, unit).map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            </details>
            {answerNotes(answer, dart, unit).map((note) => (
              <p key={note} className="field-hint">
                {note}
              </p>
            ))}
            <button type="button" className="button small" onClick={() => onTake(answer)}>
              {answers.bustPointOff > REMEASURE ? "Take this one all the same" : "Take this one"}
            </button>
          </li>
        ))}
      </ol>
      {answers.naive !== null && before !== undefined && (
        <p className="naive">
          <strong>What not to do.</strong> {naiveWarning(answers.naive, answers.wantedFullness, pointed, unit)} It would
          be {naiveFigures(answers.naive, unit)}; as sewn it is {formatAngle(before.angle)} wide,{" "}
          {formatAmount(before.fullness, unit)} full.
        </p>
      )}
    </>
  );
}
