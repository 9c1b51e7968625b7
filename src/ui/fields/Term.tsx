import { useId, useState, type ReactNode } from "react";
import { TERMS, type TermName } from "../../words/terms/glossary";

/** A term that says on a tap what it means, where it stands. */
export function Term({ name, children }: { readonly name: TermName; readonly children: ReactNode }) {
  const id = useId();
  const [open, setOpen] = useState(false);
  return (
    <span className="term">
      <button
        type="button"
        className="term-name"
        aria-expanded={open}
        aria-controls={open ? id : undefined}
        onClick={(event) => {
          // Not every browser does so itself; what has the focus lies over what follows, and is shut when it is left.
          event.currentTarget.focus();
          setOpen(!open);
        }}
        onBlur={() => setOpen(false)}
        onKeyDown={(event) => {
          if (event.key !== "Escape" || !open) return;
          event.stopPropagation();
          setOpen(false);
        }}
      >
        {children}
      </button>
      {open && (
        <span id={id} className="term-said" role="note">
          {TERMS[name]}
        </span>
      )}
    </span>
  );
}
