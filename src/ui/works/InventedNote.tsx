import { useSettledWork } from "../session/useWork";
import { useWorks } from "./useWorks";
import { Sentence } from "../fields/Sentence";
import * as say from "../../words/worksMenu";

/** Says that what is on the table is made up, and offers the way out in one tap. */
export function InventedNote() {
  const invented = useSettledWork((work) => work.invented);
  const works = useWorks();
  if (!invented) return null;
  return (
    <div className="invented">
      <p>
        <Sentence text={say.demonstration} parts={{ lead: <strong>{say.demonstrationLead}</strong> }} />
      </p>
      <button type="button" className="button main" onClick={works.startBlank}>
        {say.startWithMyOwnMeasures}
      </button>
    </div>
  );
}
