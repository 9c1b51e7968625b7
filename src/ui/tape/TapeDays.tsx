import { dayWords } from "../../words/terms/days";
import { useId, useRef, useState } from "react";
import { compareTapes } from "../../core/measures/compareTapes";
import { LIMITS } from "../../core/decisions/limits";
import { formatLength } from "../../words/terms/length";
import { measureWords } from "../../words/measures";
import { dayRefusal, differenceWords } from "../../words/tape";
import { useRun, useSettledWork } from "../session/useWork";
import { Fractions } from "../fields/Fractions";
import { useKeptOnHide } from "../fields/useKeptOnHide";
import { today } from "../session/today";

/** The day of these measures, measuring anew, and an earlier time beside this one. */
export function TapeDays() {
  const run = useRun();
  const tapes = useSettledWork((work) => work.tapes);
  const newest = tapes[0];
  if (newest === undefined) return null;
  const empty = Object.keys(newest.readings).length === 0;
  return (
    <section className="tape-days" aria-label="Days of measuring">
      <div className="tape-day">
        <DayField key={newest.taken} taken={newest.taken} />
        {!empty && tapes.length < LIMITS.tapes && (
          <button type="button" className="button small" onClick={() => run({ kind: "newTape", taken: today() })}>
            Measure anew
          </button>
        )}
        {empty && tapes.length > 1 && (
          <button type="button" className="button small" onClick={() => run({ kind: "removeTape", set: 0 })}>
            Back to the measures of before
          </button>
        )}
      </div>
      {tapes.length >= LIMITS.tapes && (
        <p className="field-hint">{LIMITS.tapes} sets are kept. Throw an earlier one away to measure anew.</p>
      )}
      {tapes.length > 1 && !empty && <Compare />}
    </section>
  );
}

/** A day is taken over once it is left: while it is typed, its year is none yet. */
function DayField({ taken }: { readonly taken: string | undefined }) {
  const id = useId();
  const run = useRun();
  const [draft, setDraft] = useState<string | null>(null);
  const input = useRef<HTMLInputElement>(null);
  const shown = draft ?? taken ?? "";
  const refusal = draft === null || draft === "" ? null : dayRefusal(draft, today());
  const keep = (): void => {
    if (draft === null || refusal !== null) return;
    setDraft(null);
    // A day with a part missing has no value either, and is no wish to have none.
    if (input.current?.validity.badInput === true) return;
    if (draft !== (taken ?? "")) run({ kind: "setTaken", set: 0, taken: draft === "" ? null : draft });
  };
  useKeptOnHide(draft === null ? null : keep);
  return (
    <>
      <label htmlFor={id}>Measured on</label>
      <input
        id={id}
        ref={input}
        className="field-input"
        type="date"
        max={today()}
        value={shown}
        aria-invalid={refusal !== null}
        aria-describedby={refusal === null ? undefined : `${id}-error`}
        onChange={(event) => setDraft(event.target.value)}
        onBlur={keep}
        onKeyDown={(event) => {
          if (event.key === "Enter") keep();
          if (event.key !== "Escape" || draft === null) return;
          event.stopPropagation();
          setDraft(null);
        }}
      />
      {shown === "" && (
        <button type="button" className="link-button" onClick={() => run({ kind: "setTaken", set: 0, taken: today() })}>
          today
        </button>
      )}
      {refusal !== null && (
        <p id={`${id}-error`} className="field-error">
          {refusal}
        </p>
      )}
    </>
  );
}

function Compare() {
  const id = useId();
  const run = useRun();
  const unit = useSettledWork((work) => work.unit);
  const tapes = useSettledWork((work) => work.tapes);
  const [chosen, setChosen] = useState(1);
  const at = Math.min(chosen, tapes.length - 1);
  const [newest, before] = [tapes[0], tapes[at]];
  if (newest === undefined || before === undefined) return null;
  const rows = compareTapes(newest, before);
  return (
    <details className="tape-compare">
      <summary>Compare with an earlier set</summary>
      <div className="tape-day">
        <label htmlFor={id}>Measures of</label>
        <select
          id={id}
          className="field-input select"
          value={at}
          onChange={(event) => setChosen(Number(event.target.value))}
        >
          {tapes.slice(1).map((set, index) => (
            // Sets have no name but their place, newest first.
            <option key={`${set.taken ?? ""} ${index}`} value={index + 1}>
              {dayWords(set.taken)}
            </option>
          ))}
        </select>
      </div>
      {rows.length === 0 ? (
        <p className="aside">No measure was taken both times.</p>
      ) : (
        <table>
          <thead>
            <tr>
              <th scope="col">measure</th>
              <th scope="col">this</th>
              <th scope="col">earlier</th>
              <th scope="col">difference</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => {
              const [difference, verdict] = differenceWords(row, unit);
              return (
                <tr key={row.measure} data-changed={row.changed ? "" : undefined}>
                  <th scope="row">{measureWords(row.measure).short}</th>
                  <td>
                    <Fractions text={formatLength(row.now, unit)} />
                  </td>
                  <td>
                    <Fractions text={formatLength(row.before, unit)} />
                  </td>
                  <td>
                    <Fractions text={difference} /> <span className="verdict-said">{verdict}</span>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      )}
      <p className="tape-away">
        <button type="button" className="link-button" onClick={() => run({ kind: "removeTape", set: at })}>
          Throw away the earlier, of {dayWords(before.taken)}
        </button>
        <button type="button" className="link-button" onClick={() => run({ kind: "removeTape", set: 0 })}>
          Throw away this, of {dayWords(newest.taken)}
        </button>
      </p>
    </details>
  );
}
