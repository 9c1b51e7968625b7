import { useViewState } from "../session/viewState";
import { SEWN } from "./sewnPart";
import { useMemo, useState } from "react";
import { isBasque, isFrontPiece } from "../../core/pattern/pieceGroups";
import type { Piece } from "../../core/pattern/piece";
import { useSettledPlan } from "../session/usePlan";
import { PartPlace } from "../parts/PartPlace";
import * as say from "../../words/sewnView";

/** The pieces of the front that lie over the bust. */
const overBust = (pieces: readonly Piece[]): readonly Piece[] =>
  pieces.filter(({ name }) => isFrontPiece(name) && !isBasque(name) && name !== "frontBand");

/** The sewn front of the plan beside the one that the wearer's cup asks for; sewn only once it is asked for. */
export function SewnFront() {
  const plan = useSettledPlan();
  const [open, setOpen] = useState(false);
  const half = useViewState((view) => view.half);
  const front = useMemo(() => (plan.ok ? overBust(plan.value[half].pieces) : []), [plan, half]);
  const wanted = useMemo(
    () => (plan.ok && plan.value.wanted !== null ? overBust(plan.value.wanted) : undefined),
    [plan],
  );
  if (front.length === 0) return null;
  return (
    <details className="sewn-front" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{say.seeItSewn}</summary>
      {open && (
        <PartPlace part={SEWN} name={say.sewnView} placeholder={<p className="field-hint">{say.sewing}</p>}>
          {(SewnView) => <SewnView front={front} label={say.theFrontSewn} compareWith={wanted} />}
        </PartPlace>
      )}
    </details>
  );
}
