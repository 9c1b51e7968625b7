import { memo, useState } from "react";
import type { Estimate } from "../../core/bodies/estimate";
import type { Suspicion } from "../../core/bodies/suspicion";
import type { MeasureName } from "../../core/measures/measure";
import { MEASURE_NEEDS } from "../../core/measures/registry";
import { bodyOf } from "../../core/measures/tape";
import { LIMITS } from "../../core/plan/limits";
import { formatLengthEntry } from "../../words/length";
import { measureNeedWords, measureRefusal, measureWords } from "../../words/measures";
import { dayWords, doubtSentence, guessSource, guessWords, readingsSentence } from "../../words/tape";
import { useWork } from "../app/useWork";
import { Fractions } from "../fields/Fractions";
import { LengthField } from "../fields/LengthField";
import { SlipQuestion } from "./SlipQuestion";

export interface MeasureFieldProps {
  readonly name: MeasureName;
  /** What the others lead one to expect, where it was not taken. */
  readonly estimate: Estimate | undefined;
  readonly suspicion: Suspicion | undefined;
  /** Called when the wearer comes to this measure, so that the figure can show it. */
  readonly onShow: (name: MeasureName) => void;
}

/** All readings of one measure, or the guess that stands until there is one. */
export const MeasureField = memo(({ name, estimate, suspicion, onShow }: MeasureFieldProps) => {
  const unit = useWork((work) => work.unit);
  const readings = useWork((work) => work.tapes[0]?.readings[name]);
  const measured = useWork((work) => bodyOf(work.tapes)[name]);
  const earlier = useWork((work) => (measured === undefined || measured.set === 0 ? undefined : work.tapes[measured.set]?.taken));
  const [again, setAgain] = useState(false);
  const words = measureWords(name);
  const need = MEASURE_NEEDS[name];
  const count = readings?.length ?? 0;
  const said = measured === undefined ? null : readingsSentence(name, measured, unit);
  const last = measured !== undefined && measured.set > 0 ? measured : null;

  const hint =
    measured === undefined ? (
      <>
        {need !== "welcome" && <span>{measureNeedWords(need)} </span>}
        {estimate !== undefined && (
          <span className="guess">
            <b>guess</b> <Fractions text={guessWords(estimate, unit)} />; {guessSource(estimate)}
          </span>
        )}
      </>
    ) : last !== null ? (
      <span>
        Last time <Fractions text={formatLengthEntry(last.value, unit)} /> {unit} ({dayWords(earlier)}), which counts until you take it again.
      </span>
    ) : undefined;
  const isHinted = measured === undefined ? need !== "welcome" || estimate !== undefined : last !== null;

  const reading = (at: number, label: React.ReactNode, extra: object = {}) => (
    <LengthField
      key={at}
      label={label}
      field={at === 0 ? `measure.${name}` : `measure.${name}.${at}`}
      value={readings?.[at]}
      set={(value) => ({ kind: "setReading", measure: name, at, value })}
      clear={{ kind: "removeReading", measure: name, at }}
      refuse={(length) => measureRefusal(name, length, unit)}
      onFocus={() => onShow(name)}
      {...extra}
    />
  );
  const shown = Math.max(1, again && count > 0 ? count + 1 : count);

  return (
    <div className="measure" data-taken={measured === undefined ? undefined : ""}>
      {reading(
        0,
        <>
          {words.name}
          {words.trade !== null && <span className="trade"> · {words.trade}</span>}
        </>,
        {
          ...(isHinted ? { hint } : {}),
          ...(suspicion === undefined ? {} : { warnings: [doubtSentence(suspicion, unit)] }),
        },
      )}
      {suspicion?.slip != null && !suspicion.takenAgain && <SlipQuestion suspicion={suspicion} slip={suspicion.slip} unit={unit} />}
      {Array.from({ length: shown - 1 }, (_, index) =>
        reading(index + 1, <span className="reading-label">{words.name}, reading {index + 2}</span>),
      )}
      {said !== null && (
        <p className="readings-said">
          <Fractions text={said} />
        </p>
      )}
      {count > 0 && shown === count && count < LIMITS.readings && (
        <button type="button" className="link-button take-again" onClick={() => setAgain(true)} aria-label={`Take ${words.short} again`}>
          Take it again
        </button>
      )}
    </div>
  );
});
MeasureField.displayName = "MeasureField";
