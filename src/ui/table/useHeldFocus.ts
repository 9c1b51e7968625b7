import { useEffect } from "react";

/** Where something stood that went from the page: inside what, and before what. */
interface Stood {
  readonly parent: Element;
  readonly next: Node | null;
}

/** ms for whatever sees to its own focus. */
const FIRST_TURN = 50;

/**
 * Where what holds the focus goes from the page, as a button does that has done its work, the focus goes on to what stood after
 * it: whoever works by keys is not thrown back to the top. It comes with the table, since little goes before.
 */
export function useHeldFocus(): void {
  useEffect(() => {
    let held: Element | null = null;
    let isByKeys = false;
    let given: HTMLElement | null = null;
    let later = 0;
    const hold = ({ target }: FocusEvent): void => {
      held = target instanceof Element ? target : null;
      if (held !== given) given = null;
    };
    const letGo = ({ target }: FocusEvent): void => {
      // Some browsers tell of it too where it goes from the page: then it is not she who left it.
      window.setTimeout(() => {
        if (held === target && held?.isConnected === true && document.activeElement !== held) held = null;
      }, 0);
    };
    const byKeys = (event: KeyboardEvent): void => {
      isByKeys = true;
      // A key that is held too long must not press the next one as well.
      if (event.repeat && event.target === given) event.preventDefault();
    };
    const byPointer = (): void => {
      isByKeys = false;
    };
    const observer = new MutationObserver((records) => {
      if (held === null || held.isConnected) return;
      const stood = placeOf(held, records);
      held = null;
      window.clearTimeout(later);
      // By a pointer nothing is lost: it is where it is, and the next key must not press what she did not choose.
      if (!isByKeys) return;
      // What sees to it itself has the first turn.
      later = window.setTimeout(() => {
        if (document.activeElement !== document.body) return;
        given = nextFrom(stood);
        given?.focus();
      }, FIRST_TURN);
    });
    observer.observe(document.body, { childList: true, subtree: true });
    document.addEventListener("focusin", hold);
    document.addEventListener("focusout", letGo);
    document.addEventListener("keydown", byKeys, true);
    document.addEventListener("pointerdown", byPointer, true);
    return () => {
      window.clearTimeout(later);
      observer.disconnect();
      document.removeEventListener("focusin", hold);
      document.removeEventListener("focusout", letGo);
      document.removeEventListener("keydown", byKeys, true);
      document.removeEventListener("pointerdown", byPointer, true);
    };
  }, []);
}

/** Where it stood, or what it went with; null where nothing is told of it. */
function placeOf(gone: Element, records: readonly MutationRecord[]): Stood | null {
  const removing = (node: Node): MutationRecord | undefined =>
    records.find(({ removedNodes }) => [...removedNodes].some((removed) => removed.contains(node)));
  const record = removing(gone);
  if (record === undefined || !(record.target instanceof Element)) return null;
  const { target: parent } = record;
  if (!parent.isConnected) return placeOf(parent, records);
  let next = record.nextSibling;
  // What stood after it may have gone with it.
  while (next !== null && !next.isConnected) next = removing(next)?.nextSibling ?? null;
  return { parent, next };
}

/** No end of a dart: it would be chosen by that. */
const FOCUSABLE = "button, a[href], input, select, textarea, summary, [tabindex='0']:not(.handle)";

/** What comes after it, or else before, in the same part of the page; at last the step itself. */
function nextFrom(stood: Stood | null): HTMLElement | null {
  let next = stood?.next ?? null;
  for (let place = stood?.parent ?? null; place !== null && !place.matches(".app, body"); place = place.parentElement) {
    const all = [...place.querySelectorAll<HTMLElement>(FOCUSABLE)].filter(canBeTaken);
    const after = next?.isConnected === true ? next : null;
    const found = all.find((one) => after !== null && isFrom(after, one)) ?? all.at(-1);
    if (found !== undefined) return found;
    next = place.nextSibling;
  }
  return document.getElementById("step");
}

const canBeTaken = (element: HTMLElement): boolean =>
  element.tabIndex >= 0 && !element.matches(":disabled") && element.checkVisibility({ visibilityProperty: true });

const isFrom = (first: Node, element: Element): boolean =>
  first.contains(element) || (first.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;
