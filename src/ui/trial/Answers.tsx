import { useMemo, useRef, useState } from "react";
import type { Half } from "../../core/decisions/alteration";
import type { Trial } from "../../core/decisions/trial";
import type { Work } from "../../core/decisions/work";
import { readTrial } from "../../core/trial/readTrial";
import { answerCommand } from "../../core/trial/takeAnswer";
import { canTryOnHalf, isToTake, standsOn } from "../../core/trial/takenNow";
import type { TrialAnswer } from "../../core/trial/trialReading";
import {
  againstWords,
  alteredWords,
  answerName,
  ANSWERS_TITLE,
  apartWords,
  causeSentence,
  expectsWords,
  explainsWords,
  NOTHING_FOUND,
  NOTHING_READ,
  sewnOffWords,
  TAKE_IT,
  TAKEN,
  takenOn,
  takeWordsOn,
  unexplainedWords,
} from "../../words/trialAnswers";
import { Fractions } from "../fields/Fractions";
import { useSaid } from "../session/useSaid";
import { useRun } from "../session/useWork";
import * as say from "../../words/trialStep";

interface AnswersProps {
  readonly trial: Trial;
  readonly work: Work;
}

/** What the record comes to: the answers, the most probable first, and what is left. */
export function Answers({ trial, work }: AnswersProps) {
  const { unit } = work;
  const run = useRun();
  const heading = useRef<HTMLHeadingElement>(null);
  const reading = useMemo(() => readTrial(trial, work.trials), [trial, work.trials]);
  const tell = useSaid((said) => said.say);
  if (!reading.ok) return null;
  const { read, answers, unexplained, sewnOff } = reading.value;
  const { observations } = trial;

  const take = (answer: TrialAnswer, half: Half | null): void => {
    run(answerCommand(work, trial, answer, half));
    tell(`${half === null ? TAKEN : takenOn([half])}: ${answerName(answer)}`);
    // The button that was pressed goes.
    heading.current?.focus({ preventScroll: true });
  };

  return (
    <section className="trial-answers" aria-label={ANSWERS_TITLE}>
      <h3 ref={heading} tabIndex={-1}>
        {ANSWERS_TITLE}
      </h3>
      {sewnOff.map((off) => (
        <p key={off.length} className="field-warning">
          <Fractions text={sewnOffWords(off, observations, unit)} />
        </p>
      ))}
      {read.length === 0 && <p className="aside">{NOTHING_READ}</p>}
      {read.length > 0 && answers.length === 0 && unexplained.length > 0 && <p>{NOTHING_FOUND}</p>}
      <ol>
        {answers.map((answer, at) => (
          <li key={answer.key}>
            <Answer
              answer={answer}
              trial={trial}
              unit={unit}
              isFirst={at === 0}
              isLast={at === answers.length - 1}
              hasNext={answers.length > 1}
              onTake={(half) => take(answer, half)}
            />
          </li>
        ))}
      </ol>
      {answers.length > 0 && unexplained.length > 0 && <p>{unexplainedWords(unexplained, observations)}</p>}
    </section>
  );
}

interface AnswerProps {
  readonly answer: TrialAnswer;
  readonly trial: Trial;
  readonly unit: Work["unit"];
  readonly isFirst: boolean;
  readonly isLast: boolean;
  readonly hasNext: boolean;
  readonly onTake: (half: Half | null) => void;
}

const HALVES: readonly Half[] = ["left", "right"];

function Answer({ answer, trial, unit, isFirst, isLast, hasNext, onTake }: AnswerProps) {
  const [opened, setOpened] = useState<boolean | null>(null);
  const isOpen = opened ?? isFirst;
  const stands = standsOn(trial, answer);
  const name = answerName(answer);
  const expects = expectsWords(answer);
  const against = againstWords(answer);
  return (
    <details className="trial-answer" open={isOpen} data-taken={stands === null ? undefined : ""}>
      <summary
        onClick={(event) => {
          event.preventDefault();
          setOpened(!isOpen);
        }}
      >
        {stands !== null && <span className="answer-first">{stands === "both" ? TAKEN : takenOn(stands)}. </span>}
        {name}
      </summary>
      {isOpen && (
        <div className="trial-answer-body">
          {answer.causes.map((cause) => (
            <p key={`${cause.rule} ${cause.half ?? ""}`}>
              <Fractions text={causeSentence(cause, unit)} />
            </p>
          ))}
          {isToTake(answer) && (
            <ul aria-label={say.alteredForIt}>
              {alteredWords(answer, unit).map((words) => (
                <li key={words}>
                  <Fractions text={words} />
                </li>
              ))}
            </ul>
          )}
          <p>{explainsWords(answer, trial.observations)}</p>
          {against !== null && <p className="field-warning">{against}</p>}
          {expects !== null && <p className="aside">{expects}</p>}
          {hasNext &&
            apartWords(answer, isLast).map((words) => (
              <p key={words} className="aside">
                <Fractions text={words} />
              </p>
            ))}
          <p className="actions">
            {stands !== "both" && isToTake(answer) && (
              <button
                type="button"
                className="button main"
                aria-label={`${TAKE_IT}: ${name}`}
                onClick={() => onTake(null)}
              >
                {TAKE_IT}
              </button>
            )}
            {canTryOnHalf(trial, answer) &&
              HALVES.filter((half) => stands === "both" || stands === null || !stands.includes(half)).map((half) => (
                <button
                  key={half}
                  type="button"
                  className="button"
                  aria-label={`${takeWordsOn(half)}: ${name}`}
                  onClick={() => onTake(half)}
                >
                  {takeWordsOn(half)}
                </button>
              ))}
          </p>
        </div>
      )}
    </details>
  );
}
