import type { Half } from "../../core/decisions/alteration";
import { useViewState, type OtherHalf } from "../session/viewState";
import { Choice } from "../fields/Choice";

const HALVES: readonly { readonly value: Half; readonly label: string }[] = [
  { value: "left", label: "your left" },
  { value: "right", label: "your right" },
];

const OTHERS: readonly { readonly value: OtherHalf; readonly label: string }[] = [
  { value: "away", label: "one half" },
  { value: "beside", label: "side by side" },
  { value: "under", label: "one over the other" },
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
      <Choice legend="The half you work on" legendHidden options={HALVES} value={half} onChange={showHalf} />
      <Choice legend="The table shows" legendHidden options={OTHERS} value={other} onChange={lay} />
    </div>
  );
}
