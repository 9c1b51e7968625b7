import { memo, useEffect, useRef, useState } from "react";
import { flushSync } from "react-dom";
import { BlendStep } from "../blend/BlendStep";
import { DartsPanel } from "../darts/DartsPanel";
import { EnvelopeStep } from "../envelope/EnvelopeStep";
import { FitStep } from "../fit/FitStep";
import { Ledger } from "../ledger/Ledger";
import { PaperStep } from "../paper/PaperStep";
import { Table } from "../table/Table";
import { TapeStep } from "../tape/TapeStep";
import { Head } from "./Head";
import { Messages } from "./Messages";
import { STEP_TITLES, Thread } from "./Thread";
import { useHashStep } from "./useHashStep";
import { STEPS, useViewState, type Sheet, type Step } from "./viewState";

const PANELS: Readonly<Record<Step, () => React.JSX.Element>> = {
  tape: TapeStep,
  envelope: EnvelopeStep,
  blend: BlendStep,
  darts: DartsPanel,
  fit: FitStep,
  paper: PaperStep,
};

/** One page, one table. */
export function App() {
  useHashStep();
  usePaperForPrinting();
  return (
    <div className="app">
      <a className="button skip" href="#step" onClick={skipToStep}>
        Skip to the work
      </a>
      <Head />
      <Thread />
      <StepPlace />
      <TablePlace />
      <LedgerPlace />
      <Messages />
    </div>
  );
}

/** The address names the step, so the link moves the focus itself. */
function skipToStep(event: React.MouseEvent): void {
  event.preventDefault();
  document.getElementById("step")?.focus();
}

function StepPlace() {
  const step = useViewState((view) => view.step);
  const Panel = PANELS[step];
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
      <Panel />
      <NextStep step={step} />
      <p className="privacy">Your measures stay in this browser. Nothing is sent anywhere.</p>
    </main>
  );
}

/** The thread again where the step ends, so that nobody has to go back up for it. */
function NextStep({ step }: { readonly step: Step }) {
  const next = STEPS[STEPS.indexOf(step) + 1];
  if (next === undefined) return null;
  return (
    <p className="next-step">
      <a href={`#${next}`}>On to {STEP_TITLES[next]}</a>
    </p>
  );
}

const TablePlace = memo(() => (
  <section className="table-place" aria-label="Table with the pattern pieces">
    <Table />
  </section>
));

const LedgerPlace = memo(() => {
  const [open, setOpen] = useState(true);
  return (
    <aside className="ledger-place" aria-label="Ledger of alterations and checks" data-closed={open ? undefined : ""}>
      <button
        type="button"
        className="button quiet small ledger-toggle"
        aria-label={open ? "Close the ledger" : "Open the ledger"}
        aria-expanded={open}
        onClick={() => setOpen(!open)}
      >
        {open ? "Close" : "Open the ledger"}
      </button>
      {open && <Ledger />}
    </aside>
  );
});

/** Sheets that are files to download, not pages of the browser's. */
const FILES: ReadonlySet<Sheet> = new Set(["pieces", "overlay"]);

/**
 * What comes out when she prints: on Tape the measure sheet, on Paper what is chosen there, elsewhere the checklist. In place
 * of a sheet that is a file the checklist is printed, and the sheet then shown again.
 */
function usePaperForPrinting(): void {
  useEffect(() => {
    let shownBefore: Sheet | null = null;
    const beforePrint = (): void => {
      const { step, sheet, setStep, showSheet } = useViewState.getState();
      const away = step !== "paper";
      flushSync(() => {
        if (away) showSheet(step === "tape" ? "measures" : "checklist");
        else if (FILES.has(sheet)) showSheet("checklist");
        setStep("paper");
      });
      if (!away && FILES.has(sheet)) shownBefore = sheet;
      window.history.replaceState(null, "", "#paper");
    };
    const afterPrint = (): void => {
      if (shownBefore !== null) useViewState.getState().showSheet(shownBefore);
      shownBefore = null;
    };
    window.addEventListener("beforeprint", beforePrint);
    window.addEventListener("afterprint", afterPrint);
    return () => {
      window.removeEventListener("beforeprint", beforePrint);
      window.removeEventListener("afterprint", afterPrint);
    };
  }, []);
}
