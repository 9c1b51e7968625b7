/**
 * A session: which work is open, saved as it changes, and all that can be done with whole works. Where the browser keeps
 * nothing, works last as long as the page is open, and can be downloaded.
 */
import type { Work } from "../core/decisions/work";
import type { Result } from "../core/result";
import type { PhotographInFile } from "../document/photographsFile";
import type { WorksRead } from "../document/worksFile";
import { copyName, fileRefusedSentence, storageFailureSentence } from "../words/storage";
import type { WorkFileFailureLike } from "../words/workFile";
import { createAutosave } from "./autosave";
import { binWork, bringBack, clearOldBin, hasOldBin, removeForGood, saySomebodyBinned } from "./binWork";
import { bringInFile } from "./bringInFile";
import { createCopies } from "./copies";
import { forgetIn, forgottenIn } from "./forgotten";
import { latestWork } from "./latestWork";
import { goOnWithUnsaved, restoreBackups } from "./restoreBackups";
import { createSessionParts, type Surroundings } from "./sessionParts";
import { createSessionState, type MessageAction, type SessionStore } from "./sessionState";
import { createWorkSwitch } from "./switchWork";
import { lookForNewer } from "./takeIn";
import type { News } from "./tabs";
import type { WorkStore } from "./workStore";

export interface WorkSession {
  readonly state: SessionStore;
  /** Opens what was open last, or the first demo on a first visit. */
  readonly start: () => Promise<void>;
  readonly open: (id: string) => Promise<void>;
  readonly create: (work: Work) => Promise<void>;
  readonly copy: (id: string) => Promise<void>;
  /** Puts a work in the bin, where it stays for a month. */
  readonly bin: (id: string) => Promise<void>;
  readonly bringBack: (id: string) => Promise<void>;
  readonly removeForGood: (id: string) => Promise<void>;
  /** What was read of a file of the wearer's: a work is opened, several are kept beside the others. */
  readonly bringIn: (read: Result<WorksRead, WorkFileFailureLike>, fileName: string) => Promise<void>;
  /** A kept work as it is now, to look at. */
  readonly peek: (id: string) => Promise<Work | null>;
  /** What is not to be learnt from, by its keys; kept by this browser alone. */
  readonly forgotten: () => Promise<readonly string[]>;
  /** @returns whether it could be kept */
  readonly forget: (keys: readonly string[]) => Promise<boolean>;
  /** Hands out the open work as a file. */
  readonly download: (photographs?: readonly PhotographInFile[]) => Promise<void>;
  /** Hands out all works as one file. */
  readonly downloadAll: () => Promise<void>;
  /** Says something that can be taken now or later, in place of what was offered about the same before. */
  readonly offer: (about: string, text: string, ...actions: readonly MessageAction[]) => void;
  readonly dismiss: (message: string) => void;
  /** Saves now what waits to be saved. */
  readonly flush: () => Promise<void>;
  /** Leaves what is not saved yet to the next page. */
  readonly pageIsClosing: () => void;
  /** The page is looked at again: another may have saved what is open. */
  readonly pageIsBack: () => Promise<void>;
}

/** @param first the work a first visit opens */
export function createWorkSession(store: WorkStore, surroundings: Surroundings, first: Work): WorkSession {
  const state = createSessionState();
  const parts = createSessionParts(store, surroundings, state, (news) => heard(news));
  const { openWork, list, status, messages, queue, library, binnedElsewhere } = parts;
  const copies = createCopies(parts);
  const autosave = createAutosave(parts, copies);
  const workSwitch = createWorkSwitch(parts, autosave);
  const { afterSaving, openNew, openSaved, openFirst, showFirst } = workSwitch;

  const heard = (news: News): void => {
    if (news.kind === "binned" && news.id === openWork.id()) saySomebodyBinned(parts, workSwitch);
    if (news.kind === "binned") binnedElsewhere.add(news.id);
    if (news.kind === "saved") binnedElsewhere.delete(news.id);
    // What nobody looks at is brought up to date when somebody does.
    if (!surroundings.isHidden()) void look();
  };
  let isLooking = false;
  const look = (): Promise<void> => {
    if (isLooking) return queue(async () => {});
    isLooking = true;
    return queue(async () => {
      isLooking = false;
      await lookForNewer(parts);
      // Where nothing waits to be saved, what was just said of the storage is not to be taken back.
      if (openWork.isUnsaved()) await autosave.save();
      await list.refresh();
    });
  };

  const start = async (): Promise<void> => {
    if ("code" in surroundings.library) status.failed(surroundings.library);
    const unsaved = await restoreBackups(parts);
    const last = await library.pageValue("last-open");
    const ids = await list.ids();
    const begin = last.ok && last.value !== null && ids?.includes(last.value) !== false ? [last.value] : [];
    const known = [...begin, ...(ids ?? []).filter((id) => !begin.includes(id))];
    // Where it is not known what there is, nothing is put beside it.
    if (ids === null) await showFirst(known, first);
    else await openFirst(known, first);
    goOnWithUnsaved(parts, unsaved);
  };

  /** What nobody waits for: on an old device with many works it may take long. */
  const tidyUp = async (): Promise<void> => {
    if (await hasOldBin(parts)) await queue(() => clearOldBin(parts));
    await copies.remind();
    if (parts.isLasting) state.setState({ isLasting: await parts.persist(false) });
  };

  const copy = async (id: string): Promise<void> => {
    const original = await latestWork(parts, id);
    if (!original.ok) return void messages.add(storageFailureSentence(original.failure));
    const work = original.value;
    await afterSaving(() => openNew({ ...work, name: copyName(work.name) }));
  };

  return {
    state,
    start: async () => {
      await queue(start);
      void tidyUp();
    },
    open: (id) => queue(() => afterSaving(async () => void (id === openWork.id() || (await openSaved(id))))),
    create: (work) => queue(() => afterSaving(() => openNew(work))),
    copy: (id) => queue(() => copy(id)),
    bin: (id) => queue(() => binWork(parts, workSwitch, autosave, id)),
    bringBack: (id) => queue(() => bringBack(parts, workSwitch, id)),
    removeForGood: (id) => queue(() => removeForGood(parts, autosave, id)),
    bringIn: (read, fileName) =>
      queue(async () => {
        if (read.ok) await bringInFile(parts, workSwitch, read.value, fileName);
        else messages.add(fileRefusedSentence(fileName, read.failure));
      }),
    peek: async (id) => {
      const found = await latestWork(parts, id);
      return found.ok ? found.value : null;
    },
    forgotten: () => forgottenIn(library),
    forget: (keys) => forgetIn(library, keys),
    download: copies.giveOpen,
    downloadAll: () => queue(copies.giveAll),
    offer: messages.offer,
    dismiss: messages.dismiss,
    flush: autosave.flush,
    pageIsClosing: autosave.pageIsClosing,
    pageIsBack: async () => {
      await look();
      // A page can stay open for months.
      await copies.remind();
    },
  };
}
