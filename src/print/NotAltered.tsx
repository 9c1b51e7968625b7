import type { Work } from "../core/decisions/work";
import type { Plan } from "../core/plan/plan";
import { proposalsOf } from "../core/proposals/proposals";
import { NOT_ALTERED, notAltered } from "../words/proposals";
import { Words } from "./Words";

/** What her measures say that no step of the sheet does, each with its sum. */
export function NotAltered({ work, plan }: { readonly work: Work; readonly plan: Plan }) {
  const said = notAltered(proposalsOf(work, plan), work.unit);
  if (said.length === 0) return null;
  return (
    <section className="pc-not-altered">
      <h4>{NOT_ALTERED}</h4>
      <ul>
        {said.map((sentence) => (
          <li key={sentence}>
            <Words>{sentence}</Words>
          </li>
        ))}
      </ul>
    </section>
  );
}
