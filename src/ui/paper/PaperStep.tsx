import type { PaperSize } from "../../core/plan/work";
import { useViewState, type Sheet } from "../app/viewState";
import { useRun, useSettledWork } from "../app/useWork";
import { Choice } from "../fields/Choice";
import { ChecklistPaper } from "./ChecklistPaper";
import { MeasurePaper } from "./MeasurePaper";

const SIZES: readonly { readonly value: PaperSize; readonly label: string }[] = [
  { value: "A4", label: "A4" },
  { value: "Letter", label: "Letter" },
];

const SHEETS: readonly { readonly value: Sheet; readonly label: string }[] = [
  { value: "checklist", label: "Checklist" },
  { value: "measures", label: "Measure sheet" },
];

const ABOUT: Readonly<Record<Sheet, string>> = {
  checklist: "The order of work, piece by piece, with boxes to tick. Lay it beside the pattern and cut with it.",
  measures: "Every measure drawn, with boxes to write in. Take it to the mirror, or to whoever holds the tape for you.",
};

export function PaperStep() {
  const paper = useSettledWork((work) => work.paper);
  const sheet = useViewState((view) => view.sheet);
  const showSheet = useViewState((view) => view.showSheet);
  const run = useRun();
  return (
    <>
      <header className="step-head">
        <h2>Paper</h2>
        <p>{ABOUT[sheet]}</p>
      </header>
      <div className="paper-choice">
        <Choice legend="Print" options={SHEETS} value={sheet} onChange={showSheet} />
        <Choice legend="Paper" options={SIZES} value={paper} onChange={(size) => run({ kind: "setPaper", paper: size })} />
      </div>
      {sheet === "checklist" ? <ChecklistPaper /> : <MeasurePaper />}
    </>
  );
}
