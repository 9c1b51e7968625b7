/** A library that lasts as long as the page is open, for browsers that keep nothing longer. */
import { fail, ok } from "../core/result";
import type { Library, SavedWork } from "./library";

export function memoryLibrary(): Library {
  const works = new Map<string, SavedWork>();
  let last: string | null = null;
  return {
    list: async () => ok([...works.values()].toReversed().map(({ id, work }) => ({ id, name: work.name }))),
    load: async (id) => {
      const saved = works.get(id);
      return saved === undefined ? fail({ code: "storage/missing", id }) : ok(saved);
    },
    save: async (saved) => {
      // No other page sees this one's works, so nobody else can have saved in between.
      works.delete(saved.id);
      works.set(saved.id, saved);
      return ok({ id: saved.id, stamp: saved.stamp });
    },
    remove: async (id) => {
      works.delete(id);
      return ok(null);
    },
    lastOpen: async () => ok(last),
    setLastOpen: async (id) => {
      last = id;
      return ok(null);
    },
    close: () => works.clear(),
  };
}
