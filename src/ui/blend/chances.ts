import type { MeasureName } from "../../core/measures/measure";
import type { MeasuredBody } from "../../core/measures/tape";
import type { Chance } from "../../core/sureness/howSure";
import { measureWords } from "../../words/measures";

/** How likely the pick of one label is; 0 where it never comes. */
export const chanceOf = (chances: readonly Chance[], label: string | null): number =>
  chances.find((one) => one.label === label)?.probability ?? 0;

/** A girth by name, how often it was read, and what that is good to. */
const girthRead = (body: MeasuredBody, name: MeasureName) => ({
  name: measureWords(name).short,
  readings: body[name]?.readings.length ?? 0,
  spread: body[name]?.spread ?? 0,
});

/** The girths that frame and cup stand on, as far as they were taken. */
export const sizingGirths = (body: MeasuredBody) =>
  (["bustGirth", "upperChestGirth"] as const)
    .filter((name) => body[name] !== undefined)
    .map((name) => girthRead(body, name));
