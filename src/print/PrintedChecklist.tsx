/** The alteration checklist as it lies on the cutting table: the preview on screen and the printed sheet are one. */
import "./print.css";
import type { Plan } from "../core/plan/plan";
import type { Work } from "../core/decisions/work";
import { BeforeCutting } from "./BeforeCutting";
import { HowSure } from "./HowSure";
import { NotAltered } from "./NotAltered";
import { Notes } from "./Notes";
import { OrderOfWork } from "./OrderOfWork";
import { PageSetup } from "./PageSetup";
import { SheetHeading } from "./SheetHeading";
import { Sums } from "./Sums";
import { TapeDoubts } from "./TapeDoubts";
import { Verify } from "./Verify";
import * as say from "../words/printedChecklist";

export interface PrintedChecklistProps {
  readonly work: Work;
  readonly plan: Plan;
}

/** A sheet of so few jobs goes on one page, without the sums: they stand beside each pick on the screen. */
const FEW_JOBS = 12;

export function PrintedChecklist({ work, plan }: PrintedChecklistProps) {
  const isShort = plan.checklist.length <= FEW_JOBS;
  return (
    <article className="printed-checklist" aria-label={say.alterationChecklist} data-paper={work.paper}>
      <PageSetup paper={work.paper} name={work.name} />
      <SheetHeading work={work} plan={plan} />
      <TapeDoubts work={work} />
      <HowSure work={work} />
      <BeforeCutting work={work} plan={plan} />
      <NotAltered work={work} plan={plan} />
      {/* With the sizes, so that the work itself begins on a page where most of it fits. */}
      {!isShort && <Sums work={work} plan={plan} />}
      {!isShort && <Notes />}
      <OrderOfWork plan={plan} unit={work.unit} />
      <Verify plan={plan} unit={work.unit} />
      {isShort && <Notes />}
    </article>
  );
}
