import { useMemo } from "react";
import type { DressPlan } from "../../core/dress/dressPlan";
import { dressDrawing } from "../../drawing/dressDrawing";
import { FigureDrawing } from "../../print/FigureDrawing";
import { drawnLabel, finishedFigures } from "../../words/dressStep";
import { Fractions } from "../fields/Fractions";
import { useSettledWork } from "../session/useWork";
import { useDressDecided } from "./useDress";

/** The dress as it will be, front and back, and what it measures once it is sewn. */
export function DressOnTop({ dress }: { readonly dress: DressPlan }) {
  const unit = useSettledWork((work) => work.unit);
  const closure = useSettledWork((work) => work.pattern.closure);
  const decided = useDressDecided();
  const figures = useMemo(
    () => dressDrawing(dress, { dress: decided, closure, unit }),
    [dress, decided, closure, unit],
  );
  return (
    <figure className="dress-on-top">
      <div className="dress-drawn">
        {figures.map((figure) => (
          <FigureDrawing key={figure.side} figure={figure} label={drawnLabel(figure.side)} wordless />
        ))}
      </div>
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
