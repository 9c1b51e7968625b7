import { useId, type ReactNode } from "react";

export interface SelectProps {
  readonly label: ReactNode;
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly onChange: (value: string) => void;
  readonly labelHidden?: boolean;
}

export function Select({ label, value, options, onChange, labelHidden }: SelectProps) {
  const id = useId();
  return (
    <div className="field inline">
      <label htmlFor={id} className={labelHidden === true ? "visually-hidden" : "field-label"}>
        {label}
      </label>
      <select id={id} className="field-input select" value={value} onChange={(event) => onChange(event.target.value)}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </div>
  );
}
