/**
 * Backups: what a page has not saved yet. The database may answer too late or not at all, so each change is left in local
 * storage first, which takes it at once; whatever ends the page, the next one saves it in its place. Each page has its own.
 */
import type { Work } from "../core/decisions/work";
import { createDrawings, drawingsOnce } from "../document/drawingsOnce";
import { CURRENT_VERSION } from "../document/upgrades";
import type { SavedWork } from "./library";
import { fieldsOf, readSavedWork, readStoredWork } from "./readSavedWork";
import { withoutSharedDrawing, withSharedDrawing } from "./sharedDrawing";

/** What a page left. */
export interface LeftBehind {
  /** Where it lies. */
  readonly key: string;
  /** The page that left it; null where an older one did, which had no name. */
  readonly tab: string | null;
  /** With the stamp of the version that it was made from. */
  readonly saved: SavedWork;
  /** How many saves of it that page had begun by then: what it saved later has all of this in it. */
  readonly begun: number;
  /** Whether the steps back and forward were left with it. */
  readonly hasHistory: boolean;
  /** The version that it was made from; null where it was new, or an older page left it. */
  readonly base: Work | null;
}

/** What a page leaves of a work. */
type LeftOf = Pick<LeftBehind, "saved" | "base" | "begun">;

export interface Backup {
  /**
   * @param whole whether its history is to be left too, which takes longer
   * @returns whether there was room
   */
  readonly write: (what: LeftOf, whole: boolean) => boolean;
  /** Leaves it to the next page for good: nothing that this page still does with the work touches it. */
  readonly giveUp: (what: Omit<LeftOf, "begun">) => void;
  /** For a work that was saved after all. */
  readonly discard: (id: string) => void;
  /** All that was left by any page; what cannot be read stays where it is. */
  readonly all: () => readonly LeftBehind[];
  readonly throwAway: (left: LeftBehind) => void;
  /** Leaves it to the page after this one, with all that this one still makes of it. */
  readonly handOn: (left: LeftBehind) => void;
}

const PREFIX = "bodicewright/unsaved/";

/**
 * @param storage where they are left; null where the browser has none to give
 * @param tab     the page's own name
 */
export function createBackup(storage: Storage | null, tab: string): Backup {
  const keyOf = (id: string): string => `${PREFIX}${tab}/${id}`;
  /** False where it could not be done: it is the second of two places, and the page says whether the first one keeps it. */
  const quietly = (action: (storage: Storage) => void): boolean => {
    try {
      if (storage === null) return false;
      action(storage);
      return true;
    } catch {
      return false;
    }
  };
  /** What was handed on was made from a version that no library of this page knows. */
  const roots = new Map<string, { readonly base: Work | null; readonly stamp: string }>();
  const put = (key: string, { saved, base, begun }: LeftOf, whole: boolean): boolean => {
    const { past, future, ...rest } = saved;
    const root = { base, ...roots.get(saved.id) };
    const lean = (step: Work | null): unknown => withoutSharedDrawing(step, saved.work);
    const made = {
      ...rest,
      work: drawingsOnce(saved.work),
      version: CURRENT_VERSION,
      begun,
      ...root,
      base: lean(root.base),
    };
    // The work matters more than its history, for which there may be no room.
    const isPut = quietly((into) => into.setItem(key, JSON.stringify(made)));
    if (whole)
      quietly((into) => into.setItem(key, JSON.stringify({ ...made, past: past.map(lean), future: future.map(lean) })));
    return isPut;
  };
  let givenUp = 0;
  return {
    write: (what, whole) => put(keyOf(what.saved.id), what, whole),
    giveUp: ({ saved, base }) => {
      givenUp += 1;
      put(`${PREFIX}${tab}-${givenUp}/${saved.id}`, { saved, base, begun: 0 }, true);
    },
    discard: (id) => void quietly((from) => from.removeItem(keyOf(id))),
    all: () => {
      const found: LeftBehind[] = [];
      quietly((from) => {
        for (const key of Array.from({ length: from.length }, (_, at) => from.key(at) ?? "")) {
          const left = key.startsWith(PREFIX) ? readBackup(key, from.getItem(key) ?? "") : null;
          if (left !== null) found.push(left);
        }
      });
      return found;
    },
    throwAway: ({ key }) => void quietly((from) => from.removeItem(key)),
    handOn: ({ key, saved, base, hasHistory }) => {
      roots.set(saved.id, { base, stamp: saved.stamp });
      // Where there is no room for another, it stays where it is.
      if (put(keyOf(saved.id), { saved, base, begun: 0 }, hasHistory)) quietly((from) => from.removeItem(key));
    },
  };
}

function readBackup(key: string, text: string): LeftBehind | null {
  const [, tab, id] = /^(?:([^/]*)\/)?(.*)$/s.exec(key.slice(PREFIX.length)) ?? [];
  if (id === undefined) return null;
  const data = parsed(text);
  const drawings = createDrawings();
  const saved = readSavedWork(id, data, data, drawings);
  if (!saved.ok) return null;
  const { version, work, base, past, begun } = fieldsOf(data);
  const from = readStoredWork(id, { version, work: withSharedDrawing(base, work) }, drawings);
  return {
    key,
    tab: tab ?? null,
    saved: saved.value,
    begun: typeof begun === "number" ? begun : 0,
    hasHistory: Array.isArray(past),
    base: from.ok ? from.value : null,
  };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
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
