import { isRedraw } from "../../core/decisions/alteration";
import type { PlannedDart, PlannedAlteration } from "../../core/plan/plan";
import { type LengthUnit } from "../../core/decisions/work";
import { placeWords, seamProof } from "../../words/terms/darts";
import { formatAmount, formatSigned } from "../../words/terms/length";
import { seamWords } from "../../words/terms/names";
import { alterationTitle } from "../../words/planned";

/** What each alteration of a dart did to its seam, and the proof that the sewn seam is what it was. */
export function DartSums({
  dart,
  alterations,
  unit,
}: {
  readonly dart: PlannedDart;
  readonly alterations: readonly PlannedAlteration[];
  readonly unit: LengthUnit;
}) {
  const own = alterations.filter(
    ({ what }) =>
      what.kind === "alteration" &&
      isRedraw(what.alteration) &&
      what.alteration.dart.piece === dart.ref.piece &&
      what.alteration.dart.dart === dart.ref.dart,
  );
  if (own.length === 0) return null;
  return (
    <details className="sum">
      <summary>Where did the width go?</summary>
      {own.map(({ id, what, outcome }) => {
        if (!outcome.ok || what.kind !== "alteration") return null;
        const { seamBefore, seamUngiven, seamAfter, given, seam } = outcome.value;
        const seamName = seam === null ? "seam" : seamWords(seam, dart.ref.piece);
        return (
          <dl key={id}>
            <div>
              <dt>
                {alterationTitle(what.alteration, unit)}: the sewn {seamName} would change by
              </dt>
              <dd className="length">{formatSigned(seamUngiven - seamBefore, unit)}</dd>
            </div>
            {given.map(({ place, amount }) => (
              <div key={place}>
                <dt>
                  {amount >= 0 ? "taken in" : "let out"} at the {placeWords(place, dart.ref.piece)}
                </dt>
                <dd className="length">{formatAmount(Math.abs(amount), unit)}</dd>
              </div>
            ))}
            <div data-total="">
              <dt>
                Finished {seamName}
                {seam === "waist" ? ", front and back halves together" : ""}
              </dt>
              <dd className="length">{seamProof(seamBefore, seamAfter, unit)}</dd>
            </div>
          </dl>
        );
      })}
    </details>
  );
}
