import { useEffect, useRef } from "react";

const waiting = new Set<() => void>();
const keepAll = (): void => {
  for (const keep of waiting) keep();
};

// Heard before anybody who saves the work when the page goes: at the window, listeners are called in the order in which they
// came, and these come with the page's code, before anything of it is shown.
window.addEventListener("pagehide", keepAll, true);
window.addEventListener(
  "visibilitychange",
  () => {
    if (document.visibilityState === "hidden") keepAll();
  },
  true,
);

/**
 * Keeps what is typed but not yet left when the page goes away: on a reload, a closed tab, a phone put away.
 *
 * @param keep what to do with it; null while nothing waits
 */
export function useKeptOnHide(keep: (() => void) | null): void {
  const latest = useRef(keep);
  useEffect(() => {
    latest.current = keep;
  });
  const waits = keep !== null;
  useEffect(() => {
    if (!waits) return;
    const keepLatest = (): void => latest.current?.();
    waiting.add(keepLatest);
    return () => void waiting.delete(keepLatest);
  }, [waits]);
}
