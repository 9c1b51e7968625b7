/** An answer to a trial put into the work. */
import {
  HALVES,
  isMadeOn,
  isSameThing,
  onHalves,
  otherHalf,
  type Alteration,
  type Half,
} from "../decisions/alteration";
import type { Decided } from "../decisions/decided";
import type { TakenAnswer, Trial } from "../decisions/trial";
import type { Work } from "../decisions/work";
import type { Command } from "../plan/commands";
import { planOf } from "../plan/planOf";
import { idOnHalf } from "../plan/putAlteration";
import { alterationsFor, type Altered, type ToAlter } from "./alterationsFor";
import { readLines } from "./recordLines";
import { asAltered } from "./readTrial";
import { sizesOf } from "./sewnSizes";
import { ruleOf } from "./rules";
import type { TrialAnswer } from "./trialReading";

/**
 * Takes an answer, or tries it on one half alone. Amounts are counted from what the toile was sewn with, so one answer taken after
 * another takes its place: what that one altered stands as it was sewn again.
 *
 * @param half null: on the halves that the answer says
 */
export function answerCommand(work: Work, trial: Trial, answer: TrialAnswer, half: Half | null): Command {
  const altered = half === null ? asAltered(answer) : onOneHalf(trial, answer, half);
  const ids = altered.alterations.map(({ id }) => id);
  const taken: TakenAnswer = {
    causes: answer.causes.map(({ rule, half: own }) => (own === undefined ? rule : `${rule}-${own}`)),
    ...(half === null ? {} : { half }),
    because: answer.explains,
    alterations: [
      ...ids,
      ...(altered.bustAlteration === null ? [] : ["bust"]),
      ...(altered.halfCups === null ? [] : ["halfCups"]),
    ],
  };
  const undone = undoneOf(work, trial, altered.alterations, half);
  return {
    kind: "takeTrialAnswer",
    trial: trial.id,
    answer: taken,
    alterations: [...undone, ...altered.alterations],
    ...bustPicks(work, trial, altered),
  };
}

/** The same causes supposed on one half alone. */
function onOneHalf(trial: Trial, answer: TrialAnswer, half: Half): Altered {
  const planned = planOf(trial.sewn);
  if (!planned.ok) return asAltered(answer);
  const causes = answer.causes.map(({ rule, amount }): ToAlter => ({
    rule: ruleOf(rule),
    halves: [half],
    amount,
  }));
  return alterationsFor(causes, {
    sewn: trial.sewn,
    plan: planned.value,
    lines: readLines(trial.observations),
  });
}

/** What earlier answers to this trial altered, as it was sewn. */
function undoneOf(work: Work, trial: Trial, now: readonly Alteration[], half: Half | null): readonly Alteration[] {
  const { taken = [], sewn } = trial;
  return HALVES.filter((on) => half === null || on === half).flatMap((on) => {
    const replaced = taken.filter((one) => one.half === undefined || one.half === on);
    // Two that came out alike are one for both by now, under the name of both; one for both may be one for each.
    const ids = new Set(
      replaced.flatMap(({ alterations }) => alterations.filter((id) => isNamedOn(id, on)).map(wholeId)),
    );
    const standing = work.alterations.filter((one) => ids.has(wholeId(one.id)) && isMadeOn(one, on));
    return standing.flatMap((stands) => {
      const isAnew = now.some((one) => isSameThing(one, stands) && isMadeOn(one, on));
      if (isAnew) return [];
      const before = sewn.alterations.find((one) => isSameThing(one, stands) && isMadeOn(one, on));
      return [before === undefined ? ofNothing(onHalves(stands, on)) : onHalves(before, on)];
    });
  });
}

const wholeId = (id: string): string => idOnHalf(id, undefined);

/** Whether an alteration of that name is for a half, by its name. */
const isNamedOn = (id: string, on: Half): boolean => id !== idOnHalf(id, otherHalf(on));

/** The same alteration of no amount: it is taken out. */
function ofNothing(alteration: Alteration): Alteration {
  switch (alteration.kind) {
    case "fit":
      return { ...alteration, amount: 0 };
    case "dartEnd":
      return { ...alteration, shorten: 0, across: 0 };
    case "dartMouth":
      return { ...alteration, inner: 0, outer: 0 };
    case "dartPlace":
      return { ...alteration, by: 0 };
    case "dartPivot":
      return { ...alteration, share: 0 };
    case "dartLegs":
      return { ...alteration, bow: 0 };
    case "dartSplit":
    case "dartGather":
    case "dartSeam":
      return alteration;
  }
}

type BustPicks = Pick<
  Extract<Command, { readonly kind: "takeTrialAnswer" }>,
  "bustAlteration" | "halfCups" | "baseSize" | "cup"
>;

/**
 * The picks of the bust: as the answer asks, else as sewn where an earlier answer to this trial changed them. Base size and cup stay
 * those that the toile was sewn from: of another bust the planner would choose others, and what was seen is counted from these.
 */
function bustPicks(work: Work, { taken = [], sewn }: Trial, altered: Altered): BustPicks {
  const { bustAlteration, halfCups } = altered;
  const wasIn = (id: string): boolean => taken.some(({ alterations }) => alterations.includes(id));
  const bust = bustAlteration ?? (wasIn("bust") ? (sewn.picks.bustAlteration ?? null) : undefined);
  const cups = halfCups ?? (wasIn("halfCups") ? (sewn.picks.halfCups ?? null) : undefined);
  return {
    ...(bust === undefined || bust === work.picks.bustAlteration ? {} : { bustAlteration: bust }),
    ...(cups === undefined ? {} : { halfCups: cups }),
    ...(bustAlteration !== null || halfCups !== null
      ? sizesOf(sewn)
      : wasIn("bust") || wasIn("halfCups")
        ? sizesAsSewn(work, sewn)
        : {}),
  };
}

/** What was held for an earlier answer, as it was sewn again; what she picked herself since then stays. */
function sizesAsSewn({ picks }: Work, sewn: Decided): Pick<BustPicks, "baseSize" | "cup"> {
  const held = sizesOf(sewn);
  return {
    ...(picks.baseSize === held.baseSize ? { baseSize: sewn.picks.baseSize ?? null } : {}),
    ...(picks.cup === held.cup ? { cup: sewn.picks.cup ?? null } : {}),
  };
}
