import type { Command } from "../../core/plan/commands";
import { BUTTONS_LABEL, BUTTONS_REFUSAL, buttonRowOf, buttonsHint, readButtons } from "../../words/buttons";
import { useSettledPlan } from "../session/usePlan";
import { useSettledWork } from "../session/useWork";
import { EntryField } from "../fields/EntryField";
import { Fractions } from "../fields/Fractions";
import { useEntry } from "../fields/useEntry";
import { PartPlace } from "../parts/PartPlace";
import { SKIRTED_BUTTONS } from "./skirtedButtonsPart";

/** How many buttons close the centre back, and how far apart that puts them; empty: a zip. */
export function ButtonsField() {
  const unit = useSettledWork((work) => work.unit);
  const closure = useSettledWork((work) => work.pattern.closure);
  const plan = useSettledPlan();
  const { buttons, ...zipped } = closure;
  const closedBy = (count: number | null): Command => ({
    kind: "setClosure",
    closure: count === null ? zipped : { ...zipped, buttons: count },
  });
  const entry = useEntry({
    field: "pattern.closure.buttons",
    settled: buttons === undefined ? "" : String(buttons),
    read: (text) => {
      const count = readButtons(text);
      return count === undefined ? { reason: BUTTONS_REFUSAL } : { commands: [closedBy(count)] };
    },
    clear: () => [closedBy(null)],
  });
  const isSkirted = useSettledWork(({ dress }) => dress?.skirt !== undefined);
  const row = plan.ok ? buttonRowOf(plan.value.left.pieces, closure) : null;
  const hint =
    plan.ok && isSkirted ? (
      <PartPlace part={SKIRTED_BUTTONS} name={BUTTONS_LABEL} placeholder={null}>
        {(SkirtedButtons) => <SkirtedButtons plan={plan.value} />}
      </PartPlace>
    ) : (
      <Fractions text={buttonsHint(row, unit)} />
    );
  return (
    <EntryField
      label={BUTTONS_LABEL}
      entry={entry}
      error={entry.reason}
      inputMode="numeric"
      otherwise="none"
      {...(entry.reason === null ? { hint } : {})}
    />
  );
}
