import { DRESS_MEASURES } from "../../core/decisions/dress";
import { LIMITS } from "../../core/decisions/limits";
import { HIP_DEPTHS } from "../../core/dress/dressedBody";
import { DRESS_MEASURE_WORDS, FLOOR_WHY, measuresOutcome } from "../../words/dressStep";
import { formatLength } from "../../words/terms/length";
import { LengthField } from "../fields/LengthField";
import { useSettledWork } from "../session/useWork";
import { setDressMeasure } from "./dressCommands";
import { DressFoldView } from "./DressFolds";
import { useDressDecided } from "./useDress";
import * as say from "../../words/dressFolds";

/** Lengths below the waist and the girth of the shoulders: only what hangs below a bodice asks for them. */
export function MeasuresFold() {
  const decided = useDressDecided();
  const unit = useSettledWork((work) => work.unit);
  const { measures = {} } = decided;
  return (
    <DressFoldView fold="measures" outcome={measuresOutcome(Object.keys(measures).length, DRESS_MEASURES.length)}>
      <p className="aside">{FLOOR_WHY}</p>
      {DRESS_MEASURES.map((measure) => (
        <LengthField
          key={measure}
          label={DRESS_MEASURE_WORDS[measure].name}
          field={`dress.measures.${measure}`}
          value={measures[measure]}
          set={(value) => setDressMeasure(decided, measure, value)}
          clear={setDressMeasure(decided, measure, null)}
          refuse={(value) => {
            const { least, most } = measure === "waistToHip" ? HIP_DEPTHS : ANY;
            if (value > most) return say.noMoreThan(formatLength(most, unit));
            return value < least ? say.noLessThan(formatLength(least, unit)) : null;
          }}
          hint={DRESS_MEASURE_WORDS[measure].how}
        />
      ))}
    </DressFoldView>
  );
}

const ANY = { least: 0, most: LIMITS.length / 4 } as const;
