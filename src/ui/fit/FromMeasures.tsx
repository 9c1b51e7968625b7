import { Fragment, useRef } from "react";
import type { Work } from "../../core/decisions/work";
import type { Plan } from "../../core/plan/plan";
import type { Compared } from "../../core/proposals/compare";
import { proposalsOf, type Proposal } from "../../core/proposals/proposals";
import { measureWords } from "../../words/measures";
import {
  agreeingSentence,
  agreeingTitle,
  askedSum,
  comparedSum,
  EASE_NOTE,
  FROM_MEASURES,
  heldBackSentence,
  notOnPiecesSentence,
  proposalSentence,
  proposalTitle,
  takeLabel,
  takeWords,
  unansweredSentence,
  whyWords,
} from "../../words/proposals";
import type { SumLine } from "../../words/sumLine";
import { Fractions } from "../fields/Fractions";
import { useRunAll } from "../session/useRunAll";
import * as say from "../../words/fitStep";

interface FromMeasuresProps {
  readonly plan: Plan;
  readonly work: Work;
}

/** What her lengths and widths ask for: each with its sum, and one tap to take it. */
export function FromMeasures({ plan, work }: FromMeasuresProps) {
  const { unit } = work;
  const advice = proposalsOf(work, plan);
  const { proposals, unanswered, agreeing, notOnPieces } = advice;
  const held = heldBackSentence(advice);
  const runAll = useRunAll();
  const heading = useRef<HTMLHeadingElement>(null);
  const isEmpty = held === null && proposals.length + unanswered.length + agreeing.length === 0;

  const take = (proposal: Proposal): void => {
    runAll(proposal.commands);
    // The row goes, and with it the button that was pressed.
    heading.current?.focus({ preventScroll: true });
  };

  return (
    <section className="from-measures" aria-labelledby="from-measures">
      <h3 id="from-measures" ref={heading} tabIndex={-1}>
        {FROM_MEASURES}
      </h3>
      {isEmpty && <p className="aside">{say.measuresAbout}</p>}
      {held !== null && <p>{held}</p>}
      {proposals.length > 0 && (
        <ul className="proposals" aria-label={say.proposed}>
          {proposals.map((proposal) => (
            <Row key={proposalTitle(proposal, unit)} proposal={proposal} unit={unit} onTake={() => take(proposal)} />
          ))}
        </ul>
      )}
      {unanswered.length > 0 && (
        <ul className="proposals" aria-label={say.notAlteredHere}>
          {unanswered.map((one) => (
            <li key={one.compared.measure} className="proposal">
              <p>
                <Fractions text={unansweredSentence(one, unit)} />
              </p>
              <Sums compared={[one.compared]} unit={unit} question={say.why} />
            </li>
          ))}
        </ul>
      )}
      {agreeing.length > 0 && (
        <details className="agreeing">
          <summary>{agreeingTitle(agreeing)}</summary>
          <ul>
            {agreeing.map((compared) => (
              <li key={compared.measure}>
                <Fractions text={agreeingSentence(compared, unit)} />
              </li>
            ))}
          </ul>
          <p className="aside">{EASE_NOTE}</p>
        </details>
      )}
      {notOnPieces.length > 0 && <p className="aside">{notOnPiecesSentence(notOnPieces)}</p>}
    </section>
  );
}

interface SumsProps {
  readonly compared: readonly Compared[];
  readonly unit: Work["unit"];
  readonly question: string;
  /** From what they are apart to what is asked for. */
  readonly asked?: readonly SumLine[];
}

/** The sum of every measure that something stands on. */
function Sums({ compared, unit, question, asked = [] }: SumsProps) {
  return (
    <details className="sum">
      <summary>
        <Fractions text={question} />
      </summary>
      {compared.map((one) => (
        <Fragment key={one.measure}>
          <p>{measureWords(one.measure).name}</p>
          <SumLines lines={comparedSum(one, unit)} />
        </Fragment>
      ))}
      {asked.length > 0 && (
        <>
          <p>{say.together}</p>
          <SumLines lines={asked} />
        </>
      )}
    </details>
  );
}

const SumLines = ({ lines }: { readonly lines: readonly SumLine[] }) => (
  <dl>
    {lines.map((line) => (
      <div key={line.words} data-total={line.total === true ? "" : undefined}>
        <dt>{line.words}</dt>
        <dd>
          <Fractions text={line.figure} />
        </dd>
      </div>
    ))}
  </dl>
);

interface RowProps {
  readonly proposal: Proposal;
  readonly unit: Work["unit"];
  readonly onTake: () => void;
}

function Row({ proposal, unit, onTake }: RowProps) {
  const title = proposalTitle(proposal, unit);
  return (
    <li className="proposal">
      <div className="proposal-head">
        <b>
          <Fractions text={title} />
        </b>
        <button type="button" className="button small" aria-label={takeLabel(proposal, unit)} onClick={onTake}>
          {takeWords(proposal)}
        </button>
      </div>
      <p>
        <Fractions text={proposalSentence(proposal, unit)} />
      </p>
      <Sums compared={proposal.from} asked={askedSum(proposal, unit)} unit={unit} question={whyWords(proposal, unit)} />
    </li>
  );
}
