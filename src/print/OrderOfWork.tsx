import type { Plan } from "../core/plan/plan";
import type { Piece, PieceName } from "../core/pattern/piece";
import { halfShown } from "../core/plan/halves";
import { halfWords } from "../words/fits";
import { capital } from "../words/names";
import type { LengthUnit } from "../core/plan/work";
import { checklistByPiece, groupTitle, phaseWords, type ChecklistLine, type PieceChecklist } from "../words/checklist";
import { PieceDiagram } from "./PieceDiagram";
import { Words } from "./Words";

function Job({ line, phase }: { readonly line: ChecklistLine; readonly phase: string | null }) {
  return (
    <tr className={phase === null ? "pc-job" : "pc-job pc-phase-start"}>
      <td className="pc-what">
        <i className="pc-tick" aria-hidden="true" />
        {phase !== null && <span className="pc-phase">{phase}</span>}
        <p><Words>{line.text}</Words></p>
        {line.moves.length > 0 && (
          <ol>
            {line.moves.map((move) => (
              <li key={move}><Words>{move}</Words></li>
            ))}
          </ol>
        )}
      </td>
      <td className="pc-amount">{line.amount === null ? null : <Words>{line.amount}</Words>}</td>
    </tr>
  );
}

/** A phase is named above its first job only. */
const phaseShown = (lines: readonly ChecklistLine[], index: number): string | null => {
  const line = lines[index];
  return line === undefined || lines[index - 1]?.phase === line.phase ? null : phaseWords(line.phase);
};

interface DiagramsProps {
  readonly piece: PieceName;
  readonly plan: Plan;
  readonly unit: LengthUnit;
}

/** The piece once; or both its halves, where left and right come out different. */
function Diagrams({ piece, plan, unit }: DiagramsProps) {
  const named = (pieces: readonly Piece[] | undefined): Piece | undefined => pieces?.find(({ name }) => name === piece);
  const right = named(plan.right?.pieces);
  const isEven = right === undefined || JSON.stringify(right) === JSON.stringify(named(plan.pieces));
  if (isEven) return <PieceDiagram piece={piece} plan={plan} unit={unit} />;
  return (
    <div className="pc-halves">
      {(["left", "right"] as const).map((half) => (
        <PieceDiagram key={half} piece={piece} plan={halfShown(plan, half)} unit={unit} caption={capital(halfWords(half))} />
      ))}
    </div>
  );
}

function PieceWork({ list, plan, unit }: { readonly list: PieceChecklist; readonly plan: Plan; readonly unit: LengthUnit }) {
  const title = groupTitle(list);
  return (
    <section className="pc-piece">
      <h5 className="pc-unseen">{title}</h5>
      {list.piece !== null && <Diagrams piece={list.piece} plan={plan} unit={unit} />}
      {/* A table, so that its head comes again on a page that the jobs run over to. */}
      <table>
        <thead>
          <tr>
            <th scope="col">{title}</th>
            <th scope="col" className="pc-amount-head">
              {list.piece === null ? "Ease" : "Amount"}
            </th>
          </tr>
        </thead>
        <tbody>
          {list.lines.map((line, index) => (
            <Job key={`${line.phase} ${line.text}`} line={line} phase={phaseShown(list.lines, index)} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

export function OrderOfWork({ plan, unit }: { readonly plan: Plan; readonly unit: LengthUnit }) {
  return (
    <section className="pc-order">
      <h4>Order of work</h4>
      <p className="pc-hint">All lines are stitch lines. If your tissue prints cutting lines, the side seam amounts are the same from one cutting line to the next, but draw the stitch line in before you place darts, walk seams or measure. In the drawings the heavy line is yours, the dashed one is the size traced, the dotted ones are its neighbours; they are not to scale for cutting.</p>
      {checklistByPiece(plan, unit).map((list) => (
        <PieceWork key={list.piece ?? "together"} list={list} plan={plan} unit={unit} />
      ))}
    </section>
  );
}
