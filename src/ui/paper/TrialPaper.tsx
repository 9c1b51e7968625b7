import { TrialRecord } from "../../print/TrialRecord";
import { planFailureWords } from "../../words/plan";
import { FailureNote } from "../session/FailureNote";
import { useSettledPlan } from "../session/usePlan";
import { useSettledWork } from "../session/useWork";
import { PrintRow } from "./PrintRow";
import { SheetPreview } from "./SheetPreview";
import * as say from "../../words/paperStep";

/** The trial record of the plan, or why there is none yet. */
export function TrialPaper() {
  const work = useSettledWork((current) => current);
  const result = useSettledPlan();
  if (!result.ok)
    return <FailureNote words={planFailureWords(result.failure, work.unit, work.pattern.chart.sizes.length)} />;
  return (
    <>
      <PrintRow label={say.printTheTrialRecord} paper={work.paper} />
      <SheetPreview>
        <TrialRecord work={work} plan={result.value} />
      </SheetPreview>
    </>
  );
}
