import "./tissue.css";
import { useEffect, useState, type ReactNode } from "react";
import { printedNestOf } from "../../core/plan/planOf";
import { sourceAbout, sourceWords } from "../../words/pieceSource";
import { PartPlace } from "../parts/PartPlace";
import { usePageState } from "../session/pageState";
import { useSettledWork } from "../session/useWork";
import { OWN_PATTERN } from "./ownPatternPart";
import { TapeDoor } from "./TapeDoor";
import { useTissueView } from "./tissueView";
import * as say from "../../words/tissueStep";

/** Where the pieces come from, and the two ways to bring in her own. */
export function TissueStep() {
  const nest = useSettledWork(printedNestOf);
  const source = nest.ok ? nest.value.source : "standIn";
  const tissue = useSettledWork((work) => work.pattern.tissue);
  const own = useSettledWork((work) => work.pattern.own);
  const count = Object.values(tissue?.pieces ?? {}).reduce((sum, lengths) => sum + Object.keys(lengths).length, 0);
  const hasUnread = useSettledWork((work) => Object.keys(work.unread).some((field) => field.startsWith("tissue.")));
  const hasChart = useSettledWork((work) => work.pattern.chart.sizes.length > 0);
  const isWanted = useTissueView((view) => view.wanted !== null);
  return (
    <>
      <header className="step-head">
        <h2>{say.yourTissue}</h2>
        <p className="tissue-source">
          <b>{sourceWords(source)}.</b> {sourceAbout(source)}
        </p>
      </header>
      <Door
        title={say.byTapeOnTheTissue}
        answer={
          !hasChart
            ? say.needsChart
            : tissue === undefined
              ? say.nothingMeasuredYet
              : say.measuredAlongSize(count, tissue.size)
        }
        isOpen={hasUnread || isWanted}
      >
        {() => <TapeDoor />}
      </Door>
      <Door
        title={say.fromAFile}
        answer={own === undefined ? say.svgOrDxf : own.file}
        isOpen={own !== undefined && own.inUse !== true}
        opensForFile
      >
        {() => (
          <PartPlace part={OWN_PATTERN} name={say.piecesFromAFile}>
            {(OwnPatternPanel) => <OwnPatternPanel />}
          </PartPlace>
        )}
      </Door>
    </>
  );
}

interface DoorProps {
  readonly title: string;
  /** What came of it, while it is folded. */
  readonly answer: string;
  /** Whether it stands open at first. */
  readonly isOpen: boolean;
  /** Whether a file that is held over the page opens it, so that it can be dropped. */
  readonly opensForFile?: boolean;
  readonly children: () => ReactNode;
}

/** One way in, folded to its answer. */
function Door({ title, answer, isOpen, opensForFile = false, children }: DoorProps) {
  const isDropped = usePageState((page) => opensForFile && page.dropped !== null);
  const [open, setOpen] = useState(isOpen || isDropped);
  // A file that is let go is read behind this door.
  if (isDropped && !open) setOpen(true);
  useEffect(() => {
    if (!opensForFile) return undefined;
    const onFile = (event: DragEvent): void => {
      if (event.dataTransfer?.types.includes("Files") === true) setOpen(true);
    };
    window.addEventListener("dragenter", onFile);
    return () => window.removeEventListener("dragenter", onFile);
  }, [opensForFile]);
  return (
    <details className="tissue-way" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <h3>{title}</h3> <span className="aside">{answer}</span>
      </summary>
      {open && children()}
    </details>
  );
}
