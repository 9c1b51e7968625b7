/**
 * Conflict copies. A save whose stamp is stale, because another tab has saved the work since, leaves theirs alone and goes
 * under a new id; here it gets a name of its own, so that the two can be told apart, and the page says so.
 */
import type { Work } from "../core/decisions/work";
import { conflictCopySentence, copyName } from "../words/storage";
import type { SavedWork } from "./library";
import type { SessionParts } from "./sessionParts";
import type { WorkState } from "./workStore";

type Versions = Pick<WorkState, "work" | "past" | "future" | "gesture">;

/**
 * The open work under another name, and with it every step of its history that had the old one, so that undoing a change
 * does not bring that name back. Works that were the same object still are: a gesture goes on undisturbed.
 */
export function renamed(versions: Versions, name: string): Versions {
  const old = versions.work.name;
  const done = new Map<Work, Work>();
  const rename = (work: Work): Work => {
    if (work.name !== old) return work;
    const known = done.get(work);
    if (known !== undefined) return known;
    const made = { ...work, name };
    done.set(work, made);
    return made;
  };
  return {
    work: rename(versions.work),
    past: versions.past.map(rename),
    future: versions.future.map(rename),
    gesture: versions.gesture === null ? null : { ...versions.gesture, start: rename(versions.gesture.start) },
  };
}

/** The open work was just saved as a conflict copy. Its new name is a change to save like any other. */
export async function goOnAsConflictCopy(
  parts: SessionParts,
  { id, work }: Pick<SavedWork, "id" | "work">,
): Promise<void> {
  const { store, messages, list } = parts;
  const name = copyName(work.name);
  store.setState(renamed(store.getState(), name));
  messages.add(conflictCopySentence(work.name, name));
  await list.setLastOpen(id);
}

/** A work that is not open was just saved as a conflict copy: it is saved once more, under its new name. */
export async function nameConflictCopy({ library, messages, status }: SessionParts, copy: SavedWork): Promise<void> {
  const name = copyName(copy.work.name);
  const { work, past, future } = renamed({ ...copy, gesture: null }, name);
  const done = await library.save({ ...copy, work, past, future });
  if (!done.ok) return status.failed(done.failure);
  messages.add(conflictCopySentence(copy.work.name, name));
}
