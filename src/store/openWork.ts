/** Which work is open: what the library knows it by, and whether the page has changes of it that are not saved. */
import type { Work } from "../core/decisions/work";
import { freshId } from "./freshId";
import { NEW_STAMP, type SavedWork } from "./library";
import type { SessionStore } from "./sessionState";
import { isSameButUnread, toSave, type Versions, type WorkStore } from "./workStore";

export interface OpenWork {
  readonly id: () => string;
  /** As it is on the page, to be saved. */
  readonly current: () => SavedWork;
  /** As it was saved last, by this page or by another; null where it never was. */
  readonly base: () => Work | null;
  readonly stamp: () => string;
  readonly isUnsaved: () => boolean;
  /** Whether a save that is still to be heard of would put something else into the library than stands on the page. */
  readonly isUncertain: () => boolean;
  /** Whether the history on the page is the one saved last. */
  readonly isHistorySaved: (now: Versions) => boolean;
  /** Puts a work on the page in place of the one that was open. */
  readonly replace: (saved: SavedWork, isNew: boolean) => void;
  /** A save begins, and will have this stamp. It may reach the library although nothing is heard of it. */
  readonly begin: (saved: Versions) => string;
  /** All that a backup needs. */
  readonly left: () => { readonly saved: SavedWork; readonly base: Work | null; readonly begun: number };
  /** The version of that stamp, where this page was to save it. */
  readonly issued: (stamp: string) => Versions | undefined;
  /** This is what lies in the library now. */
  readonly markSaved: (saved: Versions, stamp: string) => void;
  /** Nothing lies in the library any more: it is to be saved again as it is. */
  readonly markGone: () => void;
  /** It goes on under another id, under which it was never saved. */
  readonly goOnAs: (id: string) => void;
}

/** Stamps tell which page saved, and its how manieth save it was. */
const stampOf = (tab: string, count: number): string => `${tab}.${count}`;

/** The how manieth save of that page a stamp is of; null where another page saved. */
export function countIn(stamp: string, tab: string): number | null {
  const count = stamp.startsWith(`${tab}.`) ? Number(stamp.slice(tab.length + 1)) : NaN;
  return Number.isInteger(count) ? count : null;
}

const RESTORED = "restored.";

/** The stamp of what another page saved for one that it took for gone. */
export const restoredStamp = (tab: string | null): string => `${RESTORED}${tab ?? ""}.${freshId()}`;

/** Whether another page saved what this one had left. */
export const isRestoredFor = (stamp: string, tab: string): boolean => stamp.startsWith(`${RESTORED}${tab}.`);

/** @param tab the name of this page */
export function createOpenWork(store: WorkStore, state: SessionStore, tab: string): OpenWork {
  const id = (): string => state.getState().openId;
  const issued = new Map<string, Versions>();
  let begun = 0;
  let stamp = NEW_STAMP;
  let isGone = false;
  let history: Pick<Versions, "past" | "future"> | null = null;
  /** The work as it was saved last; loading one is no change to save. */
  let base: Work | null = store.getState().work;
  const current = (): SavedWork => ({ id: id(), ...toSave(store.getState()), stamp });
  return {
    id,
    current,
    base: () => base,
    stamp: () => stamp,
    isUnsaved: () => isGone || toSave(store.getState()).work !== base,
    isUncertain: () => {
      const { work } = current();
      return [...issued.values()].some((version) => version.work !== work);
    },
    isHistorySaved: (now) =>
      history !== null && isSameList(now.past, history.past) && isSameList(now.future, history.future),
    replace: ({ id: newId, stamp: newStamp, work, past, future }, isNew) => {
      issued.clear();
      isGone = false;
      stamp = newStamp;
      base = isNew ? null : work;
      history = isNew ? null : { past, future };
      store.setState({ work, past, future, gesture: null });
      state.setState(({ shown }) => ({ openId: newId, shown: shown + 1 }));
    },
    begin: (saved) => {
      begun += 1;
      const next = stampOf(tab, begun);
      issued.set(next, saved);
      return next;
    },
    left: () => ({ saved: current(), base, begun }),
    issued: (one) => issued.get(one),
    markSaved: ({ work, past, future }, next) => {
      // None that was begun from an older version can reach the library any more.
      issued.clear();
      isGone = false;
      base = work;
      stamp = next;
      history = { past, future };
    },
    markGone: () => {
      isGone = true;
    },
    goOnAs: (newId) => {
      issued.clear();
      isGone = false;
      stamp = NEW_STAMP;
      base = null;
      history = null;
      state.setState({ openId: newId });
    },
  };
}

/** The step that a visit to a field makes is made anew at every key where something is unread: it is the same one all along. */
const isSameList = (a: readonly Work[], b: readonly Work[]): boolean =>
  a === b || (a.length === b.length && a.every((one, at) => isSameStep(one, b[at])));

const isSameStep = (a: Work, b: Work | undefined): boolean => b !== undefined && isSameButUnread(a, b);
