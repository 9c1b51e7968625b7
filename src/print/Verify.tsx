import type { Plan } from "../core/plan/plan";
import type { LengthUnit } from "../core/plan/work";
import { verifyGroups } from "../words/verify";
import { tied } from "./tied";

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
                  {row.how !== null && <small>{tied(row.how)}</small>}
                </th>
                <td>
                  <b>{tied(row.expected)}</b>
                </td>
                <td>{tied(row.allowed)}</td>
                <td className="pc-measured" />
              </tr>
            ))}
          </tbody>
        </table>
      ))}
    </section>
  );
}
