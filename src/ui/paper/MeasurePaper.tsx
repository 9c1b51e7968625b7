import { measuresOf } from "../../core/measures/tape";
import { MeasureSheet } from "../../print/MeasureSheet";
import { useSettledWork } from "../session/useWork";
import { useChoices } from "./choicesState";
import { PrintRow } from "./PrintRow";
import { SheetPreview } from "./SheetPreview";
import * as say from "../../words/paperStep";

/** The measure sheet: blank, or with what was measured before beside the boxes. */
export function MeasurePaper() {
  const work = useSettledWork((current) => current);
  const { lastTime, choose } = useChoices((choices) => choices);
  const taken = Object.keys(measuresOf(work.tapes)).length > 0;
  return (
    <>
      <PrintRow label={say.printTheMeasureSheet} paper={work.paper} />
      {taken && (
        <label>
          <input type="checkbox" checked={lastTime} onChange={(event) => choose({ lastTime: event.target.checked })} />{" "}
          {say.withLastTime}
        </label>
      )}
      <SheetPreview>
        <MeasureSheet work={work} lastTime={taken && lastTime} />
      </SheetPreview>
    </>
  );
}
