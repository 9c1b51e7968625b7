/** Whether the open work is saved, as the page shows it. */
import { DELETED_WORDS, SAVING_WORDS, storageFailureSentence } from "../words/storage";
import type { StorageFailure } from "./library";
import type { SessionStore } from "./sessionState";

export interface StorageStatus {
  /** Something is not saved yet. */
  readonly saving: () => void;
  readonly saved: () => void;
  readonly failed: (failure: StorageFailure) => void;
  /** It was deleted for good in another tab, and stands on this page alone. */
  readonly deleted: () => void;
}

/** @param isLasting whether works outlast the page: what is kept only until it is closed is never called saved */
export function createStorageStatus(state: SessionStore, isLasting: boolean): StorageStatus {
  const show = (name: keyof typeof SAVING_WORDS): void => {
    if (isLasting && state.getState().storage.state !== name)
      state.setState({ storage: { state: name, words: SAVING_WORDS[name] } });
  };
  return {
    // What went wrong stays said until it has come right.
    saving: () => {
      if (state.getState().storage.state !== "failed") show("saving");
    },
    saved: () => show("saved"),
    deleted: () => state.setState({ storage: { state: "failed", words: DELETED_WORDS } }),
    failed: (failure) => state.setState({ storage: { state: "failed", words: storageFailureSentence(failure) } }),
  };
}
