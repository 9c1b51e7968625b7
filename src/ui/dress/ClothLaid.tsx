import { useMemo } from "react";
import type { ClothLay, LayFailure } from "../../core/cloth/cutting";
import type { LengthUnit } from "../../core/decisions/work";
import type { Result } from "../../core/result";
import { layDrawing } from "../../drawing/layDrawing";
import { FigureDrawing } from "../../print/FigureDrawing";
import {
  boundsWords,
  buyWords,
  drawnLayLabel,
  layFailureWords,
  LAYING,
  NOT_LAID,
  WHERE_LAID,
} from "../../words/dressCloth";
import { laidNameWords, oneLayerWords } from "../../words/layDrawing";
import { formatLength } from "../../words/terms/length";
import { Fractions } from "../fields/Fractions";
import type { ClothState } from "./cloth/clothRoom";
import * as say from "../../words/dressFolds";

interface ClothLaidProps {
  readonly state: ClothState<Result<ClothLay, LayFailure>> | undefined;
  readonly named: (key: string) => string;
  readonly unit: LengthUnit;
}

/** How much to buy, and the parts as they lie on it. While it is laid anew what was laid before stays, and says so. */
export function ClothLaid({ state, named, unit }: ClothLaidProps) {
  if (state === undefined || state.kind === "none") return null;
  if (state.kind === "broke") return <p className="note doubt">{NOT_LAID}</p>;
  const found = state.kind === "answered" ? state.answer : state.last;
  return (
    <div className="cloth-laid">
      {state.kind === "laying" && <Laying share={state.share} />}
      {found !== null &&
        (found.ok ? (
          <Laid lay={found.value} named={named} unit={unit} />
        ) : (
          <p className="note doubt">
            <Fractions text={layFailureWords(found.failure, named, unit)} />
          </p>
        ))}
    </div>
  );
}

/** A lay, or several, being sought. */
export function Laying({ share }: { readonly share: number }) {
  return (
    <p className="laying aside">
      {LAYING} <progress max={1} value={share} aria-label={LAYING} />
    </p>
  );
}

interface LaidProps {
  readonly lay: ClothLay;
  readonly named: (key: string) => string;
  readonly unit: LengthUnit;
}

function Laid({ lay, named, unit }: LaidProps) {
  // Its names go by the parts that it was laid with.
  // oxlint-disable-next-line react/exhaustive-deps
  const { figure, rows } = useMemo(() => layDrawing(lay, named, unit), [lay, unit]);
  const oneLayer = oneLayerWords(lay);
  return (
    <>
      <p className="to-buy">
        <b>
          <Fractions text={buyWords(lay, unit)} />
        </b>
      </p>
      <p className="aside">
        <Fractions text={boundsWords(lay, unit)} />
      </p>
      {oneLayer !== null && <p className="aside">{oneLayer}</p>}
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- it scrolls, by keys too */}
      <div className="lay-drawn" role="group" aria-label={drawnLayLabel(lay.cloth)} tabIndex={0}>
        <FigureDrawing figure={figure} />
      </div>
      <details className="aside">
        <summary>{WHERE_LAID}</summary>
        <table className="cut-list" aria-label={WHERE_LAID}>
          <thead>
            <tr>
              <th scope="col">{say.part}</th>
              <th scope="col">{lay.onFold ? say.fromTheFold : say.fromTheLeftSelvage}</th>
              <th scope="col">{say.fromTheCutEnd}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ number, name, copy, how, across, along }) => (
              <tr key={number}>
                <th scope="row">{laidNameWords(name, copy, how)}</th>
                <td>
                  <Fractions text={formatLength(across, unit)} />
                </td>
                <td>
                  <Fractions text={formatLength(along, unit)} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </>
  );
}
