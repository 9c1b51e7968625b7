/** The works kept in this browser, each with its history. Every failure is an answer, never an exception. */
import { openDB, type DBSchema, type IDBPDatabase } from "idb";
import { fail, ok, type Result } from "../core/result";
import type { Work } from "../core/plan/work";
import { CURRENT_VERSION } from "../document/upgrades";
import { readWorkFile, type WorkFileFailure } from "../document/workFile";

export interface KeptWork {
  readonly id: string;
  readonly work: Work;
  readonly past: readonly Work[];
  readonly future: readonly Work[];
  /** Changes with every save, so that a save by another tab is noticed. */
  readonly stamp: string;
}

export interface KeptEntry {
  readonly id: string;
  readonly name: string;
}

/** As it lies in the database: whatever version wrote it. */
interface Stored {
  readonly id: string;
  readonly name: string;
  readonly stamp: string;
  /** Milliseconds, for the order of the list. */
  readonly saved: number;
  readonly version: number;
  readonly work: unknown;
  readonly past: readonly unknown[];
  readonly future: readonly unknown[];
}

interface Schema extends DBSchema {
  works: { key: string; value: Stored };
  page: { key: string; value: string };
}

export type StorageFailure =
  /** The browser keeps nothing for this page: blocked, private, or too old. */
  | { readonly code: "storage/unavailable"; readonly detail: string }
  | { readonly code: "storage/full"; readonly detail: string }
  | { readonly code: "storage/failed"; readonly detail: string }
  | { readonly code: "storage/missing"; readonly id: string }
  | { readonly code: "storage/damaged"; readonly id: string; readonly why: WorkFileFailure };

export interface Library {
  readonly list: () => Promise<Result<readonly KeptEntry[], StorageFailure>>;
  readonly load: (id: string) => Promise<Result<KeptWork, StorageFailure>>;
  /**
   * Saves a work under its id. Where another tab has saved that id since `stamp`, theirs is left alone and this one is
   * kept under a new id, so that neither is lost.
   */
  readonly save: (kept: KeptWork) => Promise<Result<{ readonly id: string; readonly stamp: string }, StorageFailure>>;
  readonly remove: (id: string) => Promise<Result<null, StorageFailure>>;
  readonly lastOpen: () => Promise<Result<string | null, StorageFailure>>;
  readonly setLastOpen: (id: string) => Promise<Result<null, StorageFailure>>;
  readonly close: () => void;
}

const DATABASE = "bodicewright";
const LAST_OPEN = "last-open";

/** A work not saved yet. */
export const NEW_STAMP = "";

/** Opens the library; a failure says why the browser keeps nothing. */
export async function openLibrary(name: string = DATABASE): Promise<Result<Library, StorageFailure>> {
  try {
    const db = await openDB<Schema>(name, 1, {
      upgrade(fresh) {
        fresh.createObjectStore("works", { keyPath: "id" });
        fresh.createObjectStore("page");
      },
      // Another tab with a newer page must be able to upgrade.
      blocking: (_from, _to, event) => {
        if (event.target instanceof IDBDatabase) event.target.close();
      },
    });
    return ok(libraryOver(db));
  } catch (error) {
    return fail({ code: "storage/unavailable", detail: detailOf(error) });
  }
}

function libraryOver(db: IDBPDatabase<Schema>): Library {
  return {
    list: () =>
      attempt(async () => {
        const all = await db.getAll("works");
        return all.toSorted((a, b) => b.saved - a.saved).map((stored) => ({ id: stored.id, name: stored.name }));
      }),
    load: async (id) => {
      const found = await attempt(() => db.get("works", id));
      if (!found.ok) return found;
      return found.value === undefined ? fail({ code: "storage/missing", id }) : readStored(found.value);
    },
    save: (kept) =>
      attempt(async () => {
        const tx = db.transaction("works", "readwrite");
        const before = await tx.store.get(kept.id);
        const isOthers = before !== undefined && before.stamp !== kept.stamp;
        const id = isOthers ? crypto.randomUUID() : kept.id;
        const stamp = crypto.randomUUID();
        const stored: Stored = {
          id,
          name: kept.work.name,
          stamp,
          saved: Date.now(),
          version: CURRENT_VERSION,
          work: kept.work,
          past: kept.past,
          future: kept.future,
        };
        await Promise.all([tx.store.put(stored), tx.done]);
        return { id, stamp };
      }),
    remove: (id) =>
      attempt(async () => {
        await db.delete("works", id);
        return null;
      }),
    lastOpen: () => attempt(async () => (await db.get("page", LAST_OPEN)) ?? null),
    setLastOpen: (id) =>
      attempt(async () => {
        await db.put("page", id, LAST_OPEN);
        return null;
      }),
    close: () => db.close(),
  };
}

/** A work as kept, parsed like any file; steps of the history that no longer parse are dropped, the work itself is not. */
function readStored(stored: Stored): Result<KeptWork, StorageFailure> {
  const read = (work: unknown): Result<Work, WorkFileFailure> =>
    readWorkFile(JSON.stringify({ bodicewright: "work", version: stored.version, work }));
  const work = read(stored.work);
  if (!work.ok) return fail({ code: "storage/damaged", id: stored.id, why: work.failure });
  const steps = (list: readonly unknown[]): readonly Work[] =>
    (Array.isArray(list) ? list : []).flatMap((step) => {
      const one = read(step);
      return one.ok ? [one.value] : [];
    });
  return ok({ id: stored.id, stamp: stored.stamp, work: work.value, past: steps(stored.past), future: steps(stored.future) });
}

async function attempt<T>(action: () => Promise<T>): Promise<Result<T, StorageFailure>> {
  try {
    return ok(await action());
  } catch (error) {
    const full = error instanceof DOMException && error.name === "QuotaExceededError";
    return fail({ code: full ? "storage/full" : "storage/failed", detail: detailOf(error) });
  }
}

const detailOf = (error: unknown): string => (error instanceof Error ? `${error.name}: ${error.message}` : String(error));
