import { useId, useState } from "react";
import { axisLength } from "../../core/dart/dartFrame";
import { angleOfMouth, foldDisc, type FoldedDisc as Disc } from "../../core/dart/foldedDisc";
import type { PlannedDart } from "../../core/plan/plan";
import type { LengthUnit } from "../../core/plan/work";
import { FULLNESS_RADIUS, SHORTEST_DART } from "../../core/tolerance";
import { radians } from "../../core/units";
import { formatAngle } from "../../words/darts";
import { formatAmount } from "../../words/length";

/** Both drawings share one scale, so that heights can be compared by eye. */
const VIEW = { width: 200, height: 120 };
const SCALE = 0.62;

/**
 * Why a wider dart is fuller: a disc of paper with the wearer's own dart cut out of it, and the cone it folds to. The
 * slider tries a shorter dart with the same mouth without touching the plan.
 */
export function FoldedDisc({ dart, radius, unit }: { readonly dart: PlannedDart; readonly radius?: number; readonly unit: LengthUnit }) {
  const id = useId();
  const [tried, setTried] = useState(0);
  const slant = radius ?? FULLNESS_RADIUS;
  const { drawn, printed } = dart;
  const axis = axisLength(drawn);
  const most = Math.max(0, Math.floor(axis - SHORTEST_DART * 2));
  const shorten = Math.min(tried, most);
  const before = foldDisc(printed.angle, slant);
  const angle = shorten === 0 ? drawn.angle : radians(angleOfMouth(drawn.intake, axis - shorten));
  const now = foldDisc(angle, slant);
  return (
    <section className="folded" aria-labelledby={`${id}-title`}>
      <h3 id={`${id}-title`}>Why a wider dart is fuller</h3>
      <p>
        Cut your dart out of a round of paper and close the gap: the paper rises to a point. The wider the <em>angle</em>, the
        higher it stands, however wide the mouth on the seam.
      </p>
      <div className="folded-pair">
        <figure>
          <FlatDisc disc={before} className="as-printed" />
          <Cone disc={before} className="as-printed" unit={unit} />
          <figcaption>
            As printed: {formatAngle(printed.angle)}, stands {formatAmount(before.height, unit)} high
          </figcaption>
        </figure>
        <figure>
          <FlatDisc disc={now} className="as-drawn" />
          <Cone disc={now} className="as-drawn" unit={unit} />
          <figcaption>
            {shorten === 0 ? "As drawn" : `${formatAmount(shorten, unit)} shorter still, mouth held`}: {formatAngle(angle)}, stands{" "}
            {formatAmount(now.height, unit)} high
          </figcaption>
        </figure>
      </div>
      <label className="folded-try" htmlFor={`${id}-try`}>
        Try it: shorten on paper only, the mouth held
      </label>
      <input
        id={`${id}-try`}
        type="range"
        min={0}
        max={most}
        step={1}
        value={shorten}
        aria-valuetext={`${formatAmount(shorten, unit)} shorter: ${formatAngle(angle)}, ${formatAmount(now.height, unit)} high`}
        onChange={(event) => setTried(Number(event.target.value))}
      />
    </section>
  );
}

function FlatDisc({ disc, className }: { readonly disc: Disc; readonly className: string }) {
  const r = disc.radius * SCALE;
  const x = Math.sin(disc.angle / 2) * r;
  const y = Math.cos(disc.angle / 2) * r;
  const large = disc.angle < Math.PI ? 1 : 0;
  return (
    <svg viewBox={`${-VIEW.width / 4} ${-VIEW.height / 2} ${VIEW.width / 2} ${VIEW.height}`} aria-hidden="true" className={className}>
      <path className="disc" d={`M0 0L${x} ${y}A${r} ${r} 0 ${large} 0 ${-x} ${y}Z`} />
      <path className="gap" d={`M0 0L${x} ${y}A${r} ${r} 0 0 1 ${-x} ${y}Z`} />
    </svg>
  );
}

/** From the side, the rim a little turned to the eye. */
function Cone({ disc, className, unit }: { readonly disc: Disc; readonly className: string; readonly unit: LengthUnit }) {
  const rim = disc.rim * SCALE;
  const height = disc.height * SCALE;
  const tilt = rim * 0.16;
  const floor = VIEW.height * 0.3;
  return (
    <svg viewBox={`${-VIEW.width / 4} ${-VIEW.height / 2} ${VIEW.width / 2} ${VIEW.height}`} aria-hidden="true" className={className}>
      <path className="cone-back" d={`M${-rim} ${floor}A${rim} ${tilt} 0 0 1 ${rim} ${floor}`} />
      <path className="disc" d={`M${-rim} ${floor}L0 ${floor - height}L${rim} ${floor}A${rim} ${tilt} 0 0 1 ${-rim} ${floor}Z`} />
      <path className="cone-seam" d={`M0 ${floor - height}L0 ${floor + tilt}`} />
      <text x={0} y={floor - height - 5} textAnchor="middle">
        {formatAmount(disc.height, unit)}
      </text>
    </svg>
  );
}
