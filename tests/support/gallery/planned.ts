/** Plans of the gallery's works, and what an alteration makes of them. */
import type { Alteration } from "../../../src/core/decisions/alteration";
import type { Work } from "../../../src/core/decisions/work";
import type { AlterationFailure } from "../../../src/core/alterations/outcome/alterationFailure";
import { isSamePiece, piecesOf, setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import type { Plan, PlannedAlteration } from "../../../src/core/plan/plan";
import { fail, invariant, ok, type Result } from "../../../src/core/result";
import { alterationFailureSentence } from "../../../src/words/planned";
import { planFailureWords } from "../../../src/words/plan";
import { SHOWN, type Shown } from "./scene";

const plans = new WeakMap<Work, Result<Plan, string>>();

/** Worked out once for each work. */
export function planned(work: Work): Result<Plan, string> {
  const known = plans.get(work);
  if (known !== undefined) return known;
  const made = derivePlan(work);
  const { sizes } = work.pattern.chart;
  const said = made.ok ? made : fail(planFailureWords(made.failure, "cm", sizes.length).text);
  plans.set(work, said);
  return said;
}

export function piecesOfWork(work: Work): PieceSet {
  const plan = planned(work);
  return plan.ok ? setOf(plan.value.left.pieces) : {};
}

/** What is new or other than it was, and what that was. */
export function changed(before: PieceSet, after: PieceSet): Pick<Shown, "before" | "pieces"> {
  const unlike = (of: PieceSet): PieceSet =>
    setOf(piecesOf(of).filter(({ name }) => !isSamePiece(before[name], after[name])));
  return { before: unlike(before), pieces: unlike(after) };
}

/** The same with nothing more to say, but where nothing changes. */
export function shownChange(before: PieceSet, after: PieceSet): Shown {
  const shown = changed(before, after);
  return { ...SHOWN, ...shown, notes: Object.keys(shown.pieces).length === 0 ? ["Nothing changes."] : [] };
}

const plansAltered = new WeakMap<Work, Map<string, Result<Made, AlterationFailure | string>>>();

interface Made {
  readonly plan: Plan;
  readonly line: PlannedAlteration;
}

/** The work with one alteration more; or why that was left out. */
function withOneMore(work: Work, alteration: Alteration): Result<Made, AlterationFailure | string> {
  const key = JSON.stringify(alteration);
  const known = plansAltered.get(work)?.get(key);
  if (known !== undefined) return known;
  const plan = planned({ ...work, alterations: [...work.alterations, alteration] });
  const answer = plan.ok ? lineOf(plan.value, alteration) : plan;
  plansAltered.set(work, (plansAltered.get(work) ?? new Map()).set(key, answer));
  return answer;
}

function lineOf(plan: Plan, { id }: Alteration): Result<Made, AlterationFailure> {
  const line = invariant(
    plan.left.alterations.find((one) => one.id === id),
    id,
  );
  return line.outcome.ok ? ok({ plan, line }) : line.outcome;
}

/** Whether an alteration goes; if not, the nearest amount that its refusal names. */
export function goes(work: Work, alteration: Alteration): { readonly ok: boolean; readonly most: number | null } {
  const answer = withOneMore(work, alteration);
  if (answer.ok) return { ok: true, most: null };
  const { failure } = answer;
  return { ok: false, most: typeof failure === "object" && "most" in failure ? failure.most : null };
}

/** The pieces before and after one alteration more. */
export function altered(work: Work, alteration: Alteration): Result<Shown, string> {
  const answer = withOneMore(work, alteration);
  if (!answer.ok)
    return fail(
      typeof answer.failure === "string" ? answer.failure : alterationFailureSentence(answer.failure, work.unit),
    );
  const { plan, line } = answer.value;
  return ok({
    ...shownChange(piecesOfWork(work), setOf(plan.left.pieces)),
    surgery: line.outcome.ok ? line.outcome.value.surgery : [],
  });
}
