import { useId, useState } from "react";
import { standingOf } from "../../core/bodies/estimate";
import { bodyOf } from "../../core/measures/tape";
import { LIMITS } from "../../core/plan/limits";
import { standingSentence, surveyWords } from "../../words/tape";
import { useRun, useSettledWork } from "../app/useWork";

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
      <AgeField key={age} age={age} />
    </details>
  );
}

function AgeField({ age }: { readonly age: number | undefined }) {
  const id = useId();
  const run = useRun();
  const [typed, setTyped] = useState(age === undefined ? "" : String(age));
  const years = Number(typed.trim());
  const empty = typed.trim() === "";
  const reads = empty || (/^\d{1,3}$/.test(typed.trim()) && years <= LIMITS.age);
  const commit = (): void => {
    if (reads) run({ kind: "setAge", age: empty ? null : years });
  };
  return (
    <div className="field" data-state={reads ? undefined : "error"}>
      <label htmlFor={id} className="field-label">
        Your age, if you like
      </label>
      <input
        id={id}
        className="field-input"
        inputMode="numeric"
        autoComplete="off"
        value={typed}
        aria-invalid={!reads}
        aria-describedby={`${id}-hint`}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === "Enter") commit();
        }}
      />
      <p id={`${id}-hint`} className={reads ? "field-hint" : "field-error"}>
        {reads ? "It only tells how well the survey speaks for you." : "Write whole years, such as 47, or leave it empty."}
      </p>
    </div>
  );
}
