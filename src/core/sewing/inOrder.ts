/** Steps put into an order that what has to come first allows, and that reads well beside. */
import { invariant } from "../result";
import { SEWING_STEPS, type SewingStepName } from "./sewingStep";
import type { Precedence } from "./precedence";
import type { StepDraft } from "./stepDraft";

interface PlacedStep {
  readonly draft: StepDraft;
  /** Indexes of those that have to be done before. */
  readonly after: readonly number[];
}

/** First and last of all, whatever else there is. */
const FIRST: readonly SewingStepName[] = ["washCloth", "cutOut"];
const LAST: SewingStepName = "press";

const RANKS: ReadonlyMap<SewingStepName, number> = new Map(SEWING_STEPS.map((name, at) => [name, at]));
const rankOf = ({ name }: StepDraft): number => invariant(RANKS.get(name), name);

/** A tier is gathered and sewn on before the next one is. */
const TIER_STEPS: readonly SewingStepName[] = ["gatherTiers", "tierToTier"];

/** As the list has them; of tiers one after the other. */
function readsBefore(a: StepDraft, b: StepDraft): boolean {
  const areTiers = TIER_STEPS.includes(a.name) && TIER_STEPS.includes(b.name);
  const [tierA, tierB] = [a.at ?? 0, b.at ?? 0];
  if (areTiers && tierA !== tierB) return tierA < tierB;
  return rankOf(a) === rankOf(b) ? tierA < tierB : rankOf(a) < rankOf(b);
}

/**
 * Always the first in reading of those that nothing holds up any more.
 *
 * @param precedences no circle among the names that there are: that none is, `orderOfSewing` is tested for
 */
export function inOrder(drafts: readonly StepDraft[], precedences: readonly Precedence[]): readonly PlacedStep[] {
  const before = heldUpBy(drafts, precedences);
  const placed: StepDraft[] = [];
  const left = new Set(drafts);
  for (let place = 0; place < drafts.length; place += 1) {
    let next: StepDraft | undefined;
    for (const draft of left) {
      const isHeld = before.get(draft)?.some((other) => left.has(other)) === true;
      if (!isHeld && (next === undefined || readsBefore(draft, next))) next = draft;
    }
    const chosen = invariant(next, "an order of sewing");
    placed.push(chosen);
    left.delete(chosen);
  }
  const places = new Map(placed.map((draft, at) => [draft, at]));
  return placed.map((draft) => ({
    draft,
    after: (before.get(draft) ?? []).map((other) => invariant(places.get(other), other.name)).toSorted((a, b) => a - b),
  }));
}

/** Of each step what comes before it; each but once. */
function heldUpBy(
  drafts: readonly StepDraft[],
  precedences: readonly Precedence[],
): ReadonlyMap<StepDraft, readonly StepDraft[]> {
  const named = new Map<SewingStepName, StepDraft[]>();
  for (const draft of drafts) named.set(draft.name, [...(named.get(draft.name) ?? []), draft]);
  const held = new Map<StepDraft, Set<StepDraft>>(drafts.map((draft) => [draft, new Set()]));
  const put = (before: StepDraft, after: StepDraft): void => {
    if (before !== after) held.get(after)?.add(before);
  };
  for (const draft of drafts) {
    for (const [at, name] of FIRST.entries())
      for (const first of named.get(name) ?? []) if (!FIRST.slice(0, at + 1).includes(draft.name)) put(first, draft);
    for (const last of named.get(LAST) ?? []) put(draft, last);
  }
  for (const { before, after } of precedences)
    for (const a of named.get(before) ?? []) for (const b of named.get(after) ?? []) if (isOfTier(a, b)) put(a, b);
  return new Map([...held].map(([draft, some]) => [draft, [...some]]));
}

/** What is done tier by tier waits for its own tier and for the one it is sewn to, not for all. */
function isOfTier(before: StepDraft, after: StepDraft): boolean {
  if (before.at === undefined || after.at === undefined) return true;
  if (before.at === after.at) return true;
  return before.name === "joinTierPanels" && after.name === "tierToTier" && before.at === after.at - 1;
}
