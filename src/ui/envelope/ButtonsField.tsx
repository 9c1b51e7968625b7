import { useId, useState } from "react";
import { BUTTONS_LABEL, BUTTONS_REFUSAL, buttonRowOf, buttonsHint, readButtons } from "../../words/buttons";
import { useRunAll } from "../session/useRunAll";
import { useSettledPlan } from "../session/usePlan";
import { useRun, useWork } from "../session/useWork";
import { Fractions } from "../fields/Fractions";
import { useKeptOnHide } from "../fields/useKeptOnHide";

/** Kept in the work while it cannot be read, as every entry is. */
const FIELD = "pattern.closure.buttons";

/** How many buttons close the centre back, and how far apart that puts them; empty: a zip. */
export function ButtonsField() {
  const id = useId();
  const run = useRun();
  const runAll = useRunAll();
  const unit = useWork((work) => work.unit);
  const closure = useWork((work) => work.pattern.closure);
  const unread = useWork((work) => work.unread[FIELD]);
  const plan = useSettledPlan();
  const [draft, setDraft] = useState<string | null>(null);
  const keep = (): void => {
    if (draft === null) return;
    setDraft(null);
    const text = draft.trim();
    const count = readButtons(text);
    if (count === undefined) return run({ kind: "setUnread", field: FIELD, text });
    const { buttons: _old, ...zipped } = closure;
    runAll([
      { kind: "clearUnread", field: FIELD },
      { kind: "setClosure", closure: count === null ? zipped : { ...zipped, buttons: count } },
    ]);
  };
  useKeptOnHide(draft === null ? null : keep);
  const reads = draft !== null || unread === undefined || readButtons(unread) !== undefined;
  const row = plan.ok ? buttonRowOf(plan.value.left.pieces, closure) : null;
  return (
    <div className="field" data-state={reads ? undefined : "error"}>
      <label htmlFor={id} className="field-label">
        {BUTTONS_LABEL}
      </label>
      <span className="field-entry">
        <input
          id={id}
          className="field-input"
          inputMode="numeric"
          autoComplete="off"
          placeholder="none"
          value={draft ?? unread ?? closure.buttons ?? ""}
          aria-invalid={!reads}
          aria-describedby={`${id}-hint`}
          onChange={(event) => setDraft(event.target.value)}
          onBlur={keep}
          onKeyDown={(event) => {
            if (event.key === "Enter") keep();
            if (event.key !== "Escape" || draft === null) return;
            event.stopPropagation();
            setDraft(null);
          }}
        />
      </span>
      <p id={`${id}-hint`} className={reads ? "field-hint" : "field-error"}>
        {reads ? <Fractions text={buttonsHint(row, unit)} /> : BUTTONS_REFUSAL}
      </p>
    </div>
  );
}
