import { useId, useState } from "react";
import { compareTapes } from "../../core/measures/compareTapes";
import { formatLength } from "../../words/length";
import { measureWords } from "../../words/measures";
import { dayWords, differenceWords } from "../../words/tape";
import { useRun, useSettledWork } from "../app/useWork";
import { Fractions } from "../fields/Fractions";

const two = (part: number): string => String(part).padStart(2, "0");

/** Today by the wearer's own clock, yyyy-mm-dd. */
function today(): string {
  const now = new Date();
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** The day of these measures, measuring anew, and an earlier time beside this one. */
export function TapeDays() {
  const id = useId();
  const run = useRun();
  const tapes = useSettledWork((work) => work.tapes);
  const newest = tapes[0];
  if (newest === undefined) return null;
  const empty = Object.keys(newest.readings).length === 0;
  return (
    <section className="tape-days" aria-label="Days of measuring">
      <div className="tape-day">
        <label htmlFor={id}>Measured on</label>
        <input
          id={id}
          className="field-input"
          type="date"
          value={newest.taken ?? ""}
          onChange={(event) => run({ kind: "setTaken", set: 0, taken: event.target.value === "" ? null : event.target.value })}
        />
        {newest.taken === undefined && (
          <button type="button" className="link-button" onClick={() => run({ kind: "setTaken", set: 0, taken: today() })}>
            today
          </button>
        )}
        {!empty && (
          <button type="button" className="button small" onClick={() => run({ kind: "newTape", taken: today() })}>
            Measure anew
          </button>
        )}
      </div>
      {tapes.length > 1 && <Compare />}
    </section>
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
      <summary>Beside an earlier time</summary>
      <div className="tape-day">
        <label htmlFor={id}>Earlier measures of</label>
        <select id={id} className="field-input" value={at} onChange={(event) => setChosen(Number(event.target.value))}>
          {tapes.slice(1).map((set, index) => (
            // Sets have no name but their place, newest first.
            <option key={`${set.taken ?? ""} ${index}`} value={index + 1}>
              {dayWords(set.taken)}
            </option>
          ))}
        </select>
        <button type="button" className="link-button" onClick={() => run({ kind: "removeTape", set: at })}>
          Throw these away
        </button>
      </div>
      {rows.length === 0 ? (
        <p className="aside">No measure was taken both times.</p>
      ) : (
        <table>
          <thead>
            <tr>
              <th scope="col">measure</th>
              <th scope="col">now</th>
              <th scope="col">then</th>
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
                    <Fractions text={difference} /> <span className="aside">{verdict}</span>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      )}
    </details>
  );
}
