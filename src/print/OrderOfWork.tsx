import type { Plan } from "../core/plan/plan";
import type { LengthUnit } from "../core/plan/work";
import { checklistByPiece, groupTitle, phaseWords, type ChecklistLine, type PieceChecklist } from "../words/checklist";
import { PieceDiagram } from "./PieceDiagram";

function Job({ line, phase }: { readonly line: ChecklistLine; readonly phase: string | null }) {
  return (
    <li className="pc-job">
      <span className="pc-phase">{phase}</span>
      <span className="pc-tick" aria-hidden="true" />
      <div className="pc-what">
        <p>{line.text}</p>
        {line.moves.length > 0 && (
          <ol>
            {line.moves.map((move) => (
              <li key={move}>{move}</li>
            ))}
          </ol>
        )}
      </div>
      <b className="pc-amount">{line.amount}</b>
    </li>
  );
}

/** A phase is named beside its first job only. */
const phaseShown = (lines: readonly ChecklistLine[], index: number): string | null => {
  const line = lines[index];
  return line === undefined || lines[index - 1]?.phase === line.phase ? null : phaseWords(line.phase);
};

function PieceWork({ list, plan, unit }: { readonly list: PieceChecklist; readonly plan: Plan; readonly unit: LengthUnit }) {
  const [first, ...others] = list.lines;
  const job = (line: ChecklistLine, index: number) => (
    <Job key={`${line.phase} ${line.text}`} line={line} phase={phaseShown(list.lines, index)} />
  );
  return (
    <section className="pc-piece">
      {/* The heading, the drawing and the first job stay on one page. */}
      <div className="pc-piece-start">
        <h5>{groupTitle(list)}</h5>
        {list.piece !== null && <PieceDiagram piece={list.piece} plan={plan} unit={unit} />}
        <ol className="pc-jobs">{first !== undefined && job(first, 0)}</ol>
      </div>
      {others.length > 0 && (
        <ol className="pc-jobs" start={2}>
          {others.map((line, index) => job(line, index + 1))}
        </ol>
      )}
    </section>
  );
}

export function OrderOfWork({ plan, unit }: { readonly plan: Plan; readonly unit: LengthUnit }) {
  return (
    <section className="pc-order">
      <h4>Order of work</h4>
      {checklistByPiece(plan, unit).map((list) => (
        <PieceWork key={list.piece ?? "together"} list={list} plan={plan} unit={unit} />
      ))}
    </section>
  );
}
