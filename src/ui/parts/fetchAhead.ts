import type { Later } from "./later";

/** ms. Idle or not, the next part is not put off for longer: a sheet may be wanted at any time. */
const AT_MOST = 2000;
/** ms, where the browser does not say when it is idle. */
const REST = 200;

/** ms. No press is waited for longer: not every one is heard to end. */
const PRESSED_AT_MOST = 10_000;

/** Resolves when the browser has nothing else to do. */
export const idle = (): Promise<void> =>
  new Promise((resolve) => {
    if (typeof window.requestIdleCallback === "function") {
      window.requestIdleCallback(() => resolve(), { timeout: AT_MOST });
    } else window.setTimeout(resolve, REST);
  });

/** Resolves when nothing is pressed: what is fetched is run and its styles counted in, which a finger that drags would wait for. */
function handsOff(signal: AbortSignal): () => Promise<void> {
  let isPressed = false;
  let go: (() => void) | null = null;
  const heard = ({ buttons }: PointerEvent): void => {
    isPressed = buttons !== 0;
    if (isPressed) return;
    go?.();
    go = null;
  };
  for (const type of ["pointerdown", "pointerup", "pointercancel"] as const)
    window.addEventListener(type, heard, { capture: true, passive: true, signal });
  return () =>
    isPressed
      ? new Promise((resolve) => {
          go = resolve;
          window.setTimeout(resolve, PRESSED_AT_MOST);
        })
      : Promise.resolve();
}

/** Fetches parts one after the other whenever the browser has nothing else to do, until it is told to stop. */
export async function fetchAhead(
  parts: readonly Pick<Later<unknown>, "fetchAhead">[],
  { signal }: AbortController,
): Promise<void> {
  const ended = new AbortController();
  signal.addEventListener("abort", () => ended.abort());
  const free = handsOff(ended.signal);
  for (const part of parts) {
    await idle();
    await free();
    if (signal.aborted) return;
    await part.fetchAhead();
    if (signal.aborted) return;
  }
  ended.abort();
}
