/**
 * Conflict copies. Where two tabs have changed the same thing of a work, theirs is left alone and what was changed here goes
 * on under a new id; it gets a name of its own, so that the two can be told apart, and the page says so.
 */
import type { Work } from "../core/decisions/work";
import type { Collision } from "../core/decisions/collision";
import { conflictCopySentence, copyName } from "../words/storage";
import { freshId } from "./freshId";
import type { SessionParts } from "./sessionParts";
import type { WorkState } from "./workStore";

/**
 * The open work under another name, and with it every step of its history that had the old one, so that undoing a change
 * does not bring that name back. Works that were the same object still are: a gesture goes on undisturbed.
 */
export function renamed({ work, past, future, gesture }: WorkState, name: string): WorkState {
  const done = new Map<Work, Work>();
  const rename = (one: Work): Work => {
    if (one.name !== work.name) return one;
    const known = done.get(one);
    if (known !== undefined) return known;
    const made = { ...one, name };
    done.set(one, made);
    return made;
  };
  return {
    work: rename(work),
    past: past.map(rename),
    future: future.map(rename),
    gesture: gesture === null ? null : { ...gesture, start: rename(gesture.start) },
  };
}

/**
 * The open work goes on as a copy beside the other tab's, still to be saved.
 *
 * @param theirs what that is called there; null where it cannot be read
 */
export async function goOnAsConflictCopy(
  { store, openWork, messages, list, backup, collisionWords }: SessionParts,
  collisions: readonly Collision[],
  theirs: string | null,
): Promise<void> {
  const { name: before } = store.getState().work;
  const name = copyName(before);
  const [left, id] = [openWork.id(), freshId()];
  openWork.goOnAs(id);
  store.setState(renamed(store.getState(), name));
  // Where there is no room for another, the old one stays.
  if (backup.write(openWork.left(), false)) backup.discard(left);
  // The words may still have to be loaded, for which no save waits.
  void collisionWords(collisions).then((words) => messages.add(conflictCopySentence(theirs ?? before, name, words)));
  await list.setLastOpen(id);
}
