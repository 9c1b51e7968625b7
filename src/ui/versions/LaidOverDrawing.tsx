import { useId, useMemo } from "react";
import type { Plan } from "../../core/plan/plan";
import { laidOver, type LaidOver } from "../../drawing/laidOver";
import { halfWords } from "../../words/fits";
import { capital, namedPieceWords } from "../../words/terms/names";
import { listWords } from "../../words/terms/language";
import * as say from "../../words/versionsStep";

interface LaidOverProps {
  /** null: one version alone. */
  readonly before: Plan | null;
  readonly after: Plan;
  /** The older, the newer. */
  readonly called: readonly [string, string];
}

/** The pieces of two versions laid over each other: the older dashed, the newer unbroken and heavier. */
export function LaidOverDrawing({ before, after, called }: LaidOverProps) {
  const drawings = useMemo(() => laidOver(before, after), [before, after]);
  const [older, newer] = called;
  const pieces = listWords(after.left.pieces.map(({ name }) => namedPieceWords(name, after.nest.otherNames)));
  return (
    <div className="laid-over">
      {drawings.map((drawing) => (
        <Half
          key={drawing.half ?? "both"}
          drawing={drawing}
          said={`${before === null ? newer : say.dashedAndUnbroken(older, newer)}: ${pieces}`}
        />
      ))}
      {before !== null && (
        <ul className="laid-key">
          <li>
            <Sample kind="before" /> {older}
          </li>
          <li>
            <Sample kind="after" /> {newer}
          </li>
        </ul>
      )}
    </div>
  );
}

const Sample = ({ kind }: { readonly kind: "before" | "after" }) => (
  <svg className="laid-sample light-paper" viewBox="0 0 40 6" aria-hidden="true">
    <path className={`laid-${kind}`} d="M0 3H40" />
  </svg>
);

function Half({ drawing: { half, box, pieces }, said }: { readonly drawing: LaidOver; readonly said: string }) {
  const id = useId();
  return (
    <figure>
      <svg
        className="light-paper"
        viewBox={`${box.x} ${box.y} ${box.width} ${box.height}`}
        role="img"
        aria-label={half === null ? said : `${said}. ${capital(halfWords(half))}`}
        aria-describedby={half === null ? undefined : id}
      >
        {pieces.map(({ piece, dx, dy, before, after }) => (
          <g key={piece} transform={`translate(${dx} ${dy})`}>
            <path className="laid-after" d={after} />
            <path className="laid-before" d={before} />
          </g>
        ))}
      </svg>
      {half !== null && <figcaption id={id}>{capital(halfWords(half))}</figcaption>}
    </figure>
  );
}
