/** The sheet beside the mirror: a toile is fitted, and what is seen, pinned and decided is written on it by hand. */
import "./print.css";
import "./trialRecord.css";
import { trialFigure, type TrialHalf, type TrialView } from "../drawing/trialFigure";
import type { Plan } from "../core/plan/plan";
import type { Work } from "../core/decisions/work";
import { TOILE_LENGTHS, TRIAL_SIGNS, TRIAL_WAYS } from "../core/decisions/trial";
import { toileLengths } from "../core/toile/toileLengths";
import { DISC, numbersOn, type ToileNumber } from "../drawing/toileFigure";
import { bustOfHalves, cupsWords, shareWords } from "../words/blend";
import { capital, levelWords } from "../words/terms/names";
import {
  AS_SEWN,
  BUST_POINTS,
  BUST_POINTS_NOTE,
  CANNOT_SAY,
  CHECK_GROUPS,
  checkWords,
  fittingCautions,
  halvesDiffer,
  HOW_MUCH_NOTE,
  MARK_FIELDS,
  MARKS,
  MIRROR_NOTE,
  RECORD_HEADING,
  RECORD_LINE,
  sewnWith,
  shortUnit,
  plannedWords,
  toileLengthWords,
  viewCaption,
  WHICH_DART,
  wayWords,
  yourHalf,
} from "../words/trial";
import { signWords } from "../words/trialPlaces";
import { Blank } from "./Blank";
import { PageSetup } from "./PageSetup";
import { Words } from "./Words";
import { WorkName } from "./WorkName";
import * as say from "../words/printedTrial";
import { INVENTED_SHEET } from "../words/invented";

interface TrialRecordProps {
  readonly work: Work;
  readonly plan: Plan;
}

export function TrialRecord({ work, plan }: TrialRecordProps) {
  const { rows, drawing } = roomLeft({ work, plan });
  return (
    <article className="printed-checklist trial-record" aria-label={say.trialRecord} data-paper={work.paper}>
      <PageSetup paper={work.paper} name={work.name} kind={say.trialRecord} />
      <Heading work={work} plan={plan} />
      <Before work={work} plan={plan} />
      <section className="tr-figures" aria-label={say.theToileOnTheBody}>
        {trialFigure(plan).map((view) => (
          <Figure key={view.side} view={view} numbers={numbersOn(plan, work.pattern.closure, view)} height={drawing} />
        ))}
        <p>
          {MIRROR_NOTE} {MARKS}
        </p>
      </section>
      <Seen work={work} rows={rows} />
      <section className="tr-order">
        <p>
          <b>{HOW_MUCH_NOTE}</b> {WHICH_DART}
        </p>
        {fittingCautions(work, plan).map(({ code, title, text }) => (
          <p key={code}>
            <b>{title}.</b> {text}
          </p>
        ))}
      </section>
      <section className="tr-verdict" aria-label={say.verdict}>
        <p>
          <b>{say.verdict}</b>
        </p>
        <Tick>{say.keep}</Tick>
        <Tick>{say.tryAgain}</Tick>
        <Blank label={say.because} />
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

/** By what the toile was cut, one paragraph each. */
function madeOf({ work, plan }: TrialRecordProps) {
  const { baseSize } = plan.sizing;
  const cup = cupsWords(plan);
  const levels = plan.levels
    .filter(({ level }) => level !== "bust")
    .map(({ level, between, share }) => `${levelWords(level)} ${shareWords(between, share)}`);
  const sizes = [`Frame ${baseSize.label}`, ...(cup === null ? [] : [`cup ${cup}`]), ...levels].join("; ");
  const sewn = sewnWith(plan, work.unit);
  return {
    sizes: `${work.pattern.name}. ${sizes}. ${bustOfHalves(plan, work.unit)}`,
    sewn: sewn.length === 0 ? null : `${sewn.join("; ")}.`,
    differ: halvesDiffer(plan, work.unit)?.join(" ") ?? null,
  };
}

function Heading({ work, plan }: TrialRecordProps) {
  const { sizes, sewn, differ } = madeOf({ work, plan });
  return (
    <header className="pc-heading">
      <div className="pc-names">
        <p className="pc-kind">{say.trialRecord}</p>
        <WorkName work={work} />
        {work.invented && <p className="pc-invented">{INVENTED_SHEET}</p>}
      </div>
      <div className="pc-by-hand">
        <div>
          <Blank label={RECORD_HEADING.day} />
          <Blank label={say.trialNo} />
        </div>
        <div className="tr-pair">
          <Blank label={RECORD_HEADING.cloth} />
          <Blank label={RECORD_HEADING.pinnedBy} />
        </div>
        <div className="tr-pair">
          <Blank label={RECORD_HEADING.bra} />
          <Blank label={RECORD_HEADING.shoes} />
        </div>
      </div>
      <div className="tr-made">
        <p>
          <Words>{sizes}</Words>
        </p>
        {sewn !== null && (
          <p>
            <b>{say.sewnWith}</b> <Words>{sewn}</Words>
          </p>
        )}
        {differ === null ? (
          <p>{say.halvesAlike}</p>
        ) : (
          <p>
            <b>{say.theHalvesDiffer}</b> <Words>{differ}</Words>
          </p>
        )}
      </div>
    </header>
  );
}

/** White round the drawing, mm of the pieces. */
const ROOM = 10;

interface FigureProps {
  readonly view: TrialView;
  readonly numbers: readonly ToileNumber[];
  /** On the page, mm. */
  readonly height: number;
}

function Figure({ view, numbers, height }: FigureProps) {
  const { side, box, halves } = view;
  const caption = viewCaption(side);
  return (
    <figure>
      <svg
        height={`${height.toFixed(1)}mm`}
        viewBox={[box.x - ROOM, box.y - ROOM, box.width + 2 * ROOM, box.height + 2 * ROOM].join(" ")}
        role="img"
        aria-label={say.toDrawOn(caption)}
      >
        {halves.map((half) => (
          <HalfDrawn key={half.half} half={half} />
        ))}
        {numbers.map(({ number, half, at, of }) => (
          <g key={`${number} ${half ?? ""} ${of.x} ${of.y}`} className="tr-number">
            <path d={`M${of.x} ${of.y}L${at.x} ${at.y}`} />
            <circle cx={at.x} cy={at.y} r={DISC} />
            <text x={at.x} y={at.y} textAnchor="middle" dominantBaseline="central">
              {number}
            </text>
          </g>
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

/** What the page holds where little is told above: rows to write in, and the height of the drawings, mm. */
const HOLDS: Readonly<Record<Work["paper"], { readonly rows: number; readonly drawing: number }>> = {
  A4: { rows: 5, drawing: 70 },
  Letter: { rows: 4, drawing: 64 },
};
const FEWEST_ROWS = 3;
const LEAST_DRAWING = 50;
/** Letters on a line of the heading, how many such lines have their room, and the height of another one, mm. */
const LETTERS = 118;
const LINES = 3;
const LINE = 3.9;
/** The same of the name of the work, which is set larger; some of it has room beside what is filled in by hand. */
const NAME_LETTERS = 38;
const NAME_LINE = 6.2;
const NAME_ROOM = 4;
const ROW = 13.4;

const linesOf = (text: string, letters: number): number => Math.ceil(text.length / letters);

/** Smaller drawings where more is told above them, then fewer rows: all of it stays on one page. */
function roomLeft({ work, plan }: TrialRecordProps): { readonly rows: number; readonly drawing: number } {
  const { rows, drawing } = HOLDS[work.paper];
  const { sizes, sewn, differ } = madeOf({ work, plan });
  const told = linesOf(sizes, LETTERS) + linesOf(sewn ?? "", LETTERS) + Math.max(1, linesOf(differ ?? "", LETTERS));
  const name = Math.max(0, (linesOf(work.name, NAME_LETTERS) - 1) * NAME_LINE - NAME_ROOM);
  const over = Math.max(0, told - LINES) * LINE + name;
  const smaller = Math.min(over, drawing - LEAST_DRAWING);
  return {
    rows: Math.max(FEWEST_ROWS, rows - Math.ceil((over - smaller) / ROW)),
    drawing: drawing - smaller,
  };
}

/** To be ringed. */
const Ring = ({ words }: { readonly words: readonly string[] }) => words.map((word) => <span key={word}>{word}</span>);

function Seen({ work, rows }: { readonly work: Work; readonly rows: number }) {
  return (
    <table className="tr-seen">
      <thead>
        <tr>
          <th scope="col" className="tr-no">
            <span className="visually-hidden">{say.line}</span>
          </th>
          <th scope="col" className="tr-where">
            {RECORD_LINE.place}
          </th>
          <th scope="col">{RECORD_LINE.sign}</th>
          <th scope="col" className="tr-way">
            {RECORD_LINE.way}
          </th>
          <th scope="col" className="tr-much">
            {RECORD_LINE.amount}, {shortUnit(work.unit)}
          </th>
          <th scope="col" className="tr-half">
            {RECORD_LINE.half}
          </th>
          <th scope="col" className="tr-into">
            {RECORD_LINE.changed}
          </th>
        </tr>
      </thead>
      <tbody>
        {Array.from({ length: rows }, (_, index) => index + 1).map((row) => (
          <tr key={row}>
            <th scope="row">{row}</th>
            <td aria-label={say.placeToWriteIn} />
            <td className="tr-words">
              {TRIAL_SIGNS.map((sign) => (
                <span key={sign}>
                  {signWords(sign)}
                  {sign === "dragLines" && (
                    <>
                      {" "}
                      {say.to} <u aria-hidden="true" />
                    </>
                  )}
                </span>
              ))}
            </td>
            <td className="tr-words">
              <Ring words={[...TRIAL_WAYS.map(wayWords), CANNOT_SAY]} />
            </td>
            <td aria-label={say.toBeWrittenIn} />
            <td className="tr-words">
              <Ring words={["both", "left", "right"]} />
            </td>
            <td aria-label={say.toBeWrittenIn} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What is written before anything is read: bust points, the toile as sewn, how it hangs and moves. */
function Before({ work, plan }: TrialRecordProps) {
  const planned = toileLengths(plan);
  const unit = shortUnit(work.unit);
  return (
    <section className="tr-before" aria-label={say.beforeItIsRead}>
      <div className="tr-points">
        <h4>{BUST_POINTS}</h4>
        {(["left", "right"] as const).map((half) => (
          <p key={half}>
            <b>{yourHalf(half)}</b>
            {Object.values(MARK_FIELDS).map((part) => (
              <span key={part} className="tr-blank">
                {part} <u aria-hidden="true" /> {unit}
              </span>
            ))}
          </p>
        ))}
        <p>{BUST_POINTS_NOTE}</p>
      </div>
      <div className="tr-lengths">
        <h4>{AS_SEWN}</h4>
        {TOILE_LENGTHS.flatMap((length) => {
          const should = planned[length];
          return should === undefined
            ? []
            : [
                <p key={length}>
                  <span>{toileLengthWords(length)}</span> <u aria-hidden="true" />{" "}
                  <span>
                    <Words>{plannedWords(should, work.unit)}</Words>
                  </span>
                </p>,
              ];
        })}
      </div>
      <div className="tr-balance">
        {CHECK_GROUPS.map(({ title, checks }) => (
          <div key={title}>
            <h4>{title}</h4>
            <ul>
              {checks.map((check) => (
                <li key={check}>
                  <span>{checkWords(check, work)}</span> <b>{say.yes}</b> <b>{say.no}</b>
                </li>
              ))}
            </ul>
          </div>
        ))}
      </div>
    </section>
  );
}
