/** The versions of a work: every trial as it was sewn, and what is decided now. */
import type { Trial } from "../decisions/trial";
import type { Decided } from "../decisions/decided";
import type { Work } from "../decisions/work";
import { applyCommand } from "../plan/commands";
import { decidedIn } from "../plan/trialCommands";
import { isSame } from "../same";

export interface Version {
  /** Unlike any other of the work: "now", or "trial-" and the trial's id. */
  readonly key: string;
  /** null: what is decided now. */
  readonly trial: Trial | null;
  /** Trials are counted from 1, the oldest first; what is decided now has no number. */
  readonly number: number | null;
  readonly decided: Decided;
}

/** What is decided now, then the trials, the newest first. */
export function versionsOf(work: Work): readonly Version[] {
  const { trials = [] } = work;
  return [
    { key: NOW, trial: null, number: null, decided: work },
    ...trials.map((trial, index) => ({
      key: keyOfTrial(trial.id),
      trial,
      number: trials.length - index,
      decided: trial.sewn,
    })),
  ];
}

export const NOW = "now";
const keyOfTrial = (id: string): string => `trial-${id}`;

/** The trial, the newest of them, that was sewn as is decided now; null: what is decided now was never sewn. */
export function sewnAsNow(work: Work): Trial | null {
  const now = decidedIn(work);
  return (work.trials ?? []).find(({ sewn }) => isSame(decidedIn(sewn), now)) ?? null;
}

/** A work of its own that goes on from a trial: it has that trial and those before it. */
export function branchFrom(work: Work, trial: Trial): Work {
  const { trials = [] } = work;
  const returned = applyCommand(work, { kind: "returnToTrial", trial: trial.id });
  return { ...returned, trials: trials.slice(Math.max(0, trials.indexOf(trial))), unread: {} };
}

/** The same as it was sewn, with all trials: what it was made of stays as it is. */
export const backInCopy = (work: Work, trial: Trial): Work => ({
  ...applyCommand(work, { kind: "returnToTrial", trial: trial.id }),
  unread: {},
});
