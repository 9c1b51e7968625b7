import { useViewState } from "../session/viewState";
import { useMemo } from "react";
import type { DartAnswer, PointedDartAnswers, SeenAtDart } from "../../core/pointedDart/pointedDart";
import type { PlannedDart } from "../../core/plan/plan";
import { answerFor, seenInPlan } from "../../core/plan/pointedDartOf";
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
import { useRun } from "../session/useWork";
import { AmountField } from "../fields/AmountField";
import { Choice } from "../fields/Choice";
import { snapStep } from "../../core/plan/dartEdit";
import { useSeen } from "./seenState";

/** How many answers stand side by side: more would only be looked past. */
const SHOWN = 3;

/** mm. A marked bust point further than this from the measured one is to be measured again first (our own choice). */
const REMEASURE = 25;

export interface PointedDartProps {
  readonly dart: PlannedDart;
  readonly work: Work;
}

/** What is seen of a sewn bust dart, and whole answers to it. */
export function PointedDartQuestions({ dart: { ref }, work }: PointedDartProps) {
  const half = useViewState((view) => view.half);
  // Of halves that differ each is seen for itself.
  const key = `${half}-${ref.piece}-${ref.dart}`;
  const said = useSeen((state) => state.seen[key]);
  const setSeen = useSeen((state) => state.setSeen);
  const run = useRun();
  const inPlan = useMemo(() => seenInPlan(work, ref, half), [work, ref, half]);
  const seen = said ?? inPlan;
  const answers = useMemo(() => (seen === null ? null : answerFor(work, ref, half, seen)), [work, ref, half, seen]);
  if (seen === null || answers === null) return null;
  const { unit } = work;
  const questions = pointedDartQuestions(ref);
  const change = (part: Partial<SeenAtDart>): void => setSeen(key, { ...seen, ...part });
  const take = (answer: DartAnswer): void => {
    run({ kind: "replaceRedraws", dart: ref, alterations: answer.alterations });
    // What was seen belongs to the toile that was sewn; the dart as answered starts afresh.
    const after = seenInPlan(
      {
        ...work,
        alterations: [
          ...work.alterations.filter((a) => a.kind === "fit" || a.dart.piece !== ref.piece || a.dart.dart !== ref.dart),
          ...answer.alterations,
        ],
      },
      ref,
      half,
    );
    if (after !== null) setSeen(key, after);
  };
  return (
    <div className="pointed-body">
      <h4>{questions.heading}</h4>
      <p className="field-hint">{questions.how}</p>
      <div className="amounts">
        <SeenAmount
          {...questions.past}
          field={`seen.${key}.past`}
          value={seen.pastBustPoint}
          unit={unit}
          onChange={(pastBustPoint) => change({ pastBustPoint })}
        />
        <SeenAmount
          {...questions.aside}
          field={`seen.${key}.aside`}
          value={seen.tooFarToSide}
          unit={unit}
          onChange={(tooFarToSide) => change({ tooFarToSide })}
        />
      </div>
      <Choice
        legend={questions.pointed.label}
        options={questions.pointed.choices}
        value={seen.pointed}
        onChange={(pointed) => change({ pointed })}
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

interface SeenAmountProps {
  readonly label: string;
  readonly field: string;
  readonly hint: string;
  readonly value: number;
  readonly unit: LengthUnit;
  readonly onChange: (value: number) => void;
}

/** What is seen is no alteration yet: it has no undo of its own and is taken as it is typed. */
const SeenAmount = ({ onChange, unit, ...field }: SeenAmountProps) => (
  <AmountField
    {...field}
    unit={unit}
    step={snapStep(unit)}
    onStart={nothing}
    onPreview={onChange}
    onCommit={nothing}
    onCancel={nothing}
  />
);

const nothing = (): void => undefined;

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
