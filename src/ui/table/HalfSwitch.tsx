import type { Half } from "../../core/decisions/alteration";
import { useViewState } from "../session/viewState";
import { Choice } from "../fields/Choice";

const HALVES: readonly { readonly value: Half; readonly label: string }[] = [
  { value: "left", label: "left half" },
  { value: "right", label: "right half" },
];

/** Which half of the body the table shows; only there while they differ. */
export function HalfSwitch() {
  const half = useViewState((view) => view.half);
  const showHalf = useViewState((view) => view.showHalf);
  return (
    <div className="table-tool-row half-row">
      <Choice legend="The table shows the" legendHidden options={HALVES} value={half} onChange={showHalf} />
    </div>
  );
}
