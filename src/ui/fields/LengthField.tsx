import { useId, useRef, useState, type KeyboardEvent, type ReactNode } from "react";
import { parseLength } from "../../core/measures/length";
import type { Command } from "../../core/plan/commands";
import { ON_A_MARK } from "../../core/tolerance";
import { MM_PER_INCH, type Mm } from "../../core/units";
import { formatLengthEntry, lengthFailureSentence } from "../../words/terms/length";
import { useRunAll } from "../session/useRunAll";
import { useGesture, useRun, useWork } from "../session/useWork";
import { Fractions } from "./Fractions";
import { useKeptOnHide } from "./useKeptOnHide";

export interface LengthFieldProps {
  readonly label: ReactNode;
  /** Key of the entry among those that could not be read. */
  readonly field: string;
  readonly value: Mm | undefined;
  /** What an entry of this length does to the work. */
  readonly set: (value: Mm) => Command;
  /** What else belongs to an entry, as one step with it. */
  readonly also?: () => readonly Command[];
  /** What emptying the field does; without it an emptied field goes back to its value. */
  readonly clear?: Command;
  /** Why a length that reads well cannot be taken all the same. */
  readonly refuse?: (value: Mm) => string | null;
  /** Said beside the field, never blocking. */
  readonly warnings?: readonly string[];
  readonly hint?: ReactNode;
  /** Shown in an empty field: what counts if nothing is entered. */
  readonly otherwise?: string;
  /** Stands beside the entry, as a button that takes it away. */
  readonly beside?: ReactNode;
  readonly labelHidden?: boolean;
  /** Takes lengths below nothing, as for an alteration that makes smaller. */
  readonly signed?: boolean;
  /** Takes feet and inches, as heights are told in. */
  readonly feet?: boolean;
  readonly onFocus?: () => void;
}

/** One press of an arrow key, and one with Shift. */
const STEPS = {
  cm: { small: 1, large: 10 },
  in: { small: MM_PER_INCH / 16, large: MM_PER_INCH / 2 },
} as const;

/**
 * A length as typed and a length as understood, kept apart: typing changes nothing until Enter or leaving the field,
 * and what cannot be read stays in the field as it was typed, beside the reason.
 */
export function LengthField(props: LengthFieldProps) {
  const {
    label,
    field,
    value,
    set,
    clear,
    refuse,
    warnings = [],
    hint,
    otherwise,
    labelHidden,
    signed = false,
    feet = false,
    also,
    beside,
    onFocus,
  } = props;
  const id = useId();
  const unit = useWork((work) => work.unit);
  const unread = useWork((work) => work.unread[field]);
  const run = useRun();
  const runAll = useRunAll();
  const gesture = useGesture();
  const [draft, setDraft] = useState<string | null>(null);
  /** What goes along with every step of the run of key presses that is going on. */
  const stepping = useRef<readonly Command[] | null>(null);

  const settled = value === undefined ? "" : formatLengthEntry(value, unit);
  const shown = draft ?? unread ?? settled;

  /** Why this text cannot be taken, or the length it says. */
  const read = (text: string): { readonly length: Mm } | { readonly reason: string } => {
    const parsed = parseLength(text, unit, { signed, feet });
    if (!parsed.ok) return { reason: lengthFailureSentence(parsed.failure, unit) };
    const reason = refuse?.(parsed.value) ?? null;
    return reason === null ? { length: parsed.value } : { reason };
  };

  const finishStepping = (): void => {
    if (stepping.current === null) return;
    stepping.current = null;
    gesture.commit();
  };

  const forgetUnread = (): void => {
    if (unread !== undefined) run({ kind: "clearUnread", field });
  };

  const commit = (): void => {
    finishStepping();
    if (draft === null) return;
    setDraft(null);
    const text = draft.trim();
    if (text === settled) return forgetUnread();
    if (text === "") {
      forgetUnread();
      if (clear !== undefined && value !== undefined) run(clear);
      return;
    }
    const entry = read(text);
    if ("reason" in entry) {
      if (text !== unread) run({ kind: "setUnread", field, text });
      return;
    }
    forgetUnread();
    if (entry.length !== value) runAll([...(also?.() ?? []), set(entry.length)]);
  };
  useKeptOnHide(draft === null ? null : commit);

  const step = (direction: 1 | -1, large: boolean): void => {
    const typed = draft === null ? undefined : read(draft.trim());
    const from = typed !== undefined && "length" in typed ? typed.length : value;
    if (from === undefined) return;
    const size = large ? STEPS[unit].large : STEPS[unit].small;
    // To the next mark of the tape in that direction, so that a value between two marks meets them.
    const marks = from / STEPS[unit].small;
    const onMark = direction === 1 ? Math.floor(marks + ON_A_MARK) : Math.ceil(marks - ON_A_MARK);
    const next = Math.round((onMark * STEPS[unit].small + direction * size) * 100) / 100;
    if ((next < 0 && !signed) || (refuse?.(next) ?? null) !== null) return;
    if (stepping.current === null) {
      stepping.current = [
        ...(also?.() ?? []),
        ...(unread === undefined ? [] : [{ kind: "clearUnread" as const, field }]),
      ];
      gesture.begin();
    }
    gesture.preview(...stepping.current, set(next));
    setDraft(null);
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>): void => {
    switch (event.key) {
      case "Enter":
        commit();
        return;
      case "Escape":
        if (draft === null && stepping.current === null) return;
        event.stopPropagation();
        setDraft(null);
        if (stepping.current !== null) {
          stepping.current = null;
          gesture.cancel();
        }
        return;
      case "ArrowUp":
      case "ArrowDown":
        event.preventDefault();
        step(event.key === "ArrowUp" ? 1 : -1, event.shiftKey);
        return;
      default:
    }
  };

  const waiting = draft === null && unread !== undefined ? read(unread) : null;
  const error = waiting !== null && "reason" in waiting ? waiting.reason : null;
  const kept = error !== null && value !== undefined ? ` Until then ${settled} ${unit} counts.` : "";
  const describedBy = [
    hint === undefined ? null : `${id}-hint`,
    error === null ? null : `${id}-error`,
    warnings.length === 0 ? null : `${id}-warning`,
  ].filter((part) => part !== null);

  const entry = (
    <span className="field-entry">
      <input
        id={id}
        className="field-input"
        type="text"
        inputMode={unit === "cm" ? "decimal" : "text"}
        autoComplete="off"
        autoCorrect="off"
        spellCheck={false}
        enterKeyHint="done"
        value={shown}
        placeholder={otherwise}
        aria-invalid={error !== null}
        aria-describedby={describedBy.length === 0 ? undefined : describedBy.join(" ")}
        onFocus={onFocus}
        onChange={(event) => setDraft(event.target.value)}
        onBlur={commit}
        onKeyDown={onKeyDown}
        onKeyUp={(event) => {
          if (event.key === "ArrowUp" || event.key === "ArrowDown") finishStepping();
        }}
      />
      <span className="field-unit" aria-hidden="true">
        {unit}
      </span>
    </span>
  );

  return (
    <div className="field" data-state={error !== null ? "error" : warnings.length > 0 ? "warning" : undefined}>
      <label htmlFor={id} className={labelHidden === true ? "visually-hidden" : "field-label"}>
        {label}
      </label>
      {beside === undefined ? (
        entry
      ) : (
        <span className="field-line">
          {entry}
          {beside}
        </span>
      )}
      {hint !== undefined && (
        <p id={`${id}-hint`} className="field-hint">
          {hint}
        </p>
      )}
      {error !== null && (
        <p id={`${id}-error`} className="field-error" role="alert">
          <Fractions text={`${error}${kept}`} />
        </p>
      )}
      {warnings.length > 0 && (
        <div id={`${id}-warning`} className="field-warning">
          {warnings.map((warning) => (
            <p key={warning}>
              <Fractions text={warning} />
            </p>
          ))}
        </div>
      )}
    </div>
  );
}
