/** Fittings one after the other: the mirror shows what is left, an advisor answers, the garment is made anew and measured afresh. */
import type { Trial } from "../../../src/core/decisions/trial";
import type { Work } from "../../../src/core/decisions/work";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import type { Plan } from "../../../src/core/plan/plan";
import { HALVES, ownOf, residualsOf, type OnHalves } from "./body";
import { chancesOf } from "./chances";
import { DIMENSIONS } from "./dimensions";
import { lookInMirror, USUAL_NOISE, type Noise } from "./mirror";
import { hasRow, type Truth } from "./truths";
import type { Wearer } from "./wearers";

/** Takes the first answer to a trial: the work with it. The trial is the newest of the work's own. */
export type Advisor = (trial: Trial, work: Work) => Work;

/** mm of cloth: a truth within it is answered; and more than it in all is worse. */
const RIGHT_WITHIN = 8;
const WORSE_BY = 8;
/** mm of cloth. What no truth is about and was brought further off by more was altered in vain. */
const UNMOVED = 4.5;

export interface Stage {
  /** What is left of each truth of a dimension, the worst half of it, mm; of one without, 0. */
  readonly left: readonly number[];
  /** All that is off, of every dimension the worse half, added up, mm. */
  readonly sum: number;
  /** Dimensions that are further off than at first by more than is seen, though no truth with a row is about them. */
  readonly inVain: number;
  readonly observations: number;
}

export interface Played {
  readonly wearer: Wearer;
  /** Before any trial, and after each. */
  readonly stages: readonly Stage[];
  /** Trials at which the advisor threw, or made a work of which there is no plan. */
  readonly failed: number;
}

const worstOf = (residuals: OnHalves, name: (typeof DIMENSIONS)[number]): number =>
  Math.max(...HALVES.map((half) => Math.abs(residuals[half][name] ?? 0)));

function stageOf({ truths, needs }: Wearer, start: OnHalves, residuals: OnHalves, observations: number): Stage {
  const known = truths.filter(({ name }) => hasRow(name)).flatMap((truth) => ownOf(truth, needs.left));
  return {
    left: truths.map((truth) => Math.max(0, ...ownOf(truth, needs.left).map((name) => worstOf(residuals, name)))),
    sum: DIMENSIONS.reduce((sum, name) => sum + worstOf(residuals, name), 0),
    inVain: DIMENSIONS.filter(
      (name) => !known.includes(name) && worstOf(residuals, name) > worstOf(start, name) + UNMOVED,
    ).length,
    observations,
  };
}

/** Plays so many trials with one wearer. The same wearer sees the same in the first of them, whoever advises. */
export function play(wearer: Wearer, advisor: Advisor, trials: number, noise: Noise = USUAL_NOISE): Played {
  let { work, plan }: { work: Work; plan: Plan } = wearer;
  const start = residualsOf(wearer.needs, plan);
  let residuals = start;
  const stages: Stage[] = [stageOf(wearer, start, start, 0)];
  let failed = 0;
  for (let number = 1; number <= trials; number += 1) {
    const trial = lookInMirror({
      work,
      plan,
      residuals,
      truths: wearer.truths,
      id: `trial-${number}`,
      chances: chancesOf(wearer.seed * 104_729 + wearer.truths.length * 977 + number),
      noise,
    });
    const recorded: Work = { ...work, trials: [trial, ...(work.trials ?? [])] };
    const answered = answeredBy(advisor, trial, recorded);
    const next = answered === null ? null : derivePlan(answered);
    if (answered === null || next === null || !next.ok) failed += 1;
    else [work, plan] = [answered, next.value];
    residuals = residualsOf(wearer.needs, plan);
    stages.push(stageOf(wearer, start, residuals, trial.observations.length));
  }
  return { wearer, stages, failed };
}

function answeredBy(advisor: Advisor, trial: Trial, work: Work): Work | null {
  try {
    return advisor(trial, work);
  } catch {
    return null;
  }
}

/** Whether every truth that can be known is answered. */
export const isRight = ({ wearer }: Played, stage: Stage): boolean =>
  wearer.truths.every(({ name }, at) => !hasRow(name) || (stage.left[at] ?? 0) <= RIGHT_WITHIN);

/** Whether the garment is further off than it was at first. */
export const isWorse = ({ stages }: Played, stage: Stage): boolean => stage.sum > (stages[0]?.sum ?? 0) + WORSE_BY;

export const isAnswered = (left: number): boolean => left <= RIGHT_WITHIN;
export const isLoose = ({ name }: Truth): boolean => !hasRow(name);
