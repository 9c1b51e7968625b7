/** What earlier trials of the same work still tell: what was seen then, less what has been altered for it since. */
import { HALVES, type Alteration } from "../decisions/alteration";
import type { Decided } from "../decisions/decided";
import type { TakenAnswer, Trial } from "../decisions/trial";
import { isSame } from "../same";
import { readLines } from "./recordLines";
import { isRuleName, ruleOf } from "./rules";
import type { Look, Supposed } from "./score";

/** Earlier trials that are read with one: what lies further back was of another garment (our own choice). */
const TRIALS_READ_BACK = 2;

/**
 * @param trial  the one that is read
 * @param trials the trials of its work, the newest first
 * @returns the trials sewn before it, the newest first, as far back as answers alone led from each to the next
 */
export function looksBefore(trial: Trial, trials: readonly Trial[]): readonly Look[] {
  const at = trials.findIndex(({ id }) => id === trial.id);
  const looks: Look[] = [];
  let later = trial;
  let altered: readonly Supposed[] = [];
  for (const earlier of at < 0 ? [] : trials.slice(at + 1, at + 1 + TRIALS_READ_BACK)) {
    const { taken = [], sewn, observations, checks = {} } = earlier;
    if (!isAnsweredOnly(sewn, later.sewn, taken)) break;
    altered = [...altered, ...(isSame(sewn, later.sewn) ? [] : taken.flatMap(causesOf))];
    looks.push({ lines: readLines(observations), checks, altered });
    later = earlier;
  }
  return looks;
}

/** The causes of an answer, by the names it was kept with. */
const causesOf = ({ causes, half }: TakenAnswer): readonly Supposed[] =>
  causes.flatMap((name) => {
    const own = HALVES.find((one) => name.endsWith(`-${one}`));
    const rule = own === undefined ? name : name.slice(0, -own.length - 1);
    const on = own ?? half;
    return isRuleName(rule) ? [{ rule: ruleOf(rule), halves: on === undefined ? HALVES : [on] }] : [];
  });

/** Whether nothing else changed from one toile to the next than what answers asked for. */
function isAnsweredOnly(before: Decided, after: Decided, taken: readonly TakenAnswer[]): boolean {
  const ids = new Set(taken.flatMap(({ alterations }) => alterations));
  const left = (from: Decided, other: Decided): readonly Alteration[] =>
    from.alterations.filter((one) => !ids.has(one.id) && !other.alterations.some((same) => isSame(same, one)));
  const isBust = ids.has("bust") || ids.has("halfCups");
  return (
    left(before, after).length === 0 &&
    left(after, before).length === 0 &&
    isSame({ ...before, alterations: [], picks: {} }, { ...after, alterations: [], picks: {} }) &&
    (isBust || isSame(before.picks, after.picks))
  );
}
