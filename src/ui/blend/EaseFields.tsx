import { useState } from "react";
import type { Ease } from "../../core/decisions/pattern";
import { formatLength, formatLengthEntry } from "../../words/terms/length";
import { useSettledWork } from "../session/useWork";
import { LengthField } from "../fields/LengthField";
import * as say from "../../words/blendStep";

const LEVELS = ["bust", "waist", "hip"] as const satisfies readonly (keyof Ease)[];

/** Below this a waist seam strains and a hip rides up (common practice, no source). */
const SNUG = 10;

/** Ease where the wearer wants another than the pattern was drawn with. */
export function EaseFields() {
  const wanted = useSettledWork((work) => work.easeWanted);
  const drafted = useSettledWork((work) => work.pattern.ease);
  const unit = useSettledWork((work) => work.unit);
  const unread = useSettledWork((work) => work.unread);
  // An entry that could not be read must not lie out of sight.
  const [open] = useState(LEVELS.some((level) => unread[`ease.${level}`] !== undefined));
  return (
    <section className="ease" aria-label={say.easeWanted}>
      <details open={open}>
        <summary>
          <h3>{say.easeWanted}</h3>
          <span className="aside">
            {LEVELS.some((level) => wanted[level] !== undefined) ? say.yourOwn : say.thePatterns}
          </span>
        </summary>
        <p className="aside">{say.easeWantedAbout}</p>
        <div className="field-row">
          {LEVELS.map((level) => {
            const value = wanted[level];
            return (
              <LengthField
                key={level}
                label={say.atThe(level)}
                field={`ease.${level}`}
                value={value}
                otherwise={
                  unit === "in"
                    ? formatLength(drafted[level], unit).replace(/ in$/, "")
                    : formatLengthEntry(drafted[level], unit)
                }
                set={(amount) => ({ kind: "setEaseWanted", ease: { [level]: amount } })}
                clear={{ kind: "clearEaseWanted", level }}
                signed
                warnings={value !== undefined && value < SNUG ? [say.littleEase(formatLength(SNUG, unit))] : []}
              />
            );
          })}
        </div>
      </details>
    </section>
  );
}
