import { useId, useRef } from "react";
import type { Trial } from "../../core/decisions/trial";
import { LIMITS } from "../../core/decisions/limits";
import { dayRefusal } from "../../words/tape";
import { RECORD_HEADING } from "../../words/trial";
import { TextField } from "../fields/TextField";
import { useEntry } from "../fields/useEntry";
import { today } from "../session/today";
import { trialField } from "./trialFields";

const TEXTS = ["cloth", "pinnedBy", "bra", "shoes"] as const;

/** Day, cloth, helper and what is worn with it: as the head of the printed record. */
export function RecordHeading({ trial }: { readonly trial: Trial }) {
  return (
    <div className="field-row">
      <DayField trial={trial} />
      {TEXTS.map((of) => (
        <TextField
          key={of}
          label={RECORD_HEADING[of]}
          field={trialField(trial, of)}
          value={trial[of] ?? ""}
          maxLength={LIMITS.text}
          set={(text) => ({ kind: "setTrialText", trial: trial.id, of, text })}
          clear={{ kind: "setTrialText", trial: trial.id, of, text: null }}
        />
      ))}
    </div>
  );
}

/** A day is taken once all of it is there. */
function DayField({ trial }: { readonly trial: Trial }) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const isWhole = (): boolean => input.current?.validity.badInput !== true;
  const entry = useEntry({
    field: trialField(trial, "day"),
    settled: trial.day ?? "",
    read: (day) => {
      const reason = dayRefusal(day, today());
      return reason === null ? { commands: [{ kind: "setTrialDay", trial: trial.id, day }] } : { reason };
    },
    clear: () => (isWhole() ? [{ kind: "setTrialDay", trial: trial.id, day: null }] : []),
  });
  return (
    <div className="field">
      <label htmlFor={id} className="field-label">
        {RECORD_HEADING.day}
      </label>
      <input
        id={id}
        ref={input}
        className="field-input"
        type="date"
        max={today()}
        aria-invalid={entry.reason !== null}
        aria-describedby={entry.reason === null ? undefined : `${id}-error`}
        {...entry.input}
        onBlur={(event) => {
          // What is left with a part missing goes back.
          if (!isWhole()) event.target.value = "";
          entry.input.onBlur();
        }}
      />
      {entry.reason !== null && (
        <p id={`${id}-error`} className="field-error" role="alert">
          {entry.reason}
        </p>
      )}
    </div>
  );
}
