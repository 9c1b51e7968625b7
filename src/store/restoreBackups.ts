/** Saving what an earlier page could not save before it ended. */
import type { Work } from "../core/decisions/work";
import type { Result } from "../core/result";
import type { Collision } from "../core/decisions/collision";
import { mergeWorks, rebaseSteps } from "../document/mergeWorks";
import { writeWorkFile } from "../document/workFile";
import { backFromBinSentence, conflictCopySentence, copyName } from "../words/storage";
import type { LeftBehind } from "./backup";
import { NEW_STAMP, type SavedWork, type SaveOutcome, type StorageFailure } from "./library";
import { countIn, restoredStamp } from "./openWork";
import type { SessionParts } from "./sessionParts";

/** How often another page may come first before it is left to the next one. */
const ROUNDS = 5;

/**
 * Each is thrown away only once what it holds is in the library.
 *
 * @returns those that could not be saved even now
 */
export async function restoreBackups(parts: SessionParts): Promise<readonly LeftBehind[]> {
  const { backup, status, tabs, isLasting } = parts;
  const unsaved: LeftBehind[] = [];
  if (backup.all().length === 0) return unsaved;
  // What belongs to a page that is still there that page saves itself.
  const there = await tabs.others();
  for (const left of backup.all()) {
    if (left.tab === tabs.own || (left.tab !== null && there.has(left.tab))) continue;
    const done = await restore(parts, left);
    if (done.ok && done.value.kind !== "stale") {
      if (isLasting) backup.throwAway(left);
      // A second one of the same work stays where it is: it would take the place of the first.
      else if (!isOwn(parts, left)) backup.handOn(left);
    } else if (!done.ok) {
      status.failed(done.failure);
      unsaved.push(left);
    }
  }
  return unsaved;
}

/** What was left of the open work and could not be saved is on the page all the same, as changes still to be saved. */
export function goOnWithUnsaved(parts: SessionParts, unsaved: readonly LeftBehind[]): void {
  const { store, openWork, backup } = parts;
  for (const left of unsaved) {
    if (left.saved.id !== openWork.id()) continue;
    const made = onTopOf(openWork.current(), left);
    if ("collisions" in made) continue;
    const { work, past, future } = made;
    store.setState({ work, past, future });
    backup.write(openWork.left(), true);
    // It is this page's own from now on, unless there was no room for that either.
    if (isOwn(parts, left)) backup.throwAway(left);
  }
}

/** Whether this page has a backup of its own of that work. */
const isOwn = ({ backup, tabs }: SessionParts, left: LeftBehind): boolean =>
  backup.all().some(({ tab, saved }) => tab === tabs.own && saved.id === left.saved.id);

async function restore(parts: SessionParts, left: LeftBehind, round = 1): Promise<Result<SaveOutcome, StorageFailure>> {
  const { library, messages } = parts;
  const kept = await library.load(left.saved.id);
  if (kept.ok) {
    if (isIn(kept.value, left)) return { ok: true, value: { kind: "saved" } };
    const made = onTopOf(kept.value, left);
    if (!("collisions" in made)) {
      const done = await saveAs(parts, made, left);
      if (done.ok && done.value.kind === "broughtBack") messages.add(backFromBinSentence(made.work.name));
      // Another page has come first: once more, on top of what it saved.
      return done.ok && done.value.kind === "stale" && round < ROUNDS ? restore(parts, left, round + 1) : done;
    }
    const name = copyName(left.saved.work.name);
    const done = await saveCopy(parts, left, name);
    if (done.ok && done.value.kind === "saved") {
      void parts
        .collisionWords(made.collisions)
        .then((words) => messages.add(conflictCopySentence(kept.value.work.name, name, words)));
    }
    return asDone(done);
  }
  const { code } = kept.failure;
  if (code === "storage/missing") return saveAs(parts, { ...left.saved, stamp: NEW_STAMP }, left);
  // What cannot be read is left as it lies.
  if (code === "storage/damaged") return asDone(await saveCopy(parts, left, copyName(left.saved.work.name)));
  return kept;
}

/** Under an id that any page would give it, so that two that open at once keep it once. */
const saveCopy = (parts: SessionParts, left: LeftBehind, name: string): Promise<Result<SaveOutcome, StorageFailure>> =>
  saveAs(
    parts,
    {
      ...left.saved,
      id: `${left.saved.id}-${left.tab ?? ""}-${left.begun}`,
      stamp: NEW_STAMP,
      work: { ...left.saved.work, name },
    },
    left,
  );

/** Another page was quicker: it is kept. */
const asDone = (done: Result<SaveOutcome, StorageFailure>): Result<SaveOutcome, StorageFailure> =>
  done.ok ? { ok: true, value: { kind: "saved" } } : done;

/** What was left, on top of what is kept. */
function onTopOf(
  kept: SavedWork,
  { tab, saved, base, hasHistory }: LeftBehind,
): SavedWork | { readonly collisions: readonly Collision[] } {
  // A version of the same page is one that it came by on its way.
  const isOnItsWay = saved.stamp === kept.stamp || (tab !== null && countIn(kept.stamp, tab) !== null);
  const from = isOnItsWay ? kept.work : base;
  if (from === null) return { collisions: [] };
  const { work, collisions } = mergeWorks(from, saved.work, kept.work);
  if (collisions.length > 0) return { collisions };
  const { past, future } = hasHistory
    ? { past: rebaseSteps(from, saved.past, kept.work), future: rebaseSteps(from, saved.future, kept.work) }
    : { past: [...kept.past, { ...kept.work, unread: {} }], future: [] };
  return { ...kept, work, past, future };
}

/** Whether what was left has reached the library after all. */
function isIn(kept: SavedWork, { tab, saved, begun }: LeftBehind): boolean {
  const count = tab === null ? null : countIn(kept.stamp, tab);
  return count === null ? isSame(saved.work, kept.work) : count > begun || isSame(saved.work, kept.work);
}

const isSame = (a: Work, b: Work): boolean => writeWorkFile(a) === writeWorkFile(b);

async function saveAs(
  { library, tabs, now }: SessionParts,
  saved: SavedWork,
  { tab }: LeftBehind,
): Promise<Result<SaveOutcome, StorageFailure>> {
  const stamp = restoredStamp(tab);
  const done = await library.save({ saved, stamp, time: now(), isHistorySaved: false });
  if (done.ok && done.value.kind !== "stale") tabs.tell({ kind: "saved", id: saved.id, stamp });
  return done;
}
