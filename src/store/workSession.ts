/**
 * A session: which work is open, saved as it changes, and all that can be done with whole works. Where the browser keeps
 * nothing, works last as long as the page is open, and can be downloaded.
 */
import type { Work } from "../core/decisions/work";
import { readWorkFile } from "../document/workFile";
import { copyName, fileRefusedSentence, storageFailureSentence } from "../words/storage";
import { createAutosave } from "./autosave";
import { deleteWork } from "./deleteWork";
import { downloadOf, type Download } from "./download";
import type { Library, StorageFailure } from "./library";
import { latestWork } from "./latestWork";
import { restoreBackups } from "./restoreBackups";
import { createSessionParts } from "./sessionParts";
import { createSessionState, type SessionStore } from "./sessionState";
import { createWorkSwitch } from "./switchWork";
import type { WorkStore } from "./workStore";

export interface WorkSession {
  readonly state: SessionStore;
  /** Opens what was open last, or the first demo on a first visit. */
  readonly start: () => Promise<void>;
  readonly open: (id: string) => Promise<void>;
  readonly create: (work: Work) => Promise<void>;
  readonly copy: (id: string) => Promise<void>;
  readonly remove: (id: string) => Promise<void>;
  readonly openText: (text: string, fileName: string) => Promise<void>;
  /** The open work as a file. */
  readonly file: () => Download;
  readonly dismiss: (message: string) => void;
  /** Saves now what waits to be saved. */
  readonly flush: () => Promise<void>;
  /** Leaves what is not saved yet to the next page. */
  readonly pageIsClosing: () => void;
}

/**
 * @param library null where the browser keeps nothing, with `why`
 * @param first   the work a first visit opens
 */
export function createWorkSession(
  store: WorkStore,
  library: Library | null,
  first: Work,
  why: StorageFailure | null = null,
): WorkSession {
  const state = createSessionState();
  const parts = createSessionParts(store, library, state);
  const { openWork, list, status, messages, queue } = parts;
  const autosave = createAutosave(parts);
  const workSwitch = createWorkSwitch(parts, autosave);
  const { afterSaving, openNew, openSaved, openFirst } = workSwitch;

  const start = async (): Promise<void> => {
    if (why !== null) status.failed(why);
    await restoreBackups(parts);
    const last = await parts.library.lastOpen();
    const ids = await list.ids();
    const begin = last.ok && last.value !== null && ids?.includes(last.value) !== false ? [last.value] : [];
    await openFirst([...begin, ...(ids ?? []).filter((id) => !begin.includes(id))], first);
  };

  const copy = async (id: string): Promise<void> => {
    const original = await latestWork(parts, id);
    if (!original.ok) return void messages.add(storageFailureSentence(original.failure));
    const { work } = original.value;
    await afterSaving(() => openNew({ ...work, name: copyName(work.name) }));
  };

  const openText = async (text: string, fileName: string): Promise<void> => {
    const work = readWorkFile(text);
    if (!work.ok) return void messages.add(fileRefusedSentence(fileName, work.failure));
    await afterSaving(() => openNew(work.value));
  };

  return {
    state,
    start: () => queue(start),
    open: (id) => queue(() => afterSaving(async () => void (id === openWork.id() || (await openSaved(id))))),
    create: (work) => queue(() => afterSaving(() => openNew(work))),
    copy: (id) => queue(() => copy(id)),
    remove: (id) => queue(() => deleteWork(parts, autosave, workSwitch, id)),
    openText: (text, fileName) => queue(() => openText(text, fileName)),
    file: () => downloadOf(store.getState().work),
    dismiss: messages.dismiss,
    flush: autosave.flush,
    pageIsClosing: autosave.pageIsClosing,
  };
}
