import { standingOf } from "../../core/bodies/estimate";
import { bodyOf } from "../../core/measures/tape";
import { LIMITS } from "../../core/decisions/limits";
import { standingSentence, surveyWords } from "../../words/tape";
import { useSettledWork } from "../session/useWork";
import { EntryField } from "../fields/EntryField";
import { useEntry } from "../fields/useEntry";

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

const isAge = (text: string): boolean => /^\d{1,3}$/.test(text) && Number(text) <= LIMITS.age;

function AgeField() {
  const age = useSettledWork((work) => work.age);
  const entry = useEntry({
    field: "age",
    settled: age === undefined ? "" : String(age),
    read: (text) =>
      isAge(text)
        ? { commands: [{ kind: "setAge", age: Number(text) }] }
        : { reason: "Write whole years, such as 47, or leave it empty." },
    clear: () => [{ kind: "setAge", age: null }],
  });
  return (
    <EntryField
      label="Your age, if you like"
      entry={entry}
      unit="years"
      error={entry.reason}
      inputMode="numeric"
      {...(entry.reason === null ? { hint: "It only tells how well the survey speaks for you." } : {})}
    />
  );
}
