/** What is counted over many wearers, as rows of a table. */
import { isAnswered, isLoose, isRight, isWorse, type Played } from "./loop";
import type { TruthName } from "./truths";

export interface Tally {
  readonly wearers: number;
  /** Right at first, and after each trial. */
  readonly right: readonly number[];
  /** Right, and nothing else brought further off by more than is seen. */
  readonly rightUnharmed: readonly number[];
  readonly worse: readonly number[];
  /** Wearers that have a truth without a row; of them, with nothing altered in vain at the end. */
  readonly loose: number;
  readonly unexplained: number;
  /** Mean of all that is off, mm, at first and after each trial. */
  readonly sum: readonly number[];
  readonly failed: number;
}

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);

export function tallyOf(played: readonly Played[], trials: number): Tally {
  const stages = Array.from({ length: trials + 1 }, (_, at) => at);
  const share = (holds: (one: Played, at: number) => boolean): readonly number[] =>
    stages.map((at) => mean(played.map((one) => (holds(one, at) ? 1 : 0))));
  const loose = played.filter(({ wearer }) => wearer.truths.some(isLoose));
  return {
    wearers: played.length,
    right: share((one, at) => holdsAt(one, at, isRight)),
    rightUnharmed: share((one, at) => holdsAt(one, at, (of, stage) => isRight(of, stage) && stage.inVain === 0)),
    worse: share((one, at) => holdsAt(one, at, isWorse)),
    loose: loose.length,
    unexplained: mean(loose.map(({ stages: all }) => ((all.at(-1)?.inVain ?? 0) === 0 ? 1 : 0))),
    sum: stages.map((at) => mean(played.map(({ stages: all }) => all[at]?.sum ?? 0))),
    failed: played.reduce((sum, { failed }) => sum + failed, 0),
  };
}

type At = Played["stages"][number];

const holdsAt = (one: Played, at: number, holds: (one: Played, stage: At) => boolean): boolean => {
  const stage = one.stages[at];
  return stage !== undefined && holds(one, stage);
};

export interface OfTruth {
  readonly name: TruthName;
  readonly count: number;
  /** How many are answered at first and after each trial; of one that no dimension is about: with nothing altered in vain. */
  readonly answered: readonly number[];
}

export function tallyTruths(played: readonly Played[], trials: number): readonly OfTruth[] {
  const found = new Map<TruthName, boolean[][]>();
  for (const { wearer, stages } of played)
    for (const [at, truth] of wearer.truths.entries()) {
      const row = stages
        .slice(0, trials + 1)
        .map(({ left, inVain }) => (isLoose(truth) ? inVain === 0 : isAnswered(left[at] ?? 0)));
      found.set(truth.name, [...(found.get(truth.name) ?? []), row]);
    }
  return [...found].map(([name, rows]) => ({
    name,
    count: rows.length,
    answered: Array.from({ length: trials + 1 }, (_, at) => mean(rows.map((row) => (row[at] === true ? 1 : 0)))),
  }));
}
