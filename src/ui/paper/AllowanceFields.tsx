import { STAND_TO_ALLOW } from "../../core/cutting/buttons";
import { isOwnAllowance, USUAL_ALLOWANCES } from "../../core/cutting/usualAllowances";
import { useId, useRef, useState } from "react";
import { type Allowances } from "../../core/decisions/allowances";
import type { Piece, SeamName } from "../../core/pattern/piece";
import { narrowStandWords, standWidened, widenStand } from "../../words/buttons";
import {
  allowanceLabel,
  allowanceRefusal,
  allowancesSummary,
  usualAllowancesSentence,
  usualEntry,
} from "../../words/paperChoices";
import { useSaid } from "../session/useSaid";
import { useRun, useSettledWork } from "../session/useWork";
import { Fractions } from "../fields/Fractions";
import { LengthField } from "../fields/LengthField";
import { seamsOf } from "./paperRequest";
import * as say from "../../words/paperStep";

const NONE: Allowances = {};
const fieldOf = (seam: SeamName): string => `allowance.${seam}`;

/** The wearer's own allowance at each seam that the pieces have, kept with the work. */
export function AllowanceFields({ pieces }: { readonly pieces: readonly Piece[] }) {
  const id = useId();
  const unit = useSettledWork((work) => work.unit);
  const allowances = useSettledWork((work) => work.allowances ?? NONE);
  const unread = useSettledWork((work) => work.unread);
  const closure = useSettledWork((work) => work.pattern.closure);
  const seams = seamsOf(pieces);
  const narrow = narrowStandWords(pieces, closure, allowances, unit);
  const own = seams.filter((seam) => isOwnAllowance(seam, allowances[seam])).length;
  const waiting = seams.filter((seam) => unread[fieldOf(seam)] !== undefined).length;
  // An entry that could not be read must not lie out of sight.
  const [open] = useState(waiting > 0);
  const summary = useRef<HTMLElement>(null);
  const run = useRun();
  const tell = useSaid((said) => said.say);
  // One of her own, and what she is typing, is hers to change.
  const isOffered = !isOwnAllowance("centre", allowances.centre) && unread[fieldOf("centre")] === undefined;
  const widen = (): void => {
    run({ kind: "setAllowance", seam: "centre", value: STAND_TO_ALLOW[unit] });
    tell(standWidened(unit));
    // The button that was pressed goes.
    summary.current?.focus({ preventScroll: true });
  };
  return (
    <>
      <details className="allowances" open={open}>
        <summary ref={summary}>{allowancesSummary(own, waiting)}</summary>
        <div
          className="allowances-inside"
          aria-describedby={`${id}-usual`}
          role="group"
          aria-label={say.seamAndHemAllowances}
        >
          <p id={`${id}-usual`} className="aside">
            <Fractions text={usualAllowancesSentence(unit)} />
          </p>
          <div className="field-row">
            {seams.map((seam) => (
              <LengthField
                key={seam}
                label={allowanceLabel(seam)}
                field={fieldOf(seam)}
                value={allowances[seam]}
                otherwise={usualEntry(USUAL_ALLOWANCES[seam], unit)}
                set={(value) => ({ kind: "setAllowance", seam, value })}
                clear={{ kind: "clearAllowance", seam }}
                refuse={(value) => allowanceRefusal(value, unit)}
              />
            ))}
          </div>
        </div>
      </details>
      {narrow !== null && (
        <div className="note doubt">
          <p>
            <Fractions text={narrow} />
          </p>
          {isOffered && (
            <button type="button" className="button small" onClick={widen}>
              <Fractions text={widenStand(unit)} />
            </button>
          )}
        </div>
      )}
    </>
  );
}
