/** The browser's database of works: its tables, and a connection that is opened again where it was closed. */
import { openDB, type DBSchema, type IDBPDatabase, type IDBPTransaction } from "idb";

/** What is known of a work without reading it, so that a list of works reads none of them. */
export interface EntryRecord {
  readonly id: string;
  readonly name: string;
  readonly wearer?: string;
  readonly stamp: string;
  /** Milliseconds since 1970. */
  readonly saved: number;
  /** When it was put in the bin, where it lies there. */
  readonly binned?: number;
}

/** A work as it lies in the database: whatever version wrote it. */
export interface WorkRecord {
  readonly id: string;
  readonly stamp: string;
  readonly version: unknown;
  readonly work: unknown;
}

/** Its steps back and forward, by themselves: a key that is typed makes none, and they are many. */
interface HistoryRecord {
  readonly id: string;
  readonly version: unknown;
  readonly past: readonly unknown[];
  readonly future: readonly unknown[];
}

interface Schema extends DBSchema {
  works: { key: string; value: WorkRecord };
  entries: { key: string; value: EntryRecord };
  histories: { key: string; value: HistoryRecord };
  page: { key: string; value: string };
}

type Table = "works" | "entries" | "histories" | "page";
type Database = IDBPDatabase<Schema>;
type Upgrade = IDBPTransaction<Schema, Table[], "versionchange">;
export type Transaction<M extends IDBTransactionMode> = IDBPTransaction<Schema, Table[], M>;

const VERSION = 3;

/** From which version on entries and histories lie by themselves. */
const APART = 3;

export interface Connection {
  /**
   * Does all of something in one transaction, or nothing of it; throws why. The database is opened again where it was closed.
   *
   * @param action waits for one thing after the other
   */
  readonly during: <M extends "readonly" | "readwrite", T>(
    tables: Table[],
    mode: M,
    action: (tx: Transaction<M>) => Promise<T>,
  ) => Promise<T>;
  readonly close: () => void;
}

export function connectionTo(name: string): Connection {
  let current: Promise<Database> | null = null;
  const close = (): void => {
    const closing = current;
    current = null;
    // One that failed to open has nothing to close.
    closing?.then((db) => db.close()).catch(() => {});
  };
  const open = (): Promise<Database> =>
    openDB<Schema>(name, VERSION, {
      async upgrade(db, from, _to, tx) {
        for (const table of ["works", "entries", "histories"] as const)
          if (!db.objectStoreNames.contains(table)) db.createObjectStore(table, { keyPath: "id" });
        if (!db.objectStoreNames.contains("page")) db.createObjectStore("page");
        // Whoever opens the database hears of what goes wrong.
        tx.done.catch(() => {});
        if (from > 0 && from < APART) await layApart(tx).catch(() => giveUp(tx));
      },
      // Another tab with a newer page must be able to upgrade.
      blocking: close,
      // The browser itself cut the connection, as when its data are cleared.
      terminated: () => {
        current = null;
      },
    });
  const get = (): Promise<Database> => {
    current ??= open().catch((error: unknown) => {
      current = null;
      throw error;
    });
    return current;
  };
  return {
    during: async (tables, mode, action) => {
      const tx = (await get()).transaction(tables, mode);
      const acting = action(tx).catch((error: unknown) => {
        giveUp(tx);
        throw error;
      });
      // Both are heard, or the one that nobody waited for would be taken for a fault of the page.
      const [done, acted] = await Promise.allSettled([tx.done, acting]);
      // The transaction knows best why it failed, such as for want of room; but not why we gave it up.
      if (done.status === "rejected" && (acted.status === "fulfilled" || !isAborted(done.reason))) throw done.reason;
      if (acted.status === "rejected") throw acted.reason;
      return acted.value;
    },
    close,
  };
}

function giveUp(tx: { readonly abort: () => void }): void {
  try {
    tx.abort();
  } catch {
    // It has ended already.
  }
}

const isAborted = (reason: unknown): boolean => reason instanceof Error && reason.name === "AbortError";

/** Until then a record was a work with its history and what the list shows of it, whatever each of them was. */
async function layApart(tx: Upgrade): Promise<void> {
  const works = tx.objectStore("works");
  for (const index of works.indexNames) works.deleteIndex(index);
  for (let at = await works.openCursor(); at !== null; at = await at.continue()) {
    const whole: Readonly<Record<string, unknown>> = { ...at.value };
    const { id, stamp } = { id: at.primaryKey, stamp: textOf(whole.stamp) };
    const { version, work, past, future } = whole;
    await tx.objectStore("entries").put({ id, name: textOf(whole.name), stamp, saved: timeOf(whole.saved) });
    await tx.objectStore("histories").put({ id, version, past: listOf(past), future: listOf(future) });
    await at.update({ id, stamp, version, work });
  }
}

const textOf = (value: unknown): string => (typeof value === "string" ? value : "");
const timeOf = (value: unknown): number => (typeof value === "number" && Number.isFinite(value) ? value : 0);
const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
