import { useId } from "react";
import type { DartRef } from "../../core/pattern/piece";
import type { GiveBack, GiveBackPlace } from "../../core/plan/work";
import { placeWords } from "../../words/darts";

export interface GiveBackSharesProps {
  readonly dart: DartRef;
  readonly places: readonly GiveBackPlace[];
  readonly shares: GiveBack;
  readonly onChange: (shares: GiveBack) => void;
}

const PERCENT_STEP = 5;

/** Where what a dart sets free goes: shares that always make a whole. */
export function GiveBackShares({ dart, places, shares, onChange }: GiveBackSharesProps) {
  const id = useId();
  const [usual] = places;
  const sum = places.reduce((total, place) => total + (shares[place] ?? 0), 0);
  const current = (place: GiveBackPlace): number => (sum === 0 ? (place === usual ? 1 : 0) : (shares[place] ?? 0));

  /** The others keep their proportion to each other in what is left; the last place takes the rounding. */
  const set = (place: GiveBackPlace, share: number): void => {
    const others = places.filter((other) => other !== place);
    const rest = others.reduce((total, other) => total + current(other), 0);
    const next: Partial<Record<GiveBackPlace, number>> = { [place]: share };
    let left = Math.round((1 - share) * 100);
    others.forEach((other, index) => {
      const part = rest === 0 ? (index === 0 ? left : 0) : Math.round(((1 - share) * 100 * current(other)) / rest);
      const given = index === others.length - 1 ? left : Math.min(left, part);
      left -= given;
      next[other] = given / 100;
    });
    onChange(next);
  };

  return (
    <fieldset className="shares">
      <legend className="field-label">What the dart sets free on its seam is taken at</legend>
      {places.map((place) => {
        const percent = Math.round(current(place) * 100);
        return (
          <div key={place} className="share">
            <label htmlFor={`${id}-${place}`}>{placeWords(place, dart.piece)}</label>
            <input
              id={`${id}-${place}`}
              type="range"
              min={0}
              max={100}
              step={PERCENT_STEP}
              value={percent}
              aria-valuetext={`${percent} %`}
              onChange={(event) => set(place, Number(event.target.value) / 100)}
            />
            <output htmlFor={`${id}-${place}`}>{percent} %</output>
          </div>
        );
      })}
    </fieldset>
  );
}
