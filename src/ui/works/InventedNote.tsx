import { useSettledWork } from "../session/useWork";
import { useWorks } from "./useWorks";

/** Says that what is on the table is made up, and offers the way out in one tap. */
export function InventedNote() {
  const invented = useSettledWork((work) => work.invented);
  const works = useWorks();
  if (!invented) return null;
  return (
    <div className="invented">
      <p>
        <strong>This is a demonstration,</strong> measures and pattern invented. Try anything; it is kept.
      </p>
      <button type="button" className="button main" onClick={works.startBlank}>
        Start with my own measures
      </button>
    </div>
  );
}
