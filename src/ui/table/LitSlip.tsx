import type { Plan } from "../../core/plan/plan";
import type { Place } from "../../drawing/index";
import { useViewState } from "../app/viewState";

/** Rings round what the lit slip of the ledger moved. */
export function LitSlip({ plan, places, mmPerPixel }: { readonly plan: Plan; readonly places: readonly Place[]; readonly mmPerPixel: number }) {
  const lit = useViewState((view) => view.litSlip);
  const slip = plan.slips.find(({ id }) => id === lit);
  if (slip === undefined || !slip.outcome.ok) return null;
  const place = places.find(({ piece }) => piece === slip.piece);
  if (place === undefined) return null;
  return (
    <g className="lit" aria-hidden="true" transform={`translate(${place.dx} ${place.dy})`}>
      {slip.outcome.value.moved.map(({ from, to }) => (
        <g key={`${to.x} ${to.y}`}>
          <path d={`M${from.x} ${from.y}L${to.x} ${to.y}`} />
          <circle cx={to.x} cy={to.y} r={15 * mmPerPixel} />
        </g>
      ))}
    </g>
  );
}
