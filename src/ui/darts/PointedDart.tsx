import { lazy, Suspense, useState } from "react";
import type { PointedDartProps } from "./PointedDartQuestions";

/** Fetched beside the page, so that the first view need not wait for it, and at once, so that nothing is asked for later. */
const questions = import("./PointedDartQuestions");
const Questions = lazy(async () => ({ default: (await questions).PointedDartQuestions }));

/** The guided thing: what is seen of a sewn bust dart, and whole answers to it. */
export function PointedDart({ dart, work }: PointedDartProps) {
  const [open, setOpen] = useState(false);
  return (
    <details className="pointed" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Sewn, it comes out wrong</summary>
      {open && (
        <Suspense fallback={<p className="field-hint">One moment…</p>}>
          <Questions dart={dart} work={work} />
        </Suspense>
      )}
    </details>
  );
}
