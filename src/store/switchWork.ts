/** Putting another work in place of the open one, which is saved first. */
import type { Work } from "../core/decisions/work";
import { storageFailureSentence, UNSAVED_WORDS } from "../words/storage";
import type { Autosave } from "./autosave";
import { freshId } from "./freshId";
import { NEW_STAMP, type SavedWork } from "./library";
import type { SessionParts } from "./sessionParts";
import { cutGestureShort } from "./workStore";

/** All of it is for jobs that have their turn. */
export interface WorkSwitch {
  /** Saves the open work, then does what puts another in its place; where it cannot be saved, only once that is agreed to. */
  readonly afterSaving: (next: () => Promise<void>) => Promise<void>;
  /** Puts a work on the page that is not saved yet, and saves it. */
  readonly openNew: (work: Work) => Promise<void>;
  /** Puts a saved work on the page. One that cannot be read is told of, and the answer is false. */
  readonly openSaved: (id: string) => Promise<boolean>;
  /** The first of the saved works that can be read, or a new one. */
  readonly openFirst: (ids: readonly string[], otherwise: Work) => Promise<void>;
}

export function createWorkSwitch(parts: SessionParts, { save }: Autosave): WorkSwitch {
  const { store, library, openWork, list, status, messages, queue } = parts;

  const afterSaving = async (next: () => Promise<void>): Promise<void> => {
    cutGestureShort(store);
    await save();
    if (!openWork.isUnsaved()) return next();
    const question = messages.add(UNSAVED_WORDS.text, {
      label: UNSAVED_WORDS.goOn,
      run: () => {
        messages.dismiss(question);
        void queue(next);
      },
    });
  };

  const openNew = async (work: Work): Promise<void> => {
    const unsaved: SavedWork = { id: freshId(), work, past: [], future: [], stamp: NEW_STAMP };
    openWork.replace(unsaved);
    const done = await library.save(unsaved);
    if (done.ok) {
      openWork.markSaved(work, done.value);
      status.saved();
      await list.setLastOpen(done.value.id);
    } else {
      openWork.markUnsaved();
      status.failed(done.failure);
    }
    await list.refresh();
  };

  const openSaved = async (id: string): Promise<boolean> => {
    const before = store.getState().work;
    const saved = await library.load(id);
    if (!saved.ok) {
      messages.add(storageFailureSentence(saved.failure));
      return false;
    }
    const replace = async (): Promise<void> => {
      openWork.replace(saved.value);
      await list.setLastOpen(id);
      await list.refresh();
    };
    // What was changed while it was loading nobody has agreed to go on without.
    if (store.getState().work === before) await replace();
    else await afterSaving(replace);
    return true;
  };

  const openFirst = async (ids: readonly string[], otherwise: Work): Promise<void> => {
    for (const id of ids) if (await openSaved(id)) return;
    await openNew(otherwise);
  };

  return { afterSaving, openNew, openSaved, openFirst };
}
