import type { PlanHalf } from "../../core/plan/plan";
import { placeTransform, type Place } from "../../drawing/index";
import { ledgerGroup } from "../../words/ledger";
import { useViewState } from "../session/viewState";

/** Pixels. */
const RING = 15;

/** Rings round what the lit slip of the ledger moved; where it was cut and moved, that itself is drawn instead. */
export function LitSlip({
  plan,
  places,
  mmPerPixel,
}: {
  readonly plan: PlanHalf;
  readonly places: readonly Place[];
  readonly mmPerPixel: number;
}) {
  const lit = useViewState((view) => view.litAlteration);
  const alterations = plan.alterations.filter(
    (planned) => lit !== null && (planned.id === lit || ledgerGroup(planned) === lit),
  );
  return (
    <g className="lit" aria-hidden="true">
      {alterations.map((planned) => {
        if (!planned.outcome.ok || planned.outcome.value.surgery.some(({ parts }) => parts.length > 0)) return null;
        return planned.outcome.value.moved.map(({ piece, from, to }, index) => {
          const place = places.find((other) => other.piece === piece);
          return (
            place !== undefined && (
              <g key={`${planned.id} ${index}`} transform={placeTransform(place)}>
                <path d={`M${from.x} ${from.y}L${to.x} ${to.y}`} />
                <circle cx={to.x} cy={to.y} r={RING * mmPerPixel} />
              </g>
            )
          );
        });
      })}
    </g>
  );
}
