/** Deleting a work, and bringing back one that was deleted. */
import { blankWork } from "../document/blank";
import { BRING_BACK_WORDS, deletedSentence, storageFailureSentence } from "../words/storage";
import type { Autosave } from "./autosave";
import { NEW_STAMP, type SavedWork } from "./library";
import { latestWork } from "./latestWork";
import type { SessionParts } from "./sessionParts";
import type { WorkSwitch } from "./switchWork";
import { endGesture } from "./workStore";

/** Deletes a work, for a job that has its turn; another takes its place on the page where it was open. */
export async function deleteWork(
  parts: SessionParts,
  { save }: Autosave,
  workSwitch: WorkSwitch,
  id: string,
): Promise<void> {
  const { store, library, openWork, list, status, messages, queue } = parts;
  endGesture(store);
  const deleted = await latestWork(parts, id);
  if (!deleted.ok) return void messages.add(storageFailureSentence(deleted.failure));
  const done = await library.remove(id);
  if (!done.ok) return status.failed(done.failure);
  if (id === openWork.id()) {
    openWork.giveUpChanges();
    await workSwitch.openFirst((await list.ids()) ?? [], blankWork(deleted.value.work.unit));
  }
  // There may be room again.
  await save();
  await list.refresh();
  const offer = messages.add(deletedSentence(deleted.value.work.name), {
    label: BRING_BACK_WORDS,
    run: () => void queue(() => bringBack(parts, workSwitch, deleted.value, offer)),
  });
}

/** Offered until it succeeds, and only once then. */
async function bringBack(
  { library, list, status, messages }: SessionParts,
  { afterSaving, openSaved }: WorkSwitch,
  deleted: SavedWork,
  offer: string,
): Promise<void> {
  if (!messages.has(offer)) return;
  const done = await library.save({ ...deleted, stamp: NEW_STAMP });
  if (!done.ok) return status.failed(done.failure);
  messages.dismiss(offer);
  await afterSaving(async () => void (await openSaved(done.value.id)));
  await list.refresh();
}
