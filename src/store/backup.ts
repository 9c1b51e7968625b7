/**
 * Backups of what was not saved yet when the page closed. The database answers too late then, so the work is left in
 * local storage, which takes it at once, and the next page saves it in its place.
 */
import { CURRENT_VERSION } from "../document/upgrades";
import type { SavedWork } from "./library";
import { readSavedWork } from "./readSavedWork";

export interface Backup {
  readonly write: (work: SavedWork) => void;
  /** For a work that was saved after all. */
  readonly discard: (id: string) => void;
  /** All backups, which are then there no longer. What cannot be read stays. */
  readonly takeAll: () => readonly SavedWork[];
}

const PREFIX = "bodicewright/unsaved/";

/** @param storage where they are left; null where the browser has none to give */
export function createBackup(storage: Storage | null): Backup {
  const quietly = (action: (storage: Storage) => void): void => {
    try {
      if (storage !== null) action(storage);
    } catch {
      // The page is closing: there is nobody left to be told.
    }
  };
  return {
    write: (saved) => {
      const write = (past: SavedWork["past"], future: SavedWork["future"]) => (into: Storage) =>
        into.setItem(`${PREFIX}${saved.id}`, JSON.stringify({ ...saved, version: CURRENT_VERSION, past, future }));
      // The work matters more than its history, for which there may be no room.
      quietly(write([], []));
      quietly(write(saved.past, saved.future));
    },
    discard: (id) => quietly((from) => from.removeItem(`${PREFIX}${id}`)),
    takeAll: () => {
      const found: SavedWork[] = [];
      quietly((from) => {
        const keys = Array.from({ length: from.length }, (_, at) => from.key(at) ?? "").filter((key) =>
          key.startsWith(PREFIX),
        );
        for (const key of keys) {
          const saved = readBackup(key.slice(PREFIX.length), from.getItem(key) ?? "");
          if (saved === null) continue;
          found.push(saved);
          from.removeItem(key);
        }
      });
      return found;
    },
  };
}

function readBackup(id: string, text: string): SavedWork | null {
  try {
    const read = readSavedWork(id, JSON.parse(text));
    return read.ok ? read.value : null;
  } catch {
    return null;
  }
}

/** The page's own local storage; a browser that forbids it may throw at the mere mention. */
export function pageStorage(): Storage | null {
  try {
    return localStorage;
  } catch {
    return null;
  }
}
