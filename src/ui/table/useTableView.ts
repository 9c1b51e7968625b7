/** Pan and zoom of the table: mouse, wheel, one finger, two fingers, keys. */
import { useCallback, useEffect, useLayoutEffect, useRef, useState, type RefObject } from "react";
import type { Box } from "../../drawing/index";
import { panBy, TABLE_SIGHT, zoomAt, type Sight, type Size, type View } from "./view";

const WHEEL_ZOOM = 0.004;
/** Pixels of a wheel that counts in lines. */
const WHEEL_LINE = 16;
export const ZOOM_STEP = 1.3;
const KEY_PAN = 40;

export interface TableView {
  readonly view: View;
  readonly size: Size;
  readonly fit: (box: Box) => void;
  /** Shows everything again, whatever lies there. */
  readonly showAll: () => void;
  readonly zoom: (factor: number) => void;
  readonly onKeyDown: (event: React.KeyboardEvent) => void;
  readonly onPointerDown: (event: React.PointerEvent) => void;
}

export function useTableView(ref: RefObject<SVGSVGElement | null>, box: Box, sight: Sight = TABLE_SIGHT): TableView {
  const [size, setSize] = useState<Size>({ width: 800, height: 600 });
  const [own, setOwn] = useState<View | null>(null);
  // Until she moves it herself, the table shows everything, whatever its size and whatever lies on it.
  const view = own ?? sight.fit(box, size);
  const now = useRef({ view, size, sight });
  useLayoutEffect(() => {
    now.current = { view, size, sight };
  });

  useLayoutEffect(() => {
    const svg = ref.current;
    if (svg === null) return;
    const measure = (): void => {
      const { width, height } = svg.getBoundingClientRect();
      if (width > 0 && height > 0) setSize({ width, height });
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(svg);
    return () => observer.disconnect();
  }, [ref]);

  const change = useCallback((next: (view: View) => View) => {
    const moved = next(now.current.view);
    now.current = { ...now.current, view: moved };
    setOwn(moved);
  }, []);

  useEffect(() => {
    const svg = ref.current;
    if (svg === null) return;
    const onWheel = (event: WheelEvent): void => {
      event.preventDefault();
      const unit = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? WHEEL_LINE : 1;
      // Two fingers on a trackpad arrive as a wheel, a pinch on it as a wheel with Ctrl.
      if (!event.ctrlKey && !event.metaKey) return change((v) => panBy(v, -event.deltaX * unit, -event.deltaY * unit));
      const { left, top } = svg.getBoundingClientRect();
      const factor = Math.min(ZOOM_STEP, Math.max(1 / ZOOM_STEP, Math.exp(-event.deltaY * unit * WHEEL_ZOOM)));
      change((v) => zoomAt(v, factor, event.clientX - left, event.clientY - top, now.current.sight));
    };
    // React listens passively; the page must not scroll under the table.
    svg.addEventListener("wheel", onWheel, { passive: false });
    return () => svg.removeEventListener("wheel", onWheel);
  }, [ref, change]);

  const fingers = useRef(new Map<number, { x: number; y: number }>());
  const onPointerDown = useCallback(
    (event: React.PointerEvent) => {
      const svg = ref.current;
      // A third finger has no say.
      if (svg === null || event.button !== 0 || fingers.current.size > 1) return;
      svg.setPointerCapture(event.pointerId);
      fingers.current.set(event.pointerId, { x: event.clientX, y: event.clientY });
      if (fingers.current.size > 1) return;
      const onMove = (move: PointerEvent): void => {
        const before = fingers.current.get(move.pointerId);
        if (before === undefined) return;
        const after = { x: move.clientX, y: move.clientY };
        const other = [...fingers.current].find(([id]) => id !== move.pointerId)?.[1];
        fingers.current.set(move.pointerId, after);
        if (other === undefined) return change((v) => panBy(v, after.x - before.x, after.y - before.y));
        const { left, top } = svg.getBoundingClientRect();
        const apart = (p: { x: number; y: number }): number => Math.hypot(p.x - other.x, p.y - other.y);
        const factor = apart(after) / Math.max(1, apart(before));
        const middle = { x: (after.x + other.x) / 2, y: (after.y + other.y) / 2 };
        change((v) =>
          zoomAt(
            panBy(v, (after.x - before.x) / 2, (after.y - before.y) / 2),
            factor,
            middle.x - left,
            middle.y - top,
            now.current.sight,
          ),
        );
      };
      const onEnd = (end: PointerEvent): void => {
        fingers.current.delete(end.pointerId);
        if (fingers.current.size > 0) return;
        svg.removeEventListener("pointermove", onMove);
        svg.removeEventListener("pointerup", onEnd);
        svg.removeEventListener("pointercancel", onEnd);
      };
      svg.addEventListener("pointermove", onMove);
      svg.addEventListener("pointerup", onEnd);
      svg.addEventListener("pointercancel", onEnd);
    },
    [ref, change],
  );

  const zoom = useCallback(
    (factor: number) =>
      change((v) => zoomAt(v, factor, now.current.size.width / 2, now.current.size.height / 2, now.current.sight)),
    [change],
  );
  const fit = useCallback((to: Box) => change(() => now.current.sight.fit(to, now.current.size)), [change]);

  const onKeyDown = (event: React.KeyboardEvent): void => {
    if (event.target !== event.currentTarget) return;
    const moves: Readonly<Record<string, () => void>> = {
      ArrowLeft: () => change((v) => panBy(v, KEY_PAN, 0)),
      ArrowRight: () => change((v) => panBy(v, -KEY_PAN, 0)),
      ArrowUp: () => change((v) => panBy(v, 0, KEY_PAN)),
      ArrowDown: () => change((v) => panBy(v, 0, -KEY_PAN)),
      "+": () => zoom(ZOOM_STEP),
      "=": () => zoom(ZOOM_STEP),
      "-": () => zoom(1 / ZOOM_STEP),
      "0": () => setOwn(null),
    };
    const move = moves[event.key];
    if (move === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    move();
  };

  const showAll = useCallback(() => setOwn(null), []);
  return { view, size, fit, showAll, zoom, onKeyDown, onPointerDown };
}
