import { standingOf } from "../../core/bodies/estimate";
import { bodyOf } from "../../core/measures/tape";
import { LIMITS } from "../../core/decisions/limits";
import { standingSentence, surveyWords } from "../../words/survey";
import { useSettledWork } from "../session/useWork";
import { EntryField } from "../fields/EntryField";
import { useEntry } from "../fields/useEntry";
import * as say from "../../words/guesses";
import { Fractions } from "../fields/Fractions";

/** Whose bodies the guesses come from, and how well they speak for this one. */
export function WhoseBodies() {
  const unit = useSettledWork((work) => work.unit);
  const tapes = useSettledWork((work) => work.tapes);
  const age = useSettledWork((work) => work.age);
  const standing = standingOf(bodyOf(tapes), age);
  return (
    <details className="whose-bodies">
      <summary>{say.whereTheGuessesComeFrom}</summary>
      {surveyWords(unit).map((paragraph) => (
        <p key={paragraph}>
          <Fractions text={paragraph} />
        </p>
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
      isAge(text) ? { commands: [{ kind: "setAge", age: Number(text) }] } : { reason: say.writeWholeYears },
    clear: () => [{ kind: "setAge", age: null }],
  });
  return (
    <EntryField
      label={say.yourAgeIfYouLike}
      entry={entry}
      unit={say.years}
      error={entry.reason}
      inputMode="numeric"
      {...(entry.reason === null ? { hint: say.ageAbout } : {})}
    />
  );
}
