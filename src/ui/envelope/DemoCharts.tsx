import { useMemo } from "react";
import { blankPattern } from "../../document/blank";
import { demoWorks } from "../../document/demo";
import { useRun, useSettledWork } from "../session/useWork";
import * as say from "../../words/envelopeStep";

/** The invented patterns of the demonstrations, with their charts, for trying things out. */
export function DemoCharts() {
  const unit = useSettledWork((work) => work.unit);
  const empty = useMemo(() => blankPattern(unit), [unit]);
  const open = useSettledWork((work) => work.pattern.name);
  const run = useRun();
  // With a chart of her own there is seldom another to start from.
  const isEmpty = useSettledWork((work) => work.pattern.chart.sizes.length === 0);
  const patterns = useMemo(
    () => [...new Map(demoWorks().map((demo) => [demo.pattern.name, demo.pattern])).values(), empty],
    [empty],
  );
  return (
    <details className="demo-charts" open={isEmpty}>
      <summary>{say.startFromAnotherChart}</summary>
      <p className="aside">{say.undoBringsThisOneBack}</p>
      <div className="actions">
        {patterns
          .filter((pattern) => pattern.name !== open)
          .map((pattern) => (
            <button
              key={pattern.name}
              type="button"
              className="button small"
              onClick={() => run({ kind: "setPattern", pattern })}
            >
              {pattern === empty ? say.anEmptyChart : pattern.name}
            </button>
          ))}
      </div>
    </details>
  );
}
