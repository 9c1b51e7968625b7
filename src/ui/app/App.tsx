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
import { STEPS, useViewState, type Step } from "./viewState";

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
      <button type="button" className="button quiet small ledger-toggle" aria-label={open ? "Close the ledger" : "Open the ledger"} aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? "Close" : "Open the ledger"}
      </button>
      {open && <Ledger />}
    </aside>
  );
});

/** What comes out when she prints: on Tape the measure sheet, on Paper what is chosen there, elsewhere the checklist. */
function usePaperForPrinting(): void {
  useEffect(() => {
    const beforePrint = (): void => {
      const { step, setStep, showSheet } = useViewState.getState();
      flushSync(() => {
        if (step !== "paper") showSheet(step === "tape" ? "measures" : "checklist");
        setStep("paper");
      });
      window.history.replaceState(null, "", "#paper");
    };
    window.addEventListener("beforeprint", beforePrint);
    return () => window.removeEventListener("beforeprint", beforePrint);
  }, []);
}
