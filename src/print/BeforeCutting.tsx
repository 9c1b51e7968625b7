import type { Plan } from "../core/plan/plan";
import type { Work } from "../core/plan/work";
import { cautions } from "../words/cautions";
import { checkFailureSentence } from "../words/checks";

/** What to know before the first cut: checks that do not hold, and where the work can hurt. */
export function BeforeCutting({ work, plan }: { readonly work: Work; readonly plan: Plan }) {
  const failing = plan.checks.filter((check) => !check.ok);
  return (
    <>
      {failing.length > 0 ? (
        <section className="pc-doubts">
          <h4>
            {failing.length === 1
              ? "Before you cut: one check does not hold"
              : `Before you cut: ${failing.length} checks do not hold`}
          </h4>
          <ul>
            {failing.map((check) => {
              const sentence = checkFailureSentence(check, work.unit);
              return <li key={`${check.name} ${sentence}`}>{sentence}</li>;
            })}
          </ul>
        </section>
      ) : (
        <p className="pc-all-hold">All {plan.checks.length} checks on this plan hold.</p>
      )}
      <section className="pc-care">
        <h4>Take care</h4>
        <ul>
          {cautions(work, plan).map((caution) => (
            <li key={caution.code}>
              <b>{caution.title}.</b> {caution.text}
            </li>
          ))}
        </ul>
      </section>
    </>
  );
}
