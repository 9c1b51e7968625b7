import { useMemo, useRef, useState } from "react";
import type { Half } from "../../core/decisions/alteration";
import { LIMITS } from "../../core/decisions/limits";
import type { Observation, Trial, TrialPlace } from "../../core/decisions/trial";
import type { Work } from "../../core/decisions/work";
import type { DartRef } from "../../core/pattern/piece";
import type { Plan } from "../../core/plan/plan";
import { lineOnHalf, linePlaced, lineTowards, numberedLines } from "../../core/toile/recordLine";
import { toilePlaces } from "../../core/toile/toilePlaces";
import { freshId } from "../../store/freshId";
import { fittingCautions, HOW_MUCH_NOTE, RECORD_LINE, shortUnit } from "../../words/trial";
import { SEES_TITLE } from "../../words/trialStep";
import { takeAlong } from "../envelope/unreadRows";
import { useRunAll } from "../session/useRunAll";
import { useRun, useWorkStore } from "../session/useWork";
import { LineRow } from "./LineRow";
import { ToileDrawing } from "./ToileDrawing";
import { lineFields } from "./trialFields";

interface RecordLinesProps {
  readonly trial: Trial;
  readonly plan: Plan;
  readonly work: Work;
}

/** What she sees: tapped on the drawing or written in lines, numbered as on the printed record. */
export function RecordLines({ trial, plan, work }: RecordLinesProps) {
  const { unit } = work;
  const run = useRun();
  const runAll = useRunAll();
  const store = useWorkStore();
  const lines = useMemo(() => numberedLines(trial.observations), [trial.observations]);
  /** The line that is still to be written, which stands below the others. */
  const [next, setNext] = useState(freshId);
  if (lines.some(({ id }) => id === next)) setNext(freshId());
  const { closure } = trial.sewn.pattern;
  const places = useMemo(() => toilePlaces(plan.left, closure), [plan, closure]);
  const [aiming, setAiming] = useState<string | null>(null);
  const list = useRef<HTMLOListElement>(null);
  const aimed = lines.findIndex(({ id, towards }) => id === aiming && towards === undefined);

  const put = (observation: Observation): void => run({ kind: "putObservation", trial: trial.id, observation });

  const tap = (place: TrialPlace, half: Half | null, dart: DartRef | null): void => {
    const line = lines[aimed];
    if (line !== undefined) {
      put(lineTowards(line, place));
      setAiming(null);
      return;
    }
    if (trial.observations.length >= LIMITS.observations) return;
    put(lineOnHalf(linePlaced({ id: next }, place, dart), half));
    // A line begun on the drawing goes on in its fields.
    list.current?.querySelector<HTMLElement>(".record-line[data-new] .line-sign select")?.focus();
  };

  const remove = (at: number): void => {
    const line = lines[at];
    if (line === undefined) return;
    const from = [...lines.keys(), lines.length].filter((index) => index !== at);
    runAll([
      { kind: "removeObservation", trial: trial.id, id: line.id },
      ...takeAlong(store.getState().work.unread, lines.length + 1, from, (index) => lineFields(trial, index)),
    ]);
  };

  const rows: readonly Observation[] =
    trial.observations.length < LIMITS.observations ? [...lines, { id: next }] : lines;
  return (
    <section className="trial-sees" aria-label={SEES_TITLE}>
      <h3>{SEES_TITLE}</h3>
      {fittingCautions(work, plan).map(({ code, title, text }) => (
        <details key={code} className="aside">
          <summary>{title}</summary>
          <p>{text}</p>
        </details>
      ))}
      <ToileDrawing
        plan={plan}
        closure={closure}
        lines={lines}
        aimed={aimed < 0 ? null : aimed + 1}
        onTap={tap}
        onLeave={() => setAiming(null)}
      />
      <div className="record-head" aria-hidden="true">
        <span />
        {Object.entries(RECORD_LINE).map(([name, words]) => (
          <span key={name}>{name === "amount" ? `${words}, ${shortUnit(unit)}` : words}</span>
        ))}
      </div>
      <ol className="record-lines" ref={list}>
        {rows.map((line, index) => (
          <LineRow
            key={line.id}
            trial={trial}
            line={line}
            index={index}
            isNew={line.id === next}
            places={places}
            unit={unit}
            onPut={put}
            onAim={() => setAiming(line.id)}
            onRemove={() => remove(index)}
          />
        ))}
      </ol>
      <p className="field-hint">{HOW_MUCH_NOTE}</p>
    </section>
  );
}
