/** The piece in small beside its jobs, to see where each amount belongs. Never a drawing to cut from. */
import { cutLineWords, pieceDiagram, type PieceMarks } from "../drawing/index";
import { liesAlongBust } from "../core/pattern/dartNames";
import type { PieceName } from "../core/pattern/piece";
import type { CutLine, Plan, PlannedDart } from "../core/plan/plan";
import type { LengthUnit } from "../core/plan/work";
import type { Mm } from "../core/units";
import { shareWords } from "../words/blend";
import { formatAmount } from "../words/length";
import { capital, centreWords, pieceWords } from "../words/names";
import { Words } from "./Words";

interface Label {
  readonly text: string;
  readonly x: Mm;
  readonly y: Mm;
  readonly anchor: "start" | "middle";
  readonly to: { readonly x: Mm; readonly y: Mm } | null;
}

/** Piece millimetres. Room about the piece for what is written there, and the height of the writing. */
const ROOM = { left: 12, right: 186, above: 26, below: 34 };
const TEXT: Mm = 21;

function cutLabel(line: CutLine, right: Mm, unit: LengthUnit): Label {
  const where = shareWords(line.between, line.share);
  const [, amount] = cutLineWords(line, unit);
  const x = line.at.x + line.slipMove;
  return { text: where.startsWith("on the") ? where : amount, x: right + 24, y: line.at.y, anchor: "start", to: { x, y: line.at.y } };
}

/** The width of a dart, outside its mouth. */
function dartLabel({ ref, drawn }: PlannedDart, right: Mm, unit: LengthUnit): Label {
  const text = formatAmount(drawn.intake, unit);
  const middle = { x: (drawn.inner.x + drawn.outer.x) / 2, y: (drawn.inner.y + drawn.outer.y) / 2 };
  if (liesAlongBust(ref.dart)) return { text, x: right + 24, y: middle.y, anchor: "start", to: middle };
  const opensDown = drawn.apex.y < middle.y;
  return { text, x: middle.x, y: middle.y + (opensDown ? 1.4 : -0.7) * TEXT, anchor: "middle", to: null };
}

const outlines = (marks: PieceMarks): string => marks.outline + marks.darts.map((dart) => dart.legs).join("");

/** mm of piece that the width of the drawing's column stands for; all pieces but the very widest are drawn at one scale. */
const COLUMN: Mm = 470;

interface PieceDiagramProps {
  readonly piece: PieceName;
  readonly plan: Plan;
  readonly unit: LengthUnit;
  /** Said under it, where a piece is drawn twice. */
  readonly caption?: string;
}

export function PieceDiagram({ piece, plan, unit, caption }: PieceDiagramProps) {
  const diagram = pieceDiagram(plan, piece, unit);
  if (diagram === null) return null;
  const { box, drawn, printed, neighbours, bustPoint } = diagram;
  const xs = [drawn, printed].flatMap((marks) => marks.darts.flatMap((dart) => [dart.inner.x, dart.outer.x]));
  const lines = plan.cutLines.filter((line) => line.piece === piece && line.level !== "bust");
  const right = Math.max(diagram.right, ...xs, ...lines.map((line) => line.at.x + line.slipMove));
  const width = right - box.x + ROOM.left + ROOM.right;
  const labels = [
    ...lines.map((line) => cutLabel(line, right, unit)),
    ...plan.darts.filter((dart) => dart.ref.piece === piece).map((dart) => dartLabel(dart, right, unit)),
  ];
  const said = labels.map((label) => label.text).join("; ");
  return (
    <figure className="pc-diagram">
      <svg
        viewBox={[box.x - ROOM.left, box.y - ROOM.above, width, box.height + ROOM.above + ROOM.below].join(" ")}
        style={{ width: `${Math.min(100, (100 * width) / COLUMN)}%` }}
        role="img"
        aria-label={`The ${pieceWords(piece)} in small, with its amounts: ${said}`}
      >
        {neighbours.map((marks, index) => (
          <path key={index} className="pc-neighbour-line" d={outlines(marks)} />
        ))}
        <path className="pc-printed-line" d={outlines(printed)} />
        <path className="pc-new-line" d={drawn.stitch + drawn.darts.map((dart) => dart.legs).join("")} />
        <path className="pc-fold-line" d={drawn.darts.map((dart) => dart.fold).join("")} />
        <path className="pc-level-line" d={drawn.levels.join("")} />
        {bustPoint !== null && <path className="pc-bust-point" d={cross(bustPoint)} />}
        {drawn.centre !== "" && <text className="pc-centre" transform={`translate(${box.x + 36} ${box.y + box.height * 0.62}) rotate(-90)`} textAnchor="middle">
          {centreWords(piece)}
          {drawn.centreOnFold ? ", fold" : ""}
        </text>}
        <text className="pc-piece-name" x={drawn.title.x} y={drawn.title.y}>
          {capital(pieceWords(piece))}
        </text>
        {labels.map((label) => (
          <g key={`${label.text} ${label.y}`}>
            {label.to !== null && <path className="pc-leader" d={`M${label.to.x} ${label.to.y}L${label.x - 3} ${label.y}`} />}
            <text x={label.x} y={label.y + TEXT * 0.34} textAnchor={label.anchor}>
              <Words inDrawing>{label.text}</Words>
            </text>
          </g>
        ))}
      </svg>
      {caption !== undefined && <figcaption>{caption}</figcaption>}
    </figure>
  );
}

const cross = ({ x, y }: { readonly x: Mm; readonly y: Mm }): string => `M${x - 7} ${y}h14M${x} ${y - 7}v14`;
