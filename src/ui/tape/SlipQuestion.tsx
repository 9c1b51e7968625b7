import type { LikelySlip, Suspicion } from "../../core/bodies/suspicion";
import { measuresOf } from "../../core/measures/tape";
import type { LengthUnit } from "../../core/plan/work";
import { slipQuestion, slipRemedy } from "../../words/tape";
import { useWork } from "../app/useWork";
import { useRunAll } from "../app/useRunAll";
import { Fractions } from "../fields/Fractions";

interface SlipQuestionProps {
  readonly suspicion: Suspicion;
  readonly slip: LikelySlip;
  readonly unit: LengthUnit;
}

/** The likely mistake as a question, and setting it right as one step. */
export function SlipQuestion({ suspicion, slip, unit }: SlipQuestionProps) {
  const runAll = useRunAll();
  const measures = useWork((work) => measuresOf(work.tapes));
  const remedy = slipRemedy(slip, unit);
  const other = slip.other === undefined ? undefined : measures[slip.other];
  const setRight = (): void => {
    const { measure, value } = suspicion;
    const swap = slip.other === undefined || other === undefined ? null : slip.other;
    runAll(
      swap === null || other === undefined
        ? [{ kind: "setMeasure", measure, value: slip.meant }]
        : [
            { kind: "setMeasure", measure, value: other },
            { kind: "setMeasure", measure: swap, value },
          ],
    );
  };
  return (
    <div className="slip-question">
      <p>
        <Fractions text={slipQuestion(suspicion, slip, unit)} />
      </p>
      {remedy !== null && (
        <button type="button" className="button small" onClick={setRight}>
          <Fractions text={remedy} />
        </button>
      )}
    </div>
  );
}
