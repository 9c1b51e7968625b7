/** Two times of measuring beside each other: what has changed, and what is no more than a tape does. */
import type { Mm } from "../units";
import { MEASURE_NAMES, type MeasureName } from "./measure";
import { meanOf, spreadOfMean } from "./repeatability";
import type { MeasureSet } from "./tape";

export interface TapeDifference {
  readonly measure: MeasureName;
  /** Means of the readings. */
  readonly now: Mm;
  readonly before: Mm;
  /** More apart than two such means come out nine times in ten when nothing has changed. */
  readonly changed: boolean;
}

/** Standard normal: nine of ten differences of nothing lie within this many standard deviations. */
const NINE_OF_TEN = 1.645;

/** Every measure that both sets have. */
export function compareTapes(now: MeasureSet, before: MeasureSet): readonly TapeDifference[] {
  return MEASURE_NAMES.flatMap((measure) => {
    const [a, b] = [now.readings[measure], before.readings[measure]];
    if (a === undefined || b === undefined) return [];
    const spread = Math.hypot(spreadOfMean(measure, a), spreadOfMean(measure, b));
    const [value, earlier] = [meanOf(a), meanOf(b)];
    return [{ measure, now: value, before: earlier, changed: Math.abs(value - earlier) > NINE_OF_TEN * spread }];
  });
}
