import { memo, useId } from "react";
import type { LengthUnit } from "../../core/decisions/work";
import type { PlannedAlteration } from "../../core/plan/plan";
import { plannedTitle } from "../../words/ledger";
import { useViewState } from "../session/viewState";
import { SLIDE_WORDS, slideValue } from "../../words/table";
import { Fractions } from "../fields/Fractions";

/** Per cent of the way that a press of an arrow key goes. */
const STEP = 5;

/** Over the table while a slip is lit: from the piece before it to the piece after it, by hand. */
export function SlipBar({ planned, unit }: { readonly planned: PlannedAlteration; readonly unit: LengthUnit }) {
  const id = useId();
  return (
    <div className="slip-bar">
      <p className="slip-bar-title" id={`${id}-title`}>
        <Fractions text={plannedTitle(planned, unit)} />
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
  return (
    <div className="slip-bar-slide">
      <label htmlFor={id}>
        {SLIDE_WORDS.before}
        <span className="visually-hidden">{SLIDE_WORDS.toAfter}</span>
      </label>
      <input
        id={id}
        type="range"
        min={0}
        max={100}
        step={STEP}
        value={Math.round(share * 100)}
        aria-describedby={`${id}-title`}
        aria-valuetext={slideValue(share)}
        onChange={(event) => showShare(Number(event.target.value) / 100)}
      />
      <span aria-hidden="true">{SLIDE_WORDS.after}</span>
      <button
        type="button"
        className="tool"
        onClick={(event) => {
          // The button goes: whoever works by keys is left on the table.
          event.currentTarget.closest(".table")?.querySelector<SVGElement>(".table-sheet")?.focus();
          lightAlteration(null);
        }}
      >
        {SLIDE_WORDS.done}
      </button>
    </div>
  );
});
