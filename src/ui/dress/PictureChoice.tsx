import { Choice, type ChoiceProps } from "../fields/Choice";

export interface PictureChoiceProps<T extends string> extends Omit<ChoiceProps<T>, "options"> {
  readonly options: readonly { readonly value: T; readonly label: string; readonly picture: DressPicture }[];
}

export interface DressPicture {
  /** Drawn full. */
  readonly lines: string;
  /** Drawn thin: gathers, seams, darts. */
  readonly fine?: string;
}

/** One of a few shapes, each drawn small over its name. */
export function PictureChoice<T extends string>({ options, ...choice }: PictureChoiceProps<T>) {
  return (
    <Choice
      {...choice}
      options={options.map(({ value, label, picture }) => ({
        value,
        label: (
          <span className="dress-choice">
            <svg viewBox="0 0 40 46" aria-hidden="true" focusable="false">
              <path d={picture.lines} />
              {picture.fine !== undefined && <path className="fine" d={picture.fine} />}
            </svg>
            {label}
          </span>
        ),
      }))}
    />
  );
}
