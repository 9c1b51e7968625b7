/** The browser's database of works: its tables, and a connection that is opened again where it was closed. */
import { openDB, type DBSchema, type IDBPDatabase } from "idb";

/** A work as it lies in the database: whatever version wrote it. */
export interface WorkRecord {
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
  works: { key: string; value: WorkRecord; indexes: { list: ListKey } };
  page: { key: string; value: string };
}

type Database = IDBPDatabase<Schema>;

const VERSION = 2;

export interface Connection {
  /** The open database, opened again where it was closed. */
  readonly get: () => Promise<Database>;
  readonly close: () => void;
}

/** @param patience ms in which the database must answer */
export function connectionTo(name: string, patience: number): Connection {
  let current: Promise<Database> | null = null;
  const close = (): void => {
    const closing = current;
    current = null;
    // One that failed to open has nothing to close.
    closing?.then((db) => db.close()).catch(() => {});
  };
  const open = (): Promise<Database> => {
    const opening = openDB<Schema>(name, VERSION, {
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
