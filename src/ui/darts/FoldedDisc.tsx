import { memo, useId, useRef, useState } from "react";
import { axisLength } from "../../core/dart/dartFrame";
import { angleOfMouth, foldDisc, type FoldedDisc as Disc } from "../../core/dart/foldedDisc";
import type { PlannedDart } from "../../core/plan/plan";
import type { LengthUnit } from "../../core/decisions/work";
import { SHORTEST_DART } from "../../core/tolerance";
import { radians, type Mm } from "../../core/units";
import { discSentence, formatAngle } from "../../words/terms/darts";
import { formatAmount } from "../../words/terms/length";
import { isSame } from "../../core/same";
import { useInSight } from "../session/useInSight";
import { useDartNow } from "./useDartNow";
import * as say from "../../words/dartsStep";
import { Sentence } from "../fields/Sentence";
import { Fractions } from "../fields/Fractions";

/**
 * Why a wider dart is fuller: a disc of paper with the wearer's own dart cut out of it, and the cone it folds to. The
 * slider tries a shorter dart with the same mouth without touching the plan.
 */
export function FoldedDisc({ dart: settled, unit }: { readonly dart: PlannedDart; readonly unit: LengthUnit }) {
  const place = useRef<HTMLElement>(null);
  const dart = useDartNow(settled, useInSight(place, true));
  const id = useId();
  const [tried, setTried] = useState(0);
  const { drawn } = dart;
  // A dart that the pattern does not have is held against itself.
  const printed = dart.printed ?? drawn;
  const axis = axisLength(drawn);
  const most = Math.max(0, Math.floor(axis - SHORTEST_DART));
  const shorten = Math.min(tried, most);
  const angle = shorten === 0 ? drawn.angle : radians(angleOfMouth(drawn.intake, axis - shorten));
  const leg = shorten === 0 ? drawn.legInner : Math.hypot(axis - shorten, drawn.intake / 2);
  // As in the table: one radius for all, whatever is tried.
  const slant = dart.coneRadius;
  const before = foldDisc(printed.angle, slant, printed.legInner);
  const now = foldDisc(angle, slant, leg);
  // One scale for all four drawings, so that mouths, legs and heights can be compared by eye.
  const room: Room = {
    side: Math.max(slant, before.mouth.x, now.mouth.x) + EDGE,
    depth: Math.max(slant, before.mouth.y, drawn.legInner),
    rise: Math.max(before.height, now.height),
  };
  return (
    <section ref={place} className="folded" aria-labelledby={`${id}-title`}>
      <h4 id={`${id}-title`}>{say.discTitle}</h4>
      <div className="folded-pair">
        <figure className="as-printed">
          <FlatDisc disc={before} room={room} unit={unit} />
          <Cone disc={before} room={room} unit={unit} />
          <figcaption>
            <Fractions
              text={say.asPrinted(
                discSentence({ angle: printed.angle, leg: printed.legInner, height: before.height }, unit),
              )}
            />
          </figcaption>
        </figure>
        <figure className="as-drawn">
          <FlatDisc disc={now} room={room} unit={unit} />
          <Cone disc={now} room={room} unit={unit} />
          <figcaption>
            {shorten === 0 ? say.discAsDrawn : say.discShorterStill(formatAmount(shorten, unit))}:{" "}
            <Fractions text={discSentence({ angle, leg, height: now.height }, unit)} />
          </figcaption>
        </figure>
      </div>
      <details className="folded-try">
        <summary>{say.discTry}</summary>
        <label htmlFor={`${id}-try`}>{say.discNote}</label>
        <input
          id={`${id}-try`}
          type="range"
          min={0}
          max={most}
          step={1}
          value={shorten}
          aria-valuetext={say.discShorter(
            formatAmount(shorten, unit),
            formatAngle(angle),
            formatAmount(now.height, unit),
          )}
          onChange={(event) => setTried(Number(event.target.value))}
        />
        {HINT}
      </details>
    </section>
  );
}

/** One and the same, so that it is not drawn anew at every move of a hand. */
const HINT = (
  <p className="field-hint">
    <Sentence text={say.discAbout} parts={{ angle: <em>{say.discAngle}</em> }} />
  </p>
);

/** What the drawings show, mm: to each side, below the disc's middle, above the cone's rim. */
interface Room {
  readonly side: Mm;
  readonly depth: Mm;
  readonly rise: Mm;
}

const EDGE: Mm = 3;
/** For a line of writing. */
const LINE: Mm = 27;
/** How far the rim is turned to the eye, as a share of its radius. */
const TILT = 0.16;

interface PartProps {
  readonly disc: Disc;
  readonly room: Room;
  readonly unit: LengthUnit;
}

/** The dart as printed stays as it is while another is dragged: it is told by its figures, made anew at every move. */
const FlatDisc = memo(({ disc, room, unit }: PartProps) => {
  const { radius: r, cut, mouth } = disc;
  const large = disc.angle < Math.PI ? 1 : 0;
  return (
    <svg viewBox={`${-room.side} ${-r - EDGE} ${2 * room.side} ${r + EDGE + room.depth + LINE}`} aria-hidden="true">
      <path className="disc" d={`M0 0L${cut.x} ${cut.y}A${r} ${r} 0 ${large} 0 ${-cut.x} ${cut.y}Z`} />
      <path className="gap" d={`M${-mouth.x} ${mouth.y}L0 0L${mouth.x} ${mouth.y}`} />
      <path className="disc-mouth" d={`M${-mouth.x} ${mouth.y}H${mouth.x}`} />
      <text x={0} y={mouth.y + LINE * 0.8} textAnchor="middle">
        <Fractions text={say.discMouth(formatAmount(2 * mouth.x, unit))} inDrawing />
      </text>
    </svg>
  );
}, isSame);

/** From the side, the rim a little turned to the eye. */
const Cone = memo(({ disc: { rim, height }, room, unit }: PartProps) => {
  const tilt = rim * TILT;
  return (
    <svg
      viewBox={`${-room.side} ${-room.rise - LINE} ${2 * room.side} ${room.rise + LINE + room.side * TILT + EDGE}`}
      aria-hidden="true"
    >
      <path className="cone-back" d={`M${-rim} 0A${rim} ${tilt} 0 0 1 ${rim} 0`} />
      <path className="disc" d={`M${-rim} 0L0 ${-height}L${rim} 0A${rim} ${tilt} 0 0 1 ${-rim} 0Z`} />
      <path className="cone-seam" d={`M0 ${-height}L0 ${tilt}`} />
      <text x={0} y={-height - 6} textAnchor="middle">
        <Fractions text={formatAmount(height, unit)} inDrawing />
      </text>
    </svg>
  );
}, isSame);
