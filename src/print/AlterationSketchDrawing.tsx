/** One alteration in small beside its moves: the cut, the hinge, the part moved, the amount. Never a drawing to cut from. */
import type { AlterationSketch } from "../drawing/alterationSketch";
import type { Mm } from "../core/units";
import { pieceWords } from "../words/terms/names";
import { Words } from "./Words";
import * as say from "../words/printedChecklist";

/** On paper, mm: the most that it may be wide and high, and the height of the writing and of a hinge's ring. */
const WIDEST: Mm = 25;
const TALLEST: Mm = 34;
const TEXT: Mm = 3.2;
const RING: Mm = 0.9;
const AROUND: Mm = 1.5;
/** Room that a letter takes, as a share of its height. */
const LETTER = 0.55;

interface Props {
  readonly sketch: AlterationSketch;
  readonly amount: string | null;
}

export function AlterationSketchDrawing({ sketch, amount }: Props) {
  const { box, at } = sketch;
  const scale = Math.min((WIDEST - 2 * AROUND) / box.width, (TALLEST - 2 * AROUND) / box.height);
  const paper = (mm: Mm): Mm => mm / scale;
  const view = {
    x: box.x - paper(AROUND),
    y: box.y - paper(AROUND),
    width: box.width + paper(2 * AROUND),
    height: box.height + paper(2 * AROUND),
  };
  const room = paper(((amount?.length ?? 0) * LETTER * TEXT) / 2);
  // Kept within the drawing, so that nothing is written over the words beside it.
  const x = at === null ? 0 : Math.min(Math.max(at.x, view.x + room), view.x + view.width - room);
  const y = at === null ? 0 : Math.min(Math.max(at.y, view.y + paper(TEXT)), view.y + view.height - paper(TEXT / 2));
  return (
    <figure className="pc-sketch">
      <svg
        viewBox={[view.x, view.y, view.width, view.height].join(" ")}
        style={{ width: `${scale * view.width}mm`, fontSize: `${paper(TEXT)}px` }}
        role="img"
        aria-label={say.sketchOf(pieceWords(sketch.piece), amount === null ? "" : `: ${amount}`)}
      >
        <path className="pc-sketch-before" d={sketch.before} />
        {sketch.moved.map(({ outline, transform }) => (
          <path key={outline} className="pc-sketch-moved" d={outline} transform={transform} />
        ))}
        <path className="pc-sketch-after" d={sketch.after} />
        {sketch.cuts.map((d) => (
          <path key={d} className="pc-sketch-cut" d={d} />
        ))}
        {sketch.hinges.map((hinge) => (
          <circle key={`${hinge.x} ${hinge.y}`} className="pc-sketch-hinge" cx={hinge.x} cy={hinge.y} r={paper(RING)} />
        ))}
        {amount !== null && at !== null && (
          <text x={x} y={y + paper(TEXT * 0.35)} textAnchor="middle" strokeWidth={paper(0.7)}>
            <Words inDrawing>{amount}</Words>
          </text>
        )}
      </svg>
    </figure>
  );
}
