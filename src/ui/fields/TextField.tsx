import { useId, type ReactNode } from "react";
import type { Command } from "../../core/plan/commands";
import { useEntry } from "./useEntry";

export interface TextFieldProps {
  readonly label: ReactNode;
  /** Key of the entry while it is typed. */
  readonly field: string;
  readonly value: string;
  readonly set: (text: string) => Command;
  /** What emptying the field does; without it an emptied field changes nothing, and goes back to its value when it is left. */
  readonly clear?: Command;
  readonly labelHidden?: boolean;
  readonly className?: string;
  readonly maxLength?: number;
  readonly otherwise?: string;
  /** Which letters the screen's keys begin with large. */
  readonly capitals?: "sentences" | "words" | "characters";
}

/** A line of text: taken as it is typed, put back by Escape. */
export function TextField(props: TextFieldProps) {
  const { label, field, value, set, clear, labelHidden, className, maxLength = 80, otherwise, capitals } = props;
  const id = useId();
  const { input } = useEntry({
    field,
    settled: value,
    read: (text) => ({ commands: [set(text)] }),
    ...(clear === undefined ? {} : { clear: () => [clear] }),
  });
  return (
    <div className={className ?? "field"}>
      <label htmlFor={id} className={labelHidden === true ? "visually-hidden" : "field-label"}>
        {label}
      </label>
      <input
        id={id}
        className="field-input text"
        type="text"
        autoComplete="off"
        autoCapitalize={capitals ?? "sentences"}
        enterKeyHint="done"
        maxLength={maxLength}
        placeholder={otherwise}
        {...input}
      />
    </div>
  );
}
