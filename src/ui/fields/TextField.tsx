import { useId, useState, type ReactNode } from "react";

export interface TextFieldProps {
  readonly label: ReactNode;
  readonly value: string;
  readonly onCommit: (text: string) => void;
  readonly labelHidden?: boolean;
  readonly className?: string;
  readonly maxLength?: number;
}

/** A line of text: kept on Enter or on leaving the field, put back by Escape. An emptied field goes back too. */
export function TextField({ label, value, onCommit, labelHidden, className, maxLength = 80 }: TextFieldProps) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);

  const commit = (): void => {
    if (draft === null) return;
    setDraft(null);
    const text = draft.trim();
    if (text !== "" && text !== value) onCommit(text);
  };

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
        maxLength={maxLength}
        value={draft ?? value}
        onChange={(event) => setDraft(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === "Enter") commit();
          if (event.key === "Escape" && draft !== null) {
            event.stopPropagation();
            setDraft(null);
          }
        }}
      />
    </div>
  );
}
