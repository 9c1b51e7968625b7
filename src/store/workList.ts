/** The list of saved works, and which of them was open last. What fails is shown, and stops nothing. */
import { entryName } from "../words/storage";
import type { Library } from "./library";
import type { SessionStore } from "./sessionState";
import type { StorageStatus } from "./storageStatus";

export interface WorkList {
  /** Shows the list afresh. */
  readonly refresh: () => Promise<void>;
  /** The last saved first; null where the list cannot be read. */
  readonly ids: () => Promise<readonly string[] | null>;
  readonly setLastOpen: (id: string) => Promise<void>;
}

export function createWorkList(library: Library, state: SessionStore, status: StorageStatus): WorkList {
  const read = async () => {
    const entries = await library.list();
    if (entries.ok) return entries.value;
    status.failed(entries.failure);
    return null;
  };
  return {
    refresh: async () => {
      const entries = await read();
      if (entries !== null) state.setState({ entries: entries.map(({ id, name }) => ({ id, name: entryName(name) })) });
    },
    ids: async () => (await read())?.map(({ id }) => id) ?? null,
    setLastOpen: async (id) => {
      const done = await library.setLastOpen(id);
      if (!done.ok) status.failed(done.failure);
    },
  };
}
