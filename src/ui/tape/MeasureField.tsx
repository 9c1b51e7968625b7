import { dayWords } from "../../words/terms/days";
import { memo, useEffect, useRef, useState, type ReactNode } from "react";
import { isOpen } from "../../core/bodies/answered";
import type { Estimate } from "../../core/bodies/estimate";
import type { Suspicion } from "../../core/bodies/suspicion";
import type { MeasureName } from "../../core/measures/measure";
import { MEASURE_NEEDS } from "../../core/measures/registry";
import { bodyOf } from "../../core/measures/tape";
import type { Command } from "../../core/plan/commands";
import { LIMITS } from "../../core/decisions/limits";
import { formatAlong } from "../../words/terms/length";
import { measureNeedWords, measureRefusal, measureServes, measureWords } from "../../words/measures";
import {
  doubtSentence,
  feetWords,
  guessSource,
  guessWords,
  readingsSentence,
  misreadingElsewhere,
  misreadingQuestion,
  unusualQuestion,
} from "../../words/tape";
import { useRunAll } from "../session/useRunAll";
import { useRun, useSettledWork, useWorkStore } from "../session/useWork";
import { Fractions } from "../fields/Fractions";
import { LengthField } from "../fields/LengthField";
import { ItIsRight } from "./ItIsRight";
import { MisreadingRemedy } from "./MisreadingRemedy";
import { today } from "../session/today";
import * as say from "../../words/tapeStep";
import { Sentence } from "../fields/Sentence";

export interface MeasureFieldProps {
  readonly name: MeasureName;
  /** What the others lead one to expect, where it was not taken. */
  readonly estimate: Estimate | undefined;
  /** The guess is being worked out: its line is held open. */
  readonly isAwaited: boolean;
  readonly suspicion: Suspicion | undefined;
  /** Of two measures in each other's place: the question is asked beside the other one. */
  readonly askedElsewhere: boolean;
  /** Called when the wearer comes to this measure, so that the figure can show it. */
  readonly onShow: (name: MeasureName) => void;
}

const PLACES = Array.from({ length: LIMITS.readings }, (_, at) => at);
const fieldOf = (name: MeasureName, at: number): string => (at === 0 ? `measure.${name}` : `measure.${name}.${at}`);

/** All readings of one measure, or the guess that stands until there is one. */
export const MeasureField = memo(
  ({ name, estimate, isAwaited, suspicion, askedElsewhere, onShow }: MeasureFieldProps) => {
    const unit = useSettledWork((work) => work.unit);
    const readings = useSettledWork((work) => work.tapes[0]?.readings[name]);
    const measured = useSettledWork((work) => bodyOf(work.tapes)[name]);
    const unreadTo = useSettledWork((work) =>
      PLACES.findLastIndex((at) => work.unread[fieldOf(name, at)] !== undefined),
    );
    const { place, asked, ask, remove } = useReadings(name);
    const dateToday = useDateToday();
    const count = readings?.length ?? 0;
    const shown = Math.min(Math.max(1, unreadTo + 1, asked === count ? count + 1 : count), LIMITS.readings);
    const words = measureWords(name);
    const said = measured === undefined ? null : readingsSentence(name, measured, unit);
    const doubted = suspicion !== undefined && isOpen(suspicion);
    const misreading = doubted ? suspicion.misreading : null;

    const reading = (
      at: number,
      label: ReactNode,
      more: { readonly hint?: ReactNode; readonly warnings?: readonly string[] } = {},
    ) => (
      <LengthField
        key={at}
        label={label}
        field={fieldOf(name, at)}
        value={readings?.[at]}
        set={(value) => ({ kind: "setReading", measure: name, at, value })}
        also={dateToday}
        clear={{ kind: "removeReading", measure: name, at }}
        refuse={(length) => measureRefusal(name, length, unit)}
        onFocus={() => onShow(name)}
        feet={name === "height"}
        beside={
          shown > 1 ? <Remove label={say.removeReadingOf(at + 1, words.short)} onClick={() => remove(at)} /> : null
        }
        {...more}
      />
    );

    // Alone, or beside others in the same wrong unit, a value is doubted by none of them; what was read twice stands.
    const unusual =
      measured !== undefined && measured.set === 0 && measured.readings.length === 1 && suspicion === undefined
        ? unusualQuestion(name, measured.value, unit)
        : null;
    /** Of all readings together: it stands at the last. */
    const doubt: { readonly warnings?: readonly string[] } = doubted
      ? {
          warnings: [
            doubtSentence(suspicion, unit),
            ...(misreading === null
              ? []
              : [askedElsewhere ? misreadingElsewhere(misreading) : misreadingQuestion(suspicion, misreading, unit)]),
          ],
        }
      : unusual === null
        ? {}
        : { warnings: [unusual] };
    const hint = useHint({ name, estimate, isAwaited, suspicion });
    const label = (
      <>
        {words.name}
        {words.trade !== null && <span className="trade"> · {words.trade}</span>}
      </>
    );
    return (
      <div className="measure" ref={place} tabIndex={-1}>
        {reading(0, label, {
          ...(hint === null ? {} : { hint }),
          ...(shown === 1 ? doubt : {}),
        })}
        {PLACES.slice(1, shown).map((at) =>
          reading(
            at,
            <>
              <span className="visually-hidden">{words.name}, </span>
              <span className="reading-word">{say.reading}</span>
              {at + 1}
            </>,
            at === shown - 1 ? doubt : {},
          ),
        )}
        {doubted && !askedElsewhere && (
          <p className="doubt-answers">
            {misreading !== null && <MisreadingRemedy suspicion={suspicion} misreading={misreading} unit={unit} />}
            <ItIsRight suspicion={suspicion} />
          </p>
        )}
        {said !== null && (
          <p className="readings-said">
            <Fractions text={said} />
          </p>
        )}
        {count > 0 && shown === count && count < LIMITS.readings && (
          <button
            type="button"
            className="link-button take-again"
            onClick={() => ask(count)}
            aria-label={say.takeAgain(words.short)}
          >
            {say.takeItAgain}
          </button>
        )}
      </div>
    );
  },
);
MeasureField.displayName = "MeasureField";

const Remove = ({ label, onClick }: { readonly label: string; readonly onClick: () => void }) => (
  <button type="button" className="reading-remove" aria-label={label} onClick={onClick}>
    ×
  </button>
);

/** What stands below the field: what the measure serves, the guess, or what counts in its place. */
function useHint({
  name,
  estimate,
  isAwaited,
  suspicion,
}: Omit<MeasureFieldProps, "onShow" | "askedElsewhere">): ReactNode {
  const unit = useSettledWork((work) => work.unit);
  const measured = useSettledWork((work) => bodyOf(work.tapes)[name]);
  const taken = useSettledWork((work) => (measured === undefined ? undefined : work.tapes[measured.set]?.taken));
  const need = MEASURE_NEEDS[name];
  const inFeet = name === "height" && unit === "in";
  const said: ReactNode[] = [measureServes(name)];
  if (measured === undefined) {
    if (need !== "welcome") said.push(measureNeedWords(need));
    if (inFeet) said.push(say.heightHint);
    if (estimate !== undefined)
      said.push(
        <span className="guess">
          <b>{say.guessWord}</b> <Fractions text={guessWords(estimate, unit)} />, {guessSource(estimate)}
        </span>,
      );
    else if (isAwaited) said.push(<span className="guess guess-awaited">{say.guess}</span>);
  } else if (measured.set > 0) {
    said.push(
      <>
        <Sentence
          text={say.lastTimeCounts}
          parts={{
            length: (
              <>
                <Fractions text={formatAlong(measured.value, unit)} />
                {taken === undefined ? "" : ` (${dayWords(taken)})`}
              </>
            ),
          }}
        />
      </>,
    );
  }
  if (measured !== undefined && inFeet) said.push(<Fractions text={feetWords(measured.value)} />);
  if (suspicion !== undefined && !isOpen(suspicion)) said.push(<Fractions text={doubtSentence(suspicion, unit)} />);
  return said.map((part, at) => (
    <span key={at} className="measure-hint">
      {part}{" "}
    </span>
  ));
}

/** One more reading on asking, and readings that go again; whoever works by keys is not left nowhere. */
function useReadings(name: MeasureName) {
  const store = useWorkStore();
  const run = useRun();
  const runAll = useRunAll();
  const place = useRef<HTMLDivElement>(null);
  const [asked, setAsked] = useState<number | null>(null);
  useEffect(() => {
    if (asked !== null) place.current?.querySelectorAll("input")[asked]?.focus();
  }, [asked]);

  const remove = (at: number): void => {
    const { unread, tapes } = store.getState().work;
    // What could not be read moves up with the readings.
    const texts = PLACES.slice(at).flatMap((to): readonly Command[] => {
      const following = unread[fieldOf(name, to + 1)];
      if (following !== undefined) return [{ kind: "setUnread", field: fieldOf(name, to), text: following }];
      return unread[fieldOf(name, to)] === undefined ? [] : [{ kind: "clearUnread", field: fieldOf(name, to) }];
    });
    const isTaken = at < (tapes[0]?.readings[name]?.length ?? 0);
    if (isTaken) runAll([{ kind: "removeReading", measure: name, at }, ...texts]);
    else texts.forEach(run);
    setAsked(null);
    place.current?.focus({ preventScroll: true });
  };
  return { place, asked, ask: setAsked, remove };
}

/** A first reading is of today, unless its day was said or the work is a demonstration. */
function useDateToday(): () => readonly Command[] {
  const store = useWorkStore();
  return () => {
    const { invented, tapes } = store.getState().work;
    const newest = tapes[0];
    const isFirst = newest !== undefined && newest.taken === undefined && Object.keys(newest.readings).length === 0;
    return isFirst && !invented ? [{ kind: "setTaken", set: 0, taken: today() }] : [];
  };
}
