/**
 * What a hand means on the table besides moving it: a long press or the other button asks what lies there, two taps look at it
 * closely. And what is not meant: while a dart is held or a pen draws, no other finger and no palm moves anything.
 */
import { useEffect, useRef, type RefObject } from "react";
import { targetAt, targetOf, type SheetTarget } from "./sheetTarget";

export interface Asked {
  readonly target: SheetTarget;
  /** On the screen, in pixels. */
  readonly x: number;
  readonly y: number;
  /** Where the focus goes back to. */
  readonly from: Element;
}

export interface SheetHand {
  readonly onAsk: (asked: Asked) => void;
  readonly onTwoTaps: (target: SheetTarget) => void;
}

/** ms: a press that lasts so long asks; the second tap comes before. */
const HOLD = 500;
const TWO_TAPS = 350;
/** Pixels: a press that moves further is a drag; a second tap lies no further off. */
const STILL = 8;
const SAME_PLACE = 24;

export function useSheetHand(ref: RefObject<SVGSVGElement | null>, hand: SheetHand): void {
  const now = useRef(hand);
  useEffect(() => {
    now.current = hand;
  });
  useEffect(() => {
    const svg = ref.current;
    return svg === null ? undefined : listen(svg, () => now.current);
  }, [ref]);
}

/** Where one finger scrolls the page, two would as well. */
const onTouch = (event: TouchEvent): void => {
  if (event.touches.length > 1 && event.cancelable) event.preventDefault();
};

function listen(svg: SVGSVGElement, hand: () => SheetHand): () => void {
  const going = new AbortController();
  const { signal } = going;
  /** Pointers that are down on the table, each with where it began. */
  const down = new Map<number, { x: number; y: number; kind: string; at: number; isStill: boolean; isHeld: boolean }>();
  let timer = 0;
  /** When it was last asked, and by what, so that the browser's own event for the same is not another. */
  let askedAt = -Infinity;
  /** The finger that asked is still down: letting go of what it pressed does nothing more. */
  let hasAsked = false;
  let tap = { x: 0, y: 0, at: -Infinity };

  const letGo = (pointerId: number, from: Element): void => {
    down.delete(pointerId);
    from.dispatchEvent(new PointerEvent("pointercancel", { pointerId }));
  };
  const ask = (target: SheetTarget, x: number, y: number, from: Element, at: number): void => {
    window.clearTimeout(timer);
    askedAt = at;
    hand().onAsk({ target, x, y, from });
  };
  const focusable = (element: Element): Element => element.closest(".handle") ?? svg;

  const onDown = (event: PointerEvent): void => {
    window.clearTimeout(timer);
    hasAsked = false;
    if (!(event.target instanceof Element)) return;
    const others = [...down];
    const isPalm = event.pointerType === "touch" && others.some(([, { kind }]) => kind === "pen");
    if (isPalm || others.some(([, { isHeld }]) => isHeld)) {
      event.stopPropagation();
      event.preventDefault();
      return;
    }
    const { pointerId, clientX: x, clientY: y, target, pointerType: kind } = event;
    const isHeld = event.button === 0 && event.isPrimary && target.closest(".handle") !== null;
    // A palm that lay there before does not go on moving the table under what is held now.
    if (isHeld || kind === "pen") for (const [id] of others) letGo(id, svg);
    down.set(pointerId, { x, y, kind, at: event.timeStamp, isStill: true, isHeld });
    // Who is slow to begin a drag is not broken off: a handle is asked about when it is let go.
    if (kind === "mouse" || event.button !== 0 || down.size > 1 || isHeld) return;
    timer = window.setTimeout(() => {
      // What was pressed is not dragged any more.
      letGo(pointerId, focusable(target));
      hasAsked = true;
      ask(targetAt(svg, x, y), x, y, focusable(target), performance.now());
    }, HOLD);
  };
  const onMove = (event: PointerEvent): void => {
    const from = down.get(event.pointerId);
    if (from === undefined || Math.hypot(event.clientX - from.x, event.clientY - from.y) <= STILL) return;
    from.isStill = false;
    window.clearTimeout(timer);
  };
  let wasTap = false;
  const onUp = (event: PointerEvent): void => {
    if (down.has(event.pointerId)) window.clearTimeout(timer);
    const from = down.get(event.pointerId);
    const isUp = event.type === "pointerup" && from?.isStill === true;
    wasTap = isUp && down.size === 1;
    down.delete(event.pointerId);
    if (!isUp || !from.isHeld || from.kind === "mouse" || !(event.target instanceof Element)) return;
    if (event.timeStamp - from.at < HOLD) return;
    hasAsked = true;
    ask(targetAt(svg, from.x, from.y), from.x, from.y, focusable(event.target), performance.now());
  };
  const onClick = (event: MouseEvent): void => {
    const isTap = wasTap;
    wasTap = false;
    if (!isTap || (event.target instanceof Element && event.target.closest(".handle") !== null)) return;
    const { clientX: x, clientY: y, timeStamp: at } = event;
    const isSecond = at - tap.at < TWO_TAPS && Math.hypot(x - tap.x, y - tap.y) < SAME_PLACE;
    tap = { x, y, at: isSecond ? -Infinity : at };
    if (isSecond) hand().onTwoTaps(targetAt(svg, x, y));
  };
  const onContextMenu = (event: MouseEvent): void => {
    event.preventDefault();
    if (event.timeStamp - askedAt < 2 * HOLD || !(event.target instanceof Element)) return;
    // The system's own long press on a handle that a finger holds.
    if ([...down.values()].some(({ isHeld, kind }) => isHeld && kind !== "mouse")) return;
    const { clientX: x, clientY: y, target } = event;
    for (const [id] of down) letGo(id, focusable(target));
    ask(targetAt(svg, x, y), x, y, focusable(target), -Infinity);
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.key !== "ContextMenu" && !(event.key === "F10" && event.shiftKey)) return;
    if (!(event.target instanceof Element)) return;
    event.preventDefault();
    const { left, top, width, height } = event.target.getBoundingClientRect();
    const at = event.target === svg ? { x: left, y: top } : { x: left + width / 2, y: top + height / 2 };
    ask(targetOf(event.target), at.x, at.y, event.target, event.timeStamp);
  };
  // The focus stays in the menu.
  const onMouseDown = (event: MouseEvent): void => {
    if (hasAsked) event.preventDefault();
  };
  svg.addEventListener("pointerdown", onDown, { capture: true, signal });
  svg.addEventListener("pointermove", onMove, { capture: true, signal });
  window.addEventListener("pointerup", onUp, { capture: true, signal });
  window.addEventListener("pointercancel", onUp, { capture: true, signal });
  svg.addEventListener("mousedown", onMouseDown, { capture: true, signal });
  svg.addEventListener("click", onClick, { signal });
  svg.addEventListener("contextmenu", onContextMenu, { signal });
  svg.addEventListener("keydown", onKey, { signal });
  svg.addEventListener("touchstart", onTouch, { passive: false, signal });
  svg.addEventListener("touchmove", onTouch, { passive: false, signal });
  return () => {
    window.clearTimeout(timer);
    going.abort();
  };
}
