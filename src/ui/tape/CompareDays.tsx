import { useId, useState } from "react";
import { compareTapes } from "../../core/measures/compareTapes";
import { measureWords } from "../../words/measures";
import { differenceWords } from "../../words/tape";
import { dayWords } from "../../words/terms/days";
import { formatLength } from "../../words/terms/length";
import { Fractions } from "../fields/Fractions";
import { useSettledWork } from "../session/useWork";
import { useSets } from "./useSets";
import * as say from "../../words/tapeStep";

/** An earlier time beside this one, measure by measure, and either of the two thrown away. */
export function CompareDays() {
  const id = useId();
  const { takeAway } = useSets();
  const unit = useSettledWork((work) => work.unit);
  const tapes = useSettledWork((work) => work.tapes);
  const [chosen, setChosen] = useState(1);
  const at = Math.min(chosen, tapes.length - 1);
  const [newest, before] = [tapes[0], tapes[at]];
  if (newest === undefined || before === undefined) return null;
  const rows = compareTapes(newest, before);
  return (
    <details className="tape-compare">
      <summary>{say.compareWithAnEarlierSet}</summary>
      <div className="tape-day">
        <label htmlFor={id}>{say.measuresOf}</label>
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
        <p className="aside">{say.noneTakenTwice}</p>
      ) : (
        <table aria-label={say.bothDays}>
          <thead>
            <tr>
              <th scope="col">{say.measure}</th>
              <th scope="col">{say.thisWord}</th>
              <th scope="col">{say.earlier}</th>
              <th scope="col">{say.difference}</th>
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
                    <Fractions text={difference} />{" "}
                    <span className="verdict-said">
                      <Fractions text={verdict} />
                    </span>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      )}
      <p className="tape-away">
        <button type="button" className="link-button" onClick={() => takeAway(at)}>
          {say.throwAwayEarlier(dayWords(before.taken))}
        </button>
        <button type="button" className="link-button" onClick={() => takeAway(0)}>
          {say.throwAwayThisOf(dayWords(newest.taken))}
        </button>
      </p>
    </details>
  );
}
