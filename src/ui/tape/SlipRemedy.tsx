import type { LikelySlip } from "../../core/bodies/misreading";
import type { Suspicion } from "../../core/bodies/suspicion";
import type { MeasureName } from "../../core/measures/measure";
import { bodyOf } from "../../core/measures/tape";
import type { Mm } from "../../core/units";
import type { Command } from "../../core/plan/commands";
import type { LengthUnit } from "../../core/decisions/work";
import { measureRefusal } from "../../words/measures";
import { slipRemedy } from "../../words/tape";
import { useRunAll } from "../work/useRunAll";
import { useWork } from "../work/useWork";
import { Fractions } from "../fields/Fractions";

interface SlipRemedyProps {
  readonly suspicion: Suspicion;
  readonly slip: LikelySlip;
  readonly unit: LengthUnit;
}

/** Sets the likely mistake right as one step; nothing where only the tape can. */
export function SlipRemedy({ suspicion: { measure, value }, slip, unit }: SlipRemedyProps) {
  const runAll = useRunAll();
  const body = useWork((work) => bodyOf(work.tapes));
  const remedy = slipRemedy(slip, unit);
  const other = slip.other === undefined ? undefined : body[slip.other];
  const commands =
    slip.other === undefined || other === undefined
      ? allReadings(measure, [slip.meant])
      : [...allReadings(measure, other.readings), ...allReadings(slip.other, body[measure]?.readings ?? [value])];
  const impossible = commands.some(
    (command) => "value" in command && measureRefusal(command.measure, command.value, unit) !== null,
  );
  // What was read another time is put right by the tape: a reading set right is none of today's.
  const isOld = [measure, ...(slip.other === undefined ? [] : [slip.other])].some((name) => (body[name]?.set ?? 0) > 0);
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
