/**
 * How far apart two readings of one measure come out when the same hand takes them again: one standard deviation, mm.
 *
 * Common practice and our own choice, no source: about 10 mm at a girth with a home tape, more where the tape slants or
 * its place is hard to find, less where two points can be felt. What two trained measurers may differ by at the most is
 * of the same order (ISO 20685: large girths 9 mm, small girths 4, heights 4, segments 5; from memory).
 */
import type { Mm } from "../units";
import type { MeasureName } from "./measure";

export const TAPE_SPREAD: Readonly<Record<MeasureName, Mm>> = {
  bustGirth: 10,
  upperChestGirth: 12,
  underBustGirth: 8,
  waistGirth: 10,
  hipGirth: 10,
  height: 8,
  bustPointWidth: 7,
  sideNeckToBustPoint: 8,
  backWaistLength: 9,
  frontWaistLength: 10,
  neckBaseGirth: 8,
  shoulderLength: 5,
  acrossBack: 8,
  acrossFront: 8,
};

/** How many readings the usual spread weighs as much as, beside the wearer's own few. */
const USUAL_WEIGHT = 4;

/**
 * Spread of the mean of some readings: the usual spread and the wearer's own, pooled, over the square root of their number.
 *
 * @param readings one or more readings of one measure; mm
 * @returns one standard deviation of their mean; mm
 * @source the pooled variance (ν₀s₀² + Σ(x − x̄)²)/(ν₀ + n − 1), with ν₀ = 4 our own choice
 */
export function spreadOfMean(name: MeasureName, readings: readonly Mm[]): Mm {
  const usual = TAPE_SPREAD[name];
  const mean = meanOf(readings);
  const own = readings.reduce((sum, reading) => sum + (reading - mean) ** 2, 0);
  const pooled = (USUAL_WEIGHT * usual ** 2 + own) / (USUAL_WEIGHT + readings.length - 1);
  return Math.sqrt(pooled / readings.length);
}

/**
 * How far apart the largest and the smallest of so many readings lie at the most, 95 times in 100, in their spread.
 *
 * @source the upper 5 % points of the range of 2, 3, 4 and 5 standard normal values; for two, 1.96 √2
 */
const REPEATS: readonly number[] = [2.772, 3.314, 3.633, 3.858];

/** How far apart readings are: the largest less the smallest; 0 for one. */
export const apartOf = (readings: readonly Mm[]): Mm => Math.max(...readings) - Math.min(...readings);

/** Whether readings of one measure are as near to each other as one hand and tape usually bring them. */
export function readingsAgree(name: MeasureName, readings: readonly Mm[]): boolean {
  if (readings.length < 2) return true;
  const most = REPEATS[Math.min(readings.length - 2, REPEATS.length - 1)] ?? 0;
  return apartOf(readings) <= most * TAPE_SPREAD[name];
}

export const meanOf = (readings: readonly Mm[]): Mm =>
  readings.reduce((sum, reading) => sum + reading, 0) / readings.length;
