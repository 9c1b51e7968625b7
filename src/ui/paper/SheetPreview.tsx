import { useId, useState, type ReactNode } from "react";
import * as say from "../../words/paperStep";

/** The sheet as it will be printed: its head, and all of it on a tap. What is printed is always all of it. */
export function SheetPreview({ children }: { readonly children: ReactNode }) {
  const id = useId();
  const [whole, setWhole] = useState(false);
  return (
    <>
      <div id={id} className="paper-preview kept-paper" data-folded={whole ? undefined : ""}>
        {children}
      </div>
      <p className="paper-whole">
        <button
          type="button"
          className="button"
          aria-expanded={whole}
          aria-controls={id}
          onClick={() => setWhole(!whole)}
        >
          {whole ? say.showItsHeadAlone : say.showTheWholeSheet}
        </button>
      </p>
    </>
  );
}
