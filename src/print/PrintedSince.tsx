/** What changed since a version was sewn, as steps on the paper that she has: the preview on screen and the printed sheet are one. */
import "./print.css";
import type { Work } from "../core/decisions/work";
import type { PieceName } from "../core/pattern/piece";
import type { Plan } from "../core/plan/plan";
import { checklistSince } from "../core/versions/checklistSince";
import { pieceLaidOver } from "../drawing/laidOver";
import type { Mm } from "../core/units";
import { groupTitle } from "../words/checklist";
import { halfWords } from "../words/fits";
import { capital } from "../words/terms/names";
import { SINCE_WORDS, sinceHint, sinceSaid, type SincePiece } from "../words/versions";
import { Blank } from "./Blank";
import { Notes } from "./Notes";
import { PageSetup } from "./PageSetup";
import { WorkName } from "./WorkName";
import { Words } from "./Words";
import * as say from "../words/printedChecklist";
import { INVENTED_SHEET } from "../words/invented";

interface PrintedVersion {
  /** "Trial 2, 14 November 2026". */
  readonly title: string;
  readonly plan: Plan;
}

export interface PrintedSinceProps {
  readonly work: Work;
  readonly from: PrintedVersion;
  readonly to: PrintedVersion;
}

export function PrintedSince({ work, from, to }: PrintedSinceProps) {
  const said = sinceSaid(checklistSince(from.plan, to.plan), to.plan, work.unit);
  return (
    <article className="printed-checklist" aria-label={SINCE_WORDS.kind} data-paper={work.paper}>
      <PageSetup paper={work.paper} name={work.name} kind={SINCE_WORDS.kind} />
      <header className="pc-heading">
        <div className="pc-names">
          <p className="pc-kind">{SINCE_WORDS.kind}</p>
          <WorkName work={work} />
          <p className="pc-pattern">{say.pattern(work.pattern.name)}</p>
          <p>
            <b>
              {from.title} → {to.title}
            </b>
          </p>
          {work.invented && <p className="pc-invented">{INVENTED_SHEET}</p>}
        </div>
        <div className="pc-by-hand">
          <Blank label={say.date} />
          <Blank label={say.cloth} />
        </div>
      </header>
      <section className="pc-order">
        <h4>{SINCE_WORDS.order}</h4>
        {said.pieces.length === 0 ? (
          <p>{SINCE_WORDS.nothing}</p>
        ) : (
          <p className="pc-hint">{sinceHint(from.title, to.title)}</p>
        )}
        {[said.stays, said.gone].map((text) => text !== null && <p key={text}>{text}</p>)}
        {said.pieces.map((list) => (
          <PieceSinceWork key={`${list.piece} ${list.anew}`} list={list} from={from.plan} to={to.plan} />
        ))}
        {said.together !== null && <Jobs list={{ ...said.together, anew: null }} />}
      </section>
      <Notes />
    </article>
  );
}

interface PieceProps {
  readonly list: SincePiece;
  readonly from: Plan;
  readonly to: Plan;
}

function PieceSinceWork({ list, from, to }: PieceProps) {
  return (
    <section className="pc-piece">
      <h5 className="pc-unseen">{groupTitle(list)}</h5>
      {list.piece !== null && <Drawings piece={list.piece} from={from} to={to} />}
      <Jobs list={list} />
    </section>
  );
}

function Jobs({ list }: { readonly list: SincePiece }) {
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">{groupTitle(list)}</th>
          <th scope="col" className="pc-amount-head">
            {say.amount}
          </th>
        </tr>
      </thead>
      <tbody>
        {list.anew !== null && (
          <tr>
            <td colSpan={2}>
              <b>{list.anew}</b>
            </td>
          </tr>
        )}
        {list.lines.map(({ text, moves, amount }, index) => (
          <tr key={`${index} ${text}`} className="pc-job">
            <td className="pc-what">
              <i className="pc-tick" aria-hidden="true" />
              <p>
                <Words>{text}</Words>
              </p>
              {moves.length > 0 && (
                <ol>
                  {moves.map((move) => (
                    <li key={move}>
                      <Words>{move}</Words>
                    </li>
                  ))}
                </ol>
              )}
            </td>
            <td className="pc-amount">{amount !== null && <Words>{amount}</Words>}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** mm on paper. */
const WIDE: Mm = 52;
const TALL: Mm = 60;

interface DrawingsProps {
  readonly piece: PieceName;
  readonly from: Plan;
  readonly to: Plan;
}

/** The piece as it was, dashed, and as it is to be, heavy: both halves where they differ. */
function Drawings({ piece, from, to }: DrawingsProps) {
  return (
    <div className="pc-drawings">
      {pieceLaidOver(piece, from, to).map(({ half, box, before, after }) => {
        const scale = Math.min(WIDE / box.width, TALL / box.height);
        return (
          <figure key={half ?? "both"} className="pc-diagram">
            <svg
              viewBox={`${box.x} ${box.y} ${box.width} ${box.height}`}
              style={{ width: `${scale * box.width}mm` }}
              role="img"
              aria-label={`${SINCE_WORDS.drawing}${half === null ? "" : `, ${halfWords(half)}`}`}
            >
              <path className="pc-printed-line" d={before} />
              <path className="pc-new-line" d={after} />
            </svg>
            {half !== null && <figcaption>{capital(halfWords(half))}</figcaption>}
          </figure>
        );
      })}
    </div>
  );
}
