/** Keys of the fields of a trial among those that could not be read. Ids of a file can be as long as a key may be. */
import type { Trial } from "../../core/decisions/trial";

const KEPT = 60;

export const trialField = ({ id }: Trial, name: string): string => `trial.${id.slice(0, KEPT)}.${name}`;

const OF_A_LINE = ["place", "towards", "amount", "out", "down", "changed"] as const;
type LineEntry = (typeof OF_A_LINE)[number];

/** By its place among the lines: what could not be read on one that is not there yet is kept too. */
export const lineField = (trial: Trial, line: number, name: LineEntry): string =>
  trialField(trial, `line${line}.${name}`);

export const lineFields = (trial: Trial, line: number): readonly string[] =>
  OF_A_LINE.map((name) => lineField(trial, line, name));
