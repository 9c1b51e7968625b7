import { CHART_FIT } from "./chartFitPart";
import { useState } from "react";
import { CHART_FIT_TITLE } from "../../words/chartFit";
import { PartPlace } from "../parts/PartPlace";
import * as say from "../../words/envelopeStep";

/** What the chart fits, folded away; counted only once it is asked for. */
export function ChartFit() {
  const [open, setOpen] = useState(false);
  return (
    <details className="chart-fit-fold" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{CHART_FIT_TITLE}</summary>
      {open && (
        <PartPlace part={CHART_FIT} name={say.whatChartFits} placeholder={<p className="field-hint">{say.counting}</p>}>
          {(ChartFitView) => <ChartFitView />}
        </PartPlace>
      )}
    </details>
  );
}
