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
  // One path for all rings of a piece: as many as there are, no node comes or goes in the middle of a drag.
  const moved = alterations.flatMap(({ outcome }) =>
    outcome.ok && !outcome.value.surgery.some(({ parts }) => parts.length > 0) ? outcome.value.moved : [],
  );
  const r = RING * mmPerPixel;
  return (
    <g className="lit" aria-hidden="true">
      {places.map((place) => {
        const own = moved.filter(({ piece }) => piece === place.piece);
        return (
          own.length > 0 && (
            <g key={place.piece} transform={placeTransform(place)}>
              <path d={own.map(({ from, to }) => `M${from.x} ${from.y}L${to.x} ${to.y}`).join("")} />
              <path
                className="ring"
                d={own
                  .map(({ to }) => `M${to.x - r} ${to.y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`)
                  .join("")}
              />
            </g>
          )
        );
      })}
    </g>
  );
}
