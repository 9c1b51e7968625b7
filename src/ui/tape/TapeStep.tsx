import { measuresOf } from "../../core/measures/tape";
import { useState } from "react";
import { MEASURE_NAMES, type MeasureName } from "../../core/measures/measure";
import { measureWords } from "../../words/measures";
import { planFailureWords } from "../../words/plan";
import { FailureNote } from "../app/FailureNote";
import { useSettledPlan, useSettledWork } from "../app/useWork";
import { InventedNote } from "../works/InventedNote";
import { MeasureField } from "./MeasureField";
import { TapeFigure, TapeGuidance } from "./TapeFigure";

/** What a plan cannot do without, and the upper chest, without which a cup cannot be told. */
const FIRST: readonly MeasureName[] = ["bustGirth", "upperChestGirth", "waistGirth", "hipGirth"];
const MORE: readonly MeasureName[] = MEASURE_NAMES.filter((name) => !FIRST.includes(name));

export function TapeStep() {
  const [shown, setShown] = useState<MeasureName>("bustGirth");
  const taken = useSettledWork((work) => MORE.filter((name) => measuresOf(work.tapes)[name] !== undefined).length);
  const plan = useSettledPlan();
  const unit = useSettledWork((work) => work.unit);
  const sizes = useSettledWork((work) => work.pattern.chart.sizes.length);
  return (
    <>
      <header className="step-head">
        <h2>Tape</h2>
        <p>Measure over the bra you will wear, the tape snug and level, breathing easily. Type it as you read it.</p>
      </header>
      <InventedNote />
      <div className="tape">
        <div className="tape-fields">
          {FIRST.map((name) => (
            <MeasureField key={name} name={name} onShow={setShown} />
          ))}
          <details className="tape-more" open={taken > 0 ? true : undefined}>
            <summary>
              More measures <span className="aside">({taken} of {MORE.length} taken)</span>
            </summary>
            <div>
              <p className="aside">Not needed for a plan. They make its darts and lengths more your own.</p>
              {MORE.map((name) => (
                <MeasureField key={name} name={name} onShow={setShown} />
              ))}
            </div>
          </details>
        </div>
        <aside className="tape-guide" aria-label="Where the tape goes" aria-live="polite">
          <h3>{measureWords(shown).name}</h3>
          <TapeFigure measure={shown} />
          <TapeGuidance measure={shown} />
        </aside>
      </div>
      {!plan.ok && <FailureNote words={planFailureWords(plan.failure, unit, sizes)} />}
    </>
  );
}
