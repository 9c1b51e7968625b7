import type { GiveBack, GiveBackPlace } from "../../core/decisions/alteration";
import { useId, useRef, useState } from "react";
import type { DartRef } from "../../core/pattern/piece";
import { placeWords } from "../../words/terms/darts";
import { useGesture } from "../session/useWork";
import { sharesWith, wholeShares } from "../../core/plan/giveBackShares";

export interface GiveBackSharesProps {
  readonly dart: DartRef;
  readonly places: readonly GiveBackPlace[];
  readonly shares: GiveBack;
}

const PERCENT_STEP = 5;

/** Where what a dart sets free goes: shares that always make a whole. One slide, or one number, is one step of undo. */
export function GiveBackShares({ dart, places, shares }: GiveBackSharesProps) {
  const gesture = useGesture();
  const going = useRef(false);
  const percents = wholeShares(places, shares);
  const [only, ...others] = places;
  if (only === undefined) return null;
  if (others.length === 0)
    return <p className="field-hint">What the dart sets free is taken at the {placeWords(only, dart.piece)}.</p>;

  const show = (place: GiveBackPlace, percent: number): void => {
    if (!going.current) {
      going.current = true;
      gesture.begin();
    }
    // Shares belong to every alteration of the dart, so that its seam is given back in one way.
    gesture.preview({ kind: "setGiveBack", dart, giveBack: sharesWith(places, shares, place, percent) });
  };
  const finish = (how: "commit" | "cancel" = "commit"): void => {
    if (!going.current) return;
    going.current = false;
    gesture[how]();
  };

  return (
    <fieldset className="shares">
      <legend className="field-label">What the dart sets free on its seam is taken at</legend>
      {places.map((place) => (
        <Share
          key={place}
          name={placeWords(place, dart.piece)}
          percent={percents[place] ?? 0}
          onShow={(percent) => show(place, percent)}
          onFinish={finish}
        />
      ))}
    </fieldset>
  );
}

interface ShareProps {
  readonly name: string;
  readonly percent: number;
  readonly onShow: (percent: number) => void;
  readonly onFinish: (how?: "commit" | "cancel") => void;
}

function Share({ name, percent, onShow, onFinish }: ShareProps) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const [isRefused, setRefused] = useState(false);

  const take = (): void => {
    if (draft === null) return onFinish();
    const typed = readPercent(draft);
    setRefused(typed === null);
    if (typed === null) return;
    setDraft(null);
    if (typed !== percent) onShow(typed);
    onFinish();
  };
  const onKeyDown = (event: React.KeyboardEvent): void => {
    if (event.key === "Enter") return take();
    if (event.key === "Escape") {
      event.stopPropagation();
      setDraft(null);
      setRefused(false);
      return onFinish("cancel");
    }
    if (event.key !== "ArrowUp" && event.key !== "ArrowDown") return;
    event.preventDefault();
    setDraft(null);
    setRefused(false);
    onShow(Math.min(100, Math.max(0, percent + (event.key === "ArrowUp" ? 1 : -1) * (event.shiftKey ? 10 : 1))));
  };

  return (
    <div className="share">
      <label htmlFor={`${id}-slide`}>{name}</label>
      <input
        id={`${id}-slide`}
        type="range"
        min={0}
        max={100}
        step={PERCENT_STEP}
        value={percent}
        aria-valuetext={`${percent} %`}
        onChange={(event) => {
          setDraft(null);
          setRefused(false);
          onShow(Number(event.target.value));
        }}
        onPointerUp={() => onFinish()}
        onKeyUp={() => onFinish()}
        onBlur={() => onFinish()}
      />
      <span className="share-entry">
        <input
          type="text"
          inputMode="numeric"
          autoComplete="off"
          className="field-input"
          aria-label={`${name}, per cent`}
          aria-invalid={isRefused}
          aria-describedby={isRefused ? `${id}-refused` : undefined}
          value={draft ?? String(percent)}
          onChange={(event) => setDraft(event.target.value)}
          onKeyDown={onKeyDown}
          onBlur={take}
        />
        <span aria-hidden="true">%</span>
      </span>
      {isRefused && (
        <p id={`${id}-refused`} className="field-error" role="alert">
          Write a share from 0 to 100.
        </p>
      )}
    </div>
  );
}

/** A whole per cent from 0 to 100, with or without its sign; else null. */
function readPercent(text: string): number | null {
  const found = /^\s*(\d{1,3})(?:[.,]0*)?\s*%?\s*$/.exec(text);
  const percent = found === null ? NaN : Number(found[1]);
  return percent <= 100 ? percent : null;
}
