import { dayWords } from "../../words/terms/days";
import { useEffect, useId, useRef, useState } from "react";
import { compareTapes } from "../../core/measures/compareTapes";
import { LIMITS } from "../../core/decisions/limits";
import { formatLength } from "../../words/terms/length";
import { measureWords } from "../../words/measures";
import { dayRefusal, differenceWords } from "../../words/tape";
import { useRunAll } from "../session/useRunAll";
import { useRun, useSettledWork, useWorkStore } from "../session/useWork";
import { Fractions } from "../fields/Fractions";
import { useEntry } from "../fields/useEntry";
import { today } from "../session/today";
import { setAside, takenAway } from "./unreadOfSets";
import * as say from "../../words/tapeStep";

/** The day of these measures, measuring anew, and an earlier time beside this one. */
export function TapeDays() {
  const { begin, takeAway } = useSets();
  const tapes = useSettledWork((work) => work.tapes);
  const newest = tapes[0];
  const place = useFocusKept(tapes.length);
  if (newest === undefined) return null;
  const empty = Object.keys(newest.readings).length === 0;
  return (
    <section ref={place} className="tape-days" aria-label={say.daysOfMeasuring}>
      <div className="tape-day">
        <DayField taken={newest.taken} />
        {!empty && tapes.length < LIMITS.tapes && (
          <button type="button" className="button small" onClick={begin}>
            {say.measureAnew}
          </button>
        )}
        {empty && tapes.length > 1 && (
          <button type="button" className="button small" onClick={() => takeAway(0)}>
            {say.backToBefore}
          </button>
        )}
      </div>
      {tapes.length >= LIMITS.tapes && <p className="field-hint">{say.setsKept(LIMITS.tapes)}</p>}
      {tapes.length > 1 && !empty && <Compare />}
    </section>
  );
}

/** A set begun, or taken away, each as one step with what could not be read of it. */
function useSets() {
  const runAll = useRunAll();
  const store = useWorkStore();
  return {
    begin: (): void => {
      const { unread, tapes } = store.getState().work;
      runAll([{ kind: "newTape", taken: today() }, ...setAside(unread, tapes.length)]);
    },
    takeAway: (at: number): void => {
      const { unread, tapes } = store.getState().work;
      runAll([{ kind: "removeTape", set: at }, ...takenAway(unread, tapes.length, at)]);
    },
  };
}

/** The button that began a set, or took it back, goes with it: then on to the first measure, or to beginning one again. */
function useFocusKept(sets: number) {
  const place = useRef<HTMLElement>(null);
  const last = useRef(sets);
  useEffect(() => {
    const more = sets > last.current;
    if (last.current === sets) return;
    last.current = sets;
    if (document.activeElement !== document.body) return;
    const next = more
      ? document.querySelector<HTMLElement>(".tape-fields input")
      : place.current?.querySelector<HTMLElement>("button");
    next?.focus();
  }, [sets]);
  return place;
}

/** A day is taken once all of it is there, and its year no longer one of long ago. */
function DayField({ taken }: { readonly taken: string | undefined }) {
  const id = useId();
  const run = useRun();
  const input = useRef<HTMLInputElement>(null);
  /** A day with a part missing has no value either, and is no wish to have none. */
  const isWhole = (): boolean => input.current?.validity.badInput !== true;
  const entry = useEntry({
    field: "taken",
    settled: taken ?? "",
    read: (day) => {
      const reason = dayRefusal(day, today());
      return reason === null ? { commands: [{ kind: "setTaken", set: 0, taken: day }] } : { reason };
    },
    clear: () => (isWhole() ? [{ kind: "setTaken", set: 0, taken: null }] : []),
  });
  return (
    <>
      <label htmlFor={id}>{say.measuredOn}</label>
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
          // What is left with a part missing goes back, also where there was no day before.
          if (!isWhole()) event.target.value = "";
          entry.input.onBlur();
        }}
      />
      {taken === undefined && entry.text === "" && (
        <button type="button" className="link-button" onClick={() => run({ kind: "setTaken", set: 0, taken: today() })}>
          {say.today}
        </button>
      )}
      {entry.reason !== null && (
        <p id={`${id}-error`} className="field-error" role="alert">
          {entry.reason}
        </p>
      )}
    </>
  );
}

function Compare() {
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
