import type { KeyboardEvent } from "react";
import type { Command } from "../../core/plan/commands";
import { useGesture } from "../session/useWork";

export interface SliderProps {
  readonly id?: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly value: number;
  readonly valueText: string;
  /** What this value does to the work as it is before the slide. */
  readonly set: (value: number) => readonly Command[];
}

/** A value that slides: what it does is in the work at once, and one slide is one step of undo. */
export function Slider({ id, min, max, step, value, valueText, set }: SliderProps) {
  const gesture = useGesture();
  return (
    <input
      id={id}
      type="range"
      min={min}
      max={max}
      step={step}
      value={value}
      aria-valuetext={valueText}
      onChange={(event) => {
        if (!gesture.isGoingOn()) gesture.begin("keys");
        gesture.preview(set(Number(event.target.value)));
      }}
      onKeyDown={(event: KeyboardEvent) => {
        if (event.key !== "Escape" || !gesture.isGoingOn()) return;
        event.stopPropagation();
        gesture.cancel();
      }}
      onPointerUp={gesture.commit}
      onKeyUp={gesture.commit}
      onBlur={gesture.commit}
    />
  );
}
