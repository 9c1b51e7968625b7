import type { Half } from "../core/decisions/alteration";
import { isSamePiece } from "../core/pattern/pieceSet";
import { alterationSketch, type AlterationSketch } from "../drawing/alterationSketch";
import { bustCuts, type BustCuts } from "../drawing/bustCuts";
import type { Plan, PlanHalf } from "../core/plan/plan";
import type { Piece, PieceName } from "../core/pattern/piece";
import { isBasque } from "../core/pattern/pieceGroups";
import { movedWords } from "../words/bustCuts";
import { halfWords } from "../words/fits";
import { capital } from "../words/terms/names";
import type { LengthUnit } from "../core/decisions/work";
import { checklistByPiece, groupTitle, phaseWords, type ChecklistLine, type PieceChecklist } from "../words/checklist";
import type { Mm } from "../core/units";
import { AlterationSketchDrawing } from "./AlterationSketchDrawing";
import { BustCutsDrawing } from "./BustCutsDrawing";
import { PieceDiagram } from "./PieceDiagram";
import { Words } from "./Words";
import * as say from "../words/printedChecklist";

interface JobProps {
  readonly line: ChecklistLine;
  readonly phase: string | null;
  readonly sketch: AlterationSketch | null;
}

function What({ line, phase, sketch }: JobProps) {
  return (
    <>
      <i className="pc-tick" aria-hidden="true" />
      {sketch !== null && <AlterationSketchDrawing sketch={sketch} amount={line.amount} />}
      {phase !== null && <span className="pc-phase">{phase}</span>}
      <p>
        <Words>{line.text}</Words>
      </p>
      {line.moves.length > 0 && (
        <ol>
          {line.moves.map((move) => (
            <li key={move}>
              <Words>{move}</Words>
            </li>
          ))}
        </ol>
      )}
    </>
  );
}

/** The alteration that a line is the work of, as it is made on a piece of either half. */
function sketchOf(
  { alteration }: ChecklistLine,
  piece: PieceName | null,
  { left, right }: Plan,
): AlterationSketch | null {
  if (alteration === undefined || piece === null) return null;
  const planned = [...left.alterations, ...right.alterations].find(({ id }) => id === alteration);
  return planned?.outcome.ok === true ? alterationSketch(planned.outcome.value, piece) : null;
}

const jobClass = (phase: string | null): string => (phase === null ? "pc-job" : "pc-job pc-phase-start");

const Amount = ({ line }: { readonly line: ChecklistLine }) =>
  line.amount === null ? null : <Words>{line.amount}</Words>;

/** A phase is named above its first job only. */
const phaseShown = (lines: readonly ChecklistLine[], index: number): string | null => {
  const line = lines[index];
  return line === undefined || lines[index - 1]?.phase === line.phase ? null : phaseWords(line.phase);
};

/** mm on paper for the drawings beside a list over the whole page, and beside one of half its width. */
const COLUMN: Mm = 54;
const NARROW: Mm = 38;

interface PieceProps {
  readonly list: PieceChecklist;
  readonly plan: Plan;
  readonly unit: LengthUnit;
}

/** Whether the two halves of a piece come out different. */
function comesOutTwice(piece: PieceName, { left, right }: Plan): boolean {
  const named = ({ pieces }: PlanHalf): Piece | undefined => pieces.find(({ name }) => name === piece);
  return left !== right && named(right) !== undefined && !isSamePiece(named(left), named(right));
}

interface DiagramsProps {
  readonly piece: PieceName;
  readonly plan: Plan;
  readonly unit: LengthUnit;
}

const cutsOf = (piece: PieceName, half: PlanHalf): BustCuts | undefined =>
  bustCuts(half).find((one) => one.piece === piece);

/** The cuts of a bust alteration: once, or of each half where they do not move alike. */
function cutsOnHalves(
  piece: PieceName,
  { left, right }: Plan,
  unit: LengthUnit,
): readonly { readonly cuts: BustCuts; readonly half?: Half }[] {
  const [ofLeft, ofRight] = [cutsOf(piece, left), cutsOf(piece, right)];
  const said = (cuts: BustCuts | undefined): string => (cuts === undefined ? "" : movedWords(cuts, unit));
  if (said(ofLeft) === said(ofRight)) return ofLeft === undefined ? [] : [{ cuts: ofLeft }];
  return [
    ...(ofLeft === undefined ? [] : [{ cuts: ofLeft, half: "left" as const }]),
    ...(ofRight === undefined ? [] : [{ cuts: ofRight, half: "right" as const }]),
  ];
}

/** The piece once, or both its halves; and the cuts of a bust alteration made on it. */
function Diagrams({ piece, plan, unit }: DiagramsProps) {
  const cuts = cutsOnHalves(piece, plan, unit);
  return (
    <div className="pc-drawings">
      {comesOutTwice(piece, plan) ? (
        (["left", "right"] as const).map((half) => (
          <PieceDiagram
            key={half}
            piece={piece}
            plan={plan[half]}
            unit={unit}
            width={COLUMN}
            caption={capital(halfWords(half))}
          />
        ))
      ) : (
        <PieceDiagram piece={piece} plan={plan.left} unit={unit} width={COLUMN} />
      )}
      {cuts.map((one) => (
        <BustCutsDrawing key={one.half ?? "both"} cuts={one.cuts} unit={unit} half={one.half} />
      ))}
    </div>
  );
}

/** A list over the whole width of the page. */
function PieceWork({ list, plan, unit }: PieceProps) {
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
              {say.amount}
            </th>
          </tr>
        </thead>
        <tbody>
          {list.lines.map((line, index) => (
            <tr key={`${line.phase} ${line.text}`} className={jobClass(phaseShown(list.lines, index))}>
              <td className="pc-what">
                <What line={line} phase={phaseShown(list.lines, index)} sketch={sketchOf(line, list.piece, plan)} />
              </td>
              <td className="pc-amount">
                <Amount line={line} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** A short list, as wide as half the page; what does not fit beside the drawing runs on under it. */
function ShortWork({ list, plan, unit }: PieceProps) {
  return (
    <section className="pc-short">
      <h5>{groupTitle(list)}</h5>
      {list.piece !== null && <PieceDiagram piece={list.piece} plan={plan.left} unit={unit} width={NARROW} />}
      <ul>
        {list.lines.map((line, index) => (
          <li key={`${line.phase} ${line.text}`} className={jobClass(phaseShown(list.lines, index))}>
            <b className="pc-amount">
              <Amount line={line} />
            </b>
            <div className="pc-what">
              <What line={line} phase={phaseShown(list.lines, index)} sketch={sketchOf(line, list.piece, plan)} />
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Letters: a list no longer than this stands well in half the page's width. */
const SHORT = 900;

const isShort = ({ piece, lines }: PieceChecklist, plan: Plan): boolean =>
  piece !== null &&
  !comesOutTwice(piece, plan) &&
  cutsOf(piece, plan.left) === undefined &&
  cutsOf(piece, plan.right) === undefined &&
  lines.reduce((sum, { text, moves }) => sum + text.length + moves.join("").length, 0) <= SHORT;

/** Bodice beside bodice, basque beside basque. */
const areAlike = (a: PieceChecklist, b: PieceChecklist): boolean =>
  a.piece !== null && b.piece !== null && isBasque(a.piece) === isBasque(b.piece);

/** In order, two neighbours that are both short side by side. */
function inPairs(lists: readonly PieceChecklist[], plan: Plan): readonly (readonly PieceChecklist[])[] {
  const rows: PieceChecklist[][] = [];
  for (const list of lists) {
    const last = rows.at(-1);
    const [first] = last ?? [];
    if (
      last?.length === 1 &&
      first !== undefined &&
      areAlike(first, list) &&
      isShort(first, plan) &&
      isShort(list, plan)
    )
      last.push(list);
    else rows.push([list]);
  }
  return rows;
}

export function OrderOfWork({ plan, unit }: { readonly plan: Plan; readonly unit: LengthUnit }) {
  const rows = inPairs(
    checklistByPiece(plan, unit).filter(({ piece }) => piece !== null),
    plan,
  );
  return (
    <section className="pc-order">
      <h4>{say.orderOfWork}</h4>
      <p className="pc-hint">{say.whichLineIsDrawn}</p>
      {rows.map((lists) =>
        lists.length === 1 ? (
          lists.map((list) => <PieceWork key={list.piece} list={list} plan={plan} unit={unit} />)
        ) : (
          <div key={lists[0]?.piece} className="pc-pair">
            {lists.map((list) => (
              <ShortWork key={list.piece} list={list} plan={plan} unit={unit} />
            ))}
          </div>
        ),
      )}
    </section>
  );
}
