import type { MeasureName } from "../../core/measures/measure";
import type { MeasuredBody } from "../../core/measures/tape";
import type { Chance } from "../../core/sureness/howSure";
import { measureWords } from "../../words/measures";

/** How likely the pick of one label is; 0 where it never comes. */
export const chanceOf = (chances: readonly Chance[], label: string | null): number =>
  chances.find((one) => one.label === label)?.probability ?? 0;

/** A girth by name, and how often it was read. */
export const girthRead = (body: MeasuredBody, name: MeasureName) => ({
  name: measureWords(name).short,
  readings: body[name]?.readings.length ?? 0,
});
