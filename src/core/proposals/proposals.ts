/**
 * What follows from her lengths and widths for the pieces: proposals, each with what takes it, in the trade's order. They are
 * derived afresh from work and plan: one that was taken has nothing more to ask for, and one whose measure goes, goes with it.
 */
import { applyAlteration } from "../alterations/applyAlteration";
import { fitOf } from "../alterations/fit/index";
import type { Alteration, DartEndAlteration, FitAlteration } from "../decisions/alteration";
import { FIT_NAMES } from "../decisions/fitNames";
import type { PrintedLength } from "../decisions/pattern";
import { placeInOrder } from "../decisions/tradeOrder";
import type { Work } from "../decisions/work";
import { openDoubts } from "../bodies/tapeDoubts";
import { endFails } from "../dart/dartEndReading";
import { liesAlongBust } from "../pattern/dartNames";
import { isBasque, isFrontPiece } from "../pattern/pieceGroups";
import { setOf, type PieceSet } from "../pattern/pieceSet";
import type { MeasureName } from "../measures/measure";
import { isSameDart } from "../pattern/piece";
import { bodyOf, measuresOf as measuresOfTape } from "../measures/tape";
import { applyCommand, type Command } from "../plan/commands";
import { endOf, putOrRemove, snapStep, USUAL_HOLD } from "../plan/dartEdit";
import { amountCommand, appliesTo, useOn, usesOf } from "../plan/fitEdit";
import type { Plan, PlannedLevel } from "../plan/plan";
import { planOf } from "../plan/planOf";
import { settingOf } from "../plan/setDart";
import { remember } from "../remember";
import { GIRTH_TOLD, LEAST_GAIN, READ_BACK, STANDS_BY } from "../tolerance";
import type { Mm } from "../units";
import {
  askedFor,
  type Altered,
  type Asked,
  type ComparedBy,
  type Part,
  type ProposedFit,
  type Reason,
} from "./askedFor";
import { bustDartsOf, compareMeasures, type Compared, type Comparison } from "./compare";
import { garmentLength } from "./garmentLengths";
import { seenOnToile } from "./seenOnToile";

export interface Proposal {
  readonly altered: Altered;
  /**
   * `noLonger`: it stands, and nothing of it is asked for. `dartEnd`: her bust point agrees as far as tape and pattern tell, and
   * a check of where a dart ends fails all the same.
   */
  readonly why: Reason | "noLonger" | "dartEnd";
  /** The alteration's amount as it stands (0: there is none), and as it would be. */
  readonly stands: Mm;
  readonly amount: Mm;
  /** What the measures ask for beyond what can be made; 0: nothing. */
  readonly missing: Mm;
  /** Held against the garment without what stands of it. */
  readonly from: readonly Compared[];
  /** What the amount is the sum of, before it is rounded and made. */
  readonly parts: readonly Part[];
  /** Girths of the garment that it changes by more than is passed over. */
  readonly girths: readonly { readonly level: PlannedLevel["level"]; readonly by: Mm }[];
  /** What takes it, as one step. */
  readonly commands: readonly Command[];
}

/** A proposal before it is tried on the whole plan. */
type Draft = Omit<Proposal, "girths">;

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
    /** Less than half of it can be made. */
    | "littleRoom"
    /** The height alters nothing: the back waist length would tell. */
    | "measureBack"
    /** What goes by it was altered by what a toile showed. */
    | "toile";
}

export interface Advice {
  /** Doubted readings that what was held back rests on: to be settled first. */
  readonly heldBackBy: readonly MeasureName[];
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
  const changes = changesAsked(comparison, work, plan);
  const hasStanding = standingFits(work, plan).length > 0;
  const first = firstAsked(comparison, plan).filter(({ altered }) =>
    altered.kind === "fit" ? !hasStanding : standing(altered, work, plan) === 0,
  );
  const every = [
    ...changes,
    ...first.map((asked) =>
      asked.altered.kind === "fit"
        ? proposedFit(asked, asked.altered.fit, work, plan)
        : proposedDarts(asked, work, plan),
    ),
  ];
  const settled = settledByToile(work);
  const found = every.filter((one) => !basisOf(one).some((measure) => settled.has(measure)));
  /** What is left out takes the other measures that it rests on with it. */
  const leftOut = new Set([...settled, ...every.filter((one) => !found.includes(one)).flatMap(basisOf)]);
  const drafts = found.filter((one) => "commands" in one);
  const whole = drafts.filter((one) => !isMostlyMissing(one));
  const doubted = openDoubts(work).map(({ measure }) => measure);
  const restsOn = ({ from }: Draft): readonly MeasureName[] =>
    doubted.filter((one) => isOfFrame(one) || from.some(({ measure }) => measure === one));
  const drafted = [...whole, ...endsAsked(comparison, whole, work, plan)];
  const proposals = drafted.filter((one) => restsOn(one).length === 0).map((one) => withGirths(one, work, plan));
  const heldBack = drafted.filter((one) => restsOn(one).length > 0);
  const isDoubted = ({ measure }: Compared): boolean => doubted.some((one) => isOfFrame(one) || one === measure);
  const refused: readonly Refused[] = [
    ...found.filter((one) => "because" in one),
    ...drafts.filter(isMostlyMissing).map((asked) => ({ asked, because: "littleRoom" as const })),
  ];
  const isAsked = ({ measure }: Compared): boolean => drafted.some(({ from }) => measuresOf(from).includes(measure));
  const unsettled = comparison.compared.flatMap((compared): readonly Unanswered[] => {
    if (compared.agrees || isAsked(compared)) return [];
    const why = leftOut.has(compared.measure)
      ? "toile"
      : whyUnanswered(compared, refused, work, kindOf(plan).hasStraps);
    return why === null ? [] : [{ compared, because: why }];
  });
  const unanswered = unsettled.filter(({ compared }) => !isDoubted(compared));
  const isHeldBack = heldBack.length > 0 || unanswered.length < unsettled.length;
  const heldBackBy = doubted.filter(
    (one) =>
      isHeldBack &&
      (isOfFrame(one) ||
        heldBack.some((draft) => restsOn(draft).includes(one)) ||
        unsettled.some(({ compared }) => compared.measure === one)),
  );
  return {
    heldBackBy,
    proposals: proposals.toSorted((a, b) => placeOf(a) - placeOf(b)),
    unanswered,
    agreeing: comparison.compared.filter((one) => !isAsked(one) && !unsettled.some(({ compared }) => compared === one)),
    notOnPieces: comparison.notOnPieces,
    bustPoint: herBustPoint(plan),
  };
}

/** The base size goes by these, and with it every figure that is held against hers. */
const FRAME: readonly MeasureName[] = ["bustGirth", "upperChestGirth"];

const isOfFrame = (measure: MeasureName): boolean => FRAME.includes(measure);

/** So little of it can be made that it answers nothing. */
const isMostlyMissing = ({ missing, amount, stands }: Draft): boolean =>
  amount !== 0 && Math.abs(missing) > Math.abs(amount - stands);

const runAll = (work: Work, commands: readonly Command[]): Work => commands.reduce(applyCommand, work);

function withGirths(draft: Draft, work: Work, { levels }: Plan): Proposal {
  const after = planOf(runAll(work, draft.commands));
  const girths = levels.flatMap(({ level, finished }) => {
    const now = after.ok ? after.value.levels.find((one) => one.level === level) : undefined;
    const by = now === undefined ? 0 : now.finished - finished;
    return Math.abs(by) > GIRTH_TOLD ? [{ level, by }] : [];
  });
  return { ...draft, girths };
}

const BUST_POINT: readonly PrintedLength[] = ["bustPointWidth", "sideNeckToBustPoint"];

/** The ends of darts whose check fails by her own bust point, set as usual, where no proposal goes by that bust point. */
function endsAsked({ compared }: Comparison, others: readonly Draft[], work: Work, plan: Plan): readonly Draft[] {
  const from = compared.filter(({ measure }) => BUST_POINT.includes(measure));
  if (plan.bustPoint.own === null || from.length === 0) return [];
  if (others.some((one) => measuresOf(one.from).some((measure) => BUST_POINT.includes(measure)))) return [];
  if (from.some(({ measure }) => settledByToile(work).has(measure))) return [];
  const commands: Command[] = [];
  for (const half of ["left", "right"] as const) {
    for (const { ref } of plan[half].darts) {
      const now = planOf(runAll(work, commands));
      const dart = now.ok ? now.value[half].darts.find((one) => isSameDart(one.ref, ref)) : undefined;
      if (dart === undefined || dart.endJudged === null || !endFails(dart.endJudged)) continue;
      const setting = settingOf(runAll(work, commands), ref, half);
      if (setting !== null) commands.push(setting.command);
    }
  }
  return commands.length === 0
    ? []
    : [
        {
          altered: { kind: "dartEnds" },
          why: "dartEnd",
          stands: 0,
          amount: 0,
          missing: 0,
          from,
          parts: [],
          commands,
        },
      ];
}

function herBustPoint({ bustPoint: { own, printed } }: Plan): HerBustPoint | null {
  return own === null ? null : { out: own.x - printed.x, down: own.y - printed.y };
}

const byMeasure = (compared: readonly Compared[]): ComparedBy =>
  Object.fromEntries(compared.map((one) => [one.measure, one]));

const kindOf = ({ left }: Plan) => {
  const { strap, frontBand } = setOf(left.fitted);
  return { hasStraps: strap !== undefined, hasBand: frontBand !== undefined };
};

const firstAsked = ({ compared }: Comparison, plan: Plan): readonly Asked[] =>
  askedFor(byMeasure(compared), kindOf(plan));

/** The measures that decide on an alteration: where none of them was taken, nothing can be said of it. */
const DECIDED_BY: Readonly<Record<ProposedFit, readonly PrintedLength[]>> = {
  lengthAboveBust: ["backWaistLength", "frontWaistLength"],
  lengthBelowBust: ["backWaistLength", "frontWaistLength"],
  bandDepth: ["backWaistLength", "frontWaistLength"],
  roundBack: ["backWaistLength"],
  swayBack: ["backWaistLength"],
  waistDropFront: ["frontWaistLength"],
  bustPointLevel: ["sideNeckToBustPoint"],
  strapLength: ["sideNeckToBustPoint"],
  shoulderWidth: ["shoulderLength"],
  backWidth: ["acrossBack"],
  chestWidth: ["acrossFront"],
  sideSeamUnderBust: ["underBustGirth"],
};

/** A back is round or hollow: of the two, one that stands is taken out before the other is asked for. */
const OPPOSITES: Readonly<Partial<Record<ProposedFit, ProposedFit>>> = { roundBack: "swayBack", swayBack: "roundBack" };

const PROPOSED_FITS: readonly ProposedFit[] = FIT_NAMES.filter((name): name is ProposedFit =>
  Object.hasOwn(DECIDED_BY, name),
);

const measuresOf = (from: readonly Compared[]): readonly PrintedLength[] => from.map(({ measure }) => measure);

const basisOf = (one: Draft | Refused): readonly PrintedLength[] =>
  measuresOf("because" in one ? one.asked.from : one.from);

const standingFits = (work: Work, plan: Plan): readonly ProposedFit[] =>
  PROPOSED_FITS.filter((name) => standing({ kind: "fit", fit: name }, work, plan) !== 0);

/** The measures that decide on what a toile has decided already: nothing is asked for by them, unless they were taken anew since. */
function settledByToile(work: Work): ReadonlySet<PrintedLength> {
  const now = measuresOfTape(work.tapes);
  return new Set(
    seenOnToile(work).flatMap(({ alteration: seen, tapes }): readonly PrintedLength[] => {
      const then = measuresOfTape(tapes);
      const isAsThen = (measure: PrintedLength): boolean => then[measure] === now[measure];
      if (seen.kind === "fit")
        return PROPOSED_FITS.flatMap((name) => (name === seen.fit ? DECIDED_BY[name].filter(isAsThen) : []));
      const isOfBust = seen.kind === "dartEnd" && isFrontPiece(seen.dart.piece) && !isBasque(seen.dart.piece);
      return isOfBust ? BUST_POINT.filter(isAsThen) : [];
    }),
  );
}

/**
 * What her measures ask for instead of what stands: decided by the plan as it were without any of it, so that it is no matter
 * what was taken before. Nothing where all that decides on it agrees to a hair as it stands.
 */
function changesAsked(comparison: Comparison, work: Work, plan: Plan): readonly (Draft | Refused)[] {
  const stand = standingFits(work, plan);
  return [
    ...(stand.length === 0 ? [] : fitsChanged(stand, comparison, work, plan)),
    ...dartsChanged(comparison, work, plan),
  ];
}

function fitsChanged(
  stand: readonly ProposedFit[],
  comparison: Comparison,
  work: Work,
  plan: Plan,
): readonly (Draft | Refused)[] {
  const { compared } = comparison;
  const fresh = stand.reduce(
    (done, name) => applyCommand(done, amountCommand(useOn(usesOf(done, name), name, "both"), 0)),
    work,
  );
  const made = planOf(fresh);
  if (!made.ok) return [];
  const before = compareMeasures(fresh, made.value);
  const asked = firstAsked(before, made.value);
  // Of what does not stand, only what is asked for with and without the others: one answer never calls for the next.
  const others = firstAsked(comparison, plan).flatMap(({ altered: also }) =>
    also.kind === "fit" &&
    !stand.includes(also.fit) &&
    !stand.some((one) => OPPOSITES[one] === also.fit) &&
    asked.some(({ altered }) => altered.kind === "fit" && altered.fit === also.fit)
      ? [also.fit]
      : [],
  );
  return [...stand, ...others].flatMap((name): readonly (Draft | Refused)[] => {
    const decide = compared.filter(({ measure }) => DECIDED_BY[name].includes(measure));
    if (decide.every(({ off }) => Math.abs(off) <= STANDS_BY)) return [];
    const use = useOn(usesOf(work, name), name, "both");
    const now = asked.find(({ altered }) => altered.kind === "fit" && altered.fit === name);
    const found = now === undefined ? null : proposedFit(now, name, fresh, made.value);
    if (found !== null && "because" in found) return [found];
    const amount = found?.amount ?? 0;
    if (Math.abs(amount - use.amount) < STANDS_BY - READ_BACK) {
      return now !== undefined && found !== null && Math.abs(found.missing) >= STANDS_BY
        ? [{ asked: now, because: "noRoom" }]
        : [];
    }
    const step = snapStep(work.unit);
    // What is found is made in place of what stands: as much of it as is made among the others.
    const by = (amount === 0 ? 0 : madeInWork(amount, use, work, step)) - use.amount;
    if (Math.abs(by) < STANDS_BY - READ_BACK) return now === undefined ? [] : [{ asked: now, because: "noRoom" }];
    const from = before.compared.filter(({ measure }) => DECIDED_BY[name].includes(measure));
    return [
      {
        altered: { kind: "fit", fit: name },
        why: found?.why ?? "noLonger",
        stands: use.amount,
        amount: use.amount + by,
        missing: (found?.missing ?? 0) + (amount - use.amount - by),
        from: found?.from ?? from,
        parts: found?.parts ?? [],
        commands: [amountCommand(use, use.amount + by)],
      },
    ];
  });
}

/** Of the ends of the bust darts: what lies between hers and the garment without her redraws, all of it or none. */
function dartsChanged({ compared }: Comparison, work: Work, plan: Plan): readonly (Draft | Refused)[] {
  const altered: Altered = { kind: "dartsOut" };
  const width = compared.find(({ measure }) => measure === "bustPointWidth");
  const stands = standing(altered, work, plan);
  if (width === undefined || stands === 0 || Math.abs(width.off) <= STANDS_BY) return [];
  // Ends that were set as usual and lie well are not asked back again.
  const isWell = !plan.left.darts.some(({ endJudged }) => endJudged !== null && endFails(endJudged));
  if (width.agrees && isWell) return [];
  // Half of the width lies on each half of the body.
  const moved = 2 * stands;
  const before: Compared = {
    ...width,
    changed: { ...width.changed, own: width.changed.own - moved },
    garment: width.garment - moved,
    off: width.off + moved,
    agrees: Math.abs(width.off + moved) <= width.doubt,
  };
  const [asked] = askedFor({ bustPointWidth: before }, kindOf(plan));
  // Redraws that bring the ends nearer to where hers are serve her bust point as they stand.
  if (asked === undefined && Math.abs(width.off) <= Math.abs(before.off)) return [];
  const by = (asked?.by ?? 0) - stands;
  if (Math.abs(by) < STANDS_BY) return [];
  const nothing: AskedNoLonger = { altered, by, why: "noLonger", from: [before], parts: [], answers: null };
  return [proposedDarts({ ...(asked ?? nothing), by }, work, plan)];
}

/** The amount that stands already: of a fit on both halves; of the darts how far out her redraws brought their ends. */
function standing(altered: Altered, work: Work, plan: Plan): Mm {
  if (altered.kind === "fit") return useOn(usesOf(work, altered.fit), altered.fit, "both").amount;
  const { upright } = bustDartsOf(setOf(plan.left.fitted));
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

type AskedNoLonger = Omit<Asked, "why"> & { readonly why: "noLonger" };

/** What cannot be made at all. */
interface Refused {
  readonly asked: Pick<Asked, "from">;
  readonly because: "notOnPieces" | "noRoom" | "littleRoom";
}

function proposedFit(asked: Asked, fit: ProposedFit, work: Work, plan: Plan): Draft | Refused {
  if (!appliesTo(plan, fit)) return { asked, because: "notOnPieces" };
  const use = useOn(usesOf(work, fit), fit, "both");
  const by = asked.by / gainOf(asked, fit, plan);
  const { least, most } = fitOf(fit).range;
  const step = snapStep(work.unit);
  const wanted = snapped(use.amount + by, step);
  const within = Math.min(inwards(most, step), Math.max(inwards(least, step), wanted));
  const tried = use.amount + possible(within - use.amount, { ...use, id: "proposed" }, plan, step);
  const amount = madeInWork(tried, use, work, step);
  if (Math.abs(amount - use.amount) < STANDS_BY - READ_BACK) return { asked, because: "noRoom" };
  return {
    altered: asked.altered,
    why: asked.why,
    stands: use.amount,
    amount,
    missing: wanted - amount,
    from: asked.from,
    parts: asked.parts,
    commands: [amountCommand(use, amount)],
  };
}

const snapped = (amount: Mm, step: Mm): Mm => Math.round(Math.round(amount / step) * step * 1e4) / 1e4;

/** To the last whole step on the way to a bound. */
const inwards = (bound: Mm, step: Mm): Mm => snapped(Math.trunc(bound / step) * step, step);

/** What a measure changes by for each millimetre of an alteration; 1 where it changes by just as much. */
function gainOf({ answers, by }: Asked, fit: ProposedFit, plan: Plan): number {
  if (answers === null) return 1;
  const { least, most } = fitOf(fit).range;
  const pieces = setOf(plan.left.fitted);
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
  const trial = (amount: Mm) => made(setOf(plan.left.fitted), { ...alteration, amount }, plan);
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
function proposedDarts(asked: Asked | AskedNoLonger, work: Work, plan: Plan): Draft | Refused {
  const pieces = setOf(plan.left.fitted);
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
    parts: asked.parts,
    commands: ends.map(({ end }) => putOrRemove(end)),
  };
}

/** Where it stands among alterations. */
function placeOf({ altered }: Pick<Proposal, "altered">): number {
  const alteration: Alteration =
    altered.kind === "fit"
      ? { kind: "fit", id: "", fit: altered.fit, amount: 0 }
      : { kind: "dartGather", id: "", dart: { piece: "front", dart: "waistDart" } };
  return placeInOrder(alteration);
}
