/** The library in the browser's own database. */
import { fail, ok, type Result } from "../core/result";
import { CURRENT_VERSION } from "../document/upgrades";
import { connectionTo, type Connection, type EntryRecord } from "./database";
import type { Library, SaveRequest, StorageFailure, WorkEntry } from "./library";
import { withPatience } from "./patience";
import { readSavedWork, readStoredWork } from "./readSavedWork";

const DATABASE = "bodicewright";

/** ms. What has not answered by then is taken for blocked, so that the page goes on. */
const PATIENCE = 4000;

/** Opens the library; a failure says why the browser keeps nothing. */
export async function openLibrary(
  name: string = DATABASE,
  patience: number = PATIENCE,
): Promise<Result<Library, StorageFailure>> {
  const library = withPatience(libraryOver(connectionTo(name)), patience);
  const answer = await library.pageValue("last-open");
  if (answer.ok) return ok(library);
  const { failure } = answer;
  if (failure.code === "storage/silent") return fail({ code: "storage/unanswered" });
  return fail(failure.code === "storage/failed" ? { code: "storage/unavailable", detail: failure.detail } : failure);
}

function libraryOver({ get, close }: Connection): Library {
  return {
    list: () =>
      attempt(async () => {
        const db = await get();
        const tx = db.transaction(["entries", "works"]);
        const [entries, ids] = await Promise.all([
          tx.objectStore("entries").getAll(),
          tx.objectStore("works").getAllKeys(),
        ]);
        const known = new Set(entries.map(({ id }) => id));
        // A work that nothing but its key is known of must still be found.
        const others = ids.filter((id) => !known.has(id)).map((id) => ({ id, name: "", stamp: "", saved: 0 }));
        return [...entries, ...others].map(entryOf).toSorted((a, b) => b.saved - a.saved);
      }),
    entry: (id) =>
      attempt(async () => {
        const entry = await (await get()).get("entries", id);
        return entry === undefined ? null : entryOf(entry);
      }),
    load: async (id) => {
      const found = await attempt(async () => {
        const tx = (await get()).transaction(["works", "histories"]);
        return Promise.all([tx.objectStore("works").get(id), tx.objectStore("histories").get(id)]);
      });
      if (!found.ok) return found;
      const [work, history] = found.value;
      return work === undefined ? fail({ code: "storage/missing", id }) : readSavedWork(id, work, history);
    },
    peek: async (id) => {
      const found = await attempt(async () => (await get()).get("works", id));
      if (!found.ok) return found;
      if (found.value === undefined) return fail({ code: "storage/missing", id });
      return readStoredWork(id, found.value);
    },
    raw: (id) => attempt(async () => (await get()).get("works", id)),
    save: (request) => attempt(async () => save(await get(), request)),
    bin: (id, time) =>
      attempt(async () => {
        const tx = (await get()).transaction("entries", "readwrite");
        const entry = await tx.store.get(id);
        if (entry !== undefined) {
          const { binned: _before, ...kept } = entry;
          await tx.store.put(time === null ? kept : { ...kept, binned: time });
        }
        await tx.done;
        return null;
      }),
    remove: (id) =>
      attempt(async () => {
        const tx = (await get()).transaction(["works", "entries", "histories"], "readwrite");
        await Promise.all([
          tx.objectStore("works").delete(id),
          tx.objectStore("entries").delete(id),
          tx.objectStore("histories").delete(id),
          tx.done,
        ]);
        return null;
      }),
    pageValue: (name) => attempt(async () => (await (await get()).get("page", name)) ?? null),
    setPageValue: (name, value) =>
      attempt(async () => {
        const db = await get();
        if (value === null) await db.delete("page", name);
        else await db.put("page", value, name);
        return null;
      }),
    close,
  };
}

async function save(
  db: Awaited<ReturnType<Connection["get"]>>,
  { saved: { id, stamp: from, work, past, future }, stamp, time, isHistorySaved }: SaveRequest,
) {
  const tx = db.transaction(["works", "entries", "histories"], "readwrite");
  const [works, entries, histories] = [tx.objectStore("works"), tx.objectStore("entries"), tx.objectStore("histories")];
  const [before, entry] = await Promise.all([works.get(id), entries.get(id)]);
  if (before !== undefined && before.stamp !== from) {
    const history = await histories.get(id);
    const theirs = readSavedWork(id, before, history);
    return { kind: "stale", theirs: theirs.ok ? theirs.value : null } as const;
  }
  const version = CURRENT_VERSION;
  const { name, wearer } = work;
  const puts = [
    works.put({ id, stamp, version, work }),
    entries.put({ id, name, stamp, saved: time, ...(wearer === undefined ? {} : { wearer }) }),
    ...(isHistorySaved && before !== undefined ? [] : [histories.put({ id, version, past, future })]),
  ];
  // Of them the transaction knows why it failed, such as for want of room.
  const [done, ...put] = await Promise.allSettled([tx.done, ...puts]);
  for (const one of [done, ...put]) if (one.status === "rejected") throw one.reason;
  if (before === undefined) return { kind: from === "" ? "saved" : "savedAfresh" } as const;
  return { kind: entry?.binned === undefined ? "saved" : "broughtBack" } as const;
}

const entryOf = ({ id, name, wearer, stamp, saved, binned }: EntryRecord): WorkEntry => ({
  id,
  name,
  wearer: wearer ?? null,
  stamp,
  saved,
  binned: binned ?? null,
});

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
