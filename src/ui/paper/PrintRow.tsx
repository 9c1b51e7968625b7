/** The button that prints, and what to set in the browser's own dialogue. */
import type { PaperSize } from "../../core/decisions/paperChoice";
export function PrintRow({ label, paper }: { readonly label: string; readonly paper: PaperSize }) {
  return (
    <>
      <p>
        <button type="button" className="button main" onClick={() => window.print()}>
          {label}
        </button>
      </p>
      <p className="aside">In the print dialogue choose {paper} and 100 % (“actual size”), not “fit to page”.</p>
    </>
  );
}
