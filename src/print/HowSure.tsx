import type { Work } from "../core/decisions/work";
import { surePassage } from "../words/surePassage";
import { Words } from "./Words";
import * as say from "../words/printedChecklist";

/** How far the measures settle the sizes, and what to measure again before the cloth is cut. */
export function HowSure({ work }: { readonly work: Work }) {
  const passage = surePassage(work);
  if (passage === null) return null;
  return (
    <section className="pc-sure">
      <h4>{say.howSure}</h4>
      <p>
        <Words>{passage.said.join(" ")}</Words>
      </p>
      {passage.next !== null && (
        <p>
          <b>
            <Words>{passage.next}</Words>
          </b>
        </p>
      )}
    </section>
  );
}
