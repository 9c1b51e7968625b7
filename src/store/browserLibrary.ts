/** The library in the browser's own database. */
import { fail, ok, type Result } from "../core/result";
import { CURRENT_VERSION } from "../document/upgrades";
import { connectionTo, type Connection, type WorkRecord } from "./database";
import { freshId } from "./freshId";
import type { Library, StorageFailure, WorkEntry } from "./library";
import { readSavedWork } from "./readSavedWork";

const DATABASE = "bodicewright";
const LAST_OPEN = "last-open";

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

function libraryOver({ get, close }: Connection): Library {
  return {
    list: () =>
      attempt(async () => {
        const db = await get();
        const tx = db.transaction("works");
        const ids = new Set(await tx.store.getAllKeys());
        const entries: WorkEntry[] = [];
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
      return found.value === undefined ? fail({ code: "storage/missing", id }) : readSavedWork(id, found.value);
    },
    save: (saved) =>
      attempt(async () => {
        const db = await get();
        const tx = db.transaction("works", "readwrite");
        const before = await tx.store.get(saved.id);
        const isConflict = before !== undefined && before.stamp !== saved.stamp;
        const id = isConflict ? freshId() : saved.id;
        const stamp = freshId();
        const record: WorkRecord = {
          id,
          name: saved.work.name,
          stamp,
          saved: Date.now(),
          version: CURRENT_VERSION,
          work: saved.work,
          past: saved.past,
          future: saved.future,
        };
        // Of the two the transaction knows why it failed, such as for want of room.
        const [put, done] = await Promise.allSettled([tx.store.put(record), tx.done]);
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
