/** The cuts of a bust alteration in small: where they run, and how the parts lie when moved. Never a drawing to cut from. */
import { useId } from "react";
import type { BustCuts } from "../drawing/bustCuts";
import type { Half } from "../core/decisions/alteration";
import type { LengthUnit } from "../core/decisions/work";
import { halfWords } from "../words/fits";
import { capital, pieceWords } from "../words/terms/names";
import { movedWords, WHERE_TO_CUT, WHERE_TO_FOLD } from "../words/bustCuts";
import { Words } from "./Words";
import * as say from "../words/printedChecklist";

/** Piece mm: white all round, a hinge's ring, the distance of the lines that stand for paper let in. */
const AROUND = 8;
const RING = 7;
const HATCH = 9;

interface BustCutsDrawingProps {
  readonly cuts: BustCuts;
  readonly unit: LengthUnit;
  /** Where the halves do not move alike. */
  readonly half?: Half | undefined;
}

export function BustCutsDrawing({ cuts, unit, half }: BustCutsDrawingProps) {
  const id = useId();
  const { box, opens } = cuts;
  const viewBox = [box.x - AROUND, box.y - AROUND, box.width + 2 * AROUND, box.height + 2 * AROUND].join(" ");
  const moved = `${half === undefined ? "" : `${capital(halfWords(half))}: `}${movedWords(cuts, unit)}`;
  const where = cuts.hinges.length === 0 && !opens ? WHERE_TO_FOLD : WHERE_TO_CUT;
  return (
    <figure className="pc-cuts" aria-label={say.bustCutsOf(pieceWords(cuts.piece), moved)}>
      <div>
        <svg viewBox={viewBox} aria-hidden="true">
          <path className="pc-cut-outline" d={cuts.before} />
          {cuts.legs.map((d) => (
            <path key={d} className="pc-cut-legs" d={d} />
          ))}
          {cuts.cuts.map((d) => (
            <path key={d} className="pc-cut-line" d={d} />
          ))}
          {cuts.hinges.map(({ x, y }) => (
            <circle key={`${x} ${y}`} className="pc-hinge" cx={x} cy={y} r={RING} />
          ))}
        </svg>
        <figcaption>{where}</figcaption>
      </div>
      <div>
        <svg viewBox={viewBox} aria-hidden="true">
          <defs>
            <pattern id={id} width={HATCH} height={HATCH} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
              <path className="pc-hatch" d={`M0 0V${HATCH}`} />
            </pattern>
          </defs>
          {opens && <path className="pc-let-in" d={cuts.after} style={{ fill: `url(#${id})` }} />}
          {cuts.parts.map(({ outline, transform }) => (
            <path key={outline} className="pc-cut-part" d={outline} transform={transform} />
          ))}
          {!opens &&
            cuts.parts.map(({ outline, transform }) => (
              <path key={outline} className="pc-cut-under" d={outline} transform={transform} />
            ))}
        </svg>
        <figcaption>
          <Words>{moved}</Words>
        </figcaption>
      </div>
    </figure>
  );
}
