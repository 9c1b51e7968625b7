/** A slip dragged by hand to another place among the wearer's own. */
import { useState, type PointerEvent, type RefObject } from "react";

export interface SlipDrag {
  /** The slip that is dragged. */
  readonly moving: string | null;
  /** The slip it would be made before; null last of all; undefined where it would stay. */
  readonly before: string | null | undefined;
  readonly start: (id: string, event: PointerEvent<HTMLElement>) => void;
}

const NONE = { moving: null, before: undefined } as const;

/** @param ids the wearer's slips in their order; each marks its element with `data-move` */
export function useSlipDrag(
  list: RefObject<HTMLElement | null>,
  ids: readonly string[],
  move: (id: string, before: string | null) => void,
): SlipDrag {
  const [drag, setDrag] = useState<Pick<SlipDrag, "moving" | "before">>(NONE);

  const start = (id: string, event: PointerEvent<HTMLElement>): void => {
    if (event.button !== 0 || !event.isPrimary) return;
    event.preventDefault();
    const grip = event.currentTarget;
    grip.setPointerCapture(event.pointerId);
    setDrag({ moving: id, before: undefined });
    const placeAt = (y: number): string | null | undefined => {
      const next = ids.find((other) => y < middleOf(list.current, other));
      const own = ids.indexOf(id);
      // Before itself or before the one after it, it would stay.
      if (next === id || (next ?? null) === (ids[own + 1] ?? null)) return undefined;
      return next ?? null;
    };
    const onMove = (moved: globalThis.PointerEvent): void => {
      // A second finger on the grip has no say.
      if (moved.pointerId === event.pointerId) setDrag({ moving: id, before: placeAt(moved.clientY) });
    };
    const stop = (): void => {
      grip.removeEventListener("pointermove", onMove);
      grip.removeEventListener("pointerup", onUp);
      grip.removeEventListener("pointercancel", onCancel);
      document.removeEventListener("keydown", onKey, true);
      setDrag(NONE);
    };
    const onCancel = (cancelled: globalThis.PointerEvent): void => {
      if (cancelled.pointerId === event.pointerId) stop();
    };
    const onUp = (up: globalThis.PointerEvent): void => {
      if (up.pointerId !== event.pointerId) return;
      const before = placeAt(up.clientY);
      stop();
      if (before !== undefined) move(id, before);
    };
    const onKey = (key: KeyboardEvent): void => {
      if (key.key === "Escape") stop();
    };
    grip.addEventListener("pointermove", onMove);
    grip.addEventListener("pointerup", onUp);
    grip.addEventListener("pointercancel", onCancel);
    document.addEventListener("keydown", onKey, true);
  };
  return { ...drag, start };
}

function middleOf(list: HTMLElement | null, id: string): number {
  const planned = [...(list?.querySelectorAll<HTMLElement>("[data-move]") ?? [])].find(
    (one) => one.dataset["move"] === id,
  );
  if (planned === undefined) return -Infinity;
  const { top, height } = planned.getBoundingClientRect();
  return top + height / 2;
}
