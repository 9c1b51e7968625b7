import type { Alteration } from "../../core/decisions/alteration";
import { useEffect, useMemo, useRef } from "react";
import type { LengthUnit } from "../../core/decisions/work";
import { alterationConflicts, type AlterationConflict } from "../../core/plan/alterationConflicts";
import type { PlannedAlteration } from "../../core/plan/plan";
import { inTradeOrder, outOfTradeOrder } from "../../core/plan/outOfTradeOrder";
import { phaseWords } from "../../words/checklist";
import { plannedTitle } from "../../words/ledger";
import { conflictNote, orderNote } from "../../words/order";
import { useSaid } from "../session/useSaid";
import { useRunAll } from "../session/useRunAll";
import { useRun } from "../session/useWork";
import { SlipOfPaper } from "./SlipOfPaper";
import { runsOf } from "./runs";
import { useSlipDrag } from "./useSlipDrag";
import * as say from "../../words/ledgerPanel";

export interface SlipsProps {
  /** The lines of the ledger. */
  readonly planned: readonly PlannedAlteration[];
  /** What the wearer decided, in its order. */
  readonly decided: readonly Alteration[];
  readonly unit: LengthUnit;
}

/** The slips in the order they are made, under the phases of the trade; the wearer's own can be moved. */
export function Slips({ planned, decided, unit }: SlipsProps) {
  const run = useRun();
  const runAll = useRunAll();
  const tell = useSaid((said) => said.say);
  const list = useRef<HTMLDivElement>(null);
  const stepped = useRef<{ readonly id: string; readonly way: "earlier" | "later" } | null>(null);
  const ids = useMemo(() => decided.map(({ id }) => id), [decided]);
  const runs = useMemo(() => runsOf(planned, ids), [planned, ids]);
  const places = useMemo(() => new Map(ids.map((id, place) => [id, place])), [ids]);
  const early = useMemo(() => outOfTradeOrder(decided), [decided]);
  const conflicts = useMemo(() => conflictsBySlip(planned), [planned]);

  const step = (id: string, way: "earlier" | "later", before: string | null): void => {
    stepped.current = { id, way };
    move(id, before);
  };
  const move = (id: string, before: string | null): void => {
    run({ kind: "moveAlteration", id, before });
    const others = ids.filter((other) => other !== id);
    const at = before === null ? others.length : others.indexOf(before);
    const title = titleOf(planned, id, unit);
    tell(say.nowAt(title, at + 1, ids.length));
  };
  // Under another heading the slip is set anew: whoever moves it by keys keeps the button.
  useEffect(() => {
    const last = stepped.current;
    stepped.current = null;
    if (last === null) return;
    const paper = [...(list.current?.querySelectorAll<HTMLElement>("[data-move]") ?? [])].find(
      (one) => one.dataset["move"] === last.id,
    );
    const buttons = [...(paper?.querySelectorAll<HTMLButtonElement>("button[data-way]:not(:disabled)") ?? [])];
    (buttons.find((button) => button.dataset["way"] === last.way) ?? buttons[0])?.focus();
  });
  // The button that was pressed goes with its slip: the focus is at the one that lies there now, or at the ledger.
  const gone = useRef<number | null>(null);
  const remove = (id: string): void => {
    const papers = [...(list.current?.querySelectorAll<HTMLElement>(".slip") ?? [])];
    gone.current = papers.findIndex((one) => one.dataset["move"] === id);
    run({ kind: "removeAlteration", id });
  };
  useEffect(() => {
    const at = gone.current;
    if (at === null) return;
    gone.current = null;
    const faces = [...(list.current?.querySelectorAll<HTMLElement>(".slip-face") ?? [])];
    (faces[at] ?? faces.at(-1) ?? document.getElementById("ledger-place"))?.focus({ preventScroll: true });
  });
  const drag = useSlipDrag(list, ids, move);
  const putInOrder = (): void => {
    runAll(inTradeOrder(decided).map(({ id }) => ({ kind: "moveAlteration", id, before: null })));
    tell(say.inTheTradesOrder);
  };

  if (planned.length === 0) return <p>{say.nothingAltered}</p>;
  return (
    <div className="phases" ref={list}>
      {early.size > 0 && (
        <div className="note doubt out-of-order">
          <p>{say.outOfOrder}</p>
          <button type="button" className="button small" onClick={putInOrder}>
            {say.putInTheTradesOrder}
          </button>
        </div>
      )}
      {runs.map(({ phase, lines }, index) => (
        <div key={`${index} ${phase}`} role="group" aria-label={phaseWords(phase)}>
          <h3 className="phase-title">{phaseWords(phase)}</h3>
          <ul className="slips">
            {lines.map((line) => {
              const at = places.get(line.planned.id) ?? -1;
              const later = early.get(line.planned.id);
              return (
                <SlipOfPaper
                  key={line.group}
                  line={line}
                  unit={unit}
                  notes={[
                    ...(later === undefined ? [] : [orderNote(later)]),
                    ...notesOn(conflicts.get(line.planned.id) ?? [], planned, unit),
                  ]}
                  earlier={at > 0 ? () => step(line.planned.id, "earlier", ids[at - 1] ?? null) : null}
                  later={
                    at >= 0 && at < ids.length - 1 ? () => step(line.planned.id, "later", ids[at + 2] ?? null) : null
                  }
                  isMovable={at >= 0 && ids.length > 1}
                  onRemove={remove}
                  drag={drag}
                />
              );
            })}
          </ul>
        </div>
      ))}
    </div>
  );
}

function titleOf(alterations: readonly PlannedAlteration[], id: string, unit: LengthUnit): string {
  const planned = alterations.find((one) => one.id === id);
  return planned === undefined ? "" : plannedTitle(planned, unit);
}

/** By the later of two slips: it is the one measured on what the other left. */
function conflictsBySlip(planned: readonly PlannedAlteration[]): ReadonlyMap<string, readonly AlterationConflict[]> {
  const found = new Map<string, AlterationConflict[]>();
  for (const conflict of alterationConflicts(planned))
    found.set(conflict.b, [...(found.get(conflict.b) ?? []), conflict]);
  return found;
}

/** One note for each other slip. */
function notesOn(
  own: readonly AlterationConflict[],
  alterations: readonly PlannedAlteration[],
  unit: LengthUnit,
): readonly string[] {
  return [...new Set(own.map(({ a }) => a))].map((other) =>
    conflictNote(
      own.filter(({ a }) => a === other),
      titleOf(alterations, other, unit),
    ),
  );
}
