import type { Work } from "../core/decisions/work";
import * as say from "../words/printedChecklist";

/** What the sheet is of, and whom it is made for where that was said. */
export const WorkName = ({ work: { name, wearer } }: { readonly work: Work }) => (
  <h3>
    {name}
    {wearer !== undefined && <span className="pc-wearer">{say.forWearer(wearer)}</span>}
  </h3>
);
