import type { Half } from "../../core/decisions/alteration";
import { otherHalf } from "../../core/decisions/alteration";
import type { Work } from "../../core/decisions/work";
import type { DartRef } from "../../core/pattern/piece";
import { dartHalvesCommands } from "../../core/plan/dartHalves";
import type { Halves } from "../../core/plan/fitEdit";
import { ON_WHICH_HALF, WHICH_HALVES, anotherWayWords } from "../../words/halves";
import { Choice } from "../fields/Choice";
import { useRunAll } from "../session/useRunAll";
import { useViewState } from "../session/viewState";

interface DartHalvesProps {
  readonly dart: DartRef;
  readonly work: Work;
  /** The half that is changed; undefined: both. */
  readonly on: Half | undefined;
}

/** On which half the dart is changed, and the way to another answer on the other one. */
export function DartHalves({ dart, work, on }: DartHalvesProps) {
  const runAll = useRunAll();
  const half = useViewState((view) => view.half);
  const showHalf = useViewState((view) => view.showHalf);
  const selectDart = useViewState((view) => view.selectDart);
  const setAlone = useViewState((view) => view.setAlone);
  const seek = useViewState((view) => view.seek);
  const ask = (to: Halves): void => {
    selectDart(dart);
    setAlone(to !== "both");
    if (to !== "both") return showHalf(to);
    const commands = dartHalvesCommands(work, dart, half, to);
    if (commands.length > 0) runAll(commands);
  };
  return (
    <div className="dart-halves">
      <Choice legend={ON_WHICH_HALF} options={WHICH_HALVES} value={on ?? "both"} onChange={ask} />
      {on === undefined && (
        <button
          type="button"
          className="link-button"
          onClick={() => {
            ask(otherHalf(half));
            seek("dart");
          }}
        >
          {anotherWayWords(otherHalf(half))}
        </button>
      )}
    </div>
  );
}
