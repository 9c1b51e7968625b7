import { useEffect, useRef, useState, type KeyboardEvent } from "react";
import { BIN_TIME } from "../../store/binWork";
import type { WorkEntry } from "../../store/library";
import { binHeading, daysLeftWords, reallySentence, workSaid, WORKS_WORDS } from "../../words/works";
import { useWorks } from "./useWorks";
import { focusNeighbour } from "./WorkRow";

/** ms */
const DAY = 24 * 60 * 60 * 1000;

/** What was put away and still can come back. @param now milliseconds since 1970 */
export function WorksBin({ now }: { readonly now: number }) {
  const { binned } = useWorks();
  return (
    <details className="works-bin">
      <summary>{binHeading(binned.length)}</summary>
      <ul>
        {binned.map((entry) => (
          <BinnedWork
            key={entry.id}
            entry={entry}
            daysLeft={Math.ceil(((entry.binned ?? now) + BIN_TIME - Math.max(now, entry.binned ?? now)) / DAY)}
          />
        ))}
      </ul>
    </details>
  );
}

interface BinnedWorkProps {
  readonly entry: WorkEntry;
  readonly daysLeft: number;
}

function BinnedWork({ entry: { id, name, wearer }, daysLeft }: BinnedWorkProps) {
  const { bringBack, removeForGood } = useWorks();
  return (
    <li className="work-row" tabIndex={-1}>
      <div className="work-said">
        <p className="work-title">{name}</p>
        <p className="aside">
          {[workSaid(wearer, ""), daysLeftWords(daysLeft)].filter((part) => part !== "").join(", ")}
        </p>
        <div className="work-row-actions">
          <button
            type="button"
            className="button small"
            aria-label={`${WORKS_WORDS.bringBack}: ${name}`}
            onClick={() => bringBack(id)}
          >
            {WORKS_WORDS.bringBack}
          </button>
          <ForGood name={name} onSure={() => removeForGood(id)} />
        </div>
      </div>
    </li>
  );
}

/** Asks in its own place. The answer that loses nothing has the focus, and lies under a pointer that presses twice. */
function ForGood({ name, onSure }: { readonly name: string; readonly onSure: () => void }) {
  const [asks, setAsks] = useState(false);
  const first = useRef<HTMLButtonElement>(null);
  const keep = useRef<HTMLButtonElement>(null);
  const wasAsking = useRef(false);
  useEffect(() => {
    if (asks) keep.current?.focus();
    else if (wasAsking.current) first.current?.focus();
    wasAsking.current = asks;
  }, [asks]);

  const keepOnEscape = (event: KeyboardEvent): void => {
    if (event.key !== "Escape") return;
    // The menu stays.
    event.stopPropagation();
    setAsks(false);
  };

  if (!asks)
    return (
      <button
        ref={first}
        type="button"
        className="button quiet small"
        aria-label={`${WORKS_WORDS.forGood}: ${name}`}
        onClick={() => setAsks(true)}
      >
        {WORKS_WORDS.forGood}
      </button>
    );
  return (
    <div className="work-sure" role="group" aria-label={reallySentence(name)}>
      <button
        ref={keep}
        type="button"
        className="button small keep-it"
        onClick={() => setAsks(false)}
        onKeyDown={keepOnEscape}
      >
        {WORKS_WORDS.keepIt}
      </button>
      <button
        type="button"
        className="button small grave"
        onKeyDown={keepOnEscape}
        onClick={(event) => {
          focusNeighbour(event);
          onSure();
        }}
      >
        {WORKS_WORDS.reallyForGood}
      </button>
    </div>
  );
}
