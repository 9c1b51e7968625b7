/** Works kept as long as the page is open, for browsers that keep nothing longer. */
import { fail, ok } from "../core/result";
import type { KeptWork, Library } from "./library";

export function memoryLibrary(): Library {
  const works = new Map<string, KeptWork>();
  let last: string | null = null;
  return {
    list: async () => ok([...works.values()].toReversed().map(({ id, work }) => ({ id, name: work.name }))),
    load: async (id) => {
      const kept = works.get(id);
      return kept === undefined ? fail({ code: "storage/missing", id }) : ok(kept);
    },
    save: async (kept) => {
      // No other page sees this one's works, so nobody else can have saved in between.
      works.delete(kept.id);
      works.set(kept.id, kept);
      return ok({ id: kept.id, stamp: kept.stamp });
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
