/** The works kept in this browser, each with its history. Every failure is an answer, never an exception. */
import { openDB, type DBSchema, type IDBPDatabase } from "idb";
import { fail, ok, type Result } from "../core/result";
import type { Work } from "../core/decisions/work";
import { CURRENT_VERSION } from "../document/upgrades";
import type { WorkFileFailure } from "../document/workFile";
import { readStored } from "./stored";

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

/** When it was saved, and its name; a damaged record may have anything for one that a key can be. */
type ListKey = [number, IDBValidKey];

interface Schema extends DBSchema {
  works: { key: string; value: Stored; indexes: { list: ListKey } };
  page: { key: string; value: string };
}

type Database = IDBPDatabase<Schema>;

export type StorageFailure =
  /** The browser keeps nothing for this page: blocked, private, or too old. */
  | { readonly code: "storage/unavailable"; readonly detail: string }
  | { readonly code: "storage/full"; readonly detail: string }
  | { readonly code: "storage/failed"; readonly detail: string }
  | { readonly code: "storage/missing"; readonly id: string }
  | { readonly code: "storage/damaged"; readonly id: string; readonly why: WorkFileFailure };

export interface Library {
  /** The last saved first. */
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
const DATABASE_VERSION = 2;
const LAST_OPEN = "last-open";

/** A work not saved yet. */
export const NEW_STAMP = "";

/** ms. A database that has not answered by then is taken for blocked, so that the page can begin. */
const PATIENCE = 4000;

/** Opens the library; a failure says why the browser keeps nothing. */
export async function openLibrary(
  name: string = DATABASE,
  patience: number = PATIENCE,
): Promise<Result<Library, StorageFailure>> {
  const connection = connectionTo(name, patience);
  try {
    await connection.get();
    return ok(libraryOver(connection));
  } catch (error) {
    return fail({ code: "storage/unavailable", detail: detailOf(error) });
  }
}

interface Connection {
  /** The open database, opened again where it was closed. */
  readonly get: () => Promise<Database>;
  readonly close: () => void;
}

function connectionTo(name: string, patience: number): Connection {
  let current: Promise<Database> | null = null;
  const close = (): void => {
    const closing = current;
    current = null;
    // One that failed to open has nothing to close.
    closing?.then((db) => db.close()).catch(() => {});
  };
  const open = (): Promise<Database> => {
    const opening = openDB<Schema>(name, DATABASE_VERSION, {
      upgrade(db, _from, _to, tx) {
        const works = db.objectStoreNames.contains("works")
          ? tx.objectStore("works")
          : db.createObjectStore("works", { keyPath: "id" });
        // The list is read from this index alone, without the works and their histories.
        if (!works.indexNames.contains("list")) works.createIndex("list", ["saved", "name"]);
        if (!db.objectStoreNames.contains("page")) db.createObjectStore("page");
      },
      // Another tab with a newer page must be able to upgrade.
      blocking: close,
      // The browser itself cut the connection, as when its data are cleared.
      terminated: () => {
        current = null;
      },
    });
    return inTime(opening, patience);
  };
  return {
    get: () => {
      current ??= open().catch((error: unknown) => {
        current = null;
        throw error;
      });
      return current;
    },
    close,
  };
}

function inTime(opening: Promise<Database>, patience: number): Promise<Database> {
  return new Promise((resolve, reject) => {
    let isLate = false;
    const timer = setTimeout(() => {
      isLate = true;
      reject(new Error("the database did not answer in time"));
    }, patience);
    opening.then(
      (db) => {
        clearTimeout(timer);
        if (isLate) db.close();
        else resolve(db);
      },
      (error: unknown) => {
        clearTimeout(timer);
        reject(error instanceof Error ? error : new Error(String(error)));
      },
    );
  });
}

function libraryOver({ get, close }: Connection): Library {
  return {
    list: () =>
      attempt(async () => {
        const db = await get();
        const tx = db.transaction("works");
        const ids = new Set(await tx.store.getAllKeys());
        const entries: KeptEntry[] = [];
        for (let at = await tx.store.index("list").openKeyCursor(null, "prev"); at !== null; at = await at.continue()) {
          const [, name] = at.key;
          entries.push({ id: at.primaryKey, name: typeof name === "string" ? name : "" });
          ids.delete(at.primaryKey);
        }
        // A damaged record may have no name to be listed by.
        return [...entries, ...[...ids].map((id) => ({ id, name: "" }))];
      }),
    load: async (id) => {
      const found = await attempt(async () => (await get()).get("works", id));
      if (!found.ok) return found;
      return found.value === undefined ? fail({ code: "storage/missing", id }) : readStored(id, found.value);
    },
    save: (kept) =>
      attempt(async () => {
        const db = await get();
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
        // Of the two the transaction knows why it failed, such as for want of room.
        const [put, done] = await Promise.allSettled([tx.store.put(stored), tx.done]);
        if (done.status === "rejected") throw done.reason;
        if (put.status === "rejected") throw put.reason;
        return { id, stamp };
      }),
    remove: (id) =>
      attempt(async () => {
        await (await get()).delete("works", id);
        return null;
      }),
    lastOpen: () => attempt(async () => (await (await get()).get("page", LAST_OPEN)) ?? null),
    setLastOpen: (id) =>
      attempt(async () => {
        await (await get()).put("page", id, LAST_OPEN);
        return null;
      }),
    close,
  };
}

async function attempt<T>(action: () => Promise<T>): Promise<Result<T, StorageFailure>> {
  try {
    return ok(await action());
  } catch (error) {
    const isFull = error instanceof Error && error.name === "QuotaExceededError";
    return fail({ code: isFull ? "storage/full" : "storage/failed", detail: detailOf(error) });
  }
}

const detailOf = (error: unknown): string =>
  error instanceof Error ? `${error.name}: ${error.message}` : String(error);
