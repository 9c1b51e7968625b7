import { useId, type ReactNode } from "react";

interface ChoiceOption<T extends string> {
  readonly value: T;
  readonly label: ReactNode;
}

export interface ChoiceProps<T extends string> {
  readonly legend: string;
  readonly options: readonly ChoiceOption<T>[];
  readonly value: T;
  readonly onChange: (value: T) => void;
  readonly legendHidden?: boolean;
}

/** One of a few: radio buttons set side by side like marks on a tape. */
export function Choice<T extends string>({ legend, options, value, onChange, legendHidden }: ChoiceProps<T>) {
  const name = useId();
  return (
    <fieldset className="choice">
      <legend className={legendHidden === true ? "visually-hidden" : "field-label"}>{legend}</legend>
      <div className="choice-marks">
        {options.map((option) => (
          <label key={option.value} className="choice-mark">
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === value}
              onChange={() => onChange(option.value)}
            />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
