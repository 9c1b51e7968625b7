import type { Plan } from "../core/plan/plan";
import type { Work } from "../core/plan/work";
import { pageRule } from "./pageRule";

/** The sheet for a first fitting. */
export function TrialRecord({ work }: { readonly work: Work; readonly plan: Plan }) {
  return (
    <article className="printed-checklist" aria-label="Trial record" data-paper={work.paper}>
      <style dangerouslySetInnerHTML={{ __html: pageRule(work.paper, work.name) }} />
      <h3>{work.name}</h3>
    </article>
  );
}
