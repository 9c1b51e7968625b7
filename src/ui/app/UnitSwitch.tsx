import type { LengthUnit } from "../../core/decisions/work";
import { Choice } from "../fields/Choice";
import { useRun, useSettledWork } from "../session/useWork";

const UNITS: readonly { readonly value: LengthUnit; readonly label: string }[] = [
  { value: "cm", label: "cm" },
  { value: "in", label: "in" },
];

export function UnitSwitch() {
  const unit = useSettledWork((work) => work.unit);
  const run = useRun();
  return (
    <Choice
      legend="Unit"
      legendHidden
      options={UNITS}
      value={unit}
      onChange={(next) => run({ kind: "setUnit", unit: next })}
    />
  );
}
