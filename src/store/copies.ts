/** Copies on the wearer's own disk: of the open work or of all, and a reminder where there has been none for long. */
import type { Work } from "../core/decisions/work";
import type { PhotographInFile } from "../document/photographsFile";
import { COPY_WORDS, leftOutSentence, severalFilesSentence } from "../words/storage";
import type { WorkEntry } from "./library";
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

type Uncopied = ReadonlyMap<string, number>;

/** Since when each work has been changed without a copy, in ms; what cannot be understood counts as nothing. */
function uncopiedIn(kept: string | null): Uncopied {
  if (kept === null) return new Map();
  try {
    const value: unknown = JSON.parse(kept);
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

  /** Null where it could not be read just now. */
  const uncopied = async (): Promise<Uncopied | null> => {
    const kept = await library.pageValue("uncopied-since");
    return kept.ok ? uncopiedIn(kept.value) : null;
  };

  /** What it came to; null where it could not be read, and was not written over. */
  const changeUncopied = async (change: (since: Uncopied) => Uncopied): Promise<Uncopied | null> => {
    let changed: Uncopied | null = null;
    const kept = await library.changePageValue("uncopied-since", (known) => {
      changed = change(uncopiedIn(known));
      return changed.size > 0 ? JSON.stringify(Object.fromEntries(changed)) : null;
    });
    return kept.ok ? changed : null;
  };

  /** These works are in a copy now. */
  const copied = async (ids: readonly string[], all: readonly WorkEntry[] | null): Promise<void> => {
    const isAll = all !== null && all.every(({ id, binned }) => ids.includes(id) || binned !== null);
    // What another tab has begun since the list was read is in no copy.
    const isIn = (id: string): boolean =>
      ids.includes(id) || (isAll && (id === ANY || all.some((entry) => entry.id === id)));
    const left = await changeUncopied((since) => new Map([...since].filter(([id]) => !isIn(id))));
    if (left?.size === 0) await library.setPageValue("reminded", null);
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
      if ((await uncopied())?.has(id) === false) await changeUncopied((since) => new Map([[id, now()], ...since]));
    },
    remind: async () => {
      const all = await library.list();
      // What lies in the bin needs no copy, nor does what was removed for good.
      const isGone = (id: string): boolean =>
        all.ok && id !== ANY && all.value.every((entry) => entry.id !== id || entry.binned !== null);
      const due = [...((await uncopied()) ?? [])].flatMap(([id, since]) => (isGone(id) ? [] : [since]));
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
