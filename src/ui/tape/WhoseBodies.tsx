import { useId, useState } from "react";
import { standingOf } from "../../core/bodies/estimate";
import { bodyOf } from "../../core/measures/tape";
import { LIMITS } from "../../core/decisions/limits";
import { standingSentence, surveyWords } from "../../words/tape";
import { useRun, useSettledWork, useWork } from "../session/useWork";
import { useKeptOnHide } from "../fields/useKeptOnHide";

/** Whose bodies the guesses come from, and how well they speak for this one. */
export function WhoseBodies() {
  const unit = useSettledWork((work) => work.unit);
  const tapes = useSettledWork((work) => work.tapes);
  const age = useSettledWork((work) => work.age);
  const standing = standingOf(bodyOf(tapes), age);
  return (
    <details className="whose-bodies">
      <summary>Where the guesses come from</summary>
      {surveyWords(unit).map((paragraph) => (
        <p key={paragraph}>{paragraph}</p>
      ))}
      {standing !== null && <p className="standing">{standingSentence(standing)}</p>}
      <AgeField />
    </details>
  );
}

/** Kept in the work while it cannot be read, as every entry is. */
const AGE_FIELD = "age";

const isAge = (text: string): boolean => text === "" || (/^\d{1,3}$/.test(text) && Number(text) <= LIMITS.age);

function AgeField() {
  const id = useId();
  const run = useRun();
  const age = useWork((work) => work.age);
  const unread = useWork((work) => work.unread[AGE_FIELD]);
  const [draft, setDraft] = useState<string | null>(null);
  const keep = (): void => {
    if (draft === null) return;
    setDraft(null);
    const text = draft.trim();
    if (!isAge(text)) return run({ kind: "setUnread", field: AGE_FIELD, text });
    run({ kind: "clearUnread", field: AGE_FIELD });
    run({ kind: "setAge", age: text === "" ? null : Number(text) });
  };
  useKeptOnHide(draft === null ? null : keep);
  const reads = draft !== null || unread === undefined || isAge(unread);
  return (
    <div className="field" data-state={reads ? undefined : "error"}>
      <label htmlFor={id} className="field-label">
        Your age, if you like
      </label>
      <span className="field-entry">
        <input
          id={id}
          className="field-input"
          inputMode="numeric"
          autoComplete="off"
          value={draft ?? unread ?? age ?? ""}
          aria-invalid={!reads}
          aria-describedby={`${id}-hint`}
          onChange={(event) => setDraft(event.target.value)}
          onBlur={keep}
          onKeyDown={(event) => {
            if (event.key === "Enter") keep();
            if (event.key !== "Escape" || draft === null) return;
            event.stopPropagation();
            setDraft(null);
          }}
        />
        <span className="field-unit" aria-hidden="true">
          years
        </span>
      </span>
      <p id={`${id}-hint`} className={reads ? "field-hint" : "field-error"}>
        {reads
          ? "It only tells how well the survey speaks for you."
          : "Write whole years, such as 47, or leave it empty."}
      </p>
    </div>
  );
}
