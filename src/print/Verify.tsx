import type { Plan } from "../core/plan/plan";
import type { LengthUnit } from "../core/decisions/work";
import { verifyGroups, type VerifyGroup } from "../words/verify";
import { Words } from "./Words";
import * as say from "../words/printedChecklist";

/** The last job, on all pieces together: every seam walked and ticked; and what to measure then, with room to write it down. */
export function Verify({ plan, unit }: { readonly plan: Plan; readonly unit: LengthUnit }) {
  return (
    <section className="pc-verify">
      <h4>{say.verifyTitle}</h4>
      <div>
        {verifyGroups(plan, unit).map((group) => (
          <Rows key={group.title} group={group} />
        ))}
      </div>
    </section>
  );
}

/** All rows of a group may differ by the same: it is said once, above them. */
function Rows({ group }: { readonly group: VerifyGroup }) {
  const [first] = group.rows;
  return (
    <table data-walked={group.walked ? "" : undefined}>
      <caption>
        <b>{group.title}.</b> {group.how} {first !== undefined && <Words>{say.mayDifferBy(first.allowed)}</Words>}
      </caption>
      <thead>
        <tr>
          <th scope="col">{say.what}</th>
          <th scope="col">{say.wanted}</th>
          <th scope="col">{say.measured}</th>
        </tr>
      </thead>
      <tbody>
        {group.rows.map((row) => (
          <tr key={row.what}>
            <th scope="row">
              {group.walked && <i className="pc-tick" aria-hidden="true" />}
              {row.what}
              {row.how !== null && (
                <small>
                  <Words>{row.how}</Words>
                </small>
              )}
            </th>
            <td className="pc-wanted">
              <Words>{row.expected}</Words>
            </td>
            <td className="pc-measured" aria-label={say.toBeWrittenIn} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}
