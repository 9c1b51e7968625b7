/** Which step was taken between two states of the open work, forward or back. */
import type { Work } from "../core/decisions/work";
import { isSameButUnread, type WorkState } from "./workStore";

export interface StepTaken {
  readonly way: "done" | "undone" | "redone";
  /**
   * The work without the step, and with it, whichever way it was taken. Neither is one that the history keeps: what is
   * planned of them would stay with it.
   */
  readonly without: Work;
  readonly with: Work;
}

/** null: nothing that undo knows of, or another work altogether. */
export function stepTaken(was: WorkState, now: WorkState): StepTaken | null {
  if (was.past === now.past) return null;
  const before = was.gesture?.start ?? was.work;
  const [next] = now.future;
  if (now.future.length === was.future.length + 1 && next !== undefined && isSameButUnread(next, was.work))
    return { way: "undone", without: now.work, with: was.work };
  const last = now.past.at(-1);
  if (last === undefined || !isSameButUnread(last, before)) return null;
  const [again] = was.future;
  const isAgain = again !== undefined && isSameButUnread(again, now.work);
  return { way: isAgain ? "redone" : "done", without: before, with: now.work };
}
