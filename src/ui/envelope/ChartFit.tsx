import { lazy, Suspense, useState } from "react";
import { CHART_FIT_TITLE } from "../../words/chartFit";

/** Fetched beside the page, so that the first view need not wait for it, and at once, so that nothing is asked for later. */
const view = import("./ChartFitView");
const ChartFitView = lazy(async () => ({ default: (await view).ChartFitView }));

/** What the chart fits, folded away; counted only once it is asked for. */
export function ChartFit() {
  const [open, setOpen] = useState(false);
  return (
    <details className="chart-fit-fold" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{CHART_FIT_TITLE}</summary>
      {open && (
        <Suspense fallback={<p className="field-hint">Counting…</p>}>
          <ChartFitView />
        </Suspense>
      )}
    </details>
  );
}
