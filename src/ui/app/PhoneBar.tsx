import { useEffect, useState } from "react";
import { usePageState } from "../session/pageState";

/** On a phone, under the thumb wherever she is: the pieces put away or shown, and the ledger one tap off. */
export function PhoneBar() {
  const shown = usePageState((page) => page.piecesShown);
  const showPieces = usePageState((page) => page.showPieces);
  const openLedger = usePageState((page) => page.openLedger);
  const atLedger = useLedgerIsInView();
  return (
    <nav className="phone-bar" aria-label="Pieces and ledger">
      <button
        type="button"
        className="button"
        aria-expanded={shown}
        aria-controls="table-place"
        onClick={() => showPieces(!shown)}
      >
        {shown ? "Put the pieces away" : "Show the pieces"}
      </button>
      <button
        type="button"
        className="button"
        onClick={() => {
          if (!atLedger) openLedger(true);
          goTo(atLedger ? "step" : "ledger-place");
        }}
      >
        {atLedger ? "Back to the step" : "Ledger"}
      </button>
    </nav>
  );
}

function goTo(id: string): void {
  const place = document.getElementById(id);
  place?.scrollIntoView();
  place?.focus({ preventScroll: true });
}

/** Whether the ledger fills most of what is seen. */
function useLedgerIsInView(): boolean {
  const [seen, setSeen] = useState(false);
  useEffect(() => {
    const ledger = document.getElementById("ledger-place");
    if (ledger === null || typeof IntersectionObserver === "undefined") return undefined;
    // Its head or any of it above the last third of the screen.
    const observer = new IntersectionObserver((all) => setSeen(all.at(-1)?.isIntersecting === true), {
      rootMargin: "0px 0px -40% 0px",
    });
    observer.observe(ledger);
    return () => observer.disconnect();
  }, []);
  return seen;
}
