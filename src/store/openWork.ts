/** Which work is open: what the library knows it by, and whether the page has changes of it that are not saved. */
import type { Work } from "../core/decisions/work";
import { NEW_STAMP, type SavedWork, type SaveReceipt } from "./library";
import type { SessionStore } from "./sessionState";
import { type WorkStore } from "./workStore";

export interface OpenWork {
  readonly id: () => string;
  /** As it is on the page, to be saved. */
  readonly current: () => SavedWork;
  readonly isUnsaved: () => boolean;
  /** Puts a saved work on the page in place of the one that was open. */
  readonly replace: (saved: SavedWork) => void;
  /** It was saved as it was then; perhaps under another id, by which it then goes on. */
  readonly markSaved: (work: Work, receipt: SaveReceipt) => void;
  /** It is still to be saved, although nothing was changed. */
  readonly markUnsaved: () => void;
  /** Nothing of it is to be saved any more. */
  readonly giveUpChanges: () => void;
}

export function createOpenWork(store: WorkStore, state: SessionStore): OpenWork {
  const id = (): string => state.getState().openId;
  let stamp = NEW_STAMP;
  /** The work as it was saved last; loading one is no change to save. */
  let saved: Work | null = store.getState().work;
  return {
    id,
    current: () => {
      const { work, past, future } = store.getState();
      return { id: id(), work, past, future, stamp };
    },
    isUnsaved: () => store.getState().work !== saved,
    replace: (other) => {
      stamp = other.stamp;
      saved = other.work;
      store.setState({ work: other.work, past: other.past, future: other.future, gesture: null });
      state.setState(({ shown }) => ({ openId: other.id, shown: shown + 1 }));
    },
    markSaved: (work, receipt) => {
      saved = work;
      stamp = receipt.stamp;
      if (receipt.id !== id()) state.setState({ openId: receipt.id });
    },
    markUnsaved: () => {
      saved = null;
    },
    giveUpChanges: () => {
      saved = store.getState().work;
    },
  };
}
