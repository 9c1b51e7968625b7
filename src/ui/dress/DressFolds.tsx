import { useState, type ReactNode } from "react";
import { FOLD_TITLES, type DressFold } from "../../words/dressStep";
import { Fractions } from "../fields/Fractions";
import { useWork } from "../session/useWork";

export interface FoldProps {
  readonly fold: DressFold;
  /** In one line what stands in it, for when it is shut. */
  readonly outcome: string;
  /** Something in it is to be looked at. */
  readonly isDoubt?: boolean;
  /** How it stands before she opens or shuts it. */
  readonly isOpen?: boolean;
  readonly children: ReactNode;
}

/** A part of the dress, folded to its outcome. What could not be read, or is doubted, opens it. */
export function DressFoldView({ fold, outcome, isDoubt = false, isOpen = false, children }: FoldProps) {
  const fields = fold === "closure" ? "pattern.closure." : `dress.${fold}.`;
  const isUnread = useWork(({ unread }) => Object.keys(unread).some((field) => field.startsWith(fields)));
  const calls = isDoubt || isUnread;
  const [open, setOpen] = useState(isOpen || calls);
  const [called, setCalled] = useState(calls);
  if (called !== calls) {
    setCalled(calls);
    if (calls) setOpen(true);
  }
  return (
    <details
      className="dress-fold"
      data-doubt={isDoubt ? "" : undefined}
      open={open}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        <h3>{FOLD_TITLES[fold]}</h3>{" "}
        <span className="aside">
          <Fractions text={outcome} />
        </span>
      </summary>
      <div className="dress-inside">{children}</div>
    </details>
  );
}
