/** Copies on the wearer's own disk: of the open work or of all, and a reminder where there has been none for long. */
import type { Work } from "../core/decisions/work";
import type { PhotographInFile } from "../document/photographsFile";
import { COPY_WORDS, leftOutSentence, severalFilesSentence } from "../words/storage";
import { downloadsOf, downloadsOfAll, type Download } from "./download";
import type { SessionParts } from "./sessionParts";
import { toSave } from "./workStore";

export interface Copies {
  /** Hands out the open work. */
  readonly giveOpen: (photographs?: readonly PhotographInFile[]) => Promise<void>;
  /** Hands out all works but those in the bin, as one file; for a job that has its turn. */
  readonly giveAll: () => Promise<void>;
  /** A work was saved: perhaps the first real one since the last copy. */
  readonly wasSaved: (work: Work) => Promise<void>;
  /** Reminds of a copy where one is due. */
  readonly remind: () => Promise<void>;
}

/** ms. What is worked on for so long without a copy is reminded of, and again after as long. */
const MONTH = 30 * 24 * 60 * 60 * 1000;

export function createCopies(parts: SessionParts): Copies {
  const { store, state, library, isLasting, openWork, messages, queue, now, give, persist } = parts;
  /** Whether it is known on this page that there is something to copy. */
  let isNoted = false;
  let isAsked = false;

  const copied = async (): Promise<void> => {
    isNoted = false;
    await library.setPageValue("uncopied-since", null);
    await library.setPageValue("reminded", null);
  };

  const handOut = (files: readonly Download[]): void => {
    for (const file of files) give(file);
    if (files.length > 1) messages.add(severalFilesSentence(files.length));
  };

  const giveAll = async (): Promise<void> => {
    // The open one first of all: it may be the one that cannot be saved.
    const works: { work: Work; saved?: string }[] = [
      { work: toSave(store.getState()).work, saved: new Date(now()).toISOString() },
    ];
    const leftOut: string[] = [];
    const all = await library.list();
    for (const { id, name, saved, binned } of all.ok ? all.value : []) {
      if (binned !== null || id === openWork.id()) continue;
      const read = await library.peek(id);
      if (read.ok) works.push({ work: read.value, saved: new Date(saved).toISOString() });
      else leftOut.push(name);
    }
    handOut(downloadsOfAll(works, now()));
    if (leftOut.length > 0) messages.add(leftOutSentence(leftOut));
    if (!all.ok) messages.add(COPY_WORDS.onlyOpen);
    else if (leftOut.length === 0) await copied();
  };

  const timeOf = async (name: "uncopied-since" | "reminded"): Promise<number | null> => {
    const value = await library.pageValue(name);
    const time = value.ok && value.value !== null ? Number(value.value) : NaN;
    return Number.isFinite(time) ? time : null;
  };

  return {
    giveOpen: async (photographs) => {
      handOut(downloadsOf(toSave(store.getState()).work, photographs));
      await copied();
    },
    giveAll,
    wasSaved: async (work) => {
      if (work.invented || !isLasting) return;
      if (!isAsked) {
        isAsked = true;
        // A browser may ask her, and she may let it wait: the saving does not.
        void persist(true).then((isPromised) => state.setState({ isLasting: isPromised }));
      }
      if (isNoted) return;
      isNoted = true;
      if ((await timeOf("uncopied-since")) === null) await library.setPageValue("uncopied-since", String(now()));
    },
    remind: async () => {
      const since = await timeOf("uncopied-since");
      if (since === null || now() - Math.max(since, (await timeOf("reminded")) ?? 0) < MONTH) return;
      await library.setPageValue("reminded", String(now()));
      const reminder = messages.add(COPY_WORDS.reminder, {
        label: COPY_WORDS.all,
        run: () => {
          messages.dismiss(reminder);
          void queue(giveAll);
        },
      });
    },
  };
}
