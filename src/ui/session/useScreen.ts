/** What the screen is like, where the page has to do another thing on it and not only look another way. */
import { useSyncExternalStore } from "react";

/** A phone, upright or on its side, or a narrow tablet: the tools lie under the thumb. The same as in app.css. */
const THUMB = "(width < 52rem), (width < 74rem) and (height < 34rem)";

/** A phone on its side: what stands over the step upright stands beside it. */
const SIDEWAYS = "(36rem <= width < 74rem) and (height < 34rem)";

/** A finger types on keys that the screen draws. */
const FINGER = `(pointer: coarse), ${THUMB}`;

/** Asked at every drawing of a field, and again whenever the work changes: the browser is asked for its list but once. */
function mediaHook(query: string): () => boolean {
  let known: MediaQueryList | undefined;
  /** Undefined where nothing is drawn, as under Node. */
  const list = (): MediaQueryList | undefined =>
    (known ??= "matchMedia" in window ? window.matchMedia(query) : undefined);
  const subscribe = (onChange: () => void): (() => void) => {
    list()?.addEventListener("change", onChange);
    return () => list()?.removeEventListener("change", onChange);
  };
  const matches = (): boolean => list()?.matches === true;
  return () => useSyncExternalStore(subscribe, matches);
}

/** Whether undo, pieces and ledger lie in a bar under the thumb. */
export const useThumbBar = mediaHook(THUMB);

/** Whether pieces and ledger stand beside the step, one in place of the other. */
export const useSideways = mediaHook(SIDEWAYS);

/** Whether lengths are typed on keys that the screen draws, which know no fractions. */
export const useDrawnKeys = mediaHook(FINGER);
