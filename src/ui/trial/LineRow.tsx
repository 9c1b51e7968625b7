import { Fragment } from "react";
import type { Half } from "../../core/decisions/alteration";
import { LIMITS } from "../../core/decisions/limits";
import {
  TRIAL_SIGNS,
  TRIAL_WAYS,
  type Observation,
  type Trial,
  type TrialSign,
  type TrialWay,
} from "../../core/decisions/trial";
import type { LengthUnit } from "../../core/decisions/work";
import { isSameDart } from "../../core/pattern/piece";
import { snapStep } from "../../core/plan/dartEdit";
import {
  lineChanged,
  lineMarked,
  lineOfAmount,
  lineOfDart,
  lineOfSign,
  lineOnHalf,
  linePlaced,
  lineTold,
  lineTowards,
  signsFor,
} from "../../core/toile/recordLine";
import { isMark, waysAt } from "../../core/toile/signsAt";
import type { PlaceOnToile } from "../../core/toile/toilePlaces";
import { dartRefWords } from "../../words/terms/names";
import { CANNOT_SAY, doubledWords, FIRST_TRY, MARK_FIELDS, RECORD_LINE, wayWords } from "../../words/trial";
import { signWords } from "../../words/trialPlaces";
import { notBelowWords, tooFarWords } from "../../words/trialStep";
import { AmountField } from "../fields/AmountField";
import { Fractions } from "../fields/Fractions";
import { Select } from "../fields/Select";
import { TextField } from "../fields/TextField";
import { PlaceField } from "./PlaceField";
import { lineField } from "./trialFields";
import * as say from "../../words/trialStep";

interface LineRowProps {
  readonly trial: Trial;
  readonly line: Observation;
  readonly index: number;
  /** Nothing is written in it yet. */
  readonly isNew: boolean;
  readonly places: readonly PlaceOnToile[];
  readonly unit: LengthUnit;
  readonly onPut: (line: Observation) => void;
  /** The next tap on the drawing says where its drag lines point. */
  readonly onAim: () => void;
  readonly onRemove: () => void;
}

const NONE = "";
const HALVES: readonly Half[] = ["left", "right"];

/** One line of the record, in the order of its columns. */
export function LineRow({ trial, line, index, isNew, places, unit, onPut, onAim, onRemove }: LineRowProps) {
  const { place, sign, towards, dart, way, amount, mark, half, changed } = line;
  const put = (observation: Observation) => ({ kind: "putObservation", trial: trial.id, observation }) as const;
  const label = (name: string) => (
    <>
      <span className="visually-hidden">{say.lineLabel(index + 1)}</span>
      {name}
    </>
  );
  const darts = (places.find((one) => one.place === place)?.spots ?? []).flatMap((spot) =>
    spot.dart === undefined ? [] : [spot.dart],
  );
  const ways = sign === undefined ? TRIAL_WAYS : waysAt(sign, place);

  const setSign = (next: TrialSign | null): void => {
    onPut(lineOfSign(line, next));
    if (next === "dragLines" && towards === undefined) onAim();
  };

  return (
    <li className="record-line" data-line={line.id} data-new={isNew ? "" : undefined}>
      <span className="line-number" aria-hidden="true">
        {index + 1}
      </span>
      <div className="line-place">
        <PlaceField
          label={label(RECORD_LINE.place)}
          field={lineField(trial, index, "place")}
          value={place}
          places={places}
          set={(next) => put(linePlaced(line, next))}
          clear={put(linePlaced(line, null))}
        />
      </div>
      <div className="line-sign">
        <Select
          label={label(RECORD_LINE.sign)}
          value={sign ?? NONE}
          options={[
            { value: NONE, label: "…" },
            ...signsFor(line, TRIAL_SIGNS).map((value) => ({ value, label: signWords(value) })),
          ]}
          onChange={(value) => setSign(TRIAL_SIGNS.find((one) => one === value) ?? null)}
        />
        {sign === "dragLines" && (
          <PlaceField
            label={label(say.pointsAt)}
            field={lineField(trial, index, "towards")}
            value={towards}
            places={places}
            set={(next) => put(lineTowards(line, next))}
            clear={put(lineTowards(line, null))}
          />
        )}
        {(darts.length > 1 || dart !== undefined) && (
          <Select
            label={label("of")}
            value={dart === undefined ? NONE : dartRefWords(dart)}
            options={[
              { value: NONE, label: say.whichDart },
              ...[...darts, ...(dart === undefined || darts.some((one) => isSameDart(one, dart)) ? [] : [dart])].map(
                (one) => ({ value: dartRefWords(one), label: dartRefWords(one) }),
              ),
            ]}
            onChange={(value) => onPut(lineOfDart(line, darts.find((one) => dartRefWords(one) === value) ?? null))}
          />
        )}
      </div>
      {isMark(sign) ? (
        <div className="line-mark">
          {(["out", "down"] as const).map((part) => (
            <Fragment key={part}>
              <AmountField
                label={label(MARK_FIELDS[part])}
                field={lineField(trial, index, part)}
                value={mark?.[part]}
                unit={unit}
                step={snapStep(unit)}
                refuse={(value) => tooFarWords(value, unit)}
                set={(value) => [put(lineMarked(line, part, value))]}
                clear={() => [put(lineMarked(line, part, null))]}
              />
            </Fragment>
          ))}
        </div>
      ) : (
        <>
          <div className="line-way">
            <Select
              label={label(RECORD_LINE.way)}
              value={way ?? NONE}
              options={[
                ...TRIAL_WAYS.filter((one) => ways.includes(one) || one === way).map((value) => ({
                  value,
                  label: wayWords(value),
                })),
                { value: NONE, label: CANNOT_SAY },
              ]}
              onChange={(value) => onPut(lineTold(line, wayOf(value)))}
            />
          </div>
          <div className="line-amount">
            <AmountField
              label={label(RECORD_LINE.amount)}
              field={lineField(trial, index, "amount")}
              value={amount}
              unit={unit}
              step={snapStep(unit)}
              refuse={(value) => notBelowWords(value, unit)}
              set={(value) => [put(lineOfAmount(line, value))]}
              clear={() => [put(lineOfAmount(line, null))]}
            />
            {way === "pinched" && amount !== undefined && (
              <p className="field-hint">
                <Fractions text={doubledWords(amount, unit)} />
              </p>
            )}
            {sign !== undefined && amount === undefined && <p className="field-hint">{FIRST_TRY}</p>}
          </div>
        </>
      )}
      <div className="line-half">
        <Select
          label={label(RECORD_LINE.half)}
          value={half ?? NONE}
          options={[{ value: NONE, label: "both" }, ...HALVES.map((value) => ({ value, label: value }))]}
          onChange={(value) => onPut(lineOnHalf(line, HALVES.find((one) => one === value) ?? null))}
        />
      </div>
      <div className="line-changed">
        <TextField
          label={label(RECORD_LINE.changed)}
          field={lineField(trial, index, "changed")}
          value={changed ?? ""}
          maxLength={LIMITS.text}
          set={(text) => put(lineChanged(line, text))}
          clear={put(lineChanged(line, null))}
        />
      </div>
      {!isNew && (
        <button
          type="button"
          className="link-button line-remove"
          aria-label={say.removeLine(index + 1)}
          onClick={onRemove}
        >
          <span aria-hidden="true">×</span>
        </button>
      )}
    </li>
  );
}

const wayOf = (value: string): TrialWay | null => TRIAL_WAYS.find((one) => one === value) ?? null;
