import { isRedraw } from "../../core/decisions/alteration";
import type { DartRef } from "../../core/pattern/piece";
import type { PlannedAlteration } from "../../core/plan/plan";
import { type LengthUnit } from "../../core/decisions/work";
import { placeWords, seamProof } from "../../words/terms/darts";
import { formatAmount, formatSigned } from "../../words/terms/length";
import { seamWords } from "../../words/terms/names";
import { alterationTitle } from "../../words/planned";
import { usePlan } from "../session/usePlan";
import { useViewState } from "../session/viewState";
import * as say from "../../words/dartsStep";
import { Fractions } from "../fields/Fractions";

/** What each alteration of a dart did to its seam, and the proof that the sewn seam is what it was. */
export function DartSums({
  dart,
  alterations: settled,
  unit,
}: {
  readonly dart: DartRef;
  /** As they are while nothing moves. */
  readonly alterations: readonly PlannedAlteration[];
  readonly unit: LengthUnit;
}) {
  const half = useViewState((view) => view.half);
  const now = usePlan();
  const alterations = now.ok ? now.value[half].alterations : settled;
  const own = alterations.filter(
    ({ what }) =>
      what.kind === "alteration" &&
      isRedraw(what.alteration) &&
      what.alteration.dart.piece === dart.piece &&
      what.alteration.dart.dart === dart.dart,
  );
  if (own.length === 0) return null;
  return (
    <details className="sum">
      <summary>{say.whereWidthWent}</summary>
      {own.map(({ id, what, outcome }) => {
        if (!outcome.ok || what.kind !== "alteration") return null;
        const { seamBefore, seamUngiven, seamAfter, given, seam } = outcome.value;
        const seamName = seam === null ? "seam" : seamWords(seam, dart.piece);
        return (
          <dl key={id}>
            <div>
              <dt>
                <Fractions text={say.sewnWouldChange(alterationTitle(what.alteration, unit), seamName)} />
              </dt>
              <dd className="length">
                <Fractions text={formatSigned(seamUngiven - seamBefore, unit)} />
              </dd>
            </div>
            {given.map(({ place, amount }) => (
              <div key={place}>
                <dt>{say.amountAt(amount >= 0 ? say.takenIn : say.letOut, placeWords(place, dart.piece))}</dt>
                <dd className="length">
                  <Fractions text={formatAmount(Math.abs(amount), unit)} />
                </dd>
              </div>
            ))}
            <div data-total="">
              <dt>{say.finishedSeam(seamName, seam === "waist" ? say.frontAndBackHalvesTogether : "")}</dt>
              <dd className="length">
                <Fractions text={seamProof(seamBefore, seamAfter, unit)} />
              </dd>
            </div>
          </dl>
        );
      })}
    </details>
  );
}
