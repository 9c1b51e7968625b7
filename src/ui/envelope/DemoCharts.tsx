import { useMemo } from "react";
import { demoWorks } from "../../document/demo";
import { useRun, useSettledWork } from "../session/useWork";
import { useWorks } from "../works/useWorks";

/** The invented patterns of the demonstrations, with their charts, for trying things out. */
export function DemoCharts() {
  const { blankPattern } = useWorks();
  const open = useSettledWork((work) => work.pattern.name);
  const run = useRun();
  const patterns = useMemo(
    () => [...new Map(demoWorks().map((demo) => [demo.pattern.name, demo.pattern])).values(), blankPattern],
    [blankPattern],
  );
  return (
    <div className="demo-charts" role="group" aria-label="Charts to start from">
      <p className="aside">Start from another chart (this one can be brought back with undo):</p>
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
              {pattern === blankPattern ? "An empty chart" : pattern.name}
            </button>
          ))}
      </div>
    </div>
  );
}
