/** The sets of causes that explain a record, the most probable first. */
import { HALVES, type Half } from "../decisions/alteration";
import type { ReadLine } from "./recordLines";
import type { Rule } from "./rules";
import { isShownBy, weigh, type Findings, type Supposed, type Weighed } from "./score";

/** No more causes than this are supposed at once: three, and one more where it still helps. */
const TOGETHER = 3;
const MOST_TOGETHER = 4;
/** So many single causes are tried together: the likeliest by themselves. */
const TRIED = 22;

/** A row on both halves, and on each half alone where only that half shows it. */
function supposedOf(rule: Rule, lines: readonly ReadLine[], canBeOnOne: boolean): readonly Supposed[] {
  const whole: Supposed = { rule, halves: HALVES };
  const shown = lines.filter((line) => isShownBy(whole, line) !== null);
  const [only] = shown;
  if (only === undefined || (shown.length === 1 && isFaint(whole, only))) return [];
  if (rule.isCentre === true || !canBeOnOne) return [whole];
  const isOf = (half: Half): boolean => shown.some(({ halves }) => halves.length === 1 && halves.includes(half));
  const ofHalves = HALVES.filter(isOf).map((half): Supposed => ({ rule, halves: [half] }));
  return rule.isOfOneHalf === true ? ofHalves : [whole, ...ofHalves];
}

/** A lone sign that a cause shows but seldom, and that was not measured, is none to alter for: it is left, to be looked at again. */
const isFaint = (cause: Supposed, line: ReadLine): boolean =>
  line.measured === null && line.mark === null && (isShownBy(cause, line)?.likely ?? 0) < FAINT;

/** A sign less likely than this is seldom seen (our own choice). */
const FAINT = 0.25;

const overlaps = (a: Supposed, b: Supposed): boolean =>
  a.rule.name === b.rule.name && a.halves.some((half) => b.halves.includes(half));

/**
 * @param rules      the rows that can be made on the garment
 * @param canBeOnOne whether a row can be made on one half alone
 * @returns sets of causes more probable than that nothing is amiss, the most probable first; the trade's order decides ties
 */
export function supposeCauses(
  rules: readonly Rule[],
  findings: Findings,
  canBeOnOne: (rule: Rule) => boolean,
): readonly Weighed[] {
  const nothing = weigh([], findings);
  if (nothing === null) return [];
  const singles = rules
    .flatMap((rule) => supposedOf(rule, findings.lines, canBeOnOne(rule)))
    .map((cause) => weigh([cause], findings))
    .filter((one) => one !== null)
    .toSorted((a, b) => b.score - a.score)
    .slice(0, TRIED);
  const all: Weighed[] = [...singles];
  let last: readonly Weighed[] = singles;
  for (let count = 2; count <= MOST_TOGETHER; count += 1) {
    const from = count <= TOGETHER ? last : last.toSorted((a, b) => b.score - a.score).slice(0, 1);
    last = from.flatMap((set) => joinedTo(set, count <= TOGETHER ? after(set, singles) : singles, findings));
    all.push(...last);
  }
  return byGain([nothing, ...all]).filter(({ score }) => score > nothing.score);
}

const keyOf = ({ rule, halves }: Supposed): string => `${rule.name} ${halves.join("+")}`;

/** Sets by what they are expected to gain: each cause by how probable it is among all that was supposed, less what a wrong one spoils. */
function byGain(all: readonly Weighed[]): readonly Weighed[] {
  const most = Math.max(...all.map(({ score }) => score));
  const chances = new Map<string, number>();
  let sum = 0;
  for (const { causes, score } of all) {
    const chance = Math.exp(score - most);
    sum += chance;
    for (const cause of causes) chances.set(keyOf(cause), (chances.get(keyOf(cause)) ?? 0) + chance);
  }
  const gains = new Map(
    all.map((set) => [
      set,
      set.causes.reduce((gain, cause) => gain + (chances.get(keyOf(cause)) ?? 0) / sum - SPOILT, 0),
    ]),
  );
  const gainOf = (set: Weighed): number => gains.get(set) ?? 0;
  return all.toSorted((a, b) => gainOf(b) - gainOf(a) || b.score - a.score);
}

/** A cause that is altered for and was none spoils as much as so much of one that is found gains (our own choice). */
const SPOILT = 0.35;

/** The singles that stand after the last of a set: so each set is made but once. */
const after = (set: Weighed, singles: readonly Weighed[]): readonly Weighed[] =>
  singles.slice(singles.findIndex(({ causes }) => causes[0] === set.causes.at(-1)) + 1);

/** A set with one cause more. */
const joinedTo = (set: Weighed, singles: readonly Weighed[], findings: Findings): readonly Weighed[] =>
  singles.flatMap(({ causes }) => {
    const [more] = causes;
    if (more === undefined || set.causes.some((cause) => overlaps(cause, more))) return [];
    const weighed = weigh([...set.causes, more], findings);
    return weighed === null ? [] : [weighed];
  });
