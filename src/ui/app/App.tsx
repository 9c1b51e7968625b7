import { memo, useEffect, useRef, useState } from "react";
import { flushSync } from "react-dom";
import { endGesture } from "../../store/workStore";
import { fetchAhead } from "../parts/fetchAhead";
import { alreadyHere, useLaterState, type Later } from "../parts/later";
import { PartBoundary } from "../parts/PartBoundary";
import { PartPlace } from "../parts/PartPlace";
import { AHEAD, LEDGER, STEP_PARTS, TABLE } from "./parts";
import { TapeStep } from "../tape/TapeStep";
import { Head } from "./Head";
import { Messages } from "./Messages";
import { PageFaults } from "./PageFaults";
import { PhoneBar } from "./PhoneBar";
import { Said } from "./Said";
import { arePiecesShown, STEPS, usePageState, type Sheet, type Step } from "../session/pageState";
import { useWorkStore } from "../session/useWork";
import { Thread } from "./Thread";
import { useFileDrop } from "./useFileDrop";
import { useTitle } from "./useTitle";
import { useHashStep } from "./useHashStep";
import { useKeyboardRoom } from "./useKeyboardRoom";
import * as say from "../../words/page";

const PANELS: Readonly<Record<Step, Later<() => React.JSX.Element>>> = { tape: alreadyHere(TapeStep), ...STEP_PARTS };

export interface AppProps {
  /** Heard when all parts have been fetched ahead, as far as they came. */
  readonly onAllHere?: () => void;
}

/** One page, one table. */
export function App({ onAllHere }: AppProps) {
  useHashStep();
  useTitle();
  useFileDrop();
  usePaperForPrinting();
  useEntryTakenByPress();
  useKeyboardRoom();
  const inTurn = useFirstStepIsUp(onAllHere);
  return (
    <div className="app">
      <a className="button skip" href="#step" onClick={skipToStep}>
        {say.skip}
      </a>
      <Head />
      <div className="thread-place">
        <PartBoundary name={say.PARTS.steps}>
          <Thread />
        </PartBoundary>
      </div>
      <StepPlace />
      <TablePlace inTurn={inTurn} />
      <LedgerPlace inTurn={inTurn} />
      <PartBoundary name={say.PARTS.phoneBar} isSmall>
        <PhoneBar />
      </PartBoundary>
      <Said />
      <div className="messages">
        <PageFaults />
        <PartBoundary name={say.PARTS.messages}>
          <Messages />
        </PartBoundary>
      </div>
    </div>
  );
}

/** The step that the address named at first is loaded before the table and the ledger, and everything else after them. */
function useFirstStepIsUp(onAllHere: AppProps["onAllHere"]): boolean {
  const step = usePageState((page) => page.step);
  const [first] = useState(step);
  const isUp = useLaterState(PANELS[first]).kind !== "waiting";
  const allHere = useRef(onAllHere);
  useEffect(() => {
    if (!isUp) return undefined;
    // She may print from anywhere, and the browser then waits for nothing: the sheets come beside the table, not after it.
    void PANELS.paper.fetchAhead();
    const going = new AbortController();
    void fetchAhead(AHEAD, going).then(() => {
      if (!going.signal.aborted) allHere.current?.();
    });
    return () => going.abort();
  }, [isUp]);
  return isUp;
}

/** The address names the step, so the link moves the focus itself. */
function skipToStep(event: React.MouseEvent): void {
  event.preventDefault();
  document.getElementById("step")?.focus();
}

function StepPlace() {
  const step = usePageState((page) => page.step);
  const place = useRef<HTMLElement>(null);
  const last = useRef(step);

  useEffect(() => {
    if (last.current === step) return;
    last.current = step;
    const main = place.current;
    if (main === null) return;
    // The link that led here may have gone with the step it stood in.
    if (document.activeElement === document.body) main.focus({ preventScroll: true });
    if (main.getBoundingClientRect().top < 0) main.scrollIntoView();
  }, [step]);

  return (
    <main id="step" ref={place} className="step" tabIndex={-1} data-step={step} key={step}>
      <PrintedTooSoon />
      <PartPlace part={PANELS[step]} name={say.stepTitles[step]}>
        {(Panel) => <Panel />}
      </PartPlace>
      <NextStep step={step} />
      <p className="privacy">{say.privacy}</p>
    </main>
  );
}

/** The thread again where the step ends, so that nobody has to go back up for it. */
function NextStep({ step }: { readonly step: Step }) {
  const next = STEPS[STEPS.indexOf(step) + 1];
  if (next === undefined) return null;
  return (
    <p className="next-step">
      <a href={`#${next}`}>{say.onTo(say.stepTitles[next])}</a>
    </p>
  );
}

interface PlaceProps {
  readonly inTurn: boolean;
}

const TablePlace = memo(({ inTurn }: PlaceProps) => {
  const shown = usePageState(arePiecesShown);
  const full = usePageState((page) => page.piecesFull);
  return (
    <section
      id="table-place"
      className="table-place"
      aria-label={say.tablePlace}
      data-away={shown || full ? undefined : ""}
      data-shown={shown && !full ? "" : undefined}
      data-full={full ? "" : undefined}
    >
      <PartPlace part={TABLE} name={say.PARTS.table} inTurn={inTurn}>
        {(Table) => <Table />}
      </PartPlace>
    </section>
  );
});
TablePlace.displayName = "TablePlace";

const LedgerPlace = memo(({ inTurn }: PlaceProps) => {
  const open = usePageState((page) => page.ledgerOpen);
  const openLedger = usePageState((page) => page.openLedger);
  const isBeside = usePageState((page) => page.ledgerBeside);
  return (
    <aside
      id="ledger-place"
      className="ledger-place"
      aria-label={say.ledgerPlace}
      tabIndex={-1}
      data-closed={open ? undefined : ""}
      data-beside={isBeside ? "" : undefined}
    >
      <button
        type="button"
        className="button quiet small ledger-toggle"
        aria-label={open ? say.closeLedger : say.openLedger}
        aria-expanded={open}
        onClick={() => openLedger(!open)}
      >
        {open ? say.close : say.openLedger}
      </button>
      {open && (
        <PartPlace part={LEDGER} name={say.PARTS.ledger} inTurn={inTurn}>
          {(Ledger) => <Ledger />}
        </PartPlace>
      )}
    </aside>
  );
});
LedgerPlace.displayName = "LedgerPlace";

/** On the paper in place of a sheet that was not loaded yet, and on the page until she prints again. */
function PrintedTooSoon() {
  const tooSoon = usePageState((page) => page.printedTooSoon);
  if (!tooSoon) return null;
  return (
    <p className="note doubt print-instead" role="status">
      {say.printedTooSoon}
    </p>
  );
}

/**
 * What she has typed is taken before anything she presses is done with it: a file, a copy, a sheet. Not every browser takes the
 * focus from a field when a button is pressed.
 */
function useEntryTakenByPress(): void {
  const store = useWorkStore();
  useEffect(() => {
    const onClick = ({ target }: MouseEvent): void => {
      // A key of our own types on in the field.
      if (target instanceof Element && target.closest(".drawn-keys") !== null) return;
      if (target === document.activeElement || store.getState().gesture?.hand.kind !== "keys") return;
      flushSync(() => endGesture(store));
    };
    document.addEventListener("click", onClick, true);
    return () => document.removeEventListener("click", onClick, true);
  }, [store]);
}

/** Sheets that are files to download, not pages of the browser's. */
const FILES: ReadonlySet<Sheet> = new Set(["pieces", "overlay"]);

/**
 * What comes out when she prints: on Tape the measure sheet, on Paper what is chosen there, elsewhere the checklist. In place
 * of a sheet that is a file the checklist is printed, and the sheet then shown again.
 */
function usePaperForPrinting(): void {
  const store = useWorkStore();
  useEffect(() => {
    let shownBefore: Sheet | null = null;
    const beforePrint = (): void => {
      const { step, sheet, setStep, showSheet, setPrintedTooSoon } = usePageState.getState();
      const away = step !== "paper";
      // The browser waits for nothing: what is to be printed is here by now or is not printed.
      const isHere = PANELS.paper.get().kind === "here";
      flushSync(() => {
        // What is being typed is on the sheet too.
        endGesture(store);
        if (away) showSheet(step === "tape" ? "measures" : "checklist");
        else if (FILES.has(sheet)) showSheet("checklist");
        setStep("paper");
        setPrintedTooSoon(!isHere);
      });
      if (!away && FILES.has(sheet)) shownBefore = sheet;
      window.history.replaceState(null, "", "#paper");
    };
    const afterPrint = (): void => {
      if (shownBefore !== null) usePageState.getState().showSheet(shownBefore);
      shownBefore = null;
    };
    window.addEventListener("beforeprint", beforePrint);
    window.addEventListener("afterprint", afterPrint);
    return () => {
      window.removeEventListener("beforeprint", beforePrint);
      window.removeEventListener("afterprint", afterPrint);
    };
  }, [store]);
}
