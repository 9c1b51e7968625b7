import { useEffect, useId, useRef } from "react";
import { LIMITS } from "../../core/decisions/limits";
import { dayRefusal } from "../../words/tape";
import { PartPlace } from "../parts/PartPlace";
import { useRun, useSettledWork } from "../session/useWork";
import { useEntry } from "../fields/useEntry";
import { today } from "../session/today";
import { COMPARE_DAYS } from "./compareDaysPart";
import { useSets } from "./useSets";
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
      {tapes.length > 1 && !empty && (
        <PartPlace part={COMPARE_DAYS} name={say.compareWithAnEarlierSet} placeholder={null}>
          {(CompareDays) => <CompareDays />}
        </PartPlace>
      )}
    </section>
  );
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
