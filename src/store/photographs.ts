/**
 * Photographs of trials: a database of their own, so that whatever is wrong with it harms no work. They are found by the trial,
 * wherever a copy of its work has it too, and go when the last of these works is deleted for good.
 */
import { openDB, type DBSchema, type IDBPDatabase } from "idb";
import { fail, ok, type Result } from "../core/result";
import { PHOTOGRAPH_TYPES, type PhotographInFile, type PhotographType } from "../document/photographsFile";
import type { StorageFailure } from "./library";

export interface Photograph {
  readonly id: string;
  readonly trial: string;
  /** Milliseconds since 1970. */
  readonly added: number;
  readonly type: PhotographType;
  readonly bytes: ArrayBuffer;
}

export interface PhotographsFound {
  /** The first added first. */
  readonly photographs: readonly Photograph[];
  /** How many lie there that cannot be read. */
  readonly unreadable: number;
}

/** Every failure is an answer, never an exception. */
export interface Photographs {
  /** Of one trial; from now on they are of that work too. */
  readonly of: (workId: string, trial: string) => Promise<Result<PhotographsFound, StorageFailure>>;
  readonly add: (workId: string | null, photograph: Photograph) => Promise<Result<null, StorageFailure>>;
  readonly remove: (id: string) => Promise<Result<null, StorageFailure>>;
  /**
   * A work was deleted for good: those that are of no other work go with it.
   *
   * @param heirs of the trials of all works that are left, one work each: a copy that nobody has looked at has them too
   */
  readonly removeWork: (workId: string, heirs: ReadonlyMap<string, string>) => Promise<Result<null, StorageFailure>>;
  readonly close: () => void;
}

/** As it lies in the database, whatever wrote it. */
interface PhotographRecord {
  readonly id: string;
  readonly trial: string;
  readonly works: readonly string[];
  readonly added: number;
  readonly type: string;
  readonly bytes: unknown;
}

interface Schema extends DBSchema {
  photographs: { key: string; value: PhotographRecord; indexes: { trial: string; works: string } };
}

const DATABASE = "bodicewright-photographs";
/** ms. What has not answered by then is taken for out of order. */
const PATIENCE = 8000;

export function openPhotographs(name: string = DATABASE, patience: number = PATIENCE): Photographs {
  let current: Promise<IDBPDatabase<Schema>> | null = null;
  const close = (): void => {
    const closing = current;
    current = null;
    closing?.then((db) => db.close()).catch(() => {});
  };
  const open = (): Promise<IDBPDatabase<Schema>> => {
    current ??= openDB<Schema>(name, 1, {
      upgrade(db) {
        const store = db.createObjectStore("photographs", { keyPath: "id" });
        store.createIndex("trial", "trial");
        store.createIndex("works", "works", { multiEntry: true });
      },
      blocking: close,
      terminated: () => {
        current = null;
      },
    }).catch((error: unknown) => {
      current = null;
      throw error;
    });
    return current;
  };
  const attempt = async <T>(action: (db: IDBPDatabase<Schema>) => Promise<T>): Promise<Result<T, StorageFailure>> => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const late = new Promise<Result<T, StorageFailure>>((resolve) => {
      timer = setTimeout(() => resolve(fail({ code: "storage/silent" })), patience);
    });
    // A browser that keeps nothing may throw at the mere asking.
    const acting = Promise.resolve()
      .then(open)
      .then(action)
      .then(
        (value): Result<T, StorageFailure> => ok(value),
        (error: unknown): Result<T, StorageFailure> => {
          const isFull = error instanceof Error && error.name === "QuotaExceededError";
          const detail = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
          return fail({ code: isFull ? "storage/full" : "storage/failed", detail });
        },
      );
    return Promise.race([acting, late]).finally(() => clearTimeout(timer));
  };
  return {
    of: (workId, trial) =>
      attempt(async (db) => {
        const tx = db.transaction("photographs", "readwrite");
        const found: Photograph[] = [];
        let unreadable = 0;
        for (let at = await tx.store.index("trial").openCursor(trial); at !== null; at = await at.continue()) {
          const photograph = photographOf(at.value);
          if (photograph === null) unreadable += 1;
          else found.push(photograph);
          const works = worksOf(at.value);
          if (!works.includes(workId)) await at.update({ ...at.value, works: [...works, workId] });
        }
        await tx.done;
        return { photographs: found.toSorted((a, b) => a.added - b.added), unreadable };
      }),
    add: (workId, photograph) =>
      attempt(async (db) => {
        const tx = db.transaction("photographs", "readwrite");
        const before = await tx.store.get(photograph.id);
        const works = before === undefined ? [] : worksOf(before);
        const all = workId === null || works.includes(workId) ? works : [...works, workId];
        await tx.store.put({ ...photograph, works: all });
        await tx.done;
        return null;
      }),
    remove: (id) =>
      attempt(async (db) => {
        await db.delete("photographs", id);
        return null;
      }),
    removeWork: (workId, heirs) =>
      attempt(async (db) => {
        const tx = db.transaction("photographs", "readwrite");
        for (let at = await tx.store.openCursor(); at !== null; at = await at.continue()) {
          const heir = heirs.get(at.value.trial);
          const before = worksOf(at.value);
          // Those that came with a file are of no work until they are looked at.
          if (before.length > 0 && !before.includes(workId)) continue;
          const others = before.filter((id) => id !== workId);
          const works = others.length > 0 || heir === undefined ? others : [heir];
          await (works.length === 0 ? at.delete() : at.update({ ...at.value, works }));
        }
        await tx.done;
        return null;
      }),
    close,
  };
}

const worksOf = ({ works }: { readonly works: unknown }): readonly string[] =>
  Array.isArray(works) ? works.filter((id) => typeof id === "string") : [];

const isType = (type: unknown): type is PhotographType => PHOTOGRAPH_TYPES.some((one) => one === type);

/** Null where what lies there is no photograph. */
function photographOf({ id, trial, added, type, bytes }: PhotographRecord): Photograph | null {
  if (typeof added !== "number" || !isType(type) || !isBuffer(bytes) || bytes.byteLength === 0) return null;
  return { id, trial, added, type, bytes };
}

/** One of another realm is one, too. */
const isBuffer = (value: unknown): value is ArrayBuffer =>
  typeof value === "object" &&
  value !== null &&
  "byteLength" in value &&
  "slice" in value &&
  !ArrayBuffer.isView(value);

export function inFile({ trial, added, type, bytes }: Photograph): PhotographInFile {
  const codes = new Uint8Array(bytes);
  let text = "";
  for (let at = 0; at < codes.length; at += 0x80_00) text += String.fromCharCode(...codes.subarray(at, at + 0x80_00));
  return { trial, added, type, data: btoa(text) };
}

/** What it is found by: the same one out of a file is the same here. */
export const photographId = (trial: string, added: number): string => `${trial} ${added}`;

/** Null where what the file holds is no base 64. */
export function outOfFile({ trial, added, type, data }: PhotographInFile): Photograph | null {
  try {
    const text = atob(data);
    const bytes = new Uint8Array(text.length);
    for (let at = 0; at < text.length; at += 1) bytes[at] = text.charCodeAt(at);
    return { id: photographId(trial, added), trial, added, type, bytes: bytes.buffer };
  } catch {
    return null;
  }
}
