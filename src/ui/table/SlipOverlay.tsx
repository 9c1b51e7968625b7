import type { AlterationTrace } from "../../core/alterations/outcome/trace";
import { useId, useMemo } from "react";
import type { PlannedAlteration, PlanHalf } from "../../core/plan/plan";
import {
  alterationMarks,
  stageAt,
  transformAt,
  type AlterationMarks,
  type StageMarks,
} from "../../drawing/surgeryMarks";
import { placeTransform, type Place } from "../../drawing/index";
import { ledgerGroup } from "../../words/ledger";
import { useIsMoving } from "../session/useWork";
import { useViewState } from "../session/viewState";

const EVERYWHERE = "M-5000 -5000H5000V5000H-5000Z";
/** Pixels. */
const HINGE = 5;
const TICK = 7;

/** The slip that is lit, where it was made and changed a piece that is on the table. */
export function litTrace(
  plan: PlanHalf,
  places: readonly Place[],
  lit: string | null,
): { readonly planned: PlannedAlteration; readonly trace: AlterationTrace } | null {
  const planned = plan.alterations.find((one) => lit !== null && (one.id === lit || ledgerGroup(one) === lit));
  if (planned === undefined || !planned.outcome.ok) return null;
  const { before, after } = planned.outcome.value;
  const isShown = places.some(({ piece }) => before[piece] !== undefined && after[piece] !== undefined);
  return isShown ? { planned, trace: planned.outcome.value } : null;
}

export interface SlipOverlayProps {
  readonly plan: PlanHalf;
  readonly places: readonly Place[];
  readonly mmPerPixel: number;
}

/** What the lit slip did: where it is cut, what turns about what, what is let in and what is taken. */
export function SlipOverlay({ plan, places, mmPerPixel }: SlipOverlayProps) {
  const lit = useViewState((view) => view.litAlteration);
  const share = useViewState((view) => view.litShare);
  const isMoving = useIsMoving();
  const found = litTrace(plan, places, lit)?.trace ?? null;
  // A line that follows the finger shows itself; drawing what it was as well would only lag behind.
  const trace = isMoving && found?.surgery.length === 0 ? null : found;
  const marks = useMemo(() => (trace === null ? [] : alterationMarks(trace)), [trace]);
  return (
    <g className="slip-overlay" aria-hidden="true">
      {marks.map((one) => {
        const place = places.find(({ piece }) => piece === one.piece);
        if (place === undefined) return null;
        return (
          <g key={one.piece} transform={placeTransform(place)}>
            {one.stages.length === 0 ? (
              <Redrawn marks={one} share={share} />
            ) : (
              <Operated marks={one} share={share} mmPerPixel={mmPerPixel} />
            )}
          </g>
        );
      })}
    </g>
  );
}

/** A piece of which lines were only redrawn. */
function Redrawn({ marks, share }: { readonly marks: AlterationMarks; readonly share: number }) {
  const id = useId();
  const shape = share < 1 ? marks.outlineAt(share) : null;
  return (
    <>
      <clipPath id={`${id}new`}>
        <path d={EVERYWHERE + marks.after} clipRule="evenodd" />
      </clipPath>
      <clipPath id={`${id}old`}>
        <path d={EVERYWHERE + marks.before} clipRule="evenodd" />
      </clipPath>
      {share < 1 && <path className="overlay-paper" d={shape ?? marks.before} />}
      <path className="overlay-added" d={marks.after} clipPath={`url(#${id}old)`} opacity={share} />
      <path className="taken" d={marks.before} clipPath={`url(#${id}new)`} opacity={share} />
      <Outlines marks={marks} share={share} shape={shape} />
    </>
  );
}

/** A piece that was cut and moved: its parts where they lay, and as they lie. */
function Operated({
  marks,
  share,
  mmPerPixel,
}: {
  readonly marks: AlterationMarks;
  readonly share: number;
  readonly mmPerPixel: number;
}) {
  const id = useId();
  const now = stageAt(marks.stages.length, share);
  const current = marks.stages[now.stage];
  const shareOf = (stage: number): number => (stage < now.stage ? 1 : now.share);
  return (
    <>
      {marks.stages.map((stage, index) =>
        stage.regions.map((region, at) => (
          <clipPath key={`${index} ${at}`} id={`${id}${index}-${at}`}>
            <path d={region.outline} />
          </clipPath>
        )),
      )}
      {/* What the parts, laid in their new place, leave bare of this is paper let in. */}
      <path className="overlay-paper" d={marks.after} opacity={share} />
      <path className="overlay-added" d={marks.after} opacity={share} />
      <Laid id={id} marks={marks} upTo={now.stage} shareOf={shareOf} />
      {current !== undefined && <Marked stage={current} mmPerPixel={mmPerPixel} />}
      <Outlines marks={marks} share={share} shape={null} />
    </>
  );
}

interface LaidProps {
  readonly id: string;
  readonly marks: AlterationMarks;
  readonly upTo: number;
  readonly shareOf: (stage: number) => number;
}

/** The paper as it lies after some of the operations: each is made on the paper as the one before left it. */
function Laid({ id, marks, upTo, shareOf }: LaidProps) {
  const stage = marks.stages[upTo];
  if (stage === undefined) return <path className="overlay-paper" d={marks.before} />;
  const share = shareOf(upTo);
  return (
    <>
      {stage.regions.map((region, at) => (
        <g key={`${at} ${region.outline}`} transform={transformAt(region.motion, share)}>
          <g clipPath={`url(#${id}${upTo}-${at})`}>
            <Laid id={id} marks={marks} upTo={upTo - 1} shareOf={shareOf} />
          </g>
        </g>
      ))}
      <Lapped id={`${id}${upTo}`} stage={stage} share={share} />
    </>
  );
}

/** Where two parts lie over each other: what is folded out. */
function Lapped({ id, stage, share }: { readonly id: string; readonly stage: StageMarks; readonly share: number }) {
  return (
    <>
      {stage.regions.map((one, at) => (
        <g key={one.outline}>
          <clipPath id={`${id}lap${at}`}>
            <path d={one.outline} transform={transformAt(one.motion, share)} />
          </clipPath>
          {stage.regions.slice(at + 1).map((other) => (
            <g key={other.outline} clipPath={`url(#${id}lap${at})`}>
              <path className="taken" d={other.outline} transform={transformAt(other.motion, share)} />
            </g>
          ))}
        </g>
      ))}
    </>
  );
}

/** Where it is cut, what it turns about, and where the parts lay. */
function Marked({ stage, mmPerPixel }: { readonly stage: StageMarks; readonly mmPerPixel: number }) {
  return (
    <>
      {stage.regions.map(
        ({ outline, motion }) => motion !== null && <path key={outline} className="overlay-ghost" d={outline} />,
      )}
      {stage.cuts.map((d) => (
        <path key={d} className="overlay-cut" d={d} />
      ))}
      {stage.cuts.map((d) => (
        <Scissors key={d} d={d} mmPerPixel={mmPerPixel} />
      ))}
      {stage.hinges.map(({ x, y }) => (
        <circle key={`${x} ${y}`} className="overlay-hinge" cx={x} cy={y} r={HINGE * mmPerPixel} />
      ))}
    </>
  );
}

/** An open pair of blades at the start of a cut. */
function Scissors({ d, mmPerPixel }: { readonly d: string; readonly mmPerPixel: number }) {
  const [x1, y1, x2, y2] = (d.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);
  if (x1 === undefined || y1 === undefined || x2 === undefined || y2 === undefined) return null;
  const along = Math.atan2(y2 - y1, x2 - x1);
  const tip = (turn: number): string =>
    `L${x1 - TICK * mmPerPixel * Math.cos(along + turn)} ${y1 - TICK * mmPerPixel * Math.sin(along + turn)}`;
  return <path className="overlay-scissors" d={`M${x1} ${y1}${tip(0.5)}M${x1} ${y1}${tip(-0.5)}`} />;
}

/** The lines before and after; on the way the one gives way to the other, or a line between them is drawn. */
function Outlines({
  marks,
  share,
  shape,
}: {
  readonly marks: AlterationMarks;
  readonly share: number;
  readonly shape: string | null;
}) {
  return (
    <>
      <path className="overlay-before" d={marks.before} />
      {shape === null ? (
        <path className="overlay-after" d={marks.after} opacity={share} />
      ) : (
        <path className="overlay-after" d={shape} />
      )}
      <g opacity={1 - share}>
        {marks.legsBefore.map((d) => (
          <path key={d} className="overlay-legs" d={d} />
        ))}
      </g>
      <g opacity={share}>
        {marks.legsAfter.map((d) => (
          <path key={d} className="overlay-legs" d={d} />
        ))}
      </g>
    </>
  );
}
