import type { LengthUnit } from "../../core/decisions/work";
import { isSameDart } from "../../core/pattern/piece";
import { readout } from "../../words/table";
import { Fractions } from "../fields/Fractions";
import { usePlan, useSettledPlan } from "../session/usePlan";
import { useIsMoving } from "../session/useWork";
import { useViewState } from "../session/viewState";

/** Over the table while a dart is in her hand, where no finger covers it. Who does not see it is told once it is let go. */
export function Readout({ unit }: { readonly unit: LengthUnit }) {
  const isMoving = useIsMoving();
  const ref = useViewState((view) => view.selectedDart);
  return isMoving && ref !== null ? <Figures unit={unit} /> : null;
}

function Figures({ unit }: { readonly unit: LengthUnit }) {
  const ref = useViewState((view) => view.selectedDart);
  const half = useViewState((view) => view.half);
  const plan = usePlan();
  const start = useSettledPlan();
  if (ref === null || !plan.ok || !start.ok) return null;
  const now = plan.value[half].darts.find((dart) => isSameDart(dart.ref, ref));
  const was = start.value[half].darts.find((dart) => isSameDart(dart.ref, ref));
  // Keys in a field of something else move no dart.
  if (now === undefined || was === undefined || plan.value === start.value) return null;
  const { title, figures } = readout(now, was.drawn, unit);
  return (
    <p className="table-readout" aria-hidden="true">
      <b>{title}</b>
      {figures.map(({ name, now: is, since }) => (
        <span key={name}>
          {name}{" "}
          <strong>
            <Fractions text={is} />
          </strong>
          {/* Always there, since a node that comes or goes in the middle of a drag has whatever looks for another by :has looked at anew. */}
          <em>
            <Fractions text={since} />
          </em>
        </span>
      ))}
    </p>
  );
}
