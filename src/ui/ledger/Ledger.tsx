import "./ledger.css";
import { useEffect, useRef, useState } from "react";
import type { CheckResult } from "../../core/checks/check";
import type { PieceName } from "../../core/pattern/piece";
import type { Plan, Slip } from "../../core/plan/plan";
import { dartOfAlteration, type LengthUnit } from "../../core/plan/work";
import { checkClaim, checkFailureSentence, checkPlace } from "../../words/checks";
import { capital, listWords, pieceWords } from "../../words/names";
import { slipAmount, slipGroup, slipNoteSentence, slipTitle, slipWhy } from "../../words/ledger";
import { slipFailureSentence } from "../../words/slips";
import { useRun, useSettledPlan, useWork } from "../app/useWork";
import { useViewState } from "../app/viewState";

/** The ledger: a slip for each thing done to the pieces, and under them the checks. It stands still during a drag. */
export function Ledger() {
  const plan = useSettledPlan();
  const unit = useWork((work) => work.unit);
  if (!plan.ok) {
    return (
      <section className="ledger" aria-labelledby="ledger-title">
        <h2 id="ledger-title">Ledger</h2>
        <p>Slips appear here as soon as there is a plan.</p>
      </section>
    );
  }
  return (
    <section className="ledger" aria-labelledby="ledger-title">
      <h2 id="ledger-title">Ledger</h2>
      <Slips slips={plan.value.slips} unit={unit} />
      <Checks plan={plan.value} unit={unit} />
    </section>
  );
}

function Slips({ slips, unit }: { readonly slips: readonly Slip[]; readonly unit: LengthUnit }) {
  if (slips.length === 0) return <p>Nothing is altered: cut the frame size as printed.</p>;
  return (
    <ul className="slips">
      {slips
        .filter((slip, index) => slips.findIndex((other) => slipGroup(other) === slipGroup(slip)) === index)
        .map((slip) => (
          <SlipOfPaper
            key={slipGroup(slip)}
            group={slipGroup(slip)}
            slip={slip}
            pieces={slips.filter((other) => slipGroup(other) === slipGroup(slip)).map(({ piece }) => piece)}
            unit={unit}
          />
        ))}
    </ul>
  );
}

interface SlipOfPaperProps {
  readonly group: string;
  readonly slip: Slip;
  readonly pieces: readonly PieceName[];
  readonly unit: LengthUnit;
}

function SlipOfPaper({ group, slip, pieces, unit }: SlipOfPaperProps) {
  const lit = useViewState((view) => view.litSlip === group);
  const lightSlip = useViewState((view) => view.lightSlip);
  const selectDart = useViewState((view) => view.selectDart);
  const run = useRun();
  const title = slipTitle(slip, unit);
  const paper = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (lit) bringIntoView(paper.current);
  }, [lit]);
  const light = (): void => {
    lightSlip(lit ? null : group);
    const dart = slip.what.kind === "alteration" ? dartOfAlteration(slip.what.alteration) : null;
    if (dart !== null) selectDart(dart);
  };
  return (
    <li ref={paper} className="slip" data-source={slip.source} data-lit={lit ? "" : undefined} data-refused={slip.outcome.ok ? undefined : ""}>
      <button type="button" className="slip-face" aria-pressed={lit} onClick={light}>
        <span className="slip-piece">{capital(listWords(pieces.map(pieceWords)))}</span>
        <span className="slip-amount">{slipAmount(slip, unit)}</span>
        <span className="slip-title">{title}</span>
        <span className="slip-why">{slipWhy(slip)}</span>
      </button>
      {!slip.outcome.ok && <p className="slip-refusal">Left out. {slipFailureSentence(slip.outcome.failure, unit)}</p>}
      {slip.outcome.ok &&
        slip.outcome.value.notes.map((note) => (
          <p key={note.code} className="slip-note">
            {slipNoteSentence(note, slip.piece, unit)}
          </p>
        ))}
      {slip.source === "wearer" && (
        <button
          type="button"
          className="link-button slip-remove"
          aria-label={`Take out: ${title}`}
          onClick={() => run({ kind: "removeAlteration", id: slip.id })}
        >
          Take out
        </button>
      )}
    </li>
  );
}

/** Scrolls the ledger's own place alone, so that the page stays where it is on a small screen. */
function bringIntoView(slip: HTMLElement | null): void {
  const place = slip?.closest(".ledger-place");
  if (slip === null || place === null || place === undefined) return;
  const [own, room] = [slip.getBoundingClientRect(), place.getBoundingClientRect()];
  if (own.top < room.top) place.scrollTop -= room.top - own.top;
  else if (own.bottom > room.bottom) place.scrollTop += own.bottom - room.bottom;
}

function Checks({ plan, unit }: { readonly plan: Plan; readonly unit: LengthUnit }) {
  const failing = plan.checks.filter((check) => !check.ok);
  const names = [...new Set(plan.checks.map((check) => check.name))];
  return (
    <section className="checks" aria-labelledby="checks-title">
      <h3 id="checks-title">
        Checks <span className="checks-count">{failing.length === 0 ? "all hold" : `${failing.length} to look at`}</span>
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
                  <span className="visually-hidden">{bad.length === 0 ? ": holds" : ": does not hold"}</span>
                </span>
                {bad.map((check) => (
                  <p key={keyOf(check)}>{checkFailureSentence(check, unit)}</p>
                ))}
                <Measured results={results} unit={unit} />
              </div>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** The figures are set out only once she asks for them. */
function Measured({ results, unit }: { readonly results: readonly CheckResult[]; readonly unit: LengthUnit }) {
  const [open, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{results.length === 1 ? "measured" : `${results.length} measured`}</summary>
      {open && <CheckRows results={results} unit={unit} />}
    </details>
  );
}

function CheckRows({ results, unit }: { readonly results: readonly CheckResult[]; readonly unit: LengthUnit }) {
  return (
    <table className="check-rows">
      <thead>
        <tr>
          <th scope="col">where</th>
          <th scope="col">is</th>
          <th scope="col">should be</th>
        </tr>
      </thead>
      <tbody>
        {results.map((check) => {
          const { where, measured, expected } = checkPlace(check, unit);
          return (
            <tr key={keyOf(check)}>
              <td>{where}</td>
              <td>{measured}</td>
              <td>{expected}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

const keyOf = (check: CheckResult): string =>
  [check.name, ...check.pieces, check.level, check.seam, check.dart, check.point].filter((part) => part !== undefined).join(" ");
