import { mouthsNotMeasured } from "../../core/plan/printedDarts";
import type { Plan } from "../../core/plan/plan";
import type { Work } from "../../core/decisions/work";
import { printedDartsNote } from "../../words/printedDarts";
import { Fractions } from "../fields/Fractions";
import { useTissueView } from "../tissue/tissueView";
import * as say from "../../words/blendStep";

/** What the waist line takes for granted of her waist darts, and the way to where she can say it. */
export function PrintedDarts({ work, plan }: { readonly work: Work; readonly plan: Plan }) {
  const want = useTissueView((view) => view.want);
  const note = printedDartsNote(plan, work);
  const [first] = mouthsNotMeasured(plan.nest, work.pattern.tissue);
  if (note === null || first === undefined) return null;
  return (
    <p className="field-hint">
      <Fractions text={note} />{" "}
      <a href="#tissue" onClick={() => want(first)}>
        {say.measureTheirMouths}
      </a>
      .
    </p>
  );
}
