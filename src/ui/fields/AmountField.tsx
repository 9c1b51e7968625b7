import { useId, useRef, useState, type KeyboardEvent } from "react";
import { parseAmount } from "../../core/measures/length";
import type { LengthUnit } from "../../core/decisions/work";
import { SAME_ENTRY } from "../../core/tolerance";
import type { Mm } from "../../core/units";
import { formatAmount, lengthFailureSentence } from "../../words/terms/length";
import { useRun, useWork } from "../session/useWork";
import { useKeptOnHide } from "./useKeptOnHide";

export interface AmountFieldProps {
  readonly label: string;
  /** Key of the entry among those that could not be read. */
  readonly field: string;
  readonly value: Mm;
  readonly unit: LengthUnit;
  /** One press of an arrow key; with Shift ten of them. */
  readonly step: Mm;
  readonly onStart: () => void;
  readonly onPreview: (value: Mm) => void;
  readonly onCommit: () => void;
  readonly onCancel: () => void;
  readonly hint?: string;
  /** Said beside the field where what it asks for cannot be done. */
  readonly refusal?: string | null;
}

/** The amount as it stands in the field: millimetres to 0.1, or inches with their fraction. */
const entryOf = (value: Mm, unit: LengthUnit): string =>
  unit === "cm" ? String(Math.round(value * 10) / 10).replace("-", "−") : formatAmount(value, unit).replace(/ in$/, "");

/**
 * A small amount to move by: typed, or stepped with the arrow keys; one visit that changed something is one step of undo.
 * What cannot be read stays as it was typed, beside the reason, until it is put right or Escape takes it back.
 */
export function AmountField(props: AmountFieldProps) {
  const { label, field, value, unit, step, onStart, onPreview, onCommit, onCancel, hint, refusal = null } = props;
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const unread = useWork((work) => work.unread[field]);
  const run = useRun();
  const going = useRef(false);

  const finish = (how: "commit" | "cancel"): void => {
    if (!going.current) return;
    going.current = false;
    if (how === "commit") onCommit();
    else onCancel();
  };
  const show = (next: Mm): void => {
    if (!going.current) {
      going.current = true;
      onStart();
    }
    onPreview(next);
  };
  const forgetUnread = (): void => {
    if (unread !== undefined) run({ kind: "clearUnread", field });
  };
  const take = (): void => {
    if (draft === null) return finish("commit");
    setDraft(null);
    const parsed = parseAmount(draft, unit);
    if (!parsed.ok) {
      finish("commit");
      if (draft !== unread) run({ kind: "setUnread", field, text: draft });
      return;
    }
    // The step begins with this visit: an entry that is forgotten ends one that is going on.
    if (!going.current) forgetUnread();
    if (Math.abs(parsed.value - value) > SAME_ENTRY) show(parsed.value);
    finish("commit");
  };
  useKeptOnHide(draft === null ? null : take);
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === "Enter") return take();
    if (event.key === "Escape" && (draft !== null || going.current || unread !== undefined)) {
      event.stopPropagation();
      setDraft(null);
      finish("cancel");
      return forgetUnread();
    }
    if (event.key !== "ArrowUp" && event.key !== "ArrowDown") return;
    event.preventDefault();
    setDraft(null);
    if (!going.current) forgetUnread();
    show(value + (event.key === "ArrowUp" ? 1 : -1) * step * (event.shiftKey ? 10 : 1));
  };

  const waiting = draft === null && unread !== undefined ? parseAmount(unread, unit) : null;
  const said = waiting !== null && !waiting.ok ? lengthFailureSentence(waiting.failure, unit) : refusal;
  const describedBy = [hint === undefined ? "" : `${id}-hint`, said === null ? "" : `${id}-error`].join(" ").trim();
  return (
    <div className="field" data-state={said === null ? undefined : "error"}>
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      <span className="field-entry">
        <input
          id={id}
          className="field-input"
          type="text"
          inputMode="text"
          autoComplete="off"
          spellCheck={false}
          enterKeyHint="done"
          value={draft ?? unread ?? entryOf(value, unit)}
          aria-invalid={said !== null}
          aria-describedby={describedBy === "" ? undefined : describedBy}
          onChange={(event) => setDraft(event.target.value)}
          onBlur={take}
          onKeyDown={onKeyDown}
        />
        <span className="field-unit" aria-hidden="true">
          {unit === "cm" ? "mm" : "in"}
        </span>
      </span>
      {hint !== undefined && (
        <p id={`${id}-hint`} className="field-hint">
          {hint}
        </p>
      )}
      {said !== null && (
        <p id={`${id}-error`} className="field-error" role="alert">
          {said}
        </p>
      )}
    </div>
  );
}
