/**
 * "I have this much: does it go?" Laid on what there is of a cloth; where it does not go, what could be given up is tried for
 * real, each way drafted anew and laid, from what is hardly missed to what is.
 */
import { prepareLay } from "../cloth/layCloth";
import type { ClothLay, LayFailure } from "../cloth/cutting";
import type { LaySearch } from "../cloth/laySearch";
import { shrunk } from "../cloth/usualCloth";
import type { ClothName, Dress, Skirt, Tier } from "../decisions/dress";
import type { PartGroup } from "../parts/part";
import type { SkirtDraft } from "../skirts/skirtDraft";
import { invariant } from "../result";
import { SAME_POINT } from "../tolerance";
import { degreesFrom, type Mm } from "../units";
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
export interface RemnantWay {
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

/** Share of a lay's usual search: to find out, and to make sure. */
const TRY_EFFORT = 0.15;
const SURE_EFFORT = 0.6;

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
const LENGTH_STEP: Mm = 10;
const PERCENT = 100;

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
    const bought = (length: Mm): Mm => length / (1 - (cloth.shrinkage ?? 0) / PERCENT);
    const over = bought(goal - lay.length);
    if (lay.length <= goal + SAME_POINT) return { goes: true, has, lay, left: over };
    missing = -over;
  }
  const ways = yield* waysToGo(work, name, goal);
  return { goes: false, has, short: missing, failure: prepared.ok ? null : prepared.failure, ways };
}

function* waysToGo(work: DressDecided, name: ClothName, goal: Mm): LaySearch<readonly RemnantWay[]> {
  const free = freeSteps(work, name);
  const found: { readonly way: RemnantWay; readonly loss: number }[] = [];
  for (const one of free) {
    const way = yield* tried(work, name, goal, [one]);
    if (way !== null) found.push({ way, loss: one.loss });
  }
  for (const choice of choicesOf(work)) {
    const way = yield* leastOf(work, name, goal, [], choice);
    if (way !== null) found.push(way);
  }
  if (found.length > 0 || free.length === 0) return inOrder(found);
  const freeLoss = free.reduce((sum, { loss }) => sum + loss, 0);
  const all = free.length > 1 ? yield* tried(work, name, goal, free) : null;
  if (all !== null) return [all];
  for (const choice of choicesOf(work)) {
    const way = yield* leastOf(work, name, goal, free, choice);
    if (way !== null) found.push({ way: way.way, loss: way.loss + freeLoss });
  }
  return inOrder(found);
}

const inOrder = (found: readonly { readonly way: RemnantWay; readonly loss: number }[]): readonly RemnantWay[] =>
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
function freeSteps(work: DressDecided, name: ClothName): readonly Step[] {
  const cloth = work.dress?.cloths?.[name] ?? {};
  const dress = dressOf(work);
  const elsewhere = (group: "facing" | "binding"): readonly Step[] => {
    const of: PartGroup = group;
    const keys = dress.ok
      ? dress.value.parts.filter((part) => part.cloth === name && part.group === of).map(({ key }) => key)
      : [];
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
  const made = { skirt, draft };
  return [...tierSteps(made), shareSteps(made), flareSteps(made), lengthSteps(made)].filter(
    (steps) => steps.length > 0,
  );
}

interface Made {
  readonly skirt: Skirt;
  readonly draft: SkirtDraft;
}

const withSkirt =
  (change: Partial<Skirt>) =>
  (dress: Dress): Dress =>
    dress.skirt === undefined ? dress : { ...dress, skirt: { ...dress.skirt, ...change } };

const skirtStep = (giveUp: GiveUp, change: Partial<Skirt>, loss: number): Step => ({
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
    const change = (tier: Partial<Tier>): Partial<Skirt> =>
      skirt.kind === "tiers"
        ? { tiers: tiers.map((_, place) => ({ ...skirt.tiers?.[place], ...(place === at ? tier : {}) })) }
        : {};
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
    const steps = Math.floor((from - LEAST_RATIO + SAME_POINT) / RATIO_STEP);
    return Array.from({ length: Math.max(0, steps) }, (_, less): Step => {
      const to = Math.round((from - RATIO_STEP * (less + 1)) / RATIO_STEP) * RATIO_STEP;
      const ratio = Number(to.toFixed(2));
      return skirtStep(
        { code: "remnant/ratio", tier: skirt.kind === "tiers" ? at + 1 : null, from, to: ratio },
        skirt.kind === "tiers" ? change({ ratio }) : { ratio },
        LOSS.ratio * (1 - ratio / from),
      );
    });
  });
}

function shareSteps({ skirt, draft }: Made): readonly Step[] {
  const from = draft.circle?.share;
  if (from === undefined) return [];
  return SHARES.filter((to) => to < from).map((to) =>
    skirtStep(
      { code: "remnant/share", from, to },
      skirt.kind === "peplum" ? { peplumShare: to } : { share: to },
      LOSS.share * (1 - to / from),
    ),
  );
}

function flareSteps({ skirt, draft }: Made): readonly Step[] {
  if (draft.flare === undefined || skirt.kind !== "aLine") return [];
  const from = degreesFrom(draft.flare);
  const steps = Math.max(0, Math.ceil((from - LEAST_FLARE) / FLARE_STEP - SAME_POINT));
  return Array.from({ length: steps }, (_, less) => {
    const flare = Math.max(LEAST_FLARE, Math.ceil(from - SAME_POINT) - FLARE_STEP * (less + 1));
    return skirtStep({ code: "remnant/flare", from, to: flare }, { flare }, LOSS.flare * (1 - flare / from));
  });
}

function lengthSteps({ skirt, draft }: Made): readonly Step[] {
  const from = draft.lengths.side;
  const steps = Math.floor((from * (1 - LEAST_LENGTH)) / LENGTH_STEP);
  return Array.from({ length: Math.max(0, steps) }, (_, less) => {
    const to = from - LENGTH_STEP * (less + 1);
    return skirtStep(
      { code: "remnant/length", from, to },
      skirt.kind === "peplum" ? { peplumLength: to } : { length: to },
      LOSS.length * (1 - to / from),
    );
  });
}

/** The first of some steps with which it goes: taken to go for every further one too, and made sure in the end. */
function* leastOf(
  work: DressDecided,
  name: ClothName,
  goal: Mm,
  before: readonly Step[],
  steps: readonly Step[],
): LaySearch<{ readonly way: RemnantWay; readonly loss: number } | null> {
  let found: { readonly way: RemnantWay; readonly loss: number } | null = null;
  let [low, high] = [0, steps.length - 1];
  // The furthest first: where that does not go, none does.
  for (let round = 0; round <= steps.length && low <= high; round++) {
    const at = round === 0 ? high : Math.floor((low + high) / 2);
    const step = invariant(steps[at], "step");
    const way: RemnantWay | null = yield* tried(work, name, goal, [...before, step]);
    if (way === null && found === null) return null;
    if (way === null) low = at + 1;
    else {
      found = { way, loss: step.loss };
      high = at - 1;
    }
  }
  return found;
}

/** The dress with all of this given up, laid; null: it does not go. */
function* tried(work: DressDecided, name: ClothName, goal: Mm, steps: readonly Step[]): LaySearch<RemnantWay | null> {
  const dress = steps.reduce((changed, { change }) => change(changed), work.dress ?? {});
  const changedWork = { ...work, dress };
  const drafted = dressOf(changedWork);
  if (!drafted.ok || (drafted.value.skirt !== null && !drafted.value.skirt.ok)) return null;
  const elsewhere = steps.flatMap((step) => step.elsewhere);
  const asked = clothAskedOf(changedWork, name);
  if (asked === null) return null;
  const prepared = prepareLay({ ...asked, parts: asked.parts.filter(({ key }) => !elsewhere.includes(key)) });
  if (!prepared.ok) return null;
  for (const effort of [TRY_EFFORT, SURE_EFFORT]) {
    const lay = yield { prepared: prepared.value, effort, goal };
    if (lay.length <= goal + SAME_POINT) return { giveUps: steps.map(({ giveUp }) => giveUp), dress, elsewhere, lay };
    // Far too long: no longer search brings it down so far.
    if (lay.length > goal * HOPELESS) return null;
  }
  return null;
}

/** Share of the length there is (no unit). */
const HOPELESS = 1.08;
