import type { Work } from "../../core/decisions/work";
import type { Plan } from "../../core/plan/plan";
import { proposalsOf } from "../../core/proposals/proposals";
import { FROM_MEASURES, heldBackSentence, proposalTitle } from "../../words/proposals";
import { Fractions } from "../fields/Fractions";
import * as say from "../../words/blendStep";
import { Sentence } from "../fields/Sentence";

/** What her lengths and widths ask for, a line each; taken on Fit. */
export function ProposalLines({ plan, work }: { readonly plan: Plan; readonly work: Work }) {
  const advice = proposalsOf(work, plan);
  const { proposals } = advice;
  const held = heldBackSentence(advice);
  if (proposals.length === 0 && held === null) return null;
  return (
    <section className="proposal-lines" aria-labelledby="proposal-lines">
      <h3 id="proposal-lines">{FROM_MEASURES}</h3>
      {held !== null && <p>{held}</p>}
      {proposals.length > 0 && (
        <ul>
          {proposals.map((proposal) => {
            const title = proposalTitle(proposal, work.unit);
            return (
              <li key={title}>
                <Fractions text={title} />
              </li>
            );
          })}
        </ul>
      )}
      {proposals.length > 0 && (
        <p className="aside">
          <Sentence text={say.notDoneYet} parts={{ look: <a href="#fit">{say.lookOnFit}</a> }} />
        </p>
      )}
    </section>
  );
}
