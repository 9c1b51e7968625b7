/** A library that lasts as long as the page is open, for browsers that keep nothing longer. */
import { fail, ok } from "../core/result";
import { NEW_STAMP, type Library, type PageValue, type SavedWork, type WorkEntry } from "./library";

/** What it holds, for several libraries on the same shelf. */
export interface Shelf {
  readonly works: Map<string, { readonly saved: SavedWork; readonly entry: WorkEntry }>;
  readonly page: Map<PageValue, string>;
}

export const emptyShelf = (): Shelf => ({ works: new Map(), page: new Map() });

export function memoryLibrary({ works, page }: Shelf = emptyShelf()): Library {
  const load: Library["load"] = async (id) => {
    const found = works.get(id);
    return found === undefined ? fail({ code: "storage/missing", id }) : ok(found.saved);
  };
  return {
    list: async () => ok([...works.values()].map(({ entry }) => entry).toSorted((a, b) => b.saved - a.saved)),
    entry: async (id) => ok(works.get(id)?.entry ?? null),
    load,
    peek: async (id) => {
      const found = await load(id);
      return found.ok ? ok(found.value.work) : found;
    },
    raw: async (id) => ok(works.get(id)?.saved),
    save: async ({ saved, stamp, time }) => {
      const { id, work } = saved;
      const before = works.get(id);
      if (before !== undefined && before.saved.stamp !== saved.stamp)
        return ok({ kind: "stale", theirs: before.saved });
      const entry = { id, name: work.name, wearer: work.wearer ?? null, stamp, saved: time, binned: null };
      works.set(id, { saved: { ...saved, stamp }, entry });
      if (before === undefined) return ok({ kind: saved.stamp === NEW_STAMP ? "saved" : "savedAfresh" });
      return ok({ kind: before.entry.binned === null ? "saved" : "broughtBack" });
    },
    bin: async (id, time) => {
      const found = works.get(id);
      if (found !== undefined) works.set(id, { ...found, entry: { ...found.entry, binned: time } });
      return ok(null);
    },
    remove: async (id) => {
      works.delete(id);
      return ok(null);
    },
    pageValue: async (name) => ok(page.get(name) ?? null),
    setPageValue: async (name, value) => {
      if (value === null) page.delete(name);
      else page.set(name, value);
      return ok(null);
    },
    changePageValue: async (name, change) => {
      const value = change(page.get(name) ?? null);
      if (value === null) page.delete(name);
      else page.set(name, value);
      return ok(null);
    },
    close: () => {},
  };
}
