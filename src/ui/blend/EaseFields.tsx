import type { Ease } from "../../core/decisions/pattern";
import { formatLength, formatLengthEntry } from "../../words/terms/length";
import { useSettledWork } from "../session/useWork";
import { LengthField } from "../fields/LengthField";

const LEVELS = ["bust", "waist", "hip"] as const satisfies readonly (keyof Ease)[];

/** Below this a waist seam strains and a hip rides up (common practice, no source). */
const SNUG = 10;

/** Ease where the wearer wants another than the pattern was drawn with. */
export function EaseFields() {
  const wanted = useSettledWork((work) => work.easeWanted);
  const drafted = useSettledWork((work) => work.pattern.ease);
  const unit = useSettledWork((work) => work.unit);
  return (
    <section className="ease" aria-labelledby="ease-title">
      <h3 id="ease-title">Ease wanted</h3>
      <p className="aside">Room between you and the garment. Leave a field empty to keep the pattern’s own.</p>
      <div className="field-row">
        {LEVELS.map((level) => {
          const value = wanted[level];
          return (
            <LengthField
              key={level}
              label={`At the ${level}`}
              field={`ease.${level}`}
              value={value}
              otherwise={formatLengthEntry(drafted[level], unit)}
              set={(amount) => ({ kind: "setEaseWanted", ease: { [level]: amount } })}
              clear={{ kind: "clearEaseWanted", level }}
              signed
              warnings={
                value !== undefined && value < SNUG
                  ? [`Less than ${formatLength(SNUG, unit)}: cloth without stretch will strain (common practice).`]
                  : []
              }
            />
          );
        })}
      </div>
    </section>
  );
}
