import type { LikelyMisreading } from "../../core/bodies/misreading";
import type { Suspicion } from "../../core/bodies/suspicion";
import type { MeasureName } from "../../core/measures/measure";
import { bodyOf } from "../../core/measures/tape";
import type { Mm } from "../../core/units";
import type { Command } from "../../core/plan/commands";
import type { LengthUnit } from "../../core/decisions/work";
import { measureRefusal } from "../../words/measures";
import { misreadingRemedy } from "../../words/tape";
import { useRunAll } from "../session/useRunAll";
import { useSettledWork } from "../session/useWork";
import { Fractions } from "../fields/Fractions";

interface MisreadingRemedyProps {
  readonly suspicion: Suspicion;
  readonly misreading: LikelyMisreading;
  readonly unit: LengthUnit;
}

/** Sets the likely mistake right as one step; nothing where only the tape can. */
export function MisreadingRemedy({ suspicion: { measure, value }, misreading, unit }: MisreadingRemedyProps) {
  const runAll = useRunAll();
  const body = useSettledWork((work) => bodyOf(work.tapes));
  const remedy = misreadingRemedy(misreading, unit);
  const other = misreading.other === undefined ? undefined : body[misreading.other];
  const commands =
    misreading.other === undefined || other === undefined
      ? allReadings(measure, [misreading.meant])
      : [...allReadings(measure, other.readings), ...allReadings(misreading.other, body[measure]?.readings ?? [value])];
  const impossible = commands.some(
    (command) => "value" in command && measureRefusal(command.measure, command.value, unit) !== null,
  );
  // What was read another time is put right by the tape: a reading set right is none of today's.
  const isOld = [measure, ...(misreading.other === undefined ? [] : [misreading.other])].some(
    (name) => (body[name]?.set ?? 0) > 0,
  );
  if (remedy === null || impossible || isOld) return null;
  return (
    <button type="button" className="button small slip-remedy" onClick={() => runAll(commands)}>
      <Fractions text={remedy} />
    </button>
  );
}

type ReadingCommand = Extract<Command, { readonly kind: "setMeasure" | "setReading" }>;

/** These readings in place of all that the newest set has. */
const allReadings = (measure: MeasureName, readings: readonly Mm[]): readonly ReadingCommand[] =>
  readings.map((value, at) =>
    at === 0 ? { kind: "setMeasure", measure, value } : { kind: "setReading", measure, at, value },
  );
