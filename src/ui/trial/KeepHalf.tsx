import { useState } from "react";
import type { Half } from "../../core/decisions/alteration";
import type { Work } from "../../core/decisions/work";
import { keepHalf } from "../../core/plan/halfEdit";
import { KEEP_HEAD, keepFailureSentence, keepWords } from "../../words/halves";
import { useRun } from "../session/useWork";

const KEPT: readonly (Half | "mean")[] = ["left", "right", "mean"];

/** Of halves that were tried two ways, the one that is right is kept for both; in one step, or refused by name. */
export function KeepHalf({ work }: { readonly work: Work }) {
  const run = useRun();
  const [refused, setRefused] = useState<{ readonly of: Work; readonly why: string } | null>(null);
  const isApart = work.picks.halfCups !== undefined || work.alterations.some(({ half }) => half !== undefined);
  if (!isApart) return null;
  const keep = (which: Half | "mean"): void => {
    const command = keepHalf(work, which);
    if (command.ok) return run(command.value);
    setRefused({ of: work, why: keepFailureSentence(command.failure, work.unit) });
  };
  return (
    <div className="keep-half" role="group" aria-label={KEEP_HEAD}>
      {KEPT.map((which) => (
        <button key={which} type="button" className="button small" onClick={() => keep(which)}>
          {keepWords(which)}
        </button>
      ))}
      <p role="alert" className="field-error">
        {refused?.of === work ? refused.why : ""}
      </p>
    </div>
  );
}
