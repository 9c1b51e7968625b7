import { useEffect, useRef, useState, type ReactNode } from "react";
import { flushSync } from "react-dom";
import { PartBoundary } from "../parts/PartBoundary";
import { arePiecesShown, usePageState } from "../session/pageState";
import { useSideways, useThumbBar } from "../session/useScreen";
import { UndoRedo } from "./UndoRedo";
import * as say from "../../words/page";

/** On a phone, under the thumb wherever she is: back and forth, the pieces, and the ledger one tap off. */
export function PhoneBar() {
  const isHere = useThumbBar();
  return isHere ? <Bar /> : null;
}

function Bar() {
  const areAsked = usePageState(arePiecesShown);
  const full = usePageState((page) => page.piecesFull);
  const isBeside = usePageState((page) => page.ledgerBeside);
  const isInTheirPlace = useSideways() && isBeside;
  const shown = full || (areAsked && !isInTheirPlace);
  const showPieces = usePageState((page) => page.showPieces);
  const fillWithPieces = usePageState((page) => page.fillWithPieces);
  const { atLedger, turn } = useLedgerTurn(full);
  const fill = useEscape(full, () => fillWithPieces(false));
  return (
    <nav className="phone-bar" aria-label={say.phoneBar}>
      <PartBoundary name={say.undoAndRedo} isSmall>
        <UndoRedo />
      </PartBoundary>
      <button
        type="button"
        className="bar-button"
        aria-label={shown ? say.putPiecesAway : say.showPieces}
        aria-expanded={shown}
        aria-controls="table-place"
        onClick={() => showPieces(!shown)}
      >
        <Icon>
          <path d="M7 3 L4 5 L5 9 L5 17 L15 17 L15 9 L16 5 L13 3 C12 6 8 6 7 3 Z" />
          <path strokeDasharray="1.6 1.8" d="M8.4 17 L9.4 11.5 L10.4 17" />
        </Icon>
        <span className="bar-word">{say.pieces}</span>
      </button>
      <button
        ref={fill}
        type="button"
        className="bar-button"
        aria-label={full ? say.leaveFull : say.fillWithPieces}
        aria-pressed={full}
        onClick={() => fillWithPieces(!full)}
      >
        <Icon>
          <path
            strokeDasharray="2.6 1.7"
            d={
              full
                ? "M3 8 L8 8 L8 3 M12 3 L12 8 L17 8 M17 12 L12 12 L12 17 M8 17 L8 12 L3 12"
                : "M3 8 L3 3 L8 3 M12 3 L17 3 L17 8 M17 12 L17 17 L12 17 M8 17 L3 17 L3 12"
            }
          />
        </Icon>
        <span className="bar-word">{full ? say.leave : say.full}</span>
      </button>
      <button
        type="button"
        className="bar-button"
        aria-label={atLedger ? say.backToStep : say.toLedger}
        aria-pressed={atLedger}
        onClick={turn}
      >
        <Icon>
          <path d="M4.5 3 L15.5 3 L15.5 16 L13.3 17.4 L11.1 16 L8.9 17.4 L6.7 16 L4.5 17.4 Z" />
          <path strokeDasharray="2.6 1.7" d="M7 7 L13 7 M7 11 L13 11" />
        </Icon>
        <span className="bar-word">{atLedger ? say.step : say.toLedger}</span>
      </button>
    </nav>
  );
}

function Icon({ children }: { readonly children: ReactNode }) {
  return (
    <svg viewBox="0 0 20 20" width="22" height="22" aria-hidden="true" focusable="false">
      <g fill="none" stroke="currentColor" strokeWidth="1.6" strokeLinecap="round" strokeLinejoin="round">
        {children}
      </g>
    </svg>
  );
}

/** Escape leaves the full screen; where the pieces went and took the focus along, it goes to the way back to them. */
function useEscape(full: boolean, leave: () => void) {
  const button = useRef<HTMLButtonElement>(null);
  const last = useRef(full);
  const leaveNow = useRef(leave);
  useEffect(() => {
    leaveNow.current = leave;
  });
  useEffect(() => {
    const wasFull = last.current;
    last.current = full;
    if (!full) {
      const { activeElement } = document;
      if (wasFull && activeElement?.checkVisibility() !== true) button.current?.focus();
      return undefined;
    }
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.key === "Escape" && !event.defaultPrevented) leaveNow.current();
    };
    document.addEventListener("keydown", onKeyDown);
    return () => document.removeEventListener("keydown", onKeyDown);
  }, [full]);
  return button;
}

/** To the ledger, and back to where she was. Pieces on the full screen hide it. */
function useLedgerTurn(isHidden: boolean) {
  const isInView = useLedgerIsInView();
  const atLedger = isInView && !isHidden;
  const askForLedger = usePageState((page) => page.askForLedger);
  const from = useRef<number | null>(null);
  const turn = (): void => {
    if (!atLedger) from.current = window.scrollY;
    flushSync(() => askForLedger(!atLedger));
    const place = document.getElementById(atLedger ? "step" : "ledger-place");
    if (atLedger && from.current !== null) window.scrollTo(0, from.current);
    else place?.scrollIntoView();
    place?.focus({ preventScroll: true });
  };
  return { atLedger, turn };
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
