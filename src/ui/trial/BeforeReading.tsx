import { useId } from "react";
import type { Half } from "../../core/decisions/alteration";
import { LIMITS } from "../../core/decisions/limits";
import { TOILE_LENGTHS, type Observation, type Trial, type TrialCheck } from "../../core/decisions/trial";
import { snapStep } from "../../core/plan/dartEdit";
import type { Plan } from "../../core/plan/plan";
import { isBustMark, lineMarked } from "../../core/toile/recordLine";
import { toileLengths } from "../../core/toile/toileLengths";
import { readTrial } from "../../core/trial/readTrial";
import { freshId } from "../../store/freshId";
import {
  AS_SEWN,
  BUST_POINTS,
  BUST_POINTS_NOTE,
  CHECK_GROUPS,
  checkWords,
  MARK_FIELDS,
  offWords,
  plannedWords,
  toileLengthWords,
  yourHalf,
} from "../../words/trial";
import { FIRST_TITLE, FIRST_WHY, tooFarWords, WRITE_THE_NO } from "../../words/trialStep";
import { AmountField } from "../fields/AmountField";
import { Fractions } from "../fields/Fractions";
import { LengthField } from "../fields/LengthField";
import { useRun, useSettledWork } from "../session/useWork";
import { trialField } from "./trialFields";
import * as say from "../../words/trialStep";

interface BeforeReadingProps {
  readonly trial: Trial;
  readonly plan: Plan;
}

const HALVES: readonly Half[] = ["left", "right"];
const PARTS = ["out", "down"] as const;

/** What spoils every reading, before anything is read: bust points, the toile as sewn, how it hangs and moves. */
export function BeforeReading({ trial, plan }: BeforeReadingProps) {
  return (
    <section className="trial-first" aria-label={FIRST_TITLE}>
      <h3>{FIRST_TITLE}</h3>
      <p className="aside">{FIRST_WHY}</p>
      <BustPoints trial={trial} />
      <Lengths trial={trial} plan={plan} />
      <Checks trial={trial} />
    </section>
  );
}

function BustPoints({ trial }: { readonly trial: Trial }) {
  const unit = useSettledWork((work) => work.unit);
  return (
    <div role="group" aria-label={BUST_POINTS}>
      <h4>{BUST_POINTS}</h4>
      <div className="bust-marks">
        {HALVES.map((half) => (
          <div key={half} className="bust-mark">
            <span className="aside">{yourHalf(half)}</span>
            {PARTS.map((part) => (
              <BustPart key={part} trial={trial} half={half} part={part} unit={unit} />
            ))}
          </div>
        ))}
      </div>
      <p className="field-hint">{BUST_POINTS_NOTE}</p>
    </div>
  );
}

interface BustPartProps {
  readonly trial: Trial;
  readonly half: Half;
  readonly part: (typeof PARTS)[number];
  readonly unit: "cm" | "in";
}

function BustPart({ trial, half, part, unit }: BustPartProps) {
  const line = trial.observations.find((one) => isBustMark(one) && one.half === half);
  const put = (observation: Observation) => ({ kind: "putObservation", trial: trial.id, observation }) as const;
  return (
    <AmountField
      label={
        <>
          <span className="visually-hidden">{say.bustPoint(half)}</span>
          {MARK_FIELDS[part]}
        </>
      }
      field={trialField(trial, `bust.${half}.${part}`)}
      value={line?.mark?.[part]}
      unit={unit}
      step={snapStep(unit)}
      refuse={(value) => tooFarWords(value, unit)}
      set={(value) => [
        put(lineMarked(line ?? { id: bustId(half), place: "bust", sign: "bustPoint", half }, part, value)),
      ]}
      clear={() => {
        if (line === undefined) return [];
        const left = lineMarked(line, part, null);
        return [left.mark === undefined ? { kind: "removeObservation", trial: trial.id, id: line.id } : put(left)];
      }}
    />
  );
}

/** One for each half of a trial: its id need be like no other's of that trial alone. */
const bustId = (half: Half): string => `bust-${half}-${freshId()}`;

function Lengths({ trial, plan }: BeforeReadingProps) {
  const unit = useSettledWork((work) => work.unit);
  const planned = toileLengths(plan);
  const reading = readTrial(trial);
  const sewnOff = reading.ok ? reading.value.sewnOff : [];
  return (
    <div role="group" aria-label={AS_SEWN}>
      <h4>{AS_SEWN}</h4>
      <div className="toile-lengths">
        {TOILE_LENGTHS.map((length) => {
          const should = planned[length];
          const sewn = trial.measured?.[length];
          if (should === undefined && sewn === undefined) return null;
          const off = sewnOff.find((one) => one.length === length);
          return (
            <LengthField
              key={length}
              label={toileLengthWords(length)}
              field={trialField(trial, length)}
              value={sewn}
              set={(value) => ({ kind: "setToileLength", trial: trial.id, length, value })}
              clear={{ kind: "setToileLength", trial: trial.id, length, value: null }}
              refuse={(value) => (value > LIMITS.length ? tooFarWords(value, unit) : null)}
              {...(should === undefined ? {} : { hint: <Fractions text={plannedWords(should, unit)} /> })}
              warnings={off === undefined ? [] : [offWords(off.sewn, off.planned, unit)]}
            />
          );
        })}
      </div>
    </div>
  );
}

function Checks({ trial }: { readonly trial: Trial }) {
  const isAnyNo = Object.values(trial.checks ?? {}).includes(false);
  return (
    <>
      <div className="trial-checks">
        {CHECK_GROUPS.map(({ title, checks }) => (
          <div key={title} role="group" aria-label={title}>
            <h4>{title}</h4>
            {checks.map((check) => (
              <Check key={check} trial={trial} check={check} />
            ))}
          </div>
        ))}
      </div>
      {isAnyNo && <p className="aside">{WRITE_THE_NO}</p>}
    </>
  );
}

const ANSWERS = [
  ["yes", true],
  ["no", false],
  [say.notLookedAt, null],
] as const;

function Check({ trial, check }: { readonly trial: Trial; readonly check: TrialCheck }) {
  const name = useId();
  const run = useRun();
  const is = trial.checks?.[check] ?? null;
  return (
    <fieldset className="trial-check" data-no={is === false ? "" : undefined}>
      <legend>{checkWords(check, trial.sewn)}</legend>
      {ANSWERS.map(([words, value]) => (
        <label key={words}>
          <input
            type="radio"
            name={name}
            checked={is === value}
            onChange={() => run({ kind: "setTrialCheck", trial: trial.id, check, is: value })}
          />
          {value === null ? (
            <>
              <span aria-hidden="true">–</span>
              <span className="visually-hidden">{words}</span>
            </>
          ) : (
            words
          )}
        </label>
      ))}
    </fieldset>
  );
}
