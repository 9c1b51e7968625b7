import "./trial.css";
import { useState } from "react";
import { LIMITS } from "../../core/decisions/limits";
import type { Trial } from "../../core/decisions/trial";
import { planOf } from "../../core/plan/planOf";
import { freshId } from "../../store/freshId";
import { planFailureWords } from "../../words/plan";
import { BEGIN_ABOUT, beginWords, PRINT_RECORD, trialName, trialState, TRIAL_INTRO } from "../../words/trialStep";
import { FailureNote } from "../session/FailureNote";
import { today } from "../session/today";
import { usePageState } from "../session/pageState";
import { useSettledPlan } from "../session/usePlan";
import { useRun, useSettledWork } from "../session/useWork";
import { Versions } from "../versions/Versions";
import { Answers } from "./Answers";
import { BeforeReading } from "./BeforeReading";
import { KeepHalf } from "./KeepHalf";
import { RecordHeading } from "./RecordHeading";
import { RecordLines } from "./RecordLines";
import { TrialPhotos } from "./TrialPhotos";
import { Verdict } from "./Verdict";
import * as say from "../../words/trialStep";

/** The trial garments of a work: what was sewn, what is seen on it, what answers it. */
export function TrialStep() {
  const plan = useSettledPlan();
  const work = useSettledWork((current) => current);
  const run = useRun();
  const { trials = [] } = work;
  /** What was looked at, the first that is still there before the others. */
  const [looked, setLooked] = useState<readonly string[]>([]);
  const [opened] = looked.flatMap((id) => trials.find((trial) => trial.id === id) ?? []);
  const shown = opened ?? trials.find(({ verdict }) => verdict === undefined) ?? trials[0];
  // It stays the one that is looked at, whatever is said of it: a verdict would else put another under her hand. One that was
  // removed and is brought back by undo is looked at again.
  if (shown !== undefined && shown !== opened) setLooked([...looked, shown.id]);
  const setOpened = (id: string): void => setLooked([id]);

  const begin = (): void => {
    const id = freshId();
    run({ kind: "beginTrial", id, day: today() });
    setOpened(id);
  };

  return (
    <>
      <header className="step-head">
        <h2>{say.trial}</h2>
        <p>{TRIAL_INTRO}</p>
      </header>
      {trials.length > 0 && (
        <ol className="trials" aria-label={say.trialsList}>
          {trials.toReversed().map((trial, index) => (
            <li key={trial.id}>
              <button
                type="button"
                className="trial-tag"
                aria-pressed={trial === shown}
                onClick={() => setOpened(trial.id)}
              >
                <b>{trialName(index + 1)}</b> <span>{trialState(trial)}</span>
              </button>
            </li>
          ))}
        </ol>
      )}
      {plan.ok ? (
        <section className="trial-begin" aria-label={say.beginATrial}>
          {trials.length === 0 && <p>{BEGIN_ABOUT}</p>}
          {trials.length < LIMITS.trials && (
            <p className="actions">
              <button type="button" className={trials.length === 0 ? "button main" : "button"} onClick={begin}>
                {beginWords(trials.length)}
              </button>
              <PrintRecord />
            </p>
          )}
        </section>
      ) : (
        <FailureNote
          words={planFailureWords(plan.failure, work.unit, work.pattern.chart.sizes.length)}
          picks={work.picks}
        />
      )}
      {shown !== undefined && <OneTrial key={shown.id} trial={shown} number={trials.length - trials.indexOf(shown)} />}
      <Versions />
    </>
  );
}

/** To Paper, with the record chosen there. */
function PrintRecord() {
  const showSheet = usePageState((page) => page.showSheet);
  return (
    <a className="button" href="#paper" onClick={() => showSheet("trial")}>
      {PRINT_RECORD}
    </a>
  );
}

interface OneTrialProps {
  readonly trial: Trial;
  readonly number: number;
}

/** One trial, in the order of the printed record. */
function OneTrial({ trial, number }: OneTrialProps) {
  const work = useSettledWork((current) => current);
  const run = useRun();
  const plan = planOf(trial.sewn);
  return (
    <>
      <section className="trial-one" aria-label={trialName(number)}>
        <div className="section-head">
          <h3>{trialName(number)}</h3>
          <button
            type="button"
            className="link-button"
            aria-label={say.removeNamed(trialName(number).toLowerCase())}
            onClick={() => run({ kind: "removeTrial", trial: trial.id })}
          >
            {say.remove}
          </button>
        </div>
        <RecordHeading trial={trial} />
      </section>
      {plan.ok ? (
        <>
          <BeforeReading trial={trial} plan={plan.value} />
          <RecordLines trial={trial} plan={plan.value} work={work} />
          <Answers trial={trial} work={work} />
          <KeepHalf work={work} />
        </>
      ) : (
        <FailureNote words={planFailureWords(plan.failure, work.unit, trial.sewn.pattern.chart.sizes.length)} />
      )}
      <TrialPhotos trial={trial} />
      <Verdict trial={trial} />
    </>
  );
}
