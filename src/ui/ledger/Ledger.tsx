import "./ledger.css";
import { useState } from "react";
import type { CheckResult } from "../../core/checks/check";
import { halvesOf, type Plan } from "../../core/plan/plan";
import type { LengthUnit } from "../../core/decisions/work";
import { checkClaim, checkFailureSentence, checkPlace } from "../../words/checks";
import { truedSentence } from "../../words/truing";
import { useSettledPlan } from "../session/usePlan";
import { useSettledWork, useWork } from "../session/useWork";
import { KeepHalf } from "../trial/KeepHalf";
import { Slips } from "./Slips";
import * as say from "../../words/ledgerPanel";
import { Fractions } from "../fields/Fractions";

/** The ledger: a slip for each thing done to the pieces, what truing did, and the checks. It stands still during a drag. */
export function Ledger() {
  const plan = useSettledPlan();
  const work = useSettledWork((current) => current);
  const unit = useWork((current) => current.unit);
  if (!plan.ok) {
    return (
      <section className="ledger" aria-labelledby="ledger-title">
        <h2 id="ledger-title">{say.ledger}</h2>
        <p>{say.nothingPlannedYet}</p>
      </section>
    );
  }
  return (
    <section className="ledger" aria-labelledby="ledger-title">
      <h2 id="ledger-title">{say.ledger}</h2>
      <KeepHalf work={work} />
      <Slips planned={plan.value.ledger} decided={work.alterations} unit={unit} />
      <Truing plan={plan.value} unit={unit} />
      <Checks plan={plan.value} unit={unit} />
    </section>
  );
}

/** What was trued after the last slip; of uneven halves what each asked for, once where it is the same. */
function Truing({ plan, unit }: { readonly plan: Plan; readonly unit: LengthUnit }) {
  const sentences = [
    ...new Set(halvesOf(plan).flatMap(({ truing }) => truing.map((change) => truedSentence(change, unit)))),
  ];
  if (sentences.length === 0) return null;
  return (
    <section className="trued" aria-labelledby="trued-title">
      <h3 id="trued-title" className="phase-title">
        {say.truing}
      </h3>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>
            <Fractions text={sentence} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Checks({ plan, unit }: { readonly plan: Plan; readonly unit: LengthUnit }) {
  const failing = plan.checks.filter((check) => !check.ok);
  const names = [...new Set(plan.checks.map((check) => check.name))];
  return (
    <section className="checks" aria-labelledby="checks-title">
      <h3 id="checks-title">
        {say.checks}{" "}
        <span className="checks-count">{failing.length === 0 ? say.allHold : say.toLookAt(failing.length)}</span>
      </h3>
      <ul>
        {names.map((name) => {
          const results = plan.checks.filter((check) => check.name === name);
          const bad = results.filter((check) => !check.ok);
          return (
            <li key={name} data-ok={bad.length === 0 ? "" : undefined}>
              <span className="check-mark" aria-hidden="true">
                {bad.length === 0 ? "✓" : "!"}
              </span>
              <div>
                <span className="check-claim">
                  {checkClaim(name)}
                  <span className="visually-hidden">{bad.length === 0 ? say.holds : say.doesNotHold}</span>
                </span>
                {bad.map((check) => (
                  <p key={keyOf(check)}>
                    <Fractions text={checkFailureSentence(check, unit)} />
                  </p>
                ))}
                <Measured name={name} results={results} unit={unit} />
              </div>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

interface MeasuredProps {
  readonly results: readonly CheckResult[];
  readonly unit: LengthUnit;
}

/** The figures are set out only once she asks for them. */
function Measured({ name, results, unit }: MeasuredProps & { readonly name: CheckResult["name"] }) {
  const [open, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{say.measuredCount(results.length)}</summary>
      {open && <CheckRows name={checkClaim(name)} results={results} unit={unit} />}
    </details>
  );
}

function CheckRows({ name, results, unit }: MeasuredProps & { readonly name: string }) {
  return (
    <table className="check-rows" aria-label={name}>
      <thead>
        <tr>
          <th scope="col">{say.where}</th>
          <th scope="col">{say.isWord}</th>
          <th scope="col">{say.shouldBe}</th>
        </tr>
      </thead>
      <tbody>
        {results.map((check) => {
          const { where, measured, expected } = checkPlace(check, unit);
          return (
            <tr key={keyOf(check)}>
              <td>
                <Fractions text={where} />
              </td>
              <td>
                <Fractions text={measured} />
              </td>
              <td>
                <Fractions text={expected} />
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

const keyOf = (check: CheckResult): string =>
  [check.name, ...check.pieces, check.level, check.seam, check.dart, check.point, check.half]
    .filter((part) => part !== undefined)
    .join(" ");
