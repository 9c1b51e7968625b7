import { printedNestOf } from "../../core/plan/planOf";
import type { PaperSize } from "../../core/decisions/paperChoice";
import "./paper.css";
import { sheetAbout, SHEET_NAMES } from "../../words/paperChoices";
import { usePageState, type Sheet } from "../session/pageState";
import { useRun, useSettledWork } from "../session/useWork";
import { Choice } from "../fields/Choice";
import { ChecklistPaper } from "./ChecklistPaper";
import { DressPaper } from "./DressPaper";
import { MeasurePaper } from "./MeasurePaper";
import { SincePaper } from "./SincePaper";
import { TrialPaper } from "./TrialPaper";
import { TrueScalePaper } from "./TrueScalePaper";
import * as say from "../../words/paperStep";

const SIZES: readonly { readonly value: PaperSize; readonly label: string }[] = [
  { value: "A4", label: "A4" },
  { value: "Letter", label: "Letter" },
];

const SHEETS = (["checklist", "pieces", "overlay", "dress", "since", "trial", "measures"] as const).map((value) => ({
  value,
  label: SHEET_NAMES[value],
}));

export function PaperStep() {
  const paper = useSettledWork((work) => work.paper);
  const chosen = usePageState((page) => page.sheet);
  // What changed since a trial can be asked only where there is one.
  const hasTrials = useSettledWork(({ trials }) => trials !== undefined && trials.length > 0);
  const hasDress = useSettledWork(({ dress }) => dress !== undefined);
  const offered = SHEETS.filter(({ value }) => (value === "since" ? hasTrials : value !== "dress" || hasDress));
  const sheet = offered.some(({ value }) => value === chosen) ? chosen : "checklist";
  const showSheet = usePageState((page) => page.showSheet);
  const nest = useSettledWork(printedNestOf);
  const source = nest.ok ? nest.value.source : "standIn";
  const run = useRun();
  const isFile = sheet === "pieces" || sheet === "overlay";
  return (
    <>
      <header className="step-head">
        <h2>{say.paper}</h2>
        <p>{sheetAbout(sheet, source)}</p>
      </header>
      <div className="paper-choice">
        <Choice legend={say.print} options={offered} value={sheet} onChange={showSheet} />
        {!isFile && (
          <Choice
            legend={say.paper}
            options={SIZES}
            value={paper}
            onChange={(size) => run({ kind: "setPaper", paper: size })}
          />
        )}
      </div>
      <SheetPaper sheet={sheet} />
    </>
  );
}

function SheetPaper({ sheet }: { readonly sheet: Sheet }) {
  switch (sheet) {
    case "checklist":
      return <ChecklistPaper />;
    case "pieces":
    case "overlay":
      return <TrueScalePaper key={sheet} kind={sheet} />;
    case "dress":
      return <DressPaper />;
    case "since":
      return <SincePaper />;
    case "trial":
      return <TrialPaper />;
    case "measures":
      return <MeasurePaper />;
  }
}
