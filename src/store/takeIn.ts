/** Taking in what another tab saved of the open work, with what this one has changed since the version both came from. */
import type { Work } from "../core/decisions/work";
import { isSame } from "../core/same";
import { mergeWorks, rebaseHistory, rebaseSteps } from "../document/mergeWorks";
import { goOnAsConflictCopy } from "./conflictCopy";
import { isRestoredFor } from "./openWork";
import type { SavedWork } from "./library";
import type { SessionParts } from "./sessionParts";
import { endGesture, toSave, type WorkState } from "./workStore";

/**
 * Puts the newest version on the page. What was changed here and not there stays changed, to be saved; where both changed the
 * same thing, this page goes on with a conflict copy.
 *
 * @param theirs null where it cannot be read
 */
export async function takeIn(parts: SessionParts, theirs: SavedWork | null): Promise<void> {
  const { store, openWork, tabs } = parts;
  if (theirs !== null && theirs.stamp === openWork.stamp()) return;
  const ours = theirs === null ? undefined : openWork.issued(theirs.stamp);
  // A save of our own of which nothing was heard.
  if (theirs !== null && ours !== undefined) return openWork.markSaved(ours, theirs.stamp);
  const base = openWork.base();
  if (theirs === null || base === null) return goOnAsConflictCopy(parts, [], null);
  if (!isRestoredFor(theirs.stamp, tabs.own) && isTypedOver(store.getState(), base, theirs.work)) endGesture(store);
  const { gesture, ...state } = store.getState();
  if (gesture === null && !openWork.isUnsaved()) {
    const { work, past, future } = theirs;
    openWork.markSaved(theirs, theirs.stamp);
    store.setState({ work, past, future });
    return;
  }
  const mine = toSave({ gesture, ...state }).work;
  const merged = mergeWorks(base, mine, theirs.work);
  // What a page that took this one for gone has saved is what stood here a moment ago.
  const isOurs = isRestoredFor(theirs.stamp, tabs.own);
  if (!isOurs && merged.collisions.length > 0) return goOnAsConflictCopy(parts, merged.collisions, theirs.work.name);
  const on = (one: Work): Work =>
    isOurs ? (rebaseHistory(base, [one], theirs.work)[0] ?? one) : mergeWorks(base, one, theirs.work).work;
  openWork.markSaved(theirs, theirs.stamp);
  store.setState({
    work: on(state.work),
    // So that undo takes back what was done here, and not what was done there.
    past: rebaseSteps(base, state.past, theirs.work),
    future: rebaseSteps(base, state.future, theirs.work),
    gesture: gesture === null ? null : { ...gesture, start: on(gesture.start) },
  });
}

/**
 * Whether what is being typed here, and was saved, has been changed there since: the field is to show that, and the next key
 * goes on from it.
 */
function isTypedOver({ gesture }: WorkState, base: Work, theirs: Work): boolean {
  if (gesture?.hand.kind !== "keys") return false;
  const { work, collisions } = mergeWorks(gesture.start, base, theirs);
  // Put back as it was before it was typed, it collides with nothing.
  return collisions.length > 0 || !isSame(work, theirs);
}

/** Looks whether another tab has saved the open work since, and takes it in. */
export async function lookForNewer(parts: SessionParts): Promise<void> {
  const { library, openWork, status, binnedElsewhere } = parts;
  const entry = await library.entry(openWork.id());
  if (entry.ok && entry.value?.binned === null) binnedElsewhere.delete(openWork.id());
  if (!entry.ok || entry.value?.stamp === openWork.stamp()) return;
  // What was kept is gone, but it stands here on the page.
  if (entry.value === null) return binnedElsewhere.has(openWork.id()) ? status.deleted() : openWork.markGone();
  const theirs = await library.load(openWork.id());
  if (theirs.ok) await takeIn(parts, theirs.value);
  else status.failed(theirs.failure);
}
