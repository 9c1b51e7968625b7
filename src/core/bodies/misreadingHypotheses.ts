/**
 * What may have gone wrong at the tape: every misreading we know of, weighed against nothing having gone wrong. All weights are
 * logarithms of odds against that: how often the misreading happens, times how much likelier all readings are with it.
 */
import type { MisreadingKind } from "./misreading";
import type { TypedUnit } from "../measures/length";
import type { MeasureName } from "../measures/measure";
import { MEASURE_RANGES } from "../measures/registry";
import { TAPE_SPREAD } from "../measures/repeatability";
import { invariant } from "../result";
import { ON_A_MARK } from "../tolerance";
import { MM_PER_CM, MM_PER_INCH, type Mm } from "../units";
import type { Foretold } from "./bodyModel";
import { logDensity, type Reading } from "./openBodies";

/** One explanation of all that was read. `kind` null: the tape slipped in a way we have no name for. */
export interface Hypothesis {
  readonly kind: MisreadingKind | null;
  /** Places in the reading: the measure that is wrong, or both that were swapped. */
  readonly at: readonly [number] | readonly [number, number];
  /** Logarithm of what was meant, for each of `at`. */
  readonly meant: readonly number[];
  readonly weight: number;
}

/** How often it happens, per measure that it can happen to: our own choice, as are those of the pairs below. */
const HOW_OFTEN: Readonly<Record<Exclude<MisreadingKind, "swapped"> | "other", number>> = {
  inchesAsCentimetres: 0.0003,
  centimetresAsInches: 0.0003,
  half: 0.0003,
  tenOut: 0.0005,
  digitsSwapped: 0.0005,
  waistAtNavel: 0.003,
  waistAtHip: 0.0005,
  upperChestOverBust: 0.002,
  other: 0.0007,
};

/** Which measures stand in each other's place, and how often: those that lie side by side and come out near each other. */
const MIXED_UP: readonly (readonly [MeasureName, MeasureName, number])[] = [
  ["bustGirth", "upperChestGirth", 0.0025],
  ["bustGirth", "underBustGirth", 0.001],
  ["bustGirth", "waistGirth", 0.001],
  ["upperChestGirth", "underBustGirth", 0.001],
  ["underBustGirth", "waistGirth", 0.001],
  ["waistGirth", "hipGirth", 0.001],
  ["backWaistLength", "frontWaistLength", 0.0025],
  ["sideNeckToBustPoint", "frontWaistLength", 0.001],
  ["acrossBack", "acrossFront", 0.0005],
];

const GIRTHS: readonly MeasureName[] = [
  "bustGirth",
  "upperChestGirth",
  "underBustGirth",
  "waistGirth",
  "hipGirth",
  "neckBaseGirth",
];

/** Of the logarithm of navel girth over waist: mean and standard deviation of the 2208 women surveyed in 1988. */
export const NAVEL_OVER_WAIST = { middle: 0.0859, spread: 0.0477 };

/** How far off a misreading without a name puts a logarithm, one standard deviation: our own choice. */
const ANY_MISREADING = 0.2;

/** What the tape is marked in, and with it what its whole numbers, its tens and their digits are. */
const MARK: Readonly<Record<TypedUnit, Mm>> = { cm: MM_PER_CM, in: MM_PER_INCH };

/** Everything that may be wrong with some readings of a tape marked in this unit. */
export function hypothesesOf(reading: Reading, unit: TypedUnit): readonly Hypothesis[] {
  return [
    ...reading.measures.flatMap((_, at) => [
      ...misread(reading, at, unit),
      ...elsewhere(reading, at),
      anyMisreading(reading, at),
    ]),
    ...swaps(reading),
  ];
}

const often = (kind: keyof typeof HOW_OFTEN): number => Math.log(HOW_OFTEN[kind]);

/** The tape lay right, and another number was written down. */
function misread(reading: Reading, at: number, unit: TypedUnit): readonly Hypothesis[] {
  const measure = invariant(reading.measures[at], "measure");
  const log = invariant(reading.logs[at], "log");
  const { usualLeast, usualMost } = MEASURE_RANGES[measure];
  const foretold = invariant(reading.foretold[at], "foretold");
  const now = logDensity(log, foretold);
  return writtenFor(measure, Math.exp(log), MARK[unit]).flatMap(({ kind, meant, scaled }) => {
    if (meant < usualLeast || meant > usualMost) return [];
    const logMeant = Math.log(meant);
    // Densities of mm, not of logarithms: a number that was shifted, not multiplied, lies among others as dense in mm.
    const perMm = scaled ? 0 : log - logMeant;
    return [
      {
        kind,
        at: [at] as const,
        meant: [logMeant],
        weight: often(kind) + logDensity(logMeant, foretold) - now + perMm,
      },
    ];
  });
}

interface Written {
  readonly kind: "inchesAsCentimetres" | "centimetresAsInches" | "half" | "tenOut" | "digitsSwapped";
  readonly meant: Mm;
  readonly scaled: boolean;
}

function writtenFor(measure: MeasureName, value: Mm, mark: Mm): readonly Written[] {
  const unit = MM_PER_INCH / MM_PER_CM;
  return [
    { kind: "inchesAsCentimetres", meant: value * unit, scaled: true },
    { kind: "centimetresAsInches", meant: value / unit, scaled: true },
    ...(GIRTHS.includes(measure) ? [{ kind: "half" as const, meant: value * 2, scaled: true }] : []),
    { kind: "tenOut", meant: value - 10 * mark, scaled: false },
    { kind: "tenOut", meant: value + 10 * mark, scaled: false },
    ...digitsTurned(value, mark).map((meant) => ({ kind: "digitsSwapped" as const, meant, scaled: false })),
  ];
}

/** The value with two neighbouring digits of its whole marks the other way round. */
function digitsTurned(value: Mm, mark: Mm): readonly Mm[] {
  // The value comes out of a logarithm: a whole number may lie just below itself.
  const whole = Math.floor(value / mark + ON_A_MARK);
  const turned: Mm[] = [];
  for (let unit = 1; unit * 10 <= whole; unit *= 10) {
    const low = Math.floor(whole / unit) % 10;
    const high = Math.floor(whole / unit / 10) % 10;
    if (low !== high) turned.push(value + (low - high) * 9 * unit * mark);
  }
  return turned;
}

type Elsewhere = "waistAtNavel" | "waistAtHip" | "upperChestOverBust";

/** The number is right, and the tape lay somewhere else. */
function elsewhere(reading: Reading, at: number): readonly Hypothesis[] {
  const measure = invariant(reading.measures[at], "measure");
  const log = invariant(reading.logs[at], "log");
  const foretold = invariant(reading.foretold[at], "foretold");
  const now = logDensity(log, foretold);
  const put = (kind: Elsewhere, there: Foretold, meant: number): Hypothesis => ({
    kind,
    at: [at],
    meant: [meant],
    weight: often(kind) + logDensity(log, there) - now,
  });
  /** As the other girth, which was read too. */
  const over = (kind: Elsewhere, other: MeasureName): readonly Hypothesis[] => {
    const place = reading.measures.indexOf(other);
    const middle = reading.logs[place];
    if (middle === undefined) return [];
    const scale = Math.SQRT2 * (TAPE_SPREAD[measure] / Math.exp(middle));
    return [put(kind, { middle, scale, freedom: foretold.freedom }, foretold.middle)];
  };
  if (measure === "upperChestGirth") return over("upperChestOverBust", "bustGirth");
  if (measure !== "waistGirth") return [];
  const { middle, spread } = NAVEL_OVER_WAIST;
  const both = foretold.scale ** 2 + spread ** 2;
  // Between what the others foretell and what the navel girth says, each by how sure it is.
  const likeliest = foretold.middle + (foretold.scale ** 2 / both) * (log - middle - foretold.middle);
  return [
    put("waistAtNavel", { ...foretold, middle: foretold.middle + middle, scale: Math.sqrt(both) }, likeliest),
    ...over("waistAtHip", "hipGirth"),
  ];
}

function anyMisreading(reading: Reading, at: number): Hypothesis {
  const log = invariant(reading.logs[at], "log");
  const foretold = invariant(reading.foretold[at], "foretold");
  const there = { ...foretold, scale: Math.hypot(foretold.scale, ANY_MISREADING) };
  return {
    kind: null,
    at: [at],
    meant: [foretold.middle],
    weight: often("other") + logDensity(log, there) - logDensity(log, foretold),
  };
}

function swaps(reading: Reading): readonly Hypothesis[] {
  return MIXED_UP.flatMap(([one, other, share]) => {
    const [i, j] = [reading.measures.indexOf(one), reading.measures.indexOf(other)];
    const [a, b] = [reading.logs[i], reading.logs[j]];
    if (a === undefined || b === undefined || a === b) return [];
    const gain = reading.gainOf(
      new Map([
        [i, b],
        [j, a],
      ]),
    );
    return [{ kind: "swapped" as const, at: [i, j] as const, meant: [b, a], weight: Math.log(share) + gain }];
  });
}
