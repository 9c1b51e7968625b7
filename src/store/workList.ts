/** The list of saved works, and which of them was open last. What fails is shown, and stops nothing. */
import { entryName } from "../words/storage";
import type { Library, WorkEntry } from "./library";
import type { SessionStore } from "./sessionState";
import type { StorageStatus } from "./storageStatus";
import type { Tabs } from "./tabs";

export interface WorkList {
  /** Shows the list afresh. */
  readonly refresh: () => Promise<void>;
  /** What is known of one work now, without asking for all. */
  readonly put: (entry: WorkEntry) => void;
  /** The last saved first, without those in the bin; null where the list cannot be read. */
  readonly ids: () => Promise<readonly string[] | null>;
  /** @param meanwhile is done while that is written, and a failure told after it */
  readonly setLastOpen: (id: string, meanwhile?: () => Promise<void>) => Promise<void>;
  /** Shows it afresh here and on the other pages. */
  readonly changed: () => Promise<void>;
}

export function createWorkList(library: Library, state: SessionStore, status: StorageStatus, tabs: Tabs): WorkList {
  const read = async (): Promise<readonly WorkEntry[] | null> => {
    const entries = await library.list();
    if (entries.ok) return entries.value;
    status.failed(entries.failure);
    return null;
  };
  const show = (all: readonly WorkEntry[]): void => {
    const entries = all.map((entry) => ({ ...entry, name: entryName(entry.name) }));
    state.setState({
      entries: entries.filter(({ binned }) => binned === null),
      binned: entries.filter(({ binned }) => binned !== null).toSorted((a, b) => (b.binned ?? 0) - (a.binned ?? 0)),
    });
  };
  const refresh = async (): Promise<void> => {
    // What the open work's own saving comes to is told by that.
    const all = await library.list();
    if (all.ok) show(all.value);
  };
  return {
    refresh,
    put: (entry) => {
      const { entries, binned } = state.getState();
      show([entry, ...[...entries, ...binned].filter(({ id }) => id !== entry.id)]);
    },
    ids: async () => (await read())?.filter(({ binned }) => binned === null).map(({ id }) => id) ?? null,
    setLastOpen: async (id, meanwhile) => {
      const writing = library.setPageValue("last-open", id);
      await meanwhile?.();
      const done = await writing;
      if (!done.ok) status.failed(done.failure);
    },
    changed: async () => {
      tabs.tell({ kind: "list" });
      await refresh();
    },
  };
}
