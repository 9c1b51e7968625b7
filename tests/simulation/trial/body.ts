/** A body by what it needs of the garment's dimensions, and what is left of that when a garment is measured. */
import type { Half } from "../../../src/core/decisions/alteration";
import type { Work } from "../../../src/core/decisions/work";
import { placeInOrder } from "../../../src/core/decisions/tradeOrder";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import type { Plan } from "../../../src/core/plan/plan";
import { DIMENSIONS, measure, type Dimension, type Dimensions } from "./dimensions";
import { kindOf, type Truth } from "./truths";

export const HALVES: readonly Half[] = ["left", "right"];

export type OnHalves = Readonly<Record<Half, Dimensions>>;

export const measured = (plan: Plan): OnHalves => {
  const left = measure(setOf(plan.left.pieces));
  return { left, right: plan.right === plan.left ? left : measure(setOf(plan.right.pieces)) };
};

/** The plan of a work all of whose alterations are made; null where any is not. */
export function soundPlan(work: Work): Plan | null {
  const plan = derivePlan(work);
  return plan.ok && plan.value.ledger.every(({ outcome }) => outcome.ok) ? plan.value : null;
}

/** A work with what a handbook would do for truths, in the trade's order; null where these pieces have not what it is done on. */
export function idealWork(work: Work, plan: Plan, truths: readonly Truth[]): Work | null {
  const ideals = truths.map((truth) => kindOf(truth.name).ideal?.(truth, plan, work) ?? null);
  if (ideals.includes(null)) return null;
  const added = ideals.flatMap((ideal) => ideal?.alterations ?? []);
  return {
    ...work,
    picks: ideals.reduce((picks, ideal) => ({ ...picks, ...ideal?.picks }), work.picks),
    alterations: [...work.alterations, ...added].toSorted((a, b) => placeInOrder(a) - placeInOrder(b)),
  };
}

/** Which dimensions a truth itself is about, of those that the garment has. */
export const ownOf = ({ name }: Truth, base: Dimensions): readonly Dimension[] =>
  DIMENSIONS.filter((dimension) => kindOf(name).needs[dimension] !== undefined && base[dimension] !== undefined);

const isOn = ({ half }: Truth, on: Half): boolean => half === undefined || half === on;

/**
 * What a body needs: the first garment's dimensions, its truths added. Where the right alteration rightly changes other dimensions
 * too, as a fuller breast needs a longer front, those are taken from the alteration as it is taught. null where it cannot be made.
 */
export function needsOf(work: Work, plan: Plan, truths: readonly Truth[]): OnHalves | null {
  const base = measured(plan);
  const needs: Record<Half, Partial<Record<Dimension, number>>> = { left: { ...base.left }, right: { ...base.right } };
  for (const truth of truths) {
    const kind = kindOf(truth.name);
    const ideal = kind.follows === true ? idealWork(work, plan, [truth]) : work;
    const made = ideal === work ? plan : ideal === null ? null : soundPlan(ideal);
    if (made === null) return null;
    const after = ideal === work ? base : measured(made);
    for (const half of HALVES) {
      for (const dimension of DIMENSIONS) {
        const [was, is] = [base[half][dimension], after[half][dimension]];
        const own = kind.needs[dimension];
        if (was === undefined) continue;
        const more = own === undefined ? (is ?? was) - was : isOn(truth, half) ? own * truth.amount : 0;
        needs[half][dimension] = (needs[half][dimension] ?? was) + more;
      }
    }
  }
  return needs;
}

/** What the body needs beyond what the garment has: positive where it is short or tight. */
export function residualsOf(needs: OnHalves, plan: Plan): OnHalves {
  const now = measured(plan);
  const of = (half: Half): Dimensions =>
    Object.fromEntries(
      DIMENSIONS.flatMap((name) => {
        const [need, is] = [needs[half][name], now[half][name]];
        return need === undefined ? [] : [[name, is === undefined ? 0 : need - is]];
      }),
    );
  return { left: of("left"), right: of("right") };
}
