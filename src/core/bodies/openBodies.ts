/**
 * The taped bodies, opened to bodies at large: the survey's women are young soldiers, and a measure must not be doubted
 * because a body is larger, shorter or rounder than theirs. And each measure as all the others foretell it.
 */
import type { MeasureName } from "../measures/measure";
import { MEASURE_RANGES } from "../measures/registry";
import type { MeasuredBody } from "../measures/tape";
import { invariant } from "../result";
import type { BodyModel, Foretold, Known } from "./bodyModel";
import { TAPED_BODIES } from "./bridges";
import { knownOf, widenedByAge } from "./estimate";
import { cholesky, dot, entry, solveLower, type Matrix } from "../statistics/linear";

/**
 * Standard deviations of logarithms by which bodies at large vary more in size than the survey's; the other measures go
 * along, by the survey's own regression on these. Our own choice: with it a bust of 1500 mm and a height of 1400 are
 * nothing out of the way.
 */
const MORE_SIZES: readonly (readonly [MeasureName, number])[] = [
  ["bustGirth", 0.15],
  ["height", 0.03],
];

/**
 * And in shape, each measure for itself: of the logarithm, one standard deviation. Our own choice, held against a national
 * sample of 600 women: fewer than 3 in 100 are doubted for bust, waist and hip.
 */
const MORE_SHAPES: Readonly<Partial<Record<MeasureName, number>>> = {
  waistGirth: 0.02,
  hipGirth: 0.02,
  bustPointWidth: 0.03,
  sideNeckToBustPoint: 0.05,
  frontWaistLength: 0.03,
};

/**
 * And in shape, on one side only: soldiers are seldom round at the waist, or much fuller in the bust than in the chest, and
 * others often are. So much more doubt where the measure lies above what the rest foretell. Our own choice, no source.
 */
const FULLER: Readonly<Partial<Record<MeasureName, number>>> = { bustGirth: 0.05, waistGirth: 0.05, hipGirth: 0.03 };

/** The taped bodies, with that. */
export const OPEN_BODIES: BodyModel = opened();

function opened(): BodyModel {
  const { measures, scatter } = TAPED_BODIES;
  const follow = MORE_SIZES.map(([name, sd]) => {
    const at = measures.indexOf(name);
    return measures.map((_, other) => (sd * entry(scatter, at, other)) / entry(scatter, at, at));
  });
  const alone = (at: number): number => (MORE_SHAPES[invariant(measures[at], "measure")] ?? 0) ** 2;
  const more = (i: number, j: number): number =>
    follow.reduce(
      (sum, along) => sum + invariant(along[i], "along") * invariant(along[j], "along"),
      i === j ? alone(i) : 0,
    );
  return { ...TAPED_BODIES, scatter: scatter.map((row, i) => row.map((value, j) => value + more(i, j))) };
}

/** All that was read, held against each other. */
export interface Reading {
  readonly measures: readonly MeasureName[];
  /** Logarithms of mm. */
  readonly logs: readonly number[];
  /** Each reading as the others foretell it: Student's t of its logarithm, the tape's own error in it. */
  readonly foretold: readonly Foretold[];
  /**
   * How much likelier all of it would be with other logarithms in some places: the logarithm of the ratio of densities.
   */
  readonly gainOf: (changed: ReadonlyMap<number, number>) => number;
}

/** Values beyond this many times a measure's range are all the same nonsense. */
const NONSENSE = 10;

/** What can be held against anything: positive and finite. A value far too low must not pass as merely unsure. */
export const readOf = (body: MeasuredBody): readonly Known[] =>
  knownOf(body).flatMap(({ measure }) => {
    const { spread, value } = invariant(body[measure], "measure");
    const { least, usualLeast, most } = MEASURE_RANGES[measure];
    const variance = (spread / Math.max(value, usualLeast)) ** 2;
    if (!Number.isFinite(value) || !Number.isFinite(variance)) return [];
    return [{ measure, log: Math.log(Math.min(Math.max(value, least / NONSENSE), most * NONSENSE)), variance }];
  });

/**
 * Each of some readings as the others foretell it.
 *
 * @param read at least one
 * @param age  years, where she says
 * @source conditionals of a multivariate t from the inverse P of its scatter: of entry i given the rest, the middle is
 *   yᵢ − (P r)ᵢ/Pᵢᵢ, the variance 1/Pᵢᵢ times (ν + d₋ᵢ)/(ν + n − 1), and d₋ᵢ = d − (P r)ᵢ²/Pᵢᵢ (from memory, held against
 *   `conditionOn`)
 */
export function readingOf(read: readonly Known[], age?: number): Reading {
  const plain = heldTogether(read, age);
  const open = read.map((known, at) => {
    const fuller = known.log > invariant(plain.foretold[at], "foretold").middle ? (FULLER[known.measure] ?? 0) : 0;
    return { ...known, variance: known.variance + fuller ** 2 };
  });
  return heldTogether(open, age);
}

function heldTogether(read: readonly Known[], age: number | undefined): Reading {
  const places = read.map(({ measure }) => OPEN_BODIES.measures.indexOf(measure));
  const widened = widenedByAge(age) ** 2;
  const scatter = places.map((row, i) =>
    places.map(
      (column, j) =>
        widened * entry(OPEN_BODIES.scatter, row, column) + (i === j ? invariant(read[i], "read").variance : 0),
    ),
  );
  const inverse = inverseOf(scatter);
  const logs = read.map(({ log }) => log);
  const off = (values: readonly number[]): number[] =>
    values.map((log, i) => log - invariant(OPEN_BODIES.middle[invariant(places[i], "place")], "middle"));
  const here = off(logs);
  const pulled = inverse.map((row) => dot(row, here));
  const distance = dot(here, pulled);
  const { freedom } = OPEN_BODIES;
  return {
    measures: read.map(({ measure }) => measure),
    logs,
    foretold: logs.map((log, i) => {
      const own = entry(inverse, i, i);
      const pull = invariant(pulled[i], "pull");
      const without = Math.max(0, distance - pull ** 2 / own);
      const left = freedom + logs.length - 1;
      return { middle: log - pull / own, scale: Math.sqrt((freedom + without) / left / own), freedom: left };
    }),
    gainOf: (changed) => {
      const there = off(logs.map((log, i) => changed.get(i) ?? log));
      const distanceThere = dot(
        there,
        inverse.map((row) => dot(row, there)),
      );
      return ((freedom + logs.length) / 2) * (Math.log1p(distance / freedom) - Math.log1p(distanceThere / freedom));
    },
  };
}

/** A reading of one measure, as some others foretell it. */
export const foretell = (own: Known, others: readonly Known[], age?: number): Foretold =>
  invariant(readingOf([own, ...others], age).foretold[0], "foretold");

/** Logarithm of the density of Student's t, but for what depends on its freedom alone. */
export const logDensity = (log: number, { middle, scale, freedom }: Foretold): number =>
  -Math.log(scale) - ((freedom + 1) / 2) * Math.log1p(((log - middle) / scale) ** 2 / freedom);

/** The inverse of a symmetric positive definite matrix. */
export function inverseOf(matrix: Matrix): number[][] {
  const lower = cholesky(matrix);
  // Columns of L⁻¹; the inverse is L⁻ᵀ L⁻¹.
  const columns = matrix.map((_, at) =>
    solveLower(
      lower,
      matrix.map((__, row) => (row === at ? 1 : 0)),
    ),
  );
  return columns.map((a) => columns.map((b) => dot(a, b)));
}
