/** The button that prints, and what to set in the browser's own dialogue. */
import type { PaperSize } from "../../core/decisions/paperChoice";
import * as say from "../../words/paperStep";
export function PrintRow({ label, paper }: { readonly label: string; readonly paper: PaperSize }) {
  return (
    <>
      <p>
        <button type="button" className="button main" onClick={() => window.print()}>
          {label}
        </button>
      </p>
      <p className="aside">{say.printDialogue(paper)}</p>
    </>
  );
}
