/**
 * "I have this much: does it go?" Laid on what there is of a cloth; where it does not go, what could be given up is tried for
 * real, each way drafted anew and laid, from what is hardly missed to what is.
 */
import { prepareLay, type ClothAsked } from "../cloth/layCloth";
import type { ClothLay, LayFailure } from "../cloth/cutting";
import type { LaySearch } from "../cloth/laySearch";
import { beforeWashing, shrunk } from "../cloth/usualCloth";
import type { ClothName, Dress, Skirt, Tier } from "../decisions/dress";
import type { LengthUnit } from "../decisions/work";
import type { PartGroup } from "../parts/part";
import type { SkirtDraft } from "../skirts/skirtDraft";
import { invariant } from "../result";
import { SAME_POINT } from "../tolerance";
import { degreesFrom, MM_PER_INCH, type Mm } from "../units";
import { clothAskedOf, withCloth } from "./dressCloth";
import { dressOf, type DressDecided } from "./dressOf";

/** What is given up, and how much of it. */
export type GiveUp =
  | { readonly code: "remnant/single-layer" }
  /** Nap or print: some parts are turned upside down after all. */
  | { readonly code: "remnant/both-ways" }
  /** Cut of another cloth; `keys`: of these parts. */
  | { readonly code: "remnant/elsewhere"; readonly group: "facing" | "binding"; readonly keys: readonly string[] }
  /** Gathered less; `tier`: from 1 at the waist; null: the skirt is gathered in one. */
  | { readonly code: "remnant/ratio"; readonly tier: number | null; readonly from: number; readonly to: number }
  | { readonly code: "remnant/widths"; readonly tier: number; readonly from: number; readonly to: number }
  /** Degrees that each side leans out. */
  | { readonly code: "remnant/flare"; readonly from: number; readonly to: number }
  /** Share of a whole circle. */
  | { readonly code: "remnant/share"; readonly from: number; readonly to: number }
  | { readonly code: "remnant/length"; readonly from: Mm; readonly to: Mm };

/** A way in which it goes: proven by the lay. */
interface RemnantWay {
  readonly giveUps: readonly GiveUp[];
  /** All that is decided of the dress then. */
  readonly dress: Dress;
  /** Cut of another cloth then. */
  readonly elsewhere: readonly string[];
  readonly lay: ClothLay;
}

export type RemnantAnswer =
  /** `left`: of what she has, before it is washed. */
  | { readonly goes: true; readonly has: Mm; readonly lay: ClothLay; readonly left: Mm }
  | {
      readonly goes: false;
      readonly has: Mm;
      /** What is missing, before it is washed; null: it cannot be laid on that width at all, and why. */
      readonly short: Mm | null;
      readonly failure: LayFailure | null;
      /** The least missed first; none: nothing tried makes it go. */
      readonly ways: readonly RemnantWay[];
    };

/** Share of a lay's usual search that steps are first tried by; what is answered is proven by the very lay that is shown then. */
const TRY_EFFORT = 0.15;

/** Gathered less than this it is hardly gathered (common practice, no source). */
const LEAST_RATIO = 1.2;
const RATIO_STEP = 0.1;
/** Degrees (common practice, no source). */
const LEAST_FLARE = 4;
const FLARE_STEP = 1;
const SHARES: readonly number[] = [0.75, 0.5, 0.25];
/** A skirt shorter than this share of what she wanted is another skirt (our own choice). */
const LEAST_LENGTH = 0.6;
/** mm. */
const LENGTH_STEP: Readonly<Record<LengthUnit, Mm>> = { cm: 10, in: MM_PER_INCH / 2 };
/** Where nothing goes by itself: shares of the way to their ends that all else is given up to before the length is. */
const TOGETHER: readonly number[] = [0.5, 1];

/** null: she has not said how much there is, or there is nothing to cut of it. */
export function* remnantOf(work: DressDecided, name: ClothName): LaySearch<RemnantAnswer | null> {
  const dress = work.dress ?? {};
  const cloth = dress.cloths?.[name] ?? {};
  const has = cloth.length;
  const asked = clothAskedOf(work, name);
  if (has === undefined || asked === null) return null;
  const goal = shrunk(has, cloth);
  const prepared = prepareLay(asked);
  let missing: Mm | null = null;
  if (prepared.ok) {
    const lay = yield { prepared: prepared.value, effort: 1, goal: 0 };
    const over = beforeWashing(goal - lay.length, cloth);
    if (lay.length <= goal + SAME_POINT) return { goes: true, has, lay, left: over };
    missing = -over;
  }
  const ways = yield* waysToGo({ work, name, goal }, asked);
  return { goes: false, has, short: missing, failure: prepared.ok ? null : prepared.failure, ways };
}

function* waysToGo(asked: Asked, there: ClothAsked): LaySearch<readonly RemnantWay[]> {
  const { work } = asked;
  const free = freeSteps(there);
  const choices = choicesOf(work).flatMap((steps) => {
    const drafted = furthestDrafted(work, steps);
    return drafted.length > 0 ? [drafted] : [];
  });
  const found: FoundWay[] = [];
  for (const one of free) found.push(...(yield* leastOf(asked, [], [one])));
  for (const steps of choices) found.push(...(yield* leastOf(asked, [], steps)));
  if (found.length > 0) return inOrder(found);
  if (free.length > 1) {
    const all = yield* leastOf(asked, free.slice(1), free.slice(0, 1));
    if (all.length > 0) return inOrder(all);
  }
  if (free.length > 0) for (const steps of choices) found.push(...(yield* leastOf(asked, free, steps)));
  const last = choices.at(-1);
  if (found.length > 0 || last === undefined || choices.length < 2) return inOrder(found);
  for (const share of TOGETHER) {
    const others = choices.slice(0, -1).flatMap((steps) => steps[Math.ceil(share * steps.length) - 1] ?? []);
    const together = yield* leastOf(asked, [...free, ...others], last);
    if (together.length > 0) return inOrder(together);
  }
  return [];
}

interface FoundWay {
  readonly way: RemnantWay;
  readonly loss: number;
}

const inOrder = (found: readonly FoundWay[]): readonly RemnantWay[] =>
  found.toSorted((p, q) => p.loss - q.loss).map(({ way }) => way);

/** One thing given up: how the dress is then, or which parts are cut elsewhere, and what of the dress is lost (no unit). */
interface Step {
  readonly giveUp: GiveUp;
  readonly change: (dress: Dress) => Dress;
  readonly elsewhere: readonly string[];
  readonly loss: number;
}

/** Losses of what is seen least of all in the finished dress, as shares of it (our own choice). */
const LOSS = {
  singleLayer: 0,
  elsewhere: 0.01,
  bothWays: 0.05,
  ratio: 0.8,
  flare: 0.5,
  share: 0.6,
  length: 1,
} as const;

const clothStep = (giveUp: GiveUp, change: (dress: Dress) => Dress, loss: number): Step => ({
  giveUp,
  change,
  elsewhere: [],
  loss,
});

/** What costs nothing of the dress's own shape. */
function freeSteps({ name, cloth, parts }: ClothAsked): readonly Step[] {
  const elsewhere = (group: "facing" | "binding"): readonly Step[] => {
    const of: PartGroup = group;
    const keys = parts.filter((part) => part.cloth === name && part.group === of).map(({ key }) => key);
    if (keys.length === 0) return [];
    const giveUp: GiveUp = { code: "remnant/elsewhere", group, keys };
    return [{ giveUp, change: (same) => same, elsewhere: keys, loss: LOSS.elsewhere }];
  };
  return [
    ...(cloth.fold === true
      ? [clothStep({ code: "remnant/single-layer" }, (d) => withCloth(d, name, { fold: false }), LOSS.singleLayer)]
      : []),
    ...elsewhere("facing"),
    ...elsewhere("binding"),
    ...(cloth.oneWay === true
      ? [clothStep({ code: "remnant/both-ways" }, (d) => withCloth(d, name, { oneWay: false }), LOSS.bothWays)]
      : []),
  ];
}

/** What makes the skirt another one, little by little. */
function choicesOf(work: DressDecided): readonly (readonly Step[])[] {
  const skirt = work.dress?.skirt;
  const dress = dressOf(work);
  if (skirt === undefined || !dress.ok || dress.value.skirt?.ok !== true) return [];
  const draft = dress.value.skirt.value;
  const made = { skirt, draft, unit: work.unit };
  return [...tierSteps(made), shareSteps(made), flareSteps(made), lengthSteps(made)];
}

interface Made {
  readonly unit: LengthUnit;
  readonly skirt: Skirt;
  readonly draft: SkirtDraft;
}

/** Of the skirt as it is by then: what goes before may have changed another tier. */
type SkirtChange = (skirt: Skirt) => Partial<Skirt>;

const withSkirt =
  (change: SkirtChange) =>
  (dress: Dress): Dress =>
    dress.skirt === undefined ? dress : { ...dress, skirt: { ...dress.skirt, ...change(dress.skirt) } };

const skirtStep = (giveUp: GiveUp, change: SkirtChange, loss: number): Step => ({
  giveUp,
  change: withSkirt(change),
  elsewhere: [],
  loss,
});

/** The lowest tier first: it takes the most cloth. */
function tierSteps({ skirt, draft }: Made): readonly (readonly Step[])[] {
  const tiers = draft.tiers ?? [];
  return tiers.toReversed().map((figures, index) => {
    const at = tiers.length - 1 - index;
    const change =
      (tier: Partial<Tier>): SkirtChange =>
      (before) => ({ tiers: tiers.map((_, place) => ({ ...before.tiers?.[place], ...(place === at ? tier : {}) })) });
    if (skirt.kind === "tiers" && skirt.tierCut === "wholeWidths") {
      const from = figures.panels;
      return Array.from({ length: from - 1 }, (_, less): Step => {
        const to = from - 1 - less;
        return skirtStep(
          { code: "remnant/widths", tier: at + 1, from, to },
          change({ widths: to }),
          LOSS.ratio * (1 - to / from),
        );
      }).filter((_, less) => ((from - 1 - less) * figures.width) / from >= LEAST_RATIO * figures.gatheredTo);
    }
    const from = figures.width / figures.gatheredTo;
    return stepsBelow(from, RATIO_STEP, LEAST_RATIO).map((to) => {
      const ratio = Number(to.toFixed(2));
      return skirtStep(
        { code: "remnant/ratio", tier: skirt.kind === "tiers" ? at + 1 : null, from, to: ratio },
        skirt.kind === "tiers" ? change({ ratio }) : () => ({ ratio }),
        LOSS.ratio * (1 - ratio / from),
      );
    });
  });
}

/** Whole steps below something, from the first that is less by more than nothing down to the least. */
function stepsBelow(from: number, step: number, least: number): readonly number[] {
  const first = Math.ceil(from / step - SAME_POINT) - 1;
  const last = Math.ceil(least / step - SAME_POINT);
  return Array.from({ length: Math.max(0, first - last + 1) }, (_, less) => (first - less) * step);
}

function shareSteps({ skirt, draft }: Made): readonly Step[] {
  const from = draft.circle?.share;
  if (from === undefined) return [];
  return SHARES.filter((to) => to < from).map((to) =>
    skirtStep(
      { code: "remnant/share", from, to },
      () => (skirt.kind === "peplum" ? { peplumShare: to } : { share: to }),
      LOSS.share * (1 - to / from),
    ),
  );
}

/** A straight one leans out by nothing already. */
function flareSteps({ draft }: Made): readonly Step[] {
  if (draft.flare === undefined) return [];
  const from = degreesFrom(draft.flare);
  return stepsBelow(from, FLARE_STEP, LEAST_FLARE).map((flare) =>
    skirtStep({ code: "remnant/flare", from, to: flare }, () => ({ flare }), LOSS.flare * (1 - flare / from)),
  );
}

function lengthSteps({ skirt, draft, unit }: Made): readonly Step[] {
  const from = draft.lengths.side;
  // A length comes out that a tape has.
  return stepsBelow(from, LENGTH_STEP[unit], from * LEAST_LENGTH).map((steps) => {
    const to = Math.round(steps * TENTHS) / TENTHS;
    return skirtStep(
      { code: "remnant/length", from, to },
      () => (skirt.kind === "peplum" ? { peplumLength: to } : { length: to }),
      LOSS.length * (1 - to / from),
    );
  });
}

/** Of a millimetre: what entries are kept to. */
const TENTHS = 10;

interface Asked {
  readonly work: DressDecided;
  readonly name: ClothName;
  /** mm of washed cloth. */
  readonly goal: Mm;
}

/** The steps that can be drafted: where one cannot, none after it can. */
function furthestDrafted(work: DressDecided, steps: readonly Step[]): readonly Step[] {
  const isDrafted = (step: Step): boolean => {
    const dress = dressOf({ ...work, dress: step.change(work.dress ?? {}) });
    return dress.ok && dress.value.skirt?.ok === true;
  };
  const countFrom = (low: number, high: number): number => {
    if (low === high) return low;
    const middle = Math.ceil((low + high) / 2);
    return isDrafted(invariant(steps[middle - 1], "step")) ? countFrom(middle, high) : countFrom(low, middle - 1);
  };
  return steps.slice(0, countFrom(0, steps.length));
}

/** The first place between two with which it goes, taken to go for every further one too; beyond the last: none. */
function* firstThatGoes(low: number, high: number, goesAt: (at: number) => LaySearch<boolean>): LaySearch<number> {
  if (low > high) return low;
  const at = Math.floor((low + high) / 2);
  return (yield* goesAt(at)) ? yield* firstThatGoes(low, at - 1, goesAt) : yield* firstThatGoes(at + 1, high, goesAt);
}

const goesOn = (lay: ClothLay | null, length: Mm): lay is ClothLay => lay !== null && lay.length <= length + SAME_POINT;

/** The first of some steps with which it goes, what goes before given up too: found by short searches, proven by whole ones. */
function* leastOf(asked: Asked, before: readonly Step[], steps: readonly Step[]): LaySearch<readonly FoundWay[]> {
  const last = steps.length - 1;
  const given = (at: number): readonly Step[] => [...before, invariant(steps[at], "step")];
  // The furthest first: where that does not go, none does. Nearly there: a whole search may bring it down so far.
  if (!goesOn(yield* laidWith(asked, given(last), TRY_EFFORT), asked.goal * HOPELESS)) return [];
  const found = yield* firstThatGoes(0, last - 1, function* goesAt(at) {
    return goesOn(yield* laidWith(asked, given(at), TRY_EFFORT), asked.goal);
  });
  // Short searches err: about what they found whole ones seek again.
  const proven = new Map<number, FoundWay>();
  const least = yield* firstThatGoes(
    Math.max(0, found - DOUBTED),
    Math.min(found + DOUBTED, last),
    function* goesAt(at) {
      const lay = yield* laidWith(asked, given(at), 1);
      const goes = goesOn(lay, asked.goal);
      if (goes) proven.set(at, foundWay(asked.work, given(at), lay));
      return goes;
    },
  );
  const way = proven.get(least);
  return way === undefined ? [] : [way];
}

const foundWay = (work: DressDecided, steps: readonly Step[], lay: ClothLay): FoundWay => ({
  way: {
    giveUps: steps.map(({ giveUp }) => giveUp),
    dress: changedBy(work, steps),
    elsewhere: steps.flatMap(({ elsewhere }) => elsewhere),
    lay,
  },
  loss: steps.reduce((sum, { loss }) => sum + loss, 0),
});

/** Share of the length there is (no unit). */
const HOPELESS = 1.08;
/** Steps by which what a short search found may be wrong. */
const DOUBTED = 4;

const changedBy = ({ dress = {} }: DressDecided, steps: readonly Step[]): Dress =>
  steps.reduce((changed, { change }) => change(changed), dress);

/** The dress with all of this given up, laid; null: it cannot be drafted or laid. */
function* laidWith({ work, name, goal }: Asked, steps: readonly Step[], effort: number): LaySearch<ClothLay | null> {
  const dress = changedBy(work, steps);
  const changed = { ...work, dress };
  const drafted = dressOf(changed);
  if (!drafted.ok || (drafted.value.skirt !== null && !drafted.value.skirt.ok)) return null;
  const elsewhere = steps.flatMap((step) => step.elsewhere);
  const asked = clothAskedOf(changed, name);
  if (asked === null) return null;
  const prepared = prepareLay({ ...asked, parts: asked.parts.filter(({ key }) => !elsewhere.includes(key)) });
  return prepared.ok ? yield { prepared: prepared.value, effort, goal: effort === 1 ? 0 : goal } : null;
}
