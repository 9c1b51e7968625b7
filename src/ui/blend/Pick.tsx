import type { ReactNode } from "react";
import type { Picks } from "../../core/decisions/work";
import { useRun } from "../session/useWork";

export interface PickProps {
  readonly title: string;
  readonly answer: ReactNode;
  readonly borderline?: boolean;
  /** The pick the wearer may set here, and whether she has. */
  readonly pick: keyof Picks;
  readonly own: boolean;
  /** What the planner would pick, said where the wearer has set her own. */
  readonly planners: string | null;
  readonly children: ReactNode;
}

/** One pick: the answer, how sure it is, the sum behind it, and a way to take another. */
export function Pick({ title, answer, borderline, pick, own, planners, children }: PickProps) {
  const run = useRun();
  return (
    <section className="pick" aria-label={title}>
      <h3>
        <span className="pick-name">{title}</span> <span className="pick-answer">{answer}</span>
        {borderline === true && <span className="tag doubt">borderline</span>}
        {own && <span className="tag own">your pick</span>}
      </h3>
      {own && (
        <p className="pick-own">
          {planners !== null && <>The planner would take {planners}. </>}
          <button type="button" className="link-button" onClick={() => run({ kind: "clearPick", pick })}>
            Go back to that
          </button>
        </p>
      )}
      {children}
    </section>
  );
}
