/** Copies on the wearer's own disk: of the open work or of all, and a reminder where there has been none for long. */
import type { Work } from "../core/decisions/work";
import type { PhotographInFile } from "../document/photographsFile";
import { COPY_WORDS, leftOutSentence, severalFilesSentence } from "../words/storage";
import type { Library, WorkEntry } from "./library";
import { downloadsOf, downloadsOfAll, type Download } from "./download";
import type { SessionParts } from "./sessionParts";
import { toSave } from "./workStore";

export interface Copies {
  /** Hands out the open work. */
  readonly giveOpen: (photographs?: readonly PhotographInFile[]) => Promise<void>;
  /** Hands out all works but those in the bin, as one file; for a job that has its turn. */
  readonly giveAll: () => Promise<void>;
  /** A work was saved, perhaps for the first time since it was last in a copy. */
  readonly wasSaved: (id: string, work: Work) => Promise<void>;
  /** Reminds of a copy where one is due. */
  readonly remind: () => Promise<void>;
}

/** ms. What is worked on for so long without a copy is reminded of, and again after as long. */
const MONTH = 30 * 24 * 60 * 60 * 1000;

/** Stands for works that nobody knows by name any more: an older version kept one time for all of them. */
const ANY = "";

/**
 * Since when each work has been changed without a copy, in ms; what cannot be understood counts as nothing. Null where it could
 * not be read just now, and is not to be written over.
 */
async function uncopiedIn(library: Library): Promise<ReadonlyMap<string, number> | null> {
  const kept = await library.pageValue("uncopied-since");
  if (!kept.ok) return null;
  if (kept.value === null) return new Map();
  try {
    const value: unknown = JSON.parse(kept.value);
    const times: Record<string, unknown> =
      typeof value === "object" && value !== null ? { ...value } : { [ANY]: value };
    return new Map(
      Object.entries(times).flatMap(([id, time]) => (typeof time === "number" ? [[id, time] as const] : [])),
    );
  } catch {
    return new Map();
  }
}

export function createCopies(parts: SessionParts): Copies {
  const { store, state, library, isLasting, openWork, messages, queue, now, give, persist } = parts;
  let isAsked = false;

  const keepUncopied = async (since: ReadonlyMap<string, number>): Promise<void> => {
    await library.setPageValue("uncopied-since", since.size > 0 ? JSON.stringify(Object.fromEntries(since)) : null);
  };

  /** These works are in a copy now. */
  const copied = async (ids: readonly string[], all: readonly WorkEntry[] | null): Promise<void> => {
    const known = await uncopiedIn(library);
    if (known === null) return;
    const since = new Map(known);
    for (const id of ids) since.delete(id);
    if (all !== null && all.every(({ id, binned }) => ids.includes(id) || binned !== null)) since.clear();
    await keepUncopied(since);
    if (since.size === 0) await library.setPageValue("reminded", null);
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
    const ids = [openWork.id()];
    const leftOut: string[] = [];
    const all = await library.list();
    for (const { id, name, saved, binned } of all.ok ? all.value : []) {
      if (binned !== null || id === openWork.id()) continue;
      const read = await library.peek(id);
      if (!read.ok) {
        leftOut.push(name);
        continue;
      }
      works.push({ work: read.value, saved: new Date(saved).toISOString() });
      ids.push(id);
    }
    handOut(downloadsOfAll(works, now()));
    if (leftOut.length > 0) messages.add(leftOutSentence(leftOut));
    if (!all.ok) messages.add(COPY_WORDS.onlyOpen);
    await copied(ids, all.ok ? all.value : null);
  };

  return {
    giveOpen: async (photographs) => {
      const id = openWork.id();
      handOut(downloadsOf(toSave(store.getState()).work, photographs));
      await queue(async () => {
        const all = await library.list();
        await copied([id], all.ok ? all.value : null);
      });
    },
    giveAll,
    wasSaved: async (id, work) => {
      if (work.invented || !isLasting) return;
      if (!isAsked) {
        isAsked = true;
        // A browser may ask her, and she may let it wait: the saving does not.
        void persist(true).then((isPromised) => state.setState({ isLasting: isPromised }));
      }
      // Read each time: a copy may have been made in another tab.
      const since = await uncopiedIn(library);
      if (since?.has(id) === false) await keepUncopied(new Map([...since, [id, now()]]));
    },
    remind: async () => {
      const all = await library.list();
      // What lies in the bin needs no copy, nor does what was removed for good.
      const isGone = (id: string): boolean =>
        all.ok && id !== ANY && all.value.every((entry) => entry.id !== id || entry.binned !== null);
      const due = [...((await uncopiedIn(library)) ?? [])].flatMap(([id, since]) => (isGone(id) ? [] : [since]));
      const reminded = await library.pageValue("reminded");
      const last = reminded.ok && reminded.value !== null ? Number(reminded.value) : 0;
      const since = Math.max(Math.min(...due), Number.isFinite(last) ? last : 0);
      if (due.length === 0 || now() - since < MONTH) return;
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
