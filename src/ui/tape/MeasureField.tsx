import { memo, useMemo } from "react";
import { measureNotes } from "../../core/measures/crossChecks";
import type { MeasureName } from "../../core/measures/measure";
import { measuresOf } from "../../core/measures/tape";
import { MEASURE_NEEDS } from "../../core/measures/registry";
import { measureNeedWords, measureNoteSentence, measureRefusal, measureWords } from "../../words/measures";
import { useSettledWork, useWork } from "../app/useWork";
import { LengthField } from "../fields/LengthField";

export interface MeasureFieldProps {
  readonly name: MeasureName;
  /** Called when the wearer comes to this measure, so that the figure can show it. */
  readonly onShow: (name: MeasureName) => void;
}

export const MeasureField = memo(({ name, onShow }: MeasureFieldProps) => {
  const unit = useWork((work) => work.unit);
  const value = useWork((work) => measuresOf(work.tapes)[name]);
  const measures = useSettledWork((work) => measuresOf(work.tapes));
  const words = measureWords(name);
  const need = MEASURE_NEEDS[name];

  // A note about two measures stands beside the one it holds against the other.
  const warnings = useMemo(
    () => measureNotes(measures).filter((note) => note.involves[0] === name).map((note) => measureNoteSentence(note, unit)),
    [measures, name, unit],
  );

  return (
    <LengthField
      label={
        <>
          {words.name}
          {words.trade !== null && <span className="trade"> · {words.trade}</span>}
        </>
      }
      field={`measure.${name}`}
      value={value}
      set={(length) => ({ kind: "setMeasure", measure: name, value: length })}
      clear={{ kind: "clearMeasure", measure: name }}
      refuse={(length) => measureRefusal(name, length, unit)}
      warnings={warnings}
      {...(value === undefined && need !== "welcome" ? { hint: measureNeedWords(need) } : {})}
      onFocus={() => onShow(name)}
    />
  );
});
MeasureField.displayName = "MeasureField";
