import "./tape.css";
import { useMemo, useState } from "react";
import { estimatesOf } from "../../core/bodies/estimate";
import { suspicionsOf, type Suspicion } from "../../core/bodies/suspicion";
import { MEASURE_NAMES, type MeasureName } from "../../core/measures/measure";
import { bodyOf } from "../../core/measures/tape";
import { measureWords } from "../../words/measures";
import { planFailureWords } from "../../words/plan";
import { FailureNote } from "../app/FailureNote";
import { useSettledPlan, useSettledWork } from "../app/useWork";
import { InventedNote } from "../works/InventedNote";
import { MeasureField } from "./MeasureField";
import { TapeDays } from "./TapeDays";
import { TapeFigure, TapeGuidance } from "./TapeFigure";
import { WhoseBodies } from "./WhoseBodies";

/** What a plan cannot do without, and the upper chest, without which a cup cannot be told. */
const FIRST: readonly MeasureName[] = ["bustGirth", "upperChestGirth", "waistGirth", "hipGirth"];
const MORE: readonly MeasureName[] = MEASURE_NAMES.filter((name) => !FIRST.includes(name));

/** Of two measures in each other's place, the question is asked beside one. */
const askedOnce = (suspicions: readonly Suspicion[]): readonly Suspicion[] =>
  suspicions.map((doubt, at) => {
    const isAsked = suspicions.slice(0, at).some((other) => other.slip?.kind === "swapped" && other.slip.other === doubt.measure);
    return isAsked && doubt.slip?.kind === "swapped" ? { ...doubt, slip: null } : doubt;
  });

export function TapeStep() {
  const [shown, setShown] = useState<MeasureName>("bustGirth");
  const tapes = useSettledWork((work) => work.tapes);
  const age = useSettledWork((work) => work.age);
  const plan = useSettledPlan();
  const unit = useSettledWork((work) => work.unit);
  const sizes = useSettledWork((work) => work.pattern.chart.sizes.length);
  const body = bodyOf(tapes);
  const estimates = useMemo(() => estimatesOf(bodyOf(tapes), age), [tapes, age]);
  const suspicions = useMemo(() => askedOnce(suspicionsOf(bodyOf(tapes), age)), [tapes, age]);
  const taken = MORE.filter((name) => body[name] !== undefined).length;
  const doubtedMore = suspicions.some(({ measure }) => MORE.includes(measure));

  const field = (name: MeasureName) => (
    <MeasureField
      key={name}
      name={name}
      estimate={estimates[name]}
      suspicion={suspicions.find(({ measure }) => measure === name)}
      onShow={setShown}
    />
  );

  return (
    <>
      <header className="step-head">
        <h2>Tape</h2>
        <p>Measure over the bra you will wear, the tape snug and level, breathing easily. Type it as you read it; what you take twice is surer.</p>
      </header>
      <InventedNote />
      <TapeDays />
      <div className="tape">
        <div className="tape-fields">
          {FIRST.map(field)}
          <details className="tape-more" open={taken > 0 || doubtedMore ? true : undefined}>
            <summary>
              More measures <span className="aside">({taken} of {MORE.length} taken)</span>
            </summary>
            <div>
              <p className="aside">
                Not needed for a plan. They make its darts and lengths more your own. Until you take one, its place holds a <span className="guess">guess</span>:
                something to check the tape against. Nothing is cut by it.
              </p>
              {MORE.map(field)}
            </div>
          </details>
          <WhoseBodies />
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
