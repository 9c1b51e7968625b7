/** The garments of one wearer that fit: of every work the newest trial that was closed to be kept. */
import type { Trial } from "../decisions/trial";
import type { Decided } from "../decisions/decided";
import type { Work } from "../decisions/work";

/** A work as it is found among others. */
export interface FoundWork {
  readonly id: string;
  readonly work: Work;
}

export interface KeptGarment {
  readonly workId: string;
  /** The name of its work. */
  readonly name: string;
  readonly trial: Trial;
  /** What was sewn, and nothing that was taken or changed after: only that was seen to fit. */
  readonly kept: Decided;
}

/** A wearer's name as two works may have it. */
const asNamed = (wearer: string | undefined): string => (wearer ?? "").trim().toLowerCase();

/** Whether two works are for one wearer: by name, or the very same work. */
export const isOfWearer = (a: FoundWork, b: FoundWork): boolean =>
  a.id === b.id || (asNamed(a.work.wearer) !== "" && asNamed(a.work.wearer) === asNamed(b.work.wearer));

/** @returns one of each work, those trials left out that another work has too, as its copy does */
export function keptGarments(found: readonly FoundWork[]): readonly KeptGarment[] {
  const garments: KeptGarment[] = [];
  for (const { id, work } of found) {
    const trial = work.trials?.find(({ verdict }) => verdict === "keep");
    if (trial === undefined || garments.some((one) => one.trial.id === trial.id)) continue;
    garments.push({ workId: id, name: work.name, trial, kept: trial.sewn });
  }
  return garments;
}

/** The trials of a work that are kept as her base, the newest first; a file written by hand may call one a base that is not kept. */
export const basesOf = ({ trials = [] }: Work): readonly Trial[] =>
  trials.filter(({ base, verdict }) => base === true && verdict === "keep");
