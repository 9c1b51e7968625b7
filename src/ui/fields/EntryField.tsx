import { useEffect, useId, useRef, useState, type InputHTMLAttributes, type ReactNode } from "react";
import { useDrawnKeys } from "../session/useScreen";
import type { EntryProps } from "./useEntry";
import { DrawnKeys, type Lacking } from "./DrawnKeys";
import { nextInRun } from "./fieldRun";
import { Fractions } from "./Fractions";
import { notTaken } from "../../words/page";

/** How a field may look beside what stands in it. */
export interface EntryLook {
  readonly label: ReactNode;
  readonly labelHidden?: boolean;
  readonly hint?: ReactNode;
  /** Shown in an empty field: what counts if nothing is entered. */
  readonly otherwise?: string;
  /** Stands beside the entry, as a button that takes it away. */
  readonly beside?: ReactNode;
  /** Said beside the field, never blocking. */
  readonly warnings?: readonly string[];
}

export interface EntryFieldProps extends EntryLook {
  readonly entry: EntryProps;
  readonly unit?: string;
  /** Why it cannot be taken or done; null: it can. */
  readonly error: string | null;
  readonly inputMode: InputHTMLAttributes<HTMLInputElement>["inputMode"];
  /** What the number keys that a screen draws lack for it. With it they can be asked for all the same. */
  readonly lacking?: Lacking;
  readonly onFocus?: (() => void) | undefined;
}

/** A label, what is entered, and below it what is said of it. */
export function EntryField(props: EntryFieldProps) {
  const { entry, label, labelHidden, hint, otherwise, beside, warnings = [], unit, error, inputMode, onFocus } = props;
  const { lacking } = props;
  const id = useId();
  const place = useRef<HTMLInputElement>(null);
  const areDrawn = useDrawnKeys();
  const keys = areDrawn && lacking !== undefined && (lacking.parts || lacking.sign) ? lacking : null;
  const [isIn, setIn] = useState(false);
  const hasKeys = isIn && keys !== null;
  useEffect(() => {
    // What comes up does not lie on the field.
    if (hasKeys) place.current?.scrollIntoView({ block: "nearest" });
  }, [hasKeys]);
  const describedBy = [
    hint === undefined ? null : `${id}-hint`,
    entry.isWaiting ? `${id}-waiting` : null,
    error === null ? null : `${id}-error`,
    warnings.length === 0 ? null : `${id}-warning`,
  ].filter((part) => part !== null);
  const input = (
    <span className="field-entry">
      <input
        ref={place}
        id={id}
        className="field-input"
        type="text"
        inputMode={keys === null ? inputMode : "decimal"}
        autoComplete="off"
        autoCorrect="off"
        spellCheck={false}
        enterKeyHint="done"
        placeholder={otherwise}
        aria-invalid={error !== null}
        aria-describedby={describedBy.length === 0 ? undefined : describedBy.join(" ")}
        {...entry.input}
        onFocus={({ currentTarget }) => {
          setIn(true);
          currentTarget.enterKeyHint = nextInRun(currentTarget) === undefined ? "done" : "next";
          onFocus?.();
        }}
        onKeyDown={(event) => {
          entry.input.onKeyDown(event);
          if (event.key === "Enter" && areDrawn) nextInRun(event.currentTarget)?.focus();
        }}
      />
      {unit !== undefined && (
        <span className="field-unit" aria-hidden="true">
          {unit}
        </span>
      )}
    </span>
  );
  return (
    <div
      className="field"
      data-state={error !== null ? "error" : warnings.length > 0 ? "warning" : undefined}
      onBlur={({ currentTarget, relatedTarget }) => {
        if (!currentTarget.contains(relatedTarget)) setIn(false);
      }}
    >
      <label htmlFor={id} className={labelHidden === true ? "visually-hidden" : "field-label"}>
        {label}
      </label>
      {beside === undefined ? (
        input
      ) : (
        <span className="field-line">
          {input}
          {beside}
        </span>
      )}
      {hint !== undefined && (
        <p id={`${id}-hint`} className="field-hint">
          {typeof hint === "string" ? <Fractions text={hint} /> : hint}
        </p>
      )}
      {entry.isWaiting && (
        <p id={`${id}-waiting`} className="field-hint">
          {notTaken}
        </p>
      )}
      {error !== null && (
        <p id={`${id}-error`} className="field-error" role="alert">
          <Fractions text={error} />
        </p>
      )}
      {hasKeys && (
        <DrawnKeys
          {...keys}
          input={place}
          text={entry.text}
          type={(value) => entry.input.onChange({ target: { value } })}
        />
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
