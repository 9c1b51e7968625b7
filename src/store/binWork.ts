/** The bin: a deleted work stays in it for a month, and comes back whole. */
import { blankWork } from "../document/blank";
import {
  BIN_WORDS,
  binnedElsewhereSentence,
  binnedSentence,
  BRING_BACK_WORDS,
  storageFailureSentence,
} from "../words/storage";
import type { Autosave } from "./autosave";
import { latestWork } from "./latestWork";
import type { WorkEntry } from "./library";
import type { SessionParts } from "./sessionParts";
import type { WorkSwitch } from "./switchWork";

/** ms. How long a work lies in the bin. */
export const BIN_TIME = 30 * 24 * 60 * 60 * 1000;

/** Puts a work in the bin, for a job that has its turn; another takes its place on the page where it was open. */
export async function binWork(
  parts: SessionParts,
  workSwitch: WorkSwitch,
  autosave: Pick<Autosave, "forget">,
  id: string,
): Promise<void> {
  const { state, store, openWork, list } = parts;
  if (id !== openWork.id()) {
    await put(parts, workSwitch, autosave, id, state.getState().entries.find((entry) => entry.id === id)?.name ?? "");
    return list.changed();
  }
  await workSwitch.afterSaving(async () => {
    const { name, unit } = store.getState().work;
    const others = ((await list.ids()) ?? []).filter((other) => other !== id);
    // First of all off the page, so that nothing is typed into it any more.
    await workSwitch.openFirst(others, blankWork(unit));
    if (id !== openWork.id()) await put(parts, workSwitch, autosave, id, name);
    await list.changed();
  });
}

async function put(
  parts: SessionParts,
  workSwitch: WorkSwitch,
  autosave: Pick<Autosave, "forget">,
  id: string,
  name: string,
): Promise<void> {
  const { library, messages, tabs, queue, now } = parts;
  const done = await library.bin(id, now());
  if (!done.ok) {
    // A full store has no room for the bin either.
    messages.add(`${storageFailureSentence(done.failure)} ${BIN_WORDS.notBinned}`, {
      label: BIN_WORDS.removeForGood,
      run: () => void queue(() => removeForGood(parts, autosave, id)),
    });
    return;
  }
  tabs.tell({ kind: "binned", id });
  messages.addAbout(id, binnedSentence(name), {
    label: BRING_BACK_WORDS,
    run: () => {
      messages.dismissAbout(id);
      void queue(() => bringBack(parts, workSwitch, id));
    },
  });
}

/** Takes a work out of the bin and opens it. */
export async function bringBack(
  parts: SessionParts,
  { afterSaving, openSaved }: WorkSwitch,
  id: string,
): Promise<void> {
  const { library, openWork, list, messages } = parts;
  const done = await library.bin(id, null);
  if (!done.ok) return void messages.add(storageFailureSentence(done.failure));
  messages.dismissAbout(id);
  if (id !== openWork.id()) await afterSaving(async () => void (await openSaved(id)));
  await list.changed();
}

/** Removes a work that is not open, for good. */
export async function removeForGood(
  parts: SessionParts,
  { forget }: Pick<Autosave, "forget">,
  id: string,
): Promise<void> {
  const { library, openWork, list, messages, tabs, backup } = parts;
  if (id === openWork.id()) return;
  const done = await library.remove(id);
  if (done.ok) {
    messages.dismissAbout(id);
    forget(id);
    await tellRemoved(parts, [id]);
    // What this page has given up of it would bring it back.
    for (const left of backup.all())
      if (left.saved.id === id && left.tab?.startsWith(tabs.own) === true) backup.throwAway(left);
  } else messages.add(storageFailureSentence(done.failure));
  await list.changed();
}

/** Works that have lain in the bin for their time. */
async function oldInBin({ library, now }: SessionParts): Promise<readonly string[]> {
  const all = await library.list();
  const isOver = ({ binned }: WorkEntry): boolean => binned !== null && now() - binned > BIN_TIME;
  return all.ok ? all.value.filter(isOver).map(({ id }) => id) : [];
}

export const hasOldBin = async (parts: SessionParts): Promise<boolean> => (await oldInBin(parts)).length > 0;

/** Removes for good what has lain in the bin for its time. */
export async function clearOldBin(parts: SessionParts): Promise<void> {
  const { library, list } = parts;
  const gone: string[] = [];
  for (const id of await oldInBin(parts)) if ((await library.remove(id)).ok) gone.push(id);
  await tellRemoved(parts, gone);
  if (gone.length > 0) await list.changed();
}

/**
 * Tells what is kept beside works that these are gone, and which works have their trials still. Where one of those that are left
 * cannot be read, nothing is told: rather something is kept too long.
 */
async function tellRemoved(parts: SessionParts, ids: readonly string[]): Promise<void> {
  const { library, openWork, removed } = parts;
  if (removed === undefined || ids.length === 0) return;
  const left = await library.list();
  if (!left.ok) return;
  const heirs = new Map<string, string>();
  for (const { id } of left.value) {
    const work = await latestWork(parts, id);
    if (!work.ok) return;
    for (const trial of work.value.trials ?? []) heirs.set(trial.id, id);
  }
  // What is on the page may not be saved yet, or never could be.
  for (const trial of openWork.current().work.trials ?? []) heirs.set(trial.id, openWork.id());
  for (const id of ids) removed(id, heirs);
}

/** Another page put the open work in the bin: it stays on this one. */
export function saySomebodyBinned(parts: SessionParts, workSwitch: WorkSwitch): void {
  const { store, openWork, messages, queue } = parts;
  const id = openWork.id();
  messages.addAbout(id, binnedElsewhereSentence(store.getState().work.name), {
    label: BRING_BACK_WORDS,
    run: () => {
      messages.dismissAbout(id);
      void queue(() => bringBack(parts, workSwitch, id));
    },
  });
}
