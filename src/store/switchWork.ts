/** Putting another work in place of the open one, which is saved first. */
import type { Work } from "../core/decisions/work";
import { storageFailureSentence, UNSAVED_WORDS } from "../words/storage";
import type { Autosave } from "./autosave";
import { damagedActions } from "./damagedWork";
import { freshId } from "./freshId";
import { NEW_STAMP } from "./library";
import type { SessionParts } from "./sessionParts";
import { endGesture } from "./workStore";

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
  /** The same, but the other one is only shown: it is saved once it is changed. */
  readonly showFirst: (ids: readonly string[], otherwise: Work) => Promise<void>;
}

export function createWorkSwitch(parts: SessionParts, { save }: Autosave): WorkSwitch {
  const { store, library, backup, openWork, list, messages, queue, prepare } = parts;

  /** The changes that the wearer agreed to go on without. */
  let given: Work | null = null;

  const afterSaving = async (next: () => Promise<void>): Promise<void> => {
    endGesture(store);
    await save();
    if (!openWork.isUnsaved()) return next();
    const question = messages.add(UNSAVED_WORDS.text, {
      label: UNSAVED_WORDS.goOn,
      run: () => {
        messages.dismiss(question);
        endGesture(store);
        given = store.getState().work;
        // What cannot be saved now the next page may be able to save.
        backup.giveUp(openWork.left());
        void queue(next);
      },
    });
  };

  /** Without any waiting between: what was changed in the meantime nobody has agreed to go on without. */
  const inItsPlace = (replace: () => Promise<void>): Promise<void> =>
    openWork.isUnsaved() && store.getState().work !== given ? afterSaving(replace) : replace();

  const openNew = async (work: Work): Promise<void> => {
    await prepare?.(work);
    await inItsPlace(async () => {
      const id = freshId();
      openWork.replace({ id, work, past: [], future: [], stamp: NEW_STAMP }, true);
      // At once: where this page ends before it is saved, the next one goes on with it all the same.
      await list.setLastOpen(id, save);
      await list.changed();
    });
  };

  const openSaved = async (id: string): Promise<boolean> => {
    const saved = await library.load(id);
    if (!saved.ok) {
      const text = storageFailureSentence(saved.failure);
      messages.add(text, ...damagedActions(parts, saved.failure, (work) => afterSaving(() => openNew(work))));
      return false;
    }
    await prepare?.(saved.value.work);
    await inItsPlace(async () => {
      openWork.replace(saved.value, false);
      await list.setLastOpen(id);
      await list.refresh();
    });
    return true;
  };

  const openFirst = async (ids: readonly string[], otherwise: Work): Promise<void> => {
    for (const id of ids) if (await openSaved(id)) return;
    await openNew(otherwise);
  };

  const showFirst = async (ids: readonly string[], otherwise: Work): Promise<void> => {
    for (const id of ids) if (await openSaved(id)) return;
    openWork.replace({ id: freshId(), work: otherwise, past: [], future: [], stamp: NEW_STAMP }, false);
  };

  return { afterSaving, openNew, openSaved, openFirst, showFirst };
}
