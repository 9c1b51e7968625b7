import { useState, type ReactNode } from "react";
import type { Picks } from "../../core/decisions/decided";
import type { Surety } from "../../core/sureness/surety";
import { SURETY_WORDS } from "../../words/surety";
import { useRun, useSettledWork } from "../session/useWork";
import * as say from "../../words/blendStep";

export interface PickProps {
  readonly title: string;
  readonly answer: ReactNode;
  /** How sure the answer is; null where nothing tells it, or it is her own. */
  readonly surety: Surety | null;
  /** The pick the wearer may set here, and whether she has. */
  readonly pick: keyof Picks;
  readonly own: boolean;
  /** What the planner would pick, said where the wearer has set her own. */
  readonly planners: string | null;
  readonly children: ReactNode;
}

/** One pick in a line: the answer and how sure it is; folded under it the sum behind it, and a way to take another. */
export function Pick({ title, answer, surety, pick, own, planners, children }: PickProps) {
  const run = useRun();
  const unread = useSettledWork((work) => work.unread[`pick.${pick}`] !== undefined);
  // An entry that could not be read must not lie out of sight.
  const [open] = useState(unread);
  return (
    <section className="pick" aria-label={title}>
      <details open={open}>
        <summary>
          <h3>
            <span className="pick-name">{title}</span> <span className="pick-answer">{answer}</span>
          </h3>
          {own ? (
            <span className="tag own">{say.yourPick}</span>
          ) : (
            surety !== null && (
              <span className="pick-surety" data-surety={surety}>
                {SURETY_WORDS[surety]}
              </span>
            )
          )}
        </summary>
        <div className="pick-inside">
          {own && (
            <p className="pick-own">
              {planners !== null && <>{say.thePlannerWouldTake(planners)}</>}
              <button type="button" className="link-button" onClick={() => run({ kind: "clearPick", pick })}>
                {say.goBackToThat}
              </button>
            </p>
          )}
          {children}
        </div>
      </details>
    </section>
  );
}
