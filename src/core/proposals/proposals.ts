/**
 * What follows from her lengths and widths for the pieces: proposals, each with what takes it, in the trade's order. They are
 * derived afresh from work and plan: one that was taken has nothing more to ask for, and one whose measure goes, goes with it.
 */
import { applyAlteration } from "../alterations/applyAlteration";
import { fitOf } from "../alterations/fit/index";
import type { Alteration, DartEndAlteration, FitAlteration } from "../decisions/alteration";
import type { PrintedLength } from "../decisions/pattern";
import { placeInOrder } from "../decisions/tradeOrder";
import type { Work } from "../decisions/work";
import { liesAlongBust } from "../pattern/dartNames";
import { setOf, type PieceSet } from "../pattern/pieceSet";
import { bodyOf } from "../measures/tape";
import { applyCommand, type Command } from "../plan/commands";
import { endOf, putOrRemove, snapStep, USUAL_HOLD } from "../plan/dartEdit";
import { amountCommand, appliesTo, useOn, usesOf } from "../plan/fitEdit";
import type { Plan } from "../plan/plan";
import { planOf } from "../plan/planOf";
import { remember } from "../remember";
import { LEAST_GAIN, READ_BACK, STANDS_BY } from "../tolerance";
import type { Mm } from "../units";
import { askedFor, type Altered, type Asked, type ComparedBy, type ProposedFit, type Reason } from "./askedFor";
import { bustDartsOf, compareMeasures, type Compared, type Comparison } from "./compare";
import { garmentLength } from "./garmentLengths";

export interface Proposal {
  readonly altered: Altered;
  readonly why: Reason;
  /** The alteration's amount as it stands (0: there is none), and as it would be. */
  readonly stands: Mm;
  readonly amount: Mm;
  /** What the measures ask for beyond what can be made; 0: nothing. */
  readonly missing: Mm;
  readonly from: readonly Compared[];
  /** What takes it, as one step. */
  readonly commands: readonly Command[];
}

/** Off, and with nothing proposed for it. */
export interface Unanswered {
  readonly compared: Compared;
  readonly because:
    /** No alteration here changes it. */
    | "noAlteration"
    /** Straps are shortened on the body. */
    | "straps"
    /** These pieces have not what the alteration is made on. */
    | "notOnPieces"
    /** No more of it can be made. */
    | "noRoom"
    /** The height alters nothing: the back waist length would tell. */
    | "measureBack";
}

export interface Advice {
  /** In the trade's order. */
  readonly proposals: readonly Proposal[];
  readonly unanswered: readonly Unanswered[];
  /** Held against the garment and as good as equal. */
  readonly agreeing: readonly Compared[];
  /** Taken, and these pieces have nothing of it. */
  readonly notOnPieces: readonly PrintedLength[];
  /** null: neither its width nor its depth was measured. */
  readonly bustPoint: HerBustPoint | null;
}

/** Where her bust point lies. */
interface HerBustPoint {
  /** Further out and lower than the pattern's, after any bust adjustment. */
  readonly out: Mm;
  readonly down: Mm;
}

interface Inputs {
  readonly plan: Plan;
  readonly work: Work;
}

const derived = remember(["plan", "work"], derive);

/** @param plan the plan of that very work */
export const proposalsOf = (work: Work, plan: Plan): Advice => derived({ plan, work });

function derive({ plan, work }: Inputs): Advice {
  const comparison = compareMeasures(work, plan);
  const found = [...firstAsked(comparison, work, plan), ...standingAsked(comparison, work, plan)].map((asked) =>
    asked.altered.kind === "fit" ? proposedFit(asked, asked.altered.fit, work, plan) : proposedDarts(asked, work, plan),
  );
  const proposals = found.filter((one) => "commands" in one);
  const refused = found.filter((one) => "because" in one);
  const isAsked = (one: Compared): boolean => proposals.some(({ from }) => from.includes(one));
  const unanswered = comparison.compared.flatMap((compared): readonly Unanswered[] => {
    if (compared.agrees || isAsked(compared)) return [];
    const why = whyUnanswered(compared, refused, work, kindOf(plan).hasStraps);
    return why === null ? [] : [{ compared, because: why }];
  });
  return {
    proposals: proposals.toSorted((a, b) => placeOf(a) - placeOf(b)),
    unanswered,
    agreeing: comparison.compared.filter(
      (one) => !isAsked(one) && !unanswered.some(({ compared }) => compared === one),
    ),
    notOnPieces: comparison.notOnPieces,
    bustPoint: herBustPoint(plan),
  };
}

function herBustPoint({ bustPoint: { own, printed } }: Plan): HerBustPoint | null {
  return own === null ? null : { out: own.x - printed.x, down: own.y - printed.y };
}

const byMeasure = (compared: readonly Compared[]): ComparedBy =>
  Object.fromEntries(compared.map((one) => [one.measure, one]));

const kindOf = ({ left }: Plan) => {
  const { strap, frontBand } = setOf(left.pieces);
  return { hasStraps: strap !== undefined, hasBand: frontBand !== undefined };
};

const askedOf = (compared: readonly Compared[], work: Work, plan: Plan): readonly Asked[] =>
  askedFor(byMeasure(compared), kindOf(plan)).map((asked) => lessOfOpposite(asked, work));

const firstAsked = ({ compared }: Comparison, work: Work, plan: Plan): readonly Asked[] =>
  askedOf(compared, work, plan);

/** A back is round or hollow: of the two, one that stands is made less before the other is asked for. */
const OPPOSITES: Readonly<Partial<Record<ProposedFit, ProposedFit>>> = { roundBack: "swayBack", swayBack: "roundBack" };

function lessOfOpposite(asked: Asked, work: Work): Asked {
  const opposite = asked.altered.kind === "fit" ? OPPOSITES[asked.altered.fit] : undefined;
  return opposite === undefined || standingFit(opposite, work) <= 0
    ? asked
    : { ...asked, altered: { kind: "fit", fit: opposite }, by: 0 - asked.by };
}

const DEPTHS: ReadonlySet<string> = new Set<ProposedFit>(["lengthAboveBust", "bustPointLevel", "strapLength"]);

const isDepth = ({ measure }: Compared): boolean => measure === "sideNeckToBustPoint";

/**
 * An alteration that stands is held to the measures more narrowly: whether they still ask for just that much. Not while what it
 * stands on asks for another one, which comes first.
 */
function standingAsked(comparison: Comparison, work: Work, plan: Plan): readonly Asked[] {
  const first = firstAsked(comparison, work, plan);
  const { compared } = comparison;
  const narrowed = (isNarrowed: (one: Compared) => boolean): readonly Compared[] =>
    compared.map((one) =>
      isNarrowed(one) ? { ...one, doubt: STANDS_BY, agrees: Math.abs(one.off) <= STANDS_BY } : one,
    );
  // How much of a length is length, and how much of it belongs above the bust, are two questions.
  const byDepth = askedOf(narrowed(isDepth), work, plan).filter(({ altered }) => isOfDepth(altered));
  const byRest = askedOf(
    narrowed((one) => !isDepth(one)),
    work,
    plan,
  ).filter(({ altered }) => !isOfDepth(altered));
  return [...byDepth, ...byRest]
    .filter(({ altered }) => standing(altered, work, plan) !== 0)
    .map((asked) => ({
      ...asked,
      from: asked.from.flatMap(({ measure }) => compared.find((one) => one.measure === measure) ?? []),
    }))
    .filter(({ from }) => !first.some((other) => other.from.some((one) => from.includes(one))));
}

const isOfDepth = (altered: Altered): boolean => altered.kind === "fit" && DEPTHS.has(altered.fit);

const standingFit = (fit: ProposedFit, work: Work): Mm => useOn(usesOf(work, fit), fit, "both").amount;

/** The amount that stands already: of a fit on both halves; of the darts how far out her redraws brought their ends. */
function standing(altered: Altered, work: Work, plan: Plan): Mm {
  if (altered.kind === "fit") return standingFit(altered.fit, work);
  const { upright } = bustDartsOf(setOf(plan.left.pieces));
  return upright === null ? 0 : 0 - endOf(work, upright, USUAL_HOLD).across;
}

/** null: another measure that goes with it explains it. */
function whyUnanswered(
  { measure, off }: Compared,
  refused: readonly Refused[],
  { tapes }: Work,
  hasStraps: boolean,
): Unanswered["because"] | null {
  if (measure === "height") return bodyOf(tapes).backWaistLength === undefined ? "measureBack" : null;
  if (measure === "neckBaseGirth") return "noAlteration";
  if (measure === "sideNeckToBustPoint" && hasStraps && off < 0) return "straps";
  return refused.find(({ asked }) => asked.from.some((one) => one.measure === measure))?.because ?? null;
}

/** What cannot be made at all. */
interface Refused {
  readonly asked: Asked;
  readonly because: "notOnPieces" | "noRoom";
}

function proposedFit(asked: Asked, fit: ProposedFit, work: Work, plan: Plan): Proposal | Refused {
  if (!appliesTo(plan, fit)) return { asked, because: "notOnPieces" };
  const use = useOn(usesOf(work, fit), fit, "both");
  const by = asked.by / gainOf(asked, fit, plan);
  const { least, most } = fitOf(fit).range;
  const step = snapStep(work.unit);
  const from = madeOf(use, plan);
  const changed = snapped(from + by, step);
  // Beyond nothing of it the opposite is asked for, once it is gone.
  const wanted = OPPOSITES[fit] !== undefined && from > 0 ? Math.max(0, changed) : changed;
  const within = Math.min(inwards(most, step), Math.max(inwards(least, step), wanted));
  // Less of what stands can always be made.
  const isLess = within * from >= 0 && Math.abs(within) <= Math.abs(from);
  const tried = isLess ? within : from + possible(within - from, { ...use, id: "proposed" }, plan, step);
  const amount = madeInWork(tried, use, work, step);
  if (Math.abs(amount - from) < STANDS_BY - READ_BACK) return { asked, because: "noRoom" };
  return {
    altered: asked.altered,
    why: asked.why,
    stands: use.amount,
    amount,
    missing: wanted - amount,
    from: asked.from,
    commands: [amountCommand(use, amount)],
  };
}

/** One that stands and is refused has changed nothing. */
const madeOf = ({ id, amount }: FitAlteration, { ledger }: Plan): Mm =>
  ledger.some((planned) => planned.id === id && !planned.outcome.ok) ? 0 : amount;

const snapped = (amount: Mm, step: Mm): Mm => Math.round(Math.round(amount / step) * step * 1e4) / 1e4;

/** To the last whole step on the way to a bound. */
const inwards = (bound: Mm, step: Mm): Mm => snapped(Math.trunc(bound / step) * step, step);

/** What a measure changes by for each millimetre of an alteration; 1 where it changes by just as much. */
function gainOf({ answers, by }: Asked, fit: ProposedFit, plan: Plan): number {
  if (answers === null) return 1;
  const { least, most } = fitOf(fit).range;
  const pieces = setOf(plan.left.pieces);
  const trial: FitAlteration = { kind: "fit", id: "proposed", fit, amount: Math.min(most, Math.max(least, by)) };
  const done = applyAlteration(pieces, trial, { bustPoint: plan.bustPoint.own ?? plan.bustPoint.printed });
  if (!done.ok || trial.amount === 0) return 1;
  const [before, after] = [garmentLength(answers, pieces), garmentLength(answers, done.value.pieces)];
  if (before === null || after === null) return 1;
  const gain = Math.abs(after - before) / Math.abs(trial.amount);
  return gain < LEAST_GAIN ? 1 : gain;
}

/** As much of a change as the pieces give. */
function possible(by: Mm, alteration: FitAlteration, plan: Plan, step: Mm): Mm {
  const trial = (amount: Mm) => made(setOf(plan.left.pieces), { ...alteration, amount }, plan);
  const first = trial(by);
  if (first.ok) return by;
  const { failure } = first;
  if (failure.code !== "alteration/too-much" || Math.sign(failure.most) !== Math.sign(by)) return 0;
  const less = inwards(failure.most, step);
  return Math.abs(less) < Math.abs(by) && trial(less).ok ? less : 0;
}

/** As much of an amount as is made in its place among the others: there the pieces are not yet what they become. */
function madeInWork(amount: Mm, use: FitAlteration, work: Work, step: Mm): Mm {
  const mostOf = (tried: Mm): Mm | null => {
    if (tried === 0) return null;
    const plan = planOf(applyCommand(work, amountCommand(use, tried)));
    const line = plan.ok ? plan.value.ledger.find(({ id, outcome }) => id === use.id && !outcome.ok) : undefined;
    if (line === undefined || line.outcome.ok) return null;
    const { failure } = line.outcome;
    return failure.code === "alteration/too-much" && Math.sign(failure.most) === Math.sign(tried) ? failure.most : 0;
  };
  const most = mostOf(amount);
  if (most === null) return amount;
  const less = inwards(most, step);
  return Math.abs(less) < Math.abs(amount) && mostOf(less) === null ? less : 0;
}

const made = (pieces: PieceSet, alteration: Alteration, { bustPoint }: Plan) =>
  applyAlteration(pieces, alteration, { bustPoint: bustPoint.own ?? bustPoint.printed });

/** The ends of the bust darts brought further out, or in: of an upright one across its axis, of one that lies along it. */
function proposedDarts(asked: Asked, work: Work, plan: Plan): Proposal | Refused {
  const pieces = setOf(plan.left.pieces);
  const { upright, lying } = bustDartsOf(pieces);
  if (upright === null) return { asked, because: "notOnPieces" };
  const step = snapStep(work.unit);
  const by = snapped(asked.by, step);
  const ends = [upright, lying]
    .filter((ref) => ref !== null)
    .map((ref): { readonly end: DartEndAlteration; readonly alone: DartEndAlteration } => {
      const end = endOf(work, ref, USUAL_HOLD);
      const move = liesAlongBust(ref.dart) ? { shorten: by, across: 0 } : { shorten: 0, across: 0 - by };
      return {
        end: { ...end, shorten: end.shorten + move.shorten, across: end.across + move.across },
        alone: { ...end, ...move },
      };
    });
  if (by === 0 || ends.some(({ alone }) => !made(pieces, alone, plan).ok)) return { asked, because: "noRoom" };
  const stands = standing(asked.altered, work, plan);
  return {
    altered: asked.altered,
    why: asked.why,
    stands,
    amount: stands + by,
    missing: 0,
    from: asked.from,
    commands: ends.map(({ end }) => putOrRemove(end)),
  };
}

/** Where it stands among alterations. */
function placeOf({ altered }: Proposal): number {
  const alteration: Alteration =
    altered.kind === "fit"
      ? { kind: "fit", id: "", fit: altered.fit, amount: 0 }
      : { kind: "dartGather", id: "", dart: { piece: "front", dart: "waistDart" } };
  return placeInOrder(alteration);
}
