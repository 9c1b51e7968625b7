import { useId, type ReactNode } from "react";
import type { TrialPlace } from "../../core/decisions/trial";
import type { Command } from "../../core/plan/commands";
import { placeNumber, type PlaceOnToile } from "../../core/toile/toilePlaces";
import { placeWords } from "../../words/trialPlaces";
import { NO_SUCH_PLACE } from "../../words/trialStep";
import { useEntry } from "../fields/useEntry";

interface PlaceFieldProps {
  readonly label: ReactNode;
  readonly field: string;
  readonly value: TrialPlace | undefined;
  /** Those that this garment has. */
  readonly places: readonly PlaceOnToile[];
  readonly set: (place: TrialPlace) => Command;
  readonly clear: Command;
}

/** A place by its number on the drawing, typed or chosen from the list of names. */
export function PlaceField({ label, field, value, places, set, clear }: PlaceFieldProps) {
  const id = useId();
  const { input, reason, text } = useEntry({
    field,
    settled: value === undefined ? "" : String(placeNumber(value)),
    read: (typed) => {
      const place = placeTyped(typed, places);
      return place === null ? { reason: NO_SUCH_PLACE } : { commands: [set(place)] };
    },
    clear: () => [clear],
  });
  const said = placeTyped(text.trim(), places) ?? value;
  return (
    <div className="field place-field" data-state={reason === null ? undefined : "error"}>
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      <span className="field-entry">
        <input
          id={id}
          className="field-input"
          type="text"
          inputMode="numeric"
          autoComplete="off"
          list={`${id}-list`}
          aria-invalid={reason !== null}
          aria-describedby={`${id}-said`}
          {...input}
        />
        <datalist id={`${id}-list`}>
          {places.map(({ place }) => (
            <option key={place} value={placeNumber(place)}>
              {placeWords(place)}
            </option>
          ))}
        </datalist>
      </span>
      <p
        id={`${id}-said`}
        className={reason === null ? "place-said" : "field-error"}
        role={reason === null ? undefined : "alert"}
      >
        {reason ?? (said === undefined ? "" : placeWords(said))}
      </p>
    </div>
  );
}

/** By its number, or by how its name begins. */
function placeTyped(text: string, places: readonly PlaceOnToile[]): TrialPlace | null {
  const typed = text.toLowerCase();
  if (typed === "") return null;
  const found = /^\d+$/u.test(typed)
    ? places.find(({ place }) => placeNumber(place) === Number(typed))
    : places.find(({ place }) => placeWords(place).startsWith(typed));
  return found?.place ?? null;
}
