import type { DressPlan } from "../../core/dress/dressPlan";
import { finishedFigures } from "../../words/dressStep";
import { Fractions } from "../fields/Fractions";
import { useSettledWork } from "../session/useWork";

/** The dress as it will be, front and back, and what it measures once it is sewn. */
export function DressOnTop({ dress }: { readonly dress: DressPlan }) {
  const unit = useSettledWork((work) => work.unit);
  return (
    <figure className="dress-on-top" aria-label="The finished dress">
      <div className="dress-drawn" />
      <figcaption>
        <dl className="dress-measures">
          {finishedFigures(dress, unit).map(({ name, figure }) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>
                <Fractions text={figure} />
              </dd>
            </div>
          ))}
        </dl>
      </figcaption>
    </figure>
  );
}
