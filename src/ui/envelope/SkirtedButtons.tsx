import { buttonRowOn } from "../../core/cutting/trueParts";
import { dressOf } from "../../core/dress/dressOf";
import type { Plan } from "../../core/plan/plan";
import { buttonRowOf, buttonsHint } from "../../words/buttons";
import { Fractions } from "../fields/Fractions";
import { useSettledWork } from "../session/useWork";

/** How far apart buttons come that go on down a skirt. */
export function SkirtedButtons({ plan }: { readonly plan: Plan }) {
  const unit = useSettledWork((work) => work.unit);
  const closure = useSettledWork((work) => work.pattern.closure);
  const dress = useSettledWork(dressOf);
  const row = dress.ok ? buttonRowOn(plan, dress.value.parts, closure) : buttonRowOf(plan.left.pieces, closure);
  return <Fractions text={buttonsHint(row, unit)} />;
}
