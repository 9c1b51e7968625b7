/**
 * What was read off the tape: dated sets of readings, newest first. A measure counts as the mean of its readings in the
 * newest set that has it, so that a set begun today stands on the earlier ones until it is full.
 */
import { remember } from "../remember";
import type { Mm } from "../units";
import { MEASURE_NAMES, type MeasureName, type Measures } from "./measure";
import { meanOf, spreadOfMean } from "./repeatability";

/** Readings of each measure, in the order in which they were taken; mm to 0.1. A measure not taken is absent, never empty. */
export type Readings = Readonly<Partial<Record<MeasureName, readonly Mm[]>>>;

/** One time of measuring. */
export interface MeasureSet {
  /** The day, as yyyy-mm-dd; absent: not said. */
  readonly taken?: string;
  readonly readings: Readings;
}

/** Newest first, at least one. */
export type Tapes = readonly MeasureSet[];

/** A measure as it counts. */
export interface Measured {
  /** Mean of the readings. */
  readonly value: Mm;
  /** One standard deviation of that mean. */
  readonly spread: Mm;
  readonly readings: readonly Mm[];
  /** Which set it comes from: 0 the newest. */
  readonly set: number;
}

export type MeasuredBody = Readonly<Partial<Record<MeasureName, Measured>>>;

const takenFrom = remember(["tapes"], ({ tapes }: { readonly tapes: Tapes }): MeasuredBody => {
  const body: Partial<Record<MeasureName, Measured>> = {};
  for (const name of MEASURE_NAMES) {
    const set = tapes.findIndex(({ readings }) => (readings[name]?.length ?? 0) > 0);
    const readings = tapes[set]?.readings[name];
    if (readings === undefined) continue;
    body[name] = { value: meanOf(readings), spread: spreadOfMean(name, readings), readings, set };
  }
  return body;
});

const valuesFrom = remember(["body"], ({ body }: { readonly body: MeasuredBody }): Measures =>
  Object.fromEntries(Object.entries(body).map(([name, { value }]) => [name, value])),
);

/** Every measure that was taken, as it counts. */
export const bodyOf = (tapes: Tapes): MeasuredBody => takenFrom({ tapes });

/** The values alone. */
export const measuresOf = (tapes: Tapes): Measures => valuesFrom({ body: bodyOf(tapes) });

/** One undated set with one reading of each measure. */
export const tapesOf = (measures: Measures): Tapes => [
  { readings: Object.fromEntries(Object.entries(measures).map(([name, value]) => [name, [value]])) },
];
