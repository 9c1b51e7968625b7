/** Wearers: a good plan of a demo pattern for a surveyed woman, and one to three hidden truths of her body. The same for a seed. */
import type { Pattern, StyleName } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { tapesOf } from "../../../src/core/measures/tape";
import type { Plan } from "../../../src/core/plan/plan";
import { women1988 } from "../../support/surveys";
import { demoPatterns, tapedBy } from "../../support/surveyTally";
import { testWork } from "../../support/works";
import { HALVES, idealWork, measured, needsOf, ownOf, residualsOf, soundPlan, type OnHalves } from "./body";
import { chancesOf, type Chances } from "./chances";
import type { Dimension } from "./dimensions";
import { hasRow, kindOf, LOOSE_NAMES, ROW_NAMES, type Truth, type TruthName } from "./truths";

export interface Wearer {
  readonly seed: number;
  readonly work: Work;
  readonly plan: Plan;
  readonly truths: readonly Truth[];
  readonly needs: OnHalves;
}

/** How many truths have no row. */
const LOOSE = 0.2;
/** A body that cannot be planned, or whose truths cannot be answered together, is drawn again, so often. */
const TRIES = 60;
/** mm. What the right alterations may leave of each truth. */
const IDEAL_LEAVES = 4;

let patterns: readonly Pattern[] | null = null;

/** Every demo pattern that is drafted from its chart, and the first princess one with its seam from the shoulder too. */
function patternsOf(): readonly Pattern[] {
  if (patterns !== null) return patterns;
  const drafted = demoPatterns().filter(({ own }) => own === undefined);
  const shoulder = drafted
    .filter(({ style }) => style === "princessArmhole")
    .map((pattern): Pattern => ({ ...pattern, style: "princessShoulder" }));
  patterns = [...drafted, ...shoulder];
  return patterns;
}

/** A work with a plan of which every line of the ledger is made. */
function firstWork(chances: Chances, style?: StyleName): { readonly work: Work; readonly plan: Plan } {
  for (let tries = 0; tries < TRIES; tries += 1) {
    const pattern = chances.one(patternsOf().filter((one) => style === undefined || one.style === style));
    const { bustGirth = 0, upperChestGirth = 0, waistGirth = 0, hipGirth = 0 } = tapedBy(chances.one(women1988));
    const work: Work = {
      ...testWork,
      pattern,
      tapes: tapesOf({ bustGirth, upperChestGirth, waistGirth, hipGirth }),
    };
    const plan = soundPlan(work);
    if (plan !== null) return { work, plan };
  }
  throw new Error("no body that can be planned");
}

/** Which truths a garment can have at all. */
function possible(names: readonly TruthName[], { left }: OnHalves, { pattern }: Work): readonly TruthName[] {
  return names.filter((name) => {
    const { needs, only } = kindOf(name);
    if (only === "basque") return pattern.length === "hip";
    if (only === "princess") return pattern.style.startsWith("princess");
    const [first] = Object.keys(needs);
    return first === undefined || Object.keys(left).includes(first);
  });
}

const overlaps = (a: readonly Dimension[], b: readonly Dimension[]): boolean => a.some((one) => b.includes(one));

function truthsOf(count: number, base: OnHalves, work: Work, chances: Chances): readonly Truth[] {
  const truths: Truth[] = [];
  for (let tries = 0; tries < TRIES && truths.length < count; tries += 1) {
    const names = chances.is(LOOSE) ? LOOSE_NAMES : ROW_NAMES;
    const name = chances.one(possible(names, base, work));
    const { amounts, oneSided = 0 } = kindOf(name);
    const truth: Truth = {
      name,
      amount: Math.round(chances.from(...amounts)),
      ...(chances.is(oneSided) ? { half: chances.one(HALVES) } : {}),
    };
    const own = ownOf(truth, base.left);
    if (truths.some((one) => one.name === name || overlaps(own, ownOf(one, base.left)))) continue;
    truths.push(truth);
  }
  return truths;
}

/** What the right alterations, made together, leave of the truths that have a row, mm; null where they cannot be made. */
function idealLeaves({ work, plan, truths, needs }: Omit<Wearer, "seed">): number | null {
  const known = truths.filter(({ name }) => hasRow(name));
  const ideal = idealWork(work, plan, known);
  const made = ideal === null ? null : soundPlan(ideal);
  if (made === null) return null;
  const left = residualsOf(needs, made);
  return Math.max(
    0,
    ...known.flatMap((truth) =>
      ownOf(truth, needs.left).flatMap((name) => HALVES.map((half) => Math.abs(left[half][name] ?? 0))),
    ),
  );
}

/** A wearer with so many truths, each of which can be known and answered or has no row. */
export function wearerOf(seed: number, count: number): Wearer {
  const chances = chancesOf(seed * 7919 + 31 * count + 5);
  for (let tries = 0; tries < TRIES; tries += 1) {
    const { work, plan } = firstWork(chances);
    const truths = truthsOf(count, measured(plan), work, chances);
    const needs = truths.length === count ? needsOf(work, plan, truths) : null;
    if (needs === null) continue;
    const leaves = idealLeaves({ work, plan, truths, needs });
    if (leaves !== null && leaves <= IDEAL_LEAVES) return { seed, work, plan, truths, needs };
  }
  throw new Error(`no wearer for seed ${seed}`);
}

/** A wearer of a style with the truths given; null where the garment cannot have them, or cannot be altered so. */
export function wearerWith(style: StyleName, truths: readonly Truth[], seed = 1): Wearer | null {
  const { work, plan } = firstWork(chancesOf(seed), style);
  const hip: Work = { ...work, pattern: { ...work.pattern, length: "hip" } };
  const whole = soundPlan(hip) ?? plan;
  const on = whole === plan ? work : hip;
  const base = measured(whole);
  if (truths.some(({ name }) => !possible([name], base, on).includes(name))) return null;
  const needs = needsOf(on, whole, truths);
  return needs === null ? null : { seed, work: on, plan: whole, truths, needs };
}
