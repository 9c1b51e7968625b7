/** The alteration checklist as it lies on the cutting table: the preview on screen and the printed sheet are one. */
import type { Plan } from "../core/plan/plan";
import type { Work } from "../core/plan/work";
import { BeforeCutting } from "./BeforeCutting";
import { Notes } from "./Notes";
import { OrderOfWork } from "./OrderOfWork";
import { pageRule } from "./pageRule";
import { SheetHeading } from "./SheetHeading";
import { Sums } from "./Sums";
import { Verify } from "./Verify";

export interface PrintedChecklistProps {
  readonly work: Work;
  readonly plan: Plan;
}

export function PrintedChecklist({ work, plan }: PrintedChecklistProps) {
  return (
    <article className="printed-checklist" aria-label="Alteration checklist" data-paper={work.paper}>
      {/* The rule holds no text but the escaped name, so it can go in as it is on either side of rendering. */}
      <style dangerouslySetInnerHTML={{ __html: pageRule(work.paper, work.name) }} />
      <SheetHeading work={work} plan={plan} />
      <BeforeCutting work={work} plan={plan} />
      <OrderOfWork plan={plan} unit={work.unit} />
      <Verify plan={plan} unit={work.unit} />
      <Notes />
      <Sums work={work} plan={plan} />
    </article>
  );
}
