import type { Plan } from "../core/plan/plan";
import type { Work } from "../core/decisions/work";
import { cautions } from "../words/cautions";
import { planDoubts } from "../words/doubts";
import { printedDartsNote } from "../words/printedDarts";
import { toileNote } from "../words/paperChoices";
import { replacedNote } from "../words/replacedBySkirt";
import { Words } from "./Words";
import { ALL_CHECKS_HOLD, doubtsTitle } from "../words/sheets";
import * as say from "../words/printedChecklist";

/** What to know before the first cut: checks that do not hold, and where the work can hurt. */
export function BeforeCutting({ work, plan }: { readonly work: Work; readonly plan: Plan }) {
  const doubts = planDoubts(plan, work.unit);
  const { failing } = doubts;
  const darts = printedDartsNote(plan, work);
  const replaced = replacedNote(work, plan);
  const notes = [...doubts.notes, ...[darts, replaced].filter((note) => note !== null)];
  return (
    <>
      {failing.length > 0 ? (
        <section className="pc-doubts">
          <h4>{doubtsTitle(failing.length)}</h4>
          <ul>
            {failing.map((sentence) => (
              <li key={sentence}>
                <Words>{sentence}</Words>
              </li>
            ))}
          </ul>
        </section>
      ) : (
        <p className="pc-all-hold">{ALL_CHECKS_HOLD(plan.checks.length)}</p>
      )}
      {notes.map((note) => (
        <p key={note} className="pc-note">
          <Words>{note}</Words>
        </p>
      ))}
      <p className="pc-note">
        <Words>{toileNote(work.unit)}</Words>
      </p>
      <section className="pc-care">
        <h4>{say.takeCare}</h4>
        <ul>
          {cautions(work, plan).map((caution) => (
            <li key={caution.code}>
              <b>{caution.title}.</b> <Words>{caution.text}</Words>
            </li>
          ))}
        </ul>
      </section>
    </>
  );
}
