import type { LengthUnit } from "../../core/decisions/work";
import { Choice } from "../fields/Choice";
import { changeUnit } from "../../document/blank";
import { useRunAll } from "../session/useRunAll";
import { useSettledWork, useWorkStore } from "../session/useWork";
import * as say from "../../words/page";

const UNITS: readonly { readonly value: LengthUnit; readonly label: string }[] = [
  { value: "cm", label: "cm" },
  { value: "in", label: "in" },
];

export function UnitSwitch() {
  const unit = useSettledWork((work) => work.unit);
  const store = useWorkStore();
  const runAll = useRunAll();
  return (
    <Choice
      legend={say.unit}
      legendHidden
      options={UNITS}
      value={unit}
      onChange={(next) => runAll(changeUnit(store.getState().work, next))}
    />
  );
}
