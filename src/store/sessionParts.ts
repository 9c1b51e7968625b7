/** What the jobs of a session share. */
import { createBackup, pageStorage, type Backup } from "./backup";
import type { Library } from "./library";
import { memoryLibrary } from "./memoryLibrary";
import { createMessages, type Messages } from "./messages";
import { createOpenWork, type OpenWork } from "./openWork";
import { createQueue, type Queue } from "./queue";
import type { SessionStore } from "./sessionState";
import { createStorageStatus, type StorageStatus } from "./storageStatus";
import { createWorkList, type WorkList } from "./workList";
import type { WorkStore } from "./workStore";

export interface SessionParts {
  readonly store: WorkStore;
  readonly library: Library;
  readonly backup: Backup;
  readonly openWork: OpenWork;
  readonly list: WorkList;
  readonly status: StorageStatus;
  readonly messages: Messages;
  readonly queue: Queue;
}

/** @param browserLibrary null where the browser keeps nothing */
export function createSessionParts(
  store: WorkStore,
  browserLibrary: Library | null,
  state: SessionStore,
): SessionParts {
  const isLasting = browserLibrary !== null;
  const library = browserLibrary ?? memoryLibrary();
  const status = createStorageStatus(state, isLasting);
  return {
    store,
    library,
    backup: createBackup(isLasting ? pageStorage() : null),
    openWork: createOpenWork(store, state),
    list: createWorkList(library, state, status),
    status,
    messages: createMessages(state),
    queue: createQueue(),
  };
}
