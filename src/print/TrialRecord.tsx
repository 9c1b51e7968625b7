/** The sheet beside the mirror: a toile is fitted, and what is seen, pinned and decided is written on it by hand. */
import "./print.css";
import "./trialRecord.css";
import { Fragment } from "react";
import { trialFigure, type TrialHalf, type TrialView } from "../drawing/trialFigure";
import type { Plan } from "../core/plan/plan";
import type { Work } from "../core/decisions/work";
import { bustSentence, shareWords } from "../words/blend";
import { capital, levelWords } from "../words/terms/names";
import {
  balanceGroups,
  FITTING_ORDER,
  fittingCautions,
  halvesDiffer,
  HOW_MUCH,
  HOW_MUCH_NOTE,
  MARKS,
  MIRROR_NOTE,
  ORDER_NOTE,
  PINNED,
  SEEN,
  sewnWith,
  viewCaption,
  yourHalf,
} from "../words/trial";
import { Blank } from "./Blank";
import { PageSetup } from "./PageSetup";
import { Words } from "./Words";
import { WorkName } from "./WorkName";

interface TrialRecordProps {
  readonly work: Work;
  readonly plan: Plan;
}

export function TrialRecord({ work, plan }: TrialRecordProps) {
  return (
    <article className="printed-checklist trial-record" aria-label="Trial record" data-paper={work.paper}>
      <PageSetup paper={work.paper} name={work.name} kind="Trial record" />
      <Heading work={work} plan={plan} />
      <section className="tr-figures" aria-label="The toile on the body">
        {trialFigure(plan).map((view) => (
          <Figure key={view.side} view={view} />
        ))}
        <p>
          {MIRROR_NOTE} {MARKS} <b>{HOW_MUCH_NOTE}</b>
        </p>
      </section>
      <Seen work={work} plan={plan} />
      <Balance work={work} plan={plan} />
      <section className="tr-order">
        <p>
          <b>Fit in this order:</b> {FITTING_ORDER.map((what, at) => `${at + 1} ${what}`).join("; ")}. {ORDER_NOTE}
        </p>
        {fittingCautions(work, plan).map(({ code, title, text }) => (
          <p key={code}>
            <b>{title}.</b> {text}
          </p>
        ))}
      </section>
      <section className="tr-verdict" aria-label="Verdict">
        <p>
          <b>Verdict</b>
        </p>
        <Tick>keep</Tick>
        <Tick>try again</Tick>
        <Blank label="Next trial no." />
        <Blank label="because" />
        <Blank label="" />
      </section>
    </article>
  );
}

function Tick({ children }: { readonly children: string }) {
  return (
    <p className="tr-tick">
      <i aria-hidden="true" />
      {children}
    </p>
  );
}

function Heading({ work, plan }: TrialRecordProps) {
  const { baseSize, cup, bust } = plan.sizing;
  const [differ, sewn] = [halvesDiffer(plan, work.unit), sewnWith(plan, work.unit)];
  const levels = plan.levels
    .filter(({ level }) => level !== "bust")
    .map(({ level, between, share }) => `${levelWords(level)} ${shareWords(between, share)}`);
  const sizes = [`Frame ${baseSize.label}`, ...(cup.label === null ? [] : [`cup ${cup.label}`]), ...levels].join("; ");
  return (
    <header className="pc-heading">
      <div className="pc-names">
        <p className="pc-kind">Trial record</p>
        <WorkName work={work} />
        {work.invented && <p className="pc-invented">Invented demo: no real person and no real pattern.</p>}
      </div>
      <div className="pc-by-hand">
        <div>
          <Blank label="Date" />
          <Blank label="Trial no." />
        </div>
        <Blank label="Cloth" />
        <Blank label="Pinned by" />
      </div>
      <div className="tr-made">
        <p>
          <Words>{`${work.pattern.name}. ${sizes}. ${bustSentence(bust, work.unit)}`}</Words>
        </p>
        {sewn.length > 0 && (
          <p>
            <b>Sewn with:</b> <Words>{`${sewn.join("; ")}.`}</Words>
          </p>
        )}
        {differ === null ? (
          <p>Left and right halves are cut alike.</p>
        ) : (
          <p>
            <b>The halves differ:</b> <Words>{differ.join(" ")}</Words>
          </p>
        )}
      </div>
    </header>
  );
}

/** White round the drawing, mm of the pieces. */
const ROOM = 10;

function Figure({ view }: { readonly view: TrialView }) {
  const { side, box, halves } = view;
  const caption = viewCaption(side);
  return (
    <figure>
      <svg
        viewBox={[box.x - ROOM, box.y - ROOM, box.width + 2 * ROOM, box.height + 2 * ROOM].join(" ")}
        role="img"
        aria-label={`${caption}: to draw on`}
      >
        {halves.map((half) => (
          <HalfDrawn key={half.half} half={half} />
        ))}
      </svg>
      <p className="tr-halves">
        {halves.map(({ half }) => (
          <b key={half}>{capital(yourHalf(half))}</b>
        ))}
      </p>
      <figcaption>{caption}</figcaption>
    </figure>
  );
}

const cross = ({ x, y }: { readonly x: number; readonly y: number }): string => `M${x - 8} ${y}h16M${x} ${y - 8}v16`;

function HalfDrawn({ half }: { readonly half: TrialHalf }) {
  return (
    <g transform={half.mirrored ? "scale(-1 1)" : undefined} data-half={half.half}>
      {half.pieces.map(({ piece, outline, darts, levels, strap, bustPoint, down, across }) => (
        <g key={piece} transform={`translate(${across} ${down})`}>
          {strap !== "" && <path className="tr-strap" d={strap} />}
          <path className="tr-outline" d={outline} />
          <path className="tr-darts" d={darts} />
          <path className="tr-level" d={levels} />
          {bustPoint !== null && <path className="tr-darts" d={cross(bustPoint)} />}
        </g>
      ))}
    </g>
  );
}

/** Rows to write in: as many as the page holds. */
const ROWS: Readonly<Record<Work["paper"], readonly number[]>> = { A4: [1, 2, 3, 4, 5, 6], Letter: [1, 2, 3, 4, 5] };

const FEWEST_ROWS = 3;
/** Letters on a line of the heading, and lines that take the room of a row. */
const LETTERS = 118;
/** Letters on a line of the name of the work, which is set larger. */
const NAME_LETTERS = 45;
const LINES_PER_ROW = 2.4;

/** Fewer rows where more is told above and below them: all of it stays on one page. */
function rowsLeft(work: Work, plan: Plan): number {
  const told = [sewnWith(plan, work.unit), halvesDiffer(plan, work.unit) ?? []].map((list) => list.join("; ").length);
  const heading = told.reduce((lines, letters) => lines + Math.ceil(letters / LETTERS), 0);
  const blanks = plan.left === plan.right ? 0 : 2;
  const name = 2 * Math.floor(work.name.length / NAME_LETTERS);
  return Math.max(FEWEST_ROWS, ROWS[work.paper].length - Math.floor((heading + blanks + name) / LINES_PER_ROW));
}

function Seen({ work, plan }: TrialRecordProps) {
  return (
    <table className="tr-seen">
      <thead>
        <tr>
          <th scope="col" className="tr-where">
            Where
          </th>
          <th scope="col">What is seen (ring it)</th>
          <th scope="col" className="tr-way">
            Pinched or let out
          </th>
          <th scope="col" className="tr-much">
            {HOW_MUCH(work.unit)}
          </th>
          <th scope="col" className="tr-half">
            Which half
          </th>
          <th scope="col" className="tr-into">
            What I changed
          </th>
        </tr>
      </thead>
      <tbody>
        {ROWS[work.paper].slice(0, rowsLeft(work, plan)).map((row) => (
          <tr key={row}>
            <td aria-label={`row ${row}, where, to be written in`} />
            <td className="tr-words">
              {SEEN.map((word) => (
                <span key={word}>{word}</span>
              ))}
            </td>
            <td className="tr-words">
              {PINNED.map((word) => (
                <span key={word}>{word}</span>
              ))}
            </td>
            <td aria-label="to be written in" />
            <td className="tr-words">
              <span>left</span>
              <span>right</span>
              <span>both</span>
            </td>
            <td aria-label="to be written in" />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Balance({ work, plan }: TrialRecordProps) {
  return (
    <section className="tr-balance">
      {balanceGroups(work, plan).map(({ title, checks }) => (
        <div key={title}>
          <h4>{title}</h4>
          <ul>
            {checks.map(({ text, write }) => (
              <li key={text} className={write !== undefined && write.of.length > 1 ? "tr-wide" : undefined}>
                <i aria-hidden="true" />
                <span>{text}</span>
                {write?.of.map((half) => (
                  <Fragment key={half}>
                    <span>{half}</span> <u aria-hidden="true" /> <span>{write.unit}</span>
                  </Fragment>
                ))}
              </li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}
