/** The piece in small beside its jobs, to see where each amount belongs. Never a drawing to cut from. */
import { cutLineWords, pieceDiagram, type PieceMarks } from "../drawing/index";
import { dartCap } from "../core/dart/dartCap";
import { liesAlongBust } from "../core/pattern/dartNames";
import type { PieceName } from "../core/pattern/piece";
import type { CutLine, PlannedDart, PlanHalf } from "../core/plan/plan";
import type { LengthUnit } from "../core/decisions/work";
import { invariant } from "../core/result";
import { SAME_LINE } from "../core/tolerance";
import type { Mm } from "../core/units";
import { shareWords } from "../words/blend";
import { formatAmount } from "../words/terms/length";
import { centreWords, pieceWords } from "../words/terms/names";
import { Words } from "./Words";
import * as say from "../words/printedChecklist";

/** Written beside the piece, in one line or two, with a line to what it is of. */
interface Beside {
  readonly lines: readonly string[];
  readonly y: Mm;
  readonly to: { readonly x: Mm; readonly y: Mm };
}

/** Written above or below the mouth of a dart. */
interface AtMouth {
  readonly text: string;
  readonly x: Mm;
  readonly y: Mm;
  readonly way: 1 | -1;
}

/** On paper, mm: the height of the writing, and of one line of it; the room that a letter takes; the leader's length. */
const TEXT: Mm = 3.2;
const LINE: Mm = 3.5;
const LETTER: Mm = 1.66;
const LEADER: Mm = 3.2;
/** On paper, mm: white at the left, above and below, and the tallest that a drawing may be. */
const ROOM = { left: 1.5, above: 3.6, below: 4 };
const TALLEST: Mm = 48;
/** Paper millimetres for one of the piece, at the most: about an eighth. */
const LARGEST = 0.128;

/** Any share that lies on neither line: what was moved is told by how far it lies from one. */
const BETWEEN = 0.5;

function cutLabel(line: CutLine, unit: LengthUnit): Beside {
  const where = shareWords(line.between, line.share);
  // Where the line ends up, with what alterations moved it by.
  const isMoved = Math.abs(line.alterationMove) > SAME_LINE;
  const [, amount] = cutLineWords(
    { between: line.between, share: isMoved ? BETWEEN : line.share, offset: line.offset + line.alterationMove },
    unit,
  );
  const text = where.startsWith(say.onThe) && !isMoved ? where : amount;
  return {
    lines: text.split(/ (?=(?:outside|inside) |\S+ line$)/),
    y: line.at.y,
    to: { x: line.at.x + line.alterationMove, y: line.at.y },
  };
}

const middleOf = ({ drawn }: PlannedDart) => ({
  x: (drawn.inner.x + drawn.outer.x) / 2,
  y: (drawn.inner.y + drawn.outer.y) / 2,
});

/** What stands beside the piece, from above, pushed down where it would stand on what is above it; `line` is one line's height. */
export function spreadOut<T extends { readonly y: Mm; readonly lines: readonly string[] }>(
  labels: readonly T[],
  line: Mm,
): readonly T[] {
  let end = -Infinity;
  return labels
    .toSorted((a, b) => a.y - b.y)
    .map((label) => {
      const half = (label.lines.length * line) / 2;
      const y = Math.max(label.y, end + half);
      end = y + half;
      return { ...label, y };
    });
}

/** Rows for what stands at the mouths of one side, so that neighbours do not run into each other. */
function inRows(labels: readonly AtMouth[], letter: Mm): readonly (AtMouth & { readonly row: number })[] {
  const ends: number[] = [];
  return labels
    .toSorted((a, b) => a.x - b.x)
    .map((label) => {
      const half = ((label.text.length + 1) * letter) / 2;
      const free = ends.findIndex((end) => label.x - half >= end);
      const row = free === -1 ? ends.length : free;
      ends[row] = label.x + half;
      return { ...label, row };
    });
}

const outlines = (marks: PieceMarks): string => marks.outline + marks.darts.map((dart) => dart.legs).join("");

/** Heights that the centre edge of a piece runs between. */
function centreSpan(plan: PlanHalf, name: PieceName): { readonly from: Mm; readonly to: Mm } {
  const piece = plan.pieces.find((one) => one.name === name);
  const edges = piece?.edges.filter(({ seam }) => seam === "centre") ?? [];
  const ys = edges.flatMap(({ from, to }) =>
    [piece?.points[from], piece?.points[to]].flatMap((point) => (point === undefined ? [] : [point.at.y])),
  );
  return ys.length === 0 ? { from: 0, to: 0 } : { from: Math.min(...ys), to: Math.max(...ys) };
}

/** The longest words for the centre line that fit along it. */
function alongCentre(piece: PieceName, onFold: boolean, room: Mm, letter: Mm): string {
  const fold = onFold ? ", fold" : "";
  const words = [`${centreWords(piece)}${fold}`, `centre${fold}`, onFold ? "fold" : "centre"];
  return words.find((text) => (text.length + 1) * letter <= room) ?? "";
}

interface PieceDiagramProps {
  readonly piece: PieceName;
  readonly plan: PlanHalf;
  readonly unit: LengthUnit;
  /** mm on paper that it may be wide. */
  readonly width: Mm;
  /** Said under it, where a piece is drawn twice. */
  readonly caption?: string;
}

export function PieceDiagram({ piece, plan, unit, width, caption }: PieceDiagramProps) {
  const diagram = pieceDiagram(plan, piece, unit);
  if (diagram === null) return null;
  const { box, drawn, printed, neighbours, bustPoint } = diagram;
  const xs = [drawn, printed].flatMap((marks) => marks.darts.flatMap((dart) => [dart.inner.x, dart.outer.x]));
  const lines = plan.cutLines.filter((line) => line.piece === piece && line.level !== "bust");
  const right = Math.max(diagram.right, ...xs, ...lines.map((line) => line.at.x + line.alterationMove));
  const darts = plan.darts.filter(({ ref }) => ref.piece === piece);
  const beside: readonly Beside[] = [
    ...lines.map((line) => cutLabel(line, unit)),
    ...darts
      .filter(({ ref }) => liesAlongBust(ref.dart))
      .map((dart) => ({ lines: [formatAmount(dart.drawn.intake, unit)], y: middleOf(dart).y, to: middleOf(dart) })),
  ];
  const atMouths = darts
    .filter(({ ref }) => !liesAlongBust(ref.dart))
    .map((dart): AtMouth => {
      const middle = middleOf(dart);
      const sewn = invariant(
        plan.fitted.find(({ name }) => name === piece),
        "piece of the dart",
      );
      const ys = [middle.y, ...dartCap(sewn, dart.ref.dart).map(({ y }) => y)];
      const opensDown = dart.drawn.apex.y < middle.y;
      return {
        text: formatAmount(dart.drawn.intake, unit),
        x: middle.x,
        y: opensDown ? Math.max(...ys) : Math.min(...ys),
        way: opensDown ? 1 : -1,
      };
    });
  const longest = Math.max(0, ...beside.flatMap((label) => label.lines.map((text) => text.length)));
  const writing = longest === 0 ? ROOM.left : LEADER + longest * LETTER;
  const scale = Math.min(LARGEST, (width - ROOM.left - writing) / (right - box.x), TALLEST / box.height);
  const paper = (mm: Mm): Mm => mm / scale;
  const column = right + paper(LEADER);
  const placed = spreadOut(beside, paper(LINE));
  const rows = ([1, -1] as const).flatMap((way) =>
    inRows(
      atMouths.filter((label) => label.way === way),
      paper(LETTER),
    ),
  );
  const depth = (way: 1 | -1): Mm =>
    paper(LINE) * Math.max(0, ...rows.filter((label) => label.way === way).map(({ row }) => row));
  const lowest = Math.max(box.y + box.height + depth(1), ...placed.map(({ y }) => y));
  const top = box.y - paper(ROOM.above) - depth(-1);
  const view = {
    x: box.x - paper(ROOM.left),
    width: right - box.x + paper(ROOM.left + writing),
    height: lowest + paper(ROOM.below) - top,
  };
  const along = centreSpan(plan, piece);
  const centre = alongCentre(piece, drawn.centreOnFold && caption === undefined, along.to - along.from, paper(LETTER));
  const said = [...placed.map((label) => label.lines.join(" ")), ...rows.map(({ text }) => text)].join("; ");
  return (
    <figure className="pc-diagram">
      <svg
        viewBox={[view.x, top, view.width, view.height].join(" ")}
        style={{ width: `${scale * view.width}mm`, fontSize: `${paper(TEXT)}px` }}
        role="img"
        aria-label={say.diagramOf(pieceWords(piece), said)}
      >
        {neighbours.map((marks, index) => (
          <path key={index} className="pc-neighbour-line" d={outlines(marks)} />
        ))}
        <path className="pc-printed-line" d={outlines(printed)} />
        <path className="pc-new-line" d={drawn.stitch + drawn.darts.map((dart) => dart.legs).join("")} />
        <path className="pc-fold-line" d={drawn.darts.map((dart) => dart.fold).join("")} />
        <path className="pc-level-line" d={drawn.levels.join("")} />
        {bustPoint !== null && <path className="pc-bust-point" d={cross(bustPoint)} />}
        {drawn.centre !== "" && (
          <text
            className="pc-centre"
            transform={`translate(${paper(TEXT * 1.2)} ${(along.from + along.to) / 2}) rotate(-90)`}
            textAnchor="middle"
            strokeWidth={paper(0.7)}
          >
            {centre}
          </text>
        )}
        {placed.map((label) => (
          <g key={`${label.lines.join(" ")} ${label.y}`}>
            <path className="pc-leader" d={`M${label.to.x} ${label.to.y}L${column - paper(0.5)} ${label.y}`} />
            {label.lines.map((text, at) => (
              <text
                key={text}
                x={column}
                y={label.y + paper(LINE) * (at + 0.5 - label.lines.length / 2) + paper(TEXT) * 0.34}
                strokeWidth={paper(0.7)}
              >
                <Words inDrawing>{text}</Words>
              </text>
            ))}
          </g>
        ))}
        {rows.map(({ text, x, y, way, row }) => (
          <text
            key={`${text} ${x}`}
            x={x}
            y={y + way * (paper(LINE) * row) + paper(way === 1 ? LINE + 0.6 : -1.2)}
            textAnchor="middle"
            strokeWidth={paper(0.7)}
          >
            <Words inDrawing>{text}</Words>
          </text>
        ))}
      </svg>
      {caption !== undefined && <figcaption>{caption}</figcaption>}
    </figure>
  );
}

const cross = ({ x, y }: { readonly x: Mm; readonly y: Mm }): string => `M${x - 7} ${y}h14M${x} ${y - 7}v14`;
