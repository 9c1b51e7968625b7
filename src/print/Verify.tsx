import type { Plan } from "../core/plan/plan";
import type { LengthUnit } from "../core/plan/work";
import { verifyGroups } from "../words/verify";
import { Words } from "./Words";

/** What to measure when all is done, with room to write it down. */
export function Verify({ plan, unit }: { readonly plan: Plan; readonly unit: LengthUnit }) {
  return (
    <section className="pc-verify">
      <h4>Measure after</h4>
      {verifyGroups(plan, unit).map((group) => (
        <table key={group.title}>
          <caption>
            <b>{group.title}.</b> {group.how}
          </caption>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">Wanted</th>
              <th scope="col">May differ by</th>
              <th scope="col">You measured</th>
            </tr>
          </thead>
          <tbody>
            {group.rows.map((row) => (
              <tr key={row.what}>
                <th scope="row">
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
                <td>
                  <Words>{row.allowed}</Words>
                </td>
                <td className="pc-measured" aria-label="to be written in" />
              </tr>
            ))}
          </tbody>
        </table>
      ))}
    </section>
  );
}
