import { useEffect, useId, useRef, type MouseEvent } from "react";
import type { WorkEntry } from "../../store/library";
import { workSaid, WORKS_WORDS } from "../../words/works";
import { useInSight } from "../session/useInSight";
import { FrontInSmall } from "./FrontInSmall";
import type { Looks } from "./looks";

export interface WorkRowProps {
  readonly entry: WorkEntry;
  readonly when: string;
  /** Which other work says the very same, in words. */
  readonly same: string | undefined;
  /** All of its name, where there are several. */
  readonly namesakes: readonly WorkEntry[] | undefined;
  readonly isOpen: boolean;
  readonly looks: Looks;
  readonly onOpen: () => void;
  readonly onCopy: () => void;
  readonly onBin: () => void;
}

export function WorkRow({ entry, when, same, namesakes, isOpen, looks, onOpen, onCopy, onBin }: WorkRowProps) {
  const { id, stamp, name, wearer } = entry;
  const row = useRef<HTMLLIElement>(null);
  const about = useId();
  const isSeen = useInSight(row);

  useEffect(() => (isSeen ? looks.want({ id, stamp }, "front") : undefined), [isSeen, looks, id, stamp]);
  useEffect(() => {
    if (!isSeen || namesakes === undefined) return undefined;
    const given = namesakes.map((other) => looks.want(other, "text"));
    return () => {
      for (const giveUp of given) giveUp();
    };
  }, [isSeen, looks, namesakes]);

  const front = looks.of(entry)?.front;
  return (
    <li ref={row} className="work-row" tabIndex={-1} aria-current={isOpen ? "true" : undefined}>
      <FrontInSmall front={front} />
      <div className="work-said">
        <p className="work-title">
          <span>{name}</span>
          {isOpen && <span className="tag own">{WORKS_WORDS.openNow}</span>}
        </p>
        <p id={about} className="aside">
          {workSaid(wearer, when)}
          {same !== undefined && <span className="work-same">{same}</span>}
        </p>
        <div className="work-row-actions">
          {!isOpen && (
            <button
              type="button"
              className="button small open-work"
              aria-label={`${WORKS_WORDS.open} ${name}`}
              aria-describedby={about}
              onClick={onOpen}
            >
              {WORKS_WORDS.open}
            </button>
          )}
          <button
            type="button"
            className="button quiet small"
            aria-label={`${WORKS_WORDS.copy} ${name}`}
            aria-describedby={about}
            onClick={onCopy}
          >
            {WORKS_WORDS.copy}
          </button>
          <button
            type="button"
            className="button quiet small"
            aria-label={`${WORKS_WORDS.toBin}: ${name}`}
            aria-describedby={about}
            onClick={(event) => {
              focusNeighbour(event);
              onBin();
            }}
          >
            {WORKS_WORDS.toBin}
          </button>
        </div>
      </div>
    </li>
  );
}

/** Before a row goes with the button that was pressed in it. */
export function focusNeighbour({ currentTarget }: MouseEvent): void {
  const row = currentTarget.closest("li");
  const next = row?.nextElementSibling ?? row?.previousElementSibling;
  if (next instanceof HTMLElement) next.focus();
}
