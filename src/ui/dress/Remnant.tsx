import type { ClothName, Dress } from "../../core/decisions/dress";
import type { Work } from "../../core/decisions/work";
import type { RemnantAnswer } from "../../core/dress/remnant";
import type { Command } from "../../core/plan/commands";
import { DOES_IT_GO, NOT_LAID, remnantWords, TAKE_WAY, wayOutWords } from "../../words/dressCloth";
import { clothName } from "../../words/dressParts";
import { Fractions } from "../fields/Fractions";
import { useRunAll } from "../session/useRunAll";
import type { ClothState } from "./cloth/clothRoom";
import { useClothRoom } from "./cloth/useCloth";
import { Laying } from "./ClothLaid";
import * as say from "../../words/dressFolds";

interface RemnantProps {
  readonly name: ClothName;
  readonly work: Work;
  readonly state: ClothState<RemnantAnswer | null> | undefined;
  readonly named: (key: string) => string;
}

/** Whether what she has of a cloth goes; where it does not, what would make it go, each way tried before it is said. */
export function Remnant({ name, work, state, named }: RemnantProps) {
  const { unit } = work;
  const room = useClothRoom();
  const runAll = useRunAll();
  const answer = state?.kind === "answered" ? state.answer : null;
  return (
    <div className="cloth-asked">
      {answer === null && (
        <button
          type="button"
          className="button"
          // Not disabled: it would lose the focus.
          aria-disabled={state?.kind === "laying"}
          onClick={() => state?.kind !== "laying" && room.tryRemnant(work, name)}
        >
          {DOES_IT_GO} <span className="visually-hidden">{say.clothYouHave(clothName(name))}</span>
        </button>
      )}
      {state?.kind === "laying" && <Laying share={state.share} />}
      {state?.kind === "broke" && <p className="note doubt">{NOT_LAID}</p>}
      {answer !== null && (
        <div role="status">
          <p className={answer.goes ? undefined : "doubt"}>
            <Fractions text={remnantWords(answer, named, unit)} />
          </p>
          {!answer.goes && answer.ways.length > 0 && (
            <ul className="ways-out">
              {answer.ways.map(({ giveUps, dress }, at) => {
                const commands = takenOver(work.dress ?? {}, dress);
                return (
                  <li key={at}>
                    <Fractions text={wayOutWords(giveUps, unit)} />{" "}
                    {commands.length > 0 && (
                      <button type="button" className="button small" onClick={() => runAll(commands)}>
                        {TAKE_WAY}
                      </button>
                    )}
                  </li>
                );
              })}
            </ul>
          )}
        </div>
      )}
    </div>
  );
}

/** What a way decides otherwise than the work does, as one step. */
function takenOver(before: Dress, after: Dress): readonly Command[] {
  return [
    ...(after.skirt === before.skirt ? [] : [{ kind: "setDress", part: "skirt", value: after.skirt ?? null } as const]),
    ...(after.cloths === before.cloths
      ? []
      : [{ kind: "setDress", part: "cloths", value: after.cloths ?? null } as const]),
    ...(after.edges === before.edges ? [] : [{ kind: "setDress", part: "edges", value: after.edges ?? null } as const]),
  ];
}
