import { useLayoutEffect, useState, type RefObject } from "react";

/**
 * Pixels from the top of the table to where its rows of tools end, however many lines they take; 0 where nothing is laid out.
 * A row that is only unfolded for a moment does not count: the pieces would jump away from under it.
 */
export function useToolsRoom(ref: RefObject<HTMLElement | null>): number {
  const [room, setRoom] = useState(0);
  useLayoutEffect(() => {
    const tools = ref.current;
    if (tools === null) return;
    const measure = (): void => {
      const rows = [...tools.querySelectorAll<HTMLElement>(".table-tool-row:not([data-open])")];
      const ends = rows.map(({ offsetTop, offsetHeight }) => (offsetHeight > 0 ? offsetTop + offsetHeight : 0));
      const end = Math.max(0, ...ends);
      setRoom(end > 0 ? tools.offsetTop + end : 0);
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(tools);
    return () => observer.disconnect();
  }, [ref]);
  return room;
}
