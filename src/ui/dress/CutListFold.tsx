import { useMemo } from "react";
import type { DressPlan } from "../../core/dress/dressPlan";
import type { SectorPart } from "../../core/parts/part";
import { printedNestOf } from "../../core/plan/planOf";
import { circleSketch } from "../../drawing/circleSketch";
import { FigureDrawing } from "../../print/FigureDrawing";
import { clothName, cutListOutcome, cutWords, partMeasures, partName, stringAndPin } from "../../words/dressParts";
import { capital } from "../../words/terms/names";
import { Fractions } from "../fields/Fractions";
import { useSettledWork } from "../session/useWork";
import { DressFoldView } from "./DressFolds";
import * as say from "../../words/dressFolds";

/** Every part, cloth by cloth: how many, and the measures of those that are not printed. */
export function CutListFold({ dress: { parts, cloths } }: { readonly dress: DressPlan }) {
  const unit = useSettledWork((work) => work.unit);
  const nest = useSettledWork(printedNestOf);
  const names = nest.ok ? nest.value.otherNames : undefined;
  return (
    <DressFoldView fold="cutList" outcome={cutListOutcome(parts)}>
      {cloths.map((cloth) => (
        <div key={cloth}>
          <h4>{capital(clothName(cloth))}</h4>
          <table className="cut-list" aria-label={capital(clothName(cloth))}>
            <thead>
              <tr>
                <th scope="col">{say.part}</th>
                <th scope="col">{say.cut}</th>
                <th scope="col">{say.asCut}</th>
              </tr>
            </thead>
            <tbody>
              {parts
                .filter((part) => part.cloth === cloth)
                .map((part) => {
                  const measures = partMeasures(part, unit);
                  return (
                    <tr key={part.key}>
                      <th scope="row">{partName(part, names)}</th>
                      <td>{cutWords(part)}</td>
                      <td>{measures === null ? say.byItsPattern : <Fractions text={measures} />}</td>
                    </tr>
                  );
                })}
            </tbody>
          </table>
        </div>
      ))}
      {parts.flatMap((part) =>
        part.kind === "sector" ? [<StringAndPin key={part.key} part={part} name={partName(part, names)} />] : [],
      )}
    </DressFoldView>
  );
}

/** How a share of a ring is drawn on the cloth itself. */
function StringAndPin({ part, name }: { readonly part: SectorPart; readonly name: string }) {
  const unit = useSettledWork((work) => work.unit);
  const { figure, steps } = useMemo(() => circleSketch(part, unit), [part, unit]);
  return (
    <details className="string-and-pin">
      <summary>{stringAndPin(name)}</summary>
      <FigureDrawing figure={figure} />
      <ol className="sewing-order">
        {steps.map((step) => (
          <li key={step}>
            <Fractions text={step} />
          </li>
        ))}
      </ol>
    </details>
  );
}
