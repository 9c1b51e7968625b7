/**
 * Who answers a trial. Two to compare with: nobody, and one who makes for each thing seen, by itself, the alteration that a handbook
 * names first for it, by what was pinned or let out, all in one go.
 */
import { fitOf } from "../../../src/core/alterations/fit/index";
import { isSameKind, type Alteration, type Half } from "../../../src/core/decisions/alteration";
import type { FitName } from "../../../src/core/decisions/fitNames";
import { placeInOrder } from "../../../src/core/decisions/tradeOrder";
import type { Observation } from "../../../src/core/decisions/trial";
import type { Work } from "../../../src/core/decisions/work";
import { setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { applyCommand } from "../../../src/core/plan/commands";
import type { Plan } from "../../../src/core/plan/plan";
import { readTrial } from "../../../src/core/trial/readTrial";
import { isToTake } from "../../../src/core/trial/takenNow";
import { answerCommand } from "../../../src/core/trial/takeAnswer";

import { HALVES } from "./body";
import type { Advisor } from "./loop";

/** Nothing is altered. */
const nobody: Advisor = (_, work) => work;

/** mm of cloth, where no amount was said (common practice, no source). */
const UNSAID = 10;

/** What is altered for one thing seen, for each mm of its cloth; `bust`: the whole bust alteration. */
type Usual = readonly [FitName | "bust" | "dartEnd" | "dartMouth", number];

/** From memory of handbooks: what each names first (common practice, no source). */
const FIRST: Readonly<Record<string, Usual>> = {
  "frontNeck gapes": ["necklineGape", 1],
  "neckPoint gapes": ["necklineGape", 1],
  "frontNeck foldAcross": ["shoulderSlope", 1],
  // Pinned or opened at the shoulder seam, half of it belongs to the front and half to the back.
  "shoulder foldAcross": ["shoulderSlope", -0.5],
  "shoulder tight": ["shoulderSlope", 0.5],
  "shoulder leansBack": ["forwardShoulder", 1],
  "shoulder leansForward": ["forwardShoulder", -1],
  "shoulder endsOutside": ["shoulderWidth", -1],
  "shoulder endsInside": ["shoulderWidth", 1],
  "strap foldAcross": ["strapLength", -1],
  "strap cutsIn": ["strapLength", 1],
  "strap endsOutside": ["strapPlace", 1],
  "strap endsInside": ["strapPlace", -1],
  "strap slips": ["strapPlace", 1],
  "frontArmhole gapes": ["armholeGape", 1],
  "frontArmhole cutsIn": ["chestWidth", 1],
  "chest foldAcross": ["lengthAboveBust", -1],
  "chest foldAlong": ["chestWidth", -1],
  "chest tight": ["chestWidth", 1],
  "bust flat": ["bust", 1],
  "bust tight": ["bust", 1],
  "bust foldAlong": ["bust", -1],
  "bust bustPoint": ["bustPointLevel", 1],
  "dartEnd dartEnds": ["dartEnd", 1],
  "dartEnd pointed": ["dartMouth", -1],
  "dartEnd flat": ["dartMouth", 1],
  "underBust foldAlong": ["sideSeamUnderBust", -1],
  "underBust tight": ["sideSeamUnderBust", 1],
  "underBust drops": ["strapLength", -1],
  "underBust ridesUp": ["strapLength", 1],
  "frontAboveWaist foldAcross": ["lengthBelowBust", -1],
  "frontAboveWaist tight": ["sideSeamWaist", 1],
  "backAboveWaist foldAcross": ["swayBack", 1],
  "frontWaist ridesUp": ["lengthBelowBust", 1],
  "frontWaist drops": ["lengthBelowBust", -1],
  "backWaist ridesUp": ["lengthBelowBust", 1],
  "backWaist drops": ["swayBack", 1],
  "frontHem ridesUp": ["lengthBasque", 1],
  "frontHem drops": ["lengthBasque", -1],
  "backHem ridesUp": ["lengthBasque", 1],
  "backHem drops": ["lengthBasque", -1],
  "frontHip foldAcross": ["lengthBasque", -1],
  "frontHip tight": ["sideSeamHip", 1],
  "backHip foldAcross": ["lengthBasque", -1],
  "backHip foldAlong": ["sideSeamHip", -1],
  "underarm cutsIn": ["armholeDepth", 1],
  "underarm drops": ["armholeDepth", -1],
  "underarm tight": ["sideSeamBust", 1],
  "underarm foldAlong": ["sideSeamBust", -1],
  "sideSeam tight": ["sideSeamWaist", 1],
  "sideSeam foldAlong": ["sideSeamWaist", -1],
  "sideHip tight": ["sideSeamHip", 1],
  "sideHip foldAlong": ["sideSeamHip", -1],
  // Pinned at the centre back, half of it belongs to either half of the body.
  "backNeck gapes": ["backNeckGape", 0.5],
  "backNeck foldAcross": ["shoulderSlope", 1],
  "backArmhole tight": ["backWidth", 1],
  "backArmhole gapes": ["backWidth", -1],
  "blades tight": ["roundBack", 1],
  "blades pointed": ["roundBack", 1],
  "blades foldAcross": ["roundBack", -1],
  "blades foldAlong": ["backWidth", -1],
  "closureBust doesNotMeet": ["sideSeamBust", 0.5],
  "closureBust overlaps": ["sideSeamBust", -0.5],
  "closureWaist doesNotMeet": ["sideSeamWaist", 0.5],
  "closureWaist overlaps": ["sideSeamWaist", -0.5],
  "closureHip doesNotMeet": ["sideSeamHip", 0.5],
  "closureHip overlaps": ["sideSeamHip", -0.5],
};

/** What a style has in place of it. */
const IN_PLACE: Readonly<Partial<Record<FitName, FitName>>> = {
  necklineGape: "edgeGape",
  lengthBelowBust: "bandDepth",
};

const clothOf = ({ amount, way }: Observation): number =>
  amount === undefined ? UNSAID : way === "pinched" ? 2 * amount : amount;

/** What one line asks for: an alteration, or so much more of the whole bust. */
type Asked = Alteration | { readonly kind: "bust"; readonly amount: number; readonly half?: Half };

const onHalf = (half: Half | undefined) => (half === undefined ? {} : { half });

/** The fit alteration, or what the style has in place of it; null where it has neither. */
function fitAsked(pieces: PieceSet, name: FitName, amount: number, half: Half | undefined): Asked | null {
  const fit = [name, IN_PLACE[name]].find((one) => one !== undefined && fitOf(one).applies(pieces));
  if (fit === undefined) return null;
  const whole = half === undefined && fitOf(fit).isWhole === true ? 2 : 1;
  return { kind: "fit", id: `each-${fit}-${half ?? "both"}`, fit, amount: amount * whole, ...onHalf(half) };
}

function askedBy(pieces: PieceSet, seen: Observation): Asked | null {
  const { place, sign, half, dart, mark } = seen;
  const usual = FIRST[`${place} ${sign}`];
  if (usual === undefined) return null;
  const [what, times] = usual;
  const amount = times * clothOf(seen);
  const id = `each-${what}-${dart?.dart ?? ""}-${half ?? "both"}`;
  switch (what) {
    case "bust":
      return { kind: "bust", amount: 2 * amount, ...onHalf(half) };
    case "bustPointLevel":
      return fitAsked(pieces, what, mark?.down ?? 0, half);
    case "dartEnd": {
      if (dart === undefined || mark === undefined) return null;
      const isSide = dart.dart.startsWith("side") || dart.dart.startsWith("french");
      const shorten = isSide ? mark.out : mark.down;
      const across = isSide ? -mark.down : -mark.out;
      return { kind: what, id, dart, shorten, across, hold: "mouth", giveBack: {}, ...onHalf(half) };
    }
    case "dartMouth":
      if (dart === undefined) return null;
      return { kind: what, id, dart, inner: amount / 2, outer: amount / 2, giveBack: {}, ...onHalf(half) };
    default:
      return fitAsked(pieces, what, amount, half);
  }
}

/** An alteration with the amounts of another of its kind added, so many times. */
function summed(a: Alteration, b: Alteration, times = 1): Alteration {
  if (a.kind === "fit" && b.kind === "fit") return { ...a, amount: a.amount + times * b.amount };
  if (a.kind === "dartEnd" && b.kind === "dartEnd")
    return { ...a, shorten: a.shorten + times * b.shorten, across: a.across + times * b.across };
  if (a.kind === "dartMouth" && b.kind === "dartMouth")
    return { ...a, inner: a.inner + times * b.inner, outer: a.outer + times * b.outer };
  return b;
}

/** Added to what stands of its kind on its half. */
function added(alterations: readonly Alteration[], more: Alteration): readonly Alteration[] {
  const same = alterations.find((one) => isSameKind(one, more));
  return same === undefined
    ? [...alterations, more]
    : alterations.map((one) => (one === same ? summed(one, more) : one));
}

/** What several lines ask for alike is made once, by their mean. */
function meanOf(asked: readonly Alteration[]): readonly Alteration[] {
  const groups: Alteration[][] = [];
  for (const one of asked) {
    const group = groups.find(([first]) => first !== undefined && isSameKind(first, one));
    if (group === undefined) groups.push([one]);
    else group.push(one);
  }
  return groups.flatMap(([first, ...rest]) => {
    if (first === undefined) return [];
    const sum = rest.reduce((all, one) => summed(all, one), first);
    return [summed(sum, sum, 1 / (rest.length + 1) - 1)];
  });
}

const rounded = (alteration: Alteration): Alteration =>
  alteration.kind === "fit" ? { ...alteration, amount: Math.round(alteration.amount) } : alteration;

/** What is more than can be made is made as far as it can. */
function withinReach(work: Work): Work {
  const plan = derivePlan(work);
  if (!plan.ok) return work;
  const most = new Map(
    plan.value.ledger.flatMap(({ id, outcome }) =>
      outcome.ok || outcome.failure.code !== "alteration/too-much" ? [] : [[id, outcome.failure.most] as const],
    ),
  );
  if (most.size === 0) return work;
  const alterations = work.alterations.map((one) =>
    one.kind === "fit" ? { ...one, amount: most.get(one.id) ?? one.amount } : one,
  );
  return { ...work, alterations };
}

/** Sizes stay as they are picked. */
function bustAltered(work: Work, { sizing: { baseSize, cup, bust } }: Plan, more: number): Work {
  const picks = {
    ...work.picks,
    baseSize: baseSize.label,
    ...(cup.label === null ? {} : { cup: cup.label }),
    bustAlteration: Math.round(bust.alteration + more),
  };
  return { ...work, picks };
}

/** The cup version of one half that comes nearest to so much more of the whole girth. */
function cupAltered(work: Work, plan: Plan, half: Half, more: number): Work {
  const { cups } = work.pattern.chart;
  const now = cups.find(({ label }) => label === plan[half].sizing.cup.label);
  if (now === undefined) return work;
  const off = (difference: number): number => Math.abs(difference - now.difference - more);
  const [nearest = now] = cups.toSorted((a, b) => off(a.difference) - off(b.difference));
  if (nearest === now) return work;
  const { picks } = bustAltered(work, plan, 0);
  return { ...work, picks: { ...picks, halfCups: { ...picks.halfCups, [half]: nearest.label } } };
}

const eachByItself: Advisor = ({ observations }, work) => {
  const plan = derivePlan(work);
  if (!plan.ok) return work;
  const pieces = setOf(plan.value.left.pieces);
  const asked = observations.flatMap((seen) => askedBy(pieces, seen) ?? []);
  const moreOn = (half: Half | undefined): number => {
    const amounts = asked.flatMap((one) => (one.kind === "bust" && one.half === half ? [one.amount] : []));
    return amounts.reduce((a, b) => a + b, 0) / Math.max(1, amounts.length);
  };
  const onBoth = moreOn(undefined);
  const whole = onBoth === 0 ? work : bustAltered(work, plan.value, onBoth);
  const cupped = HALVES.reduce((next, half) => {
    const more = moreOn(half);
    return more === 0 ? next : cupAltered(next, plan.value, half, more);
  }, whole);
  const alterations = meanOf(asked.flatMap((one) => (one.kind === "bust" ? [] : [one])))
    .map(rounded)
    .reduce(added, work.alterations)
    .toSorted((a, b) => placeInOrder(a) - placeInOrder(b));
  return withinReach({ ...cupped, alterations });
};

/** The planner's own: the first of its answers, where it has one. */
const planner: Advisor = (trial, work) => {
  const read = readTrial(trial, work.trials);
  const first = read.ok ? read.value.answers[0] : undefined;
  return first === undefined || !isToTake(first) ? work : applyCommand(work, answerCommand(work, trial, first, null));
};

/** The advisors that are compared, by the names that the table has for them. */
export const ADVISORS: Readonly<Record<string, Advisor>> = {
  none: nobody,
  "each by itself": eachByItself,
  planner,
};
