import type { Plan } from "../../core/plan/plan";
import type { Place } from "../../drawing/index";
import { slipGroup } from "../../words/ledger";
import { useViewState } from "../app/viewState";

/** Rings round what the lit slip of the ledger moved. */
export function LitSlip({ plan, places, mmPerPixel }: { readonly plan: Plan; readonly places: readonly Place[]; readonly mmPerPixel: number }) {
  const lit = useViewState((view) => view.litSlip);
  const slips = plan.slips.filter((slip) => lit !== null && (slip.id === lit || slipGroup(slip) === lit));
  return (
    <g className="lit" aria-hidden="true">
      {slips.map((slip) => {
        const place = places.find(({ piece }) => piece === slip.piece);
        if (place === undefined || !slip.outcome.ok) return null;
        return (
          <g key={slip.id} transform={`translate(${place.dx} ${place.dy})`}>
            {slip.outcome.value.moved.map(({ from, to }) => (
              <g key={`${to.x} ${to.y}`}>
                <path d={`M${from.x} ${from.y}L${to.x} ${to.y}`} />
                <circle cx={to.x} cy={to.y} r={15 * mmPerPixel} />
              </g>
            ))}
          </g>
        );
      })}
    </g>
  );
}
