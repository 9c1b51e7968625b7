import { dartOfAlteration, otherHalf, type Half } from "../../core/decisions/alteration";
import { useEffect, useRef } from "react";
import { type LengthUnit } from "../../core/decisions/work";
import { halfWords } from "../../words/fits";
import { anotherWayWords, OTHER_WAY } from "../../words/halves";
import { plannedAmount, alterationNoteSentence, plannedTitle, alterationWhy } from "../../words/ledger";
import { capital, pieceWords } from "../../words/terms/names";
import { alterationFailureSentence } from "../../words/planned";
import { tryOnOther } from "../../core/plan/halfEdit";
import { useRunAll } from "../session/useRunAll";
import { useWorkStore } from "../session/useWork";
import { useViewState } from "../session/viewState";
import type { Line } from "./runs";
import type { SlipDrag } from "./useSlipDrag";
import { listWords } from "../../words/terms/language";
import * as say from "../../words/ledgerPanel";
import { Fractions } from "../fields/Fractions";

export interface SlipOfPaperProps {
  readonly line: Line;
  readonly unit: LengthUnit;
  /** About its place in the order, and about other slips. */
  readonly notes: readonly string[];
  readonly earlier: (() => void) | null;
  readonly later: (() => void) | null;
  readonly isMovable: boolean;
  readonly onRemove: (id: string) => void;
  readonly drag: SlipDrag;
}

export function SlipOfPaper({
  line: { group, planned, pieces },
  unit,
  notes,
  earlier,
  later,
  isMovable,
  onRemove,
  drag,
}: SlipOfPaperProps) {
  const lit = useViewState((view) => view.litAlteration === group);
  const lightAlteration = useViewState((view) => view.lightAlteration);
  const showHalf = useViewState((view) => view.showHalf);
  const selectDart = useViewState((view) => view.selectDart);
  const shown = useViewState((view) => view.half);
  const setAlone = useViewState((view) => view.setAlone);
  const seek = useViewState((view) => view.seek);
  const runAll = useRunAll();
  const store = useWorkStore();
  const title = plannedTitle(planned, unit);
  const alteration = planned.what.kind === "alteration" ? planned.what.alteration : null;
  // Of one for both halves that did not come out alike on them, the one it is told of.
  const half = planned.half ?? alteration?.half;
  const paper = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (lit) bringIntoView(paper.current);
  }, [lit]);
  const light = (): void => {
    lightAlteration(lit ? null : group);
    const dart = alteration === null ? null : dartOfAlteration(alteration);
    if (dart !== null) selectDart(dart);
    // What is done on one half can only be seen on it.
    if (!lit && half !== undefined) showHalf(half);
  };
  // Of what is for one half, the other one has its own way already.
  const other = alteration?.half === undefined ? otherHalf(shown) : null;
  const tryOther = (on: Half): void => {
    if (alteration === null) return;
    runAll(tryOnOther(store.getState().work, alteration.id, on));
    const dart = dartOfAlteration(alteration);
    if (dart !== null) selectDart(dart);
    setAlone(dart !== null);
    showHalf(on);
    seek(alteration.kind === "fit" ? alteration.fit : "dart");
    window.location.hash = alteration.kind === "fit" ? "#fit" : "#darts";
  };
  return (
    <li
      ref={paper}
      className="slip"
      data-source={planned.source}
      data-lit={lit ? "" : undefined}
      data-refused={planned.outcome.ok ? undefined : ""}
      data-move={planned.source === "wearer" ? planned.id : undefined}
      data-moving={drag.moving === planned.id ? "" : undefined}
      data-drop={
        drag.before === planned.id
          ? "before"
          : drag.before === null && isMovable && later === null
            ? "after"
            : undefined
      }
    >
      <button type="button" className="slip-face" aria-pressed={lit} onClick={light}>
        <span className="slip-piece">
          {capital(listWords(pieces.map(pieceWords)))}
          {half !== undefined && <span className="tag own slip-half">{halfWords(half)}</span>}
        </span>
        <span className="slip-amount">
          <Fractions text={plannedAmount(planned, unit)} />
        </span>
        <span className="slip-title">
          <Fractions text={title} />
        </span>
        <span className="slip-why">{alterationWhy(planned)}</span>
      </button>
      {!planned.outcome.ok && (
        <p className="slip-refusal">
          <Fractions text={say.leftOut(alterationFailureSentence(planned.outcome.failure, unit))} />
        </p>
      )}
      {planned.outcome.ok &&
        planned.outcome.value.notes.map((note) => (
          <p key={note.code} className="slip-note">
            <Fractions text={alterationNoteSentence(note, planned.piece, unit)} />
          </p>
        ))}
      {notes.map((note) => (
        <p key={note} className="slip-note slip-doubt">
          <Fractions text={note} />
        </p>
      ))}
      {planned.source === "wearer" && (
        <div className="slip-actions">
          {isMovable && (
            <>
              {/* For a hand; the two buttons beside it do the same for keys. */}
              <span
                className="slip-grip"
                aria-hidden="true"
                title={say.dragToAnotherPlace}
                onPointerDown={(event) => drag.start(planned.id, event)}
              >
                ⠿
              </span>
              <button
                type="button"
                className="link-button"
                data-way="earlier"
                aria-label={say.earlierOf(title)}
                disabled={earlier === null}
                onClick={earlier ?? undefined}
              >
                {say.earlier}
              </button>
              <button
                type="button"
                className="link-button"
                data-way="later"
                aria-label={say.laterOf(title)}
                disabled={later === null}
                onClick={later ?? undefined}
              >
                {say.later}
              </button>
            </>
          )}
          {alteration !== null && other !== null && (
            <button
              type="button"
              className="link-button"
              aria-label={`${anotherWayWords(other)}: ${title}`}
              onClick={() => tryOther(other)}
            >
              {OTHER_WAY}
            </button>
          )}
          <button
            type="button"
            className="link-button slip-remove"
            aria-label={say.takeOutOf(title)}
            onClick={() => onRemove(planned.id)}
          >
            {say.takeOut}
          </button>
        </div>
      )}
    </li>
  );
}

/** Scrolls the ledger's own place alone, so that the page stays where it is on a small screen. */
function bringIntoView(paper: HTMLElement | null): void {
  const place = paper?.closest(".ledger-place");
  if (paper === null || place === null || place === undefined) return;
  const [own, room] = [paper.getBoundingClientRect(), place.getBoundingClientRect()];
  if (own.top < room.top) place.scrollTop -= room.top - own.top;
  else if (own.bottom > room.bottom) place.scrollTop += own.bottom - room.bottom;
}
