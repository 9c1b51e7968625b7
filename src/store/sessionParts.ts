/** What the jobs of a session share. */
import type { Collision } from "../core/decisions/collision";
import type { Work } from "../core/decisions/work";
import type { Salvaged } from "../document/salvageWork";
import { createBackup, type Backup } from "./backup";
import type { Download } from "./download";
import { freshId } from "./freshId";
import type { Library, StorageFailure } from "./library";
import { memoryLibrary } from "./memoryLibrary";
import { createMessages, type Messages } from "./messages";
import { createOpenWork, type OpenWork } from "./openWork";
import { createQueue, type Queue } from "./queue";
import type { SessionStore } from "./sessionState";
import { createStorageStatus, type StorageStatus } from "./storageStatus";
import { createTabs, type Channel, type News, type Tabs } from "./tabs";
import { createWorkList, type WorkList } from "./workList";
import type { WorkStore } from "./workStore";

/** What the page has around it. */
export interface Surroundings {
  /** Where works are kept; a failure says why the browser keeps none. */
  readonly library: Library | StorageFailure;
  /** Where what is not saved yet is left; null where the browser has none to give. */
  readonly storage: Storage | null;
  /** To the other pages; null where there is none. */
  readonly channel: Channel | null;
  /** Milliseconds since 1970. */
  readonly now: () => number;
  /** Whether nobody looks at the page. */
  readonly isHidden: () => boolean;
  /** A work was deleted for good, and what is kept of it elsewhere can go. */
  readonly removed?: (id: string, heirs: ReadonlyMap<string, string>) => void;
  /** Gets ready what showing a work takes, so that it is quickly shown. */
  readonly prepare?: (work: Work) => Promise<void>;
  /** Hands a file to the wearer. */
  readonly give: (file: Download) => void;
  /**
   * Whether the browser has promised not to clear what is kept; null where it does not say.
   *
   * @param asks whether it is asked to promise it
   */
  readonly persist: (asks: boolean) => Promise<boolean | null>;
  /** What two tabs both changed, in words; none where they cannot be had. */
  readonly collisionWords: (collisions: readonly Collision[]) => Promise<readonly string[]>;
  /** What can be read of a damaged work, as `salvageWork` finds it; "notLoaded" where the code for it cannot be had. */
  readonly salvage: (work: unknown, version: number) => Promise<Salvaged | null | "notLoaded">;
}

export interface SessionParts extends Omit<Surroundings, "library" | "storage" | "channel"> {
  readonly store: WorkStore;
  readonly state: SessionStore;
  readonly library: Library;
  /** Whether works outlast the page. */
  readonly isLasting: boolean;
  readonly backup: Backup;
  readonly openWork: OpenWork;
  readonly list: WorkList;
  readonly status: StorageStatus;
  readonly messages: Messages;
  readonly tabs: Tabs;
  readonly queue: Queue;
  /** Works that other pages have put in the bin, where they may have been deleted for good since. */
  readonly binnedElsewhere: Set<string>;
}

/** @param heard what another page has to say */
export function createSessionParts(
  store: WorkStore,
  { library: kept, storage, channel, ...others }: Surroundings,
  state: SessionStore,
  heard: (news: News) => void,
): SessionParts {
  const isLasting = !("code" in kept);
  const library = isLasting ? kept : memoryLibrary();
  const status = createStorageStatus(state, isLasting);
  const tabs = createTabs(freshId(), channel, heard);
  return {
    store,
    state,
    library,
    isLasting,
    backup: createBackup(storage, tabs.own),
    openWork: createOpenWork(store, state, tabs.own),
    list: createWorkList(library, state, status, tabs),
    status,
    messages: createMessages(state),
    tabs,
    queue: createQueue(),
    binnedElsewhere: new Set(),
    ...others,
  };
}
