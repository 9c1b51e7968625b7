import { memo, useId } from "react";
import type { LengthUnit } from "../../core/decisions/work";
import type { PlannedAlteration } from "../../core/plan/plan";
import { plannedTitle } from "../../words/ledger";
import { useViewState } from "../session/viewState";

/** Per cent of the way that a press of an arrow key goes. */
const STEP = 5;

/** Over the table while a slip is lit: from the piece before it to the piece after it, by hand. */
export function SlipBar({ planned, unit }: { readonly planned: PlannedAlteration; readonly unit: LengthUnit }) {
  const id = useId();
  return (
    <div className="slip-bar">
      <p className="slip-bar-title" id={`${id}-title`}>
        {plannedTitle(planned, unit)}
      </p>
      <SlipSlide id={id} />
    </div>
  );
}

/** Between before and after; whatever amount the title tells. */
const SlipSlide = memo(({ id }: { readonly id: string }) => {
  const share = useViewState((view) => view.litShare);
  const showShare = useViewState((view) => view.showShare);
  const lightAlteration = useViewState((view) => view.lightAlteration);
  const percent = Math.round(share * 100);
  return (
    <div className="slip-bar-slide">
      <label htmlFor={id}>
        before<span className="visually-hidden"> to after</span>
      </label>
      <input
        id={id}
        type="range"
        min={0}
        max={100}
        step={STEP}
        value={percent}
        aria-describedby={`${id}-title`}
        aria-valuetext={percent === 0 ? "before" : percent === 100 ? "after" : `${percent} % of the way`}
        onChange={(event) => showShare(Number(event.target.value) / 100)}
      />
      <span aria-hidden="true">after</span>
      <button type="button" className="tool" onClick={() => lightAlteration(null)}>
        Done
      </button>
    </div>
  );
});
