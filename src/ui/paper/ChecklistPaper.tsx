import { PrintedChecklist } from "../../print/PrintedChecklist";
import { planFailureWords } from "../../words/plan";
import { FailureNote } from "../session/FailureNote";
import { useSettledPlan } from "../session/usePlan";
import { useSettledWork } from "../session/useWork";
import { PrintRow } from "./PrintRow";
import { SheetPreview } from "./SheetPreview";
import * as say from "../../words/paperStep";

/** The checklist of the plan, or why there is none yet. */
export function ChecklistPaper() {
  const work = useSettledWork((current) => current);
  const result = useSettledPlan();
  if (!result.ok)
    return <FailureNote words={planFailureWords(result.failure, work.unit, work.pattern.chart.sizes.length)} />;
  const failing = result.value.checks.filter((check) => !check.ok).length;
  return (
    <>
      <PrintRow label={say.printTheChecklist} paper={work.paper} />
      {failing > 0 && <p className="note doubt">{say.checklistDoubts(failing)}</p>}
      <SheetPreview>
        <PrintedChecklist work={work} plan={result.value} />
      </SheetPreview>
    </>
  );
}
