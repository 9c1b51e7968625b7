import type { Later } from "./later";

/** ms. Idle or not, the next part is not put off for longer: a sheet may be wanted at any time. */
const AT_MOST = 2000;
/** ms, where the browser does not say when it is idle. */
const REST = 200;

/** Resolves when the browser has nothing else to do. */
export const idle = (): Promise<void> =>
  new Promise((resolve) => {
    if (typeof window.requestIdleCallback === "function") {
      window.requestIdleCallback(() => resolve(), { timeout: AT_MOST });
    } else window.setTimeout(resolve, REST);
  });

/** Fetches parts one after the other whenever the browser has nothing else to do, until it is told to stop. */
export async function fetchAhead(
  parts: readonly Pick<Later<unknown>, "fetchAhead">[],
  { signal }: AbortController,
): Promise<void> {
  for (const part of parts) {
    await idle();
    if (signal.aborted) return;
    await part.fetchAhead();
    if (signal.aborted) return;
  }
}
