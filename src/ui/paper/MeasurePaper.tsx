import { measuresOf } from "../../core/measures/tape";
import { MeasureSheet } from "../../print/MeasureSheet";
import { useSettledWork } from "../session/useWork";
import { useChoices } from "./choicesState";
import { PrintRow } from "./PrintRow";
import { SheetPreview } from "./SheetPreview";

/** The measure sheet: blank, or with what was measured before beside the boxes. */
export function MeasurePaper() {
  const work = useSettledWork((current) => current);
  const { lastTime, choose } = useChoices((choices) => choices);
  const taken = Object.keys(measuresOf(work.tapes)).length > 0;
  return (
    <>
      <PrintRow label="Print the measure sheet" paper={work.paper} />
      {taken && (
        <label>
          <input type="checkbox" checked={lastTime} onChange={(event) => choose({ lastTime: event.target.checked })} />{" "}
          With what was measured last time
        </label>
      )}
      <SheetPreview>
        <MeasureSheet work={work} lastTime={taken && lastTime} />
      </SheetPreview>
    </>
  );
}
