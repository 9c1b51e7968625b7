import type { ClothAtWidth } from "../../core/cloth/laySearch";
import type { ClothName } from "../../core/decisions/dress";
import type { Work } from "../../core/decisions/work";
import { layFailureWords, NOT_LAID, otherWidths } from "../../words/dressCloth";
import { clothLength } from "../../words/dressStep";
import { formatLength } from "../../words/terms/length";
import { Fractions } from "../fields/Fractions";
import type { ClothState } from "./cloth/clothRoom";
import { useClothRoom } from "./cloth/useCloth";
import { Laying } from "./ClothLaid";
import * as say from "../../words/dressFolds";

interface ClothTableProps {
  readonly name: ClothName;
  readonly work: Work;
  readonly state: ClothState<readonly ClothAtWidth[]> | undefined;
  readonly named: (key: string) => string;
}

/** What every width that is sold would take; laid only once she asks. */
export function ClothTable({ name, work, state, named }: ClothTableProps) {
  const { unit } = work;
  const room = useClothRoom();
  const isLaying = state?.kind === "laying";
  const rows = state?.kind === "answered" ? state.answer : state?.kind === "laying" ? state.last : null;
  return (
    <div className="cloth-asked">
      {state?.kind !== "answered" && (
        <button
          type="button"
          className="button small"
          // Not disabled: it would lose the focus.
          aria-disabled={isLaying}
          onClick={() => !isLaying && room.compareWidths(work, name)}
        >
          {otherWidths(name)}
        </button>
      )}
      {state?.kind === "laying" && <Laying share={state.share} />}
      {state?.kind === "broke" && <p className="note doubt">{NOT_LAID}</p>}
      {rows !== null && (
        <table className="cut-list" aria-label={otherWidths(name)}>
          <thead>
            <tr>
              <th scope="col">{say.width}</th>
              <th scope="col">{say.toBuy}</th>
              <th scope="col">{say.area}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ width, isHers, needed }) => (
              <tr key={width} data-total={isHers ? "" : undefined}>
                <th scope="row">
                  <Fractions text={formatLength(width, unit)} />
                  {isHers && say.yours}
                </th>
                {"failure" in needed ? (
                  <td colSpan={2}>
                    <Fractions text={layFailureWords(needed.failure, named, unit)} />
                  </td>
                ) : (
                  <>
                    <td>
                      <Fractions text={clothLength(needed.toBuy, unit)} />
                    </td>
                    <td>{say.squareMetres(needed.area)}</td>
                  </>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </div>
  );
}
