/**
 * What was not saved yet when the page went. The database answers too late then, so the work is left where it can be put
 * at once, and the next page saves it in its place.
 */
import { CURRENT_VERSION } from "../document/upgrades";
import type { KeptWork } from "./library";
import { readStored } from "./stored";

export interface Parting {
  readonly leave: (kept: KeptWork) => void;
  /** It was saved after all. */
  readonly forget: (id: string) => void;
  /** Everything left behind, which is then there no longer. What cannot be read stays. */
  readonly take: () => readonly KeptWork[];
}

const PREFIX = "bodicewright/unsaved/";

/** @param box where it is put; null where the browser has none to give */
export function partingIn(box: Storage | null): Parting {
  const quietly = (action: (box: Storage) => void): void => {
    try {
      if (box !== null) action(box);
    } catch {
      // The page is going: there is nobody left to be told.
    }
  };
  return {
    leave: (kept) => {
      const write = (past: KeptWork["past"], future: KeptWork["future"]) => (into: Storage) =>
        into.setItem(`${PREFIX}${kept.id}`, JSON.stringify({ ...kept, version: CURRENT_VERSION, past, future }));
      // The work matters more than its history, for which there may be no room.
      quietly(write([], []));
      quietly(write(kept.past, kept.future));
    },
    forget: (id) => quietly((from) => from.removeItem(`${PREFIX}${id}`)),
    take: () => {
      const found: KeptWork[] = [];
      quietly((from) => {
        const keys = Array.from({ length: from.length }, (_, at) => from.key(at) ?? "").filter((key) =>
          key.startsWith(PREFIX),
        );
        for (const key of keys) {
          const kept = readLeft(key.slice(PREFIX.length), from.getItem(key) ?? "");
          if (kept === null) continue;
          found.push(kept);
          from.removeItem(key);
        }
      });
      return found;
    },
  };
}

function readLeft(id: string, text: string): KeptWork | null {
  try {
    const read = readStored(id, JSON.parse(text));
    return read.ok ? read.value : null;
  } catch {
    return null;
  }
}

/** The page's own box; a browser that forbids it may throw at the mere mention. */
export function pageBox(): Storage | null {
  try {
    return localStorage;
  } catch {
    return null;
  }
}
