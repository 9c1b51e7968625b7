import type { Half } from "../../core/decisions/alteration";
import { useViewState, type OtherHalf } from "../session/viewState";
import { Choice } from "../fields/Choice";
import { HALF_WORDS } from "../../words/table";

const HALVES: readonly { readonly value: Half; readonly label: string }[] = [
  { value: "left", label: HALF_WORDS.left },
  { value: "right", label: HALF_WORDS.right },
];

const OTHERS: readonly { readonly value: OtherHalf; readonly label: string }[] = [
  { value: "away", label: HALF_WORDS.away },
  { value: "beside", label: HALF_WORDS.beside },
  { value: "under", label: HALF_WORDS.under },
];

/** Which half of the body is worked on, and where the other one lies; only there while they differ. */
export function HalfSwitch({ onLaid }: { readonly onLaid: () => void }) {
  const half = useViewState((view) => view.half);
  const showHalf = useViewState((view) => view.showHalf);
  const other = useViewState((view) => view.otherHalf);
  const showOther = useViewState((view) => view.showOther);
  const lay = (to: OtherHalf): void => {
    showOther(to);
    onLaid();
  };
  return (
    <div className="table-tool-row half-row">
      <Choice legend={HALF_WORDS.workedOn} legendHidden options={HALVES} value={half} onChange={showHalf} />
      <Choice legend={HALF_WORDS.shown} legendHidden options={OTHERS} value={other} onChange={lay} />
    </div>
  );
}
