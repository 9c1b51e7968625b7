import type { PaperSize } from "../../core/plan/work";
import { PrintedChecklist } from "../../print/PrintedChecklist";
import { planFailureWords } from "../../words/plan";
import { FailureNote } from "../app/FailureNote";
import { useRun, useSettledPlan, useSettledWork } from "../app/useWork";
import { Choice } from "../fields/Choice";

const SIZES: readonly { readonly value: PaperSize; readonly label: string }[] = [
  { value: "A4", label: "A4" },
  { value: "Letter", label: "Letter" },
];

export function PaperStep() {
  const work = useSettledWork((current) => current);
  const result = useSettledPlan();
  const run = useRun();
  const failing = result.ok ? result.value.checks.filter((check) => !check.ok).length : 0;
  return (
    <>
      <header className="step-head">
        <h2>Paper</h2>
        <p>The order of work, piece by piece, with boxes to tick. Lay it beside the pattern and cut with it.</p>
      </header>
      <div className="paper-choice">
        <Choice legend="Paper" options={SIZES} value={work.paper} onChange={(paper) => run({ kind: "setPaper", paper })} />
        {result.ok && (
          <button type="button" className="button main" onClick={() => window.print()}>
            Print the checklist
          </button>
        )}
      </div>
      {result.ok ? (
        <>
          {failing > 0 && (
            <p className="note doubt">
              {failing === 1 ? "One check does not hold yet" : `${failing} checks do not hold yet`}; the sheet says so too. Look at them
              before you cut.
            </p>
          )}
          <p className="aside">In the print dialogue choose {work.paper} and 100 % (“actual size”), not “fit to page”.</p>
          <div className="paper-preview">
            <PrintedChecklist work={work} plan={result.value} />
          </div>
        </>
      ) : (
        <FailureNote words={planFailureWords(result.failure, work.unit, work.pattern.chart.sizes.length)} />
      )}
    </>
  );
}
