/** The library in the browser's own database. */
import { fail, ok, type Result } from "../core/result";
import { CURRENT_VERSION } from "../document/upgrades";
import { connectionTo, type Connection, type EntryRecord, type Transaction, type WorkRecord } from "./database";
import {
  NEW_STAMP,
  type Library,
  type SaveOutcome,
  type SaveRequest,
  type StorageFailure,
  type WorkEntry,
} from "./library";
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

function libraryOver({ during, close }: Connection): Library {
  const record = (id: string): Promise<Result<WorkRecord | undefined, StorageFailure>> =>
    attempt(() => during(["works"], "readonly", (tx) => tx.objectStore("works").get(id)));
  const changePageValue: Library["changePageValue"] = (name, change) =>
    attempt(() =>
      during(["page"], "readwrite", async (tx) => {
        const page = tx.objectStore("page");
        const value = change((await page.get(name)) ?? null);
        await (value === null ? page.delete(name) : page.put(value, name));
        return null;
      }),
    );
  return {
    list: () =>
      attempt(() =>
        during(["entries", "works"], "readonly", async (tx) => {
          const entries = await tx.objectStore("entries").getAll();
          const ids = await tx.objectStore("works").getAllKeys();
          const known = new Set(entries.map(({ id }) => id));
          const others = ids.filter((id) => !known.has(id)).map(unknownEntry);
          return [...entries, ...others].map(entryOf).toSorted((a, b) => b.saved - a.saved);
        }),
      ),
    entry: (id) =>
      attempt(async () => {
        const entry = await during(["entries"], "readonly", (tx) => tx.objectStore("entries").get(id));
        return entry === undefined ? null : entryOf(entry);
      }),
    load: async (id) => {
      const found = await attempt(() =>
        during(["works", "histories"], "readonly", async (tx) => ({
          work: await tx.objectStore("works").get(id),
          history: await tx.objectStore("histories").get(id),
        })),
      );
      if (!found.ok) return found;
      const { work, history } = found.value;
      return work === undefined ? fail({ code: "storage/missing", id }) : readSavedWork(id, work, history);
    },
    peek: async (id) => {
      const found = await record(id);
      if (!found.ok) return found;
      return found.value === undefined ? fail({ code: "storage/missing", id }) : readStoredWork(id, found.value);
    },
    raw: record,
    save: (request) => attempt(() => during(["works", "entries", "histories"], "readwrite", (tx) => save(tx, request))),
    bin: (id, time) =>
      attempt(() =>
        during(["entries", "works"], "readwrite", async (tx) => {
          const entries = tx.objectStore("entries");
          const known = await entries.get(id);
          if (known === undefined && (await tx.objectStore("works").getKey(id)) === undefined) return null;
          const { binned: _before, ...entry } = known ?? unknownEntry(id);
          await entries.put(time === null ? entry : { ...entry, binned: time });
          return null;
        }),
      ),
    remove: (id) =>
      attempt(() =>
        during(["works", "entries", "histories"], "readwrite", async (tx) => {
          for (const table of ["works", "entries", "histories"] as const) await tx.objectStore(table).delete(id);
          return null;
        }),
      ),
    pageValue: (name) =>
      attempt(async () => (await during(["page"], "readonly", (tx) => tx.objectStore("page").get(name))) ?? null),
    setPageValue: (name, value) => changePageValue(name, () => value),
    changePageValue,
    close,
  };
}

async function save(
  tx: Transaction<"readwrite">,
  { saved: { id, stamp: from, work, past, future }, stamp, time, isHistorySaved }: SaveRequest,
): Promise<SaveOutcome> {
  const [works, entries, histories] = [tx.objectStore("works"), tx.objectStore("entries"), tx.objectStore("histories")];
  const before = await works.get(id);
  const entry = await entries.get(id);
  if (before !== undefined && before.stamp !== from) {
    const theirs = readSavedWork(id, before, await histories.get(id));
    return { kind: "stale", theirs: theirs.ok ? theirs.value : null };
  }
  const version = CURRENT_VERSION;
  const { name, wearer } = work;
  await works.put({ id, stamp, version, work });
  await entries.put({ id, name, stamp, saved: time, ...(wearer === undefined ? {} : { wearer }) });
  if (!isHistorySaved || before === undefined) await histories.put({ id, version, past, future });
  if (before === undefined) return { kind: from === NEW_STAMP ? "saved" : "savedAfresh" };
  return { kind: entry?.binned === undefined ? "saved" : "broughtBack" };
}

/** A work that nothing but its key is known of must still be found. */
const unknownEntry = (id: string): EntryRecord => ({ id, name: "", stamp: "", saved: 0 });

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
