/** A trial's record read: its lines together, the answers to them ranked, what is left unexplained. */
import { HALVES, type Alteration, type Half } from "../decisions/alteration";
import type { Trial, TrialCheck } from "../decisions/trial";
import type { Decided, Picks } from "../decisions/decided";
import { newlyFailing } from "../plan/newlyFailing";
import type { Plan } from "../plan/plan";
import type { PlanFailure } from "../plan/planFailure";
import { planOf } from "../plan/planOf";
import { putOrTakeOut } from "../plan/putAlteration";
import { remember } from "../remember";
import { ok, type Result } from "../result";
import { isSame } from "../same";
import { alterationsFor, canBeMade, canBeOnOneHalf, type Altered, type ToAlter } from "./alterationsFor";
import { looksBefore } from "./looksBefore";
import { readLines, type ReadLine } from "./recordLines";
import { RULE_NAMES, RULES } from "./rules";
import { DENIED_BY, findingsOf, isShownBy, type Findings, type Supposed, type Weighed } from "./score";
import { sewnOffBy } from "./sewnOff";
import { sizesOf } from "./sewnSizes";
import { supposeCauses } from "./suppose";
import type { Cause, SignAt, TrialAnswer, TrialReading } from "./trialReading";

/** Answers that are told. */
const TOLD = 4;
/** Of the sets of causes so many of the best are looked at: of many that are much alike but the best is told. */
const LOOKED_AT = 400;
/** A sign as likely as this is expected; one less likely is not explained by the cause alone (our own choice). */
const EXPECTED = 0.4;
const EXPLAINED = 0.12;
/** Signs to look for that are told. */
const LOOKS = 3;
/** What an answer is put back by that makes a check fail which held: as one less probable by a factor of three (our own choice). */
const SPOILS = 1.1;
/** An answer less probable than the best by more than this is not told, as a logarithm: one in fifty (our own choice). */
const FAR_BEHIND = 4;

/**
 * Reads a trial.
 *
 * @param trials the trials of its work, the newest first: what was seen at those before it is read with it
 * @returns answers counted from what the toile was sewn with, the most probable first; or why what was sewn has no plan
 */
export const readTrial = (trial: Trial, trials: readonly Trial[] = NONE): Result<TrialReading, PlanFailure> =>
  read({ trial, trials });

const NONE: readonly Trial[] = [];

interface ToRead {
  readonly trial: Trial;
  readonly trials: readonly Trial[];
}

const read = remember(["trial", "trials"], ({ trial, trials }: ToRead): Result<TrialReading, PlanFailure> => {
  const planned = planOf(trial.sewn);
  return planned.ok ? ok(readOn(trial, planned.value, trials)) : planned;
});

function readOn(trial: Trial, plan: Plan, trials: readonly Trial[]): TrialReading {
  const { sewn, checks = {} } = trial;
  const all = readLines(trial.observations);
  const sewnOff = sewnOffBy(trial, plan, all);
  const bySewing = new Set(sewnOff.flatMap(({ explains }) => explains));
  const lines = all.filter(({ id }) => !bySewing.has(id));
  const rules = RULES.filter((rule) => canBeMade(rule, plan));
  const findings = findingsOf({ lines, checks, altered: [] }, looksBefore(trial, trials));
  const sets = supposeCauses(rules, findings, (rule) => canBeOnOneHalf(rule, sewn)).slice(0, LOOKED_AT);
  const answers: (Answered & { readonly set: Weighed; readonly rank: number })[] = [];
  for (const set of sets) {
    if (answers.length >= TOLD) break;
    if (set.score < (answers[0]?.set.score ?? set.score) - FAR_BEHIND) continue;
    if (answers.some((better) => isMoreOf(set, better.set))) continue;
    const answer = answerOf(set, { sewn, plan, lines, findings, checks });
    if (answer === null || answers.some((better) => isSame(asAltered(better), asAltered(answer)))) continue;
    const spoils = newlyFailing(sewn, answer.after).length > 0;
    answers.push({ ...answer, set, rank: set.score - (spoils ? SPOILS : 0) });
  }
  const ranked = answers.toSorted((a, b) => b.rank - a.rank);
  const told = ranked.map((answer, at): TrialAnswer => {
    const { set, rank: _, after: __, ...rest } = answer;
    return { ...rest, tellsApart: tellsApart(set, (ranked[at + 1] ?? ranked[at - 1])?.set ?? null, findings) };
  });
  return {
    read: all.map(({ id }) => id),
    answers: told,
    unexplained: lines.map(({ id }) => id).filter((id) => !told.some(({ explains }) => explains.includes(id))),
    sewnOff,
  };
}

/** Whether a set is a better one and something more: what the better one leaves, it left as false. */
const isMoreOf = (set: Weighed, better: Weighed): boolean =>
  better.causes.every((cause) =>
    set.causes.some(({ rule, halves }) => rule.name === cause.rule.name && halves.length === cause.halves.length),
  );

interface Answered extends Omit<TrialAnswer, "tellsApart"> {
  /** What is decided with it. */
  readonly after: Decided;
}

interface Around {
  readonly sewn: Decided;
  readonly plan: Plan;
  readonly lines: readonly ReadLine[];
  readonly findings: Findings;
  readonly checks: Readonly<Partial<Record<TrialCheck, boolean>>>;
}

/** A set as an answer; null where the pieces cannot be altered so. */
function answerOf({ causes: supposed, amounts, measured }: Weighed, around: Around): Answered | null {
  const causes = supposed
    .map((cause, at) => ({ ...cause, amount: amounts[at] ?? 0, isMeasured: measured[at] === true }))
    .toSorted((a, b) => tradeOrder(a) - tradeOrder(b));
  const altered = alterationsFor(causes, around);
  const isByHand = causes.every(({ rule }) => rule.isByHand === true);
  if (!isByHand && altersNothing(altered)) return null;
  const made = madeOf(around.sewn, altered);
  if (made === null) return null;
  const explains = around.lines.filter((line) => causes.some((cause) => explainsLine(cause, line))).map(({ id }) => id);
  return {
    key: causes.map(keyOf).join("+"),
    causes: causes.map((cause) => causeTold(cause, cause.isMeasured, around)),
    explains,
    leaves: around.lines.map(({ id }) => id).filter((id) => !explains.includes(id)),
    alterations: made.altered.alterations,
    after: made.after,
    ...(made.less.length === 0 ? {} : { less: made.less }),
    ...(altered.bustAlteration === null ? {} : { bustAlteration: altered.bustAlteration }),
    ...(altered.halfCups === null ? {} : { halfCups: altered.halfCups }),
  };
}

const altersNothing = ({ alterations, bustAlteration, halfCups }: Altered): boolean =>
  alterations.length === 0 && bustAlteration === null && halfCups === null;

const tradeOrder = ({ rule, halves }: Supposed): number =>
  2 * RULE_NAMES.indexOf(rule.name) + (halves.length === 1 && halves[0] === "right" ? 1 : 0);

const halfOf = ({ halves }: Supposed): Half | undefined => (halves.length === HALVES.length ? undefined : halves[0]);

const keyOf = (cause: Supposed): string => {
  const half = halfOf(cause);
  return half === undefined ? cause.rule.name : `${cause.rule.name}-${half}`;
};

const explainsLine = (cause: Supposed, line: ReadLine): boolean => (isShownBy(cause, line)?.likely ?? 0) >= EXPLAINED;

/** What an answer alters. */
export const asAltered = ({
  alterations,
  bustAlteration,
  halfCups,
}: Pick<TrialAnswer, "alterations" | "bustAlteration" | "halfCups">): Altered => ({
  alterations,
  bustAlteration: bustAlteration ?? null,
  halfCups: halfCups ?? null,
});

/** What is decided with an answer in it. */
function withAltered(sewn: Decided, { alterations, bustAlteration, halfCups }: Altered): Decided {
  const picks: Picks = {
    ...sewn.picks,
    ...(bustAlteration === null && halfCups === null ? {} : sizesOf(sewn)),
    ...(bustAlteration === null ? {} : { bustAlteration }),
    ...(halfCups === null ? {} : { halfCups }),
  };
  return { ...sewn, picks, alterations: alterations.reduce(putOrTakeOut, sewn.alterations) };
}

/** Alterations as far as they can be made on what was sewn. */
interface Made {
  readonly altered: Altered;
  /** What is decided with them. */
  readonly after: Decided;
  /** Ids of those that the pieces do not give the whole amount. */
  readonly less: readonly string[];
}

/** What can be made of an answer: less of an amount that is too much; null where anything of it cannot be made at all. */
function madeOf(sewn: Decided, altered: Altered): Made | null {
  if (altersNothing(altered)) return { altered, after: sewn, less: [] };
  const after = withAltered(sewn, altered);
  const refused = refusedOf(sewn, altered, after);
  if (refused === null) return null;
  if (refused.length === 0) return { altered, after, less: [] };
  const alterations = altered.alterations.map((alteration): Alteration => {
    const entry = refused.find(({ id }) => id === alteration.id);
    if (entry === undefined || entry.outcome.ok || alteration.kind !== "fit") return alteration;
    const { failure } = entry.outcome;
    return failure.code === "alteration/too-much" ? { ...alteration, amount: Math.trunc(failure.most) } : alteration;
  });
  const less = { ...altered, alterations: alterations.filter((one) => one.kind !== "fit" || one.amount !== 0) };
  const [isOne] = less.alterations;
  const afterLess = withAltered(sewn, less);
  if (isOne === undefined || refusedOf(sewn, less, afterLess)?.length !== 0) return null;
  return {
    altered: less,
    after: afterLess,
    less: alterations.flatMap(({ id }, at) => (altered.alterations[at] === alterations[at] ? [] : [id])),
  };
}

/** What an answer asks for and the pieces do not give; null where there is no plan with it. */
function refusedOf(sewn: Decided, altered: Altered, after: Decided): Plan["ledger"] | null {
  const plan = planOf(after);
  const before = planOf(sewn);
  if (!plan.ok || !before.ok) return null;
  const failed = before.value.ledger.filter(({ outcome }) => !outcome.ok).map(({ id }) => id);
  const asked = altered.alterations.map(({ id }) => id);
  return plan.value.ledger.filter(({ id, outcome }) => !outcome.ok && (asked.includes(id) || !failed.includes(id)));
}

function causeTold(cause: ToAlter, isMeasured: boolean, { lines, findings, checks }: Around): Cause {
  const half = halfOf(cause);
  const shown = lines.filter((line) => explainsLine(cause, line));
  const marks = cause.rule.usual === 0 ? shown.flatMap(({ mark }) => (mark === null ? [] : [mark])) : [];
  const marked = Math.max(0, ...marks.map(({ out, down }) => Math.hypot(out, down)));
  return {
    rule: cause.rule.name,
    ...(half === undefined ? {} : { half }),
    amount: cause.rule.isByHand === true ? 0 : Math.round(marks.length > 0 ? marked : cause.amount),
    amountBy: isMeasured || marks.length > 0 ? "measured" : "usual",
    explains: shown.map(({ id }) => id),
    expects: unseen(cause, findings),
    against: deniedOf(cause, checks),
  };
}

/** Signs that a cause should show and that were not seen, the likeliest first. */
const unseen = (cause: Supposed, { lines }: Findings): readonly SignAt[] => {
  const half = halfOf(cause);
  return cause.rule.shows
    .filter(({ place, sign, likely }) => likely >= EXPECTED && !lines.some((l) => l.place === place && l.sign === sign))
    .toSorted((a, b) => b.likely - a.likely)
    .map(({ place, sign }) => ({ place, sign, ...(half === undefined ? {} : { half }) }))
    .slice(0, LOOKS);
};

/** Ticks that say a sign is not there which a cause should show. */
function deniedOf({ rule }: Supposed, checks: Around["checks"]): readonly TrialCheck[] {
  const ticked = (["hemLevel", "waistOnWaist", "sideSeamsUpright", "shouldersStay"] as const).filter(
    (check) => checks[check] === true,
  );
  return ticked.filter((check) =>
    (DENIED_BY[check] ?? []).some(([place, sign]) =>
      rule.shows.some((shown) => shown.place === place && shown.sign === sign && shown.likely >= EXPECTED),
    ),
  );
}

const isIn = (list: readonly SignAt[], one: SignAt): boolean =>
  list.some(({ place, sign }) => place === one.place && sign === one.sign);

/** What one set should show and the other not, and was not seen yet. */
function tellsApart(set: Weighed, other: Weighed | null, findings: Findings): TrialAnswer["tellsApart"] {
  if (other === null) return [];
  const signsOf = ({ causes }: Weighed): readonly SignAt[] => causes.flatMap((cause) => unseen(cause, findings));
  const [own, others] = [signsOf(set), signsOf(other)];
  return [
    ...own.filter((one) => !isIn(others, one)).map((look) => ({ look, speaksFor: true })),
    ...others.filter((one) => !isIn(own, one)).map((look) => ({ look, speaksFor: false })),
  ].slice(0, LOOKS);
}
