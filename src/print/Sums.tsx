import type { SumLine } from "../words/sumLine";
import { measuresOf } from "../core/measures/tape";
import type { Plan } from "../core/plan/plan";
import type { Work } from "../core/decisions/work";
import { bustSum, cupSum, baseSizeSum, levelSum } from "../words/blend";
import { capital, levelWords } from "../words/terms/names";
import { Words } from "./Words";
import * as say from "../words/printedChecklist";

/** Letters: what is longer stands under its words and takes the whole row. */
const LONGEST = 20;

function Sum({ title, lines }: { readonly title: string; readonly lines: readonly SumLine[] }) {
  return (
    <table>
      <caption>{title}</caption>
      <tbody>
        {lines.map((line) => (
          <tr key={line.words} className={line.total === true ? "pc-total" : undefined}>
            {line.figure.length > LONGEST ? (
              <th colSpan={2}>
                <Words>{`${line.words}: ${line.figure}`}</Words>
              </th>
            ) : (
              <>
                <th scope="row">{line.words}</th>
                <td>
                  <Words>{line.figure}</Words>
                </td>
              </>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The sum behind each size, short. */
export function Sums({ work, plan }: { readonly work: Work; readonly plan: Plan }) {
  const { baseSize, cup } = plan.sizing;
  const girth = measuresOf(work.tapes).bustGirth;
  return (
    <section className="pc-sums">
      <h4>{say.theSumsBehindTheSizes}</h4>
      <div>
        <Sum title={say.frame} lines={baseSizeSum(baseSize, work.pattern.chart.draftedDifference, work.unit)} />
        {girth !== undefined && <Sum title={say.cup} lines={cupSum(cup, girth, work.unit)} />}
        <Sum title={say.bustAlteration} lines={bustSum(plan.sizing, girth ?? 0, work.unit)} />
        {plan.levels
          .filter((level) => level.level !== "bust")
          .map((level) => (
            <Sum key={level.level} title={capital(levelWords(level.level))} lines={levelSum(level, work.unit)} />
          ))}
      </div>
    </section>
  );
}
